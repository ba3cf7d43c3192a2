import type { LoopRecord } from "../../lib/findings/loop-record.js";
import type { Ohms } from "../../lib/quantities/ohms-reading.js";

/** Over-range, not read: figures off the scale of every reading's logarithm. */
const overRange = 9;
const notRead = -3;

/** Values that are on sale and usual in the trade (E12 and E24 decades). [Ω] */
const usual = [1000, 1500, 2000, 2200, 3300, 4700, 5600, 6800, 8200, 10_000];

const logOf = (ohms: Ohms | undefined): number =>
  ohms === undefined ? notRead : ohms === "OL" || ohms >= 8e6 ? overRange : Math.log10(Math.max(ohms, 0.05));

/**
 * Raw readings and notes of loops as numbers for a learner, loop by loop, with what the other loops of its job read:
 * logarithms, ratios, nearest usual values, counts and shares. Nothing of the judge's model is in here.
 */
export function featuresOf(records: readonly LoopRecord[]): readonly (readonly number[])[] {
  const jobs = new Map<string, number[]>();
  for (const [i, { job = "" }] of records.entries()) {
    const list = jobs.get(job) ?? [];
    list.push(i);
    jobs.set(job, list);
  }
  return records.map((record, i) => [
    ...ownFeatures(record),
    ...jobFeatures(
      record,
      (jobs.get(record.job ?? "") ?? []).filter((k) => k !== i).flatMap((k) => records[k] ?? []),
    ),
  ]);
}

/** Cable by the written run, two contacts' worth and leads. [Ω] */
function wireOhms({ runMeters = 20, cable, openings }: LoopRecord): number {
  return 2 * runMeters * 0.053 * 2 ** (((cable?.gaugeAwg ?? 22) - 22) / 3) + 0.15 * openings + 0.2;
}

function nearestMiss(ohms: number): readonly [number, number] {
  let value = usual[0] ?? 1;
  for (const one of usual) if (Math.abs(Math.log(ohms / one)) < Math.abs(Math.log(ohms / value))) value = one;
  return [Math.max(-1, Math.min(1, Math.log(ohms / value))), value];
}

function ownFeatures(record: LoopRecord): readonly number[] {
  const { readings, oldPanel, openings } = record;
  const shut = readings.closedOhms;
  const wire = wireOhms(record);
  const finite = typeof shut === "number" ? Math.max(shut, 0.05) : undefined;
  const part = finite === undefined ? undefined : Math.max(finite - wire, 0.05);
  const [miss, value] = part === undefined ? [2, 0] : nearestMiss(part);
  const expected = oldPanel?.expectedEolOhms;
  return [
    logOf(shut),
    finite === undefined ? 5 : Math.log(finite / wire),
    wire,
    openings,
    record.cable?.gaugeAwg ?? 0,
    miss,
    value,
    part === undefined ? 2 : nearestMiss(part / 2)[0],
    part === undefined ? 2 : nearestMiss(part * 2)[0],
    expected === undefined ? notRead : Math.log10(expected),
    expected === undefined || part === undefined ? 9 : Math.max(-6, Math.min(6, Math.log(part / expected))),
    ["normal", "faulted", "unknown"].indexOf(oldPanel?.restingState ?? "unknown"),
    ["none", "notLooked", "seenNotTraced"].indexOf(oldPanel?.resistorAtPanel ?? "notLooked"),
    record.poweredDetector === true ? 1 : 0,
    ...openedFeatures(record, finite),
    ...gradedFeatures(record),
  ];
}

function openedFeatures({ readings, openings }: LoopRecord, shut: number | undefined): readonly number[] {
  const opened = readings.opened ?? [];
  const low = opened.flatMap(({ opening, ohms }) => (ohms === "OL" || ohms >= 8e6 ? [] : [{ opening, ohms }]));
  const open = opened.filter(({ ohms }) => ohms === "OL" || ohms >= 8e6);
  const first = low[0];
  const same = low.filter(({ ohms }) => shut !== undefined && Math.abs(ohms - shut) < 0.02 * shut + 0.7);
  const added = first === undefined || shut === undefined ? undefined : first.ohms - shut;
  return [
    opened.length,
    low.length,
    open.length,
    low.length / Math.max(1, opened.length),
    same.length,
    same.length / Math.max(1, low.length),
    logOf(first?.ohms),
    first === undefined || shut === undefined ? 20 : Math.log(Math.max(first.ohms, 0.05) / shut),
    added === undefined || added < 300 ? 2 : nearestMiss(added)[0],
    first === undefined ? notRead : first.opening / openings,
    Math.max(0, ...open.map(({ opening }) => opening)) / openings,
    Math.max(0, ...low.map(({ opening }) => opening)) / openings,
    (opened[0]?.opening ?? 0) / openings,
  ];
}

function gradedFeatures({ readings }: LoopRecord): readonly number[] {
  const { tapped, earth, toOtherPairOhms } = readings;
  const moves = tapped === undefined ? notRead : logOf(tapped.maxOhms) - logOf(tapped.minOhms);
  return [moves, Math.min(logOf(earth?.aOhms), logOf(earth?.bOhms)), logOf(toOtherPairOhms)];
}

/** What the other loops of the job read. */
function jobFeatures(record: LoopRecord, others: readonly LoopRecord[]): readonly number[] {
  const share = (count: number): number => (others.length === 0 ? -1 : count / others.length);
  const shut = others.map(({ readings }) => readings.closedOhms);
  const parts = others.flatMap((other) => {
    const ohms = other.readings.closedOhms;
    return typeof ohms === "number" && ohms > 400 && ohms < 40_000 ? [ohms - wireOhms(other)] : [];
  });
  const common = [...parts].sort((a, b) => a - b)[Math.floor(parts.length / 2)];
  const own = record.readings.closedOhms;
  const near = (ohms: number, target: number): boolean => Math.abs(ohms / target - 1) < 0.08;
  const wired = others.filter((other) => {
    const ohms = other.readings.closedOhms;
    return typeof ohms === "number" && ohms < 3 * wireOhms(other) + 4;
  });
  const count = (test: (other: LoopRecord) => boolean): number => share(others.filter(test).length);
  return [
    others.length,
    share(shut.filter((ohms) => logOf(ohms) === overRange).length),
    share(wired.length),
    share(parts.length),
    common === undefined ? notRead : Math.log10(common),
    common === undefined ? -1 : share(parts.filter((ohms) => near(ohms, common)).length),
    common === undefined || typeof own !== "number"
      ? 9
      : Math.max(-6, Math.min(6, Math.log(Math.max(own - wireOhms(record), 0.05) / common))),
    common === undefined ? 2 : nearestMiss(common)[0],
    count(({ oldPanel }) => oldPanel?.restingState === "faulted"),
    count(({ oldPanel }) => oldPanel?.resistorAtPanel === "seenNotTraced"),
    count(({ oldPanel }) => oldPanel?.resistorAtPanel === "none"),
    count(({ readings }) => (readings.opened ?? []).some(({ ohms }) => ohms !== "OL" && ohms < 8e6)),
  ];
}
