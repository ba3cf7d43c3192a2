import type { Ohms } from "../quantities/ohms-reading.js";
import { loopFacts as loopFactRows } from "../reference/generated/loop-facts.js";
import type { BaseLoop } from "./base-loop.js";
import type { JudgeModel } from "./judge-model.js";
import { type LifeSafetyMatch, type LoopTexts, lifeSafetyMatch, redCable } from "./life-safety.js";
import type { Fact, LoopRecord } from "./loop-record.js";
import { isDetectorSupply, relativeChange } from "./record-factors.js";
import type { TakenReadings } from "./taken-readings.js";

/**
 * What the facts decide before any probability: life safety ends the matter; a hold waits for somebody who sees the
 * device; foreign volts make every ohms reading void; a pair that was not lifted has none.
 */
export type Gate = "none" | "lifeSafety" | "hold" | "foreignVolts" | "notLifted";

/** Facts of one loop and what they decide. */
export interface LoopFacts {
  readonly facts: readonly Fact[];
  readonly gate: Gate;
}

const factWords: ReadonlyMap<string, string> = new Map(loopFactRows.map((row) => [row.fact, row.words]));

/** The fact with its words filled in. */
export function factOf(fact: string, values?: Readonly<Record<string, string>>): Fact {
  const words = factWords.get(fact) ?? fact;
  if (values === undefined) return { fact, words };
  return { fact, words: words.replace(/\{(\w+)\}/g, (_, name: string) => values[name] ?? "") };
}

/** The texts of a record that are looked through for words. */
export function textsOf(record: LoopRecord): LoopTexts {
  return {
    label: record.label,
    protects: record.protects,
    device: record.device,
    cable: record.cableWords,
    notes: record.notes,
    use: record.use,
    oldList: record.oldListWords,
  };
}

/** Everything that a record settles or raises by itself. Common practice, no source; thresholds are figures. */
export function factsOf(record: LoopRecord, taken: TakenReadings, base: BaseLoop, model: JudgeModel): LoopFacts {
  const facts: Fact[] = [];
  if (lifeSafetyFacts(record, facts)) return { facts, gate: "lifeSafety" };
  const foreign = voltsFacts(record, model, facts);
  const held = holdFacts(record, taken, facts);
  liftFacts(record, taken, facts);
  readingFacts(record, model, facts);
  noteFacts(record, taken, base, facts);
  // Volts forbid hands on the copper, so they outrank a hold.
  const gate = foreign ? "foreignVolts" : held ? "hold" : record.lifted === "no" ? "notLifted" : "none";
  if (gate === "none") patternFacts(record, taken, base, facts);
  return { facts, gate };
}

function lifeSafetyFacts(record: LoopRecord, facts: Fact[]): boolean {
  if (record.markedLifeSafety === true) {
    facts.push(factOf("markedLifeSafety"));
    return true;
  }
  if (record.returnBears?.what === "lifeSafety") {
    facts.push(factOf("lifeSafetyReturn", { loop: record.returnBears.loop }));
    return true;
  }
  const texts = textsOf(record);
  const match = lifeSafetyMatch(texts);
  if (redCable(texts)) facts.push(factOf("redCable"));
  if (match === null) return false;
  const { seen } = record;
  if (seen === undefined || seen.name.trim() === "" || seen.what.trim() === "") {
    facts.push(factOf("wordedLifeSafety", placed(match)));
    return true;
  }
  // What the device is does not undo a use that is written: somebody has to write another one.
  const still = lifeSafetyMatch({ device: seen.what, use: record.use });
  facts.push(
    still === null
      ? factOf("seenNotLifeSafety", { ...placed(match), ...seen })
      : factOf("wordedLifeSafety", placed(still.field === "use" ? still : match)),
  );
  return still !== null;
}

const placed = ({ word, field }: LifeSafetyMatch) => ({ word, field: field === "oldList" ? "the old list" : field });

function voltsFacts(record: LoopRecord, model: JudgeModel, facts: Fact[]): boolean {
  const { voltsDc, voltsAc, voltsAtDetector } = record.readings;
  const f = model.figures;
  if (record.returnBears?.what === "foreignVolts") {
    facts.push(factOf("foreignReturn", { loop: record.returnBears.loop }));
    return true;
  }
  if (voltsAtDetector !== undefined) facts.push(factOf("detectorVolts", { volts: String(voltsAtDetector) }));
  if (voltsAc !== undefined && Math.abs(voltsAc) > f.voltsForeignAc) {
    facts.push(factOf("foreignVolts", { volts: String(voltsAc), kind: "ac" }));
    return true;
  }
  if (voltsDc === undefined) {
    if (voltsAc === undefined) facts.push(factOf("voltsUnknown"));
    return false;
  }
  const size = Math.abs(voltsDc);
  if (isDetectorSupply(record, model)) facts.push(factOf("detectorSupply", { volts: String(voltsDc) }));
  else if (size > f.voltsForeign) {
    facts.push(factOf("foreignVolts", { volts: String(voltsDc), kind: "dc" }));
    return true;
  } else if (size >= f.voltsPickupLow) facts.push(factOf("pickupVolts", { volts: String(voltsDc) }));
  return false;
}

/** Readings that change with polarity or by themselves: see the device before anything else. */
function holdFacts(record: LoopRecord, taken: TakenReadings, facts: Fact[]): boolean {
  const { reversedOhms, behaviour } = record.readings;
  let held = false;
  if (record.returnBears?.what === "hold") {
    facts.push(factOf("heldReturn", { loop: record.returnBears.loop }));
    held = true;
  }
  if (reversedOhms !== undefined && !Number.isNaN(taken.closed) && differs(ohmsNumber(reversedOhms), taken.closed)) {
    facts.push(factOf("polarity"));
    held = true;
  }
  if (behaviour === "climbing" || behaviour === "falling") {
    facts.push(factOf("climbing"));
    held = true;
  }
  if (behaviour === "jumping") facts.push(factOf("jumping"));
  return held && record.seen === undefined;
}

function differs(a: number, b: number): boolean {
  return Math.abs(a - b) > 1 && relativeChange(a, b) > 0.05;
}

function ohmsNumber(ohms: Ohms): number {
  return ohms === "OL" ? Number.POSITIVE_INFINITY : ohms;
}

function liftFacts(record: LoopRecord, taken: TakenReadings, facts: Fact[]): void {
  if (record.lifted === "no") facts.push(factOf("notLifted"));
  if (record.lifted === "one") facts.push(factOf("oneLifted"));
  const volts = Math.abs(record.readings.voltsDc ?? 0);
  if (record.lifted !== "both" && volts > 0.3 && taken.opened.some(Number.isFinite))
    facts.push(factOf("maybeNotLifted"));
}

function readingFacts(record: LoopRecord, model: JudgeModel, facts: Fact[]): void {
  const { earth, toOtherPairOhms, tapped } = record.readings;
  const f = model.figures;
  const toEarth = Math.min(ohmsNumber(earth?.aOhms ?? "OL"), ohmsNumber(earth?.bOhms ?? "OL"));
  if (toEarth < f.earthFaultOhms) facts.push(factOf("earthFault", { ohms: ohmsText(toEarth) }));
  else if (toEarth < f.earthDampOhms) facts.push(factOf("earthDamp", { ohms: ohmsText(toEarth) }));
  const other = ohmsNumber(toOtherPairOhms ?? "OL");
  const shared = record.returnSharedWith ?? [];
  if (shared.length > 0)
    facts.push(factOf("sharedReturnNoted", { loops: (record.returnSharedNames ?? shared).join(", ") }));
  else if (other < f.otherPairLowOhms) facts.push(factOf("lowToOtherPair", { ohms: ohmsText(other) }));
  if (tapped !== undefined) {
    const [low, high] = [ohmsNumber(tapped.minOhms), ohmsNumber(tapped.maxOhms)];
    if (record.shockSensor === true) facts.push(...(differs(low, high) ? [factOf("shockMoves")] : []));
    else if (differs(low, high)) facts.push(factOf("movesTapped", { low: ohmsText(low), high: ohmsText(high) }));
  }
}

function noteFacts(record: LoopRecord, taken: TakenReadings, base: BaseLoop, facts: Fact[]): void {
  if (record.poweredDetector === true)
    facts.push(factOf(record.powered === false ? "unpoweredReading" : "poweredOutput"));
  if (record.foil === true) facts.push(factOf("foilNoted"));
  if (record.tamperPair === true) facts.push(factOf("tamperPair"));
  const near = taken.closed < base.ohms + 3 * base.spreadOhms + 20;
  if (record.oldPanel?.resistorAtPanel === "acrossTerminals" && near) facts.push(factOf("resistorAcross"));
  if (Number.isNaN(taken.closed)) facts.push(factOf("noClosed"));
  else if (taken.opened.length === 0) facts.push(factOf("noOpened"));
}

/** Patterns of the ohms themselves. */
function patternFacts(record: LoopRecord, taken: TakenReadings, base: BaseLoop, facts: Fact[]): void {
  const expected = record.oldPanel?.expectedEolOhms;
  const shut = taken.closed;
  const raised = taken.opened.find((ohms) => Number.isFinite(ohms) && Math.abs(ohms / shut - 2) < 0.12 && shut > 200);
  if (raised !== undefined && (expected === undefined || within(raised, expected, 0.12)))
    facts.push(factOf("legsInParallel"));
  if (taken.closedOverRange) {
    const opened = taken.opened.find((ohms) => Number.isFinite(ohms) && ohms > 100);
    if (opened !== undefined) facts.push(factOf("swappedColumns", { ohms: ohmsText(opened) }));
  }
  if (expected === undefined || !Number.isFinite(shut)) return;
  const part = shut - base.ohms;
  if (raised === undefined && within(part, expected / 2, 0.08)) facts.push(factOf("eolsInParallel"));
  if (within(part, 2 * expected, 0.08)) facts.push(factOf("eolsInSeries"));
  if (slipFactor(shut, expected) !== undefined && !resistorElsewhere(record)) {
    facts.push(factOf("unitSlip", { ohms: ohmsText(shut), expected: ohmsText(expected) }));
  }
}

/** Where the end-of-line part is known not to be on the pair, a low reading is no slip. */
function resistorElsewhere(record: LoopRecord): boolean {
  const seen = record.oldPanel?.resistorAtPanel;
  return (
    seen === "inSeries" ||
    seen === "acrossTerminals" ||
    seen === "seenNotTraced" ||
    record.eolPlace === "panel" ||
    record.eolPlace === "none"
  );
}

/** The factor by which a reading misses the expected value, when it is a slip of units or of one place. */
export function slipFactor(ohms: number, expectedOhms: number): number | undefined {
  return [1000, 10, 0.1, 0.001].find((factor) => within(ohms * factor, expectedOhms, 0.06));
}

function within(value: number, target: number, share: number): boolean {
  return Math.abs(value - target) <= share * target;
}

/** Ohms for people with their unit: three figures, kΩ and MΩ from a thousand and a million. */
export function ohmsText(ohms: number): string {
  if (!Number.isFinite(ohms)) return "over-range";
  const scale = ohms >= 999_500 ? 1e6 : ohms >= 999.5 ? 1e3 : 1;
  const value = ohms / scale;
  const places = value >= 99.95 ? 1 : value >= 9.995 ? 10 : 100;
  const text = String(Math.round(value * places) / places);
  return `${text} ${scale === 1e6 ? "M" : scale === 1e3 ? "k" : ""}Ω`;
}
