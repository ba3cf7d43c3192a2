import { requireBetween } from "../problems/require-between.js";
import { classTwoLimits, classTwoLimitsSources } from "../reference/generated/class-two-limits.js";

/** A reminder of the limits of a Class 2 source, never a statement that a source keeps them. */
export interface ClassTwoCaution {
  /** A figure entered is beyond the limit of the row. */
  readonly beyond: boolean;
  readonly words: string;
  readonly source: string;
}

/**
 * Limits that NEC chapter 9 table 11 sets a Class 2 source of this voltage, compared with what the source's nameplate
 * says. Alarm wiring is usually laid out as Class 2; the authority having jurisdiction decides.
 * @throws {@link InputError} when the voltage is not 0 to 60 V.
 * @example classTwoCaution({ volts: 13.8, nameplateAmps: 2.5, limitedBy: "inherent" }).beyond; // false
 */
export function classTwoCaution(asked: {
  readonly volts: number;
  readonly nameplateAmps: number;
  readonly limitedBy: "inherent" | "overcurrentProtection";
}): ClassTwoCaution {
  const volts = requireBetween({ field: "volts", value: asked.volts, unit: "V", from: 0, to: 60 });
  const amps = requireBetween({ field: "nameplateAmps", value: asked.nameplateAmps, unit: "A", from: 0, to: 1000 });
  const row = classTwoLimits.find((one) => one.limitedBy === asked.limitedBy && volts <= one.toVolts);
  const source = row === undefined ? "" : (classTwoLimitsSources[row.source] ?? "");
  if (row === undefined) return { beyond: true, words: `${volts} V is beyond the rows of the table`, source };
  const most = Math.min(
    row.nameplateAmps ?? Number.POSITIVE_INFINITY,
    (row.nameplateAmpsTimesVolts ?? Number.POSITIVE_INFINITY) / volts,
    row.overcurrentAmps ?? Number.POSITIVE_INFINITY,
    (row.overcurrentAmpsTimesVolts ?? Number.POSITIVE_INFINITY) / volts,
  );
  const voltAmps = row.nameplateVoltAmps ?? (row.nameplateVoltAmpsPerVolt ?? 0) * volts;
  const beyond = amps > most || amps * volts > voltAmps;
  const limits = `at ${volts} V a Class 2 source is limited to ${Number(most.toPrecision(3))} A and ${Number(voltAmps.toPrecision(3))} VA`;
  const words = `${limits} (${row.confidence} confidence); this one is marked ${amps} A${beyond ? ": beyond it, so the rules of another class apply" : ""}. The local code and its inspector decide.`;
  return { beyond, words, source };
}
