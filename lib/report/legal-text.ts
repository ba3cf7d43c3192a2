/** Longest text a spreadsheet cell holds. [characters] */
export const longestCellText = 32_767;

/**
 * What is wrong with a text that is to stand in a spreadsheet file, or undefined. Control characters and broken
 * character pairs are not allowed in XML; a carriage return would come back as a line feed.
 */
export function textProblem(text: string, longest: number = longestCellText): string | undefined {
  if (text.length > longest) return `the text has ${text.length} characters, at most ${longest} fit`;
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  const control = /[\u0000-\u0008\u000b-\u001f\u007f\ufffe\uffff]/.exec(text);
  if (control !== null) {
    const code = control[0].charCodeAt(0).toString(16).toUpperCase().padStart(4, "0");
    return `the text has the character U+${code}, which a spreadsheet file cannot hold`;
  }
  if (/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/.test(text)) {
    return "the text has half of a character pair, which a spreadsheet file cannot hold";
  }
  return undefined;
}

/**
 * The text as a spreadsheet file can hold it: what XML does not allow shows as "\ufffd", a carriage return as a line
 * feed, and a text too long for a cell ends in a remark that says so.
 * @example legalText("a\u0007b"); // "a\ufffdb"
 */
export function legalText(text: string, longest: number = longestCellText): string {
  const legal = text
    .replace(/\r\n?/g, "\n")
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
    .replace(/[\u0000-\u0008\u000b-\u001f\u007f\ufffe\uffff]/g, "\ufffd")
    .replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, "\ufffd");
  if (legal.length <= longest) return legal;
  const remark = ` … (cut: ${legal.length} characters)`;
  return `${legal.slice(0, longest - remark.length).replace(/[\ud800-\udbff]$/, "")}${remark}`;
}
