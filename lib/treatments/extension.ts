import type { PriceBook } from "../price-book/article.js";
import type { JobSettings } from "../price-book/job-settings.js";
import { articlesOfClass } from "../price-book/look-up.js";
import { metersPerUnit } from "../quantities/length-unit.js";
import type { SurveyLoop } from "../survey/survey.js";
import { assumedLoop } from "./terminated-loop.js";
import { noWork, type Work } from "./treatment.js";

/**
 * The extension from the old panel's tails to the module: wire never thinner than the pair (and 20 AWG where the pair
 * already takes half of the conductor limit), 2 m slack at each end, 2 splices for each pair; waste is added when the
 * whole order is cut.
 */
export function extensionWork({
  loop,
  conductorOhms,
  conductorLimitOhms,
  book,
  settings,
}: {
  readonly loop: SurveyLoop;
  readonly conductorOhms: number;
  readonly conductorLimitOhms: number;
  readonly book: PriceBook;
  readonly settings: JobSettings;
}): Work {
  if (settings.extensionMeters === 0) return noWork;
  const pairGauge = loop.cable?.gaugeAwg ?? assumedLoop.gaugeAwg;
  const thickest = conductorOhms > conductorLimitOhms / 2 ? Math.min(pairGauge, 20) : pairGauge;
  const conductors = loop.devices.some(({ powered }) => powered) ? 4 : 2;
  const wire = articlesOfClass({ book, class: "wire" })
    .filter((article) => (article.gaugeAwg ?? 99) <= thickest && (article.conductors ?? 0) >= conductors)
    .sort((a, b) => (b.gaugeAwg ?? 0) - (a.gaugeAwg ?? 0) || (a.conductors ?? 0) - (b.conductors ?? 0))[0];
  const splice = articlesOfClass({ book, class: "drySplice" })[0];
  const meters = settings.extensionMeters + 2 * settings.slackMeters;
  const perUnit = metersPerUnit(wire?.unit ?? "m") ?? 1;
  return {
    tasks: [{ task: "extendPair", count: 1 }],
    parts: [
      ...(wire
        ? [
            {
              code: wire.code,
              quantity: meters / perUnit,
              rule: `${settings.extensionMeters} m + ${settings.slackMeters} m slack each end`,
            },
          ]
        : []),
      ...(splice
        ? [{ code: splice.code, quantity: conductors, rule: "one for each conductor of the extended pair" }]
        : []),
    ],
  };
}
