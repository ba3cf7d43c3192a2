/// <reference types="office-js" />
import { areaAddress, type PlannedSheet, type PrintablePlan } from "../loopwright.js";
import { type Batch, bytesPerAction } from "./batch.js";

const tabColours = { input: "#FFC000", working: "#7F7F7F", output: "#1F4E79" } as const;
const inches = (length: number): number => length * 72;

/** Tab, grid lines, paper, header and footer as the file has them. */
export async function writePage(batch: Batch, planned: PlannedSheet, plan: PrintablePlan): Promise<void> {
  const sheet = batch.context.workbook.worksheets.getItem(planned.name);
  await batch.room(bytesPerAction * (22 + planned.breaks.length * 2));
  sheet.tabColor = tabColours[planned.part];
  sheet.showGridlines = false;
  const page = sheet.pageLayout;
  page.orientation = planned.orientation === "landscape" ? "Landscape" : "Portrait";
  page.paperSize = plan.paper === "A4" ? "A4" : "Letter";
  // One page wide, as many long as it takes.
  page.zoom = { horizontalFitToPages: 1 };
  page.leftMargin = inches(0.6);
  page.rightMargin = inches(0.5);
  page.topMargin = inches(0.8);
  page.bottomMargin = inches(0.7);
  page.headerMargin = inches(0.35);
  page.footerMargin = inches(0.35);
  page.setPrintArea(areaAddress(planned.printArea));
  if (planned.repeatedRow !== undefined) page.setPrintTitleRows(`$${planned.repeatedRow}:$${planned.repeatedRow}`);
  const every = page.headersFooters.defaultForAllPages;
  every.leftHeader = headerText(plan.job);
  every.centerHeader = "&A";
  every.rightHeader = headerText(plan.date);
  every.leftFooter = headerText(plan.revision);
  every.centerFooter = headerText(plan.title);
  every.rightFooter = "Page &P of &N";
  for (const row of planned.breaks) sheet.horizontalPageBreaks.add(`A${row + 1}`);
}

/** "&" begins a code in headers; a digit right behind a code would be read as a font size. */
const headerText = (text: string): string =>
  text
    .replaceAll("&", "&&")
    .replace(/^(?=\d)/, " ")
    .slice(0, 255);
