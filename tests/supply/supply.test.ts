import fc from "fast-check";
import { expect, test } from "vitest";
import { InputError } from "../../lib/problems/input-error.js";
import { auxBudget } from "../../lib/supply/aux-budget.js";
import { batteryAmpHours, standbyRule } from "../../lib/supply/battery-amp-hours.js";
import { classTwoCaution } from "../../lib/supply/class-two-caution.js";
import { extraJointOhms, withJoints } from "../../lib/supply/extra-joint-ohms.js";
import { FEED_GAUGES, supplyCures } from "../../lib/supply/supply-cures.js";
import { SUPPLY_STATES, supplyTree } from "../../lib/supply/supply-tree.js";
import { randomTree } from "./random-tree.js";

const anyTree = fc.integer({ min: 0, max: 2 ** 31 }).map(randomTree);

test("more load never raises a voltage; thicker wire, shorter wire never lowers one (property)", () => {
  fc.assert(
    fc.property(anyTree, fc.nat(), (tree, pick) => {
      const before = supplyTree(tree);
      expect(before.detectors.length).toBeGreaterThan(0);
      const chosen = pick % tree.detectors.length;
      const heavier = tree.detectors.map((d, i) => (i === chosen ? { ...d, milliamps: d.milliamps + 30 } : d));
      const loaded = supplyTree({ ...tree, detectors: heavier });
      const segment = pick % tree.segments.length;
      const thicker = supplyTree({
        ...tree,
        segments: tree.segments.map((s, i) =>
          i === segment ? { ...s, conductor: { gaugeAwg: (s.conductor?.gaugeAwg ?? 22) - 4 } } : s,
        ),
      });
      before.nodes.forEach((node, i) => {
        for (const state of SUPPLY_STATES) {
          expect(loaded.nodes[i]?.volts[state] ?? 99).toBeLessThanOrEqual(node.volts[state]);
          expect(thicker.nodes[i]?.volts[state] ?? -1).toBeGreaterThanOrEqual(node.volts[state] - 1e-12);
        }
      });
    }),
  );
});

test("warmer cable never raises a voltage; currents add up at every node (property)", () => {
  fc.assert(
    fc.property(anyTree, (tree) => {
      const cool = supplyTree({ ...tree, temperatureCelsius: 0 });
      const warm = supplyTree({ ...tree, temperatureCelsius: 50 });
      cool.nodes.forEach((node, i) => {
        expect(warm.nodes[i]?.volts.charger ?? 99).toBeLessThanOrEqual(node.volts.charger);
      });
      for (const { node } of cool.nodes) {
        const into = cool.segments.find((s) => s.to === node)?.milliamps ?? cool.totalMilliamps;
        const out = cool.segments.filter((s) => s.from === node).reduce((sum, s) => sum + s.milliamps, 0);
        const here = tree.detectors.filter((d) => d.at === node).reduce((sum, d) => sum + d.milliamps, 0);
        expect(into).toBeCloseTo(out + here, 8);
      }
    }),
  );
});

test("joints put into a tree are found again from its voltages (property)", () => {
  fc.assert(
    fc.property(anyTree, fc.nat(), fc.double({ min: 1, max: 10, noNaN: true }), (tree, pick, extraOhms) => {
      const bare = { ...tree, segments: tree.segments.map(({ extraOhms: _none, ...segment }) => segment) };
      const place = pick % bare.segments.length;
      const bad = { ...bare, segments: bare.segments.map((s, i) => (i === place ? { ...s, extraOhms } : s)) };
      const solved = supplyTree(bad);
      // A wire that cannot carry its load at all, or carries none, tells nothing.
      fc.pre(solved.nodes.every((node) => node.volts.charger > 0.5));
      fc.pre(solved.segments.every((segment) => segment.milliamps > 0));
      const measured = solved.nodes.map((node) => ({ at: node.node, volts: node.volts.charger }));
      const joints = extraJointOhms({ tree: bare, measured });
      expect(joints.length).toBe(bare.segments.length);
      for (const joint of joints) {
        const here = joint.segments.includes(bare.segments[place]?.id ?? "");
        expect(joint.ohms).toBeCloseTo(here ? extraOhms : 0, 6);
        expect(joint.lowOhms).toBeLessThanOrEqual(joint.ohms);
        expect(joint.highOhms).toBeGreaterThanOrEqual(joint.ohms);
      }
      supplyTree(withJoints(bare, joints)).nodes.forEach((node, i) => {
        expect(node.volts.charger).toBeCloseTo(solved.nodes[i]?.volts.charger ?? 0, 8);
      });
    }),
  );
});

test("every cure cures: size, distance and load at their limit meet the minimum, and just past it do not (property)", () => {
  let cured = 0;
  fc.assert(
    fc.property(anyTree, fc.nat(), (tree, pick) => {
      const detector = tree.detectors[pick % tree.detectors.length];
      if (detector === undefined || detector.at === "panel") return;
      const state = "batteryEnd";
      const cures = supplyCures({ tree, detector: detector.id, state });
      const voltsOf = (changed: typeof tree) =>
        supplyTree(changed).detectors.find((d) => d.id === detector.id)?.volts[state] ?? 0;
      const { minimumVolts, lastStretchMeters, milliamps } = cures;
      if (lastStretchMeters !== null) {
        const stretched = (meters: number) => ({
          ...tree,
          segments: tree.segments.map((s) => (s.to === detector.at ? { ...s, meters } : s)),
        });
        expect(voltsOf(stretched(lastStretchMeters))).toBeCloseTo(minimumVolts, 8);
        cured++;
      }
      if (milliamps !== null) {
        const drawing = (most: number) => ({
          ...tree,
          detectors: tree.detectors.map((d) => (d.id === detector.id ? { ...d, milliamps: most } : d)),
        });
        expect(voltsOf(drawing(milliamps))).toBeCloseTo(minimumVolts, 8);
      }
      if (cures.wholePathGaugeAwg !== null) {
        const thinner = FEED_GAUGES[FEED_GAUGES.indexOf(cures.wholePathGaugeAwg) - 1];
        const inGauge = (gaugeAwg: number) => {
          const onPath = new Set<string>();
          for (let at = detector.at; at !== "panel"; ) {
            const feed = tree.segments.find((s) => s.to === at);
            if (feed === undefined) break;
            onPath.add(feed.id);
            at = feed.from;
          }
          const mended = tree.segments.map(({ extraOhms: _joint, ...s }) => s);
          return {
            ...tree,
            segments: mended.map((s) => (onPath.has(s.id) ? { ...s, conductor: { gaugeAwg } } : s)),
          };
        };
        expect(voltsOf(inGauge(cures.wholePathGaugeAwg))).toBeGreaterThanOrEqual(minimumVolts);
        if (thinner !== undefined) expect(voltsOf(inGauge(thinner))).toBeLessThan(minimumVolts);
      }
    }),
  );
  expect(cured).toBeGreaterThan(20);
});

test("battery grows with time, load and factor, and the stock size covers the need (property)", () => {
  const amount = fc.double({ min: 0, max: 3000, noNaN: true });
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 120, noNaN: true }),
      amount,
      fc.double({ min: 0, max: 60, noNaN: true }),
      amount,
      (h, mA, min, alarm) => {
        const base = { standbyHours: h, standbyMilliamps: mA, alarmMinutes: min, alarmMilliamps: alarm };
        const { neededAmpHours, stock } = batteryAmpHours(base);
        expect(stock.ampHours * stock.count).toBeGreaterThanOrEqual(neededAmpHours - 1e-6);
        for (const more of [
          { ...base, standbyHours: h + 1 },
          { ...base, standbyMilliamps: mA + 1 },
          { ...base, alarmMinutes: min + 1 },
          { ...base, alarmMilliamps: alarm + 1 },
          { ...base, factor: 1.5 },
        ]) {
          const bigger = batteryAmpHours(more);
          expect(bigger.neededAmpHours).toBeGreaterThanOrEqual(neededAmpHours);
          expect(bigger.stock.ampHours * bigger.stock.count).toBeGreaterThanOrEqual(
            stock.ampHours * stock.count - 1e-9,
          );
        }
      },
    ),
  );
});

test("stock sizes, recharge and fuse by hand (common practice, no source)", () => {
  const battery = batteryAmpHours({
    standbyHours: 24,
    standbyMilliamps: 250,
    alarmMinutes: 5,
    alarmMilliamps: 1500,
    chargeMilliamps: 500,
  });
  expect(battery.stock).toEqual({ ampHours: 12, count: 1 });
  // 12 Ah · 1.25 / 0.5 A = 30 h; 1.5 A · 1.5 = 2.25 A → 2.5 A.
  expect(battery.rechargeHours).toBeCloseTo(30, 10);
  expect(battery.fuseAmps).toBe(2.5);
  const large = batteryAmpHours({ standbyHours: 60, standbyMilliamps: 500, alarmMinutes: 0, alarmMilliamps: 0 });
  // 30 Ah · 1.25 = 37.5 Ah: two of 26 Ah; two of 18 Ah would fall short.
  expect(large.stock).toEqual({ ampHours: 26, count: 2 });
  expect(large.rechargeHours).toBeNull();
});

test("standby rules: EN 50131-1 grade 2 asks for 12 h (two texts, read) and names no alarm time", () => {
  expect(standbyRule("enGrade2").standbyHours).toBe(12);
  expect(standbyRule("enGrade2").alarmMinutes).toBeUndefined();
  expect(() => standbyRule("none")).toThrow(/usHousehold/);
});

test("NEC chapter 9 table 11(A) as quoted: 0 to 20 V 5.0 A and 5.0 × Vmax VA; over 20 to 30 V 100 VA and 100/Vmax A", () => {
  expect(classTwoCaution({ volts: 13.8, nameplateAmps: 4.9, limitedBy: "inherent" }).beyond).toBe(false);
  expect(classTwoCaution({ volts: 13.8, nameplateAmps: 5.1, limitedBy: "inherent" }).beyond).toBe(true);
  expect(classTwoCaution({ volts: 24, nameplateAmps: 4.1, limitedBy: "inherent" }).beyond).toBe(false);
  expect(classTwoCaution({ volts: 24, nameplateAmps: 4.2, limitedBy: "inherent" }).beyond).toBe(true);
  // "50 V supply → 2 A" is printed in an electrical trade magazine.
  expect(classTwoCaution({ volts: 50, nameplateAmps: 2, limitedBy: "inherent" }).beyond).toBe(false);
  expect(classTwoCaution({ volts: 50, nameplateAmps: 2.01, limitedBy: "inherent" }).beyond).toBe(true);
  expect(classTwoCaution({ volts: 13.8, nameplateAmps: 1, limitedBy: "inherent" }).source).toContain("table 11(A)");
});

test("aux budget by hand: four modules of 60 mA and 172 mA kept on a 500 mA output leave 88 mA; six overload it", () => {
  const kept = { name: "kept detectors", milliamps: 172, count: 1 };
  expect(auxBudget({ ratedMilliamps: 500, loads: [kept, { name: "module", milliamps: 60, count: 4 }] })).toMatchObject({
    totalMilliamps: 412,
    leftMilliamps: 88,
    overloaded: false,
  });
  expect(auxBudget({ ratedMilliamps: 500, loads: [kept, { name: "module", milliamps: 60, count: 6 }] })).toMatchObject({
    leftMilliamps: -32,
    overloaded: true,
  });
});

test("refuses what is no tree: two feeds, a loop, an island, a load nowhere, a wire given twice", () => {
  const segment = (id: string, from: string, to: string) => ({ id, from, to, meters: 10, conductor: { gaugeAwg: 22 } });
  const source = { chargerVolts: 13.7 };
  const bad = [
    [segment("1", "panel", "a"), segment("2", "panel", "a")],
    [segment("1", "a", "b"), segment("2", "b", "a")],
    [segment("1", "panel", "a"), segment("2", "a", "panel")],
    [segment("1", "x", "y")],
    [{ ...segment("1", "panel", "a"), ohmsPerMeter: 0.05 }],
  ];
  for (const segments of bad) expect(() => supplyTree({ source, segments, detectors: [] })).toThrow(InputError);
  const detectors = [{ id: "d", at: "nowhere", milliamps: 20 }];
  expect(() => supplyTree({ source, segments: [segment("1", "panel", "a")], detectors })).toThrow(/nowhere/);
});
