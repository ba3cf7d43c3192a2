import type { PrintablePlan } from "../loopwright.js";
import type { LiveNames, LiveWorkbook } from "./live-workbook.js";

/** A sheet that gets another name before anything is written. */
export interface Rename {
  readonly from: string;
  readonly to: string;
}

const alike = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase();

/**
 * Sheets that must change their name: a survey sheet that stands under the name of a report sheet moves aside ("Loops"
 * to "Survey Loops"), and a report sheet that somebody renamed gets its name back, because formulas name it.
 */
export function renamesFor(plan: PrintablePlan, { sheetNames, tableSheets, marks }: LiveNames): readonly Rename[] {
  const renames: Rename[] = [];
  const names = [...sheetNames];
  const rename = (from: string, to: string) => {
    renames.push({ from, to });
    names[names.indexOf(from)] = to;
  };
  for (const { name, part, tables } of plan.sheets) {
    const stands = part === "input" ? tables.map((table) => tableSheets.get(table.name)).find(Boolean) : undefined;
    const inTheWay = stands !== undefined && stands !== name && plan.sheets.some((one) => alike(one.name, stands));
    if (inTheWay && names.includes(stands) && !names.some((one) => alike(one, name))) rename(stands, name);
  }
  for (const { name } of plan.sheets) {
    if (names.includes(name)) continue;
    const same = names.find((one) => alike(one, name));
    const ours = names.find((one) => marks.get(one) === name && !plan.sheets.some((sheet) => sheet.name === one));
    const from = same ?? ours;
    if (from !== undefined) rename(from, name);
  }
  return renames;
}

/** The workbook as it will be found once the sheets have their new names. */
export function renamed(live: LiveWorkbook, renames: readonly Rename[]): LiveWorkbook {
  if (renames.length === 0) return live;
  const now = (name: string) => renames.find(({ from }) => from === name)?.to ?? name;
  return {
    ...live,
    sheetNames: live.sheetNames.map(now),
    tableSheets: new Map([...live.tableSheets].map(([table, sheet]) => [table, now(sheet)])),
    marks: new Map([...live.marks].map(([sheet, planned]) => [now(sheet), planned])),
    tables: live.tables.map((table) => ({ ...table, sheet: now(table.sheet) })),
    sheets: new Map(
      [...live.sheets].map(([name, sheet]) => [
        now(name),
        { ...sheet, name: now(name), contents: { ...sheet.contents, name: now(name) } },
      ]),
    ),
  };
}
