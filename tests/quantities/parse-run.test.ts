import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatLength } from "../../lib/quantities/format-length.js";
import { parseRun, type TypedRun } from "../../lib/quantities/parse-run.js";
import { metersFromText } from "../../lib/units/quantity-text.js";

function readRun(typed: string | number, bareUnit?: "ft" | "m"): TypedRun & { readonly remarks: readonly string[] } {
  const parsed = parseRun(typed, { metersFromText, ...(bareUnit === undefined ? {} : { bareUnit }) });
  if (!parsed.ok) throw new Error(parsed.message);
  if (parsed.value === undefined) throw new Error(`${typed} was read as not measured`);
  return { ...parsed.value, remarks: parsed.remarks };
}

describe("runs as surveyors type them; foot 0.3048 m, yard 0.9144 m, inch 0.0254 m (NIST SP 811, B.8, exact)", () => {
  it.each([
    ["55'", 55 * 0.3048],
    ["55’", 55 * 0.3048],
    ["240′", 240 * 0.3048],
    ["70 ft", 70 * 0.3048],
    ["220 FT.", 220 * 0.3048],
    ["21 m", 21],
    ["21,5 m", 21.5],
    ["120 yd", 120 * 0.9144],
    ["5'6\"", 5.5 * 0.3048],
    ["5 ft 6 in", 5.5 * 0.3048],
    ["300 cm", 3],
    ["0.5 mile", 804.672],
  ])("%s needs no help", (typed, meters) => {
    expect(readRun(typed).meters).toBeCloseTo(meters, 9);
    expect(readRun(typed).remarks).toEqual([]);
  });

  it("a bare number is a question until something says feet or metres", () => {
    const parsed = parseRun("120");
    expect(parsed).toMatchObject({ ok: false });
    if (!parsed.ok) expect(parsed.message).toContain("120 ft or 120 m");
    expect(readRun("120", "ft").meters).toBeCloseTo(36.576, 9);
    expect(readRun(120, "m").meters).toBe(120);
  });

  it("keeps ranges, doubts and words", () => {
    expect(readRun("35-55", "m")).toMatchObject({ meters: 45, lowMeters: 35, highMeters: 55, assumed: false });
    expect(readRun("35' - 55'").lowMeters).toBeCloseTo(35 * 0.3048, 9);
    expect(readRun("~120", "m")).toMatchObject({ meters: 120, approximate: true });
    expect(readRun("250?", "m")).toMatchObject({ meters: 250, approximate: true });
    expect(readRun("250?", "m").remarks).toHaveLength(1);
    expect(readRun("330 total", "m")).toMatchObject({ meters: 330, words: ["total"] });
    expect(readRun("330 total", "m").remarks.join()).toMatch(/one-way/);
    expect(readRun("400 all round", "m")).toMatchObject({ meters: 400, words: ["all round"] });
    expect(readRun("60+20 ft").meters).toBeCloseTo(80 * 0.3048, 9);
  });

  it.each(["long", "3 rooms", "3 in conduit", "120 V", "-5", "60 ft / 20 m", "2x60", "99999", "12 parsec"])(
    "%s is refused",
    (typed) => {
      const parsed = parseRun(typed, { bareUnit: "ft", metersFromText });
      expect(parsed.ok).toBe(false);
      if (!parsed.ok) expect(parsed.message.length).toBeGreaterThan(20);
    },
  );

  it.each(["", "?", "-", null, undefined])("%j is not measured", (typed) => {
    expect(parseRun(typed, { bareUnit: "ft" })).toEqual({ ok: true, value: undefined, remarks: [] });
  });

  it("what is formatted is read back within the digits shown, in metres and in feet", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2900, noNaN: true }),
        fc.constantFrom("m" as const, "ft" as const),
        (meters, unit) => {
          const back = readRun(formatLength({ meters, unit })).meters;
          expect(Math.abs(back - meters)).toBeLessThanOrEqual((unit === "m" ? 0.05 : 0.5 * 0.3048) + 1e-9);
        },
      ),
    );
  });

  it("never throws and never gives a negative or endless length", () => {
    const piece = fc.constantFrom("'", '"', "ft", "m", "-", "+", "5", "1200", ",", ".", " ", "~", "?", "to", "total");
    const messy = fc.array(piece, { maxLength: 10 }).map((pieces) => pieces.join(""));
    fc.assert(
      fc.property(fc.oneof(fc.string(), messy), (typed) => {
        const parsed = parseRun(typed, { bareUnit: "ft", metersFromText });
        if (parsed.ok && parsed.value !== undefined) {
          expect(parsed.value.lowMeters).toBeGreaterThanOrEqual(0);
          expect(parsed.value.highMeters).toBeLessThanOrEqual(3000);
          expect(parsed.value.lowMeters).toBeLessThanOrEqual(parsed.value.meters);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
