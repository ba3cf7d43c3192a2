import * as library from "../loopwright-functions.js";
import { type Answer, type CellValue, inCells, NoResult, spill } from "./answer.js";
import {
  celsius,
  hours,
  ifGiven,
  isLeftOut,
  milliamps,
  minutes,
  number,
  plainRows,
  refused,
  run,
  volts,
} from "./arguments.js";
import { warmConductor } from "./wire.js";

/**
 * Supply voltage along a chain of powered detectors that draw constant current: one row per detector, nearest the panel first, of six cells. Joints are not in it. Source: Ohm's law; copper by ASTM B258 and IEC 60028; defaults are common practice.
 * @customfunction SUPPLY_DROP SUPPLY_DROP
 * @param cable Size of the supply pair as text such as "22/4", or a gauge number in AWG: one for all, or one per stretch.
 * @param runs Length of each stretch alone, from the panel or the detector before it, as text such as "120 ft" or a number in metres.
 * @param milliamps What each detector draws, as text or a number in mA.
 * @param chargerVolts Volts at the auxiliary terminals with the charger on. Left out: 13.7, common practice.
 * @param celsius Cable temperature as text such as "95 F", or a number in °C, -40 to 90. Left out: 20.
 * @param minimumVolts Least volts a detector works at. Left out: 9.5, common practice.
 * @returns Drop V | V with charger on | V at the battery's end | the same less the panel's internal drop | least of the three V over the minimum (below 0: too low) | words.
 * @example =LOOPW.SUPPLY_DROP("22 AWG", "100 ft", 60, 12) → 0.194 | 11.806 | 10.306 | 9.806 | 0.306 | "at or over 9.5 V in all three states"
 */
export function supplyDrop(
  cable: unknown[][],
  runs: unknown[][],
  milliamps: unknown[][],
  chargerVolts?: unknown,
  celsius?: unknown,
  minimumVolts?: unknown,
): unknown[][] {
  return inCells(() => supplyDropAnswer(cable, runs, milliamps, chargerVolts, celsius, minimumVolts));
}

export function supplyDropAnswer(
  cable: unknown,
  lengths: unknown,
  currents: unknown,
  charger?: unknown,
  temperature?: unknown,
  minimum?: unknown,
): Answer<CellValue[][]> {
  const runCells = filledTo("runs", lengths);
  const currentCells = filledTo("milliamps", currents);
  const cableCells = filledTo("cable", cable);
  if (runCells.length === 0) throw refused("runs", "nothing", "one length or more");
  if (currentCells.length !== runCells.length) {
    throw refused("milliamps", `${currentCells.length} cells`, `one for each of the ${runCells.length} runs`);
  }
  if (cableCells.length !== 1 && cableCells.length !== runCells.length) {
    throw refused("cable", `${cableCells.length} cells`, `one, or one for each of the ${runCells.length} runs`);
  }
  const remarks: string[] = [];
  const keep = <T>({ value, remarks: said }: { readonly value: T; readonly remarks: readonly string[] }): T => {
    remarks.push(...said);
    return value;
  };
  const warmth = ifGiven({ name: "celsius", cell: temperature }, celsius);
  const least = ifGiven({ name: "minimumVolts", cell: minimum }, volts)?.value;
  const chargerVolts =
    ifGiven({ name: "chargerVolts", cell: charger }, volts)?.value ?? library.supplyDefault("chargerVolts");
  const place = (i: number): string => (i < 0 ? "panel" : `detector ${i + 1}`);
  const tree = library.supplyTree({
    source: { chargerVolts },
    segments: runCells.map((cell, i) => ({
      id: `stretch ${i + 1}`,
      from: place(i - 1),
      to: place(i),
      meters: keep(run({ name: `runs ${i + 1}`, cell })).meters,
      conductor: keep(warmConductor(cableCells[i] ?? cableCells[0], null)),
    })),
    detectors: currentCells.map((cell, i) => ({
      id: place(i),
      at: place(i),
      milliamps: keep(milliamps({ name: `milliamps ${i + 1}`, cell })),
      ...(least === undefined ? {} : { minimumVolts: least }),
    })),
    ...(warmth === undefined ? {} : { temperatureCelsius: warmth.value }),
  });
  const rows = tree.detectors.map((detector) => rowOf(detector, tree.sourceVolts.charger));
  const segments = tree.segments.map(
    (one) => `${one.id}: ${one.ohms.toFixed(3)} Ω × ${one.milliamps} mA = ${one.dropVolts.toFixed(3)} V.`,
  );
  const internal = `Panel's internal drop ${tree.internalDrop.volts} V${tree.internalDrop.assumed ? ", assumed" : ""}.`;
  return { value: spill(rows), words: [...segments, internal, ...remarks] };
}

type DetectorVolts = ReturnType<typeof library.supplyTree>["detectors"][number];

function rowOf({ volts: at, minimumVolts }: DetectorVolts, sourceVolts: number): CellValue[] {
  const low = (
    [
      ["charger on", at.charger],
      ["battery end", at.batteryEnd],
      ["battery end less internal drop", at.batteryEndLessDrop],
    ] as const
  ).filter(([, value]) => value < minimumVolts);
  const words =
    low.length === 0
      ? `at or over ${minimumVolts} V in all three states`
      : `under ${minimumVolts} V: ${low.map(([name]) => name).join(", ")}`;
  const least = Math.min(at.charger, at.batteryEnd, at.batteryEndLessDrop);
  return [sourceVolts - at.charger, at.charger, at.batteryEnd, at.batteryEndLessDrop, least - minimumVolts, words];
}

/** The cells of a row or column up to the last one that holds something. */
function filledTo(name: string, cells: unknown): readonly unknown[] {
  const list = plainRows({ name, cell: cells }).flat();
  let count = list.length;
  while (count > 0 && isLeftOut(list[count - 1])) count -= 1;
  return list.slice(0, count);
}

/**
 * Battery size: 1.25 × (standby hours × standby current + alarm time × alarm current), in one row of three cells. Source: alarm trade battery guide (factor 1.25: only 80 % of the charge is counted on); stock sizes are common practice.
 * @customfunction BATTERY_AH BATTERY_AH
 * @param standbyHours Time without mains as text such as "24 h", or a number in hours, 0 to 8760.
 * @param standbyMilliamps Everything drawn while nothing happens, as text or a number in mA.
 * @param alarmMinutes Time in alarm as text such as "5 min", or a number in minutes. Left out: 0.
 * @param alarmMilliamps Everything drawn in alarm, the standby load included, as text or a number in mA. Left out: the standby current.
 * @param factor Size over load × time, 1 to 5. Left out: 1.25.
 * @returns Needed Ah | stock size Ah | how many of it.
 * @example =LOOPW.BATTERY_AH(24, 250, 5, 1500) → 7.65625 | 12 | 1
 */
export function batteryAh(
  standbyHours: unknown,
  standbyMilliamps: unknown,
  alarmMinutes?: unknown,
  alarmMilliamps?: unknown,
  factor?: unknown,
): unknown[][] {
  return inCells(() => batteryAhAnswer(standbyHours, standbyMilliamps, alarmMinutes, alarmMilliamps, factor));
}

export function batteryAhAnswer(
  standbyTime: unknown,
  standbyCurrent: unknown,
  alarmTime?: unknown,
  alarmCurrent?: unknown,
  ratio?: unknown,
): Answer<CellValue[][]> {
  const standby = milliamps({ name: "standbyMilliamps", cell: standbyCurrent }).value;
  const factor = ifGiven({ name: "factor", cell: ratio }, number);
  const { neededAmpHours, stock, words, notes } = library.batteryAmpHours({
    standbyHours: hours({ name: "standbyHours", cell: standbyTime }).value,
    standbyMilliamps: standby,
    alarmMinutes: ifGiven({ name: "alarmMinutes", cell: alarmTime }, minutes)?.value ?? 0,
    alarmMilliamps: ifGiven({ name: "alarmMilliamps", cell: alarmCurrent }, milliamps)?.value ?? standby,
    ...(factor === undefined ? {} : { factor }),
  });
  return {
    value: spill([[neededAmpHours, stock.ampHours, stock.count]]),
    words: [`${words}.`, ...notes.map((note) => `${note}.`)],
  };
}

/**
 * Resistance hidden in the joints of a supply pair, from volts read at both ends with the charger on: what is lost beyond plain wire, over the current. One row of four cells. Source: Ohm's law; copper by ASTM B258 and IEC 60028; each reading ± 0.05 V is common practice.
 * @customfunction EXTRA_JOINT EXTRA_JOINT
 * @param cable Size of the supply pair as text such as "22/4", or a gauge number in AWG.
 * @param run One-way length as text such as "120 ft", or a number in metres.
 * @param milliamps What the detectors at the far end draw, as text or a number in mA.
 * @param nearVolts Volts read at the near end, such as the auxiliary terminals, as text or a number in V.
 * @param farVolts Volts read at the detector in the same minute, as text or a number in V.
 * @param celsius Cable temperature as text such as "95 F", or a number in °C, -40 to 90. Left out: 20.
 * @returns Extra Ω, 0 when no more was lost than plain wire loses | lowest | highest Ω that the readings allow | words.
 * @example =LOOPW.EXTRA_JOINT("22 AWG", "100 ft", 60, 13.6, 12.8) → 10.1 | 8.4 | 11.8 | "0.80 V lost *"
 */
export function extraJoint(
  cable: unknown,
  run: unknown,
  milliamps: unknown,
  nearVolts: unknown,
  farVolts: unknown,
  celsius?: unknown,
): unknown[][] {
  return inCells(() => extraJointAnswer(cable, run, milliamps, nearVolts, farVolts, celsius));
}

export function extraJointAnswer(
  cable: unknown,
  length: unknown,
  current: unknown,
  near: unknown,
  far: unknown,
  temperature?: unknown,
): Answer<CellValue[][]> {
  const conductor = warmConductor(cable, null);
  const oneWay = run({ name: "run", cell: length });
  const drawn = milliamps({ name: "milliamps", cell: current });
  const chargerVolts = volts({ name: "nearVolts", cell: near });
  const measured = volts({ name: "farVolts", cell: far });
  const warmth = ifGiven({ name: "celsius", cell: temperature }, celsius);
  const [joint] = library.extraJointOhms({
    tree: {
      source: { at: "the near end", chargerVolts: chargerVolts.value },
      segments: [
        {
          id: "pair",
          from: "the near end",
          to: "the far end",
          meters: oneWay.value.meters,
          conductor: conductor.value,
        },
      ],
      detectors: [{ id: "detectors", at: "the far end", milliamps: drawn.value }],
      ...(warmth === undefined ? {} : { temperatureCelsius: warmth.value }),
    },
    measured: [{ at: "the far end", volts: measured.value }],
  });
  if (joint === undefined) throw new NoResult("farVolts: no reading to reckon from");
  const { ohms, lowOhms, highOhms, words } = joint;
  const remarks = [conductor, oneWay, drawn, chargerVolts, measured].flatMap((one) => one.remarks);
  return { value: spill([[ohms, lowOhms, highOhms, words]]), words: [`${words}.`, ...remarks] };
}
