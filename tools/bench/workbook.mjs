// Our workbook writer against exceljs alone writing the same cells with the same styles: CPU time, in one run.
import { readFileSync } from "node:fs";
import ExcelJS from "exceljs";
import { estimateJob } from "../../dist/estimate/estimate-job.js";
import { binary, call, literal, thisRow } from "../../dist/report/formula.js";
import { printablePlan } from "../../dist/report/printable-plan.js";
import { solveWithHighs } from "../../dist/solver/highs.js";
import { readSurvey } from "../../dist/survey/read-survey.js";
import { estimateWorkbookReport } from "../../dist/workbook/estimate-workbook.js";
import { readFileSheets } from "../../dist/workbook/read/read-file.js";
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

/** A survey and estimate of 2,000 loops: the demo's twenty, a hundred times over, each with a key and panel of its own. */
async function manyLoops() {
  const site = new URL("../../reference-data/demo/boathouse/", import.meta.url);
  const files = {
    "loops.csv": "Loops",
    "site.csv": "Site",
    "old-zones.csv": "Old zones",
    "radio-tests.csv": "Radio tests",
  };
  const sheets = Object.entries(files).flatMap(([name, as]) =>
    readFileSheets({ name, bytes: new Uint8Array(readFileSync(new URL(name, site))) }).map((typed) => ({ typed, as })),
  );
  const { survey, headings } = readSurvey({ sheets });
  const estimate = await estimateJob({ survey, solve: solveWithHighs, seconds: 5 });
  const copies = Array.from({ length: 100 }, (_, index) => index);
  const key = (old, copy) => `${old}C${copy}`;
  const panel = (old, copy) => `${old}-${copy}`;
  return {
    headings,
    survey: {
      ...survey,
      loops: copies.flatMap((copy) =>
        survey.loops.map((loop) => ({ ...loop, key: key(loop.key, copy), panel: panel(loop.panel, copy) })),
      ),
    },
    estimate: {
      ...estimate,
      site: { ...estimate.site, panels: copies.flatMap((copy) => estimate.site.panels.map((one) => panel(one, copy))) },
      loops: copies.flatMap((copy) =>
        estimate.loops.map((loop) => ({
          ...loop,
          key: key(loop.key, copy),
          panel: panel(loop.panel, copy),
          input: loop.input && { ...loop.input, module: `${loop.input.module}-${copy}` },
        })),
      ),
      terminals: copies.flatMap((copy) =>
        estimate.terminals.map((row) => ({
          ...row,
          loop: key(row.loop, copy),
          panel: panel(row.panel, copy),
          module: `${row.module}-${copy}`,
        })),
      ),
    },
  };
}

async function wholeJob() {
  const job = await manyLoops();
  let report;
  const laidOut = await cpuSeconds(async () => {
    report = estimateWorkbookReport({ ...job, date: "2025-01-01" });
  });
  let plan;
  const planned = await cpuSeconds(async () => {
    plan = printablePlan(report);
  });
  const pictures = plan.sheets.reduce((sum, sheet) => sum + sheet.pictures.length, 0);
  let bytes;
  const withPictures = await cpuSeconds(async () => {
    bytes = await writeWorkbook(plan);
  });
  // Pictures are apart, planning too.
  const bare = { ...plan, sheets: plan.sheets.map((sheet) => ({ ...sheet, pictures: [] })) };
  const wrote = await cpuSeconds(() => writeWorkbook(bare));
  const read = await cpuSeconds(async () => readFileSheets({ name: "job.xlsx", bytes }));
  // exceljs reads back what it wrote itself: the same cells without tables, links and merged cells.
  let plain;
  const aloneWrote = await cpuSeconds(async () => {
    plain = await exceljsAlone(plan);
  });
  const aloneRead = await cpuSeconds(() => new ExcelJS.Workbook().xlsx.load(plain));
  const cells = plan.sheets.reduce((sum, sheet) => sum + sheet.cells.length, 0);
  const ours = read + laidOut + planned + wrote;
  return [
    { name: `estimate of ${job.survey.loops.length} loops`, value: cells, unit: "cells" },
    { name: "  our reader", value: read, unit: "CPU s" },
    { name: "  content of the sheets", value: laidOut, unit: "CPU s" },
    { name: "  layout, checks, evaluation", value: planned, unit: "CPU s" },
    { name: "  our writer with finishing pass, no pictures", value: wrote, unit: "CPU s" },
    { name: "  exceljs alone writes the same cells", value: aloneWrote, unit: "CPU s" },
    { name: "  exceljs alone reads them", value: aloneRead, unit: "CPU s" },
    { name: "  ours over exceljs alone (at most 2)", value: ours / (aloneWrote + aloneRead), unit: "times" },
    { name: `  beside that, ${pictures} pictures`, value: withPictures - wrote, unit: "CPU s" },
    { name: "  the file with its pictures", value: bytes.length / 1024 / 1024, unit: "MB" },
  ];
}

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
    ...(await wholeJob()),
  ];
}
