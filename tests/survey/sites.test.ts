import { describe, expect, test } from "vitest";
import { readSurvey } from "../../lib/survey/read-survey.js";
import type { SurveyLoop } from "../../lib/survey/survey.js";
import { siteSheets } from "./read-fixture.js";

const a = readSurvey({ sheets: siteSheets("a") });
const b = readSurvey({ sheets: siteSheets("b") });
const keyed = (loops: readonly SurveyLoop[]) => new Map(loops.map((loop) => [loop.key, loop]));
const feet = (loop: SurveyLoop | undefined) =>
  loop?.run === undefined ? undefined : Math.round((loop.run.meters / 0.3048) * 10) / 10;
const kinds = (loop: SurveyLoop | undefined) => loop?.devices.map(({ kind, count }) => `${count} ${kind}`).join(" + ");

describe("a house surveyed on a loose sheet, read as a person reads it", () => {
  const loops = keyed(a.survey.loops);
  // key: shut Ω, opened Ω, AWG, conductors, feet, openings, devices, EOL place, EOL Ω, powered detector
  const expected: Readonly<Record<string, readonly unknown[]>> = {
    R001: [2.2, "OL", 22, 2, 55, 1, "1 contactRecessed", "panel", 2200, false],
    R002: [2170, "OL", 22, 2, 70, 1, "1 contactRecessed", "device", 2200, false],
    R003: [5.4, "OL", 22, 2, 140, 6, "6 contactSurface", "none", undefined, false],
    R004: [47, "OL", 22, 2, 65, 2, "1 contactSurface + 1 contactOverheadDoor", "unknown", undefined, false],
    R005: ["OL", "OL", 22, 2, 90, 4, "4 contactSurface", undefined, undefined, false],
    R006: [2.9, 2.9, 22, 2, 95, 3, "3 contactRecessed", "none", undefined, false],
    R007: [12.2, "OL", 22, 4, 75, 1, "1 motion", undefined, undefined, true],
    R008: [4.3, "OL", 22, 4, 80, 3, "3 contactSurface + 1 glassBreak", "none", undefined, true],
    R009: [4745, undefined, 18, 2, 110, 3, "3 smokeOrHeat", "device", undefined, true],
  };
  test("every row of the sheet is there", () => {
    expect(a.survey.loops.length).toBe(9);
    expect([...loops.keys()]).toEqual(Object.keys(expected));
  });
  test.each(Object.entries(expected))("%s", (key, row) => {
    const loop = loops.get(key);
    const opened = loop?.opened?.[0]?.reading.ohms;
    expect([
      loop?.closed?.ohms,
      opened,
      loop?.cable?.gaugeAwg,
      loop?.cable?.conductors,
      feet(loop),
      loop?.openings.count,
      kinds(loop),
      loop?.eolPlace,
      loop?.eolOhms,
      loop?.poweredDetector,
    ]).toEqual(row);
  });
  test("what the notes say becomes facts", () => {
    expect(loops.get("R001")?.resistorAtPanel).toBe("inSeries");
    expect(loops.get("R004")?.tapped).toMatchObject({ low: { ohms: 47 }, high: { ohms: 80 } });
    expect(loops.get("R004")?.behaviour).toBe("jumping");
    expect(loops.get("R004")?.earth?.aOhms?.ohms).toBe(1_200_000);
    expect(loops.get("R006")?.noteFacts?.map(({ fact }) => fact)).toEqual(["sameWhenOpened"]);
    expect(loops.get("R007")).toMatchObject({ powered: true, voltsAtDetector: 13.4, milliamps: 18 });
    expect(loops.get("R007")?.closedUnpowered?.ohms).toBe("OL");
    expect(loops.get("R007")?.voltsDc).toBeUndefined();
    expect(loops.get("R009")?.lifted).toBe("no");
    expect(a.survey.loops.every(({ markedLifeSafety }) => !markedLifeSafety)).toBe(true);
  });
  test("the site list gives meter, temperature and panel", () => {
    expect(a.survey.site.meter).toEqual({ percent: 0.8, counts: 3, leadsZeroed: false, leadOhms: 0.3 });
    // 63 °F by NIST SP 811, B.8: (63 − 32)/1.8
    expect(a.survey.site.temperatureCelsius).toBeCloseTo(17.22, 2);
    expect(a.survey.panels).toHaveLength(1);
    expect(a.survey.panels[0]).toMatchObject({ panel: "P1", auxMilliamps: 30, auxVolts: 13.4 });
    expect(a.survey.radioTests).toHaveLength(6);
    expect(a.survey.radioTests.at(-1)).toMatchObject({ signalDbm: -97, noiseDbm: -99, heard: 6, sent: 10 });
  });
  test("the questions are the ones a person would ask, each once", () => {
    const asked = a.survey.queries.map(({ key, column }) => `${key ?? "sheet"} ${column}`);
    expect(asked.sort()).toEqual(
      [
        "sheet Run est",
        "sheet Volts",
        "R001 Notes",
        "R002 EOL?",
        "R002 EOL?",
        "R004 Device",
        "R007 R closed",
        "R008 Openings",
      ].sort(),
    );
    expect(a.survey.queries.every(({ message, sheet }) => message.length > 20 && sheet !== "")).toBe(true);
  });
  test("nothing asks to meter or to see the smoke detectors", () => {
    expect(a.survey.queries.filter(({ key }) => key === "R009")).toEqual([]);
  });
});

describe("an office building with two panels on a loose sheet, read as a person reads it", () => {
  const loops = keyed(b.survey.loops);
  test("34 loops on two panels, old zone numbers keep their zero", () => {
    expect(b.survey.loops.length).toBe(34);
    expect(b.survey.loops.filter(({ panel }) => panel === "P1")).toHaveLength(20);
    expect(b.survey.loops.filter(({ panel }) => panel === "P2")).toHaveLength(14);
    expect(loops.get("R001")?.oldZone).toBe("01");
    expect(b.survey.oldZones).toHaveLength(33);
    expect(b.survey.panels.map(({ panel, auxMilliamps }) => [panel, auxMilliamps])).toEqual([
      ["P1", 172],
      ["P2", 95],
    ]);
  });
  // key: shut Ω, opened Ω, to earth Ω, AWG, feet, openings, devices, form, EOL place, powered
  const expected: Readonly<Record<string, readonly unknown[]>> = {
    R001: [5570, "OL", undefined, 22, 110, 2, "2 contactRecessed", "NC", "device", false],
    R004: [5710, "OL", "OL", 22, 95, 1, "1 motion", "NC", "device", true],
    R007: [5646, "OL", undefined, 24, 330, 1, "1 motion", "NC", "device", true],
    R010: [5660, 1.9, "OL", 22, 45, 2, "2 holdUp", "NO", "device", false],
    R011: [306, "OL", 300_000, 18, 120, 1, "1 contactOverheadDoor", "NC", "unknown", false],
    R013: [5040, 51_000, 85_000, 22, 220, 6, "6 contactSurface", "NC", "device", false],
    R014: [undefined, undefined, undefined, 22, undefined, 1, "1 contactUnspecified", "unknown", "unknown", false],
    R015: [undefined, undefined, undefined, 18, 70, 2, "2 flowSwitch", "NO", "device", false],
    R016: ["OL", 0.6, "OL", 22, 150, 1, "1 keySwitch", "NO", "none", false],
    R018: [3, "OL", "OL", 22, 80, 1, "1 contactRecessed", "NC", "panel", false],
    R019: ["OL", 3.6, "OL", 22, 100, 1, "1 temperatureSensor", "NO", "none", false],
    R020: ["OL", "OL", "OL", 22, undefined, 1, "1 unknown", "unknown", undefined, false],
    R021: ["OL", "OL", 40_000, 22, 70, 1, "1 contactSurface", "NC", undefined, false],
    R023: [5560, "OL", "OL", 22, 130, 3, "3 glassBreak", "NC", "device", true],
    R026: [2800, 5550, "OL", 22, 250, 4, "4 contactSurface", "NC", "unknown", false],
    R027: [5639, 5639, undefined, 22, 110, 1, "1 motion", "NC", "device", true],
    R029: [5580, "OL", undefined, 22, 65, 1, "1 contactUnspecified", "NC", undefined, false],
    R030: [undefined, undefined, undefined, 22, undefined, 1, "1 unknown", "unknown", undefined, false],
    R032: [9.3, "OL", "OL", 22, 250, 5, "5 tamper", "NC", "none", false],
    R033: [23, "OL", "OL", 24, 400, 9, "9 contactSurface", "NC", "none", false],
    R034: ["OL", 12, undefined, 22, 55, 1, "1 waterSensor", "NO", "none", true],
  };
  test.each(Object.entries(expected))("%s", (key, row) => {
    const loop = loops.get(key);
    expect([
      loop?.closed?.ohms,
      loop?.opened?.[0]?.reading.ohms,
      loop?.earth?.aOhms?.ohms,
      loop?.cable?.gaugeAwg,
      feet(loop),
      loop?.openings.count,
      kinds(loop),
      loop?.contactForm,
      loop?.eolPlace,
      loop?.poweredDetector,
    ]).toEqual(row);
  });
  test("odd cells", () => {
    expect(loops.get("R028")?.closed).toMatchObject({ lowOhms: 5900, highOhms: 6400 });
    expect(loops.get("R029")?.reversed?.ohms).toBe("OL");
    expect(loops.get("R014")).toMatchObject({ voltsDc: 2.1, voltsAc: 11, behaviour: "jumping" });
    expect(loops.get("R011")?.tapped).toMatchObject({ low: { ohms: 260 }, high: { ohms: 310 } });
    expect(loops.get("R023")?.milliamps).toBe(45);
    expect(loops.get("R018")?.resistorAtPanel).toBe("seenNotTraced");
    expect(loops.get("R018")?.eolOhms).toBe(5600);
    expect(loops.get("R007")?.voltsAtDetector).toBe(11);
    expect(loops.get("R006")?.fedFrom).toBeUndefined();
    expect(loops.get("R006")?.fedFromProposed).toBe("corr A");
    expect(loops.get("R027")?.noteFacts?.map(({ fact }) => fact)).toEqual(["noTrip"]);
    expect(loops.get("R030")?.noteFacts?.map(({ fact }) => fact)).toEqual(["noAccess"]);
    expect(loops.get("R020")?.noteFacts?.map(({ fact }) => fact)).toEqual(["cutCable"]);
  });
  test("nothing asks to meter the sprinkler pair, and clean rows raise no question", () => {
    const keys = new Set(b.survey.queries.map(({ key }) => key));
    for (const clean of [
      "R002",
      "R003",
      "R004",
      "R008",
      "R009",
      "R010",
      "R012",
      "R015",
      "R016",
      "R017",
      "R022",
      "R024",
      "R025",
      "R031",
    ]) {
      expect(keys.has(clean), clean).toBe(false);
    }
    for (const open of ["R007", "R014", "R018", "R020", "R026", "R030"]) expect(keys.has(open), open).toBe(true);
  });
  test("every heading of the four sheets but the site's free items is understood", () => {
    const unread = b.headings.filter(({ column, sheet }) => column === null && sheet !== "site_b_site");
    expect(b.headings.length).toBeGreaterThan(40);
    expect(unread).toEqual([]);
  });
});
