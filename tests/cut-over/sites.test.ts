import { describe, expect, test } from "vitest";
import { asBuiltZones } from "../../lib/cut-over/as-built-zones.js";
import { commissioningSheet } from "../../lib/cut-over/commissioning-sheet.js";
import { cutOverOrder } from "../../lib/cut-over/cut-over-order.js";
import { disposalList } from "../../lib/cut-over/disposal-list.js";
import { handoverSheet } from "../../lib/cut-over/handover-sheet.js";
import { hazardFlags } from "../../lib/cut-over/hazard-flags.js";
import { labels } from "../../lib/cut-over/labels.js";
import { removedDevices } from "../../lib/cut-over/removed-devices.js";
import { walkTest } from "../../lib/cut-over/walk-test.js";
import { siteJob } from "./job.js";

const house = siteJob("a", { R006: "wireless", R008: "split" });
const clinic = siteJob("b", { R011: "wireless", R012: "wireless", R020: "retire", R031: "wireless" });
const panelsOf = (job: typeof house) =>
  job.survey.panels.map(({ panel, place, mains, battery }) => ({
    panel,
    sirens: 1,
    keypads: 2,
    ...(place === undefined ? {} : { place }),
    ...(mains === undefined ? {} : { mains }),
    ...(battery === undefined ? {} : { battery }),
  }));
const takenAway = /power.?down|strip|siren|take out|dialler/i;

describe("a house with smoke detectors on the old control", () => {
  const panels = panelsOf(house);
  const order = cutOverOrder({ loops: house.loops, panels, holds: [] });
  test("unreleased: the release comes first, and nothing takes the old control away", () => {
    expect(house.loops.length).toBe(9);
    expect(order.held).toBe(true);
    expect(order.steps[0]).toMatchObject({ step: "obtainRelease", loops: ["R009"] });
    expect(order.doNotTouch).toEqual(["P1 9 24HR FIRE"]);
    expect(order.steps.filter(({ step, words }) => takenAway.test(step) || takenAway.test(words))).toEqual([]);
    expect(order.steps.some(({ step }) => step === "closeOldAccount")).toBe(false);
    const moves = order.steps.filter(({ step }) => step === "moveLoops");
    expect(moves.length).toBeGreaterThan(0);
    for (const move of moves) expect(move.after).toContain(1);
  });
  test("released in writing with name and date: siren, power, dialler, control, in this order, at the end", () => {
    const release = { name: "Fire contractor", date: "3 May" };
    const { steps, held } = cutOverOrder({ loops: house.loops, panels, holds: [], release });
    expect(held).toBe(false);
    expect(steps[0]?.words).toMatch(/Fire contractor, 3 May/);
    const last = steps.filter(({ step }) =>
      ["removeSiren", "powerDownOld", "checkPhoneLine", "stripOut"].includes(step),
    );
    expect(last.map(({ step }) => step)).toEqual(["removeSiren", "powerDownOld", "checkPhoneLine", "stripOut"]);
    const proved = steps.findIndex(({ step }) => step === "signalsReceived");
    for (const { number } of last) expect(number).toBeGreaterThan(proved + 1);
    expect(cutOverOrder({ loops: house.loops, panels, holds: [], release: { name: "X", date: " " } }).held).toBe(true);
  });
  test("no paper gives the smoke detectors a line, a label or a plate", () => {
    const keys = [
      ...walkTest({ loops: house.loops }).lines,
      ...labels({ loops: house.loops }),
      ...commissioningSheet({ loops: house.loops }).rows,
      ...removedDevices({ loops: house.loops, panels, held: true }),
    ].map(({ key }) => key);
    expect(keys.length).toBeGreaterThan(30);
    expect(keys).not.toContain("R009");
    expect(asBuiltZones({ loops: house.loops }).some(({ from }) => /FIRE/.test(from))).toBe(false);
  });
  test("walk test: 1 + 1 + 6 + 2 + 4 + 3 + 1 + 3 and the glass-break detector that the surveyor did not count", () => {
    const { lines, without } = walkTest({ loops: house.loops });
    expect(lines.length).toBe(1 + 1 + 6 + 2 + 4 + 3 + 1 + 3 + 1);
    expect(lines.filter(({ key }) => key === "R003").map(({ what }) => what)[5]).toBe("opening 6 of 6");
    expect(lines.filter(({ medium }) => medium === "wireless").map(({ key }) => key)).toEqual(["R006", "R006", "R006"]);
    expect(without.map(({ key }) => key)).toEqual(["R009"]);
  });
  test("held: neither control, keypad, siren nor battery is among what leaves the house", () => {
    const removed = removedDevices({ loops: house.loops, panels, held: true });
    expect(removed.map(({ kind, count, finish }) => [kind, count, finish])).toEqual([
      ["contactRecessed", 3, "note"],
      ["glassBreak", 1, "blankPlate"],
    ]);
    expect(disposalList({ removed, panels, held: true }).map(({ kind, count }) => [kind, count])).toEqual([
      ["electronics", 1],
    ]);
    expect(handoverSheet({ loops: house.loops, held: true, times: [] }).map(({ heading }) => heading)).toContain(
      "Left alone: life safety, not part of this work",
    );
  });
});

describe("a clinic with two panels, two hold-ups and a sprinkler pair", () => {
  const panels = panelsOf(clinic);
  const release = { name: "Sprinkler contractor", date: "2 May" };
  const { steps } = cutOverOrder({ loops: clinic.loops, panels, holds: [], release, agreedDarkMinutes: 90 });
  const at = (step: string, key: string) =>
    steps.find((one) => one.step === step && one.loops.includes(key))?.number ?? 0;
  test.each(["R010", "R031"])("hold-up %s: agreed, in place, disconnected, pressed", (key) => {
    expect(at("agreeHoldUpSubstitute", key)).toBeGreaterThan(0);
    expect(at("holdUpSubstituteInPlace", key)).toBeGreaterThan(at("agreeHoldUpSubstitute", key));
    expect(at("disconnectHoldUp", key)).toBeGreaterThan(at("holdUpSubstituteInPlace", key));
    expect(at("pressHoldUp", key)).toBeGreaterThan(at("disconnectHoldUp", key));
  });
  test("the hardwired transformer of P1 is an electrician's", () => {
    const down = steps.filter(({ step }) => step === "powerDownOld");
    expect(down.map(({ panel }) => panel)).toEqual(["P1", "P2"]);
    expect(down[0]?.words).toMatch(/electrician/);
    expect(down[1]?.words).toMatch(/unplug the mains transformer first, then the battery/);
  });
  test("no lot takes longer than agreed, or somebody is asked", () => {
    const moves = steps.filter(({ step }) => step === "moveLoops");
    expect(moves.length).toBeGreaterThan(5);
    for (const { darkMinutes } of moves) expect(darkMinutes).toBeLessThanOrEqual(90);
    const short = cutOverOrder({ loops: clinic.loops, panels, holds: [], release, agreedDarkMinutes: 10 });
    expect(short.queries.length).toBeGreaterThan(0);
    expect(short.queries[0]?.message).toMatch(/more than the 10 min agreed/);
    expect(cutOverOrder({ loops: clinic.loops, panels, holds: [] }).queries[0]?.message).toMatch(/How long/);
  });
  test("every module input has a behaviour or a query", () => {
    const { rows } = commissioningSheet({ loops: clinic.loops });
    expect(rows.length).toBe(34 - 1 - 4);
    for (const { key, behaviour } of rows) expect(behaviour !== null || clinic.asked.has(key)).toBe(true);
  });
  test("two batteries of P1, one of P2, two transformers and the electronics are taken away", () => {
    const removed = removedDevices({ loops: clinic.loops, panels, held: false });
    const list = disposalList({ removed, panels, held: false });
    expect(list.find(({ kind }) => kind === "leadAcidBattery")?.count).toBe(3);
    expect(list.find(({ kind }) => kind === "transformer")?.count).toBe(2);
    // executive panic button, 2 + 2 keypads, 2 sirens, 2 controls; the retired pair has nothing known on it
    expect(list.find(({ kind }) => kind === "electronics")?.count).toBe(1 + 4 + 2 + 2);
    // overhead door 1, exam windows 8
    expect(list.find(({ kind }) => kind === "smallParts")?.count).toBe(9);
  });
  test("labels for both ends; the field end names no zone, no use, no place", () => {
    const made = labels({ loops: clinic.loops });
    expect(made.length).toBe(2 * 33);
    for (const label of made.filter(({ end }) => end === "field")) {
      expect(label.lines.join(" ")).not.toMatch(/input|zone|silent|hold-up \(|24-hour/);
    }
    expect(made.filter(({ key }) => key === "R020").map(({ lines }) => lines.join(", "))).toEqual([
      "20, not connected, was P1 20",
      "20, to P1, not connected",
    ]);
  });
});

describe("hazards of both sites, as a person marks them on the sheets", () => {
  const flagsOf = (job: typeof house) =>
    hazardFlags({ site: job.survey.site, panels: job.survey.panels, loops: job.survey.loops });
  const found = (job: typeof house) => flagsOf(job).flags.map(({ hazard, where }) => `${hazard} ${where}`);
  test("house of 1994: popcorn ceiling and swollen battery; no lead paint; the register is asked for", () => {
    expect(found(house)).toContain("asbestos Year built");
    expect(found(house).filter((flag) => flag.startsWith("battery"))).toEqual(["battery Battery"]);
    expect(found(house).filter((flag) => flag.startsWith("leadPaint"))).toEqual([]);
    expect(flagsOf(house).queries.map(({ column }) => column)).toEqual(["hazardRegister"]);
  });
  test("clinic of 1972: lead paint by year and untested, asbestos, ladder, roof hatch, hardwired mains, no drilling", () => {
    const flags = found(clinic);
    expect(flags).toContain("leadPaint Site");
    expect(flags).toContain("leadPaint Hazard register");
    expect(flags).toContain("asbestos Hazard register");
    expect(flags).toContain("height Ladder/lift");
    expect(flags).toContain("height P2 1");
    expect(flags).toContain("hardwiredMains P1");
    expect(flags).toContain("drillingLimits Access hours");
    expect(flagsOf(clinic).queries).toEqual([]);
  });
  test("what is denied raises nothing; a lift lobby is no lift", () => {
    const site = {
      currency: "USD",
      yearBuilt: 1978,
      hazardRegister: "no asbestos, lead paint free",
      typed: { a: "lift lobby" },
    };
    expect(hazardFlags({ site, loops: [] })).toEqual({ flags: [], queries: [] });
    expect(hazardFlags({ site: { ...site, yearBuilt: 1977 }, loops: [] }).flags.map(({ hazard }) => hazard)).toEqual([
      "leadPaint",
    ]);
  });
});

describe("words on paper", () => {
  test("none of the words the papers never use", () => {
    const panels = panelsOf(clinic);
    const never =
      /\b(safe|dead|isolated|sound|good|ok|passed|protected|secure|compliant|certified|guaranteed|best|not needed)\b/i;
    const ours = [
      ...cutOverOrder({ loops: clinic.loops, panels, holds: [] }).steps,
      ...cutOverOrder({ loops: clinic.loops, panels, holds: [], release: { name: "A", date: "B" } }).steps,
    ].map(({ words }) => words);
    const more = [
      ...walkTest({ loops: clinic.loops }).lines.flatMap(({ how, atRest, tried }) => [how, atRest, tried]),
      ...handoverSheet({ loops: clinic.loops, held: false, times: [] }).flatMap(({ heading, lines }) => [
        heading,
        ...lines,
      ]),
      ...removedDevices({ loops: clinic.loops, panels, held: false }).map(({ words }) => words),
    ];
    expect(ours.length + more.length).toBeGreaterThan(200);
    // "no sound on site" tells what is heard of a hold-up.
    expect([...ours, ...more].filter((words) => never.test(words.replace("no sound on site", "")))).toEqual([]);
  });
});
