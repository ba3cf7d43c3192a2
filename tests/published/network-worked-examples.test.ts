import { describe, expect, it } from "vitest";
import { solveLinear } from "../../lib/linear-algebra/solve-linear.js";
import { loopTerminalOhms } from "../../lib/network/loop-network.js";
import type { NetworkElement } from "../../lib/network/resistor-network.js";
import { terminalOhms } from "../../lib/network/terminal-ohms.js";
import { terminalOhmsByNodalAnalysis } from "../../lib/network/terminal-ohms-by-nodal-analysis.js";
import { publishedRows } from "./published-rows.js";

const rows = publishedRows("worked-examples.csv", 12);

function example(id: string): Record<string, string> {
  const row = rows.find((candidate) => candidate["id"] === id);
  if (row === undefined) throw new Error(`${id} is not among the worked examples`);
  return row;
}

/** All numbers of one printed cell, with k, M and m multipliers; "11.2" before a full stop is 11.2. */
function numbers(text: string | undefined): number[] {
  const factors: Record<string, number> = { k: 1e3, M: 1e6, m: 1e-3 };
  const found = [...(text ?? "").matchAll(/(\d*\.?\d+)\s?([kM](?![a-zA-Z])|m(?=A))?/g)];
  return found.map((match) => Number(match[1]) * (factors[match[2] ?? ""] ?? 1));
}

function at(list: readonly number[], index: number): number {
  const value = list[index];
  if (value === undefined) throw new Error(`number ${index + 1} is missing`);
  return value;
}

const element = (from: string, to: string, ohms: number): NetworkElement => ({ from, to, ohms });

function bothWays(elements: readonly NetworkElement[]): number {
  const network = { probe: ["a", "b"], elements } as const;
  const ohms = terminalOhms(network);
  expect(terminalOhmsByNodalAnalysis({ ...network, solve: solveLinear })).toBeCloseTo(ohms, 9);
  return ohms;
}

describe("equivalent resistance of the worked circuits of Lessons In Electric Circuits, vol. I", () => {
  it("chapter 5, series: 9 V over 3k + 10k + 5k drives 0.5 mA", () => {
    const row = example("lec-series");
    const [volts = 0, r1 = 0, r2 = 0, r3 = 0] = numbers(row["inputs"]);
    const amps = at(numbers(row["expected"]), 0);
    expect(amps).toBe(0.5e-3);
    expect(bothWays([element("a", "m", r1), element("m", "n", r2), element("n", "b", r3)])).toBeCloseTo(
      volts / amps,
      9,
    );
  });

  it("chapter 5, parallel: 9 V over 10k, 2k and 1k drives 0.9, 4.5 and 9 mA", () => {
    const row = example("lec-parallel");
    const [volts = 0, ...ohms] = numbers(row["inputs"]);
    // The printed cell gives the unit once, behind the last of the three currents.
    const amps = numbers(row["expected"]?.replace(/mA/, "")).reduce((sum, milliamps) => sum + milliamps / 1000, 0);
    expect(ohms).toHaveLength(3);
    expect(amps).toBeCloseTo(14.4e-3, 12);
    expect(bothWays(ohms.map((value) => element("a", "b", value)))).toBeCloseTo(volts / amps, 9);
  });

  it("chapter 7, series-parallel: 24 V over (100 ∥ 250) + (350 ∥ 200) drives 120.78 mA (exact 120.784314)", () => {
    const row = example("lec-sp");
    const [volts = 0, r1 = 0, r2 = 0, r3 = 0, r4 = 0] = numbers(row["inputs"]);
    const exactAmps = at(numbers(row["tolerance_note"]), 0);
    const ohms = bothWays([element("a", "m", r1), element("a", "m", r2), element("m", "b", r3), element("m", "b", r4)]);
    expect((volts / ohms) * 1000).toBeCloseTo(exactAmps * 1000, 5);
    expect(((volts / ohms) * 1000).toFixed(2)).toBe("120.78");
  });

  it("chapter 10, unbalanced bridge: 24 V over 150, 50, 100, 300, 250 drives 136.092 mA", () => {
    const row = example("lec-bridge");
    const [volts = 0, r1 = 0, r2 = 0, r3 = 0, r4 = 0, r5 = 0] = numbers(row["inputs"]);
    const printed = numbers(row["expected"]);
    const ohms = bothWays([
      element("a", "l", r1),
      element("a", "r", r2),
      element("l", "r", r3),
      element("l", "b", r4),
      element("r", "b", r5),
    ]);
    expect(volts / ohms).toBeCloseTo(at(printed, printed.length - 1), 6);
  });

  it("chapter 10, second bridge: the printed branch voltages of 12, 18, 6, 18, 12 at 10 V give the total", () => {
    const row = example("lec-bridge2");
    const [volts = 0, r1 = 0, r2 = 0, r3 = 0, r4 = 0, r5 = 0] = numbers(row["inputs"]);
    const [v1 = 0, v2 = 0] = numbers(row["expected"]);
    const ohms = bothWays([
      element("a", "l", r1),
      element("a", "r", r2),
      element("l", "r", r3),
      element("l", "b", r4),
      element("r", "b", r5),
    ]);
    const amps = v1 / r1 + v2 / r2;
    // Four printed digits.
    expect(Math.abs(ohms / (volts / amps) - 1)).toBeLessThan(2e-4);
  });

  it("chapter 10, two sources: the Thévenin resistance of 4 Ω and 1 Ω is 0.8 Ω", () => {
    expect(example("lec-two-source")["expected"]).toContain("Thevenin 11.2 V 0.8 ohm");
    expect(bothWays([element("a", "b", 4), element("a", "b", 1)])).toBeCloseTo(0.8, 12);
  });

  it("chapter 8, meter loading: 250 MΩ beside a 10 MΩ meter is 9.615 MΩ", () => {
    const row = example("lec-meterload");
    const [, upper = 0, , meter = 0] = numbers(row["inputs"]);
    const printed = at(numbers(row["expected"]), 0);
    expect(Math.abs(bothWays([element("a", "b", upper), element("a", "b", meter)]) / printed - 1)).toBeLessThan(5e-5);
  });
});

describe("a contact loop worked with ngspice 39: 16.14 out, 0.1 contact, 2200 EOL, 16.14 back, 100k leak", () => {
  it("leak across the terminals: pulled up by 680 Ω to 5 V it takes 1.7460337888 mA", () => {
    const row = example("contact-loop-eol");
    const [volts = 0, pullUp = 0, out = 0, contact = 0, eol = 0, back = 0, leak = 0] = numbers(row["inputs"]);
    const amps = Number(/i=([\d.]+)\s?mA/.exec(row["expected"] ?? "")?.[1]) / 1000;
    const loop = loopTerminalOhms({
      pairOhms: [out + back],
      openings: [{ contactOhms: contact, form: "NC" }],
      eol: { place: "end", ohms: eol },
      faults: [{ kind: "leak", place: 0, ohms: leak }],
    });
    expect(volts / (pullUp + loop)).toBeCloseTo(amps, 13);
  });
});
