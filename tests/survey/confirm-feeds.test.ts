import { describe, expect, it } from "vitest";
import { type ConfirmedFeeds, confirmFeeds } from "../../lib/survey/confirm-feeds.js";
import { readSurvey } from "../../lib/survey/read-survey.js";
import { SurveyRefused } from "../../lib/survey/survey-refused.js";

const rows = [
  ["Panel", "Loop", "Label on wire", "Device", "Cable", "Run", "Ohms shut", "Notes"],
  ["P1", "05", "HALL", "motion (powered)", "22/4", "20 m", "5.6k", "power daisy chained to 6"],
  ["P1", "06", "STUDY", "motion (powered)", "22/4", "35 m", "5.6k", "fed from hall"],
  ["P2", "6", "LOFT", "motion (powered)", "22/4", "12 m", "5.6k", "end of chain"],
];
const read = (fedFrom?: ConfirmedFeeds) =>
  readSurvey({
    sheets: [{ typed: { sheet: "Loops", rows: rows.map((cells, at) => ({ row: at + 1, cells })) } }],
    ...(fedFrom === undefined ? {} : { fedFrom }),
  }).survey;
const feedQueries = (survey: ReturnType<typeof read>) =>
  survey.queries.filter(({ message }) => message.includes("Fed from")).map(({ key }) => key);

describe("feeds of powered detectors (rule of this library: notes propose, a person confirms)", () => {
  it("asks, and applies nothing, while nobody confirmed what the notes say", () => {
    const survey = read();
    expect(survey.loops.length).toBe(3);
    expect(survey.loops.map(({ fedFrom }) => fedFrom)).toEqual([undefined, undefined, undefined]);
    expect(survey.loops[1]?.fedFromProposed).toBe("hall");
    expect(feedQueries(survey)).toEqual(["R001", "R002", "R003"]);
  });

  it.each([
    ["panel and loop, label", { "P1 6": "hall" }],
    ["key, key", { R002: "R001" }],
    ["label, loop without its zero", { study: "5" }],
  ])("takes a feed by %s and drops the questions it answers", (_how, fedFrom) => {
    const survey = read(fedFrom);
    expect(survey.loops[1]?.fedFrom).toBe("05");
    expect(survey.loops[1]?.fedFromProposed).toBeUndefined();
    expect(survey.loops[1]?.typed["fedFrom"]).toBe("05");
    expect(feedQueries(survey)).toEqual(["R003"]);
  });

  it("takes the panel as a feeder too", () => {
    const survey = read({ LOFT: "P2" });
    expect(survey.loops[2]?.fedFrom).toBe("panel");
    expect(feedQueries(survey)).toEqual(["R001", "R002"]);
  });

  it.each([
    ["a loop that does not exist", { "77": "5" }, /no loop goes by "77"/],
    ["a loop of two panels", { "6": "HALL" }, /"6" may be P1 06 \(R002\), P2 6 \(R003\)/],
    ["a feeder of another panel", { LOFT: "HALL" }, /no loop goes by "HALL"/],
  ])("refuses %s with the names in words", (_what, fedFrom, message) => {
    expect(() => read(fedFrom)).toThrow(SurveyRefused);
    expect(() => read(fedFrom)).toThrow(message);
  });

  it.each([[["R002"]], ["R002"], [{ R002: 5 }], [null]])("refuses %j with the form it expects", (fedFrom) => {
    const survey = read();
    expect(() => confirmFeeds({ survey, fedFrom })).toThrow(/expected \{"loop"/);
  });
});
