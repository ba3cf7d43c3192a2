// Our workbook writer against exceljs alone writing the same cells with the same styles: CPU time, in one run.
import ExcelJS from "exceljs";
import { binary, call, literal, thisRow } from "../../dist/report/formula.js";
import { printablePlan } from "../../dist/report/printable-plan.js";
import { styleBook } from "../../dist/workbook/write/styles.js";
import { writeWorkbook } from "../../dist/workbook/write/write-workbook.js";

const rows = 2000;
const kinds = ["Door", "Window", "Motion", "Glass"];

/** An invented list of 2,000 rows and 12 columns, two of them formulas, three times over. */
function report() {
  const column = (key, format, width, more = {}) => ({ key, heading: key, format, width, ...more });
  const line = call("ROUND", binary(thisRow("quantity"), "*", thisRow("price")), literal(2));
  const sheet = (number) => ({
    name: `List ${number}`,
    headingOf: `List_${number}`,
    blocks: [
      {
        kind: "table",
        name: `List_${number}`,
        whenEmpty: "none",
        filter: true,
        columns: [
          column("key", "text", 9),
          column("place", "wrapped", 22),
          column("kind", "text", 10),
          column("closed", "ohms", 10),
          column("opened", "ohms", 10),
          column("run", "meters", 9),
          column("chance", "percent", 9),
          column("reason", "wrapped", 40),
          column("quantity", "count", 9, { input: { kind: "number", minimum: 0, message: "0 or more." } }),
          column("price", "money", 12),
          column("line", "money", 12, { formula: line, total: { kind: "sum" } }),
          column("tax", "money", 12, {
            formula: call("ROUND", binary(thisRow("line"), "*", literal(0.2)), literal(2)),
          }),
        ],
        rows: Array.from({ length: rows }, (_, row) => [
          { kind: "text", text: `R${row}` },
          { kind: "text", text: `Floor ${row % 7}, room ${row}` },
          { kind: "text", text: kinds[row % kinds.length] },
          { kind: "number", value: 4 + (row % 90) / 3 },
          { kind: "number", value: 2200 + (row % 50) },
          { kind: "number", value: 12 + (row % 60) },
          { kind: "number", value: (row % 20) / 20 },
          { kind: "text", text: `Reading ${row % 31} fits the run; one joint was not seen.` },
          { kind: "number", value: row % 9 },
          { kind: "money", cents: 100 + ((row * 37) % 9000) },
          { kind: "calculated" },
          { kind: "calculated" },
        ]),
      },
    ],
  });
  return {
    title: "Bench",
    job: "Bench",
    revision: "1",
    date: "2025-01-01",
    currency: "EUR",
    paper: "A4",
    sheets: [1, 2, 3].map(sheet),
  };
}

/** What anybody would write with exceljs for the same cells: values, formulas, styles, widths. */
async function exceljsAlone(plan) {
  const book = new ExcelJS.Workbook();
  const styles = styleBook(plan.currency);
  for (const planned of plan.sheets) {
    const sheet = book.addWorksheet(planned.name);
    sheet.columns = planned.columnWidths.map((width) => ({ width }));
    for (const { row, column, content, ...style } of planned.cells) {
      const cell = sheet.getCell(row, column);
      if (content.kind === "text") cell.value = content.text;
      if (content.kind === "number") cell.value = content.value;
      if (content.kind === "formula") cell.value = { formula: content.text, result: content.cached };
      cell.style = styles.of(style);
    }
  }
  return book.xlsx.writeBuffer();
}

async function cpuSeconds(work) {
  const start = process.cpuUsage();
  await work();
  const used = process.cpuUsage(start);
  return (used.user + used.system) / 1e6;
}

const median = (values) => [...values].sort((one, other) => one - other)[Math.floor(values.length / 2)];

export async function bench() {
  const sheets = report();
  const plan = printablePlan(sheets);
  const cells = plan.sheets.reduce((sum, sheet) => sum + sheet.cells.length, 0);
  await writeWorkbook(plan);
  await exceljsAlone(plan);
  const ours = [];
  const alone = [];
  const planning = [];
  for (let round = 0; round < 3; round += 1) {
    ours.push(await cpuSeconds(() => writeWorkbook(plan)));
    alone.push(await cpuSeconds(() => exceljsAlone(plan)));
    planning.push(await cpuSeconds(async () => printablePlan(sheets)));
  }
  return [
    { name: `cells in three sheets of ${rows} rows`, value: cells, unit: "cells" },
    { name: "layout, checks, evaluation", value: median(planning), unit: "CPU s" },
    { name: "our writer with finishing pass", value: median(ours), unit: "CPU s" },
    { name: "exceljs alone, same cells", value: median(alone), unit: "CPU s" },
    { name: "our writer over exceljs alone", value: median(ours) / median(alone), unit: "times" },
    {
      name: "layout and writer over exceljs alone",
      value: (median(ours) + median(planning)) / median(alone),
      unit: "times",
    },
  ];
}
