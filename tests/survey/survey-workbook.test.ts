import { describe, expect, test } from "vitest";
import { columnsOf, surveySheets } from "../../lib/survey/columns.js";
import { mapHeadings } from "../../lib/survey/map-headings.js";
import { readSurvey } from "../../lib/survey/read-survey.js";
import type { Survey } from "../../lib/survey/survey.js";
import { readFileSheets } from "../../lib/workbook/read/read-file.js";
import { demoTables } from "../../lib/workbook/survey-template/demo-tables.js";
import { writeSurveyWorkbook } from "../../lib/workbook/survey-template/write-survey-workbook.js";
import { siteSheets } from "./read-fixture.js";

const date = "2026-03-02";
const sheetsOf = (bytes: Uint8Array) => readFileSheets({ name: "survey.xlsx", bytes });
/** What of a loop must survive: everything but where it stood and how its cells were written. */
const kept = ({ loops }: Survey) => loops.map(({ sheet: _s, row: _r, typed: _t, ...loop }) => loop);

describe("survey workbook", () => {
  test("blank: has every sheet, every heading is ours, and it holds no loop yet", async () => {
    const sheets = sheetsOf(await writeSurveyWorkbook({ date }));
    expect(sheets.map(({ sheet }) => sheet)).toEqual(["Key", ...surveySheets]);
    for (const sheet of surveySheets.filter((name) => name !== "Site")) {
      const headings = (sheets.find((one) => one.sheet === sheet)?.rows[0]?.cells ?? []).map(String);
      const matches = mapHeadings({ sheet, name: sheet, headings });
      expect(matches.map(({ column }) => column)).toEqual(columnsOf(sheet).map(({ column }) => column));
      expect(new Set(matches.map(({ how }) => how))).toEqual(new Set(["our heading"]));
    }
    expect(() => readSurvey({ sheets: sheets.map((typed) => ({ typed })) })).toThrow("Write one row per loop");
  });

  test("the same input gives the same bytes", async () => {
    const [one, two] = [
      await writeSurveyWorkbook({ date, prefill: "demo" }),
      await writeSurveyWorkbook({ date, prefill: "demo" }),
    ];
    expect(one.length).toBeGreaterThan(10_000);
    expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
  });

  test.each(["a", "b"] as const)("site %s reads back to the same loops, panels and tests", async (site) => {
    const { survey } = readSurvey({ sheets: siteSheets(site) });
    expect(survey.loops.length).toBeGreaterThan(8);
    const sheets = sheetsOf(await writeSurveyWorkbook({ survey, date }));
    const again = readSurvey({ sheets: sheets.map((typed) => ({ typed })) }).survey;
    expect(kept(again)).toEqual(kept(survey));
    const panels = (of: Survey) => of.panels.map(({ typed: _, ...panel }) => panel);
    expect(panels(again)).toEqual(panels(survey));
    expect(again.oldZones).toEqual(survey.oldZones);
    expect(again.radioTests).toEqual(survey.radioTests);
    const { typed: _a, ...before } = survey.site;
    const { typed: _b, ...after } = again.site;
    expect(after).toEqual(before);
  });

  test("price book, modules, labour and settings read back to what was written", async () => {
    const tables = demoTables();
    expect(tables.priceBook.length).toBeGreaterThan(20);
    const { survey } = readSurvey({ sheets: siteSheets("a") });
    const sheets = sheetsOf(await writeSurveyWorkbook({ survey, prefill: "demo", date }));
    const again = readSurvey({ sheets: sheets.map((typed) => ({ typed })) }).survey;
    expect(again.priceBook).toEqual(tables.priceBook);
    expect(again.inputModules).toEqual(tables.inputModules);
    expect(again.labour).toEqual(tables.labour);
    expect(again.settings).toEqual(tables.settings);
    expect(
      again.queries.filter(({ sheet }) => ["Price book", "Input modules", "Labour", "Settings"].includes(sheet)),
    ).toEqual([]);
  });

  test("edits come back, text that looks like a formula stays text", async () => {
    const json = {
      loops: [
        {
          key: "R001",
          loop: "=1+1",
          closed: "2.2k",
          label: "@SUM(A1)",
          notes: "-2+3",
          pinTreatment: "wireless",
          forbid: ["repair", "rewire"],
          estimatorNote: "+ask",
          hoursSpent: 0.5,
          asLeftClosed: 2200,
        },
      ],
    };
    const { survey } = readSurvey({ json });
    const again = readSurvey({
      sheets: sheetsOf(await writeSurveyWorkbook({ survey, date })).map((typed) => ({ typed })),
    }).survey;
    expect(again.loops[0]).toMatchObject({
      key: "R001",
      loop: "=1+1",
      label: "@SUM(A1)",
      notes: "-2+3",
      edits: survey.loops[0]?.edits,
    });
    expect(survey.loops[0]?.edits).toMatchObject({
      pinTreatment: "wireless",
      forbid: ["repair", "rewire"],
      hoursSpent: 0.5,
    });
  });
});
