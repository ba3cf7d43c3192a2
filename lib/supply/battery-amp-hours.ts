import { InputError } from "../problems/input-error.js";
import { requireBetween } from "../problems/require-between.js";
import { batteryAndFuseSizes } from "../reference/generated/battery-and-fuse-sizes.js";
import { type StandbyRulesRow, standbyRules } from "../reference/generated/standby-rules.js";
import { onlyRow } from "../reference/rows.js";
import { supplyDefault } from "./supply-defaults.js";

/** What a battery has to bridge. */
export interface BatteryQuestion {
  /** [h] */
  readonly standbyHours: number;
  /** Everything that draws from the battery while nothing happens. [mA] */
  readonly standbyMilliamps: number;
  /** [min] */
  readonly alarmMinutes: number;
  /** Everything that draws in alarm, the standby load included. [mA] */
  readonly alarmMilliamps: number;
  /** Size over load × time; absent = 1.25. [1] */
  readonly factor?: number;
  /** What the charger has left for the battery beside the standby load. [mA] */
  readonly chargeMilliamps?: number;
  /** Sizes to choose from; absent = those commonly in stock. [Ah] */
  readonly stockAmpHours?: readonly number[];
}

/** The battery that bridges it. */
export interface BatteryAnswer {
  /** Load × time. [Ah] */
  readonly loadAmpHours: number;
  /** The same × factor. [Ah] */
  readonly neededAmpHours: number;
  /** Equal batteries in parallel: fewest, then smallest. */
  readonly stock: { readonly ampHours: number; readonly count: number };
  /** From empty; null when the charging current is not known. [h] */
  readonly rechargeHours: number | null;
  /** Battery fuse; null when the current is above every size in the table. [A] */
  readonly fuseAmps: number | null;
  readonly words: string;
  readonly notes: readonly string[];
}

/**
 * Battery size C = factor · (standby h · standby A + alarm h · alarm A), rounded up to stock sizes. [Ah]
 * @throws {@link InputError} when a field is outside its range.
 * @example batteryAmpHours({ standbyHours: 24, standbyMilliamps: 250, alarmMinutes: 5, alarmMilliamps: 1500 });
 * // 7.65625 Ah needed, one of 12 Ah
 */
export function batteryAmpHours(question: BatteryQuestion): BatteryAnswer {
  const { standbyHours, standbyMilliamps, alarmMinutes, alarmMilliamps } = question;
  requireBetween({ field: "standbyHours", value: standbyHours, unit: "h", from: 0, to: 8760 });
  requireBetween({ field: "standbyMilliamps", value: standbyMilliamps, unit: "mA", from: 0, to: 1e6 });
  requireBetween({ field: "alarmMinutes", value: alarmMinutes, unit: "min", from: 0, to: 1e5 });
  requireBetween({ field: "alarmMilliamps", value: alarmMilliamps, unit: "mA", from: 0, to: 1e6 });
  const factor = question.factor ?? supplyDefault("batteryFactor");
  requireBetween({ field: "factor", value: factor, unit: "", from: 1, to: 5 });
  const loadAmpHours = (standbyHours * standbyMilliamps + (alarmMinutes / 60) * alarmMilliamps) / 1000;
  const neededAmpHours = loadAmpHours * factor;
  const stock = stockFor(neededAmpHours, question.stockAmpHours ?? sizesOf("battery12V"));
  const fuseAmps = fuseFor(Math.max(standbyMilliamps, alarmMilliamps) / 1000);
  const rechargeHours = rechargeTime(stock.ampHours * stock.count, question.chargeMilliamps);
  const notes = ["the panel maker's largest battery and fuse come first"];
  if (stock.count > 1) notes.push("batteries in parallel: same make, size and age, each with its own fuse");
  const words = `${standbyHours} h × ${standbyMilliamps} mA + ${alarmMinutes} min × ${alarmMilliamps} mA = ${loadAmpHours.toFixed(2)} Ah; × ${factor} = ${neededAmpHours.toFixed(2)} Ah → ${stock.count} × ${stock.ampHours} Ah`;
  return { loadAmpHours, neededAmpHours, stock, rechargeHours, fuseAmps, words, notes };
}

/** Times of one rule set of reference-data/standby-rules.json, with its source in words. */
export function standbyRule(rule: string): StandbyRulesRow {
  const row = standbyRules.find((one) => one.rule === rule);
  if (row !== undefined) return row;
  const expected = `one of ${standbyRules.map((one) => one.rule).join(", ")}`;
  throw new InputError({ field: "rule", got: rule, expected });
}

function sizesOf(part: string): readonly number[] {
  return onlyRow("battery-and-fuse-sizes", batteryAndFuseSizes, (row) => row.part === part).sizes;
}

function stockFor(neededAmpHours: number, sizes: readonly number[]): BatteryAnswer["stock"] {
  const rising = [...sizes].sort((a, b) => a - b);
  const largest = rising.at(-1);
  if (largest === undefined || !((rising[0] ?? 0) > 0)) {
    throw new InputError({ field: "stockAmpHours", got: sizes.join(", "), expected: "sizes over 0 Ah" });
  }
  const count = Math.max(1, Math.ceil(neededAmpHours / largest - 1e-9));
  const ampHours = rising.find((size) => size * count >= neededAmpHours - 1e-9) ?? largest;
  return { ampHours, count };
}

function fuseFor(amps: number): number | null {
  return sizesOf("fuse").find((size) => size >= amps * supplyDefault("fuseFactor")) ?? null;
}

function rechargeTime(ampHours: number, chargeMilliamps: number | undefined): number | null {
  if (chargeMilliamps === undefined) return null;
  requireBetween({ field: "chargeMilliamps", value: chargeMilliamps, unit: "mA", from: 1, to: 1e6 });
  return (ampHours * supplyDefault("rechargeFactor")) / (chargeMilliamps / 1000);
}
