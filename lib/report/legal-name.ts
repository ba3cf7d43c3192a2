/** What is wrong with the name of a table or cell, or undefined. It must not look like an address. */
export function nameProblem(name: string): string | undefined {
  if (name.length > 255) return "is longer than 255 characters";
  if (!/^[A-Za-z_][A-Za-z0-9_.]*$/.test(name)) return "must be letters, digits, _ and . and begin with a letter or _";
  if (/^[A-Za-z]{1,3}\d+$/.test(name)) return "looks like a cell address";
  if (/^[Rr]\d*([Cc]\d*)?$|^[Cc]\d*$/.test(name)) return "looks like a row or column address";
  return /^(true|false)$/i.test(name) ? "is a truth value" : undefined;
}

/** What is wrong with a sheet name, or undefined. */
export function sheetNameProblem(name: string): string | undefined {
  if (name === "" || name.length > 31) return "must have 1 to 31 characters";
  if (/[*?:/\\[\]]/.test(name)) return "must not have any of * ? : / \\ [ ]";
  if (/^'|'$/.test(name)) return "must not begin or end with '";
  if (name !== name.trim()) return "must not begin or end with a space";
  return name.toLowerCase() === "history" ? "is a name the spreadsheet program keeps for itself" : undefined;
}
