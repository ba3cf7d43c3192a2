import { readFileSync } from "node:fs";
import type { SurveySheetName } from "../../lib/survey/columns.js";
import type { SheetToRead } from "../../lib/survey/read-survey.js";
import type { TypedSheet } from "../../lib/survey/survey.js";
import { readFileSheets } from "../../lib/workbook/read/read-file.js";

const folder = new URL("../fixtures/sites/", import.meta.url);

/** The loose sheets of one site, as the surveyor's files hold them. */
export function siteSheets(site: "a" | "b"): readonly SheetToRead[] {
  const files: readonly (readonly [string, SurveySheetName])[] = [
    [`site_${site}_loops`, "Loops"],
    [`site_${site}_site`, "Site"],
    [`site_${site}_radio`, "Radio tests"],
    ...(site === "b" ? ([["site_b_oldzones", "Old zones"]] as const) : []),
  ];
  return files.flatMap(([file, as]) =>
    readFileSheets({ name: `${file}.csv`, bytes: readFileSync(new URL(`${file}.csv`, folder)) }).map((typed) => ({
      typed,
      as,
    })),
  );
}

/** A sheet written here, row 1 first. */
export function sheetOf(name: string, rows: readonly TypedSheet["rows"][number]["cells"][]): TypedSheet {
  return { sheet: name, rows: rows.map((cells, index) => ({ row: index + 1, cells })) };
}

/** Comma separated text as a sheet. */
export function csvSheet(name: string, text: string): TypedSheet {
  const [sheet] = readFileSheets({ name: `${name}.csv`, bytes: new TextEncoder().encode(text) });
  if (sheet === undefined) throw new Error("no sheet");
  return sheet;
}
