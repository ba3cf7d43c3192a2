import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputError } from "../../lib/problems/input-error.js";
import { formatHours } from "../../lib/quantities/format-hours.js";
import { formatLength } from "../../lib/quantities/format-length.js";
import { formatMoney } from "../../lib/quantities/format-money.js";
import { formatOhms } from "../../lib/quantities/format-ohms.js";
import { formatPercentOnPaper } from "../../lib/quantities/format-percent-on-paper.js";
import { parseHours } from "../../lib/quantities/parse-hours.js";
import { parseMoney } from "../../lib/quantities/parse-money.js";

describe("numbers for people", () => {
  it.each([
    [0, "0 Ω"],
    [5.4, "5.4 Ω"],
    [47, "47 Ω"],
    [306, "306 Ω"],
    [999.6, "1.00 kΩ"],
    [2200, "2.20 kΩ"],
    [22_000, "22.0 kΩ"],
    [1.2e6, "1.2 MΩ"],
    ["OL" as const, "over-range"],
    [undefined, "not measured"],
  ])("%s Ω is shown as %s", (ohms, text) => {
    expect(formatOhms(ohms)).toBe(text);
  });
  it("refuses what is no resistance", () => {
    expect(() => formatOhms(-1)).toThrow(InputError);
    expect(() => formatOhms(Number.NaN)).toThrow("got NaN Ω, expected 0 Ω or more");
    expect(() => formatHours(-1)).toThrow(InputError);
    expect(() => formatLength({ meters: Number.NaN, unit: "m" })).toThrow(InputError);
    expect(() => formatMoney({ cents: 1.5, currency: "USD" })).toThrow(InputError);
    expect(() => formatPercentOnPaper(1.2)).toThrow(InputError);
  });
  it("lengths in both systems: 120 ft is 36.576 m (NIST SP 811, exact)", () => {
    expect(formatLength({ meters: 36.576, unit: "ft" })).toBe("120 ft");
    expect(formatLength({ meters: 36.576, unit: "m" })).toBe("36.6 m");
    expect(formatLength({ meters: 21, unit: "m" })).toBe("21 m");
  });
  it("hours and money are read back", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 500, noNaN: true }), (hours) => {
        const back = parseHours(formatHours(hours), { decimalMark: "." });
        expect(back.ok && Math.abs((back.value ?? -1) - hours) <= 0.5 / 60 + 1e-9).toBe(true);
      }),
    );
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e11 }), (cents) => {
        for (const [locale, decimalMark] of [
          ["en", "."],
          ["de", ","],
        ] as const) {
          expect(parseMoney(formatMoney({ cents, currency: "EUR", locale }), { decimalMark })).toMatchObject({
            value: cents,
          });
        }
      }),
    );
  });
  it("percentages on paper come in fives and never claim what is not certain", () => {
    expect(formatPercentOnPaper(0.83)).toBe("85 %");
    expect(formatPercentOnPaper(0.01)).toBe("under 5 %");
    expect(formatPercentOnPaper(0.999)).toBe("over 95 %");
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (fraction) => {
        const percent = Number(/\d+/.exec(formatPercentOnPaper(fraction))?.[0]);
        expect(percent % 5).toBe(0);
        expect(Math.abs(percent - 100 * fraction)).toBeLessThanOrEqual(5);
      }),
    );
  });
});
