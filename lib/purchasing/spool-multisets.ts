import type { SpoolKind } from "./spool-kinds.js";

/** How many of each kind, with what they cost and hold together. */
export interface SpoolMultiset {
  readonly counts: readonly number[];
  readonly cents: number;
  readonly millimeters: number;
}

interface Queued extends SpoolMultiset {
  /** Kinds before this one are settled, so that every multiset is met once. */
  readonly from: number;
}

const before = (a: Queued, b: Queued): boolean =>
  a.cents !== b.cents ? a.cents < b.cents : a.millimeters !== b.millimeters && a.millimeters < b.millimeters;

/** All multisets of the kinds, in rising cost; among equal cost the shorter first. Starts with the empty one. */
export function* spoolMultisets(kinds: readonly SpoolKind[]): Generator<SpoolMultiset> {
  const heap: Queued[] = [{ counts: kinds.map(() => 0), cents: 0, millimeters: 0, from: 0 }];
  for (let top = pop(heap); top; top = pop(heap)) {
    yield top;
    for (let kind = top.from; kind < kinds.length; kind++) {
      const { cents, millimeters, most } = kinds[kind] ?? { cents: 0, millimeters: 0, most: 0 };
      if ((top.counts[kind] ?? 0) >= most) continue;
      push(heap, {
        counts: top.counts.map((count, index) => (index === kind ? count + 1 : count)),
        cents: top.cents + cents,
        millimeters: top.millimeters + millimeters,
        from: kind,
      });
    }
  }
}

function push(heap: Queued[], item: Queued): void {
  let at = heap.push(item) - 1;
  while (at > 0) {
    const parent = (at - 1) >> 1;
    const above = heap[parent];
    if (!above || !before(item, above)) break;
    heap[at] = above;
    at = parent;
  }
  heap[at] = item;
}

function pop(heap: Queued[]): Queued | undefined {
  const top = heap[0];
  const last = heap.pop();
  if (!top || !last || heap.length === 0) return top;
  let at = 0;
  for (;;) {
    const left = 2 * at + 1;
    const first = heap[left];
    if (!first) break;
    const second = heap[left + 1];
    const child = second && before(second, first) ? left + 1 : left;
    const lower = heap[child];
    if (!lower || !before(lower, last)) break;
    heap[at] = lower;
    at = child;
  }
  heap[at] = last;
  return top;
}
