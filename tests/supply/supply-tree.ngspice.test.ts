import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { SUPPLY_STATES, type SupplyState, type SupplyTreeInput, supplyTree } from "../../lib/supply/supply-tree.js";
import { randomTree } from "./random-tree.js";

/** Node voltages by ngspice: one resistor per leg, one current sink per detector, both legs modelled. */
function ngspiceVolts(tree: SupplyTreeInput, state: SupplyState, folder: string): Map<string, number> {
  const solved = supplyTree(tree);
  const lines = [`supply tree`, `Vs panelp 0 DC ${solved.sourceVolts[state]}`];
  for (const segment of tree.segments) {
    const { id, from, to, meters, conductor, extraOhms = 0 } = segment;
    // 22 AWG has 0.64380 mm; resistivity 1/58 Ω·mm²/m and 0.00393/K (IEC 60028), diameter series of ASTM B258.
    const diameterMm = 0.127 * 92 ** ((36 - (conductor?.gaugeAwg ?? 0)) / 39);
    const perMeter =
      (1 / 58 / ((Math.PI * diameterMm ** 2) / 4)) * (1 + 0.00393 * ((tree.temperatureCelsius ?? 20) - 20));
    const back = from === "panel" ? "0" : `${from}m`;
    lines.push(
      `R${id}p ${from}p ${to}p ${perMeter * meters + extraOhms}`,
      `R${id}m ${back} ${to}m ${perMeter * meters}`,
    );
  }
  for (const { id, at, milliamps } of tree.detectors) lines.push(`I${id} ${at}p ${at}m DC ${milliamps / 1000}`);
  const nodes = tree.segments.map((segment) => segment.to);
  lines.push(".control", "set numdgt=14", "op");
  for (const node of nodes) lines.push(`let q${node} = v(${node}p) - v(${node}m)`, `print q${node}`);
  lines.push("quit 0", ".endc", ".end", "");
  const file = join(folder, "tree.cir");
  writeFileSync(file, lines.join("\n"));
  const output = execFileSync("ngspice", ["-b", file], { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] });
  return new Map([...output.matchAll(/^q(n\d+) = (\S+)/gm)].map((match) => [match[1] ?? "", Number(match[2])]));
}

test("60 random supply trees agree with ngspice within 1e-6 V in all three states", () => {
  const folder = mkdtempSync(join(tmpdir(), "supply-"));
  let compared = 0;
  let worst = 0;
  try {
    for (let seed = 1; seed <= 60; seed++) {
      const tree = randomTree(seed);
      const state = SUPPLY_STATES[seed % 3] ?? "charger";
      const volts = ngspiceVolts(tree, state, folder);
      expect(volts.size).toBe(tree.segments.length);
      for (const node of supplyTree(tree).nodes) {
        const spice = volts.get(node.node);
        // Where the sinks pull a node below 0 V, ours stops at 0: no detector works there.
        if (spice === undefined || spice <= 0) continue;
        worst = Math.max(worst, Math.abs(node.volts[state] - spice));
        compared++;
      }
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
  expect(compared).toBeGreaterThan(200);
  expect(worst).toBeLessThan(1e-6);
});
