import type { Query } from "../problems/query.js";
import { requireBetween } from "../problems/require-between.js";
import { cutOverSteps } from "../reference/generated/cut-over-steps.js";
import { labourUnits } from "../reference/generated/labour-units.js";
import { onlyRow } from "../reference/rows.js";
import type { LabourUnit } from "../survey/survey.js";
import { phraseAt, wordsOf } from "../survey/words.js";
import { batchesOf } from "./batches.js";
import {
  type CutOverHold,
  type CutOverLoop,
  type CutOverPanel,
  installationOrder,
  isExcluded,
  isHoldUp,
  loopName,
  staysOnWire,
} from "./cut-over-loop.js";
import { darkMinutes } from "./dark-minutes.js";
import { isHeld, type WrittenRelease } from "./is-held.js";

/** One step of the cut-over, in its place. */
export interface CutOverStep {
  /** Place in the order, from 1. */
  readonly number: number;
  /** Key in reference-data/cut-over-steps. */
  readonly step: string;
  readonly words: string;
  readonly who: string;
  /** Keys of the loops it is about. */
  readonly loops: readonly string[];
  readonly panel: string | null;
  readonly area: string | null;
  /** Longest time the openings of the step watch nothing. [min] */
  readonly darkMinutes: number | null;
  /** Numbers of the steps that must be done before, beside being in order. */
  readonly after: readonly number[];
  /** What is filled in by hand. */
  readonly blanks: readonly string[];
}

/** The order of work and what it leaves open. */
export interface CutOverOrder {
  readonly steps: readonly CutOverStep[];
  readonly held: boolean;
  /** Names of the loops nobody touches; heads every paper. */
  readonly doNotTouch: readonly string[];
  readonly queries: readonly Query[];
}

export interface CutOverInput {
  readonly loops: readonly CutOverLoop[];
  readonly panels: readonly CutOverPanel[];
  readonly holds: readonly CutOverHold[];
  readonly release?: WrittenRelease | undefined;
  /** Longest time agreed with the owner that openings of an area watch nothing; absent = not agreed yet. [min] */
  readonly agreedDarkMinutes?: number | undefined;
  /** Hours of tasks; absent = the labour table. */
  readonly labour?: readonly LabourUnit[];
  /** Anything that leaves a plate or a note behind, for the step that covers it. */
  readonly removedPlaces?: readonly string[];
}

type Draft = Omit<CutOverStep, "number" | "after" | "who" | "blanks"> & { readonly waitsFor?: readonly string[] };

/**
 * The order of a cut-over: papers and account first, a substitute for every hold-up before it is disconnected, modules
 * beside the working old control, then area by area a few loops at a time, each lot proved before the next is lifted;
 * the old control goes last. While life safety hangs on it unreleased, no step that takes its power, its siren or itself
 * away exists at all, and the first step asks for the written release.
 * @throws {@link InputError} when the agreed time is not 1 to 10 080 minutes.
 */
export function cutOverOrder(input: CutOverInput): CutOverOrder {
  const { loops, panels, agreedDarkMinutes } = input;
  if (agreedDarkMinutes !== undefined) {
    requireBetween({ field: "agreedDarkMinutes", value: agreedDarkMinutes, unit: "min", from: 1, to: 10_080 });
  }
  const held = isHeld(input);
  const excluded = loops.filter(isExcluded);
  const moved = installationOrder(loops.filter((loop) => !isExcluded(loop)));
  const minutesOf = (loop: CutOverLoop) => darkMinutes(loop, input.labour ?? labourUnits);
  const drafts: readonly Draft[] = [
    ...releaseSteps(input, held, excluded),
    plain("permits"),
    plain("accountOnTest"),
    ...holdUpsFirst(moved, held ? [] : excluded.filter(isHoldUp)),
    ...panels.flatMap((panel) => atPanel(panel, moved)),
    ...areasOf(moved).flatMap((area) => areaSteps({ area, moved, minutesOf, agreedDarkMinutes })),
    ...moved.filter(isHoldUp).flatMap(holdUpSteps),
    ...loopStep(
      "retireLoops",
      moved.filter((loop) => loop.treatment === "retire" && !isHoldUp(loop)),
    ),
    plain("walkTestAll"),
    plain("signalsReceived"),
    ...(held ? [] : panels.flatMap(oldControlSteps)),
    ...(input.removedPlaces?.length ? [plain("blankPlates", { names: input.removedPlaces.join(", ") })] : []),
    plain(held ? "keepOldAccount" : "closeOldAccount"),
    plain("handOver"),
    plain("accountRestored"),
    plain("disposal"),
    plain("review"),
  ];
  return {
    steps: numbered(drafts, held),
    held,
    doNotTouch: excluded.map(loopName),
    queries: timeQueries({ moved, minutesOf, agreedDarkMinutes }),
  };
}

const names = (loops: readonly CutOverLoop[]): string => loops.map(loopName).join(", ");

function draft(step: string, fill: Readonly<Record<string, string>>, more: Partial<Draft> = {}): Draft {
  const { words } = onlyRow("cut-over-steps", cutOverSteps, (row) => row.step === step);
  const filled = words.replace(/\{(\w+)\}/g, (_, name: string) => fill[name] ?? "");
  return { step, words: filled, loops: [], panel: null, area: null, darkMinutes: null, ...more };
}

const plain = (step: string, fill: Readonly<Record<string, string>> = {}): Draft => draft(step, fill);

const loopStep = (step: string, loops: readonly CutOverLoop[], more: Partial<Draft> = {}): readonly Draft[] =>
  loops.length === 0 ? [] : [draft(step, { names: names(loops) }, { loops: loops.map(({ key }) => key), ...more })];

function releaseSteps(input: CutOverInput, held: boolean, excluded: readonly CutOverLoop[]): readonly Draft[] {
  if (held) {
    const listed = input.holds.flatMap((hold) => hold.loops);
    const about = input.loops.filter((loop) => excluded.includes(loop) || listed.includes(loop.key));
    const what = about.length === 0 ? "the life-safety circuits" : names(about);
    return [draft("obtainRelease", { names: what }, { loops: about.map(({ key }) => key) })];
  }
  const { release } = input;
  if (excluded.length === 0 || release === undefined) return [];
  return [
    draft("recordRelease", { release: `${release.name}, ${release.date}` }, { loops: excluded.map(({ key }) => key) }),
  ];
}

/** One agreement per hold-up, those first that will be moved; a substitute works before anything is lifted. */
function holdUpsFirst(moved: readonly CutOverLoop[], others: readonly CutOverLoop[]): readonly Draft[] {
  return [...moved.filter(isHoldUp), ...others].flatMap((loop) => [
    ...loopStep("agreeHoldUpSubstitute", [loop]),
    ...loopStep("holdUpSubstituteInPlace", [loop], { waitsFor: ["agreeHoldUpSubstitute"] }),
  ]);
}

const placeOf = ({ panel, place }: CutOverPanel): string => (place === undefined ? panel : `${panel} (${place})`);

function atPanel(panel: CutOverPanel, moved: readonly CutOverLoop[]): readonly Draft[] {
  const here = moved.filter((loop) => loop.panel === panel.panel);
  const at = { place: placeOf(panel) };
  const more = { panel: panel.panel };
  const modules = here.some(({ input }) => input !== null);
  return [
    draft("photographAndTag", at, { ...more, loops: here.map(({ key }) => key) }),
    ...(modules ? [draft("mountModules", at, more), draft("powerUpNew", at, more)] : []),
  ];
}

/** Areas in the order of installation; null stands for loops without one. */
function areasOf(loops: readonly CutOverLoop[]): readonly (string | null)[] {
  return [...new Set(loops.map(areaOf))];
}

const areaOf = (loop: CutOverLoop): string | null => loop.zones.find(({ area }) => area !== null)?.area ?? null;

function areaSteps({
  area,
  moved,
  minutesOf,
  agreedDarkMinutes,
}: {
  readonly area: string | null;
  readonly moved: readonly CutOverLoop[];
  readonly minutesOf: (loop: CutOverLoop) => number;
  readonly agreedDarkMinutes: number | undefined;
}): readonly Draft[] {
  const here = moved.filter((loop) => areaOf(loop) === area && !isHoldUp(loop));
  const called = area ?? (moved.every((loop) => areaOf(loop) === null) ? "whole site" : "not written");
  const wireless = here.filter(({ treatment }) => treatment === "wireless");
  const wired = here.filter(staysOnWire);
  const proof = (loops: readonly CutOverLoop[]) =>
    draft("proveLoops", { area: called, names: names(loops) }, { area, loops: loops.map(({ key }) => key) });
  return [
    ...loopStep("fitWireless", wireless, { area }),
    ...(wireless.length === 0 ? [] : [proof(wireless)]),
    ...batchesOf({ loops: wired, minutesOf, mostMinutes: agreedDarkMinutes }).flatMap((batch) => [
      draft(
        "moveLoops",
        { area: called, names: names(batch.loops), minutes: `${batch.minutes} min` },
        { area, loops: batch.loops.map(({ key }) => key), darkMinutes: batch.minutes },
      ),
      proof(batch.loops),
    ]),
  ];
}

function holdUpSteps(loop: CutOverLoop): readonly Draft[] {
  const area = areaOf(loop);
  const waitsFor = ["agreeHoldUpSubstitute", "holdUpSubstituteInPlace"];
  return [
    ...(loop.treatment === "wireless" ? loopStep("fitWireless", [loop], { area }) : []),
    ...loopStep("disconnectHoldUp", [loop], { area, waitsFor }),
    ...(loop.treatment === "retire"
      ? loopStep("retireLoops", [loop], { area, waitsFor })
      : loopStep("pressHoldUp", [loop], { area })),
  ];
}

const hardwired = (mains: string | undefined): boolean => {
  const words = wordsOf(mains ?? "");
  return [["hardwired"], ["hard", "wired"]].some((phrase) => phraseAt(words, phrase) >= 0);
};

/** Only ever called for a job without a hold. */
function oldControlSteps(panel: CutOverPanel): readonly Draft[] {
  const mains = hardwired(panel.mains)
    ? "an electrician takes the transformer off first"
    : "unplug the mains transformer first";
  const fill = { place: placeOf(panel), mains };
  const more = { panel: panel.panel };
  const waitsFor = ["holdUpSubstituteInPlace", "walkTestAll", "signalsReceived"];
  return [
    ...(panel.sirens === 0 ? [] : [draft("removeSiren", fill, { ...more, waitsFor })]),
    draft("powerDownOld", fill, { ...more, waitsFor }),
    draft("checkPhoneLine", fill, { ...more, waitsFor }),
    draft("stripOut", fill, { ...more, waitsFor: [...waitsFor, "powerDownOld"] }),
  ];
}

/** Steps that change something at the old control; while a hold stands they wait for the release. */
const atOldControl = new Set(["moveLoops", "disconnectHoldUp", "retireLoops"]);

function numbered(drafts: readonly Draft[], held: boolean): readonly CutOverStep[] {
  return drafts.map(({ waitsFor = [], ...step }, index) => {
    const wanted = held && atOldControl.has(step.step) ? [...waitsFor, "obtainRelease"] : waitsFor;
    const after = drafts.flatMap((other, at) => {
      const same =
        other.loops.length === 0 || step.loops.length === 0 || other.loops.some((key) => step.loops.includes(key));
      const applies = same || other.step === "obtainRelease";
      return at < index && wanted.includes(other.step) && applies ? [at + 1] : [];
    });
    const { who, blanks } = onlyRow("cut-over-steps", cutOverSteps, (row) => row.step === step.step);
    return { number: index + 1, ...step, who, after, blanks };
  });
}

function timeQueries({
  moved,
  minutesOf,
  agreedDarkMinutes,
}: {
  readonly moved: readonly CutOverLoop[];
  readonly minutesOf: (loop: CutOverLoop) => number;
  readonly agreedDarkMinutes: number | undefined;
}): readonly Query[] {
  const about = { sheet: "Settings", row: null, column: "agreedDarkMinutes" };
  const wired = moved.filter((loop) => staysOnWire(loop) && !isHoldUp(loop));
  if (agreedDarkMinutes === undefined) {
    const message = "How long may openings of one area watch nothing? Agree it with the owner and enter the minutes.";
    return wired.length === 0 ? [] : [{ ...about, typed: "", message }];
  }
  return batchesOf({ loops: wired, minutesOf, mostMinutes: agreedDarkMinutes })
    .filter(({ minutes }) => minutes > agreedDarkMinutes)
    .map(({ loops, minutes }) => ({
      ...about,
      typed: `${agreedDarkMinutes}`,
      message: `${names(loops)} takes about ${minutes} min, more than the ${agreedDarkMinutes} min agreed. Agree a guard or a longer time for it.`,
      ...(loops[0] === undefined ? {} : { key: loops[0].key }),
    }));
}
