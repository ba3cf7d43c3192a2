import { invalid } from "./host-object.js";
import type { Book } from "./workbook.js";

/** Excel refuses a formula that names a table, a column or a sheet which is not there. */
export function checkFormula(book: Book, formula: string): void {
  const bare = formula.replace(/"(?:[^"]|"")*"/g, '""');
  for (const [, quoted] of bare.matchAll(/'((?:[^']|'')+)'!/g)) {
    const name = (quoted ?? "").replaceAll("''", "'");
    if (!book.sheets.some((sheet) => sheet.name === name)) throw invalid(`${formula}: there is no sheet ${name}`);
  }
  for (const [, name, special, inner, plain] of bare.matchAll(
    /([A-Za-z_][\w.]*)\[(?:(?:\[(#[^\]]+)\],)?\[((?:[^\]']|'.)+)\]|((?:[^[\]']|'.)+))\]/g,
  )) {
    const table = book.tables().find((one) => one.name.toLowerCase() === name?.toLowerCase());
    if (table === undefined) throw invalid(`${formula}: there is no table ${name}`);
    if (special !== undefined && special !== "#This Row" && special !== "#Totals")
      throw invalid(`${formula}: ${special}`);
    if (special === "#Totals" && !table.totals) throw invalid(`${formula}: ${name} has no totals row`);
    const column = (inner ?? plain ?? "").replace(/'([\s\S])/g, "$1");
    if (!table.headings().some((heading) => heading.toLowerCase() === column.toLowerCase()))
      throw invalid(`${formula}: ${name} has no column ${column}`);
  }
}
