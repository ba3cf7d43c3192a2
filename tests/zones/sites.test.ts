import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readSurvey } from "../../lib/survey/read-survey.js";
import { zoneConflicts } from "../../lib/zones/zone-conflicts.js";
import { zoneSchedule } from "../../lib/zones/zone-schedule.js";
import { siteSheets } from "../survey/read-fixture.js";

const a = readSurvey({ sheets: siteSheets("a") }).survey;
const b = readSurvey({ sheets: siteSheets("b") }).survey;
const ofA = zoneSchedule({ loops: a.loops, oldZones: a.oldZones });
const ofB = zoneSchedule({
  loops: b.loops,
  oldZones: b.oldZones,
  areaWords: b.site.typed["Partitions/areas"] ?? "",
});

describe("a house: uses against an expert's reading of the same sheet", () => {
  const lines = readFileSync(new URL("../fixtures/sites/site_a_key.csv", import.meta.url), "utf8")
    .trim()
    .split("\n");
  const column = (lines[0] ?? "").split(",").indexOf("behaviour");
  // No field before that column holds a comma.
  const expert = lines.slice(1).map((line, index) => [`R00${index + 1}`, line.split(",")[column] ?? ""] as const);
  const ours = new Map([
    ...ofA.zones.map(({ key, use }) => [key, use] as const),
    ...ofA.excluded.map(({ key }) => [key, "excluded"] as const),
  ]);
  const word: Readonly<Record<string, string>> = {
    entry_exit: "entryExit",
    perimeter: "perimeter",
    interior_follower: "interiorFollower",
    not_intrusion: "excluded",
  };
  test("the sheet has nine rows with a behaviour", () => {
    expect(expert.length).toBe(9);
    expect(expert.every(([, behaviour]) => behaviour in word)).toBe(true);
  });
  test.each(expert.filter(([key]) => key !== "R003"))("%s is %s", (key, behaviour) => {
    expect(ours.get(key)).toBe(word[behaviour]);
  });
  test("windows with a slider used every day take its delay and are offered the split", () => {
    expect(ours.get("R003")).toBe("entryExit");
    expect(ofA.offers.find(({ key, reason }) => key === "R003" && reason === "dailyDoor")).toMatchObject({
      ownerChoice: "notRecorded",
    });
    expect(ofA.offers.map(({ key, reason }) => `${key} ${reason}`)).toEqual([
      "R003 dailyDoor",
      "R004 dailyDoor",
      "R008 mixedDetector",
    ]);
  });
  test("the owner's choice is taken from the pinned or forbidden treatment", () => {
    const [slider] = a.loops.filter(({ key }) => key === "R003");
    if (slider === undefined) throw new Error("no slider");
    const split = zoneSchedule({ loops: [{ ...slider, edits: { pinTreatment: "split" } }], oldZones: [] });
    expect(split.zones.map(({ part, use, openings }) => [part, use, openings])).toEqual([
      ["dailyDoor", "entryExit", 1],
      ["rest", "perimeter", 5],
    ]);
    const kept = zoneSchedule({ loops: [{ ...slider, edits: { forbid: ["split"] } }], oldZones: [] });
    expect(kept.offers.map(({ ownerChoice }) => ownerChoice)).toEqual(["keepTogether"]);
    expect(kept.zones.map(({ use }) => use)).toEqual(["entryExit"]);
    expect(kept.queries.some(({ column }) => column === "pinTreatment")).toBe(false);
  });
});

describe("a clinic with an old zone list, read as a person reads it", () => {
  const use = new Map([...ofB.zones, ...ofB.armingInputs].map((zone) => [zone.key, zone.use]));
  const expected: Readonly<Record<string, string | null>> = {
    R001: "entryExit",
    R002: "entryExit",
    R003: "interiorFollower",
    R004: "interior",
    R005: "interiorFollower",
    R006: "interiorFollower",
    R007: "interiorFollower",
    R008: "perimeter",
    R009: "interior",
    R010: "holdUp",
    R011: "perimeter",
    R012: "perimeter",
    R013: "perimeter",
    R014: "perimeter",
    R016: "arming",
    R017: "tamper",
    R018: "perimeter",
    R019: "environmental",
    R020: null,
    R021: "perimeter",
    R022: "entryExit",
    R023: "perimeter",
    R024: "perimeter",
    R025: "interior",
    R026: "perimeter",
    R027: "interiorFollower",
    R028: "perimeter",
    R029: "perimeter",
    R030: "perimeter",
    R031: "holdUp",
    R032: "tamper",
    R033: "perimeter",
    R034: "environmental",
  };
  test("every row has a zone, an arming input or stands among the excluded", () => {
    expect(b.loops.length).toBe(34);
    expect([...use.keys()].sort()).toEqual(Object.keys(expected));
    expect(ofB.excluded.map(({ key }) => key)).toEqual(["R015"]);
  });
  test.each(Object.entries(expected))("%s is %s", (key, wanted) => {
    expect(use.get(key)).toBe(wanted);
  });
  test("hold-ups are 24-hour and silent, the key switch is no alarm zone and has no number", () => {
    const holdUps = ofB.zones.filter((zone) => zone.use === "holdUp");
    expect(holdUps.map(({ key, silent, always }) => [key, silent, always])).toEqual([
      ["R010", true, true],
      ["R031", true, true],
    ]);
    expect(ofB.zones.filter(({ silent }) => silent).length).toBe(2);
    expect(ofB.armingInputs.map(({ key, number, alarms }) => [key, number, alarms])).toEqual([["R016", null, false]]);
  });
  test("every zone has a use or a query of its own", () => {
    const asked = new Set(ofB.queries.filter(({ column }) => column === "use").map(({ key }) => key));
    const open = ofB.zones.filter((zone) => zone.use === null);
    expect(open.map(({ key }) => key)).toEqual(["R020"]);
    expect(open.every(({ key }) => asked.has(key))).toBe(true);
  });
  test("areas: the note that asks for one, and the site's several areas that no loop names", () => {
    const areas = ofB.queries.filter(({ column }) => column === "area");
    expect(areas.map(({ key }) => key)).toEqual([undefined, "R008"]);
  });
  test("a loop of more than six windows is offered more zones", () => {
    const many = ofB.offers.filter(({ reason }) => reason === "manyWindows").map(({ key }) => key);
    expect(many).toEqual(["R012", "R033"]);
  });
});

describe("conflicts between tag, old list and trip result on the clinic's sheets", () => {
  const found = zoneConflicts({ loops: b.loops, oldZones: b.oldZones });
  const keysOf = (column: string, words: RegExp) =>
    found.filter((query) => query.column === column && words.test(query.message)).map(({ key }) => key);
  test("the list is read", () => expect(b.oldZones.length).toBe(33));
  test('zones 14 "SPARE" and 20 "not used" have a pair', () => {
    expect(keysOf("oldZone", /a pair is there, tagged/)).toEqual(["R014", "R020"]);
  });
  test("zone 29 is missing from the list", () => {
    expect(keysOf("oldZone", /not on the old list/)).toEqual(["R029"]);
  });
  test('only "Loading" has nothing to do with its tag', () => {
    expect(keysOf("label", /old list calls/)).toEqual(["R011"]);
  });
  test("three trips contradict: wet windows, a motion detector and nothing else", () => {
    expect(keysOf("notes", /did not open the loop/)).toEqual(["R013", "R027"]);
    expect(keysOf("opened", /changed nothing/)).toEqual([]);
    expect(keysOf("contactForm", /./)).toEqual([]);
  });
  test("no other kind of conflict is invented", () => {
    expect(found.length).toBe(6);
  });
  test("an opened reading equal to the shut one on the house's sheet is a conflict", () => {
    const house = zoneConflicts({ loops: a.loops, oldZones: [] });
    expect(house.map(({ key }) => key)).toEqual(["R006"]);
  });
});
