import { expect, test } from "vitest";
import { extraJointOhms, withJoints } from "../../lib/supply/extra-joint-ohms.js";
import { supplyCures } from "../../lib/supply/supply-cures.js";
import { type SupplyTreeInput, supplyTree } from "../../lib/supply/supply-tree.js";

const FEET = 0.3048;

/**
 * An invented clinic: the corridor detectors hang on one chain, lengths written from the panel (180, 240, 330 ft), the
 * last leg in 24 AWG. Read with the charger on: 13.7 V at the panel, 13.0, 12.8 and 11.0 V along the chain. Five more
 * detectors have pairs of their own.
 */
const alone = [
  { id: "reception", feet: 60, milliamps: 22 },
  { id: "waiting", feet: 95, milliamps: 22 },
  { id: "medicines", feet: 90, milliamps: 18 },
] as const;

const clinic: SupplyTreeInput = {
  source: { chargerVolts: 13.7 },
  segments: [
    { id: "to A", from: "panel", to: "corridor A", meters: 180 * FEET, conductor: { gaugeAwg: 22 } },
    { id: "A to B", from: "corridor A", to: "corridor B", meters: 60 * FEET, conductor: { gaugeAwg: 22 } },
    { id: "B to exam", from: "corridor B", to: "exam corridor", meters: 90 * FEET, conductor: { gaugeAwg: 24 } },
    ...alone.map(({ id, feet }) => ({
      id: `to ${id}`,
      from: "panel",
      to: id,
      meters: feet * FEET,
      conductor: { gaugeAwg: 22 },
    })),
  ],
  detectors: [
    { id: "corridor A", at: "corridor A", milliamps: 25 },
    { id: "corridor B", at: "corridor B", milliamps: 25 },
    { id: "exam corridor", at: "exam corridor", milliamps: 60 },
    ...alone.map(({ id, milliamps }) => ({ id, at: id, milliamps })),
  ],
  temperatureCelsius: 22,
};

const measured = [
  { at: "corridor A", volts: 13.0 },
  { at: "corridor B", volts: 12.8 },
  { at: "exam corridor", volts: 11.0 },
];

/** Detectors under their minimum in one state, in the order of the tree. */
function failing(tree: SupplyTreeInput, state: "charger" | "batteryEnd" | "batteryEndLessDrop"): string[] {
  return supplyTree(tree)
    .detectors.filter((detector) => !detector.enough[state])
    .map((detector) => detector.id);
}

test("plain wire by hand: 110 mA, 85 mA and 60 mA along the chain lose 0.64, 0.16 and 0.28 V at 20 °C", () => {
  // 22 AWG 16.14 Ω/kft, 24 AWG 25.67 Ω/kft. To A: 2·180·0.01614 = 5.81 Ω · 0.110 A = 0.639 V.
  // A to B: 2·60·0.01614 = 1.937 Ω · 0.085 A = 0.165 V. B to exam: 2·90·0.02567 = 4.621 Ω · 0.060 A = 0.277 V.
  const byName = new Map(supplyTree({ ...clinic, temperatureCelsius: 20 }).segments.map((s) => [s.id, s.dropVolts]));
  expect(byName.get("to A")).toBeCloseTo(0.639, 3);
  expect(byName.get("A to B")).toBeCloseTo(0.165, 3);
  expect(byName.get("B to exam")).toBeCloseTo(0.277, 3);
});

test("the joint that costs about 1.5 V lies between corridor B and the exam corridor: about 25 Ω at 60 mA", () => {
  // 12.8 − 11.0 = 1.8 V lost where plain wire loses 0.28 V: 1.52 V more, over 60 mA 25.4 Ω. The other two stretches
  // lose 0.06 and 0.03 V more than plain wire, which readings to a tenth of a volt do not show.
  const joints = extraJointOhms({ tree: clinic, measured });
  expect(joints.map((joint) => joint.beyondBound)).toEqual([false, false, true]);
  const exam = joints[2];
  expect(exam?.from).toBe("corridor B");
  expect(exam?.extraVolts ?? 0).toBeGreaterThan(1.45);
  expect(exam?.extraVolts ?? 0).toBeLessThan(1.55);
  expect(exam?.ohms ?? 0).toBeCloseTo(25.3, 0);
  expect([exam?.lowOhms, exam?.highOhms].every((ohms) => Math.abs((ohms ?? 0) - 25.3) < 2)).toBe(true);
});

test("battery end as found: exam corridor fails even at 10.5 V; with 0.5 V lost in the panel the whole chain fails", () => {
  // Constant currents: each detector keeps the drop that was measured with the charger on.
  // 10.5 V: A 10.5 − 0.7 = 9.8, B 10.5 − 0.9 = 9.6, exam 10.5 − 2.7 = 7.8 V. 10.0 V: 9.3, 9.1 and 7.3 V.
  // The pairs of their own lose under 0.07 V: 9.9 V and more in both states.
  const found = withJoints(clinic, extraJointOhms({ tree: clinic, measured }));
  const volts = new Map(supplyTree(found).detectors.map((detector) => [detector.id, detector.volts]));
  expect(volts.get("corridor A")?.batteryEnd).toBeCloseTo(9.8, 6);
  expect(volts.get("corridor B")?.batteryEnd).toBeCloseTo(9.6, 6);
  expect(volts.get("exam corridor")?.batteryEnd).toBeCloseTo(7.8, 6);
  expect(volts.get("exam corridor")?.batteryEndLessDrop).toBeCloseTo(7.3, 6);
  expect(failing(found, "charger")).toEqual([]);
  expect(failing(found, "batteryEnd")).toEqual(["exam corridor"]);
  expect(failing(found, "batteryEndLessDrop")).toEqual(["corridor A", "corridor B", "exam corridor"]);
  expect(supplyTree(found).internalDrop).toEqual({ volts: 0.5, assumed: true });
});

test("mending the joint alone does not carry the exam corridor through: 9.4 V at battery end, 8.9 V less the drop", () => {
  const joints = extraJointOhms({ tree: clinic, measured }).filter((joint) => joint.beyondBound);
  const found = withJoints(clinic, joints);
  expect(failing(clinic, "batteryEnd")).toEqual(["exam corridor"]);
  expect(failing(clinic, "batteryEndLessDrop")).toEqual(["corridor A", "corridor B", "exam corridor"]);
  const cures = supplyCures({ tree: found, detector: "exam corridor", state: "batteryEndLessDrop" });
  expect(cures.mendingJointsSuffices).toBe(false);
  expect(cures.voltsWithoutJoints).toBeCloseTo(10 - 0.639 - 0.165 - 0.277, 1);
  // 0.5 V for 330 ft of its own at 60 mA: 0.5/(2·330·0.060) = 12.6 Ω/kft, which 20 AWG (10.15) keeps and 22 (16.14) not.
  expect(cures.ownFeedGaugeAwg).toBe(20);
  // The whole chain in one size: 2·(180·0.110 + 60·0.085 + 90·0.060) = 60.6 ft·A → 8.25 Ω/kft: 18 AWG (6.385), not 20.
  expect(cures.wholePathGaugeAwg).toBe(18);
});
