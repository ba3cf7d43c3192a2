import { beforeAll, describe, expect, test } from "vitest";
import { setUpSurvey } from "../../../addin/commands/set-up-survey.js";
import { readSurveySheets } from "../../../addin/sheet/read-survey-sheets.js";
import { columnsOf, fullHeading, surveySheets } from "../../../lib/survey/columns.js";
import { readSurvey, type SurveyRead } from "../../../lib/survey/read-survey.js";
import { readFileSheets } from "../../../lib/workbook/read/read-file.js";
import { writeSurveyWorkbook } from "../../../lib/workbook/survey-template/write-survey-workbook.js";
import { ExcelHost } from "../../excel-host/excel-host.js";
import { boathouse, connectionTo } from "./demo.js";
import { sheetOf, stateOf, typeInto } from "./state.js";

const date = "2026-03-02";
let demo: SurveyRead;
beforeAll(async () => {
  demo = await boathouse();
  expect(demo.survey.loops.length).toBeGreaterThan(15);
});

describe("setting the survey up in an empty workbook", () => {
  test("gives every table of the survey, with the library's headings, unlocked inputs and validations", async () => {
    const host = new ExcelHost();
    const written = await setUpSurvey({ connection: connectionTo(host), date });
    expect(written.added).toEqual(["Survey Key", ...surveySheets.map((sheet) => `Survey ${sheet}`)]);
    for (const kind of surveySheets.filter((one) => one !== "Site")) {
      const sheet = sheetOf(host, `Survey ${kind}`);
      const headings = sheet.tables[0]?.headings().map((heading) => heading.replace("✎ ", ""));
      expect(headings).toEqual(columnsOf(kind).map(fullHeading));
      expect(sheet.protected?.password).toBe("");
      expect(sheet.cells.look(1, 1, "Locked")).toBe(false);
      expect(sheet.validations.length).toBe(columnsOf(kind).filter(({ column }) => column !== "key").length);
    }
    expect(sheetOf(host, "Survey Loops").cells.look(1, 0, "Locked")).not.toBe(false);
    // What is typed there stays text: 22/4 is a cable, not the 22nd of April.
    expect(sheetOf(host, "Survey Loops").formatAt(1, 11)).toBe("@");
  });

  test("takes at most 6 requests and 1 MB", async () => {
    const host = new ExcelHost();
    await setUpSurvey({ connection: connectionTo(host), date });
    expect(host.requests.length).toBeLessThanOrEqual(6);
    expect(host.bytes).toBeLessThan(1_000_000);
  });

  test("done again, changes nothing that was typed", async () => {
    const host = new ExcelHost();
    const connection = connectionTo(host);
    await setUpSurvey({ connection, date });
    const loops = sheetOf(host, "Survey Loops");
    typeInto(loops, { top: 3, left: 2, bottom: 3, right: 2 }, "7");
    typeInto(loops, { top: 3, left: 4, bottom: 3, right: 4 }, "=WEST DOOR");
    const before = stateOf(host);
    const again = await setUpSurvey({ connection, date });
    expect(again.added).toEqual([]);
    expect(again.kept).toEqual(surveySheets.map((sheet) => `Survey ${sheet}`));
    expect(stateOf(host)).toEqual(before);
  });

  test("gives back a column that was deleted, at the right, and leaves columns of the user's own", async () => {
    const host = new ExcelHost();
    const connection = connectionTo(host);
    await setUpSurvey({ connection, date });
    const zones = sheetOf(host, "Survey Old zones");
    const [table] = zones.tables;
    if (table === undefined) throw new Error("no table");
    zones.cells.write(0, table.box.right, { value: "Colour of the tag" });
    await setUpSurvey({ connection, date });
    expect(table.headings()).toEqual(["✎ Zone", "✎ Printed name", "Colour of the tag", "✎ Type on list"]);
    expect(zones.protected).toBeDefined();
  });
});

describe("reading the survey out of the workbook", () => {
  test("gives the same survey as the survey file read back through the file reader", async () => {
    const host = new ExcelHost();
    const connection = connectionTo(host);
    await setUpSurvey({ connection, date, survey: demo.survey });
    const { sheets } = await readSurveySheets({ connection });
    const inExcel = readSurvey({ sheets }).survey;

    const bytes = await writeSurveyWorkbook({ survey: demo.survey, date });
    const fileSheets = (await readFileSheets({ name: "survey.xlsx", bytes })).map((typed) => ({ typed }));
    const inFile = readSurvey({ sheets: fileSheets }).survey;

    const plain = (survey: typeof inFile) => JSON.parse(JSON.stringify(survey).replaceAll('"Survey ', '"'));
    expect(inFile.loops.length).toBe(demo.survey.loops.length);
    expect(plain(inExcel)).toEqual(plain(inFile));
  });

  test("a day that Excel made of 22/4 comes as a date, compatibility forms as plain text", async () => {
    const host = new ExcelHost();
    const connection = connectionTo(host);
    await setUpSurvey({ connection, date, survey: demo.survey });
    const loops = sheetOf(host, "Survey Loops");
    const cable = { top: 1, left: 11, bottom: 1, right: 11 };
    // 4 January 1900 is day 4; 22 April 2026 is day 46134 of the 1900 calendar.
    typeInto(loops, cable, 46_134);
    loops.cells.setLook(cable, "NumberFormat", "d-mmm");
    typeInto(loops, { ...cable, left: 16, right: 16 }, "5.1 k\u2126");
    const { sheets } = await readSurveySheets({ connection });
    const row = sheets.find(({ as }) => as === "Loops")?.typed.rows[1];
    expect(row?.row).toBe(2);
    expect(row?.cells[11]).toEqual({ isoDate: "2026-04-22" });
    expect(row?.cells[16]).toBe("5.1 kΩ");
  });

  test("a workbook without our tables is read by its sheets, as loose files are", async () => {
    const host = new ExcelHost();
    const [sheet] = host.book.sheets;
    const rows = [
      ["Loop", "Label", "Closed", "Cable"],
      ["1", "Hall door", "5.1", "22/4"],
    ];
    rows.forEach((row, at) => {
      row.forEach((value, column) => {
        sheet?.cells.write(at, column, { value });
      });
    });
    const { sheets } = await readSurveySheets({ connection: connectionTo(host) });
    const { survey } = readSurvey({ sheets });
    expect(survey.loops.map(({ loop, closed }) => [loop, closed?.ohms])).toEqual([["1", 5.1]]);
  });
});
