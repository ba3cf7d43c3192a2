import type { PrintablePlan } from "../../report/printable-plan.js";
import { renderPicture } from "../finish/render-picture.js";
import { workbookBytes } from "./workbook-bytes.js";

/** The .xlsx file of a printable plan, in Node. The same plan gives the same bytes. */
export function writeWorkbook(plan: PrintablePlan): Promise<Uint8Array> {
  return workbookBytes(plan, renderPicture);
}
