import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { runCommand } from "../../lib/command/run-command.js";
import type { Estimate } from "../../lib/estimate/estimate.js";
import type { TypedSheet } from "../../lib/survey/survey.js";
import { readFileSheets } from "../../lib/workbook/read/read-file.js";
import { recalculatedSheets } from "../tools/libreoffice.js";

const site = new URL("../../reference-data/demo/boathouse/", import.meta.url).pathname;
let folder = "";
const at = (name: string): string => join(folder, name);

/** One command line, its words kept off the screen. */
async function loopwright(...args: readonly string[]): Promise<void> {
  const written: string[] = [];
  const spies = [process.stdout, process.stderr].map((stream) =>
    vi.spyOn(stream, "write").mockImplementation((words) => written.push(String(words)) > 0),
  );
  const code = await runCommand(args);
  for (const spy of spies) spy.mockRestore();
  if (code !== 0) throw new Error(`exit ${code}: ${written.join("")}`);
}

const estimateIn = (name: string): Estimate => JSON.parse(readFileSync(at(name), "utf8")) as Estimate;

/** Runs lines of Python on the open workbook `book`, as an estimator's own script would, and saves it. */
function script(from: string, to: string, lines: string): void {
  const program = `
import openpyxl, re
book = openpyxl.load_workbook(${JSON.stringify(at(from))})
bare = lambda text: re.sub(r"^\\u270e\\s*|\\s*\\([^)]*\\)$", "", str(text or ""))
def table(sheet, by):
    sheet = book[sheet]
    for row in sheet.iter_rows():
        heads = {bare(cell.value): cell.column for cell in row}
        if by in heads: return sheet, row[0].row, heads
def rows(sheet, by):
    sheet, start, heads = table(sheet, by)
    return [at for at in range(start + 1, sheet.max_row + 1) if sheet.cell(at, heads[by]).value not in (None, "")]
def put(sheet, by, key, column, value):
    at = [row for row in rows(sheet, by) if str(table(sheet, by)[0].cell(row, table(sheet, by)[2][by]).value) == key]
    assert at, (sheet, key)
    found, _, heads = table(sheet, by)
    for row in at: found.cell(row, heads[column]).value = value
${lines}
book.save(${JSON.stringify(at(to))})
`;
  writeFileSync(at("script.py"), program);
  execFileSync("/usr/bin/python3", [at("script.py")], { cwd: folder });
}

/** What stands in LibreOffice's recalculation beside a label, in the first cell behind it that holds something. */
function beside(sheets: ReadonlyMap<string, string[][]>, sheet: string, label: string): string {
  const row = sheets.get(sheet)?.find((cells) => cells.includes(label));
  return row?.slice(row.indexOf(label) + 1).find((cell) => cell !== "") ?? "";
}
const cents = (shown: string): number => Math.round(Number(shown) * 100);

/** A column of the survey's loops as it stands in a workbook, by key. */
function surveyColumn(name: string, heading: string): ReadonlyMap<string, string> {
  const bytes = new Uint8Array(readFileSync(at(name)));
  const loops: TypedSheet | undefined = readFileSheets({ name, bytes }).find(({ sheet }) => sheet === "Survey Loops");
  const bare = (cell: unknown) => String(cell ?? "").replace(/^✎\s*|\s*\([^)]*\)$/gu, "");
  const [head, ...rows] = loops?.rows ?? [];
  const [key, wanted] = ["Key", heading].map((words) => head?.cells.findIndex((cell) => bare(cell) === words) ?? -1);
  return new Map(rows.map(({ cells }) => [bare(cells[key ?? -1]), bare(cells[wanted ?? -1])]));
}

/** The sentence of the basis that names settings nobody gave. */
const assumedIn = ({ basis }: Estimate): string => basis.find((words) => words.startsWith("Settings not given")) ?? "";

let first: Estimate;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "loopwright-edit-hold-"));
  const sheets = [`--site=${site}site.csv`, `--radio=${site}radio-tests.csv`, `--old-zones=${site}old-zones.csv`];
  await loopwright("estimate", `${site}loops.csv`, ...sheets, "-o", at("first.xlsx"), "--json", at("first.json"));
  first = estimateIn("first.json");
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("an estimate edited in a spreadsheet and run again", () => {
  it("with the plan held gives the cents LibreOffice gives: prices, packs, tax, margin, labour rate and hours changed", async () => {
    const bought = first.bill.filter(({ packs }) => packs > 0);
    const [dear, more] = [bought[0], bought[2]];
    const work = first.labour.find(({ count }) => count > 1);
    expect(bought.length).toBeGreaterThan(3);
    if (!dear || !more || !work) throw new Error("the demo buys and works");
    script(
      "first.xlsx",
      "priced.xlsx",
      `
put("Survey Price book", "Code", ${JSON.stringify(dear.code)}, "Unit price", 143.215)
put("Bill", "Code", ${JSON.stringify(more.code)}, "Packs wanted", ${more.packs + 2})
put("Survey Settings", "Setting", "taxMaterial", "Value", 0.0825)
put("Survey Settings", "Setting", "taxLabour", "Value", 0.0175)
put("Survey Settings", "Setting", "marginMaterial", "Value", 0.31)
put("Survey Settings", "Setting", "labourCostPerHour", "Value", 57.35)
put("Survey Labour", "Task", ${JSON.stringify(work.task)}, "High", ${work.highHours / work.count + 0.02})
`,
    );
    const sheets = await recalculatedSheets(new Uint8Array(readFileSync(at("priced.xlsx"))));
    await loopwright("estimate", at("priced.xlsx"), "-o", at("held.xlsx"), "--json", at("held.json"), "--hold-plan");
    const held = estimateIn("held.json");
    expect(held.price.totalCents).not.toBe(first.price.totalCents);
    expect(held.loops.map(({ treatment }) => treatment)).toEqual(first.loops.map(({ treatment }) => treatment));
    const days = ({ labour }: Estimate) => labour.find(({ task }) => task === "setUpAndCleanUp")?.count;
    // Rates that the estimator wrote count as given, those that the workbook only wrote down as assumed.
    expect(assumedIn(first)).toContain("tax on material");
    expect(assumedIn(held)).not.toContain("tax on material");
    expect(assumedIn(held)).toContain("freight");
    // Hours that would take another day on site are an edit of the plan, which the workbook only flags.
    expect(days(held)).toBe(days(first));
    expect(cents(beside(sheets, "Price", "Cost"))).toBe(held.price.costCents);
    expect(cents(beside(sheets, "Price", "Price before tax"))).toBe(held.price.sellCents);
    expect(cents(beside(sheets, "Price", "Tax"))).toBe(held.price.taxCents);
    expect(cents(beside(sheets, "Summary", "Price with tax"))).toBe(held.price.totalCents);
    expect(beside(sheets, "Summary", "Checks")).toBe("Totals and cross-checks agree");
    expect(beside(sheets, "Summary", "Plan")).toContain("Plan is older than these edits");
  });

  it("honours a pinned treatment, loses no edit when rows were sorted and one put in, and lists what changed", async () => {
    const pinned = first.loops.find(({ treatment }) => treatment === "fitEol");
    const noted = first.loops.find(({ treatment, key }) => treatment === "keep" && key !== pinned?.key);
    if (!pinned || !noted) throw new Error("the demo fits a resistor and keeps a loop");
    const pin = `put("Survey Loops", "Key", ${JSON.stringify(pinned.key)}, "Pin treatment", "wireless")`;
    const note = `put("Survey Loops", "Key", ${JSON.stringify(noted.key)}, "Estimator note", "ring first")`;
    script("first.xlsx", "pinned.xlsx", pin);
    const sheets = await recalculatedSheets(new Uint8Array(readFileSync(at("pinned.xlsx"))));
    expect(beside(sheets, "Summary", "Plan")).toContain("Plan is older than these edits (1)");
    expect(cents(beside(sheets, "Summary", "Price with tax"))).toBe(first.price.totalCents);
    script(
      "first.xlsx",
      "sorted.xlsx",
      `
${pin}
${note}
put("Survey Loops", "Key", ${JSON.stringify(noted.key)}, "As left, shut", "2.20k")
sheet, start, heads = table("Survey Loops", "Key")
filled = rows("Survey Loops", "Key")
values = [[sheet.cell(at, column).value for column in range(1, sheet.max_column + 1)] for at in filled]
values.reverse()
added = [None] * len(values[0])
for heading, value in {"Panel": "P1", "Loop": "15", "What it protects": "yard gate", "Openings": "1", "Device": "surface contact", "Cable": "22/2", "Run one way": "12", "Shut": "2.2", "One opening open": "OL", "Volts DC on lifted pair": "0"}.items():
    added[heads[heading] - 1] = value
values.insert(3, added)
for offset, row in enumerate(values):
    for column, value in enumerate(row, 1): sheet.cell(filled[0] + offset, column).value = value
`,
    );
    await loopwright("estimate", at("sorted.xlsx"), "-o", at("second.xlsx"), "--json", at("second.json"));
    const second = estimateIn("second.json");
    expect(second.loops).toHaveLength(first.loops.length + 1);
    expect(second.loops.find(({ key }) => key === pinned.key)?.treatment).toBe("wireless");
    expect(surveyColumn("second.xlsx", "Pin treatment").get(pinned.key)).toBe("wireless");
    expect(surveyColumn("second.xlsx", "Estimator note").get(noted.key)).toBe("ring first");
    expect([...surveyColumn("second.xlsx", "As left, shut")].filter(([, value]) => value !== "")).toEqual([
      [noted.key, "2.20k"],
    ]);
    for (const { key, panel, loop, tag } of first.loops) {
      expect(second.loops.find((one) => one.key === key)).toMatchObject({ panel, loop, tag });
    }
    expect(assumedIn(second)).toBe(assumedIn(first));
    for (const borrowed of ["No price book was handed in", "No input modules were handed in"]) {
      for (const one of [first, second]) {
        expect(one.queries.filter(({ message }) => message.startsWith(borrowed))).toHaveLength(1);
      }
    }
    const words = second.changes.map((change) => change.words);
    expect(words.some((each) => each.includes(pinned.tag ?? pinned.loop) && each.includes("now wireless"))).toBe(true);
    expect(words.some((each) => each.includes("P1 15") && each.includes("new row"))).toBe(true);
    const listed = await recalculatedSheets(new Uint8Array(readFileSync(at("second.xlsx"))));
    expect(listed.get("Changes")?.flat()).toEqual(expect.arrayContaining(words));
    expect(beside(listed, "Summary", "Changes")).toContain("see the sheet Changes");
  });
});
