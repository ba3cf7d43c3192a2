import { describe, expect, test } from "vitest";
import { stranding } from "../../lib/reference/stranding.js";
import type { Conductor } from "../../lib/wiring/conductor.js";
import { conductorOhmsPerMeter, temperatureFactor } from "../../lib/wiring/conductor-ohms-per-meter.js";
import { pairOhms } from "../../lib/wiring/pair-ohms.js";
import { awgAreaMm2, awgDiameterMm } from "../../lib/wiring/wire-gauge.js";
import { offBy, printed, publishedRows } from "./published-rows.js";

const METERS_PER_KFT = 304.8;
const ohmsPerKft = (conductor: Parameters<typeof conductorOhmsPerMeter>[0]): number =>
  conductorOhmsPerMeter(conductor) * METERS_PER_KFT;

describe("gauge series", () => {
  const rows = publishedRows("awg.csv", 21);

  test("T. Floyd, Electric Circuit Fundamentals 2e, wire table: 21 rows of 10 to 30 AWG at 20 °C within 0.05 %", () => {
    expect(rows.map((row) => printed(row, "awg"))).toEqual(Array.from({ length: 21 }, (_, i) => 10 + i));
    for (const row of rows) {
      const gaugeAwg = printed(row, "awg");
      const off = offBy(ohmsPerKft({ gaugeAwg }), printed(row, "ohm_per_kft_20C_textbook"));
      expect(off, `${gaugeAwg} AWG`).toBeLessThan(0.0005);
    }
  });

  test("NBS Handbook 100 (1966) Table 5: 22, 24 and 26 AWG, which rounds diameters first, within 0.5 %", () => {
    const known = rows.filter((row) => row["ohm_per_kft_20C_hb100"] !== "");
    expect(known.length).toBe(3);
    for (const row of known) {
      const computed = ohmsPerKft({ gaugeAwg: printed(row, "awg") });
      expect(offBy(computed, printed(row, "ohm_per_kft_20C_hb100"))).toBeLessThan(0.005);
    }
  });

  test("ASTM B258: diameters rounded to 0.1 mil, 10 to 30 AWG, and areas that go with the series", () => {
    for (const row of rows) {
      const gaugeAwg = printed(row, "awg");
      expect(Math.abs(awgDiameterMm(gaugeAwg) / 0.0254 - printed(row, "d_mil_b258_rounded"))).toBeLessThan(0.0501);
      expect(offBy(awgAreaMm2(gaugeAwg), printed(row, "area_mm2_formula"))).toBeLessThan(1e-5);
    }
  });

  test("ASTM B258 fixed points: 36 AWG is 5 mil and 4/0 is 460 mil", () => {
    expect(awgDiameterMm(36) / 0.0254).toBeCloseTo(5, 10);
    expect(awgDiameterMm(-3) / 0.0254).toBeCloseTo(460, 8);
  });
});

describe("NFPA 70 (NEC) Chapter 9 Table 8, DC resistance at 75 °C, 18 to 10 AWG, within 0.6 %", () => {
  const rows = publishedRows("nec-ch9-table8-small.csv", 10);
  const cases = [
    ["uncoated copper", "cu_uncoated_ohm_kft_75C", { metal: "copper" }],
    ["coated copper", "cu_coated_ohm_kft_75C", { metal: "copper", tinned: true }],
    ["aluminium", "al_ohm_kft_75C", { metal: "aluminium" }],
  ] as const satisfies readonly (readonly [string, string, Conductor])[];

  test.each(cases)("%s, solid and 7 strands", (_, column, metal) => {
    expect(new Set(rows.map((row) => row["strands"]))).toEqual(new Set(["1", "7"]));
    for (const row of rows) {
      const [gaugeAwg, strands] = [printed(row, "awg"), printed(row, "strands")];
      const computed = ohmsPerKft({ ...metal, gaugeAwg, strands, temperatureCelsius: 75 });
      expect(offBy(computed, printed(row, column)), `${gaugeAwg} AWG, ${strands} strands`).toBeLessThan(0.006);
    }
  });
});

describe("IEC 60228:2004 tables 1, 2 and 3: greatest resistance at 20 °C is not exceeded by the nominal size", () => {
  const rows = publishedRows("iec60228-max-resistance.csv", 6);
  const classes = [
    ["class 1 plain", "class1_plain_ohm_km", 1, false],
    ["class 2 plain", "class2_plain", 2, false],
    ["class 5 plain", "class5_plain", 5, false],
    ["class 1 coated", "class1_coated", 1, true],
    ["class 5 coated", "class5_coated", 5, true],
  ] as const;

  test.each(classes)("%s", (_, column, iecClass, tinned) => {
    for (const row of rows) {
      const areaMm2 = printed(row, "mm2");
      const made = stranding(`${areaMm2} mm² class ${iecClass}`);
      if (made === undefined) throw new Error(`no stranding for ${areaMm2} mm² class ${iecClass}`);
      const computed = 1000 * conductorOhmsPerMeter({ areaMm2, strands: made.strands, tinned });
      const most = printed(row, column);
      expect(computed, `${areaMm2} mm²`).toBeLessThanOrEqual(most);
      expect(computed, `${areaMm2} mm²: same order of size`).toBeGreaterThan(0.85 * most);
    }
  });

  test("class 2 coated: seven tinned strands come out up to 3 % over the limit, a difference of ours that stays", () => {
    const ratios = rows.map((row) => {
      const computed = 1000 * conductorOhmsPerMeter({ areaMm2: printed(row, "mm2"), strands: 7, tinned: true });
      return computed / printed(row, "class2_coated");
    });
    expect(Math.max(...ratios)).toBeLessThan(1.03);
    expect(Math.min(...ratios)).toBeGreaterThan(0.85);
  });
});

test("IEC 60228 temperature correction factors, 5 to 75 °C, as printed by a cable supplier, within 0.35 %", () => {
  const rows = publishedRows("iec60228-temperature-factor.csv", 15);
  for (const row of rows) {
    const factor = 1 / temperatureFactor(0.00393, printed(row, "temp_C"));
    expect(offBy(factor, printed(row, "kt_read")), `${row["temp_C"]} °C`).toBeLessThan(0.0035);
  }
});

describe("stranded conductors", () => {
  test("generic stranded-wire chart: 7 rows by strand count and gauge, within 4 % (chart leaves out or adds lay)", () => {
    const rows = publishedRows("stranded.csv", 20).filter((row) => row["detail"]?.startsWith("cmil "));
    expect(rows.length).toBe(7);
    for (const row of rows) {
      const name = row["conductor"]?.split(" ")[1] ?? "";
      const made = stranding(name);
      if (made === undefined) throw new Error(`no stranding ${name}`);
      const { strands, strandDiameterMm } = made;
      const off = offBy(ohmsPerKft({ strands, strandDiameterMm }), printed(row, "published"));
      expect(off, name).toBeLessThan(0.04);
    }
  });

  test("GNU units: 7/0.2 mm of plain copper without lay is 78.40145 Ω/km", () => {
    const withLay = 1000 * conductorOhmsPerMeter({ strands: 7, strandDiameterMm: 0.2 });
    expect(offBy(withLay / 1.02, 78.40145)).toBeLessThan(1e-6);
  });

  test("VDE 0295 limits for 7/0.2 mm as on a supplier page: 96 Ω/km plain and 99 Ω/km tinned are not exceeded", () => {
    const strands = { strands: 7, strandDiameterMm: 0.2 };
    expect(1000 * conductorOhmsPerMeter(strands)).toBeLessThan(96);
    expect(1000 * conductorOhmsPerMeter({ ...strands, tinned: true })).toBeLessThan(99);
  });

  test("ASTM B258: strand diameters of the AWG strandings table follow the series", async () => {
    const { strandings } = await import("../../lib/reference/generated/strandings.js");
    const rows = strandings.filter((row) => row.system === "awg");
    expect(rows.length).toBeGreaterThan(10);
    for (const { name, strandDiameterMm, strands, nominalGaugeAwg = Number.NaN } of rows) {
      expect(strandDiameterMm, name).toBeCloseTo(awgDiameterMm(Number(name.split("/")[1])), 5);
      const area = strands * awgAreaMm2(Number(name.split("/")[1]));
      expect(offBy(area, awgAreaMm2(nominalGaugeAwg)), `${name} is sold as ${nominalGaugeAwg} AWG`).toBeLessThan(0.2);
    }
  });
});

describe("worked examples", () => {
  const example = (id: string): Record<string, string> => {
    const row = publishedRows("worked-examples.csv", 10).find((candidate) => candidate["id"] === id);
    if (row === undefined) throw new Error(`no worked example ${id}`);
    return row;
  };
  const metersOfFeet = (feet: number): number => feet * 0.3048;

  test("electrician maths page: 400 ft of one 18 AWG conductor, printed 2.602 Ω from 6.505 Ω per 1000 ft", () => {
    expect(example("r-18-400")["expected"]).toBe("2.602 ohm");
    // The page takes 6.505 (rounded, stranded) per 1000 ft; seven strands of the exact series come within 0.2 %.
    const computed = metersOfFeet(400) * conductorOhmsPerMeter({ gaugeAwg: 18, strands: 7 });
    expect(offBy(computed, 2.602)).toBeLessThan(0.002);
  });

  test("electrician training page, NEC Table 8: 4 A over 100 ft of 16 AWG of 7 strands at 75 °C drops 3.992 V", () => {
    expect(example("vd-nec16")["expected"]).toContain("3.992 V");
    const ohms = pairOhms({
      conductor: { gaugeAwg: 16, strands: 7, temperatureCelsius: 75 },
      runMeters: metersOfFeet(100),
    });
    expect(offBy(4 * ohms, 3.992)).toBeLessThan(0.006);
    expect(Math.abs((100 * 4 * ohms) / 24 - 16.6)).toBeLessThan(0.15);
  });

  test("ngspice daisy chain: 100 ft of 22 AWG is 1.614 Ω a leg", () => {
    expect(example("daisy-supply")["inputs"]).toContain("1.614 ohm per leg");
    const pair = pairOhms({ conductor: { gaugeAwg: 22 }, runMeters: metersOfFeet(100) });
    expect(offBy(pair / 2, 1.614)).toBeLessThan(0.0005);
  });
});
