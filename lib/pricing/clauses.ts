import { calendarDaysFrom } from "../purchasing/working-days.js";

/** What a clause needs to know of one loop. */
export interface ClauseLoop {
  readonly key: string;
  /** Loop name as the customer knows it. */
  readonly name: string;
  readonly treatment: string;
  readonly openingsProved: { readonly proved: number; readonly total: number };
  /** Where the resistor sits when the work is done; null = none or off the wire. */
  readonly eolAt: "device" | "panel" | null;
  /** Other loops on the same input. */
  readonly sharedWith: readonly string[];
  /** Condition is most probable but below the wanted certainty. */
  readonly uncertain: boolean;
  readonly ownerSignedRetire: boolean;
}

export interface ClauseInput {
  readonly loops: readonly ClauseLoop[];
  /** Date of the readings, YYYY-MM-DD; absent = not written. */
  readonly surveyedOn?: string;
  readonly quotedOn?: string;
  readonly validDays: number;
  readonly repairCapHours: number;
  /** Sell price of a wireless sensor for one opening, as text with its currency. */
  readonly wirelessPrice: string;
  /** Demo prices were used. */
  readonly demoPrices: boolean;
}

export interface Clause {
  readonly id: string;
  readonly words: string;
  /** Keys of the loops it is about; empty = the job. */
  readonly loops: readonly string[];
}

/**
 * Clauses of the quote in own words, from the state of the loops: readings and hidden cable, openings not proved,
 * repair cap, resistor at the panel, shared inputs, retired loops, life safety, access, validity. A clause appears only
 * where a loop or a fact calls for it.
 * @example clausesFor({ loops, validDays: 30, repairCapHours: 1, wirelessPrice: "104.00 USD", demoPrices: false })
 */
export function clausesFor(input: ClauseInput): readonly Clause[] {
  const { loops } = input;
  const clauses: Clause[] = [];
  const add = (id: string, about: readonly ClauseLoop[], words: (names: string, one: boolean) => string): void => {
    if (about.length === 0) return;
    const names = about.map(({ name }) => name).join(", ");
    clauses.push({ id, words: words(names, about.length === 1), loops: about.map(({ key }) => key) });
  };
  const kept = loops.filter(({ treatment }) =>
    ["keep", "fitEol", "changeEol", "repair", "rewire", "split"].includes(treatment),
  );
  const read = input.surveyedOn === undefined ? "on the day of the survey" : `on ${input.surveyedOn}`;
  add(
    "readings",
    kept,
    (names, one) =>
      `${one ? `Loop ${names} stays on its` : `Loops ${names} stay on their`} old cable on the strength of readings taken ${read}. Cable inside walls was not seen and its later condition is not warranted.`,
  );
  add(
    "notProved",
    kept.filter(({ openingsProved: { proved, total } }) => proved < total),
    (names, one) =>
      `Not every opening of ${one ? "loop" : "loops"} ${names} was opened while metering. They are tried one by one during the work; what then fails is priced as an extra.`,
  );
  add(
    "repairCap",
    loops.filter(
      ({ treatment, uncertain }) =>
        treatment === "repair" || treatment === "rewire" || (treatment === "measureAgain" && uncertain),
    ),
    (names, one) =>
      `Fault finding on ${one ? "loop" : "loops"} ${names} is limited to ${input.repairCapHours} h for each loop. After that, and after your approval, a wireless sensor is fitted at ${input.wirelessPrice} for each opening.`,
  );
  add(
    "uncertain",
    kept.filter(({ uncertain }) => uncertain),
    (names, one) =>
      `The readings of ${one ? "loop" : "loops"} ${names} allow more than one explanation. The price holds the odds of each; should ${one ? "it" : "most of them"} turn out badly, we show the readings before any extra work.`,
  );
  add(
    "eolAtPanel",
    loops.filter(({ eolAt }) => eolAt === "panel"),
    (names, one) =>
      `The resistor of ${one ? "loop" : "loops"} ${names} sits at the panel. Cutting or shorting ${one ? "its" : "their"} cable may not be reported. You accept this for ${one ? "this loop" : "these loops"}.`,
  );
  add(
    "sharedInput",
    loops.filter(({ sharedWith }) => sharedWith.length > 0),
    (names) =>
      `Loops ${names} share an input with another loop and are shown under one name; only the loop that carries the resistor is supervised against a short. You consent to this.`,
  );
  add(
    "retired",
    loops.filter(({ treatment }) => treatment === "retire"),
    (names, one) =>
      `${one ? `Loop ${names} is taken out of use and tagged. Its` : `Loops ${names} are taken out of use and tagged. Their`} openings are not watched any more${loops.some((loop) => loop.treatment === "retire" && !loop.ownerSignedRetire) ? "; this needs your signature before the work begins" : ""}.`,
  );
  add(
    "lifeSafety",
    loops.filter(({ treatment }) => treatment === "excluded"),
    (names, one) =>
      one
        ? `Loop ${names} may serve life safety. It is no part of this work and is not touched; the responsible contractor decides about it.`
        : `Loops ${names} may serve life safety. They are no part of this work and are not touched; the responsible contractor decides about them.`,
  );
  const job = (id: string, words: string) => clauses.push({ id, words, loops: [] });
  job(
    "site",
    "Walls and woodwork are patched ready for paint. No hazardous material is worked on. Access to every room, ladder space and power are provided by you.",
  );
  job("validity", validity(input));
  if (input.demoPrices) job("demoPrices", "DEMO PRICES: every price is invented. This is not an offer.");
  return clauses;
}

function validity({ quotedOn, validDays }: ClauseInput): string {
  if (quotedOn === undefined) return `The quote holds for ${validDays} days from its date.`;
  return `The quote holds until ${calendarDaysFrom({ from: quotedOn, days: validDays })}.`;
}

/** What is left to others unless the bill lists it; hazardous material, access and life safety have clauses of their own. */
export const notInPrice: readonly string[] = [
  "Control, keypads, sirens, communicator, permits and subscriptions, unless listed on the bill.",
  "Work of a licensed electrician and of the contractor responsible for life safety.",
  "Lift hire and painting.",
];
