import { InputError } from "../problems/input-error.js";
import { requireBetween } from "../problems/require-between.js";
import { deliveryProved } from "./delivery-proved.js";
import { type Building, indoorLoss, medianIndoorLoss } from "./indoor-loss.js";
import { radioDefault } from "./radio-defaults.js";
import { wallLossDb } from "./wall-loss.js";

/** What was measured at one place. Absent = not measured. */
export interface MeasuredRadio {
  /** [dBm] */
  readonly signalDbm?: number;
  /** [dBm] */
  readonly noiseDbm?: number;
  readonly heard?: number;
  readonly sent?: number;
  /** Whether doors, covers and vehicles stood as they will in use. Absent = not recorded. */
  readonly state?: "asUsed" | "notAsUsed";
}

/** What an estimate is made from where nothing was measured. */
export interface RadioPath {
  readonly megahertz: number;
  readonly meters: number;
  readonly building: Building;
  readonly floors?: number;
  /** Walls unlike ordinary inner ones, which the model already holds. */
  readonly heavyWalls?: readonly { readonly material: string; readonly thicknessMeters: number }[];
  /** Transmitter with its antenna. [dBm] */
  readonly transmitDbm: number;
  /** Receiver's background with its bandwidth. [dBm] */
  readonly noiseDbm: number;
}

export interface RadioQuestion {
  readonly measured?: MeasuredRadio;
  readonly path?: RadioPath;
  /** Absent = 10. [dB] */
  readonly neededMarginDb?: number;
}

/** What is known of one radio place. */
export interface RadioMargin {
  readonly basis: "measured" | "estimated" | "none";
  /** Measured signal over noise; null when not both were measured. [dB] */
  readonly marginDb: number | null;
  readonly neededMarginDb: number;
  /** Share of messages that the count proves, one-sided 95 %; null when none were counted. [1] */
  readonly deliveryProved: number | null;
  /** Range of the margin an estimate gives; null when measured or nothing is known. [dB] */
  readonly estimatedMarginDb: { readonly lowDb: number; readonly highDb: number } | null;
  /** enough: the readings carry it. testAgain: see `needs`. repeater: too weak. testOnSite: nothing measured yet. */
  readonly verdict: "enough" | "testAgain" | "repeater" | "testOnSite";
  /** What the next test has to bring. */
  readonly needs: readonly ("signal" | "noise" | "messages" | "asUsedState")[];
  readonly words: readonly string[];
}

/**
 * Radio margin of one place: from what was measured there; a site-general estimate only where nothing was, and an
 * estimate never decides. Signal less noise of at least 10 dB decides, with 50 messages counted where it is under
 * 15 dB or one was lost; 10 of 10 heard prove only 74 % delivery. A test with the door not as it stands in use can
 * show that a repeater is needed, never that it is not.
 * @throws {@link InputError} when a field is outside its range, or heard comes without sent.
 * @example radioMargin({ measured: { signalDbm: -82, noiseDbm: -103, heard: 10, sent: 10, state: "asUsed" } }).verdict; // "enough"
 */
export function radioMargin(question: RadioQuestion): RadioMargin {
  const neededMarginDb = question.neededMarginDb ?? radioDefault("neededMarginDb");
  requireBetween({ field: "neededMarginDb", value: neededMarginDb, unit: "dB", from: 0, to: 60 });
  const { measured, path } = question;
  if (measured !== undefined && (measured.signalDbm !== undefined || measured.sent !== undefined)) {
    return fromMeasured(measured, neededMarginDb);
  }
  if (path !== undefined) return fromPath(path, neededMarginDb);
  return {
    basis: "none",
    marginDb: null,
    neededMarginDb,
    deliveryProved: null,
    estimatedMarginDb: null,
    verdict: "testOnSite",
    needs: ["signal", "noise", "messages", "asUsedState"],
    words: ["nothing measured: test on site"],
  };
}

function fromMeasured(measured: MeasuredRadio, neededMarginDb: number): RadioMargin {
  const { signalDbm, noiseDbm, state } = measured;
  for (const [field, value] of Object.entries({ signalDbm, noiseDbm })) {
    if (value !== undefined) requireBetween({ field, value, unit: "dBm", from: -160, to: 30 });
  }
  const marginDb = signalDbm === undefined || noiseDbm === undefined ? null : signalDbm - noiseDbm;
  const count = countOf(measured);
  const words: string[] = [];
  const needs = new Set<RadioMargin["needs"][number]>();
  if (marginDb === null) needs.add(signalDbm === undefined ? "signal" : "noise");
  else words.push(`${marginDb} dB over the background, ${neededMarginDb} dB needed`);
  if (count !== null) {
    words.push(
      `${count.heard} of ${count.sent} messages heard proves ${Math.floor(count.proved * 100)} % delivery (one-sided 95 %)`,
    );
  }
  if (state === undefined) words.push("not recorded whether doors stood as in use");
  const weak = marginDb !== null && marginDb < neededMarginDb;
  const many = radioDefault("neededMessages");
  const thin = marginDb === null || marginDb < radioDefault("countMessagesUnderDb");
  const lost = count !== null && count.heard < count.sent;
  const counted = count !== null && count.sent >= many;
  const deaf = counted && count.proved < radioDefault("neededDelivery");
  if ((thin || lost) && !counted) {
    needs.add("messages");
    if (!weak) words.push(`count at least ${many} messages`);
  }
  if (state === "notAsUsed") {
    needs.add("asUsedState");
    words.push("tested with doors not as in use: test again as used");
  }
  if (deaf) words.push("too few messages heard whatever the signal");
  const verdict = weak || deaf ? "repeater" : needs.size > 0 ? "testAgain" : "enough";
  return {
    basis: "measured",
    marginDb,
    neededMarginDb,
    deliveryProved: count?.proved ?? null,
    estimatedMarginDb: null,
    verdict,
    needs: [...needs],
    words,
  };
}

function countOf({ heard, sent }: MeasuredRadio): { heard: number; sent: number; proved: number } | null {
  if (heard === undefined && sent === undefined) return null;
  if (heard === undefined || sent === undefined) {
    throw new InputError({
      field: "heard, sent",
      got: heard === undefined ? "sent alone" : "heard alone",
      expected: "both or neither",
    });
  }
  return { heard, sent, proved: deliveryProved({ heard, sent }) };
}

/** Nine of ten places lie within this many standard deviations on the bad side. */
const NINE_OF_TEN = 1.2816;

function fromPath(path: RadioPath, neededMarginDb: number): RadioMargin {
  const gigahertz = path.megahertz / 1000;
  const heavy = (path.heavyWalls ?? []).reduce((sum, wall) => sum + wallLossDb({ ...wall, gigahertz }), 0);
  const general = indoorLoss(path);
  const newer = medianIndoorLoss({ environment: "office", sight: "blocked", gigahertz, meters: path.meters });
  // The newer median holds within one floor; the older floor loss is added to it.
  const medians = [general.lossDb, ...(newer.withinRange ? [newer.medianDb + general.floorLossDb] : [])];
  const budgetDb = path.transmitDbm - path.noiseDbm - heavy;
  const lowDb = budgetDb - Math.max(...medians) - NINE_OF_TEN * newer.sigmaDb;
  const highDb = budgetDb - Math.min(...medians);
  const words = [
    `estimate, nothing measured: ${lowDb.toFixed(0)} to ${highDb.toFixed(0)} dB over the background by ITU-R P.1238; test on site`,
    ...general.borrowed.map((what) => `borrowed: ${what}`),
    ...(newer.withinRange ? [] : ["beyond the distance the newer median holds for"]),
  ];
  return {
    basis: "estimated",
    marginDb: null,
    neededMarginDb,
    deliveryProved: null,
    estimatedMarginDb: { lowDb, highDb },
    verdict: "testOnSite",
    needs: ["signal", "noise", "messages", "asUsedState"],
    words,
  };
}
