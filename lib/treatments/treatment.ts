/** What is done with one loop. */
export type Treatment =
  | "keep"
  | "fitEol"
  | "changeEol"
  | "repair"
  | "rewire"
  | "split"
  | "wireless"
  | "measureAgain"
  | "retire"
  | "excluded";

/** The treatments for people. */
export const treatmentWords: Readonly<Record<Treatment, string>> = {
  keep: "keep on the wire",
  fitEol: "keep, fit an end-of-line resistor",
  changeEol: "keep, change the end-of-line resistor",
  repair: "repair, then keep",
  rewire: "rewire, then keep",
  split: "split: the other contacts stay on the wire, the detector or daily door becomes wireless",
  wireless: "wireless",
  measureAgain: "measure again first",
  retire: "retire and tag",
  excluded: "excluded: do not touch",
};

/** Some hours' work and some parts: the one unit that plan, bill, labour and price all reckon with. */
export interface Work {
  /** Labour tasks by their key in the labour table, and how often. */
  readonly tasks: readonly { readonly task: string; readonly count: number }[];
  /** Articles by price-book code, and how many units. */
  readonly parts: readonly { readonly code: string; readonly quantity: number; readonly rule: string }[];
}

/** Nothing to do. */
export const noWork: Work = { tasks: [], parts: [] };

/** Two pieces of work as one. */
export function bothWorks(a: Work, b: Work): Work {
  return { tasks: [...a.tasks, ...b.tasks], parts: [...a.parts, ...b.parts] };
}

/** A module profile set to one EOL value: what a planning problem calls a module type. */
export interface ModuleSetting {
  /** Name in the plan, for instance "six, 2.2 kΩ". */
  readonly id: string;
  readonly type: string;
  /** EOL value the module is set to. [Ω] */
  readonly eolOhms: number;
}

/** The loop stays on the wire at one module setting. */
export interface KeepWork {
  readonly kind: "keep";
  readonly treatment: "keep" | "fitEol" | "changeEol" | "split";
  readonly module: string;
  /** Work whatever happens at the far end: verify, land, label, commission, walk test. */
  readonly base: Work;
  /** Work when this loop carries the EOL of its input. */
  readonly setEol: Work;
  /** Work when another loop carries it and this one's EOL must come out. */
  readonly removeEol: Work;
  /** Where the EOL will sit when this loop carries it. */
  readonly eolAt: "device" | "panel";
  /** Its value, and whether it is a new one. [Ω] */
  readonly eolOhms: number;
  readonly eolIsNew: boolean;
  /** Wireless articles that come with it (a split keeps an input and adds devices). */
  readonly items: Readonly<Record<string, number>>;
  readonly radioDevices: number;
  readonly supplyMilliamps: number;
  /** What the readings leave open: the chance that the loop is not what keeping takes it for. */
  readonly risk: LoopRisk;
  readonly why: string;
}

/** What may still go wrong with a loop, and what then happens: a repair first where `repairs` > 0, then the fall-back. */
export interface LoopRisk {
  /** Chance that it goes wrong. */
  readonly probability: number;
  /** Chance that a repair then cures it; 0 = straight to the fall-back. */
  readonly repairs: number;
  readonly repair: Work;
  /** undefined where the price book has no wireless device for it. */
  readonly fallback: WithoutInputWork | undefined;
}

/** The loop is repaired, rewired or measured again first; it holds one input by itself and has a fall-back. */
export interface RepairWork {
  readonly kind: "repair";
  readonly treatment: "repair" | "rewire" | "measureAgain";
  readonly module: string;
  readonly work: Work;
  /** Probability that the loop stays on the wire after the work. */
  readonly succeeds: number;
  readonly fallback: WithoutInputWork;
  readonly eolAt: "device" | "panel";
  readonly eolOhms: number;
  readonly eolIsNew: boolean;
  readonly supplyMilliamps: number;
  readonly why: string;
}

/**
 * The loop needs no wired input: wireless devices, retired with a signature, or left alone; "measureAgain" is a pair
 * that nobody may work on yet (volts from elsewhere, or nothing known of it): it is read again before anything else.
 */
export interface WithoutInputWork {
  readonly kind: "wireless" | "retire" | "excluded";
  readonly treatment: "wireless" | "retire" | "excluded" | "measureAgain";
  readonly work: Work;
  readonly items: Readonly<Record<string, number>>;
  readonly radioDevices: number;
  /** What may have to follow; absent = nothing. */
  readonly risk?: LoopRisk;
  readonly why: string;
}

/** Everything one loop may get, with what it deserves by itself. */
export interface LoopTreatments {
  readonly key: string;
  readonly panel: string;
  readonly recommended: Treatment;
  readonly needsSupply: boolean;
  /** Why `recommended`, with its arithmetic. */
  readonly reason: string;
  readonly keep: readonly KeepWork[];
  readonly repair: readonly RepairWork[];
  readonly withoutInput: readonly WithoutInputWork[];
  /** Loops with an equal key (and panel) may share an input in series; null = never joined. */
  readonly joinKey: string | null;
  /** Ohms of the pair's conductors alone, out and back, the highest expected. [Ω] */
  readonly conductorOhms: number;
  readonly openings: number;
}
