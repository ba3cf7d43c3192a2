import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { associations as functions } from "../../../addin/functions/generated/associations.js";

const FEET = 0.3048;
const lines = (name: string): readonly string[] =>
  readFileSync(`reference-data/published/${name}`, "utf8").trim().split("\n").slice(1);
const worked = (id: string): string => lines("worked-examples.csv").find((line) => line.startsWith(`${id},`)) ?? "";

describe("wire", () => {
  const rows = lines("awg.csv").map((line) => line.split(",").slice(0, 7).map(Number));
  test("ASTM B258 series and the printed textbook column (T. Floyd): diameter, area and Ω per 1000 ft of 10 to 30 AWG", () => {
    expect(rows.length).toBeGreaterThanOrEqual(20);
    for (const [gauge = 0, , , diameterMm = 0, areaMm2 = 0, , ohmsPerKft = 0] of rows) {
      const [row = []] = functions.WIRE(`${gauge} AWG`);
      expect(row[0]).toBeCloseTo(diameterMm, 5);
      expect(row[1]).toBeCloseTo(areaMm2, 5);
      expect(row[4]).toBe(gauge);
      // Printed to four figures; 0.05 % beside rounding of the last one.
      const pair = functions.PAIR_OHMS(gauge, "1000 ft");
      expect(Math.abs(pair / 2 - ohmsPerKft) / ohmsPerKft).toBeLessThan(0.0011);
    }
  });
  test("the same run in feet, in metres as text and as a number of metres gives the same pair", () => {
    const feet = functions.PAIR_OHMS("22/4", "120 ft");
    expect(functions.PAIR_OHMS("22 AWG", "36.576 m")).toBeCloseTo(feet, 12);
    expect(functions.PAIR_OHMS(22, 36.576)).toBeCloseTo(feet, 12);
    expect(functions.PAIR_OHMS("22/4", "120'")).toBeCloseTo(feet, 12);
  });
  test("NBS Handbook 100: copper at 75 °C has 1.21615 times its resistance at 20 °C; 167 °F is 75 °C", () => {
    const cold = functions.PAIR_OHMS(22, 100);
    expect(functions.PAIR_OHMS(22, 100, 75) / cold).toBeCloseTo(1.21615, 4);
    expect(functions.PAIR_OHMS(22, 100, "167 F") / cold).toBeCloseTo(1.21615, 4);
  });
  test("run from ohms is the way back from pair ohms, in metres and in feet, with the bounds about it", () => {
    const ohms = functions.PAIR_OHMS("24/4", "150 ft", 35);
    const [meters = []] = functions.RUN_FROM_OHMS(ohms + 0.4, "24/4", 0.4, 35);
    expect(meters[0]).toBeCloseTo(150 * FEET, 8);
    const [feet = []] = functions.RUN_FROM_OHMS(ohms + 0.4, "24/4", 0.4, "95 F", "ft");
    expect(feet[0]).toBeCloseTo(150, 8);
    expect(Number(feet[1])).toBeLessThan(150);
    expect(Number(feet[2])).toBeGreaterThan(150);
  });
});

describe("resistors", () => {
  test("lec-sp (Lessons in Electric Circuits vol I ch 7): 24 V over (100 ∥ 250) + (350 ∥ 200) draws 120.784314 mA", () => {
    expect(worked("lec-sp")).toContain("120.784314");
    const total = functions.IN_SERIES([
      [[functions.IN_PARALLEL([[[100]], [[250]]])]],
      [[functions.IN_PARALLEL([[[350, 200]]])]],
    ]);
    expect(24_000 / Number(total)).toBeCloseTo(120.784314, 6);
  });
  test("lec-series, lec-parallel (vol I ch 5): 9 V over 3k + 10k + 5k is 0.5 mA; across 10k ∥ 2k ∥ 1k 14.4 mA", () => {
    expect(worked("lec-series")).toContain("0.5 mA");
    expect(9000 / Number(functions.IN_SERIES([[["3k"], ["10k"], ["5k"]]]))).toBeCloseTo(0.5, 12);
    expect(worked("lec-parallel")).toContain("0.9, 4.5, 9 mA");
    expect(9000 / Number(functions.IN_PARALLEL([[["10k", "2k", "1k"]]]))).toBeCloseTo(0.9 + 4.5 + 9, 10);
  });
  test("an open part opens a series and leaves a parallel; empty cells are no part; 0 Ω is one", () => {
    expect(functions.IN_SERIES([[[100, "OL"]]])).toBe("OL");
    expect(functions.IN_PARALLEL([[[100, "OL", "", null]]])).toBeCloseTo(100, 12);
    expect(functions.IN_PARALLEL([[["OL"]], [["OL"]]])).toBe("OL");
    expect(functions.IN_PARALLEL([[[100]], [[0]]])).toBe(0);
  });
  test("IEC 60063 (published table): every E24 value of a decade is its own nearest, and its neighbours lie about 1 % off it", () => {
    const values = lines("iec60063-e-series.csv").flatMap((line) => {
      const [series, , value] = line.split(",");
      return series === "E24" ? [Number(value)] : [];
    });
    expect(values).toHaveLength(24);
    const scale = 1000;
    for (const value of values) {
      expect(functions.NEAREST_RESISTOR(value * scale)).toBeCloseTo(value * scale, 6);
      expect(functions.NEAREST_RESISTOR(value * scale * 1.01, "e24", "below")).toBeCloseTo(value * scale, 6);
      expect(functions.NEAREST_RESISTOR(value * scale * 0.99, "E24", "Above")).toBeCloseTo(value * scale, 6);
    }
  });
  test("Lessons in Electric Circuits vol V ch 2: colour bands of its examples", () => {
    const rows = lines("colour-code-examples.csv").filter((line) => /Lessons/.test(line));
    expect(rows.length).toBeGreaterThanOrEqual(4);
    for (const row of rows) {
      const [bands = "", ohms, tolerance] = row.split(",");
      const [cells = []] = functions.OHMS_FROM_BANDS(bands);
      expect(cells[0]).toBeCloseTo(Number(ohms), 9);
      if (cells[1] !== "") expect(cells[1]).toBe(Number(tolerance));
    }
  });
  test("lec-2 (vol V ch 2 ex 1): 47 kΩ 5 % is yellow violet orange gold", () => {
    expect(lines("colour-code-examples.csv").some((line) => line.startsWith("yellow violet orange gold,47000,5"))).toBe(
      true,
    );
    expect(functions.RESISTOR_BANDS("47k")).toBe("yellow violet orange gold");
    expect(functions.RESISTOR_BANDS("4k7", 1, 5)).toBe("yellow violet black brown brown");
  });
});

describe("supply", () => {
  test("daisy-supply (ngspice 39): 12 V, three 20 mA sinks, 100 ft of 22 AWG a hop: 11.80632, 11.67720, 11.61264 V", () => {
    expect(worked("daisy-supply")).toContain("11.80632, 11.67720, 11.61264");
    const column = (cell: unknown) => [[cell], [cell], [cell], [""]];
    const rows = functions.SUPPLY_DROP([["22 AWG"]], column("100 ft"), column(20), 12);
    expect(rows).toHaveLength(3);
    // The exact gauge series has 1.6141 Ω a leg where the example has 1.614.
    [11.80632, 11.6772, 11.61264].forEach((volts, i) => {
      expect(rows[i]?.[1]).toBeCloseTo(volts, 3);
      expect(rows[i]?.[0]).toBeCloseTo(12 - volts, 3);
    });
    expect(rows[0]?.[5]).toBe("at or over 9.5 V in all three states");
    const [short = []] = functions.SUPPLY_DROP([["22"]], [["1000 ft"]], [["0.1 A"]], "12 V", null, 9.5);
    expect(short[5]).toBe("under 9.5 V: charger on, battery end, battery end less internal drop");
    expect(Number(short[4])).toBeLessThan(0);
  });
  test("worked by hand with the ngspice example's 1.614 Ω a leg: 1.5 V lost at 100 mA beyond plain wire is a joint of 15 Ω", () => {
    expect(worked("daisy-supply")).toContain("1.614 ohm per leg");
    const plainVolts = 2 * 1.614 * 0.1;
    const [joint = []] = functions.EXTRA_JOINT("22 AWG", "100 ft", "100 mA", 12, 12 - plainVolts - 1.5);
    expect(joint[0]).toBeCloseTo(15, 2);
    // Each reading may be off by 0.05 V: 1.4 and 1.6 V over 0.1 A.
    expect(joint[1]).toBeCloseTo(14, 2);
    expect(joint[2]).toBeCloseTo(16, 2);
    const [plain = []] = functions.EXTRA_JOINT(22, "100 ft", 100, "12 V", 12 - plainVolts);
    expect(plain[0]).toBeCloseTo(0, 2);
    expect(plain[3]).toMatch(/within what the readings may be off/);
  });
  test("batt-nicet (certification quiz page): 24 h at 0.25 A and 5 min at 1.5 A need 7.65625 Ah", () => {
    expect(worked("batt-nicet")).toContain("7.65625");
    const [row = []] = functions.BATTERY_AH("24 h", "250 mA", "5 min", "1.5 A");
    expect(row[0]).toBeCloseTo(7.65625, 10);
    expect(functions.BATTERY_AH(24, 250, 5, 1500)).toEqual([row]);
    expect(Number(row[1]) * Number(row[2])).toBeGreaterThanOrEqual(7.65625);
  });
});

describe("radio", () => {
  test("closed form of the binomial bound (Clopper and Pearson): n of n messages prove 0.05^(1/n); margin is signal less background", () => {
    for (const sent of [10, 50, 100]) {
      const [row = []] = functions.RADIO_MARGIN(-80, "-104", sent, sent, true);
      expect(row[0]).toBe(24);
      expect(row[1]).toBeCloseTo(0.05 ** (1 / sent), 10);
      expect(row[2]).toBe("enough");
    }
  });
  test("common practice, no source: a weak signal asks for a repeater, a test with doors not as in use for another test, nothing measured for one on site; nothing is made up for what was not measured", () => {
    expect(functions.RADIO_MARGIN(-98, -103, 50, 50, "yes")[0]?.[2]).toBe("repeater");
    expect(functions.RADIO_MARGIN(-70, -103, 50, 50, false)[0]?.[2]).toBe("testAgain");
    expect(functions.RADIO_MARGIN(null, "", null, undefined, null)[0]?.slice(0, 3)).toEqual(["", "", "testOnSite"]);
    expect(functions.RADIO_MARGIN(-80, null, null, null, true)[0]?.slice(0, 2)).toEqual(["", ""]);
    expect(() => functions.RADIO_MARGIN(-80, -103, 10)).toThrow(
      /heard, sent: got heard alone, expected both or neither/,
    );
  });
});

describe("termination", () => {
  test("worked by hand: a 2.2 kΩ loop for a 5.6 kΩ input gets a new resistor whose loop lies in 4480 to 6720 Ω", () => {
    const [row = []] = functions.EOL_TO_FIT("5.6k", 0.8, 1.2, 2, "22/4", "20 m", "2.2k");
    expect(row[0]).toBe("fit");
    expect(row[3]).toBe("device");
    expect(Number(row[4])).toBeGreaterThanOrEqual(4480);
    expect(Number(row[5])).toBeLessThanOrEqual(6720);
    expect(Math.abs(Number(row[1]) - 5600)).toBeLessThan(200);
  });
  test("a loop that lies in the band as it is needs nothing; its corners are those of its parts (tolerances common practice, no source)", () => {
    const [row = []] = functions.EOL_TO_FIT(5600, 0.8, 1.2, 1, null, null, "5.6k");
    expect(row.slice(0, 4)).toEqual(["nothing", "", "", ""]);
    // Worked by hand: 5 % and 350 ppm/K over 40 K, one contact of 0.1 to 2 Ω, two joints of 0.005 to 0.1 Ω.
    expect(row[4]).toBeCloseTo(5600 * 0.95 * 0.986 + 0.1 + 0.01, 6);
    expect(row[5]).toBeCloseTo(5600 * 1.05 * 1.014 + 2 + 0.2, 6);
  });
});
