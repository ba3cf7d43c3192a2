import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lengthUnits } from "../../lib/reference/generated/length-units.js";
import { celsiusFromText, metersFromText } from "../../lib/units/quantity-text.js";

describe("general unit text", () => {
  it("yard 0.9144 m, mile 1609.344 m, exact; 95 °F is 35 °C (NIST SP 811, B.8)", () => {
    expect(metersFromText("120 yd")).toBeCloseTo(109.728, 12);
    expect(metersFromText("1 mile")).toBeCloseTo(1609.344, 9);
    expect(celsiusFromText("95 degF")).toBeCloseTo(35, 9);
    expect(celsiusFromText("35 degC")).toBeCloseTo(35, 9);
    expect(celsiusFromText("308.15 K")).toBeCloseTo(35, 9);
  });
  it("our table of length units agrees with the general library on every unit it knows", () => {
    expect(lengthUnits.length).toBeGreaterThanOrEqual(7);
    for (const { unit, meters } of lengthUnits) expect(metersFromText(`1 ${unit}`)).toBeCloseTo(meters, 12);
  });
  it("is undefined for another kind of quantity, and never throws", () => {
    for (const text of ["5 kg", "35 degC", "12", "long", "", "1 m/s", "2 m + 3 m", "__proto__"]) {
      expect(metersFromText(text)).toBeUndefined();
    }
    expect(celsiusFromText("5 m")).toBeUndefined();
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.tuple(fc.integer(), fc.string()).map(([n, s]) => `${n} ${s}`),
        ),
        (text) => {
          const meters = metersFromText(text);
          expect(meters === undefined || Number.isFinite(meters)).toBe(true);
          celsiusFromText(text);
        },
      ),
    );
  });
});
