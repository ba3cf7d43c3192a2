/** How many of each article one loop may need. */
export interface LoopOutcome {
  /** 0 to 1; the outcomes of a loop add to 1. */
  readonly probability: number;
  readonly items: readonly { readonly code: string; readonly quantity: number }[];
}

/** Joint distribution of the counts of some articles that loops tie together. */
export interface JointCounts {
  readonly codes: readonly string[];
  /** Counts in the order of the codes, with their probability; probabilities add to 1. */
  readonly states: readonly { readonly counts: readonly number[]; readonly probability: number }[];
}

/** Most joint states kept; above it the joint distribution is not worked out. */
export const MOST_STATES = 30_000;

/**
 * Exact joint distribution of the counts: the loops' outcomes convolved one loop after the other. Articles that no
 * loop ties together are independent and come apart into separate distributions. A group with more than
 * {@link MOST_STATES} states comes back as its separate articles, `tied: true`.
 */
export function jointCounts(loops: readonly { readonly outcomes: readonly LoopOutcome[] }[]): {
  readonly groups: readonly JointCounts[];
  /** Groups of articles that are not independent but too large for their joint distribution. */
  readonly tied: readonly (readonly JointCounts[])[];
} {
  const groups: JointCounts[] = [];
  const tied: JointCounts[][] = [];
  for (const codes of components(loops)) {
    const own = loops.filter(({ outcomes }) =>
      outcomes.some(({ items }) => items.some(({ code }) => codes.includes(code))),
    );
    const joint = convolve(codes, own);
    if (joint) groups.push(joint);
    else {
      const apart = codes.map((code) => convolve([code], own));
      tied.push(apart.filter((one) => one !== undefined));
    }
  }
  return { groups, tied };
}

/** Articles in groups: two are together when outcomes of one loop name both. */
function components(loops: readonly { readonly outcomes: readonly LoopOutcome[] }[]): string[][] {
  const group = new Map<string, string[]>();
  for (const { outcomes } of loops) {
    const codes = [...new Set(outcomes.flatMap(({ items }) => items.map(({ code }) => code)))];
    const merged = [...new Set(codes.flatMap((code) => group.get(code) ?? [code]))];
    for (const code of merged) group.set(code, merged);
  }
  return [...new Set(group.values())].map((codes) => [...codes].sort());
}

function convolve(
  codes: readonly string[],
  loops: readonly { readonly outcomes: readonly LoopOutcome[] }[],
): JointCounts | undefined {
  let states = new Map<string, { counts: number[]; probability: number }>();
  states.set("", { counts: codes.map(() => 0), probability: 1 });
  for (const { outcomes } of loops) {
    const next = new Map<string, { counts: number[]; probability: number }>();
    for (const { probability, items } of outcomes) {
      if (probability === 0) continue;
      const add = codes.map((code) => items.reduce((sum, item) => (item.code === code ? sum + item.quantity : sum), 0));
      for (const state of states.values()) {
        const counts = state.counts.map((count, index) => count + (add[index] ?? 0));
        const key = counts.join();
        const known = next.get(key);
        if (known) known.probability += state.probability * probability;
        else next.set(key, { counts, probability: state.probability * probability });
      }
    }
    if (next.size > MOST_STATES) return undefined;
    states = next;
  }
  return { codes, states: [...states.values()] };
}
