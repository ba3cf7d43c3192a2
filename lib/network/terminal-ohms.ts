import { reducedNetwork } from "./reduced-network.js";
import type { ResistorNetwork } from "./resistor-network.js";

/** A resistance above this reads as open. [Ω] */
const OPEN_ABOVE_OHMS = 1e9;
/** So that a part of exactly 1 GΩ stays a resistance after rounding. */
const ROUNDING = 1 + 1e-13;

/** Nodes sorted by how many neighbours they have; an entry may be out of date and is checked when it comes up. */
class FewestNeighboursFirst {
  private readonly shelves: number[][] = [];

  put(node: number, neighbours: number): void {
    const shelf = this.shelves[neighbours] ?? [];
    shelf.push(node);
    this.shelves[neighbours] = shelf;
  }

  take(neighboursOf: (node: number) => number | undefined): number | undefined {
    for (let count = 0; count < this.shelves.length; count++) {
      const shelf = this.shelves[count] ?? [];
      for (let node = shelf.pop(); node !== undefined; node = shelf.pop()) {
        if (neighboursOf(node) === count) return node;
      }
    }
    return undefined;
  }
}

/** Star–mesh: takes one node out, g_ij += g_i·g_j/Σg. Nothing is subtracted, so no digits are lost. */
function eliminate(node: number, siemens: Map<number, Map<number, number>>): readonly number[] {
  const spokes = [...(siemens.get(node) ?? [])];
  const total = spokes.reduce((sum, [, g]) => sum + g, 0);
  siemens.delete(node);
  for (const [end] of spokes) siemens.get(end)?.delete(node);
  for (const [i, [from, g]] of spokes.entries()) {
    for (const [to, h] of spokes.slice(i + 1)) {
      const added = g * (h / total);
      siemens.get(from)?.set(to, (siemens.get(from)?.get(to) ?? 0) + added);
      siemens.get(to)?.set(from, (siemens.get(to)?.get(from) ?? 0) + added);
    }
  }
  return spokes.map(([end]) => end);
}

/**
 * Resistance a meter shows between two nodes of any resistor network: series, parallel, bridges, leaks, open contacts
 * (`ohms: Infinity`), nodes that hang in the air. `Infinity` above 1 GΩ, 0 when both leads stand on one node. [Ω]
 *
 * Parts of 0 Ω are merged, parallel parts added, then the nodes eliminated by star–mesh transformation, those with the
 * fewest neighbours first (a dead end and a series pair are its cases of one and two neighbours). Right to 1e-9
 * relative for parts of 1 mΩ to 1 GΩ.
 * @throws {@link InputError} for a negative or not-a-number resistance, or a node without a name.
 * @example terminalOhms({ probe: ["a", "b"], elements: [{ from: "a", to: "b", ohms: 100 }, { from: "a", to: "b", ohms: 250 }] }); // 71.43
 */
export function terminalOhms(network: ResistorNetwork): number {
  const { first, second, siemens } = reducedNetwork(network);
  if (first === second) return 0;
  if (!siemens.has(second)) return Number.POSITIVE_INFINITY;
  const queue = new FewestNeighboursFirst();
  const isInner = (node: number) => node !== first && node !== second;
  for (const [node, row] of siemens) if (isInner(node)) queue.put(node, row.size);
  const neighboursOf = (node: number) => siemens.get(node)?.size;
  for (let node = queue.take(neighboursOf); node !== undefined; node = queue.take(neighboursOf)) {
    for (const changed of eliminate(node, siemens)) {
      if (isInner(changed)) queue.put(changed, neighboursOf(changed) ?? 0);
    }
  }
  const conductance = siemens.get(first)?.get(second) ?? 0;
  const ohms = 1 / conductance;
  return ohms > OPEN_ABOVE_OHMS * ROUNDING ? Number.POSITIVE_INFINITY : ohms;
}
