import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseCable, type TypedCable } from "../../lib/quantities/parse-cable.js";
import { spreadsheetDate } from "../../lib/quantities/spreadsheet-date.js";
import type { CellTyped } from "../../lib/quantities/typed-cell.js";

function readCable(typed: CellTyped): TypedCable & { readonly remarks: readonly string[] } {
  const parsed = parseCable(typed);
  if (!parsed.ok) throw new Error(parsed.message);
  if (parsed.value === undefined) throw new Error("read as not written");
  return { ...parsed.value, remarks: parsed.remarks };
}

describe("cables as surveyors type them (common practice, no source)", () => {
  it.each<[string, Partial<TypedCable>]>([
    ["22/4", { gaugeAwg: 22, conductors: 4 }],
    ["22-2", { gaugeAwg: 22, conductors: 2 }],
    ["22/2", { gaugeAwg: 22, conductors: 2 }],
    ["#22 2c", { gaugeAwg: 22, conductors: 2 }],
    ["22 AWG 4c", { gaugeAwg: 22, conductors: 4 }],
    ["2pr 24awg", { gaugeAwg: 24, conductors: 4 }],
    ["18/2 red", { gaugeAwg: 18, conductors: 2, words: "18/2 red" }],
    ["22/4 spare pair", { gaugeAwg: 22, conductors: 4, words: "22/4 spare pair" }],
    ["22/4 CCA", { gaugeAwg: 22, conductors: 4, metal: "copperCladAluminium" }],
    ["4 x 0.22 mm²", { areaMm2: 0.22, conductors: 4 }],
    ["0.5mm2 4 core", { areaMm2: 0.5, conductors: 4 }],
    ["22", { gaugeAwg: 22 }],
  ])("%s leaves no question", (typed, expected) => {
    expect(readCable(typed)).toMatchObject({ ...expected, assumed: false, remarks: [] });
  });

  it("7/0.2 is seven strands of 0.2 mm: 0.22 mm² as its makers call it", () => {
    expect(readCable("7/0.2").strands).toBe(7);
    expect(readCable("7/0.2").areaMm2).toBeCloseTo(0.22, 3);
  });

  it.each<[string, Partial<TypedCable>]>([
    ["24/4 added later", { gaugeAwg: 24, conductors: 4 }],
    ["cat3? 24ga", { gaugeAwg: 24, assumed: true }],
    ["22/2?", { gaugeAwg: 22, conductors: 2, assumed: true }],
    ["2x 22/2 twisted tog", { gaugeAwg: 22, conductors: 2, cables: 2 }],
    ["grey pair", { conductors: 2 }],
    ["cat3?", { assumed: true }],
  ])("%s is read with a question", (typed, expected) => {
    expect(readCable(typed)).toMatchObject(expected);
    expect(readCable(typed).remarks.length).toBeGreaterThan(0);
  });

  it("cat3 and grey pair name no size, so none is made up", () => {
    for (const typed of ["cat3?", "grey pair", "cat5e"]) {
      expect(readCable(typed).gaugeAwg).toBeUndefined();
      expect(readCable(typed).areaMm2).toBeUndefined();
    }
  });

  // Serial 46134: 22 April 2026 counted from 30 December 1899, as spreadsheets do.
  const serial = (Date.UTC(2026, 3, 22) - Date.UTC(1899, 11, 30)) / 86_400_000;
  it.each<[CellTyped]>([
    [{ isoDate: "2026-04-22" }],
    [{ isoDate: "2026-04-22T00:00:00.000Z" }],
    ["22-Apr"],
    ["Apr-22"],
    ["4/22/2026"],
    ["22/04/2026"],
    ["2026-04-22"],
    [serial],
    [String(serial)],
  ])("%j is what a spreadsheet made of 22/4; read back, and it says so", (typed) => {
    const cable = readCable(typed);
    expect(cable).toMatchObject({ gaugeAwg: 22, conductors: 4, assumed: true });
    expect(cable.remarks.join()).toMatch(/spreadsheet made a date/);
  });

  it("every date that day/month typing can make of a gauge and conductors is read back", () => {
    for (const gauge of [12, 14, 16, 18, 20, 22, 24, 26, 28]) {
      for (const conductors of [2, 3, 4, 6, 8]) {
        const isoDate = `2026-${String(conductors).padStart(2, "0")}-${String(gauge).padStart(2, "0")}`;
        expect(readCable({ isoDate })).toMatchObject({ gaugeAwg: gauge, conductors });
      }
    }
  });

  it.each(["40/2", "22/0", "5", "22.4", "22/2 & 18/2", "1:5"])("%s is refused", (typed) => {
    const parsed = parseCable(typed);
    expect(parsed.ok).toBe(false);
    if (!parsed.ok) expect(parsed.message).toContain("22/4");
  });

  it("a date that is no cable is refused", () => {
    expect(parseCable({ isoDate: "2026-05-05" }).ok).toBe(false);
    expect(spreadsheetDate("hello")).toBeUndefined();
    expect(spreadsheetDate("22/4")).toBeUndefined();
  });

  it("never throws", () => {
    const piece = fc.constantFrom(
      "22",
      "/",
      "-",
      "4",
      "#",
      "c",
      "ga",
      "mm",
      "x",
      "0.2",
      " ",
      "?",
      "pair",
      "cat",
      "Apr",
    );
    const messy = fc.array(piece, { maxLength: 8 }).map((pieces) => pieces.join(""));
    fc.assert(
      fc.property(fc.oneof(fc.string(), messy, fc.double(), fc.integer()), (typed) => {
        const parsed = parseCable(typed);
        if (parsed.ok && parsed.value?.gaugeAwg !== undefined) expect(parsed.value.gaugeAwg).toBeGreaterThanOrEqual(10);
      }),
      { numRuns: 2000 },
    );
  });
});
