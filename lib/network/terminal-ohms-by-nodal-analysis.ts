import { reducedNetwork } from "./reduced-network.js";
import type { ResistorNetwork } from "./resistor-network.js";

/** Solves matrix · x = right side. */
export type SolveLinear = (system: {
  readonly matrix: readonly (readonly number[])[];
  readonly rightSide: readonly number[];
}) => readonly number[];

/**
 * The second opinion on {@link terminalOhms}: node equations G·v = i with 1 A into the first probe and the second at
 * 0 V, solved by the function passed in. [Ω]
 *
 * It subtracts conductances and so loses digits when very small and very large parts meet (about 1e-5 relative with
 * 1 mΩ beside 100 MΩ): a check, not the method to use.
 * @throws {@link InputError} as {@link terminalOhms}
 * @see any circuits course, node voltage method
 */
export function terminalOhmsByNodalAnalysis({ solve, ...network }: ResistorNetwork & { readonly solve: SolveLinear }) {
  const { first, second, siemens } = reducedNetwork(network);
  if (first === second) return 0;
  if (!siemens.has(second)) return Number.POSITIVE_INFINITY;
  const nodes = [...siemens.keys()].filter((node) => node !== second);
  const matrix = nodes.map((row) => {
    const spokes = siemens.get(row) ?? new Map<number, number>();
    const own = [...spokes.values()].reduce((sum, g) => sum + g, 0);
    return nodes.map((column) => (column === row ? own : -(spokes.get(column) ?? 0)));
  });
  const volts = solve({ matrix, rightSide: nodes.map((node) => (node === first ? 1 : 0)) });
  return volts[nodes.indexOf(first)] ?? Number.POSITIVE_INFINITY;
}
