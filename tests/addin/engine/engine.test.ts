import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import { createEngine } from "../../../addin/pane/engine/create-engine.js";
import { doJobs } from "../../../addin/pane/engine/do-jobs.js";
import type { Engine, EngineState, FileToOpen } from "../../../addin/pane/engine/engine-state.js";
import { estimateJob } from "../../../lib/estimate/estimate-job.js";
import { solveWithHighs } from "../../../lib/solver/highs.js";
import { readSurvey } from "../../../lib/survey/read-survey.js";
import { renderPicture } from "../../../lib/workbook/finish/render-picture.js";
import { readFileSheets } from "../../../lib/workbook/read/read-file.js";

const date = "2026-03-02";
const names = ["loops.csv", "site.csv", "radio-tests.csv", "old-zones.csv"];
const file = (name: string): FileToOpen => ({
  name,
  bytes: readFileSync(new URL(`../../../reference-data/demo/boathouse/${name}`, import.meta.url)),
});
const demoFiles = () => Promise.resolve(names.map(file));

/** The first loops of the invented boathouse, for runs that prove and compare. */
const fewLoops = (count: number): FileToOpen => {
  const lines = new TextDecoder().decode(file("loops.csv").bytes).split(/\r?\n/);
  return { name: "loops.csv", bytes: new TextEncoder().encode(lines.slice(0, count + 1).join("\n")) };
};

function engineHere(): { readonly engine: Engine; readonly states: EngineState[] } {
  const states: EngineState[] = [];
  const jobs = doJobs({ solve: solveWithHighs, renderPicture });
  const engine = createEngine({ host: "browser", jobs, demoFiles, today: () => date });
  engine.subscribe((state) => states.push(state));
  return { engine, states };
}

const asText = (text: string): FileToOpen => ({ name: "loops.csv", bytes: new TextEncoder().encode(text) });

describe("opening", () => {
  test("the demo: every sheet taken for its table, headings shown as understood, queries with their places", async () => {
    const { engine, states } = engineHere();
    expect(engine.state.survey).toBeNull();
    await engine.demo();
    const { state } = engine;
    expect(state.problem).toBeNull();
    expect(state.demo).toBe(true);
    expect(Object.fromEntries(state.sheets.map(({ name, as }) => [name, as]))).toEqual({
      loops: "Loops",
      site: "Site",
      "radio-tests": "Radio tests",
      "old-zones": "Old zones",
    });
    const rows = parse(file("loops.csv").bytes).length - 1;
    expect(rows).toBeGreaterThan(15);
    expect(state.survey?.loops.length).toBe(rows);
    expect(state.headings.filter(({ sheet }) => sheet === "loops").length).toBeGreaterThan(10);
    expect(state.queries.some(({ sheet, row }) => sheet === "loops" && row !== null)).toBe(true);
    expect(states.some(({ progress }) => progress?.activity === "opening")).toBe(true);
    expect(state.progress).toBeNull();
  });

  test("what is no spreadsheet is refused in words, and what was open stays open", async () => {
    const { engine } = engineHere();
    await engine.openFiles([fewLoops(3)]);
    await engine.openFiles([{ name: "plan.pdf", bytes: new TextEncoder().encode("%PDF-1.7 …") }]);
    expect(engine.state.problem?.words).toMatch(/plan\.pdf is a PDF/);
    expect(engine.state.survey?.loops.length).toBe(3);
    engine.dismissProblem();
    expect(engine.state.problem).toBeNull();
  });

  test("two files with a sheet of the same name keep both, told apart by the file's", async () => {
    const { engine } = engineHere();
    await engine.openFiles([fewLoops(3), { ...fewLoops(2), name: "folder/loops.csv" }]);
    expect(engine.state.sheets.map(({ name }) => name)).toEqual(["loops", "folder/loops.csv loops"]);
  });

  test("a heading nobody understands can be given its column, and taken back", async () => {
    const { engine } = engineHere();
    await engine.openFiles([asText("loop,openings,shut,xyzzy\n1,1,2.3,OL\n2,1,2.2k,OL\n")]);
    expect(engine.state.headings.find(({ heading }) => heading === "xyzzy")?.column).toBeNull();
    await engine.takeHeadingAs("loops", "xyzzy", "opened");
    expect(engine.state.problem).toBeNull();
    expect(engine.state.headings.find(({ heading }) => heading === "xyzzy")?.column).toBe("opened");
    expect(engine.state.survey?.loops[0]?.opened?.[0]?.reading.ohms).toBe("OL");
    engine.undo();
    expect(engine.state.headings.find(({ heading }) => heading === "xyzzy")?.column).toBeNull();
    await engine.takeHeadingAs("loops", "xyzzy", "no such column");
    expect(engine.state.problem?.words).toMatch(/no column/);
  });

  test("a survey as JSON stands alone; what is no JSON is refused", async () => {
    const { engine } = engineHere();
    const json = (text: string): FileToOpen => ({ name: "survey.json", bytes: new TextEncoder().encode(text) });
    await engine.openFiles([json('{"loops":[{"loop":"1","openings":1,"closed":"2.3","opened":"OL"}]}')]);
    expect(engine.state.problem).toBeNull();
    expect(engine.state.survey?.loops.map(({ loop, closed }) => [loop, closed?.ohms])).toEqual([["1", 2.3]]);
    await engine.openFiles([json("{}"), fewLoops(2)]);
    expect(engine.state.problem?.words).toMatch(/stands alone/);
    await engine.openFiles([json("{")]);
    expect(engine.state.problem?.words).toMatch(/survey\.json is no JSON/);
    expect(engine.state.survey?.loops.length).toBe(1);
  });

  test("a sheet can be left out", async () => {
    const { engine } = engineHere();
    await engine.demo();
    expect(engine.state.survey?.radioTests.length).toBeGreaterThan(0);
    await engine.takeSheetAs("radio-tests", null);
    expect(engine.state.survey?.radioTests).toEqual([]);
    expect(engine.state.sheets.find(({ name }) => name === "radio-tests")?.as).toBeNull();
  });
});

describe("working out", () => {
  test("the same estimate as the library's own, with a progress that never falls", async () => {
    const { engine, states } = engineHere();
    const files = [fewLoops(3), file("site.csv")];
    await engine.openFiles(files);
    await engine.workOut();
    expect(engine.state.problem).toBeNull();
    const sheets = files.flatMap((one) => readFileSheets(one).map((typed) => ({ typed })));
    const { survey } = readSurvey({ sheets });
    expect(engine.state.estimate).toEqual(await estimateJob({ survey, solve: solveWithHighs }));
    expect(engine.state.stale).toBe(false);
    const shares = states.flatMap(({ progress }) =>
      progress?.activity === "working out" ? [progress.share ?? 0] : [],
    );
    expect(shares.length).toBeGreaterThan(5);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
    // The plan was shown before it was compared.
    expect(states.some(({ estimate }) => estimate !== null && estimate.options === null)).toBe(true);
    expect(engine.state.estimate?.options?.length).toBeGreaterThan(1);
  });

  test("pins: what can be pinned, the price moves, undo brings the former estimate back", async () => {
    const { engine } = engineHere();
    await engine.demo();
    await engine.workOut({ prove: false });
    const first = engine.state.estimate;
    expect(first?.loops.length).toBeGreaterThan(15);
    const excluded = first?.loops.find(({ treatment }) => treatment === "excluded");
    expect(engine.state.choices[excluded?.key ?? ""]).toEqual([]);
    const kept = first?.loops.find(
      ({ key, treatment }) => treatment === "keep" && engine.state.choices[key]?.includes("wireless"),
    );
    const key = kept?.key ?? "";
    engine.pin(key, "wireless");
    expect(engine.state.stale).toBe(true);
    expect(engine.state.estimate).toBe(first);
    expect(engine.state.wishes[key]).toEqual({ pin: "wireless", forbid: [] });
    await engine.workOut({ prove: false });
    expect(engine.state.estimate?.loops.find((loop) => loop.key === key)?.treatment).toBe("wireless");
    expect(engine.state.estimate?.price.totalCents).not.toBe(first?.price.totalCents);
    expect(engine.state.before?.totalCents).toBe(first?.price.totalCents);
    engine.undo();
    expect(engine.state.estimate).toBe(first);
    expect(engine.state.stale).toBe(false);
    expect(engine.state.wishes).toEqual({});
    engine.redo();
    expect(engine.state.estimate?.loops.find((loop) => loop.key === key)?.treatment).toBe("wireless");
    engine.forbid(key, "wireless");
    expect(engine.state.wishes[key]).toEqual({ pin: null, forbid: ["wireless"] });
    expect(engine.state.canRedo).toBe(false);
    engine.clearWish(key);
    expect(engine.state.wishes).toEqual({});
  });

  test("a wish typed in the survey shows, and can be overruled", async () => {
    const { engine } = engineHere();
    const head = "loop,openings,ohms shut,ohms opened,pinTreatment,forbid";
    await engine.openFiles([asText(`${head}\n1,1,2.3,OL,wireless,\n2,1,2.2k,OL,,"repair, retire"\n`)]);
    const [one, two] = engine.state.survey?.loops.map(({ key }) => key) ?? [];
    expect(engine.state.wishes[one ?? ""]).toEqual({ pin: "wireless", forbid: [] });
    expect(engine.state.wishes[two ?? ""]).toEqual({ pin: null, forbid: ["repair", "retire"] });
    engine.clearWish(one ?? "");
    expect(Object.keys(engine.state.wishes)).toEqual([two]);
    expect(engine.state.survey?.loops[0]?.edits.pinTreatment).toBeUndefined();
    expect(engine.state.survey?.loops[0]?.typed["pinTreatment"]).toBeUndefined();
  });

  test("a run that is ended shows the best plan so far, without comparisons", async () => {
    const { engine } = engineHere();
    await engine.demo();
    const end = engine.subscribe(({ progress }) => {
      if (progress?.words !== "Proving the plan") return;
      end();
      engine.cancel();
    });
    await engine.workOut();
    expect(engine.state.problem).toBeNull();
    expect(engine.state.progress).toBeNull();
    expect(engine.state.estimate?.loops.length).toBeGreaterThan(15);
    expect(engine.state.estimate?.options).toBeNull();
  });
});

describe("what comes out", () => {
  test("the workbook reads back as the same survey with the wishes in it, and prices the same when held", async () => {
    const { engine } = engineHere();
    await engine.openFiles([fewLoops(4), file("site.csv")]);
    await engine.workOut({ prove: false });
    const key = engine.state.estimate?.loops.find((loop) => engine.state.choices[loop.key]?.includes("wireless"))?.key;
    engine.pin(key ?? "", "wireless");
    await engine.workOut({ prove: false });
    const saved = await engine.exportWorkbook();
    expect(saved?.name).toMatch(/-estimate\.xlsx$/);
    const again = engineHere().engine;
    await again.openFiles([{ name: "estimate.xlsx", bytes: saved?.bytes ?? new Uint8Array() }]);
    expect(again.state.problem).toBeNull();
    expect(again.state.survey?.loops.map((loop) => loop.key)).toEqual(
      engine.state.survey?.loops.map((loop) => loop.key),
    );
    expect(again.state.wishes[key ?? ""]).toEqual({ pin: "wireless", forbid: [] });
    await again.workOut({ prove: false });
    expect(again.state.estimate?.price.totalCents).toBe(engine.state.estimate?.price.totalCents);
    // It knows the former issue, and nothing changed since.
    expect(again.state.estimate?.changes).toEqual([]);
  });

  test("the order list has every line of every order, and its amounts add up to the orders'", async () => {
    const { engine } = engineHere();
    await engine.openFiles([fewLoops(6), file("site.csv")]);
    await engine.workOut({ prove: false });
    const orders = engine.state.estimate?.orders ?? [];
    expect(orders.length).toBeGreaterThan(0);
    const saved = await engine.exportOrdersCsv();
    const rows = parse(Buffer.from(saved?.bytes ?? []), { bom: true, columns: true }) as Record<string, string>[];
    expect(rows.length).toBe(orders.reduce((sum, { lines }) => sum + lines.length + 1, 0));
    const cents = rows.reduce((sum, row) => sum + Math.round(Number(row["Line (USD)"]) * 100), 0);
    expect(cents).toBe(orders.reduce((sum, { totalCents }) => sum + totalCents, 0));
  });

  test("a loop is drawn as surveyed with its flags; a life-safety loop is not drawn", async () => {
    const { engine } = engineHere();
    await engine.demo();
    expect(await engine.loopPicture("R001")).toBeNull();
    await engine.workOut({ prove: false });
    const loops = engine.state.estimate?.loops ?? [];
    const repaired = loops.find(({ treatment }) => treatment === "repair");
    const picture = await engine.loopPicture(repaired?.key ?? "");
    expect(picture?.svg).toMatch(/^<svg /);
    expect(picture?.svg).toContain("F1");
    expect(picture?.alt).toContain("openings");
    const excluded = loops.find(({ treatment }) => treatment === "excluded");
    expect(excluded).toBeDefined();
    expect(await engine.loopPicture(excluded?.key ?? "")).toBeNull();
  });

  test("a blank survey is read again as a survey without loops; a browser says where a cell stands", async () => {
    const { engine } = engineHere();
    const saved = await engine.blankSurvey();
    await engine.openFiles([{ name: "survey.xlsx", bytes: saved?.bytes ?? new Uint8Array() }]);
    expect(engine.state.problem?.words).toMatch(/no loop below/);
    expect(await engine.jumpTo({ sheet: "Loops", row: 7, column: "closed" })).toEqual({
      shown: false,
      words: "Loops, row 7, closed",
    });
  });
});
