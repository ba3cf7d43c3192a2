import { InputError } from "../problems/input-error.js";
import type { NetworkNode, ResistorNetwork } from "./resistor-network.js";

/** Parts below this are joined like 0 Ω: their conductance would leave the number range. [Ω] */
const JOINED_BELOW_OHMS = 1e-150;
/** Parts above this conduct nothing that a resistance up to 1 GΩ could show. [Ω] */
const OPEN_ABOVE_OHMS = 1e150;

/** A network whose 0 Ω parts are merged, open parts dropped, parallel parts added, and dead ends out of reach removed. */
export interface ReducedNetwork {
  readonly first: number;
  readonly second: number;
  /** For each node that both probes reach: its neighbours and the conductance to them. [S] */
  readonly siemens: Map<number, Map<number, number>>;
}

function nodeName(node: NetworkNode, field: string): string {
  if (typeof node === "string" || (typeof node === "number" && Number.isFinite(node))) return String(node);
  throw new InputError({ field, got: String(node), expected: "a node name (text or a finite number)" });
}

/** Groups of nodes joined by 0 Ω parts. */
class JoinedNodes {
  private readonly numbers = new Map<string, number>();
  private readonly parents: number[] = [];

  numberOf(name: string): number {
    const known = this.numbers.get(name);
    if (known !== undefined) return known;
    const fresh = this.parents.length;
    this.numbers.set(name, fresh);
    this.parents.push(fresh);
    return fresh;
  }

  groupOf(node: number): number {
    let at = node;
    for (let parent = this.parents[at] ?? at; parent !== at; parent = this.parents[at] ?? at) {
      this.parents[at] = this.parents[parent] ?? parent;
      at = parent;
    }
    return at;
  }

  join(a: number, b: number): void {
    this.parents[this.groupOf(a)] = this.groupOf(b);
  }
}

function addConductance(siemens: Map<number, Map<number, number>>, a: number, b: number, value: number): void {
  for (const [from, to] of [
    [a, b],
    [b, a],
  ] as const) {
    const row = siemens.get(from) ?? new Map<number, number>();
    row.set(to, (row.get(to) ?? 0) + value);
    siemens.set(from, row);
  }
}

function reachableFrom(start: number, siemens: Map<number, Map<number, number>>): Set<number> {
  const seen = new Set([start]);
  const waiting = [start];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    for (const next of siemens.get(node)?.keys() ?? []) {
      if (seen.has(next)) continue;
      seen.add(next);
      waiting.push(next);
    }
  }
  return seen;
}

/**
 * Merges 0 Ω parts, drops open parts and whatever the first probe does not reach, adds parallel parts.
 * @throws {@link InputError} for a negative or not-a-number resistance, or a probe that is not two nodes.
 */
export function reducedNetwork({ probe, elements }: ResistorNetwork): ReducedNetwork {
  if (!Array.isArray(probe) || probe.length !== 2) {
    throw new InputError({ field: "probe", got: JSON.stringify(probe) ?? "nothing", expected: "two nodes" });
  }
  if (!Array.isArray(elements)) {
    throw new InputError({ field: "elements", got: typeof elements, expected: "a list of {from, to, ohms}" });
  }
  const nodes = new JoinedNodes();
  const ends = probe.map((node, index) => nodes.numberOf(nodeName(node, `probe[${index}]`)));
  const parts = elements.map(({ from, to, ohms }, index) => {
    if (typeof ohms !== "number" || !(ohms >= 0)) {
      throw new InputError({ field: `elements[${index}].ohms`, got: `${String(ohms)} Ω`, expected: "0 Ω or more" });
    }
    const a = nodes.numberOf(nodeName(from, `elements[${index}].from`));
    const b = nodes.numberOf(nodeName(to, `elements[${index}].to`));
    if (ohms < JOINED_BELOW_OHMS) nodes.join(a, b);
    return { a, b, ohms };
  });
  const siemens = new Map<number, Map<number, number>>();
  for (const { a, b, ohms } of parts) {
    const from = nodes.groupOf(a);
    const to = nodes.groupOf(b);
    if (from !== to && ohms < OPEN_ABOVE_OHMS) addConductance(siemens, from, to, 1 / ohms);
  }
  const [first = 0, second = 0] = ends.map((node) => nodes.groupOf(node));
  const reached = reachableFrom(first, siemens);
  for (const node of [...siemens.keys()]) if (!reached.has(node)) siemens.delete(node);
  return { first, second, siemens };
}
