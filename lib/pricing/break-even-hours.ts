import { InputError } from "../problems/input-error.js";
import type { Cents } from "../quantities/money.js";

export interface BreakEvenInput {
  /** Replacing the loop's openings right away, all in. [cents] */
  readonly replaceCents: Cents;
  /** Material of the repair. [cents] */
  readonly repairMaterialCents: Cents;
  /** [cents per hour] */
  readonly centsPerHour: number;
  /** Probability that the repair succeeds, 0 to 1. */
  readonly succeeds: number;
  /** Hours after which the repair is given up; absent = none agreed. [h] */
  readonly capHours?: number;
}

/**
 * Hours of repair at which repairing and replacing cost the same: repair costs material + rate·h + (1 − p)·replace,
 * since a failed repair is replaced after all; so h = (p·replace − material) / rate. 0 when even an instant repair
 * would cost more than replacing. [h] With a cap, `worthTrying` says whether the cap stays below that.
 * @throws {@link InputError} when the rate is not above 0 or the probability is outside 0 to 1.
 * @example breakEvenHours({ replaceCents: 12000, repairMaterialCents: 400, centsPerHour: 5200, succeeds: 0.7 }).hours; // 1.54
 */
export function breakEvenHours({
  replaceCents,
  repairMaterialCents,
  centsPerHour,
  succeeds,
  capHours,
}: BreakEvenInput): { readonly hours: number; readonly worthTrying: boolean | null; readonly words: string } {
  if (!(centsPerHour > 0)) {
    throw new InputError({ field: "centsPerHour", got: `${centsPerHour}`, expected: "more than 0" });
  }
  if (!(succeeds >= 0 && succeeds <= 1)) {
    throw new InputError({ field: "succeeds", got: `${succeeds}`, expected: "0 to 1" });
  }
  const hours = Math.max(0, (succeeds * replaceCents - repairMaterialCents) / centsPerHour);
  const worthTrying = capHours === undefined ? null : capHours <= hours;
  const money = (cents: number) => (cents / 100).toFixed(2);
  const words =
    `Repair pays up to ${hours.toFixed(1)} h: ${succeeds} × ${money(replaceCents)} for replacing, less ` +
    `${money(repairMaterialCents)} of material, at ${money(centsPerHour)} an hour`;
  return { hours, worthTrying, words };
}
