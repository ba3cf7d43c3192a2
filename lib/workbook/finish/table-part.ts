import { areaAddress } from "../../report/addresses.js";
import type { PlannedTable, PlannedTableColumn } from "../../report/printable-plan.js";
import { escapeXml, protectedText } from "../xml/escape.js";
import { declaration, spreadsheetNamespace } from "../xml/namespaces.js";

/** The table part: columns with their one formula and what stands in the totals row. */
export function tablePart(table: PlannedTable, id: number): string {
  const { area } = table;
  const filterArea = { ...area, bottom: table.totalsRow ? area.bottom - 1 : area.bottom };
  const totals = table.totalsRow ? ' totalsRowCount="1"' : ' totalsRowShown="0"';
  const name = escapeXml(table.name);
  return [
    declaration,
    `<table xmlns="${spreadsheetNamespace}" id="${id}" name="${name}" displayName="${name}"`,
    ` ref="${areaAddress(area)}"${totals}>`,
    table.filter ? `<autoFilter ref="${areaAddress(filterArea)}"/>` : "",
    `<tableColumns count="${table.columns.length}">`,
    ...table.columns.map(columnXml),
    "</tableColumns>",
    '<tableStyleInfo name="TableStyleLight1" showFirstColumn="0" showLastColumn="0" showRowStripes="0" showColumnStripes="0"/>',
    "</table>",
  ].join("");
}

function columnXml(column: PlannedTableColumn, index: number): string {
  const total =
    column.totalText !== undefined
      ? ` totalsRowLabel="${escapeXml(protectedText(column.totalText))}"`
      : column.totalFormula !== undefined
        ? ' totalsRowFunction="custom"'
        : "";
  const children = [
    column.formula === undefined
      ? ""
      : `<calculatedColumnFormula>${escapeXml(column.formula)}</calculatedColumnFormula>`,
    column.totalFormula === undefined ? "" : `<totalsRowFormula>${escapeXml(column.totalFormula)}</totalsRowFormula>`,
  ].join("");
  const open = `<tableColumn id="${index + 1}" name="${escapeXml(protectedText(column.heading))}"${total}`;
  return children === "" ? `${open}/>` : `${open}>${children}</tableColumn>`;
}
