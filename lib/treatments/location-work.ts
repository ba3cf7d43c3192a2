import type { PriceBook } from "../price-book/article.js";
import { articlesOfClass } from "../price-book/look-up.js";
import type { Work } from "./treatment.js";

/** Classes that every place with modules takes one of, and why. */
const once = [
  ["enclosure", "one for each place with modules"],
  ["backing", "one for each place with modules"],
  ["supplyCharger", "one for each place with modules"],
] as const;

/**
 * What a place costs once it holds a module: mounting modules and supply, enclosure, backing, supply with charger,
 * battery of at least `batteryAmpereHours`, a fuse (its spare is added with the bill's spares). Common practice, no source.
 */
export function locationWork({
  book,
  batteryAmpereHours,
}: {
  readonly book: PriceBook;
  /** Least capacity wanted; the smallest stock size that holds it is taken. [Ah] */
  readonly batteryAmpereHours: number;
}): Work {
  const parts: { code: string; quantity: number; rule: string }[] = once.flatMap(([wanted, rule]) => {
    const article = articlesOfClass({ book, class: wanted })[0];
    return article ? [{ code: article.code, quantity: 1, rule }] : [];
  });
  const batteries = [...articlesOfClass({ book, class: "battery" })].sort(
    (a, b) => (a.ampereHours ?? 0) - (b.ampereHours ?? 0),
  );
  const largest = batteries.at(-1)?.ampereHours ?? 0;
  const count = largest > 0 ? Math.max(1, Math.ceil(batteryAmpereHours / largest - 1e-9)) : 1;
  const holds = (ampereHours: number | undefined) => (ampereHours ?? 0) * count >= batteryAmpereHours - 1e-9;
  const battery = batteries.find(({ ampereHours }) => holds(ampereHours)) ?? batteries.at(-1);
  if (battery) {
    const equal = count > 1 ? `, ${count} equal ones in parallel` : "";
    const rule = `at least ${batteryAmpereHours.toFixed(1)} Ah, rounded up to a stock size${equal}`;
    parts.push({ code: battery.code, quantity: count, rule });
  }
  const fuse = articlesOfClass({ book, class: "fuse" })[0];
  if (fuse) parts.push({ code: fuse.code, quantity: 1, rule: "one fitted for each place with modules, as many spare" });
  return { tasks: [{ task: "moduleAndSupplyLocation", count: 1 }], parts };
}
