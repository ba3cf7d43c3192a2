import { evidenceOf } from "./evidence.js";
import { factsOf, type Gate } from "./facts.js";
import type { JudgeModel } from "./judge-model.js";
import type { LoopRecord } from "./loop-record.js";

/** What may stand on a return, the gravest first. */
const gravest = ["lifeSafety", "hold", "foreignVolts"] as const;
type Bears = (typeof gravest)[number];
type BearingLoop = NonNullable<LoopRecord["returnBears"]>;

/**
 * The records of one job, each with what stands on the loops that share its return: whoever lifts one conductor of such
 * a loop lifts the other's too. A return named on one side counts for both, and through several loops.
 */
export function withSharedReturns(records: readonly LoopRecord[], model: JudgeModel): readonly LoopRecord[] {
  const partners = partnersOf(records);
  if (partners.size === 0) return records;
  const gates = new Map<number, Gate>();
  const gateOf = (index: number): Gate => {
    const known = gates.get(index);
    if (known !== undefined) return known;
    const record = records[index];
    if (record === undefined) return "none";
    const { taken, base } = evidenceOf(record, model);
    const { gate } = factsOf(record, taken, base, model);
    gates.set(index, gate);
    return gate;
  };
  return records.map((record, index): LoopRecord => {
    const others = partners.get(index);
    if (others === undefined) return record;
    const found = gravest.flatMap((what) => {
      const other = others.find((one) => gateOf(one) === what);
      return other === undefined ? [] : [bearing(what, records[other])];
    })[0];
    return found === undefined ? record : { ...record, returnBears: found };
  });
}

const bearing = (what: Bears, loop: LoopRecord | undefined): BearingLoop => ({
  what,
  loop: loop?.label ?? loop?.id ?? "another loop",
});

/** Loops on one return by index, each with all the others on it; loops that share none are absent. */
function partnersOf(records: readonly LoopRecord[]): ReadonlyMap<number, readonly number[]> {
  const byId = new Map(records.map(({ id }, index) => [id, index]));
  const neighbours = new Map<number, Set<number>>();
  const link = (a: number, b: number) => neighbours.set(a, (neighbours.get(a) ?? new Set()).add(b));
  records.forEach((record, index) => {
    for (const id of record.returnSharedWith ?? []) {
      const other = byId.get(id);
      if (other === undefined || other === index) continue;
      link(index, other);
      link(other, index);
    }
  });
  const partners = new Map<number, readonly number[]>();
  for (const start of neighbours.keys()) {
    const reached = new Set([start]);
    for (const at of reached) for (const next of neighbours.get(at) ?? []) reached.add(next);
    partners.set(
      start,
      [...reached].filter((index) => index !== start).sort((a, b) => a - b),
    );
  }
  return partners;
}
