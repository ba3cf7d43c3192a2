import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { batteryAmpHours } from "../../lib/supply/battery-amp-hours.js";
import { supplyCures } from "../../lib/supply/supply-cures.js";
import { supplyTree } from "../../lib/supply/supply-tree.js";

const FEET = 0.3048;
const published = readFileSync("reference-data/published/worked-examples.csv", "utf8");

/** The printed answer of one worked example, as text. */
function printed(id: string): string {
  const line = published.split("\n").find((one) => one.startsWith(`${id},`));
  return line ?? "";
}

test("the published file holds the examples this file replays", () => {
  for (const id of ["batt-nicet", "daisy-supply", "vd-nec16", "lec-2300", "batt-formula"]) {
    expect(printed(id).length).toBeGreaterThan(20);
  }
});

test("batt-nicet (certification quiz page): 0.25 A × 24 h + 1.5 A × 5 min = 6.125 Ah, × 1.25 = 7.65625 Ah", () => {
  expect(printed("batt-nicet")).toContain("6.125 Ah");
  expect(printed("batt-nicet")).toContain("7.65625");
  const battery = batteryAmpHours({ standbyHours: 24, standbyMilliamps: 250, alarmMinutes: 5, alarmMilliamps: 1500 });
  expect(battery.loadAmpHours).toBeCloseTo(6.125, 10);
  expect(battery.neededAmpHours).toBeCloseTo(7.65625, 10);
});

test("daisy-supply: 12 V, three 20 mA sinks, 100 ft of 22 AWG per hop (1.614 Ω per leg): 11.80632, 11.67720, 11.61264 V", () => {
  const volts = [...printed("daisy-supply").matchAll(/11\.\d{5}/g)].map((match) => Number(match[0]));
  expect(volts).toEqual([11.80632, 11.6772, 11.61264]);
  for (const [wire, digits] of [
    [{ ohmsPerMeter: 1.614 / (100 * FEET) }, 9],
    // The exact gauge series has 1.6141 Ω where 1.614 is printed.
    [{ conductor: { gaugeAwg: 22 } }, 3],
  ] as const) {
    const tree = supplyTree({
      source: { chargerVolts: 12 },
      segments: ["panel", "a", "b"].map((from, i) => ({
        id: `s${i}`,
        from,
        to: ["a", "b", "c"][i] ?? "",
        meters: 100 * FEET,
        ...wire,
      })),
      detectors: ["a", "b", "c"].map((at) => ({ id: at, at, milliamps: 20 })),
    });
    tree.detectors.forEach((detector, i) => {
      expect(detector.volts.charger).toBeCloseTo(volts[i] ?? 0, digits);
    });
  }
});

test("vd-nec16 (NEC table 8, 16 AWG 4.99 Ω/kft): 100 ft, 4 A, 24 V lose 3.992 V, printed 4.0 V and 16.7 %", () => {
  expect(printed("vd-nec16")).toContain("3.992 V");
  const tree = supplyTree({
    source: { chargerVolts: 24 },
    segments: [{ id: "run", from: "panel", to: "load", meters: 100 * FEET, ohmsPerMeter: 4.99 / (1000 * FEET) }],
    detectors: [{ id: "load", at: "load", milliamps: 4000 }],
  });
  const drop = tree.segments[0]?.dropVolts ?? 0;
  expect(drop).toBeCloseTo(3.992, 9);
  expect(drop.toFixed(1)).toBe("4.0");
  expect((drop / 24) * 100).toBeCloseTo(16.6, 1);
});

test("lec-2300 (Lessons In Electric Circuits I ch. 12): 14 AWG over 2300 ft is 5.651 Ω a wire, 11.301 Ω in all, 20.352 A empties 230 V", () => {
  expect(printed("lec-2300")).toContain("5.651 ohm/wire");
  // The book's copper has 10.09 Ω·cmil/ft; 14 AWG has 4106.72 cmil.
  const ohmsPerMeter = 10.09 / 4106.7239 / FEET;
  const tree = {
    source: { chargerVolts: 230, batteryEndVolts: 230, internalDropVolts: 0 },
    segments: [{ id: "run", from: "panel", to: "load", meters: 2300 * FEET, ohmsPerMeter }],
    detectors: [{ id: "load", at: "load", milliamps: 25_000, minimumVolts: 220 }],
  };
  const ohms = supplyTree(tree).segments[0]?.ohms ?? 0;
  expect((ohms / 2).toFixed(3)).toBe("5.651");
  // Printed 11.301 is twice a rounded 5.6506; exact 11.30190.
  expect(Math.abs(ohms - 11.301)).toBeLessThan(0.0015);
  const short = supplyTree({ ...tree, detectors: [{ id: "load", at: "load", milliamps: 20_352 }] });
  expect(short.detectors[0]?.volts.charger ?? 1).toBeLessThan(0.02);
  // A drop of 10 V at 25 A allows 0.2 Ω a wire, 0.4 Ω for both: 2300 ft · 0.4/11.30 = 81.4 ft of this wire.
  const cures = supplyCures({ tree, detector: "load", state: "charger" });
  expect(cures.allowedDropVolts / 25 / 2).toBeCloseTo(0.2, 10);
  expect((cures.lastStretchMeters ?? 0) / FEET).toBeCloseTo(((2300 * 0.2) / (10.09 * 2300)) * 4106.7239, 3);
});
