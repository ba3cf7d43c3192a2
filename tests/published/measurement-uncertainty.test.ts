import { describe, expect, test } from "vitest";
import { accuracyBound } from "../../lib/readings/meter-bound.js";
import {
  type Correlation,
  propagateUncertainty,
  resultCorrelation,
  type UncertainInput,
} from "../../lib/readings/standard-uncertainty.js";
import { publishedRows } from "./published-rows.js";

const published = (name: string): string => {
  const row = publishedRows("uncertainty.csv", 7).find((candidate) => candidate["case"] === name);
  if (row === undefined) throw new Error(`no case ${name}`);
  return row["expected"] ?? "";
};
const normal = (name: string, estimate: number, u: number): UncertainInput => ({
  name,
  estimate,
  spread: { shape: "normal", standardUncertainty: u },
});
const rectangular = (name: string, estimate: number, bound: number): UncertainInput => ({
  name,
  estimate,
  spread: { shape: "rectangular", bound },
});

test("EA-4/02 S3, calibration of a 10 kΩ resistor: 10000.1780007665 Ω, standard uncertainty 0.00832800405 Ω", () => {
  const [, estimate = "", u = ""] = /R=(\S+) u=(\S+)/.exec(published("EA-4/02 S3 10 kohm resistor")) ?? [];
  expect(Number(estimate)).toBeGreaterThan(10_000);
  // S3.9: five ratio readings, from memory; with the rounded 0.07e-6 of the text the last digits would not come out.
  const ratios = [1.0000104, 1.0000107, 1.0000106, 1.0000103, 1.0000105];
  const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
  const squares = ratios.reduce((sum, ratio) => sum + (ratio - mean) ** 2, 0);
  const ofMean = Math.sqrt(squares / (ratios.length - 1) / ratios.length);
  expect(ofMean).toBeCloseTo(0.07e-6, 8);
  const result = propagateUncertainty({
    inputs: [
      normal("RS", 10_000.053, 0.0025),
      rectangular("dRD", 0.02, 0.01),
      rectangular("dRTS", 0, 0.00275),
      { name: "rC", estimate: 1, spread: { shape: "triangular", bound: 1e-6 } },
      normal("r", mean, ofMean),
      rectangular("dRTX", 0, 0.0055),
    ],
    formula: ([rs = 0, dRd = 0, dRts = 0, rc = 0, r = 0, dRtx = 0]) => (rs + dRd + dRts) * rc * r - dRtx,
  });
  expect(result.estimate).toBeCloseTo(Number(estimate), 9);
  expect(result.standardUncertainty).toBeCloseTo(Number(u), 9);
});

describe("JCGM 100:2008 H.2, resistance and reactance from voltage, current and phase", () => {
  const inputs = [
    normal("V", 4.999, 0.0032),
    normal("I", 0.019661, 0.0095e-3),
    normal("phi", 1.04446, 0.00075),
  ] as const;
  const correlations: readonly Correlation[] = [
    { between: ["V", "I"], coefficient: -0.36 },
    { between: ["V", "phi"], coefficient: 0.86 },
    { between: ["I", "phi"], coefficient: -0.65 },
  ];
  const of = (formula: (values: readonly number[]) => number) =>
    propagateUncertainty({ inputs, correlations, formula });
  const resistance = of(([v = 0, i = 0, phi = 0]) => (v / i) * Math.cos(phi));
  const reactance = of(([v = 0, i = 0, phi = 0]) => (v / i) * Math.sin(phi));
  const impedance = of(([v = 0, i = 0]) => v / i);

  test("rounded inputs: R = 127.732(70), X = 219.85(30), Z = 254.26(24)", () => {
    expect(published("GUM H.2 rounded")).toContain("R=127.732(70); X=219.85(30); Z=254.26(24)");
    expect(resistance.estimate).toBeCloseTo(127.732, 2);
    expect(resistance.standardUncertainty).toBeCloseTo(0.07, 2);
    expect(reactance.estimate).toBeCloseTo(219.85, 1);
    expect(reactance.standardUncertainty).toBeCloseTo(0.3, 2);
    expect(impedance.estimate).toBeCloseTo(254.26, 2);
    expect(impedance.standardUncertainty).toBeCloseTo(0.24, 2);
  });

  test("rounded inputs: r(R, X) = −0.59 and r(R, Z) = −0.49", () => {
    expect(published("GUM H.2 rounded")).toContain("r(R,X)=-.59 r(R,Z)=-.49");
    const between = (second: typeof reactance) =>
      resultCorrelation({ inputs, correlations, first: resistance, second });
    expect(between(reactance)).toBeCloseTo(-0.59, 2);
    expect(between(impedance)).toBeCloseTo(-0.49, 2);
  });

  test("JCGM 100 5.1.2: uncorrelated quotient by the closed formula", () => {
    const z = propagateUncertainty({ inputs, formula: ([v = 0, i = 1]) => v / i });
    const closed = (4.999 / 0.019661) * Math.hypot(0.0032 / 4.999, 9.5e-6 / 0.019661);
    expect(z.standardUncertainty).toBeCloseTo(closed, 5);
  });
});

test("JCGM 100:2008 table H.2, five readings each (inputs from memory): R, X, Z, their u and r", () => {
  const row = publishedRows("uncertainty.csv", 7).find((candidate) => candidate["case"] === "GUM H.2 raw");
  const readings = (row?.["inputs"] ?? "").split(";").map((part) => (part.match(/\d+\.\d+/g) ?? []).map(Number));
  expect(readings.map((list) => list.length)).toEqual([5, 5, 5]);
  const [volts = [], milliamps = [], phase = []] = readings;
  const lists = { V: volts, I: milliamps.map((value) => value / 1000), phi: phase };
  const mean = (list: readonly number[]): number => list.reduce((sum, value) => sum + value, 0) / list.length;
  const ofMeans = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((sum, value, i) => sum + (value - mean(a)) * ((b[i] ?? Number.NaN) - mean(b)), 0) / (a.length * 4);
  const u = (list: readonly number[]): number => Math.sqrt(ofMeans(list, list));
  const inputs = Object.entries(lists).map(([name, list]) => normal(name, mean(list), u(list)));
  const pairs = [
    ["V", "I"],
    ["V", "phi"],
    ["I", "phi"],
  ] as const;
  const correlations = pairs.map(([a, b]) => ({
    between: [a, b] as const,
    coefficient: ofMeans(lists[a], lists[b]) / u(lists[a]) / u(lists[b]),
  }));
  const of = (formula: (values: readonly number[]) => number) =>
    propagateUncertainty({ inputs, correlations, formula });
  const r = of(([v = 0, i = 0, phi = 0]) => (v / i) * Math.cos(phi));
  const x = of(([v = 0, i = 0, phi = 0]) => (v / i) * Math.sin(phi));
  const z = of(([v = 0, i = 0]) => v / i);
  const said = published("GUM H.2 raw");
  expect(said).toContain("R=127.732 u=0.071; X=219.847 u=0.295; Z=254.260 u=0.236");
  expect(said).toContain("r(R,X)=-0.588 r(R,Z)=-0.485 r(X,Z)=0.993");
  // One unit of the last printed digit: u(X) is 0.29558 by the derivatives as well, printed 0.295.
  for (const [result, estimate, uncertainty] of [
    [r, 127.732, 0.071],
    [x, 219.847, 0.295],
    [z, 254.26, 0.236],
  ] as const) {
    expect(Math.abs(result.estimate - estimate)).toBeLessThan(0.001);
    expect(Math.abs(result.standardUncertainty - uncertainty)).toBeLessThan(0.001);
  }
  const between = (first: typeof r, second: typeof r): string =>
    resultCorrelation({ inputs, correlations, first, second }).toFixed(3);
  expect([between(r, x), between(r, z), between(x, z)]).toEqual(["-0.588", "-0.485", "0.993"]);
});

describe("instrument maker's question page, percent and counts add", () => {
  test("3 % + 5 counts of 10 µV at 0.5 V is ± 15.05 mV", () => {
    const row = publishedRows("uncertainty.csv", 7).find((candidate) => candidate["inputs"]?.startsWith("3 % + 5"));
    expect(row?.["expected"]).toContain("15.05 mV");
    expect(accuracyBound({ value: 0.5, percent: 3, counts: 5, resolution: 10e-6 })).toBeCloseTo(0.01505, 12);
  });

  test("1 % + 3 counts of 0.1 V at 120 V is ± 1.5 V", () => {
    const row = publishedRows("uncertainty.csv", 7).find((candidate) => candidate["inputs"]?.startsWith("1 % + 3"));
    expect(row?.["expected"]).toContain("1.5 V");
    expect(accuracyBound({ value: 120, percent: 1, counts: 3, resolution: 0.1 })).toBeCloseTo(1.5, 12);
  });
});
