import type { Ohms } from "../quantities/ohms-reading.js";
import { at, conditionCount } from "./conditions.js";
import { gradedClass } from "./graded-readings.js";
import type { JudgeModel } from "./judge-model.js";
import type { LoopRecord } from "./loop-record.js";
import { namesIntrusionDevice } from "./names-device.js";
import type { TakenReadings } from "./taken-readings.js";
import { zeros } from "./zeros.js";

/** `[condition * 3 + form]`: chance of every note and graded reading of a record besides its ohms at the pair. */
export function recordFactors(record: LoopRecord, taken: TakenReadings, model: JudgeModel): number[] {
  const factors = zeros(conditionCount * 3).fill(1);
  restingState(record, model, factors);
  endOfLinePlace(record, model, factors);
  notedDevices(record, model, factors);
  gradedFactors(record, taken, model, factors);
  return factors;
}

function scale(factors: number[], condition: number, by: number): void {
  for (let k = condition * 3; k < condition * 3 + 3; k += 1) factors[k] = (factors[k] ?? 0) * by;
}

function restingState(record: LoopRecord, model: JudgeModel, factors: number[]): void {
  const state = record.oldPanel?.restingState;
  if (state !== "normal" && state !== "faulted") return;
  for (let k = 0; k < factors.length; k += 1) {
    const normal = model.restNormal[k] ?? 0.5;
    factors[k] = (factors[k] ?? 0) * (state === "normal" ? normal : 1 - normal);
  }
}

function endOfLinePlace(record: LoopRecord, model: JudgeModel, factors: number[]): void {
  const { seenResistorAtEnd, seenResistorNone, seenResistorAtPanel, placeNotedRight } = model.figures;
  const seen = record.oldPanel?.resistorAtPanel;
  const chance = [seenResistorAtEnd, seenResistorNone, seenResistorAtPanel];
  const counts = seen === "inSeries" || seen === "seenNotTraced" || seen === "none";
  const place = record.eolPlace;
  const written = place === "device" ? 0 : place === "none" ? 1 : place === "panel" ? 2 : -1;
  for (let form = 0; form < 3; form += 1) {
    let by = 1;
    if (counts) by *= seen === "none" ? 1 - (chance[form] ?? 0) : (chance[form] ?? 0);
    if (written >= 0) by *= written === form ? placeNotedRight : (1 - placeNotedRight) / 2;
    if (by === 1) continue;
    for (let c = 0; c < conditionCount; c += 1) {
      const k = c * 3 + form;
      factors[k] = (factors[k] ?? 0) * by;
    }
  }
}

function notedDevices(record: LoopRecord, model: JudgeModel, factors: number[]): void {
  const f = model.figures;
  const intrusion = namesIntrusionDevice(record.device);
  for (let c = 0; c < conditionCount; c += 1) {
    let by = 1;
    if (record.poweredDetector !== undefined)
      by *= share(record.poweredDetector, c === at.poweredDevice ? f.poweredNoted : f.poweredNotedElse);
    if (record.foil !== undefined) by *= share(record.foil, c === at.foil ? f.foilNoted : f.foilNotedElse);
    if (record.contactForm === "NO") by *= c === at.normallyOpen ? f.normallyOpenNoted : f.normallyOpenNotedElse;
    if (record.contactForm === "NC")
      by *= c === at.normallyOpen ? 1 - f.normallyOpenNoted : 1 - f.normallyOpenNotedElse;
    if (c === at.lifeSafety) by *= intrusion ? f.lifeSafetyUnmarked * f.lifeSafetyNamedElse : f.lifeSafetyUnmarked;
    by *= share(record.tamperPair === true, c === at.tamperLoop ? f.tamperNoted : f.tamperNotedElse);
    if (by !== 1) scale(factors, c, by);
  }
}

function share(given: boolean, chance: number): number {
  return given ? chance : 1 - chance;
}

function gradedFactors(record: LoopRecord, taken: TakenReadings, model: JudgeModel, factors: number[]): void {
  const readings = record.readings;
  const overRange = model.figures.overRangeOhms;
  const number = (ohms: Ohms): number => (ohms === "OL" || ohms >= overRange ? Number.POSITIVE_INFINITY : ohms);
  const grade = (reading: string, size: number): void => {
    const found = gradedClass(model.graded[reading], size);
    if (found === undefined) return;
    for (let c = 0; c < conditionCount; c += 1) scale(factors, c, found.likelihood[c] ?? 1);
  };
  const earth = readings.earth;
  if (earth?.aOhms !== undefined || earth?.bOhms !== undefined)
    grade("earth", Math.min(number(earth.aOhms ?? "OL"), number(earth.bOhms ?? "OL")));
  // A low reading to the pair that is known to share the return says nothing new.
  const shared = (record.returnSharedWith?.length ?? 0) > 0;
  if (readings.toOtherPairOhms !== undefined && !shared) grade("toOtherPair", number(readings.toOtherPairOhms));
  if (readings.tapped !== undefined && record.shockSensor !== true) {
    grade("tapped", relativeChange(number(readings.tapped.minOhms), number(readings.tapped.maxOhms)));
  } else if (readings.behaviour === "jumping" && record.shockSensor !== true) grade("tapped", 1);
  const volts = readings.voltsDc;
  if (volts !== undefined && !isDetectorSupply(record, model)) grade("voltsDc", Math.abs(volts));
  if (readings.reversedOhms !== undefined && !Number.isNaN(taken.closed)) {
    grade("reversed", relativeChange(number(readings.reversedOhms), taken.closed));
  }
}

/** Larger over smaller less one; 0.5 Ω of difference is nothing. [1] */
export function relativeChange(a: number, b: number): number {
  if (a === b) return 0;
  const low = Math.min(a, b);
  const high = Math.max(a, b);
  if (!Number.isFinite(high)) return Number.POSITIVE_INFINITY;
  return high - low <= 0.5 ? 0 : high / Math.max(low, 0.5) - 1;
}

/** Volts that are the supply of a detector on the loop rather than something foreign. */
export function isDetectorSupply(record: LoopRecord, model: JudgeModel): boolean {
  const volts = record.readings.voltsDc;
  return (
    record.poweredDetector === true &&
    volts !== undefined &&
    volts >= model.figures.supplyLowVolts &&
    volts <= model.figures.supplyHighVolts
  );
}
