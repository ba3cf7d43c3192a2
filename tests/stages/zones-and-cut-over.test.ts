import { beforeAll, describe, expect, test } from "vitest";
import type { Estimate } from "../../lib/estimate/estimate.js";
import { cautions } from "../../lib/reference/generated/cautions.js";
import { readSurvey } from "../../lib/survey/read-survey.js";
import type { Survey } from "../../lib/survey/survey.js";
import { readFileSheets } from "../../lib/workbook/read/read-file.js";
import { writeSurveyWorkbook } from "../../lib/workbook/survey-template/write-survey-workbook.js";
import { boathouse, clinic, house, quickEstimateOf } from "./estimate-of.js";

const jobs: readonly (readonly [name: string, survey: () => Survey])[] = [
  ["the demo", boathouse],
  ["a house", house],
  ["a clinic", clinic],
];

const everyString = (value: unknown): readonly string[] => {
  if (typeof value === "string") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(everyString);
};

/** Work that takes an old control away: in the steps' keys or in an order to somebody (common practice, no source). */
const takesAway =
  /removeSiren|powerDownOld|checkPhoneLine|stripOut|\b(power|powers|powered)[ -](it |the old \w+ )?(down|off)|strip.?out|take (it |out |the old )|unplug|dialler|siren (feed|off)|batter(y|ies),? last/i;

describe.each(jobs)("%s: zones and cut-over in the estimate (common practice, no source)", (_, read) => {
  let survey: Survey;
  let estimate: Estimate;
  beforeAll(async () => {
    survey = read();
    estimate = await quickEstimateOf(survey);
  });
  const zonesOf = (key: string) =>
    [...estimate.zones.zones, ...estimate.zones.armingInputs].filter((zone) => zone.key === key);

  test("every loop has a zone, an arming input, is left alone or given up, and none is two of them", () => {
    expect(survey.loops.length).toBeGreaterThan(8);
    const excluded = estimate.zones.excluded.map(({ key }) => key);
    for (const { key, treatment } of estimate.loops) {
      const places = [zonesOf(key).length > 0, excluded.includes(key), treatment === "retire"];
      expect(places.filter(Boolean), key).toHaveLength(1);
    }
  });

  test("what the zones leave alone, the plan leaves alone, and the other way round", () => {
    const alone = estimate.loops.filter(({ treatment }) => treatment === "excluded").map(({ key }) => key);
    expect(alone.length).toBeGreaterThan(0);
    expect(estimate.zones.excluded.map(({ key }) => key).sort()).toEqual(alone.sort());
  });

  test("every module input has a behaviour, or a query asks for its use", () => {
    const landed = estimate.loops.filter(({ input }) => input !== null);
    expect(landed.length).toBeGreaterThan(2);
    const asked = new Set(estimate.queries.filter(({ column }) => column === "use").map(({ key }) => key));
    for (const { key } of landed) {
      const zones = zonesOf(key);
      expect(zones.length, key).toBeGreaterThan(0);
      expect(
        zones.every(({ use }) => use !== null || asked.has(key)),
        key,
      ).toBe(true);
    }
    const rows = estimate.cutOver.commissioning.rows.map(({ key }) => key);
    expect(rows.sort()).toEqual(landed.map(({ key }) => key).sort());
  });

  test("numbers run from 1 without a gap; one input has one number; names are unique", () => {
    const { zones } = estimate.zones;
    const numbers = [...new Set(zones.map(({ number }) => number))];
    expect(numbers).toEqual(numbers.map((_one, index) => index + 1));
    const names = zones.map(({ name }) => name.toLowerCase());
    expect(new Set(names).size).toBe(names.length);
    for (const loop of estimate.loops) {
      for (const other of loop.input?.sharedWith ?? []) {
        const pair = zonesOf(loop.key).filter(({ part }) => part === null);
        const its = zonesOf(other).filter(({ part }) => part === null);
        if (pair[0] && its[0]) expect(pair[0].number).toBe(its[0].number);
      }
    }
  });

  test("every opening of a kept or wireless loop has its line in the walk test, life safety none", () => {
    const { lines } = estimate.cutOver.walkTest;
    const taken = estimate.loops.filter(
      ({ treatment, input }) => input !== null || treatment === "wireless" || treatment === "split",
    );
    expect(taken.length).toBeGreaterThan(5);
    for (const { key } of taken) {
      const openings = survey.loops.find((loop) => loop.key === key)?.openings.count ?? 0;
      const mine = lines.filter((line) => line.key === key && line.what.startsWith("opening"));
      expect(mine.length, key).toBe(Math.max(1, openings));
      for (const { how, atRest, tried } of mine) expect([how, atRest, tried].every((words) => words !== "")).toBe(true);
    }
    const others = new Set(taken.map(({ key }) => key));
    expect(lines.filter(({ key }) => !others.has(key))).toEqual([]);
  });

  test("every removed device has a blank plate or a note, and every device of a wireless loop is among them", () => {
    const { removed } = estimate.cutOver;
    expect(removed.length).toBeGreaterThan(0);
    for (const { finish, words } of removed) {
      expect(["blankPlate", "note"]).toContain(finish);
      expect(words).not.toBe("");
    }
    for (const { key, treatment } of estimate.loops) {
      if (treatment !== "wireless") continue;
      const devices = survey.loops.find((loop) => loop.key === key)?.devices ?? [];
      const wanted = devices.map(({ kind, count }) => [kind, count]);
      const found = removed.filter((one) => one.key === key).map(({ kind, count }) => [kind, count]);
      expect(found, key).toEqual(wanted);
    }
  });

  test("a detector that the plan takes off its pair is a wireless zone beside the contacts that stay", () => {
    const split = estimate.loops.filter(({ treatment }) => treatment === "split");
    for (const { key, input } of split) {
      expect(zonesOf(key).map(({ part }) => part)).toEqual(expect.arrayContaining(["rest", "detector"]));
      const numbers = zonesOf(key).map(({ number }) => number);
      const built = estimate.cutOver.asBuilt.filter(({ number }) => numbers.includes(number));
      const at = input === null ? null : `${input.module} input ${input.number}`;
      expect(built.map((zone) => [zone.medium, zone.input])).toEqual([
        ["wired", at],
        ["wireless", null],
      ]);
    }
    if (survey.site.name === "Marrow Lane house") expect(split.map(({ key }) => key)).toEqual(["R008"]);
  });

  test("no hold-up is disconnected before its substitute was agreed and is in place", () => {
    const { steps } = estimate.cutOver;
    const at = (step: string, key: string) =>
      steps.find((one) => one.step === step && one.loops.includes(key))?.number ?? Number.NaN;
    for (const { loops, number, after } of steps.filter(({ step }) => step === "disconnectHoldUp")) {
      for (const key of loops) {
        expect(after).toContain(at("agreeHoldUpSubstitute", key));
        expect(after).toContain(at("holdUpSubstituteInPlace", key));
        for (const earlier of after) expect(earlier).toBeLessThan(number);
      }
    }
  });

  test("a pair that is to be read again first stands in no step, on no label and no line", () => {
    const waiting = estimate.loops
      .filter(({ treatment, input }) => treatment === "measureAgain" && input === null)
      .map(({ key }) => key);
    const { steps, labels, walkTest, readAgainFirst } = estimate.cutOver;
    expect(readAgainFirst).toHaveLength(waiting.length);
    const named = [...labels, ...walkTest.lines].map(({ key }) => key).concat(steps.flatMap(({ loops }) => loops));
    expect(named.filter((key) => waiting.includes(key))).toEqual([]);
  });

  test("held: nothing in the whole estimate powers down, strips out or takes a siren off", () => {
    expect(estimate.holds).toHaveLength(1);
    expect(estimate.cutOver.held).toBe(true);
    const { holds: _holds, ...rest } = estimate;
    // What the survey says and asks is quoted, and "do not … power it down" is what a hold is for.
    const stay = cautions.filter(({ caution }) => caution === "leaveLifeSafetyAlone").map(({ words }) => words);
    const quoted = new Set([...survey.loops.flatMap(({ typed }) => Object.values(typed)), ...stay]);
    const asked = new Set(everyString(rest.queries));
    const said = everyString({ ...rest, queries: [] }).filter((text) => !quoted.has(text) && !asked.has(text));
    expect(said.length).toBeGreaterThan(300);
    expect(said.filter((text) => takesAway.test(text))).toEqual([]);
    expect(estimate.cutOver.steps[0]?.step).toBe("obtainRelease");
    const kinds = estimate.cutOver.removed.map(({ kind }) => kind);
    expect(kinds.filter((kind) => ["siren", "control", "keypad"].includes(kind))).toEqual([]);
    expect(estimate.cutOver.disposal.map(({ kind }) => kind)).not.toContain("leadAcidBattery");
  });

  test("released in writing, the same words are found: the search above can fail", async () => {
    const lifeSafetyRelease = { name: "The fire contractor", date: "2 May" };
    const released = await quickEstimateOf({ ...survey, site: { ...survey.site, lifeSafetyRelease } });
    expect(released.cutOver.held).toBe(false);
    const steps = released.cutOver.steps.map(({ step }) => step);
    expect(steps).toEqual(expect.arrayContaining(["powerDownOld", "stripOut"]));
    expect(everyString(released.cutOver.steps).some((text) => takesAway.test(text))).toBe(true);
    expect(released.cutOver.removed.map(({ kind }) => kind)).toContain("control");
    expect(released.zones.excluded).toEqual(estimate.zones.excluded);
  });
});

describe("a loop that only the old list types as fire (common practice, no source)", () => {
  /** The clinic with the list's line of one plain window loop typed as fire. */
  const listed = (edits: Partial<Survey["loops"][number]["edits"]> = {}): { survey: Survey; key: string } => {
    const survey = clinic();
    const loop = survey.loops.find(({ label }) => label === "EXAM 1-4") ?? survey.loops[0];
    const zone = Number(loop?.oldZone);
    const oldZones = survey.oldZones.map((old) => (Number(old.zone) === zone ? { ...old, type: "Fire" } : old));
    const loops = survey.loops.map((one) =>
      one.key === loop?.key ? { ...one, edits: { ...one.edits, ...edits } } : one,
    );
    return { survey: { ...survey, loops, oldZones }, key: loop?.key ?? "" };
  };
  const treatmentOf = (estimate: Estimate, key: string) => estimate.loops.find((loop) => loop.key === key)?.treatment;

  test("is kept by the list as it stands, and left alone by plan, zones and holds once the list says fire", async () => {
    const { survey, key } = listed();
    expect(treatmentOf(await quickEstimateOf(clinic()), key)).not.toBe("excluded");
    const estimate = await quickEstimateOf(survey);
    expect(treatmentOf(estimate, key)).toBe("excluded");
    expect(estimate.zones.excluded.map((one) => one.key)).toContain(key);
    expect(estimate.holds[0]?.loops).toContain(key);
    expect(
      estimate.loops
        .find((loop) => loop.key === key)
        ?.facts.map(({ words }) => words)
        .join(),
    ).toMatch(/"fire" in the old list/);
  });

  test("a named person who has seen the windows corrects it, a smoke detector seen there does not", async () => {
    const windows = listed({ seenBy: "R. Surveyor", seenWhat: "window contacts" });
    const seen = await quickEstimateOf(windows.survey);
    expect(treatmentOf(seen, windows.key)).not.toBe("excluded");
    expect(seen.zones.excluded.map(({ key }) => key)).not.toContain(windows.key);
    const smoke = listed({ seenBy: "R. Surveyor", seenWhat: "smoke detector" });
    const still = await quickEstimateOf(smoke.survey);
    expect(treatmentOf(still, smoke.key)).toBe("excluded");
    expect(still.zones.excluded.map(({ key }) => key)).toContain(smoke.key);
  });

  test("a use written as fire is not undone by what was seen: the use has to be written anew", async () => {
    const { survey, key } = listed({ seenBy: "R. Surveyor", seenWhat: "window contacts" });
    const loops = survey.loops.map((loop) => (loop.key === key ? { ...loop, use: "24hr fire" } : loop));
    const estimate = await quickEstimateOf({ ...survey, loops });
    expect(treatmentOf(estimate, key)).toBe("excluded");
    expect(estimate.zones.excluded.map((one) => one.key)).toContain(key);
  });
});

describe("Blank plates: removed less replaced (common practice, no source)", () => {
  const platesIn = ({ bill }: Estimate) => bill.find((line) => line.class === "blankPlate")?.need ?? 0;

  test.each(jobs)("%s: every removed device has a plate or a note, the bill has the plates", async (_, read) => {
    const estimate = await quickEstimateOf(read());
    const { removed } = estimate.cutOver;
    expect(removed.length).toBeGreaterThan(0);
    for (const one of removed) {
      expect(one.plates, one.kind).toBeGreaterThanOrEqual(0);
      if (one.plates === 0) expect(one.words, one.kind).not.toBe("");
    }
    expect(platesIn(estimate)).toBe(removed.reduce((sum, { plates }) => sum + plates, 0));
  });

  test("a house whose two keypads go: as its surveyor noted, two plates, and none while the job is held", async () => {
    const survey = house();
    const item = Object.entries(survey.site.typed).find(([name]) => /keypad/i.test(name));
    expect(item?.[1]).toMatch(/^2\b/);
    const held = await quickEstimateOf(survey);
    expect(held.cutOver.removed.some(({ kind }) => kind === "keypad")).toBe(false);
    const release = { name: "fire contractor of the house", date: "2026-03-01" };
    const released = await quickEstimateOf({ ...survey, site: { ...survey.site, lifeSafetyRelease: release } });
    const keypads = released.cutOver.removed.filter(({ kind }) => kind === "keypad");
    expect(keypads.reduce((sum, { plates }) => sum + plates, 0)).toBe(2);
    expect(platesIn(released)).toBeGreaterThanOrEqual(2);
  });
});

test("a daily door the owner wants apart: a wireless zone of its own in plan, zones, bill and walk test", async () => {
  const loops = ["R001", "R002"].map((key, index) => ({
    key,
    panel: "P1",
    loop: `${index + 1}`,
    protects: "front door + 3 windows",
    openings: 4,
    device: "recessed contacts",
    use: "entryExit",
    cable: "22/4",
    run: "20 m",
    closed: 3.4,
    opened: "OL",
    voltsPairDc: 0,
    ...(index === 0 ? { pinTreatment: "split" } : { forbid: ["split", "wireless"] }),
  }));
  const { survey } = readSurvey({ json: { schema: 1, loops } });
  const estimate = await quickEstimateOf(survey);
  const [apart, kept] = estimate.loops;
  expect(apart?.treatment).toBe("split");
  expect(apart?.input).not.toBeNull();
  expect(apart?.wireless.reduce((sum, { count }) => sum + count, 0)).toBe(1);
  const zonesOf = (key: string | undefined) => estimate.zones.zones.filter((zone) => zone.key === key);
  expect(zonesOf(apart?.key).map(({ part, use }) => [part, use])).toEqual([
    ["dailyDoor", "entryExit"],
    ["rest", "perimeter"],
  ]);
  expect(new Set(zonesOf(apart?.key).map(({ number }) => number)).size).toBe(2);
  const lines = estimate.cutOver.walkTest.lines.filter(({ key }) => key === apart?.key);
  expect(lines).toHaveLength(4);
  expect(lines.filter(({ medium }) => medium === "wireless").map(({ zone }) => zone)).toEqual([
    zonesOf(apart?.key)[0]?.name,
  ]);
  expect(estimate.bill.some(({ class: of, loops: by }) => of.startsWith("wireless") && by.includes("R001"))).toBe(true);
  // The owner of the other one keeps it as it is: one zone, nothing wireless.
  expect(kept?.treatment).not.toBe("split");
  expect(kept?.input).not.toBeNull();
  expect(zonesOf(kept?.key)).toHaveLength(1);
  expect(estimate.zones.offers.map(({ ownerChoice }) => ownerChoice)).toEqual(["split", "keepTogether"]);
}, 30_000);

test("the owner's answers about time and delays have a row to stand in, and count", async () => {
  const bytes = await writeSurveyWorkbook({ date: "2026-03-02" });
  const settings = readFileSheets({ name: "survey.xlsx", bytes }).find(({ sheet }) => sheet === "Settings");
  const names = (settings?.rows ?? []).map(({ cells }) => cells[0]);
  for (const setting of ["agreedDarkMinutes", "exitSeconds", "entrySeconds", "abortSeconds"])
    expect(names).toContain(setting);
  const survey = boathouse();
  const asked = await quickEstimateOf(survey);
  const query = asked.queries.find(({ column }) => column === "agreedDarkMinutes");
  expect(query?.sheet).toBe("Settings");
  const answered = await quickEstimateOf({ ...survey, settings: { ...survey.settings, agreedDarkMinutes: 240 } });
  expect(answered.queries.some(({ column, typed }) => column === "agreedDarkMinutes" && typed === "")).toBe(false);
});
