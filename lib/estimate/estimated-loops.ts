import type { LoopJudgement } from "../findings/loop-record.js";
import type { PlannedLoop } from "../plan/planned-loop.js";
import type { Query } from "../problems/query.js";
import { formatOhms } from "../quantities/format-ohms.js";
import { roundCents } from "../quantities/money.js";
import type { Survey, SurveyLoop } from "../survey/survey.js";
import type { FittedModule } from "../terminals/terminal-schedule.js";
import { isLeftAlone } from "../treatments/recommend.js";
import type { LoopTreatments } from "../treatments/treatment.js";
import { itemsCents, riskCents, type WorkRates, workCents, workHours } from "../treatments/work-cents.js";
import { expectedShutOhms } from "./as-left.js";
import type { EstimatedLoop, LoopCost } from "./estimate.js";

interface LoopInputs {
  readonly survey: Survey;
  readonly judgements: readonly LoopJudgement[];
  readonly treatments: readonly LoopTreatments[];
  readonly planned: readonly PlannedLoop[];
  readonly fitted: readonly FittedModule[];
  readonly rates: WorkRates;
}

/** One record for each survey row: what it is, what it gets, why, and what it should read when done. */
export function estimatedLoops(inputs: LoopInputs): {
  readonly loops: readonly EstimatedLoop[];
  readonly queries: readonly Query[];
} {
  const queries: Query[] = [];
  const loops = inputs.survey.loops.flatMap((loop, index) => {
    const judgement = inputs.judgements[index];
    const treatment = inputs.treatments[index];
    const planned = inputs.planned.find(({ key }) => key === loop.key);
    if (!judgement || !treatment || !planned) return [];
    queries.push(...lifeSafetyQueries(loop, judgement));
    return [estimatedLoop({ ...inputs, loop, judgement, treatment, planned, all: inputs.planned })];
  });
  return { loops, queries };
}

function lifeSafetyQueries(loop: SurveyLoop, judgement: LoopJudgement): readonly Query[] {
  if (!isLeftAlone(judgement)) return [];
  const words = judgement.facts.map((fact) => fact.words).join(" ");
  const mend = loop.markedLifeSafety
    ? "A marked life-safety circuit is never released here."
    : "If a person has seen the device and it is something else, enter who saw it and what it is.";
  const typed = loop.label ?? loop.protects ?? loop.loop;
  return [
    {
      sheet: loop.sheet,
      row: loop.row,
      column: null,
      typed,
      message: `${words} Left alone and excluded. ${mend}`.trim(),
      key: loop.key,
    },
  ];
}

function estimatedLoop({
  loop,
  judgement,
  treatment,
  planned,
  all,
  fitted,
  survey,
  rates,
}: Pick<LoopInputs, "fitted" | "survey" | "rates"> & {
  readonly loop: SurveyLoop;
  readonly judgement: LoopJudgement;
  readonly treatment: LoopTreatments;
  readonly planned: PlannedLoop;
  readonly all: readonly PlannedLoop[];
}): EstimatedLoop {
  const landed = fitted
    .flatMap((module) => module.inputs.map((input) => ({ module, input })))
    .find(({ input }) => input.loops.includes(loop.key));
  const members = landed?.input.loops ?? [];
  const together = survey.loops.filter(({ key }) => members.includes(key));
  const detectorsIn = planned.treatment !== "split";
  const shut = landed ? shutBand(together, carrierEol(all, members), detectorsIn) : null;
  const normallyOpen = loop.contactForm === "NO" || judgement.condition === "normallyOpen";
  const excluded = isLeftAlone(judgement);
  return {
    row: loop.row,
    key: loop.key,
    loop: loop.loop,
    panel: loop.panel,
    tag: loop.label ?? null,
    protects: loop.protects ?? null,
    condition: judgement.condition,
    probability: judgement.probability,
    findings: judgement.findings,
    facts: judgement.facts,
    cannotTell: judgement.cannotTell,
    next: excluded ? [] : judgement.next.map((next) => ({ ...next, narrowsCents: 0 })),
    openingsProved: judgement.openingsProved,
    treatment: planned.treatment,
    recommended: treatment.recommended,
    needsSupply: planned.needsSupply && planned.input !== null && planned.supplyMilliamps >= 0,
    input: landed
      ? {
          module: landed.module.name,
          number: landed.input.number,
          sharedWith: members.filter((key) => key !== loop.key),
        }
      : null,
    wireless: Object.entries(planned.items).map(([code, count]) => ({ code, count })),
    reason: reasonOf({ loop, treatment, planned }),
    cost: loopCost(planned, rates),
    expectedAsLeft:
      shut && !excluded ? { shut, opened: normallyOpen ? pressedBand(together, detectorsIn) : "OL" } : null,
  };
}

function loopCost({ work, items, risk }: PlannedLoop, rates: WorkRates): LoopCost {
  const hours = workHours({ work, labour: rates.labour });
  const labourCents = roundCents(hours * rates.labourCentsPerHour);
  const partsCents = roundCents(workCents({ work: { tasks: [], parts: work.parts }, rates }));
  const devicesCents = roundCents(itemsCents({ items, book: rates.book }));
  const own = risk ? roundCents(riskCents({ risk, rates })) : 0;
  return {
    hours,
    labourCents,
    partsCents,
    devicesCents,
    riskProbability: risk?.probability ?? 0,
    riskCents: own,
    costCents: labourCents + partsCents + devicesCents + own,
  };
}

/** The resistor an input ends in: that of the loop which carries it. */
function carrierEol(planned: readonly PlannedLoop[], members: readonly string[]): PlannedLoop["eol"] {
  return planned.find(({ key, eol }) => members.includes(key) && eol !== null)?.eol ?? null;
}

/** Band of an input: every pair on it in series, and the one resistor. [Ω] */
function shutBand(
  loops: readonly SurveyLoop[],
  eol: PlannedLoop["eol"],
  detectorsIn: boolean,
): { lowOhms: number; highOhms: number } {
  const bands = loops.map((loop, index) => expectedShutOhms({ loop, eol: index === 0 ? eol : null, detectorsIn }));
  const total = (pick: (band: { lowOhms: number; highOhms: number }) => number) =>
    bands.reduce((sum, band) => sum + pick(band), 0);
  return { lowOhms: total(({ lowOhms }) => lowOhms), highOhms: total(({ highOhms }) => highOhms) };
}

/** A normally-open device that is pressed bridges the resistor: what is left is the pair as far as to it. [Ω] */
function pressedBand(loops: readonly SurveyLoop[], detectorsIn: boolean): { lowOhms: number; highOhms: number } {
  return { lowOhms: 0, highOhms: shutBand(loops, null, detectorsIn).highOhms };
}

/** Readings, band and verdict in one sentence each; then what the plan does with it. */
function reasonOf({
  loop,
  treatment,
  planned,
}: {
  readonly loop: SurveyLoop;
  readonly treatment: LoopTreatments;
  readonly planned: PlannedLoop;
}): string {
  const parts: string[] = [];
  if (treatment.recommended !== "excluded" && typeof loop.closed?.ohms === "number") {
    const eolOhms =
      planned.eol && !planned.eol.isNew ? planned.eol.ohms : loop.eolPlace === "device" ? loop.eolOhms : undefined;
    const band = expectedShutOhms({
      loop,
      eol: eolOhms === undefined ? null : { ohms: eolOhms, at: "device", isNew: false },
    });
    const resistor = eolOhms === undefined ? "" : ` with a ${formatOhms(eolOhms)} resistor ± 8 %`;
    parts.push(
      `Reads ${formatOhms(loop.closed.ohms)} shut; this run and these openings should read ${formatOhms(band.lowOhms)} to ${formatOhms(band.highOhms)}${resistor}.`,
    );
  }
  parts.push(sentence(treatment.reason));
  if (planned.risk?.fallback && planned.risk.repairs === 0) parts.push(`If that fails: ${planned.risk.fallback.why}.`);
  else if (Object.keys(planned.items).length > 0 && planned.why !== "") parts.push(sentence(planned.why));
  if (planned.supplyCure !== undefined) parts.push(sentence(`supply: ${planned.supplyCure}`));
  return parts.join(" ");
}

const sentence = (text: string) =>
  text === "" ? "" : `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? "" : "."}`;
