import { draws } from "./random.js";

/** How the trees are grown. */
export interface Growth {
  readonly rounds: number;
  /** Levels of splits in one tree. */
  readonly depth: number;
  /** Share of each tree's answer that is taken. [1] */
  readonly step: number;
  readonly seed: number;
}

/** A grown classifier: class probabilities of each row. */
export type Classifier = (rows: readonly (readonly number[])[]) => readonly Float64Array[];

const binCount = 48;
/** Added to every second derivative: keeps small leaves near 0. */
const ridge = 2;
const rowShare = 0.7;
const columnShare = 0.5;

/** Complete binary tree: place n splits at `features[n] <= bins[n]` into places 2n + 1 and 2n + 2. */
interface Tree {
  readonly features: Int32Array;
  readonly bins: Uint8Array;
  readonly leaves: Float64Array;
}

/**
 * Gradient-boosted trees for many classes: softmax, second-order steps, features in 48 quantile bins, each tree from a
 * random 70 % of the rows and half of the features (Friedman 2001 and 2002; Chen and Guestrin 2016, section 2).
 * Repeatable by its seed. Knows nothing of loops.
 */
export function growTrees(
  rows: readonly (readonly number[])[],
  classes: readonly number[],
  { rounds, depth, step, seed }: Growth,
): Classifier {
  const draw = draws(seed);
  const edges = binEdges(rows);
  const columns = binned(rows, edges);
  const count = Math.max(...classes) + 1;
  const scores = Array.from({ length: count }, () => new Float64Array(rows.length));
  const start = startScores(classes, count);
  scores.forEach((score, k) => void score.fill(start[k] ?? 0));
  const forest: Tree[][] = [];
  for (let round = 0; round < rounds; round += 1) {
    const chances = softmaxed(scores, rows.length);
    const kept = Int32Array.from(rows.keys()).filter(() => draw.chance(rowShare));
    const trees = chances.map((chance, k) => {
      const chosen = [...columns.keys()].filter(() => draw.chance(columnShare));
      const pull = chance.map((p, i) => p - (classes[i] === k ? 1 : 0));
      const tree = growTree({ columns, chosen, kept, pull, chance, depth, step });
      addTree(scores[k], tree, columns, depth);
      return tree;
    });
    forest.push(trees);
  }
  return (fresh) => {
    const place = binned(fresh, edges);
    const sums = Array.from({ length: count }, (_, k) => new Float64Array(fresh.length).fill(start[k] ?? 0));
    for (const trees of forest) trees.forEach((tree, k) => void addTree(sums[k], tree, place, depth));
    const chances = softmaxed(sums, fresh.length);
    return fresh.map((_, i) => Float64Array.from(chances, (chance) => chance[i] ?? 0));
  };
}

function binEdges(rows: readonly (readonly number[])[]): readonly (readonly number[])[] {
  return (rows[0] ?? []).map((_, f) => {
    const values = rows.map((row) => row[f] ?? 0).sort((a, b) => a - b);
    const cuts = Array.from(
      { length: binCount - 1 },
      (_, b) => values[Math.floor(((b + 1) * values.length) / binCount)],
    );
    return [...new Set(cuts)].filter((cut): cut is number => cut !== undefined && cut > (values[0] ?? 0));
  });
}

/** `[feature][row]`: how many edges the value reaches. */
function binned(rows: readonly (readonly number[])[], edges: readonly (readonly number[])[]): readonly Uint8Array[] {
  return edges.map((cuts, f) =>
    Uint8Array.from(rows, (row) => {
      const value = row[f] ?? 0;
      let low = 0;
      let high = cuts.length;
      while (low < high) {
        const middle = (low + high) >> 1;
        if (value >= (cuts[middle] ?? 0)) low = middle + 1;
        else high = middle;
      }
      return low;
    }),
  );
}

function startScores(classes: readonly number[], count: number): readonly number[] {
  const seen = new Float64Array(count).fill(0.5);
  for (const k of classes) seen[k] = (seen[k] ?? 0) + 1;
  return [...seen].map((n) => Math.log(n / classes.length));
}

function softmaxed(scores: readonly Float64Array[], rows: number): readonly Float64Array[] {
  const chances = scores.map(() => new Float64Array(rows));
  for (let i = 0; i < rows; i += 1) {
    let highest = Number.NEGATIVE_INFINITY;
    for (const score of scores) highest = Math.max(highest, score[i] ?? 0);
    let total = 0;
    for (const [k, score] of scores.entries()) {
      const weight = Math.exp((score[i] ?? 0) - highest);
      total += weight;
      const chance = chances[k];
      if (chance) chance[i] = weight;
    }
    for (const chance of chances) chance[i] = (chance[i] ?? 0) / total;
  }
  return chances;
}

interface Growing {
  readonly columns: readonly Uint8Array[];
  readonly chosen: readonly number[];
  readonly kept: Int32Array;
  /** First derivative of the loss by row, and the chance that gives the second. */
  readonly pull: Float64Array;
  readonly chance: Float64Array;
  readonly depth: number;
  readonly step: number;
}

function growTree({ columns, chosen, kept, pull, chance, depth, step }: Growing): Tree {
  const inner = 2 ** depth - 1;
  const features = new Int32Array(inner).fill(-1);
  const bins = new Uint8Array(inner);
  const node = new Int32Array(pull.length);
  for (let level = 0; level < depth; level += 1) {
    const width = 2 ** level;
    const gains = new Float64Array(width).fill(1e-3);
    const first = new Float64Array(width * binCount);
    const second = new Float64Array(width * binCount);
    for (const f of chosen) {
      const column = columns[f];
      if (column === undefined) continue;
      first.fill(0);
      second.fill(0);
      for (let r = 0; r < kept.length; r += 1) {
        const i = kept[r] ?? 0;
        const k = (node[i] ?? 0) * binCount + (column[i] ?? 0);
        const p = chance[i] ?? 0;
        first[k] = (first[k] ?? 0) + (pull[i] ?? 0);
        second[k] = (second[k] ?? 0) + p * (1 - p);
      }
      for (let n = 0; n < width; n += 1) {
        const { gain, bin } = bestSplit(first, second, n * binCount);
        if (gain <= (gains[n] ?? 0)) continue;
        gains[n] = gain;
        features[width - 1 + n] = f;
        bins[width - 1 + n] = bin;
      }
    }
    for (let r = 0; r < kept.length; r += 1) {
      const i = kept[r] ?? 0;
      const n = node[i] ?? 0;
      node[i] = 2 * n + goesRight(features, bins, width - 1 + n, columns, i);
    }
  }
  const leaves = new Float64Array(2 ** depth);
  const weights = new Float64Array(2 ** depth);
  for (let r = 0; r < kept.length; r += 1) {
    const i = kept[r] ?? 0;
    const n = node[i] ?? 0;
    const p = chance[i] ?? 0;
    leaves[n] = (leaves[n] ?? 0) - (pull[i] ?? 0);
    weights[n] = (weights[n] ?? 0) + p * (1 - p);
  }
  return { features, bins, leaves: leaves.map((sum, n) => (step * sum) / ((weights[n] ?? 0) + ridge)) };
}

function bestSplit(first: Float64Array, second: Float64Array, from: number): { gain: number; bin: number } {
  let all = 0;
  let weight = 0;
  for (let b = 0; b < binCount; b += 1) {
    all += first[from + b] ?? 0;
    weight += second[from + b] ?? 0;
  }
  const whole = (all * all) / (weight + ridge);
  let left = 0;
  let leftWeight = 0;
  let best = { gain: 0, bin: 0 };
  for (let b = 0; b < binCount - 1; b += 1) {
    left += first[from + b] ?? 0;
    leftWeight += second[from + b] ?? 0;
    const right = all - left;
    const gain = (left * left) / (leftWeight + ridge) + (right * right) / (weight - leftWeight + ridge) - whole;
    if (gain > best.gain) best = { gain, bin: b };
  }
  return best;
}

function goesRight(
  features: Int32Array,
  bins: Uint8Array,
  place: number,
  columns: readonly Uint8Array[],
  row: number,
): 0 | 1 {
  const feature = features[place] ?? -1;
  return feature >= 0 && (columns[feature]?.[row] ?? 0) > (bins[place] ?? 0) ? 1 : 0;
}

function addTree(score: Float64Array | undefined, tree: Tree, columns: readonly Uint8Array[], depth: number): void {
  if (score === undefined) return;
  for (let i = 0; i < score.length; i += 1) {
    let n = 0;
    for (let level = 0; level < depth; level += 1) {
      n = 2 * n + goesRight(tree.features, tree.bins, 2 ** level - 1 + n, columns, i);
    }
    score[i] = (score[i] ?? 0) + (tree.leaves[n] ?? 0);
  }
}
