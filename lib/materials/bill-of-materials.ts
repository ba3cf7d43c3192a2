import type { PlannedLoop } from "../plan/planned-loop.js";
import type { Article, PriceBook } from "../price-book/article.js";
import type { JobSettings } from "../price-book/job-settings.js";
import { articleByCode, articlesOfClass } from "../price-book/look-up.js";
import { withSpares } from "../price-book/with-spares.js";
import type { InputModuleProfile } from "../survey/survey.js";
import type { FittedModule, TerminalRow } from "../terminals/terminal-schedule.js";
import type { Work } from "../treatments/treatment.js";

/** How many units of one article the job needs, before packs and stock. */
export interface MaterialNeed {
  readonly code: string;
  readonly description: string;
  readonly class: string;
  readonly unit: string;
  readonly taxClass: string;
  /** Before spares and waste. */
  readonly bare: number;
  /** With spares and waste, whole units. */
  readonly need: number;
  /** The rule in words, with its arithmetic. */
  readonly rule: string;
  /** Loops (keys) that cause it; empty = the job as a whole. */
  readonly loops: readonly string[];
  /** Wire only: the lengths that must each be in one piece, waste included, with the loop (key) each is for. */
  readonly pieces?: readonly WirePiece[];
}

/** One length of wire without a joint. */
export interface WirePiece {
  /** Loop (key); absent = the job as a whole. */
  readonly loop: string | undefined;
  /** In the article's unit of length. */
  readonly quantity: number;
}

/** Class of the articles that are cut from spools. */
const wireClass = "wire";

/** What the materials of a job are gathered from. */
export interface MaterialInputs {
  readonly planned: readonly PlannedLoop[];
  readonly fitted: readonly FittedModule[];
  readonly terminals: readonly TerminalRow[];
  readonly profiles: readonly InputModuleProfile[];
  readonly locations: readonly Work[];
  /** Work of the job that belongs to no loop and no place with modules, such as repeaters. */
  readonly others?: readonly Work[];
  readonly book: PriceBook;
  readonly job: JobSettings;
  /** Devices that come off walls without a successor, keypads among them. [count] */
  readonly removedDevices: number;
}

interface Gathered {
  bare: number;
  readonly rules: Set<string>;
  readonly loops: Set<string>;
  readonly pieces: WirePiece[];
}

/** The bill of materials of a job: every article with its quantity rule and the loops that cause it. */
export function billOfMaterials(inputs: MaterialInputs): readonly MaterialNeed[] {
  const { book } = inputs;
  const gathered = new Map<string, Gathered>();
  const add = (code: string | undefined, quantity: number, rule: string, loop?: string): void => {
    if (code === undefined || quantity === 0) return;
    const entry = gathered.get(code) ?? { bare: 0, rules: new Set<string>(), loops: new Set<string>(), pieces: [] };
    entry.bare += quantity;
    entry.pieces.push({ loop, quantity });
    entry.rules.add(rule);
    if (loop !== undefined) entry.loops.add(loop);
    gathered.set(code, entry);
  };
  const first = (wanted: string) => articlesOfClass({ book, class: wanted })[0]?.code;
  for (const module of inputs.fitted) {
    const code = inputs.profiles.find(({ type }) => type === module.type)?.priceCode;
    const carried = module.inputs.flatMap(({ loops }) => loops);
    add(code, 1, "inputs used and spare inputs ÷ inputs of a module, per place and EOL value");
    for (const loop of carried) gathered.get(code ?? "")?.loops.add(loop);
  }
  for (const loop of inputs.planned) {
    for (const { code, quantity, rule } of loop.work.parts) add(code, quantity, rule, loop.key);
    for (const [code, count] of Object.entries(loop.items))
      add(code, count, "one for each opening or detector", loop.key);
  }
  for (const { parts } of [...inputs.locations, ...(inputs.others ?? [])])
    for (const { code, quantity, rule } of parts) add(code, quantity, rule);
  const wired = inputs.planned.filter(({ input }) => input !== null).length;
  const radio = inputs.planned.reduce((sum, { items }) => sum + Object.values(items).reduce((a, b) => a + b, 0), 0);
  const lots = Math.ceil(inputs.planned.length / 30);
  const looseEnds = inputs.terminals.filter(
    ({ terminal, conductor }) => terminal.startsWith("terminal strip") && conductor !== "B shared",
  ).length;
  add(first("terminalStrip"), Math.ceil(looseEnds / 12), "conductors that need one ÷ 12 ways");
  add(first("labelKit"), lots, "one kit for 30 loops, both ends");
  add(first("fixingsLot"), lots, "one lot for 30 loops");
  add(first("grommet"), 2 * inputs.locations.length, "2 for each place with modules");
  add(first("cellsSet"), Math.ceil(radio / 10), "one spare set for 10 wireless devices");
  add(first("blankPlate"), inputs.removedDevices, "devices removed and not replaced");
  if (wired + radio === 0) return [];
  return [...gathered].flatMap(([code, gatheredOf]) => {
    const article = articleByCode({ book, code });
    return article ? [needOf(article, gatheredOf, inputs.job)] : [];
  });
}

function needOf(article: Article, { bare, rules, loops, pieces }: Gathered, job: JobSettings): MaterialNeed {
  const wire = article.class === wireClass;
  const { need, words } = withSpares({
    class: article.class,
    count: bare,
    ...(wire ? { fraction: job.waste } : {}),
  });
  const { code, description, unit, taxClass } = article;
  return {
    code,
    description,
    class: article.class,
    unit,
    taxClass,
    bare,
    need,
    rule: [...rules, ...(words === "" ? [] : [words])].join("; "),
    loops: [...loops],
    ...(wire ? { pieces: pieces.map(({ loop, quantity }) => ({ loop, quantity: quantity * (1 + job.waste) })) } : {}),
  };
}
