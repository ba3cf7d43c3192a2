import { beforeAll, describe, expect, it } from "vitest";
import type { Estimate } from "../../lib/estimate/estimate.js";
import { checkReport } from "../../lib/report/check.js";
import { layOut } from "../../lib/report/layout.js";
import type { Report, TableBlock } from "../../lib/report/model.js";
import { confirmFeeds } from "../../lib/survey/confirm-feeds.js";
import type { Survey } from "../../lib/survey/survey.js";
import { estimateWorkbookReport } from "../../lib/workbook/estimate-workbook.js";
import { clinic, quickEstimateOf } from "../stages/estimate-of.js";
import { issued } from "./demo-estimate.js";

let survey: Survey;
let estimate: Estimate;
let report: Report;
beforeAll(async () => {
  survey = confirmFeeds({ survey: clinic(), fedFrom: { "P1 6": "CORR A", "P1 7": "CORR B" } });
  estimate = await quickEstimateOf(survey);
  report = estimateWorkbookReport({ survey, estimate, headings: [], date: issued });
});

const blocksOf = (name: string) => report.sheets.find((sheet) => sheet.name === name)?.blocks ?? [];
const tablesOf = (name: string) => blocksOf(name).filter((block): block is TableBlock => block.kind === "table");

describe("supply and radio on paper", () => {
  it("has both sheets, named on About, and nothing a spreadsheet would refuse", () => {
    expect(report.sheets.map(({ name }) => name)).toEqual(expect.arrayContaining(["Supply", "Radio"]));
    const about = JSON.stringify(report.sheets[0]?.blocks);
    for (const name of ["Supply", "Radio"]) expect(about).toContain(`"sheet":"${name}"`);
    expect(checkReport(layOut(report))).toEqual([]);
  });

  it("shows every powered detector of the sheet with its volts, ten rows in two tables", () => {
    const tables = tablesOf("Supply").filter(({ name }) => name.startsWith("supply_detectors_"));
    expect(tables.length).toBe(2);
    const tags = tables.flatMap(({ rows }) => rows.map((row) => JSON.stringify(row[1])));
    expect(tags.length).toBe(10);
    const exam = tables[0]?.rows.find((row) => JSON.stringify(row[1]).includes("EXAM CORR"));
    const at = (key: string) => exam?.[tables[0]?.columns.findIndex((one) => one.key === key) ?? -1];
    expect(at("measured")).toMatchObject({ kind: "number", value: 11 });
    expect(JSON.stringify(at("short"))).toContain("battery end");
  });

  it("prices every cure of the detectors that fail, each with its volts", () => {
    const offered = estimate.supply.flatMap(({ detectors }) => detectors.flatMap(({ choices }) => choices));
    expect(offered.length).toBeGreaterThan(1);
    const cures = tablesOf("Supply").filter(({ name }) => name.startsWith("supply_cures_"));
    expect(cures.flatMap(({ rows }) => rows).length).toBeGreaterThanOrEqual(offered.length);
    const words = JSON.stringify(cures);
    for (const { words: choice } of offered) expect(words).toContain(choice);
  });

  it("says where to open a joint and what each battery has to hold", () => {
    const words = JSON.stringify(blocksOf("Supply"));
    expect(words).toMatch(/Between CORR B and EXAM CORR: 1\.5\d V more lost/);
    for (const { place } of estimate.supply) expect(words).toContain(place?.battery.words);
  });

  it("shows each radio test once and the repeater in words", () => {
    const [tests] = tablesOf("Radio");
    expect(tests?.rows.length).toBe(survey.radioTests.length);
    expect(JSON.stringify(blocksOf("Radio"))).toContain("Repeater at top of stair");
  });

  it("is left out where there is nothing to say", () => {
    const bare = { ...estimate, supply: [], radio: [] };
    const names = estimateWorkbookReport({ survey, estimate: bare, headings: [], date: issued }).sheets.map(
      ({ name }) => name,
    );
    expect(names).not.toContain("Supply");
    expect(names).not.toContain("Radio");
  });
});
