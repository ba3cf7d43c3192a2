import type { JobSettings } from "../price-book/job-settings.js";
import type { Query } from "../problems/query.js";
import { supplyDefault } from "../supply/supply-defaults.js";
import { type PerState, SUPPLY_STATES, type SupplyTreeInput, supplyTree } from "../supply/supply-tree.js";
import type { SurveyLoop } from "../survey/survey.js";
import type { WorkRates } from "../treatments/work-cents.js";
import { placeSupply } from "./supply-battery.js";
import { type NotPriced, type SupplyChoice, supplyCureOffers } from "./supply-cure-offers.js";

/** The supply with the chosen cures, and what every detector that fell short was offered. */
export interface CuredSupply {
  readonly tree: SupplyTreeInput;
  /** By loop (key). */
  readonly chosen: ReadonlyMap<string, SupplyChoice>;
  readonly offered: ReadonlyMap<
    string,
    { readonly choices: readonly SupplyChoice[]; readonly notPriced: readonly NotPriced[] }
  >;
  /** Detectors that left the tree for a supply of their own. [V] */
  readonly localVolts: ReadonlyMap<string, PerState<number>>;
  readonly queries: readonly Query[];
}

/**
 * Puts the cures that the estimator chose into the supply, loop by loop in their order on the sheet, each reckoned with
 * those before it. A choice that does not help, or is not needed, is asked about and not applied.
 */
export function cureDetectors({
  tree,
  loops,
  standbyHours,
  rates,
  job,
}: {
  /** With what the plan keeps, joints as they are. */
  readonly tree: SupplyTreeInput;
  /** Kept powered loops whose way is known. */
  readonly loops: readonly SurveyLoop[];
  /** [h] */
  readonly standbyHours: number | undefined;
  readonly rates: WorkRates;
  readonly job: JobSettings;
}): CuredSupply {
  let now = tree;
  const chosen = new Map<string, SupplyChoice>();
  const offered = new Map<string, { choices: readonly SupplyChoice[]; notPriced: readonly NotPriced[] }>();
  const localVolts = new Map<string, PerState<number>>();
  const queries: Query[] = [];
  const offersOf = ({ key }: SurveyLoop) => {
    const milliamps = now.detectors.find(({ id }) => id === key)?.milliamps ?? 0;
    const { battery } = placeSupply({
      loads: [{ name: key, milliamps, count: 1 }],
      chargerVolts: supplyDefault("chargerVolts"),
      standbyHours,
      stockAmpHours: [],
      job,
    });
    return supplyCureOffers({
      tree: now,
      detector: key,
      rates,
      localAmpHours: battery.neededAmpHours,
      localChargerVolts: supplyDefault("chargerVolts"),
    });
  };
  for (const loop of loops) {
    const { supplyCure } = loop.edits;
    if (supplyCure === undefined) continue;
    if (!fallsShort(now, loop.key)) {
      queries.push(ask(loop, "This detector holds its minimum without it: the cure is not applied. Clear the cell."));
      continue;
    }
    const { offers, notPriced } = offersOf(loop);
    const offer = offers.find(({ choice }) => choice.kind === supplyCure);
    if (!offer) {
      const lacking = notPriced.find(({ kind }) => kind === supplyCure);
      const why = lacking
        ? `it cannot be priced, ${lacking.words} to the price book`
        : "it does not lift the detector to its minimum";
      const rest = offers.map(({ choice }) => choice.kind).join(", ");
      queries.push(ask(loop, `Not applied: ${why}. What works and has a price: ${rest || "nothing on the wire"}.`));
      continue;
    }
    offered.set(loop.key, { choices: offers.map(({ choice }) => choice), notPriced });
    chosen.set(loop.key, offer.choice);
    if (supplyCure === "localSupply") localVolts.set(loop.key, offer.volts);
    now = offer.tree;
  }
  for (const loop of loops) {
    if (chosen.has(loop.key) || !fallsShort(now, loop.key)) continue;
    const { offers, notPriced } = offersOf(loop);
    offered.set(loop.key, { choices: offers.map(({ choice }) => choice), notPriced });
  }
  return { tree: now, chosen, offered, localVolts, queries };
}

function fallsShort(tree: SupplyTreeInput, key: string): boolean {
  const detector = supplyTree(tree).detectors.find(({ id }) => id === key);
  return detector !== undefined && SUPPLY_STATES.some((state) => !detector.enough[state]);
}

const ask = ({ key, sheet, row, edits }: SurveyLoop, message: string): Query => ({
  sheet,
  row,
  column: "supplyCure",
  typed: edits.supplyCure ?? "",
  message,
  key,
});
