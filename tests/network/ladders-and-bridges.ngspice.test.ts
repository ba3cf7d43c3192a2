import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type LoopWiring, loopNetwork } from "../../lib/network/loop-network.js";
import type { NetworkElement, ResistorNetwork } from "../../lib/network/resistor-network.js";
import { terminalOhms } from "../../lib/network/terminal-ohms.js";

/** Small generator of our own (Park and Miller), so that a failure can be repeated. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** The resistances that ngspice finds for many networks in one run: 1 A into each, the volts are the ohms. */
function ngspiceOhms(networks: readonly ResistorNetwork[]): readonly number[] {
  const folder = mkdtempSync(join(tmpdir(), "loop-network-"));
  try {
    const lines = networks.flatMap(({ probe, elements }, n) => {
      const name = (node: string | number) => (String(node) === String(probe[1]) ? "0" : `n${n}_${node}`);
      return [
        `i${n} 0 ${name(probe[0])} dc 1`,
        ...elements.map(({ from, to, ohms }, e) => `r${n}_${e} ${name(from)} ${name(to)} ${ohms.toExponential(16)}`),
      ];
    });
    const prints = networks.map(({ probe }, n) => `print v(n${n}_${probe[0]})`);
    const deck = [
      "* terminal resistances",
      ...lines,
      ".options reltol=1e-12 gmin=1e-24",
      ".control",
      "set numdgt=14",
      "op",
      ...prints,
      "quit 0",
      ".endc",
      ".end",
      "",
    ];
    writeFileSync(join(folder, "deck.cir"), deck.join("\n"));
    const out = execFileSync("/usr/bin/ngspice", ["-b", join(folder, "deck.cir")], {
      encoding: "utf8",
      stdio: ["ignore", "pipe", "ignore"],
    });
    const found = new Map(
      [...out.matchAll(/^v\(n(\d+)_\S+\) = (\S+)/gm)].map((match) => [Number(match[1]), Number(match[2])]),
    );
    return networks.map((_, n) => found.get(n) ?? Number.NaN);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function compare(networks: readonly ResistorNetwork[], least: number): void {
  expect(networks.length).toBeGreaterThanOrEqual(least);
  const theirs = ngspiceOhms(networks);
  for (const [n, network] of networks.entries()) {
    const ours = terminalOhms(network);
    expect(Number.isFinite(ours)).toBe(true);
    expect(Math.abs(ours / (theirs[n] ?? Number.NaN) - 1), `network ${n}: ${JSON.stringify(network)}`).toBeLessThan(
      1e-6,
    );
  }
}

describe("terminal resistance against ngspice, 1e-6", () => {
  it("random ladders of 1 to 12 rungs, 0.1 Ω to 100 kΩ", () => {
    const random = generator(20_260_422);
    const ohms = () => 10 ** (6 * random() - 1);
    const ladders = Array.from({ length: 150 }, (): ResistorNetwork => {
      const rungs = 1 + Math.floor(12 * random());
      const elements = Array.from({ length: rungs }, (_, i): NetworkElement[] => [
        { from: `t${i}`, to: `t${i + 1}`, ohms: ohms() },
        { from: `u${i}`, to: `u${i + 1}`, ohms: ohms() },
        { from: `t${i + 1}`, to: `u${i + 1}`, ohms: ohms() },
      ]).flat();
      return { probe: ["t0", "u0"], elements };
    });
    compare(ladders, 150);
  });

  it("random bridges: 5 to 8 nodes with half of all pairs joined", () => {
    const random = generator(7_654_321);
    const bridges = Array.from({ length: 150 }, (): ResistorNetwork => {
      const nodes = 5 + Math.floor(4 * random());
      const pairs = Array.from({ length: nodes }, (_, i) =>
        Array.from({ length: i }, (_, j) => [i, j] as const),
      ).flat();
      // Neighbouring numbers are always joined, so that no node hangs in the air (ngspice refuses such).
      const joined = pairs.filter(([i, j]) => i - j === 1 || random() < 0.5);
      const elements = joined.map(([i, j]) => ({ from: i, to: j, ohms: 10 ** (5 * random() - 1) }));
      return { probe: [nodes - 1, 0], elements };
    });
    compare(bridges, 150);
  });

  it("contact loops with joints, leaks, resistors across contacts, some openings open", () => {
    const random = generator(99_991);
    const loops = Array.from({ length: 100 }, (): ResistorNetwork => {
      const count = 1 + Math.floor(6 * random());
      const wiring: LoopWiring = {
        pairOhms: Array.from({ length: count + 1 }, () => 0.5 + 4 * random()),
        spliceOhms: Array.from({ length: count + 1 }, () => 0.01 + 0.05 * random()),
        openings: Array.from({ length: count }, () => ({
          contactOhms: 0.05 + 0.2 * random(),
          form: "NC" as const,
          acrossOhms: 1000 + 9000 * random(),
        })),
        eol: { place: "end", ohms: 1000 + 9000 * random() },
        faults: [
          { kind: "joint", place: 1 + Math.floor(count * random()), ohms: 100 * random() },
          { kind: "leak", place: 1 + Math.floor(count * random()), ohms: 1e4 + 1e5 * random() },
        ],
      };
      const open = Array.from({ length: count }, (_, i) => i + 1).filter(() => random() < 0.4);
      const { probe, elements } = loopNetwork(wiring, open);
      // ngspice knows neither open contacts nor 0 Ω, so both sides get 1 mΩ in place of 0 Ω.
      const known = elements
        .filter(({ ohms }) => Number.isFinite(ohms))
        .map((e) => ({ ...e, ohms: Math.max(e.ohms, 1e-3) }));
      return { probe, elements: known };
    });
    compare(loops, 100);
  });
});
