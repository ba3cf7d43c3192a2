/** Text as XML content or attribute value. */
export function escapeXml(text: string): string {
  return text.replace(/[&<>"'\n\t]/g, (mark) => marks[mark] ?? mark);
}

const marks: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&apos;",
  "\n": "&#10;",
  "\t": "&#9;",
};

/** Text whose own "_x0041_" a spreadsheet would otherwise read as the character it names (ECMA-376 part 1, ST_Xstring). */
export function protectedText(text: string): string {
  return text.includes("_x") ? text.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_") : text;
}
