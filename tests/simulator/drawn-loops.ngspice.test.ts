import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type BuiltLoop, loopElements, loopOhms } from "./loop-network.js";
import { draws } from "./random.js";
import { drawnLoops } from "./simulate.js";

interface Measured {
  readonly loop: BuiltLoop;
  readonly opened: readonly number[];
}

/** A piece of the network that no path leads to hangs on the far terminal by this, or ngspice finds no voltage. [Ω] */
const hanging = 1e10;

/** Terminals o0 and b0, nodes joined by 0 Ω made one, broken conductors left out. */
function netlist({ loop, opened }: Measured, n: number): readonly string[] {
  const elements = loopElements(loop, opened);
  const one = new Map<string, string>();
  const top = (node: string): string => (one.has(node) ? top(one.get(node) ?? node) : node);
  for (const { from, to, ohms } of elements) if (ohms === 0 && top(to) !== top(from)) one.set(top(to), top(from));
  const name = (node: string) => (top(node) === "b0" ? "0" : `n${n}_${top(node)}`);
  const real = elements.filter(({ ohms }) => ohms > 0 && Number.isFinite(ohms));
  const pieces = new Map<string, string>();
  const piece = (node: string): string => (pieces.has(node) ? piece(pieces.get(node) ?? node) : node);
  // Ground stays at the top of its own piece.
  const join = (a: string, b: string) => void (a !== b && pieces.set(a === "0" ? b : a, a === "0" ? a : b));
  for (const { from, to } of real) join(piece(name(from)), piece(name(to)));
  const cutOff = new Set(elements.flatMap(({ from, to }) => [piece(name(from)), piece(name(to))]));
  cutOff.delete("0");
  return [
    `i${n} 0 n${n}_o0 dc 1`,
    ...real.map(({ from, to, ohms }, e) => `r${n}_${e} ${name(from)} ${name(to)} ${ohms.toExponential(16)}`),
    ...[...cutOff].map((node, e) => `rh${n}_${e} ${node} 0 ${hanging}`),
  ];
}

/** One ampere into each network in one batch run; the volts are the ohms. */
function ngspiceOhms(measured: readonly Measured[]): readonly number[] {
  const folder = mkdtempSync(join(tmpdir(), "drawn-loops-"));
  try {
    const deck = [
      "* loops as the simulator drew them",
      ...measured.flatMap(netlist),
      ".options reltol=1e-12 gmin=1e-24",
      ".control",
      "set numdgt=14",
      "op",
      ...measured.map((_, n) => `print v(n${n}_o0)`),
      "quit 0",
      ".endc",
      ".end",
      "",
    ];
    writeFileSync(join(folder, "deck.cir"), deck.join("\n"));
    const out = execFileSync("/usr/bin/ngspice", ["-b", join(folder, "deck.cir")], {
      encoding: "utf8",
      stdio: ["ignore", "pipe", "ignore"],
      maxBuffer: 1e8,
    });
    const found = new Map(
      [...out.matchAll(/^v\(n(\d+)_o0\) = (\S+)/gm)].map((match) => [Number(match[1]), Number(match[2])]),
    );
    return measured.map((_, n) => found.get(n) ?? Number.NaN);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Drawn loops of every condition, each shut, with one opening opened, and with a random set of them opened. */
function sample(): { readonly conditions: ReadonlyMap<string, number>; readonly measured: readonly Measured[] } {
  const draw = draws(17);
  const conditions = new Map<string, number>();
  const measured: Measured[] = [];
  for (const { truth, built } of drawnLoops({ seed: 20_261_125, jobs: 90, depth: "all", faultRate: 0.7 })) {
    const so = conditions.get(truth) ?? 0;
    // Read at random, so the network says nothing.
    if (so >= 12 || truth === "unexplained") continue;
    conditions.set(truth, so + 1);
    const all = built.contactOhms.map((_, i) => i + 1);
    measured.push(
      { loop: built, opened: [] },
      { loop: built, opened: [draw.whole(1, all.length)] },
      { loop: built, opened: all.filter(() => draw.chance(0.5)) },
    );
  }
  return { conditions, measured };
}

describe("networks drawn by the simulator against ngspice, 1e-6", () => {
  const { conditions, measured } = sample();
  const networks = measured.length / 3;

  it("at least 100 loops of at least 14 conditions", () => {
    expect(networks).toBeGreaterThanOrEqual(100);
    expect(conditions.size).toBeGreaterThanOrEqual(14);
  });

  it("shut, one opened, some opened: same ohms, and over-range where ngspice finds no path under 1 GΩ", () => {
    const theirs = ngspiceOhms(measured);
    let finite = 0;
    for (const [n, { loop, opened }] of measured.entries()) {
      const ours = loopOhms(loop, opened);
      const ohms = theirs[n] ?? Number.NaN;
      const where = `${JSON.stringify(loop)} opened ${opened.join(", ")}`;
      if (Number.isFinite(ours)) {
        finite += 1;
        expect(Math.abs(ours / ohms - 1), where).toBeLessThan(1e-6);
      } else expect(ohms, where).toBeGreaterThan(1e9);
    }
    expect(finite).toBeGreaterThan(measured.length / 3);
    expect(finite).toBeLessThan(measured.length);
  });
});
