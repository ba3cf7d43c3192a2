import { beforeAll, describe, expect, test } from "vitest";
import { setUpSurvey } from "../../../addin/commands/set-up-survey.js";
import { createEngine } from "../../../addin/pane/engine/create-engine.js";
import { doJobs } from "../../../addin/pane/engine/do-jobs.js";
import type { Engine } from "../../../addin/pane/engine/engine-state.js";
import { excelWorkbook } from "../../../addin/pane/engine/excel-workbook.js";
import { solveWithHighs } from "../../../lib/solver/highs.js";
import type { Survey } from "../../../lib/survey/survey.js";
import { renderPicture } from "../../../lib/workbook/finish/render-picture.js";
import { ExcelHost } from "../../excel-host/excel-host.js";
import { boathouse, connectionTo, drawn } from "../sheet/demo.js";
import { sheetOf } from "../sheet/state.js";

const date = "2026-03-02";
const today = () => date;

/** A pane beside a workbook in memory, which the vendor's own client library talks to. */
function paneBeside(host: ExcelHost): Engine {
  return createEngine({
    host: "excel",
    jobs: doJobs({ solve: solveWithHighs, renderPicture }),
    demoFiles: () => Promise.resolve([]),
    today,
    workbook: excelWorkbook({ connection: connectionTo(host), renderPicture: drawn, today, solve: solveWithHighs }),
  });
}

describe("the pane beside a workbook", () => {
  let host: ExcelHost;
  let engine: Engine;
  let survey: Survey;

  beforeAll(async () => {
    const demo = (await boathouse()).survey;
    survey = { ...demo, loops: demo.loops.slice(0, 3), oldZones: [], radioTests: [] };
    expect(survey.loops.length).toBe(3);
    host = new ExcelHost();
    engine = paneBeside(host);
  });

  test("an empty workbook: setting up adds the tables, reading says that no loop is there", async () => {
    const empty = new ExcelHost();
    const pane = paneBeside(empty);
    await pane.setUpSurvey();
    expect(pane.state.problem).toBeNull();
    expect(empty.book.sheets.map(({ name }) => name)).toContain("Survey Loops");
    await pane.readFromWorkbook();
    expect(pane.state.problem?.words).toMatch(/no loop below/);
  });

  test("reads the survey, works it out, jumps to a cell by heading and row", async () => {
    await setUpSurvey({ connection: connectionTo(host), date, survey });
    await engine.readFromWorkbook();
    expect(engine.state.problem).toBeNull();
    expect(engine.state.source).toBe("this workbook");
    expect(engine.state.sheets.find(({ name }) => name === "Survey Loops")?.as).toBe("Loops");
    expect(engine.state.survey?.loops.map(({ key }) => key)).toEqual(survey.loops.map(({ key }) => key));
    await engine.workOut({ prove: false });
    expect(engine.state.estimate?.loops.length).toBe(3);
    expect(await engine.jumpTo({ sheet: "Survey Loops", row: 3, column: "closed" })).toEqual({
      shown: true,
      words: "Survey Loops, row 3, closed",
    });
    const { selected } = host.book;
    expect(selected?.sheet.name).toBe("Survey Loops");
    expect(selected?.box.top).toBe(2);
    const heading = sheetOf(host, "Survey Loops").tables[0]?.headings()[selected?.box.left ?? -1];
    expect(heading?.toLowerCase()).toContain("shut");
    expect(await engine.jumpTo({ sheet: "No such sheet", row: 3, column: null })).toMatchObject({ shown: false });
    expect(engine.state.problem).toBeNull();
  });

  test("wishes are kept when the workbook is read again, and written beside their loops with the report", async () => {
    const key =
      engine.state.estimate?.loops.find((loop) => engine.state.choices[loop.key]?.includes("wireless"))?.key ?? "";
    engine.pin(key, "wireless");
    engine.forbid(key, "retire");
    await engine.readFromWorkbook();
    expect(engine.state.wishes[key]).toEqual({ pin: "wireless", forbid: ["retire"] });
    await engine.writeToWorkbook();
    expect(engine.state.problem).toBeNull();
    const sheets = host.book.sheets.map(({ name }) => name);
    for (const name of ["Summary", "Loops", "Bill", "Survey Loops"]) expect(sheets).toContain(name);
    const row = engine.state.survey?.loops.find((loop) => loop.key === key)?.row ?? 0;
    const loops = sheetOf(host, "Survey Loops");
    const headings = loops.tables[0]?.headings() ?? [];
    const typed = (heading: string) => loops.cells.content(row - 1, headings.indexOf(heading))?.value;
    expect(
      headings
        .filter((heading) => /pin|forbid/i.test(heading))
        .map(typed)
        .sort(),
    ).toEqual(["retire", "wireless"]);
    // What the pane shows is what was written.
    expect(engine.state.stale).toBe(false);
    expect(engine.state.canUndo).toBe(false);
    expect(engine.state.wishes[key]).toEqual({ pin: "wireless", forbid: ["retire"] });
    expect(engine.state.estimate?.loops.find((loop) => loop.key === key)?.treatment).toBe("wireless");
  });

  test("rows sorted since they were read: a wish lands beside the row that has the loop's key, or is refused in words", async () => {
    const sheet = sheetOf(host, "Survey Loops");
    const [table] = sheet.tables;
    if (table === undefined) throw new Error("no table");
    const headings = table.headings();
    const column = (name: RegExp) => headings.findIndex((heading) => name.test(heading));
    const [keyAt, pinAt] = [column(/^key/i), column(/pin/i)];
    const { top } = table.body;
    const bottom = top + survey.loops.length - 1;
    const at = (row: number, col: number) => sheet.cells.content(row, col)?.value;
    const keys = Array.from({ length: bottom - top + 1 }, (_, index) => at(top + index, keyAt));
    expect(keys).toEqual(survey.loops.map(({ key }) => key));
    // The last row comes first.
    headings.forEach((_, col) => {
      const [first, last] = [sheet.cells.content(top, col), sheet.cells.content(bottom, col)];
      sheet.cells.write(top, col, last);
      sheet.cells.write(bottom, col, first);
    });
    const moved = survey.loops.find(
      ({ key }) => key === keys.at(-1) && engine.state.choices[key]?.includes("wireless"),
    );
    if (moved === undefined) throw new Error("the moved loop has no choice");
    engine.pin(moved.key, "wireless");
    await engine.writeToWorkbook();
    expect(engine.state.problem).toBeNull();
    expect([at(top, keyAt), at(top, pinAt)]).toEqual([moved.key, "wireless"]);

    sheet.cells.write(top, keyAt, { value: "R900" });
    engine.forbid(moved.key, "retire");
    await engine.writeToWorkbook();
    expect(engine.state.problem?.words).toContain(`The row of loop ${moved.key} is no longer where it was read`);
  });

  test("a cell that is being edited: said in words, nothing lost", async () => {
    host.cellEdit = true;
    await engine.readFromWorkbook();
    host.cellEdit = false;
    expect(engine.state.problem?.words).toMatch(/still being edited/);
    expect(engine.state.survey?.loops.length).toBe(3);
  });
});
