import { describe, expect, test } from "vitest";
import { readSurvey } from "../../lib/survey/read-survey.js";
import type { Survey } from "../../lib/survey/survey.js";

const loop = (name: string, returnSharedWith?: string, more: Readonly<Record<string, string>> = {}) => ({
  panel: "P1",
  loop: name,
  protects: `window ${name}`,
  openings: 1,
  device: "recessed contact",
  cable: "22/4",
  run: "20 m",
  closed: "3.1",
  opened: "OL",
  ...(returnSharedWith === undefined ? {} : { returnSharedWith }),
  ...more,
});
const surveyOf = (...loops: readonly object[]): Survey => readSurvey({ json: { schema: 1, loops } }).survey;
const sharedOf = (survey: Survey) => survey.loops.map(({ returnSharedWith }) => returnSharedWith ?? []);
const returnQueries = (survey: Survey) => survey.queries.filter(({ column }) => /return/i.test(column ?? ""));

describe("Loops that come back on one return (common practice, no source)", () => {
  test("named on both sides: nothing to ask", () => {
    const survey = surveyOf(loop("1", "2"), loop("2", "1"), loop("3"));
    expect(sharedOf(survey)).toEqual([["R002"], ["R001"], []]);
    expect(returnQueries(survey)).toEqual([]);
  });

  test.each(["2; 3", "2, 3", "2 and 3", "2/3", "R002 & R003"])("several names as people write them: %s", (typed) => {
    const survey = surveyOf(loop("1", typed), loop("2", "1, 3"), loop("3", "1, 2"));
    expect(sharedOf(survey)).toEqual([
      ["R002", "R003"],
      ["R001", "R003"],
      ["R001", "R002"],
    ]);
    expect(returnQueries(survey)).toEqual([]);
  });

  test("named on one side only: taken as both, and said", () => {
    const survey = surveyOf(loop("1"), loop("2", "1"));
    expect(sharedOf(survey)).toEqual([["R002"], ["R001"]]);
    expect(returnQueries(survey)).toMatchObject([{ row: 2, typed: "1", key: "R002" }]);
    expect(returnQueries(survey)[0]?.message).toMatch(/one return/);
  });

  test("written pair by pair, one conductor has all three", () => {
    const survey = surveyOf(loop("1", "2"), loop("2", "1, 3"), loop("3", "2"));
    expect(sharedOf(survey)[0]).toEqual(["R002", "R003"]);
    expect(returnQueries(survey)).toHaveLength(1);
  });

  test.each([
    ["9", /No loop of panel P1 goes by "9"/],
    ["1", /this loop itself/],
    ["P2 7", /comes back to panel P2/],
    ["7", /comes back to panel P2/],
    ["4", /may be 4 \(R002\) or 4 \(R003\)/],
  ])("%s cannot be taken as it is written", (typed, message) => {
    const survey = surveyOf(loop("1", typed), loop("4"), loop("4"), loop("7", undefined, { panel: "P2" }));
    expect(sharedOf(survey).flat()).toEqual([]);
    expect(returnQueries(survey)).toMatchObject([{ row: 1, typed, key: "R001" }]);
    expect(returnQueries(survey)[0]?.message).toMatch(message);
  });

  test.each(["none", "-", "?", "no"])("%s means a return of its own", (typed) => {
    const survey = surveyOf(loop("1", typed), loop("2"));
    expect(sharedOf(survey).flat()).toEqual([]);
    expect(returnQueries(survey)).toEqual([]);
  });

  test("a detector with supply on a shared return is asked about", () => {
    const survey = surveyOf(loop("1", "2"), loop("2", "1", { device: "motion detector", milliamps: "18" }));
    expect(sharedOf(survey)[0]).toEqual(["R002"]);
    expect(returnQueries(survey)).toMatchObject([{ key: "R002" }]);
    expect(returnQueries(survey)[0]?.message).toMatch(/supply comes back on that conductor/);
  });

  test("the column is found under a surveyor's own heading", () => {
    const rows = [
      ["Loop", "Ohms secure", "Ohms tripped", "Shares return with"],
      ["1", "3.1", "OL", "2"],
      ["2", "2.8", "OL", "1"],
    ].map((cells, index) => ({ row: index + 1, cells }));
    const { survey, headings } = readSurvey({ sheets: [{ typed: { sheet: "loops", rows } }] });
    expect(headings.find(({ heading }) => heading === "Shares return with")?.column).toBe("returnSharedWith");
    expect(sharedOf(survey)).toEqual([["R002"], ["R001"]]);
  });
});
