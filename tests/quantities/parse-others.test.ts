import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseCount } from "../../lib/quantities/parse-count.js";
import { parseFraction } from "../../lib/quantities/parse-fraction.js";
import { parseHours } from "../../lib/quantities/parse-hours.js";
import { parseMeter } from "../../lib/quantities/parse-meter.js";
import { parseMilliamps } from "../../lib/quantities/parse-milliamps.js";
import { parseMoney } from "../../lib/quantities/parse-money.js";
import { parseNumber } from "../../lib/quantities/parse-number.js";
import { parseOpenings } from "../../lib/quantities/parse-openings.js";
import { parseTemperature } from "../../lib/quantities/parse-temperature.js";
import { parseVolts } from "../../lib/quantities/parse-volts.js";
import { typedNumber } from "../../lib/quantities/typed-number.js";

const empty = { ok: true, value: undefined };
const refused = { ok: false };

describe("openings as typed (common practice, no source)", () => {
  it.each([
    ["5+1", { count: 6, parts: [5, 1], others: [], assumed: false }, 0],
    ["3 + gb", { count: 3, parts: [3], others: ["gb"], assumed: false }, 1],
    ["1?", { count: 1, parts: [1], others: [], assumed: true }, 1],
    ["8", { count: 8, parts: [8], others: [], assumed: false }, 0],
    [2, { count: 2, parts: [2], others: [], assumed: false }, 0],
  ])("%s", (typed, value, remarks) => {
    const parsed = parseOpenings(typed);
    expect(parsed).toMatchObject({ ok: true, value });
    if (parsed.ok) expect(parsed.remarks).toHaveLength(remarks);
  });
  it("? is not known; words, fractions, ranges and dates are asked about", () => {
    expect(parseOpenings("?")).toMatchObject(empty);
    for (const typed of ["double doors", "1.5", "-1", "5-6", "5000"])
      expect(parseOpenings(typed)).toMatchObject(refused);
    const double = parseOpenings("1 double door");
    expect(double).toMatchObject({ value: { count: 1 } });
    if (double.ok) expect(double.remarks.join()).toMatch(/double door as 2/);
    expect(parseOpenings({ isoDate: "2026-01-05" })).toMatchObject(refused);
  });
});

describe("volts as typed (common practice, no source)", () => {
  it("reads numbers, keeps ac and dc, sign and millivolts", () => {
    for (const [typed, volts] of [
      ["0", 0],
      ["11", 11],
      ["13.5", 13.5],
      ["2.1", 2.1],
      ["-13.4", -13.4],
    ] as const) {
      expect(parseVolts(typed)).toMatchObject({ ok: true, value: { volts }, remarks: [] });
    }
    expect(parseVolts("2.1 VAC")).toMatchObject({ value: { volts: 2.1, kind: "ac" } });
    expect(parseVolts("12V dc")).toMatchObject({ value: { volts: 12, kind: "dc" } });
    expect(parseVolts("350 mV")).toMatchObject({ value: { volts: expect.closeTo(0.35, 12) } });
    expect(parseVolts("11.9 after 10 min")).toMatchObject({ value: { volts: 11.9 } });
  });
  it("AC volts! is a live pair without a number, - is not measured", () => {
    const parsed = parseVolts("AC volts!");
    expect(parsed).toMatchObject({ ok: true, value: { kind: "ac" } });
    if (parsed.ok) {
      expect(parsed.value?.volts).toBeUndefined();
      expect(parsed.remarks).toHaveLength(1);
    }
    expect(parseVolts("-")).toMatchObject(empty);
    expect(parseVolts("no AC")).toMatchObject(refused);
    expect(parseVolts("12 mA")).toMatchObject(refused);
    expect(parseVolts("16.5VAC 40VA")).toMatchObject(refused);
  });
});

describe("currents, temperatures, meters", () => {
  it("45 (3x15) is the sum and checks it", () => {
    expect(parseMilliamps("45 (3x15)")).toMatchObject({ value: { milliamps: 45, devices: 3, milliampsEach: 15 } });
    expect(parseMilliamps("45 (3x16)")).toMatchObject(refused);
    expect(parseMilliamps("18")).toMatchObject({ value: { milliamps: 18 } });
    expect(parseMilliamps("30 mA")).toMatchObject({ value: { milliamps: 30 } });
    expect(parseMilliamps("0.06 A")).toMatchObject({ value: { milliamps: 60 } });
    expect(parseMilliamps("18 A")).toMatchObject(refused);
    expect(parseMilliamps("13 V")).toMatchObject(refused);
  });
  it("63 F is 17.2 °C: (F − 32)/1.8 (NIST SP 811, B.8)", () => {
    expect(parseTemperature("63 F")).toMatchObject({ value: { celsius: expect.closeTo((63 - 32) / 1.8, 12) } });
    expect(parseTemperature("212 F")).toMatchObject({ value: { celsius: expect.closeTo(100, 9) } });
    expect(parseTemperature("22 °C")).toMatchObject({ value: { celsius: 22 } });
    expect(parseTemperature("−5 ℃")).toMatchObject({ value: { celsius: -5 } });
    expect(parseTemperature("22", { bareUnit: "C" })).toMatchObject({ value: { celsius: 22 } });
    expect(parseTemperature("22")).toMatchObject(refused);
    expect(parseTemperature("500 F")).toMatchObject(refused);
  });
  it("reads what is written about a meter", () => {
    expect(parseMeter("handheld 0.8% + 3")).toMatchObject({ value: { percent: 0.8, counts: 3 } });
    expect(parseMeter("0.8%+3")).toMatchObject({ value: { percent: 0.8, counts: 3 } });
    expect(parseMeter("leads 0.3 not zeroed")).toMatchObject({ value: { leadOhms: 0.3, leadsZeroed: false } });
    const leads = parseMeter("leads 0.25");
    expect(leads).toMatchObject({ value: { leadOhms: 0.25 } });
    if (leads.ok) {
      expect(leads.value?.leadsZeroed).toBeUndefined();
      expect(leads.remarks).toHaveLength(1);
    }
    expect(parseMeter("leads zeroed")).toMatchObject({ value: { leadsZeroed: true } });
    expect(parseMeter("same")).toMatchObject(refused);
  });
});

describe("counts, hours, shares, money, plain numbers", () => {
  it("counts are whole", () => {
    expect(parseCount("1,000")).toMatchObject({ value: 1000, remarks: [] });
    expect(parseCount("3 pcs")).toMatchObject({ value: 3 });
    for (const typed of ["1.5", "-3", "5-6", "x"]) expect(parseCount(typed)).toMatchObject(refused);
  });
  it("hours", () => {
    for (const typed of ["1.5", "1.5 h", "90 min", "1:30", "1 h 30", "1.5hr"]) {
      expect(parseHours(typed)).toMatchObject({ value: 1.5 });
    }
    for (const typed of ["1:75", "2 x 4 h", "-1"]) expect(parseHours(typed)).toMatchObject(refused);
  });
  it("35 and 35 % and 0.35 are one share, a bare 1.5 is asked about", () => {
    for (const typed of ["35 %", "35%", "0.35", "35"]) expect(parseFraction(typed)).toMatchObject({ value: 0.35 });
    expect(parseFraction("1.5")).toMatchObject(refused);
  });
  it("money is integer cents", () => {
    expect(parseMoney("$1.20")).toMatchObject({ value: 120 });
    expect(parseMoney("1,20")).toMatchObject({ value: 120 });
    expect(parseMoney("1,234.50")).toMatchObject({ value: 123450 });
    expect(parseMoney(0.07)).toMatchObject({ value: 7, remarks: [] });
    expect(parseMoney(1.005)).toMatchObject({ value: 101 });
    for (const typed of ["-5", "abc", "$"]) expect(parseMoney(typed)).toMatchObject(refused);
  });
  it("a signal in dBm", () => {
    const options = { least: -150, greatest: 30, unit: "dBm" };
    expect(parseNumber("−71 dBm", options)).toMatchObject({ value: -71 });
    expect(parseNumber("-97", options)).toMatchObject({ value: -97 });
    for (const typed of ["-200", "-71 V", "fair"]) expect(parseNumber(typed, options)).toMatchObject(refused);
  });
});

describe("all of them, properties", () => {
  const readers = [
    parseCount,
    parseFraction,
    parseHours,
    parseMeter,
    parseMilliamps,
    parseMoney,
    parseOpenings,
    parseTemperature,
    parseVolts,
    (typed: string) => parseNumber(typed, { least: -1, greatest: 1, unit: "Ω(" }),
  ];
  it("none throws on any text, and what is refused has a message", () => {
    const piece = fc.constantFrom(
      "5",
      "12",
      ".",
      ",",
      "-",
      "+",
      "x",
      "%",
      "V",
      "AC",
      "mA",
      "°",
      "F",
      "(",
      ")",
      " ",
      "?",
      "h",
      ":",
      "$",
    );
    const messy = fc.array(piece, { maxLength: 10 }).map((pieces) => pieces.join(""));
    fc.assert(
      fc.property(fc.oneof(fc.string(), messy), fc.constantFrom(...readers), (typed, parse) => {
        const parsed = parse(typed);
        if (!parsed.ok) expect(parsed.message.length).toBeGreaterThan(10);
        if (parsed.ok && typeof parsed.value === "number") expect(Number.isFinite(parsed.value)).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });
  it("numbers written by the language's own formatter are read back (Intl, en and de)", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), fc.integer({ min: 0, max: 3 }), (whole, digits) => {
        const value = whole / 10 ** digits;
        for (const [locale, mark] of [
          ["en", "."],
          ["de", ","],
        ] as const) {
          const text = new Intl.NumberFormat(locale, {
            minimumFractionDigits: digits,
            maximumFractionDigits: 3,
          }).format(value);
          expect(typedNumber(text, mark)?.value).toBeCloseTo(value, 6);
        }
      }),
    );
  });
});
