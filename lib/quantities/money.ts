/** Integer minor units of the job's one currency. [cents] */
export type Cents = number;

/**
 * The one rounding of money: half away from zero, on a value nudged up by about 1e-9 cent so that 1.005 · 100 rounds
 * as a spreadsheet rounds it. [cents]
 * @example roundCents(100.5); // 101
 * @example roundCents(-100.5); // -101
 */
export function roundCents(cents: number): Cents {
  const magnitude = Math.abs(cents);
  const rounded = Math.floor(magnitude * (1 + 1e-12) + 1e-9 + 0.5);
  return cents < 0 ? (rounded === 0 ? 0 : -rounded) : rounded;
}
