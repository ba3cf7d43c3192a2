import { InputError } from "../problems/input-error.js";
import type { Cents } from "../quantities/money.js";

/** One way to do the job, priced from the same survey. */
export interface PricedOption {
  /** base, split, allWireless, replacePowered, noJoins … */
  readonly option: string;
  readonly words: string;
  readonly costCents: Cents;
  readonly sellCents: Cents;
  readonly totalCents: Cents;
  readonly range?: { readonly p10Cents: Cents; readonly p50Cents: Cents; readonly p90Cents: Cents };
  /** Zones the new control can tell apart. */
  readonly zones: number;
  /** Openings that lose their own name or are retired. */
  readonly openingsLost: readonly string[];
  readonly loopsOnWire: number;
  readonly wirelessDevices: number;
  readonly days: number;
}

export interface ComparedOption extends PricedOption {
  /** Total less the base's total. */
  readonly moreCents: Cents;
  readonly moreZones: number;
  /** Extra price for each zone gained over the base; null where none is gained. */
  readonly centsPerZoneGained: number | null;
  /** Another option costs no more, tells at least as many zones apart and loses no more openings. */
  readonly dominatedBy: string | null;
}

/**
 * Options side by side with the base, in the order given.
 * @throws {@link InputError} when the base is not among the options or a name comes twice.
 * @example compareOptions({ base: "base", options })[1]?.moreCents
 */
export function compareOptions({
  base,
  options,
}: {
  readonly base: string;
  readonly options: readonly PricedOption[];
}): readonly ComparedOption[] {
  const names = options.map(({ option }) => option);
  const first = options.find(({ option }) => option === base);
  if (!first || new Set(names).size < names.length) {
    throw new InputError({
      field: "options",
      got: names.join(", ") || "none",
      expected: `${base} and other names once each`,
    });
  }
  return options.map((option) => {
    const moreCents = option.totalCents - first.totalCents;
    const moreZones = option.zones - first.zones;
    const better = options.find(
      (other) =>
        other !== option &&
        other.totalCents <= option.totalCents &&
        other.zones >= option.zones &&
        other.openingsLost.length <= option.openingsLost.length &&
        (other.totalCents < option.totalCents ||
          other.zones > option.zones ||
          other.openingsLost.length < option.openingsLost.length),
    );
    return {
      ...option,
      moreCents,
      moreZones,
      centsPerZoneGained: moreZones > 0 ? moreCents / moreZones : null,
      dominatedBy: better?.option ?? null,
    };
  });
}
