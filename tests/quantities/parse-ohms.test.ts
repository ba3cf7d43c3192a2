import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatOhms } from "../../lib/quantities/format-ohms.js";
import type { OhmsReading } from "../../lib/quantities/ohms-reading.js";
import { parseOhms, type TypedOhms } from "../../lib/quantities/parse-ohms.js";

function readOhms(typed: string | number, sameAs?: OhmsReading): TypedOhms & { readonly remarks: readonly string[] } {
  const parsed = parseOhms(typed, sameAs === undefined ? {} : { sameAs });
  if (!parsed.ok) throw new Error(parsed.message);
  if (parsed.value === undefined) throw new Error(`${typed} was read as not measured`);
  return { ...parsed.value, remarks: parsed.remarks };
}

const SINGLE: readonly (readonly [string, number])[] = [
  ["2.2k", 2200],
  ["2.17k", 2170],
  ["2k2", 2200],
  ["4K7", 4700],
  ["4R7", 4.7],
  ["R47", 0.47],
  ["5.57 K", 5570],
  ["2.80k", 2800],
  ["300k", 300_000],
  ["1.2M", 1.2e6],
  ["2M2", 2.2e6],
  ["1.2 megohm", 1.2e6],
  ["306", 306],
  ["4745", 4745],
  ["5.4 ohms", 5.4],
  ["47 Ω", 47],
  ["2.2 k\u2126", 2200],
  ["5.6\u00a0k", 5600],
  ["2.2ｋ", 2200],
  ["5,710.5", 5710.5],
  ["5.710,5", 5710.5],
  ["5,7", 5.7],
  ["1,234,567", 1_234_567],
  ["0", 0],
  ["0.0", 0],
  ["5.710k", 5710],
  ["1.2e+06", 1.2e6],
];
const OVER_RANGE = [
  "OL",
  "ol",
  "O.L",
  "O.L.",
  "0L",
  "0 L",
  "O L",
  "0.L",
  "OL.",
  "o/l",
  "OL MΩ",
  "∞",
  "open",
  "Open circuit",
  "inf",
  "over range",
];
const NOTHING = ["", "-", "--", "–", " ", "?", "n/a", "not metered"];
const REFUSED = [
  "last smoke",
  "two found",
  "-5",
  "1.2m",
  "12.2 V",
  "50 mA",
  "5 6",
  "2k2k",
  "5.6k x2",
  "1,2,3",
  "OLD",
  "cool",
  "5.6k / 5.5k",
  "does not go OL when open!",
  "2.2.k",
  "5.6 - k",
  "same",
];

describe("ohms as surveyors type them (common practice, no source)", () => {
  it.each(SINGLE)("%s is one number", (typed, ohms) => {
    const { reading } = readOhms(typed);
    expect(reading?.ohms).toBeCloseTo(ohms, 9);
    expect(reading?.lowOhms).toBe(reading?.ohms);
    expect(reading?.highOhms).toBe(reading?.ohms);
  });

  it.each(OVER_RANGE)("%s is over-range", (typed) => {
    expect(readOhms(typed).reading).toEqual({ ohms: "OL", lowOhms: "OL", highOhms: "OL" });
  });

  it.each(NOTHING)("%j is not measured, which is neither 0 nor over-range", (typed) => {
    expect(parseOhms(typed)).toEqual({ ok: true, value: undefined, remarks: [] });
  });

  it.each(REFUSED)("%s is refused with what to write instead", (typed) => {
    const parsed = parseOhms(typed);
    expect(parsed.ok).toBe(false);
    if (!parsed.ok) expect(parsed.message).toMatch(/write|over-range/);
  });

  it("refuses a date that a spreadsheet made, and a tick box", () => {
    expect(parseOhms({ isoDate: "2026-04-22" })).toMatchObject({ ok: false });
    expect(parseOhms(true)).toMatchObject({ ok: false });
  });

  it("5,710 is read as thousands and says so; a stated decimal mark settles it", () => {
    expect(readOhms("5,710").reading?.ohms).toBe(5710);
    expect(readOhms("5,710").remarks).toHaveLength(1);
    expect(parseOhms("5,710", { decimalMark: "." })).toMatchObject({ value: { reading: { ohms: 5710 } }, remarks: [] });
    expect(parseOhms("5,710", { decimalMark: "," })).toMatchObject({ value: { reading: { ohms: 5.71 } }, remarks: [] });
    expect(readOhms("5.710").reading?.ohms).toBe(5.71);
    expect(readOhms("5.710").remarks).toHaveLength(1);
    expect(readOhms("5,600k").remarks).toHaveLength(1);
    expect(readOhms(5.713).remarks).toEqual([]);
  });

  it("<1 lies between 0 and 1, >20M is over-range of that meter", () => {
    expect(readOhms("<1").reading).toEqual({ ohms: 0.5, lowOhms: 0, highOhms: 1 });
    expect(readOhms(">20M").reading).toEqual({ ohms: "OL", lowOhms: 20e6, highOhms: "OL" });
  });

  it("keeps the spread of readings that move", () => {
    const jumps = readOhms("47 jumps to 80ish");
    expect(jumps.reading).toEqual({ ohms: 47, lowOhms: 47, highOhms: 80, behaviour: "jumping" });
    const drifts = readOhms("5.9-6.4k drifting");
    expect(drifts.reading).toMatchObject({ lowOhms: 5900, highOhms: 6400, behaviour: "jumping" });
    expect(drifts.remarks.join()).toMatch(/climbing or falling/);
    expect(readOhms("reads 310 then 260").reading).toMatchObject({ ohms: 310, lowOhms: 260, highOhms: 310 });
    expect(readOhms("climbs 200 to 300 ohms").reading).toMatchObject({ lowOhms: 200, behaviour: "climbing" });
  });

  it("jumps alone is a behaviour without a reading and asks for the numbers", () => {
    const jumps = readOhms("jumps");
    expect(jumps.reading).toBeUndefined();
    expect(jumps.behaviour).toBe("jumping");
    expect(jumps.remarks).toHaveLength(1);
  });

  it("300-1.2k: the unit is not shared when that would make the range fall, and it says so", () => {
    const range = readOhms("300-1.2k");
    expect(range.reading).toMatchObject({ lowOhms: 300, highOhms: 1200 });
    expect(range.remarks).toHaveLength(1);
  });

  it("keeps readings with and without supply apart and reckons with the powered one", () => {
    const both = readOhms("OL (pwr off) / 12.2 with pwr");
    expect(both.unpowered?.ohms).toBe("OL");
    expect(both.powered?.ohms).toBe(12.2);
    expect(both.reading?.ohms).toBe(12.2);
    expect(readOhms("12.2 w/ pwr; OL w/o power")).toMatchObject({ powered: { ohms: 12.2 }, unpowered: { ohms: "OL" } });
    expect(readOhms("OL no power").remarks.join()).toMatch(/power the detector/);
  });

  it("keeps the reading with swapped leads apart", () => {
    const diode = readOhms("5.58k / OL rev");
    expect(diode.reading?.ohms).toBe(5580);
    expect(diode.reversed?.ohms).toBe("OL");
  });

  it("same and no change are the closed reading, when there is one", () => {
    const closed = { ohms: 2.9, lowOhms: 2.9, highOhms: 2.9 };
    for (const typed of ["same", "no change", "SAME!"]) expect(readOhms(typed, closed).reading).toEqual(closed);
  });

  it("keeps words beside a value and marks values that hold for each", () => {
    expect(readOhms("5.6k on terminal")).toMatchObject({ reading: { ohms: 5600 }, words: ["on terminal"] });
    expect(readOhms("2.2k 5% 1/4W")).toMatchObject({ reading: { ohms: 2200 }, words: ["5%", "1/4W"], remarks: [] });
    expect(readOhms("5.6k ea")).toMatchObject({ reading: { ohms: 5600 }, each: true });
    expect(readOhms("22k?").remarks).toHaveLength(1);
    expect(readOhms("~47").remarks).toHaveLength(1);
  });
});

describe("ohms, properties", () => {
  it("never throws, whatever is typed", () => {
    const piece = fc.constantFrom(
      "k",
      "M",
      "OL",
      "-",
      "/",
      ",",
      ".",
      "5",
      "12",
      " ",
      "rev",
      "<",
      "then",
      "Ω",
      "∞",
      "?",
      "'",
      "e",
    );
    const messy = fc.array(piece, { maxLength: 12 }).map((pieces) => pieces.join(""));
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: "grapheme" }), messy), (typed) => {
        const parsed = parseOhms(typed);
        if (parsed.ok && parsed.value?.reading !== undefined) {
          for (const ohms of [parsed.value.reading.ohms, parsed.value.reading.lowOhms, parsed.value.reading.highOhms]) {
            expect(ohms === "OL" || (Number.isFinite(ohms) && ohms >= 0)).toBe(true);
          }
        }
      }),
      { numRuns: 2000 },
    );
  });

  it("words beside a number never change the number", () => {
    const after = fc.constantFrom(
      "",
      " with pwr",
      " w/ pwr",
      " w/o power",
      " ohms",
      "?",
      " ea",
      " steady",
      " on terminal",
      " 5%",
      " ±5 % 1/4W",
      "Ω",
    );
    const before = fc.constantFrom("", "reads ", "~", "about ", "EOL ", "was ");
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99_999 }), before, after, (tenths, start, end) => {
        const { reading, reversed } = readOhms(`${start}${tenths / 10}${end}`);
        expect((reading ?? reversed)?.ohms).toBe(tenths / 10);
      }),
      { numRuns: 1000 },
    );
  });

  it("what is formatted is read back within the three digits shown", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-2, max: 9e9, noNaN: true }), (ohms) => {
        const back = readOhms(formatOhms(ohms)).reading?.ohms;
        expect(back).not.toBe("OL");
        expect(Math.abs(Number(back) / ohms - 1)).toBeLessThanOrEqual(0.00501);
      }),
    );
    expect(readOhms(formatOhms("OL")).reading?.ohms).toBe("OL");
    expect(readOhms(formatOhms(0)).reading?.ohms).toBe(0);
  });
});
