import { beforeAll, describe, expect, test } from "vitest";
import type { Estimate } from "../../lib/estimate/estimate.js";
import { prepareJob } from "../../lib/estimate/prepare-job.js";
import { loopRecord } from "../../lib/findings/from-survey.js";
import { judgeJob } from "../../lib/findings/judge-job.js";
import { judgeConditions } from "../../lib/reference/generated/judge-conditions.js";
import { labourUnits } from "../../lib/reference/generated/labour-units.js";
import { checkReport } from "../../lib/report/check.js";
import { evaluate } from "../../lib/report/evaluate.js";
import { layOut } from "../../lib/report/layout.js";
import { readSurvey } from "../../lib/survey/read-survey.js";
import type { Survey, TypedCell } from "../../lib/survey/survey.js";
import { estimateWorkbook, estimateWorkbookReport } from "../../lib/workbook/estimate-workbook.js";
import { readFileSheets } from "../../lib/workbook/read/read-file.js";
import { writeSurveyWorkbook } from "../../lib/workbook/survey-template/write-survey-workbook.js";
import { oldZoneOf } from "../../lib/zones/old-zone-of.js";
import { boathouse, quickEstimateOf } from "../stages/estimate-of.js";

const headings = [
  "Job",
  "Finished on",
  "What was counted",
  "Of what",
  "First figure",
  "Second figure",
  "Third figure",
  "Use",
];

/** The boathouse with a sheet of finished jobs, read as any sheet is. */
function withFinished(rows: readonly (readonly TypedCell[])[]): Survey {
  const typed = {
    sheet: "Finished jobs",
    rows: [headings, ...rows].map((cells, index) => ({ row: index + 1, cells })),
  };
  const least = {
    sheet: "Loops",
    rows: [
      ["Loop", "Closed"],
      ["1", "2.2k"],
    ].map((cells, index) => ({ row: index + 1, cells })),
  };
  const { survey } = readSurvey({ sheets: [{ typed: least }, { typed }] });
  const { finishedJobs = [] } = survey;
  expect(finishedJobs).toHaveLength(rows.length);
  const base = boathouse();
  const asked = survey.queries.filter(({ sheet }) => sheet === "Finished jobs");
  return { ...base, finishedJobs, queries: [...base.queries, ...asked] };
}

const verify = labourUnits.find(({ task }) => task === "verifyLoop")?.likelyHours ?? 0;
const bypassed = ["Mill", "2026-02-01", "repair", "bypassed", 6, 3, null, null];
const faults = ["Mill", "2026-02-01", "loops", null, 40, 4, null, null];
// Four units of which each took twice the table's hours, so the logarithm rises by 4·ln 2 / (4 + 4): a factor of √2.
const log = Math.log(verify * 2);
const hours = ["Mill", "2026-02-01", "hours", "verifyLoop", 4, 4 * log, 4 * log * log, null];
const off = (row: readonly TypedCell[]) => [...row.slice(0, 7), "no"];

const loopOf = (estimate: Estimate, key: string) => estimate.loops.find((loop) => loop.key === key);

let plain: Estimate;
beforeAll(async () => {
  plain = await quickEstimateOf(boathouse());
  expect(plain.loops.length).toBeGreaterThan(15);
});

describe("finished jobs in the estimate", () => {
  test("repair odds by hand, beta-binomial: 0.35 worth 4, 3 of 6 held, so (1.4 + 3) / 10 = 0.44", async () => {
    const learned = await quickEstimateOf(withFinished([bypassed]));
    const before = loopOf(plain, "R007");
    const after = loopOf(learned, "R007");
    expect(before?.condition).toBe("bypassed");
    expect([before?.treatment, after?.treatment]).toEqual(["repair", "repair"]);
    expect(before?.cost.riskProbability).toBeCloseTo(1 - 0.35, 12);
    expect(after?.cost.riskProbability).toBeCloseTo(1 - 0.44, 12);
    // The expected cost of the fallback shrinks in the same proportion, to the cent.
    expect(after?.cost.riskCents).toBe(Math.round(((before?.cost.riskCents ?? 0) * 0.56) / 0.65));
    expect(learned.price.costCents).toBeLessThan(plain.price.costCents);
    const [figure, ...others] = learned.learning?.figures ?? [];
    expect(others).toEqual([]);
    expect(figure).toMatchObject({
      figure: "repairOdds",
      of: "bypassed",
      unit: "1",
      data: { count: 6, succeeded: 3, jobs: 1 },
    });
    expect(figure?.prior).toBeCloseTo(0.35, 12);
    expect(figure?.priorCount).toBeCloseTo(4, 12);
    expect(figure?.now).toBeCloseTo(0.44, 12);
    // Nothing was learned of faults or hours.
    expect(learned.loops.map(({ probability }) => probability)).toEqual(
      plain.loops.map(({ probability }) => probability),
    );
    expect(learned.labour).toEqual(plain.labour);
  });

  test("odds that fall below what a repair is worth change what a loop deserves: (2.8 + 0) / (4 + 8) of open loops", async () => {
    const learned = await quickEstimateOf(withFinished([["Mill", "", "repair", "open", 8, 0, "", "yes"]]));
    expect(loopOf(plain, "R006")).toMatchObject({ condition: "open", recommended: "repair" });
    expect(loopOf(learned, "R006")).toMatchObject({ condition: "open", recommended: "wireless" });
    expect(learned.learning?.figures[0]?.now).toBeCloseTo(2.8 / 12, 12);
  });

  test("fault rate by hand: the table's repair share r worth 20, 4 of 40 faulty, so (20 r + 4) / 60", async () => {
    const total = judgeConditions.reduce((sum, { prior }) => sum + prior, 0);
    const repair = judgeConditions.filter(({ rightAction }) => rightAction === "repair");
    expect(repair.length).toBeGreaterThan(5);
    const r = repair.reduce((sum, { prior }) => sum + prior, 0) / total;
    const now = (20 * r + 4) / 60;
    const survey = withFinished([faults]);
    const learned = await quickEstimateOf(survey);
    expect(learned.learning?.figures).toHaveLength(1);
    expect(learned.learning?.figures[0]?.prior).toBeCloseTo(r, 12);
    expect(learned.learning?.figures[0]?.now).toBeCloseTo(now, 12);
    // The judge told the same shares, worked out here, believes the same of every loop.
    const priors = Object.fromEntries(
      judgeConditions.map(({ condition, prior, rightAction }) => [
        condition,
        (prior / total) * (rightAction === "repair" ? now / r : (1 - now) / (1 - r)),
      ]),
    );
    const { site, oldZones, loops } = survey;
    const named = new Map(loops.map(({ key, loop, label }) => [key, label ?? loop]));
    const nameOf = (key: string) => named.get(key) ?? key;
    const records = loops.map((loop) => loopRecord({ loop, site, oldZone: oldZoneOf(loop, oldZones), nameOf }));
    const judged = judgeJob(records, { priors }).loops;
    for (const [index, { probability, condition }] of learned.loops.entries()) {
      expect(condition).toBe(judged[index]?.condition);
      expect(probability).toBeCloseTo(judged[index]?.probability ?? Number.NaN, 9);
    }
    // Fewer faults elsewhere: sound loops are believed more, and the job costs less.
    for (const key of ["R001", "R002", "R003", "R016"]) {
      expect(loopOf(learned, key)?.probability).toBeGreaterThan(loopOf(plain, key)?.probability ?? 1);
    }
    expect(learned.price.meanCents).toBeLessThan(plain.price.meanCents);
    const sound = ["soundEolAtEnd", "soundNoEol", "eolInPanel"];
    const share = sound.reduce((sum, condition) => sum + (priors[condition] ?? 0), 0);
    expect(learned.learning?.unsound.now).toBeCloseTo(1 - share, 12);
  });

  test("hours by hand, normal–gamma: four tasks at twice the table's hours against 4 give √2; the workbook's formulas agree", async () => {
    const survey = withFinished([hours, bypassed]);
    const learned = await quickEstimateOf(survey);
    const line = (of: Estimate) => of.labour.find(({ task }) => task === "verifyLoop");
    expect(line(plain)?.count).toBeGreaterThan(5);
    for (const field of ["lowHours", "likelyHours", "highHours", "meanHours"] as const) {
      expect(line(learned)?.[field]).toBeCloseTo((line(plain)?.[field] ?? 0) * Math.SQRT2, 9);
    }
    const figure = learned.learning?.figures.find(({ figure }) => figure === "hours");
    expect(figure).toMatchObject({ unit: "h", prior: verify, priorCount: 4, data: { count: 4, succeeded: null } });
    expect(figure?.now).toBeCloseTo(verify * Math.SQRT2, 12);
    const report = estimateWorkbookReport({ estimate: learned, survey, headings: [], date: "2026-05-04" });
    const layout = layOut(report);
    expect(checkReport(layout)).toEqual([]);
    const value = (name: string) => {
      const cell = layout.named.get(name);
      return cell === undefined ? undefined : evaluate(layout).cell(cell);
    };
    expect(Math.round(Number(value("JobTotal")) * 100)).toBe(learned.price.totalCents);
    expect(value("EditCount")).toBe(0);
    expect(report.sheets.map(({ name }) => name)).toContain("Learned");
  });
});

describe("reversible", () => {
  const strange = ["Mill", "", "repair", "no such fault", 3, 9, null, null];
  test("rows that say no under Use, and rows taken out, leave exactly the estimate there was", async () => {
    const used = prepareJob(withFinished([bypassed, faults, hours]));
    expect(used.learning?.figures).toHaveLength(3);
    expect(await quickEstimateOf(withFinished([bypassed, faults, hours, strange].map(off)))).toEqual(plain);
    const { survey: _none, ...without } = prepareJob(withFinished([]));
    const { survey: _base, ...base } = prepareJob(boathouse());
    expect(without).toEqual(base);
    expect(plain.learning).toBeNull();
    expect(plain.teaches).toEqual([]);
    const report = estimateWorkbookReport({ estimate: plain, survey: boathouse(), headings: [], date: "2026-05-04" });
    expect(report.sheets.map(({ name }) => name)).not.toContain("Learned");
  });

  test("a row taken out is as if it had never been there beside the others", () => {
    const both = prepareJob(withFinished([bypassed, off(faults)]));
    const one = prepareJob(withFinished([bypassed]));
    expect(both.learning).not.toBeNull();
    const { survey: _b, ...rest } = both;
    const { survey: _o, ...expected } = one;
    expect(rest).toEqual(expected);
  });
});

describe("rows that cannot be counted", () => {
  test.each([
    ["no number", ["Mill", "", "repair", "open", "many", 1, null, null], "First figure"],
    ["no job", [null, "", "repair", "open", 2, 1, null, null], null],
    ["another word", ["Mill", "", "mended", "open", 2, 1, null, null], "What was counted"],
    ["more held than tried", ["Mill", "", "repair", "open", 2, 3, null, null], null],
    ["unknown condition", ["Mill", "", "repair", "wet", 2, 1, null, null], null],
    ["hours beyond all bounds", ["Mill", "", "hours", "verifyLoop", 1, 800, 640_000, null], null],
    ["unknown task", ["Mill", "", "hours", "juggling", 1, 0, 0, null], "Of what"],
    ["neither yes nor no", ["Mill", "", "repair", "open", 2, 1, null, "perhaps"], "Use"],
  ] as const)("%s: asked about with its row, the others go on", (_, row, column) => {
    const learned = prepareJob(withFinished([row, bypassed]));
    const asked = learned.queries.filter(({ sheet }) => sheet === "Finished jobs");
    expect(asked.length).toBeGreaterThan(0);
    expect(asked.every((query) => query.row === 2)).toBe(true);
    if (column !== null) expect(asked.map((query) => query.column)).toContain(column);
    expect(learned.learning?.figures.map(({ of }) => of)).toEqual(["bypassed"]);
    expect(learned.learning?.figures[0]?.now).toBeCloseTo(0.44, 12);
  });
});

describe("kept in the workbooks", () => {
  const bad = ["Mill", "", "repair", "wet", "many", 1, null, null];
  const rows = [bypassed, faults, hours, off(["Quay", "2026-01-31", "asLeft", null, 9, 2, 0, null]), bad];
  const kept = ({ finishedJobs = [] }: Survey) => finishedJobs.map(({ typed, counts }) => ({ typed, counts }));

  test.each(["survey", "estimate"] as const)("no row is lost or changed through the %s workbook", async (which) => {
    const survey = withFinished(rows);
    const date = "2026-05-04";
    const bytes =
      which === "survey"
        ? await writeSurveyWorkbook({ survey, date })
        : await estimateWorkbook({ estimate: plain, survey, headings: [], date });
    const sheets = readFileSheets({ name: "book.xlsx", bytes }).map((typed) => ({ typed }));
    const again = readSurvey({ sheets }).survey;
    expect(kept(again)).toHaveLength(rows.length);
    expect(kept(again)).toEqual(kept(survey));
  });

  test("the JSON survey gives the same rows", () => {
    const keys = ["job", "finished", "kind", "name", "first", "second", "third", "use"];
    const json = rows.map((row) => Object.fromEntries(keys.map((key, index) => [key, row[index] ?? null])));
    const { survey } = readSurvey({ json: { loops: [{ loop: "1" }], finishedJobs: json } });
    expect(kept(survey)).toEqual(kept(withFinished(rows)));
  });
});

describe("what a job hands on", () => {
  test("outcomes beside the loops become rows that the next survey reads", async () => {
    const base = boathouse();
    const loops = base.loops.map((loop) =>
      loop.key === "R007"
        ? { ...loop, edits: { ...loop.edits, repairOutcome: "repaired", hoursSpent: 1.5 } }
        : loop.key === "R006"
          ? { ...loop, edits: { ...loop.edits, repairOutcome: "notRepaired" } }
          : loop,
    );
    const done = await quickEstimateOf({ ...base, loops });
    const counts = done.teaches.map(({ kind, name, first, second }) => [kind, name, first, second]);
    expect(counts).toEqual(
      expect.arrayContaining([
        ["loops", "", 2, 2],
        ["asLeft", "", 0, 0],
        ["repair", "bypassed", 1, 1],
        ["repair", "open", 1, 0],
      ]),
    );
    expect(done.teaches.some(({ kind, name }) => kind === "hours" && name === "repair")).toBe(true);
    const rows = done.teaches.map((row) => [
      row.job,
      row.finished,
      row.kind,
      row.name,
      row.first,
      row.second,
      row.third,
      "",
    ]);
    const next = prepareJob(withFinished(rows));
    expect(next.queries.filter(({ sheet }) => sheet === "Finished jobs")).toEqual([]);
    const bypass = next.learning?.figures.find(({ of }) => of === "bypassed");
    expect(bypass?.now).toBeCloseTo((0.35 * 4 + 1) / 5, 12);
  });
});
