import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { ExcelConnection } from "../../../addin/sheet/connection.js";
import type { PictureBlock } from "../../../lib/report/model.js";
import type { SurveySheetName } from "../../../lib/survey/columns.js";
import { readSurvey, type SurveyRead } from "../../../lib/survey/read-survey.js";
import { renderPicture } from "../../../lib/workbook/finish/render-picture.js";
import { readFileSheets } from "../../../lib/workbook/read/read-file.js";
import type { ExcelHost } from "../../excel-host/excel-host.js";

/** The add-in's way to the host, as it finds Excel in its window. */
export const connectionTo = (host: ExcelHost): ExcelConnection => ({
  excel: host.excel,
  supports: (version) => host.supports("ExcelApi", version),
});

/** The invented boathouse as its loose sheets were typed. */
export async function boathouse(): Promise<SurveyRead> {
  const files: readonly (readonly [string, SurveySheetName])[] = [
    ["loops.csv", "Loops"],
    ["site.csv", "Site"],
    ["radio-tests.csv", "Radio tests"],
    ["old-zones.csv", "Old zones"],
  ];
  const sheets = [];
  for (const [name, as] of files) {
    const path = fileURLToPath(new URL(`../../../reference-data/demo/boathouse/${name}`, import.meta.url));
    const [typed] = await readFileSheets({ name, bytes: readFileSync(path) });
    if (typed !== undefined) sheets.push({ typed, as });
  }
  return readSurvey({ sheets });
}

const pngs = new Map<string, string>();

/** Pictures as the file writer draws them; the page draws them on a canvas instead. Each is drawn once. */
export const drawn = (picture: PictureBlock): Promise<string> => {
  const png = pngs.get(picture.svg) ?? Buffer.from(renderPicture(picture)).toString("base64");
  pngs.set(picture.svg, png);
  return Promise.resolve(png);
};
