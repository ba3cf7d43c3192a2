import { fixedAddress, fixedArea, quotedSheet } from "../../report/addresses.js";
import type { PrintablePlan } from "../../report/printable-plan.js";
import { escapeXml } from "../xml/escape.js";

/** The workbook's names: named cells, and of each sheet what is printed and which row is repeated. */
export function definedNames(plan: PrintablePlan): string {
  const line = (name: string, text: string, sheet?: number): string => {
    const scope = sheet === undefined ? "" : ` localSheetId="${sheet}"`;
    return `<definedName name="${escapeXml(name)}"${scope}>${escapeXml(text)}</definedName>`;
  };
  const ofSheets = plan.sheets.flatMap((sheet, index) => {
    const at = quotedSheet(sheet.name);
    const titles =
      sheet.repeatedRow === undefined
        ? []
        : [line("_xlnm.Print_Titles", `${at}!$${sheet.repeatedRow}:$${sheet.repeatedRow}`, index)];
    return [line("_xlnm.Print_Area", `${at}!${fixedArea(sheet.printArea)}`, index), ...titles];
  });
  const named = plan.names.map(({ name, sheet, row, column }) =>
    line(name, `${quotedSheet(sheet)}!${fixedAddress(row, column)}`),
  );
  return `<definedNames>${[...ofSheets, ...named].join("")}</definedNames>`;
}
