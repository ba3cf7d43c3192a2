import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { InputError } from "../../lib/problems/input-error.js";
import type { DeviceKind, SurveyLoop } from "../../lib/survey/survey.js";
import { entryExitTimes } from "../../lib/zones/entry-exit-times.js";
import { namesAgree } from "../../lib/zones/names-agree.js";
import { saysUnused } from "../../lib/zones/phrases.js";
import { zoneConflicts } from "../../lib/zones/zone-conflicts.js";
import { zoneName } from "../../lib/zones/zone-name.js";
import { zoneSchedule } from "../../lib/zones/zone-schedule.js";
import { zoneUse } from "../../lib/zones/zone-use.js";

const loopOf = (row: number, more: Partial<SurveyLoop> = {}): SurveyLoop => ({
  key: `R${String(row).padStart(3, "0")}`,
  sheet: "Loops",
  row: row + 1,
  typed: {},
  panel: "P1",
  loop: `${row}`,
  openings: { count: 1, assumed: false },
  devices: [{ kind: "contactRecessed", count: 1, powered: false }],
  contactForm: "NC",
  poweredDetector: false,
  markedLifeSafety: false,
  edits: {},
  ...more,
});
const device = (kind: DeviceKind, count = 1) => [{ kind, count, powered: false }];

describe("uses as surveyors write them (common practice, no source)", () => {
  test.each([
    ["E/E", "entryExit"],
    ["Int", "interior"],
    ["24h silent", "holdUp"],
    ["Arm", "arming"],
    ["entryExit", "entryExit"],
    ["interiorFollower", "interiorFollower"],
    ["audible24h", "audible24h"],
    ["holdUp", "holdUp"],
    ["lifeSafety", "lifeSafety"],
    ["Perimeter", "perimeter"],
    ["sunroom", undefined],
  ])("%s is %s", (words, use) => expect(zoneUse(words)).toBe(use));
});

describe("a written use", () => {
  test("stands", () => {
    const { zones, queries } = zoneSchedule({
      loops: [loopOf(1, { use: "interior", protects: "lobby" })],
      oldZones: [],
    });
    expect(zones.map(({ use, source }) => [use, source])).toEqual([["interior", "written"]]);
    expect(queries).toEqual([]);
  });
  test("never puts a hold-up on a delay: 24-hour silent until the owner decides", () => {
    const { zones, queries } = zoneSchedule({
      loops: [loopOf(1, { use: "entryExit", devices: device("holdUp") })],
      oldZones: [],
    });
    expect(zones[0]).toMatchObject({ use: "holdUp", silent: true, always: true });
    expect(queries.map(({ column, typed }) => [column, typed])).toEqual([["use", "entryExit"]]);
  });
  test("may make a hold-up audible", () => {
    const { zones } = zoneSchedule({ loops: [loopOf(1, { use: "24 hour", devices: device("holdUp") })], oldZones: [] });
    expect(zones[0]).toMatchObject({ use: "audible24h", silent: false, always: true });
  });
  test("of perimeter on a daily door is kept and asked about", () => {
    const { zones, queries } = zoneSchedule({
      loops: [loopOf(1, { use: "perim", protects: "front door" })],
      oldZones: [],
    });
    expect(zones[0]?.use).toBe("perimeter");
    expect(queries[0]?.message).toMatch(/front door/);
  });
  test("that nobody understands is asked about, and a use proposed", () => {
    const { zones, queries } = zoneSchedule({ loops: [loopOf(1, { use: "sunroom" })], oldZones: [] });
    expect(zones[0]?.use).toBe("perimeter");
    expect(queries[0]?.message).toMatch(/"sunroom" was not understood/);
  });
});

describe("life safety", () => {
  const wet = loopOf(1, { oldZone: "15", label: "RISER" });
  test("by the old list alone is left alone, unless a named person has seen the device", () => {
    const oldZones = [{ zone: "15", name: "Riser", type: "Fire" }];
    expect(zoneSchedule({ loops: [wet], oldZones }).excluded.map(({ key }) => key)).toEqual(["R001"]);
    const seen = { ...wet, edits: { seenBy: "A. Person", seenWhat: "contact of the riser cupboard" } };
    expect(zoneSchedule({ loops: [seen], oldZones }).excluded).toEqual([]);
  });
  test("by a mark stays so whoever has seen it", () => {
    const marked = { ...wet, markedLifeSafety: true, edits: { seenBy: "A. Person", seenWhat: "contact" } };
    expect(zoneSchedule({ loops: [marked], oldZones: [] }).zones).toEqual([]);
  });
});

describe("conflicts, one at a time", () => {
  const messages = (
    loops: readonly SurveyLoop[],
    oldZones: readonly { zone: string; name?: string; type?: string }[],
  ) => zoneConflicts({ loops, oldZones }).map(({ message }) => message);
  const reading = (ohms: number | "OL") => ({ ohms, atMost: false });
  test("07 and 7 are one zone; a list row without a pair and a doubled row are asked about", () => {
    const found = messages(
      [loopOf(1, { oldZone: "7", label: "SHED" })],
      [
        { zone: "07", name: "Shed" },
        { zone: "8", name: "Loft" },
        { zone: "9", name: "spare" },
        { zone: "007", name: "Barn" },
      ],
    );
    expect(found.length).toBe(2);
    expect(found[0]).toMatch(/this zone 2 times: "Shed", "Barn"/);
    expect(found[1]).toMatch(/zone 8 "Loft"/);
  });
  test("two loops on one zone and two equal tags", () => {
    const found = messages([loopOf(1, { oldZone: "3", label: "WIN" }), loopOf(2, { oldZone: "03", label: "Win" })], []);
    expect(found.length).toBe(2);
    expect(found[0]).toMatch(/beside 2 loops: P1 1, P1 2/);
    expect(found[1]).toMatch(/2 pairs at this panel/);
  });
  test("list says interior, the device is a hold-up", () => {
    const found = messages(
      [loopOf(1, { oldZone: "3", label: "DESK", devices: device("holdUp") })],
      [{ zone: "3", name: "Desk", type: "Int" }],
    );
    expect(found.length).toBe(1);
    expect(found[0]).toMatch(/interior.*hold-up/);
  });
  test.each([
    ["NC", 2200, 3, 1],
    ["NC", "OL", 3, 1],
    ["NO", 2200, "OL", 1],
    ["NO", "OL", 3, 0],
    ["NC", 2200, "OL", 0],
    ["NO", 5660, 1.9, 0],
    ["NC", 2.9, 2.9, 1],
    ["NC", "OL", "OL", 0],
  ] as const)("%s reads %s shut and %s tripped: %d conflict", (contactForm, shut, open, count) => {
    const loop = loopOf(1, {
      contactForm,
      closed: reading(shut) as never,
      opened: [{ opening: null, reading: reading(open) as never }],
    });
    expect(zoneConflicts({ loops: [loop], oldZones: [] }).length).toBe(count);
    expect(zoneConflicts({ loops: [{ ...loop, voltsDc: 5 }], oldZones: [] }).length).toBe(0);
  });
});

describe("names of the list against tags (common practice, no source)", () => {
  test.each([
    ["Main Entrance", "MAIN ENT", "main entrance double doors", true],
    ["Basement", "BSMT STR", "stair door", true],
    ["Loading", "ROLLUP", "delivery roll up door", false],
    ["Ex 1-4", "EXAM 5-8", "exam rm 5-8 windows", false],
    ["Corr A", "CORR B", "corridor B motion", false],
    ["Server motion", "RECEP PIR", "reception motion", false],
    ["Flood", "WATER", "under sink leak sensor", true],
    ["Windows N", "N WIN", "north windows", true],
    ["Panic 2", "EXEC PANIC", "executive panic", true],
    ["Kitchen", "GARAGE", "garage side door", false],
  ])("%s / %s, %s: %s", (printed, tag, place, agree) => expect(namesAgree(printed, tag, place)).toBe(agree));
  test.each([
    ["SPARE", true],
    ["spare 2", true],
    ["Zone 5 not used", true],
    ["Spare bedroom", false],
    ["missing", true],
    ["", false],
  ])('"%s" says unused: %s', (name, unused) => expect(saysUnused(name)).toBe(unused));
});

describe("entry and exit times, ANSI/SIA CP-01 feature tables as quoted in public compliance tables", () => {
  test.each([
    // exit 45–255, entry 30–240, abort 15–45, entry + abort at most 60 s
    [{ exitSeconds: 60, entrySeconds: 30, abortSeconds: 30 }, []],
    [{ exitSeconds: 45, entrySeconds: 45, abortSeconds: 15 }, []],
    [{ exitSeconds: 255, entrySeconds: 30, abortSeconds: 15 }, []],
    [{ exitSeconds: 44, entrySeconds: 30, abortSeconds: 30 }, ["exitSeconds"]],
    [{ exitSeconds: 256, entrySeconds: 29, abortSeconds: 30 }, ["exitSeconds", "entrySeconds"]],
    [{ exitSeconds: 60, entrySeconds: 30, abortSeconds: 31 }, ["entrySeconds, abortSeconds"]],
    [{ exitSeconds: 60, entrySeconds: 30, abortSeconds: 14 }, ["abortSeconds"]],
    [
      { exitSeconds: 60, entrySeconds: 241, abortSeconds: 46 },
      ["entrySeconds", "abortSeconds", "entrySeconds, abortSeconds"],
    ],
    [{}, []],
  ])("%j asks about %j", (times, columns) => {
    expect(entryExitTimes(times).queries.map(({ column }) => column)).toEqual(columns);
  });
  test("SIA CP-01-200x draft clause 4.4.3: 60 s after power before sensors count", () => {
    expect(entryExitTimes({}).settleSeconds).toBe(60);
  });
  test("refuses what is no time", () => {
    expect(() => entryExitTimes({ exitSeconds: Number.NaN })).toThrow(InputError);
    expect(() => entryExitTimes({ entrySeconds: -1 })).toThrow("entrySeconds: got -1 s, expected 0 to 3600 s");
  });
});

describe("properties of a schedule", () => {
  const kinds: readonly DeviceKind[] = [
    "contactRecessed",
    "contactSurface",
    "contactOverheadDoor",
    "contactUnspecified",
    "foil",
    "shockSensor",
    "glassBreak",
    "motion",
    "holdUp",
    "tamper",
    "keySwitch",
    "waterSensor",
    "temperatureSensor",
    "unknown",
    "smokeOrHeat",
    "flowSwitch",
  ];
  const text = fc.option(
    fc.constantFrom(
      "front door",
      "6 windows",
      "WIN",
      "hall",
      "spare",
      "office 2 corridor east wing",
      "?",
      "fire exit",
      "slider used every day",
    ),
    { nil: undefined },
  );
  const anyLoop = fc.record({
    kinds: fc.array(fc.constantFrom(...kinds), { minLength: 1, maxLength: 3 }),
    count: fc.integer({ min: 1, max: 12 }),
    label: text,
    protects: text,
    use: fc.option(fc.constantFrom("E/E", "perimeter", "24h", "fire", "interior", "whatever"), { nil: undefined }),
    pin: fc.option(fc.constantFrom("split", "keep"), { nil: undefined }),
  });
  const anyLoops = fc.array(anyLoop, { maxLength: 40 }).map((rows) =>
    rows.map((row, index) =>
      loopOf(index + 1, {
        devices: row.kinds.map((kind) => ({ kind, count: 1, powered: kind === "motion" })),
        openings: { count: row.count, assumed: false },
        ...(row.label === undefined ? {} : { label: row.label }),
        ...(row.protects === undefined ? {} : { protects: row.protects }),
        ...(row.use === undefined ? {} : { use: row.use }),
        edits: row.pin === undefined ? {} : { pinTreatment: row.pin },
      }),
    ),
  );
  test("every loop is a zone, an arming input or excluded; every zone has a use or a query", () => {
    fc.assert(
      fc.property(anyLoops, (loops) => {
        const { zones, armingInputs, excluded, queries } = zoneSchedule({ loops, oldZones: [] });
        const keys = new Set([...zones, ...armingInputs, ...excluded].map(({ key }) => key));
        expect(keys).toEqual(new Set(loops.map(({ key }) => key)));
        for (const zone of zones) {
          if (zone.use === null)
            expect(queries.some(({ key, column }) => key === zone.key && column === "use")).toBe(true);
          expect(zone.use).not.toBe("arming");
          expect(zone.use).not.toBe("lifeSafety");
        }
        for (const { key } of excluded)
          expect(queries.some((query) => query.key === key && query.column === "use")).toBe(false);
      }),
    );
  });
  test("a loop with a hold-up that is not excluded is 24-hour; numbers run from 1 without gaps", () => {
    fc.assert(
      fc.property(anyLoops, (loops) => {
        const { zones } = zoneSchedule({ loops, oldZones: [] });
        expect(zones.map(({ number }) => number)).toEqual(zones.map((_, index) => index + 1));
        const holdUps = new Set(
          loops.filter(({ devices }) => devices.some(({ kind }) => kind === "holdUp")).map(({ key }) => key),
        );
        for (const zone of zones) if (holdUps.has(zone.key) && zone.part === null) expect(zone.always).toBe(true);
      }),
    );
  });
  test("names differ whatever the capitals and fit the display", () => {
    fc.assert(
      fc.property(anyLoops, fc.integer({ min: 6, max: 24 }), (loops, displayCharacters) => {
        const { zones, armingInputs } = zoneSchedule({ loops, oldZones: [], displayCharacters });
        const names = [...zones, ...armingInputs].map(({ name }) => name.toLowerCase());
        expect(new Set(names).size).toBe(names.length);
        for (const name of names) {
          expect([...name].length).toBeLessThanOrEqual(displayCharacters);
          expect(name.trim()).not.toBe("");
        }
      }),
    );
  });
  test("a display length outside 6 to 64 is refused", () => {
    expect(() => zoneSchedule({ loops: [], oldZones: [], displayCharacters: 3 })).toThrow(InputError);
  });
  test("a long name is cut at a word", () => {
    expect(zoneName({ candidates: ["Exam corridor, east"], taken: new Set(), characters: 16 })).toEqual({
      name: "Exam corridor",
      shortened: true,
    });
  });
});
