import type { Plan } from "../plan/plan.js";
import { moneySettings } from "../reference/generated/demo/money-settings.js";

/** What the estimate rests on: sources, assumptions, how far the plan is proved. One sentence each. */
export function basisOf({
  plan,
  assumed,
  demoPrices,
}: {
  readonly plan: Plan;
  /** Settings taken from the demo because the survey gives none. */
  readonly assumed: readonly string[];
  readonly demoPrices: boolean;
}): readonly string[] {
  const borrowed = moneySettings.filter(({ setting }) => assumed.includes(setting));
  return [
    planBasis(plan),
    ...(demoPrices ? ["Prices, stock and suppliers are the demo's: invented."] : []),
    "Wire resistance: gauge series of ASTM B258, copper of IEC 60028 (1/58 Ω·mm²/m at 20 °C), 0.00393 per °C.",
    "Preferred resistor values: IEC 60063; colour bands: IEC 60062.",
    "Priors, repair odds, labour hours and quantity rules: common practice, no source; change them in the survey.",
    "Hours are priced at their PERT mean, (low + 4 · likely + high) / 6.",
    ...(borrowed.length === 0
      ? []
      : [
          `Settings not given, taken from the demo: ${borrowed.map(({ meaning, value, unit }) => `${meaning.toLowerCase()} ${value} ${unit}`).join("; ")}.`,
        ]),
    "Results are estimates from the readings given; a competent person decides. Local codes and licensed practice come first.",
  ];
}

function planBasis({ status, costCents, boundCents }: Plan): string {
  if (status === "optimal") return "Plan: lowest cost for the prices, hours and limits entered, proved.";
  if (boundCents === null || costCents === null) return "Plan: the quick plan, not proved to be the lowest cost.";
  const gap = costCents === 0 ? 0 : ((costCents - boundCents) / costCents) * 100;
  return `Plan: not proved to be the lowest cost; no plan can be more than ${gap.toFixed(1)} % cheaper.`;
}
