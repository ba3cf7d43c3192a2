import { describe, expect, test } from "vitest";
import { readSurvey } from "../../lib/survey/read-survey.js";
import { SurveyRefused } from "../../lib/survey/survey-refused.js";
import { csvSheet, sheetOf } from "./read-fixture.js";

const loopsOf = (text: string, mapping = {}) => readSurvey({ sheets: [{ typed: csvSheet("loops", text) }], mapping });
const refusal = (run: () => unknown): SurveyRefused => {
  try {
    run();
  } catch (error) {
    if (error instanceof SurveyRefused) return error;
    throw error;
  }
  throw new Error("was not refused");
};

describe("keys", () => {
  test("rows get keys on first read; given ones stay, copies get a new one and are asked about", () => {
    const { survey } = loopsOf("Key,Loop,R closed\nR002,1,5\n,2,5\nR002,3,5\n,4,5\n");
    expect(survey.loops.map(({ key }) => key)).toEqual(["R002", "R003", "R004", "R005"]);
    expect(survey.queries.filter(({ message }) => message.includes("The key R002 stands in two rows"))).toHaveLength(1);
  });
  test("loops of one name are told apart by key and asked about; the same number on two panels is no copy", () => {
    const { survey } = loopsOf("Panel,Loop,R closed\nA,1,5\nA,1,6\nB,1,7\n");
    expect(new Set(survey.loops.map(({ key }) => key)).size).toBe(3);
    const asked = survey.queries.filter(({ message }) => message.startsWith("Loop 1 of panel"));
    expect(asked.map(({ key, row }) => [key, row])).toEqual([["R002", 3]]);
  });
  test("blank rows are no loops, and rows keep the number the user sees", () => {
    const { survey } = loopsOf("\nLoop,R closed\n\n1,5\n,\n2,6\n");
    expect(survey.loops.map(({ row }) => row)).toEqual([4, 6]);
  });
});

describe("unit slips against neighbours are asked about and never corrected (common practice, no source)", () => {
  const slip = (text: string) => loopsOf(text).survey;
  test("22k among 2.2k", () => {
    const survey = slip("Loop,R closed\n1,2.2k\n2,22k\n3,2.19k\n4,2.21k\n");
    expect(survey.loops[1]?.closed?.ohms).toBe(22_000);
    expect(
      survey.queries.filter(({ message, key }) => key === "R002" && message.includes("digit or point")),
    ).toHaveLength(1);
  });
  test("a bare 2.2 among 2.2k", () => {
    const survey = slip("Loop,R closed\n1,2.2k\n2,2.2\n3,2.19k\n");
    expect(survey.loops[1]?.closed?.ohms).toBe(2.2);
    expect(survey.queries.filter(({ message, key }) => key === "R002" && message.includes("missing k"))).toHaveLength(
      1,
    );
  });
  test("2.2 Ω written out is not asked about, nor are equal neighbours", () => {
    const survey = slip("Loop,R closed\n1,2.2k\n2,2.2 ohms\n3,2.19k\n4,22k\n5,22.1k\n6,21.9k\n");
    expect(
      survey.queries.filter(({ message }) => message.includes("missing k") || message.includes("slipped")),
    ).toEqual([]);
  });
  test("a heading in kΩ makes bare numbers kilohms", () => {
    expect(slip("Loop,R closed (kΩ)\n1,2.2\n").loops[0]?.closed?.ohms).toBe(2200);
  });
});

describe("lengths", () => {
  const runs = (text: string) => loopsOf(text).survey;
  test("bare numbers follow the unit that all others have, with one question", () => {
    const survey = runs("Loop,R closed,Run\n1,5,20 m\n2,5,30\n3,5,31 m\n");
    expect(survey.loops[1]?.run?.meters).toBe(30);
    expect(survey.queries.filter(({ column, key }) => column === "Run" && key === undefined)).toHaveLength(1);
  });
  test("feet and metres mixed leave bare numbers unread", () => {
    const survey = runs("Loop,R closed,Run\n1,5,20 m\n2,5,30\n3,5,55'\n");
    expect(survey.loops.map(({ run }) => run?.meters)).toEqual([20, undefined, expect.closeTo(16.764, 6)]);
    expect(survey.queries.some(({ message }) => message.includes("mixed"))).toBe(true);
  });
  test("no unit anywhere is a question, a unit in the heading an answer (1 ft = 0.3048 m, NIST SP 811)", () => {
    expect(runs("Loop,R closed,Run\n1,5,30\n").loops[0]?.run).toBeUndefined();
    expect(runs("Loop,R closed,Run ft\n1,5,30\n").loops[0]?.run?.meters).toBeCloseTo(9.144, 9);
  });
  test("a missing length is a question", () => {
    const survey = runs("Loop,R closed,Run\n1,5,long\n2,5,\n");
    expect(survey.queries.filter(({ column }) => column === "Run").map(({ key }) => key)).toEqual(["R001", "R002"]);
  });
});

describe("openings and devices (common practice, no source)", () => {
  test("double doors are two moving leaves, with a question", () => {
    const { survey } = loopsOf("Loop,R closed,Openings,What it protects\n1,5,1,front double doors\n");
    expect(survey.loops[0]?.openings).toEqual({ count: 2, assumed: true });
    expect(survey.queries.some(({ message }) => message.includes("two moving leaves"))).toBe(true);
  });
  test("a date that a spreadsheet made of a cable size is read and asked about", () => {
    const typed = sheetOf("Loops", [
      ["Loop", "R closed", "Cable"],
      ["1", 5, { isoDate: "2026-04-22" }],
    ]);
    const { survey } = readSurvey({ sheets: [{ typed }] });
    expect(survey.loops[0]?.cable).toMatchObject({ gaugeAwg: 22, conductors: 4, assumed: true });
    expect(survey.queries.some(({ message }) => message.includes("made a date"))).toBe(true);
  });
  test("only a marking column marks life safety", () => {
    const { survey } = loopsOf("Loop,R closed,Label,Life safety\n1,5,FIRE EXIT,\n2,,pump room,yes\n");
    expect(survey.loops.map(({ markedLifeSafety }) => markedLifeSafety)).toEqual([false, true]);
    expect(survey.queries.filter(({ key, asksOnSite }) => key === "R002" && asksOnSite === true)).toEqual([]);
  });
  test("several opened readings say which opening", () => {
    const { survey } = loopsOf('Loop,R closed,R open\n1,2.2k,"1: OL; 2: 2.2k"\n');
    expect(survey.loops[0]?.opened?.map(({ opening, reading }) => [opening, reading.ohms])).toEqual([
      [1, "OL"],
      [2, 2200],
    ]);
  });
});

describe("what allows no survey is refused with how to mend it", () => {
  test("missing headings name what is missing, what was not understood and the mapping file", () => {
    const { code, message } = refusal(() => loopsOf("Loop,Zorp value,What it protects\n1,5,door\n"));
    expect(code).toBe("missingHeadings");
    expect(message).toContain("closed");
    expect(message).toContain('"Zorp value"');
    expect(message).toContain("--map");
  });
  test("the mapping file mends it and is shown", () => {
    const { survey, headings } = loopsOf("Loop,Zorp value\n1,5.5\n", { Loops: { "zorp value": "closed" } });
    expect(survey.loops[0]?.closed?.ohms).toBe(5.5);
    expect(headings.find(({ heading }) => heading === "Zorp value")).toMatchObject({
      column: "closed",
      how: "mapping file",
    });
  });
  test("a mapping to a column that does not exist is refused with the columns there are", () => {
    const { code, message } = refusal(() => loopsOf("Loop,X\n1,5\n", { Loops: { X: "shutOhms" } }));
    expect(code).toBe("badMapping");
    expect(message).toContain("closed");
  });
  test("headings that mean nothing to us are asked about and their cells kept in the notes", () => {
    const { survey } = loopsOf("Loop,R closed,Moon phase,Notes\n1,5,full,damp\n");
    expect(survey.loops[0]?.notes).toBe("damp; Moon phase: full");
    expect(
      survey.queries.some(({ column, message }) => column === "Moon phase" && message.includes("not understood")),
    ).toBe(true);
  });
  test("an empty sheet, headings without loops, no loops sheet", () => {
    expect(refusal(() => readSurvey({ sheets: [{ typed: sheetOf("Loops", []) }] })).message).toContain("empty");
    expect(refusal(() => loopsOf("Loop,R closed\n")).code).toBe("noLoops");
    expect(refusal(() => readSurvey({ sheets: [] })).code).toBe("noSheet");
  });
  test("two sites in one sheet: by a site column, and by a second row of headings", () => {
    expect(refusal(() => loopsOf("Site,Loop,R closed\nNorth,1,5\nSouth,1,6\n")).code).toBe("twoSites");
    expect(loopsOf("Site,Loop,R closed\nNorth,1,5\nNorth,2,6\n").survey.loops).toHaveLength(2);
    const again = refusal(() => loopsOf("Loop,R closed,Notes\n1,5,\nLoop,R closed,Notes\n1,6,\n"));
    expect(again.code).toBe("twoSites");
    expect(again.message).toContain("row 3");
  });
  test("an unknown unit is a question with place, typed text and what is expected", () => {
    const { survey } = loopsOf("Loop,R closed,Run\n1,5 furlongs,12 cubits\n");
    const run = survey.queries.find(({ column }) => column === "Run");
    const closed = survey.queries.find(({ column }) => column === "R closed");
    expect(survey.loops[0]?.run).toBeUndefined();
    expect(run).toMatchObject({ sheet: "loops", row: 2, typed: "12 cubits", key: "R001" });
    expect(closed).toMatchObject({ sheet: "loops", row: 2, typed: "5 furlongs", key: "R001" });
    expect(closed?.message).toContain("furlongs");
  });
  test("words that are names of object fields are only words", () => {
    const { survey } = loopsOf("Loop,R closed,__proto__,constructor\n__proto__,5,x,y\n");
    expect(survey.loops[0]?.loop).toBe("__proto__");
    expect(({} as Record<string, unknown>)["x"]).toBeUndefined();
  });
});

describe("JSON survey", () => {
  const json = {
    schema: 1,
    site: { name: "Site C", temperatureCelsius: 21, meter: "0.8% + 3" },
    panels: [{ panel: "P1", auxVolts: 13.4 }],
    loops: [
      {
        key: "R007",
        panel: "P1",
        loop: "1",
        closed: 2190,
        opened: [{ opening: 1, ohms: "OL" }],
        run: 21,
        cable: "22/2",
        openings: 1,
        device: "recessed contact",
        earth: { aOhms: "OL", bOhms: 40000 },
      },
      { loop: "2", closed: "OL", opened: "same" },
    ],
    oldZones: [{ zone: "01", name: "Front" }],
    radioTests: [{ location: "hall", distance: 12, signalDbm: -71, heard: 10, sent: 10 }],
    inputModules: [
      {
        type: "six",
        inputs: 6,
        returns: [{ holds: 3 }, { holds: 3 }],
        eolScope: "bank",
        eolOhms: [2200, 4700],
        bandLow: 0.8,
        bandHigh: 1.2,
        maxConductorOhms: 100,
        priceCode: "M6",
      },
    ],
    edits: { R007: { pinTreatment: "wireless" } },
  };
  test("numbers are in the documented unit, text as typed; edits hang on the key", () => {
    const { survey } = readSurvey({ json });
    expect(survey.loops).toHaveLength(2);
    expect(survey.loops[0]).toMatchObject({
      key: "R007",
      run: { meters: 21 },
      edits: { pinTreatment: "wireless" },
      earth: { aOhms: { ohms: "OL" }, bOhms: { ohms: 40_000 } },
    });
    expect(survey.loops[0]?.closed?.ohms).toBe(2190);
    expect(survey.loops[0]?.opened).toEqual([{ opening: 1, reading: { ohms: "OL", lowOhms: "OL", highOhms: "OL" } }]);
    expect(survey.loops[1]?.key).toBe("R008");
    expect(survey.loops[1]?.opened?.[0]?.reading.ohms).toBe("OL");
    expect(survey.site).toMatchObject({ name: "Site C", temperatureCelsius: 21, meter: { percent: 0.8, counts: 3 } });
    expect(survey.inputModules[0]).toMatchObject({ returns: [{ holds: 3 }, { holds: 3 }], eolOhms: [2200, 4700] });
    expect(survey.radioTests[0]?.meters).toBe(12);
  });
  test.each([
    [{ loops: [{ loop: "1", closd: 5 }] }, "loops[0].closd"],
    [{ loops: [{ loop: "1", opened: [{ opening: 1, ohm: 5 }] }] }, "loops[0].opened"],
    [{ loops: [{ loop: "1" }], extra: 1 }, "extra"],
    [{ loops: [{ loop: "1" }], site: { nam: "x" } }, "site.nam"],
    [{ loops: [{ loop: "1" }], edits: { R009: {} } }, "edits.R009"],
    [{ loops: [] }, "loops"],
    ["nonsense", "the whole file"],
  ])("%j is refused with its path", (bad, path) => {
    const { code, message } = refusal(() => readSurvey({ json: bad }));
    expect(code).toBe("badJson");
    expect(message).toContain(path);
  });
});
