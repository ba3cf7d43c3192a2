import type { Condition, LoopJudgement } from "../findings/loop-record.js";
import { repairOdds } from "../reference/generated/repair-odds.js";
import type { SurveyLoop } from "../survey/survey.js";
import { holdsPoweredDetector, poweredAmongContacts } from "./loop-devices.js";
import type { Treatment } from "./treatment.js";

/** Conditions in which the pair itself carries on: at most its end-of-line resistor changes. */
export const keepableConditions: readonly Condition[] = [
  "soundEolAtEnd",
  "soundNoEol",
  "eolInPanel",
  "wrongEol",
  "doubleEol",
  "normallyOpen",
  "tamperLoop",
];

/** From this chance of success on, a loop by itself deserves a repair rather than wireless devices. */
export const repairWorthFrom = 0.5;

/** Whether the judgement ends in "leave it alone": life safety, marked, worded or suspected. */
export function isLeftAlone(judgement: LoopJudgement): boolean {
  return judgement.action === "leaveAlone" || judgement.condition === "lifeSafety";
}

/** Chance of repair by condition: the table's, or what finished jobs made of it. */
export type OddsTable = readonly {
  readonly condition: string;
  readonly succeeds: number;
  readonly treatment: string;
  readonly work: string;
}[];

/** Chance that a repair of this condition keeps the loop on the wire, with the usual work; null = not repairable. */
export function oddsOfRepair(
  condition: Condition,
  table: OddsTable = repairOdds,
): { succeeds: number; treatment: "repair" | "rewire"; work: string } | null {
  const row = table.find((odds) => odds.condition === condition);
  if (!row) return null;
  return { succeeds: row.succeeds, treatment: row.treatment === "rewire" ? "rewire" : "repair", work: row.work };
}

/** Probability that the pair carries on as it is, by the judgement. */
export function keepableProbability(judgement: LoopJudgement): number {
  return judgement.findings
    .filter(({ condition }) => keepableConditions.includes(condition))
    .reduce((sum, { probability }) => sum + probability, 0);
}

/** What a loop by itself deserves, whatever the others get and whatever it costs beside them. */
export interface Recommendation {
  readonly treatment: Treatment;
  readonly needsSupply: boolean;
  readonly why: string;
}

/**
 * What one loop by itself deserves, from its judgement and devices.
 * `settable` says whether some module on offer can be set to an EOL value within its band.
 */
export function recommendTreatment({
  loop,
  judgement,
  settable,
  repairOdds: table,
}: {
  readonly loop: SurveyLoop;
  readonly judgement: LoopJudgement;
  readonly settable: (eolOhms: number) => boolean;
  /** Absent = the reference table. */
  readonly repairOdds?: OddsTable | undefined;
}): Recommendation {
  const needsSupply = holdsPoweredDetector(loop);
  const say = (treatment: Treatment, why: string, supply = false): Recommendation => ({
    treatment,
    needsSupply: supply && needsSupply,
    why,
  });
  if (isLeftAlone(judgement)) {
    const why = judgement.facts.map(({ words }) => words).join(" ");
    return say("excluded", why === "" ? "may be life safety: left alone until somebody has seen the device" : why);
  }
  const mixed = poweredAmongContacts(loop);
  const wire = (treatment: Treatment, why: string): Recommendation =>
    mixed.length > 0
      ? say(
          "split",
          `${why}; a powered detector in one loop with contacts: a lost supply would look like an opened one`,
        )
      : say(treatment, why, true);
  switch (judgement.action) {
    case "keep": {
      const nominal = judgement.eol?.nominal;
      if (nominal === undefined || settable(nominal))
        return wire("keep", "reads as expected with its resistor at the far end");
      return wire("changeEol", `no module on offer can be set to ${nominal} Ω`);
    }
    case "fitEol":
      return wire("fitEol", "the pair reads as expected and has no resistor at its far end");
    case "changeEol":
      return wire("changeEol", "the resistor is not the one an input expects");
    case "landAsNormallyOpen":
      return wire(
        judgement.eol ? "keep" : "fitEol",
        "normally open: alarm on short, resistor across the farthest contact",
      );
    case "repair": {
      const odds = oddsOfRepair(judgement.condition, table);
      if (odds && odds.succeeds >= repairWorthFrom) {
        return say(odds.treatment, `${odds.work}: stays on the wire in about ${percent(odds.succeeds)}`, true);
      }
      return say("wireless", `a repair holds in only about ${percent(odds?.succeeds ?? 0)} of such loops`);
    }
    case "powerAndRetest":
      return say(
        "measureAgain",
        "a detector read without its supply says nothing of the loop: power it and read again",
        true,
      );
    default:
      return say("measureAgain", unsettled(judgement));
  }
}

/** Missing readings that leave a loop open, in the order in which they are named. */
const missing = ["noClosed", "noOpened", "notLifted", "voltsUnknown", "foreignVolts"];

/** What is missing, and which conditions the readings still allow. */
function unsettled({ facts, findings }: LoopJudgement): string {
  const gaps = facts.filter(({ fact }) => missing.includes(fact)).map(({ words }) => words);
  const still = findings
    .filter(({ probability }) => probability >= 0.05)
    .slice(0, 3)
    .map(({ words, probability }) => `${firstClause(words)} (${percent(probability)})`);
  return [...gaps, still.length > 1 ? `Still possible: ${still.join("; ")}` : ""]
    .filter((part) => part !== "")
    .join(" ");
}

const firstClause = (words: string) => (words.split(/[:.]/)[0] ?? words).toLowerCase();

const percent = (fraction: number) => `${Math.round(fraction * 20) * 5} %`;
