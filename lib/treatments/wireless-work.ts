import type { PriceBook } from "../price-book/article.js";
import { articlesOfClass } from "../price-book/look-up.js";
import { wirelessForDevice } from "../reference/generated/wireless-for-device.js";
import type { LoopDevice, SurveyLoop } from "../survey/survey.js";
import type { WithoutInputWork, Work } from "./treatment.js";

/** Articles and labour that replace some wired devices by wireless ones; `missing` names classes the book lacks. */
export interface WirelessReplacement {
  readonly items: Readonly<Record<string, number>>;
  readonly work: Work;
  readonly radioDevices: number;
  readonly missing: readonly string[];
  readonly words: string;
}

/**
 * Wireless devices for these wired ones: one for each opening, or one for each device where the table says so.
 * The first article of the class in the book is taken; prices decide between kinds of treatment, not here.
 */
export function wirelessReplacement({
  devices,
  book,
}: {
  readonly devices: readonly LoopDevice[];
  readonly book: PriceBook;
}): WirelessReplacement {
  const items: Record<string, number> = {};
  const tasks: { task: string; count: number }[] = [];
  const missing: string[] = [];
  const words: string[] = [];
  for (const { kind, count } of devices) {
    const row = wirelessForDevice.find(({ device }) => device === kind);
    const article = row && articlesOfClass({ book, class: row.class })[0];
    if (!row || !article) {
      missing.push(row?.class ?? `wireless device for ${kind}`);
      continue;
    }
    items[article.code] = (items[article.code] ?? 0) + count;
    tasks.push({ task: row.task, count });
    words.push(`${count} × ${article.description}${row.note === "" ? "" : ` (${row.note})`}`);
  }
  const radioDevices = Object.values(items).reduce((sum, count) => sum + count, 0);
  return { items, work: { tasks, parts: [] }, radioDevices, missing, words: words.join(", ") };
}

/** The loop leaves the wire: a wireless device per opening or detector, each commissioned and walk-tested. */
export function wirelessWork({
  loop,
  book,
}: {
  readonly loop: SurveyLoop;
  readonly book: PriceBook;
}): WithoutInputWork | { readonly missing: readonly string[] } {
  const replacement = wirelessReplacement({ devices: loop.devices, book });
  if (replacement.missing.length > 0 || replacement.radioDevices === 0) return { missing: replacement.missing };
  const tasks = [
    ...replacement.work.tasks,
    { task: "commissionZone", count: 1 },
    { task: "walkTestOpening", count: loop.openings.count },
  ];
  return {
    kind: "wireless",
    treatment: "wireless",
    work: { tasks, parts: [] },
    items: replacement.items,
    radioDevices: replacement.radioDevices,
    why: replacement.words,
  };
}
