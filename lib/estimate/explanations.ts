import { choosePlan } from "../plan/choose-plan.js";
import { type Alternative, explainLoops, type LoopExplanation } from "../plan/explain-loop.js";
import type { CancelSignal, Solve } from "../plan/milp-model.js";
import type { Plan } from "../plan/plan.js";
import type { PlannedLoop } from "../plan/planned-loop.js";
import type { TreatmentKind } from "../plan/problem.js";
import { breakEvenHours } from "../pricing/break-even-hours.js";
import { formatMoney } from "../quantities/format-money.js";
import type { Cents } from "../quantities/money.js";
import { type Treatment, treatmentWords } from "../treatments/treatment.js";
import { itemsCents, workCents } from "../treatments/work-cents.js";
import { planKindOf } from "./pins.js";
import type { PreparedJob } from "./prepare-job.js";

/** Why one loop got its treatment, in money. Costs are ours, before margin and tax. */
export interface WhyTreatment {
  readonly key: string;
  /** Another kind with everything else held fixed; null when there is none. [cents more] */
  readonly heldFixed: { readonly kind: TreatmentKind; readonly moreCents: Cents } | null;
  /** The cheapest plan without the chosen kind for this loop; null when there is none or it was not asked for. */
  readonly replanned: {
    readonly kind: TreatmentKind;
    readonly moreCents: Cents;
    readonly otherLoops: readonly string[];
    readonly differences: Alternative["differences"];
  } | null;
  /** What following the recommendation would cost more than the plan; null where the plan follows it. [cents] */
  readonly recommendedMoreCents: Cents | null;
  /** Hours of repair at which repairing and replacing cost the same; null where no repair is offered. [h] */
  readonly breakEvenHours: number | null;
  readonly words: string;
}

/** Most loops explained by a new plan each; the loops that depart from their recommendation come first. */
const mostExplained = 40;

/** For each loop with a choice: what the next best kind would cost, and how far the plan departs from what it deserves. */
export async function whyTreatments({
  prepared,
  plan,
  planned,
  solve,
  seconds,
  signal,
}: {
  readonly prepared: PreparedJob;
  readonly plan: Plan;
  readonly planned: readonly PlannedLoop[];
  readonly solve: Solve;
  readonly seconds: number;
  readonly signal?: CancelSignal;
}): Promise<readonly WhyTreatment[]> {
  const { problem, treatments } = prepared;
  const chosen = new Map(plan.choices.map(({ loop, kind }) => [loop, kind]));
  const got = new Map(planned.map(({ key, treatment }) => [key, treatment]));
  const departs = (key: string, recommended: Treatment) =>
    got.get(key) !== recommended && chosen.get(key) !== undefined && chosen.get(key) !== planKindOf[recommended];
  const open = treatments.filter((loop) => loop.keep.length + loop.repair.length + loop.withoutInput.length > 1);
  const ordered = [
    ...open.filter(({ key, recommended }) => departs(key, recommended)),
    ...open.filter(({ key, recommended }) => !departs(key, recommended)),
  ].slice(0, mostExplained);
  const cancel = signal ? { signal } : {};
  const explained = await explainLoops({
    problem,
    plan,
    solve,
    seconds: seconds / 2,
    loops: ordered.map(({ key }) => key),
    ...cancel,
  });
  const byLoop = new Map(explained.map((one) => [one.loop, one]));
  const whys: WhyTreatment[] = [];
  for (const loop of ordered) {
    const explanation = byLoop.get(loop.key);
    if (!explanation) continue;
    let recommendedMoreCents: Cents | null = null;
    if (departs(loop.key, loop.recommended)) {
      const kind = planKindOf[loop.recommended];
      recommendedMoreCents = await moreFor({ prepared, plan, explanation, kind, solve, seconds: seconds / 20, cancel });
    }
    const hours = breakEven(prepared, loop.key);
    whys.push({
      key: loop.key,
      heldFixed: explanation.heldFixed && short(explanation.heldFixed),
      replanned: explanation.replanned && {
        ...short(explanation.replanned),
        otherLoops: explanation.replanned.otherLoops,
        differences: explanation.replanned.differences,
      },
      recommendedMoreCents,
      breakEvenHours: hours,
      words: whyWords({ prepared, explanation, loop, recommendedMoreCents, hours }),
    });
  }
  return whys;
}

const short = ({ choice, moreCents }: Alternative) => ({ kind: choice.kind, moreCents });

/** What the plan would cost more with this loop pinned to a kind. */
async function moreFor({
  prepared,
  plan,
  explanation,
  kind,
  solve,
  seconds,
  cancel,
}: {
  readonly prepared: PreparedJob;
  readonly plan: Plan;
  readonly explanation: LoopExplanation;
  readonly kind: TreatmentKind;
  readonly solve: Solve;
  readonly seconds: number;
  readonly cancel: { readonly signal?: CancelSignal };
}): Promise<Cents | null> {
  if (explanation.replanned?.choice.kind === kind) return explanation.replanned.moreCents;
  const { problem } = prepared;
  const pins = [
    ...(problem.pins ?? []).filter(({ loop }) => loop !== explanation.loop),
    { loop: explanation.loop, kind },
  ];
  const other = await choosePlan({ problem: { ...problem, pins }, solve, seconds, breakTies: false, ...cancel });
  return other.costCents === null || plan.costCents === null ? null : other.costCents - plan.costCents;
}

function breakEven({ treatments, rates, job }: PreparedJob, key: string): number | null {
  const loop = treatments.find((one) => one.key === key);
  const repair = loop?.repair.find(({ treatment }) => treatment !== "measureAgain");
  if (!repair) return null;
  const { fallback, succeeds } = repair;
  const replaceCents =
    workCents({ work: fallback.work, rates }) + itemsCents({ items: fallback.items, book: rates.book });
  const question = { replaceCents, repairMaterialCents: 0, centsPerHour: rates.labourCentsPerHour, succeeds };
  return breakEvenHours({ ...question, capHours: job.repairCapHours }).hours;
}

const kindWords: Readonly<Record<TreatmentKind, string>> = {
  keep: "keeping it on the wire",
  repair: "repairing or reading it again first",
  wireless: "wireless",
  retire: "retiring it",
  excluded: "leaving it alone",
};

function whyWords({
  prepared,
  explanation,
  loop,
  recommendedMoreCents,
  hours,
}: {
  readonly prepared: PreparedJob;
  readonly explanation: LoopExplanation;
  readonly loop: PreparedJob["treatments"][number];
  readonly recommendedMoreCents: Cents | null;
  readonly hours: number | null;
}): string {
  const { currency } = prepared.survey.site;
  const money = (cents: number) => formatMoney({ cents: Math.abs(cents), currency });
  const parts: string[] = [];
  if (recommendedMoreCents !== null) {
    const difference =
      recommendedMoreCents > 0
        ? `would cost ${money(recommendedMoreCents)} more over the whole job`
        : "would cost the same over the whole job";
    parts.push(`By itself it deserves: ${treatmentWords[loop.recommended]}; that ${difference}.`);
  }
  const { heldFixed, replanned } = explanation;
  if (heldFixed && recommendedMoreCents === null) {
    parts.push(
      `Next cheapest is ${kindWords[heldFixed.choice.kind]}: ${money(heldFixed.moreCents)} more with all else as planned`,
    );
    if (replanned && replanned.moreCents !== heldFixed.moreCents) {
      parts.push(`(${money(replanned.moreCents)} more if the rest is planned anew).`);
    } else parts[parts.length - 1] += ".";
  }
  if (hours !== null) parts.push(`Repair pays up to ${hours.toFixed(1)} h of fault finding.`);
  return parts.join(" ");
}
