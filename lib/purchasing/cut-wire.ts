import type { MaterialNeed, WirePiece } from "../materials/bill-of-materials.js";
import type { Solve } from "../plan/milp-model.js";
import type { Article, PriceBook } from "../price-book/article.js";
import { articleByCode, articlesOfClass } from "../price-book/look-up.js";
import type { Query } from "../problems/query.js";
import { metersPerUnit } from "../quantities/length-unit.js";
import { cutFrom } from "./cut-from.js";
import type { CutPlan, CutSpool } from "./cut-records.js";
import type { Need } from "./order-records.js";
import { spoolsOf } from "./spools-of.js";

/** One spool of wire and what is cut from it, longest piece first; no piece is made of two. */
export interface WireSpool {
  readonly code: string;
  /** Unit of the lengths. */
  readonly unit: string;
  /** Number among the spools of the code. */
  readonly number: number;
  readonly fromStock: boolean;
  /** Usable length of the spool. [units] */
  readonly holds: number;
  readonly cuts: readonly WirePiece[];
  /** What stays on it. [units] */
  readonly leftOver: number;
}

export interface WireOrder {
  /** The needs with wire lines rewritten to the spools that are really used. */
  readonly needs: readonly MaterialNeed[];
  /** What to order for them: wire in whole spools beside what the van's spools give. */
  readonly toOrder: readonly Need[];
  /** The book with the van's wire as the cut list takes it, so that nothing is taken that does not fit. */
  readonly book: PriceBook;
  readonly spools: readonly WireSpool[];
  readonly queries: readonly Query[];
}

interface Kind {
  readonly needs: readonly MaterialNeed[];
  readonly articles: readonly Article[];
}

interface Cutting {
  readonly host: Kind;
  readonly guests: readonly Kind[];
  readonly plan: CutPlan;
}

/** Ways of sharing spools that are compared at most; beyond it every kind keeps its own spools. */
const mostWays = 256;

/**
 * Wire is bought by what can be cut, not by its sum: every length in one piece, from the van's spools and rests first,
 * then from spools bought, at the lowest price ({@link cutFrom}). Spools of one gauge and number of conductors compete;
 * and all lengths of one kind may be cut from cable of the same gauge with more conductors, where that is cheaper. A
 * length that no spool holds is asked about and its kind ordered by its sum.
 */
export async function cutWire({
  needs,
  book,
  solve,
}: {
  readonly needs: readonly MaterialNeed[];
  readonly book: PriceBook;
  readonly solve?: Solve | undefined;
}): Promise<WireOrder> {
  const kinds = kindsOf(needs, book);
  const cuttings: Cutting[] = [];
  const queries: Query[] = [];
  for (const cutting of await cheapestSharing(kinds, solve)) {
    if (cutting.plan.status !== "infeasible") cuttings.push(cutting);
    else queries.push(...notCuttable(cutting));
  }
  const cut = new Set(cuttings.flatMap(({ host, guests }) => [host, ...guests].flatMap((kind) => kind.needs)));
  const written = cuttings.map((cutting) => writtenDown(cutting, book));
  const uncut = needs.filter((need) => !cut.has(need));
  const taken = new Map(written.flatMap(({ taken }) => [...taken]));
  return {
    needs: [...uncut, ...written.flatMap((one) => one.needs)],
    toOrder: [
      ...uncut.map(({ code, need, loops }) => ({ code, quantity: need, loops })),
      ...written.flatMap((one) => one.toOrder),
    ],
    book: { ...book, articles: book.articles.map((article) => asCut(article, taken.get(article.code))) },
    spools: written.flatMap((one) => one.spools),
    queries,
  };
}

/** Needs of wire by gauge and number of conductors, with every article of that kind. */
function kindsOf(needs: readonly MaterialNeed[], book: PriceBook): readonly Kind[] {
  const kinds = new Map<string, { needs: MaterialNeed[]; articles: readonly Article[] }>();
  for (const need of needs) {
    const article = need.pieces && articleByCode({ book, code: need.code });
    if (!article || metersPerUnit(article.unit) === undefined) continue;
    const name = kindName(article);
    const kind = kinds.get(name) ?? { needs: [], articles: [] };
    kind.needs.push(need);
    kinds.set(name, {
      ...kind,
      articles: articlesOfClass({ book, class: article.class }).filter(
        (other) => kindName(other) === name && metersPerUnit(other.unit) !== undefined,
      ),
    });
  }
  return [...kinds.values()];
}

const kindName = ({ code, gaugeAwg, conductors }: Article): string =>
  gaugeAwg === undefined || conductors === undefined ? code : `${gaugeAwg} AWG, ${conductors}`;

const mayHost = (host: Kind, guest: Kind): boolean => {
  const [a, b] = [host.articles[0], guest.articles[0]];
  if (host === guest) return true;
  return a?.gaugeAwg !== undefined && a.gaugeAwg === b?.gaugeAwg && (a.conductors ?? 0) > (b.conductors ?? 0);
};

/** Of all ways to cut kinds from one another's spools the cheapest; of equals the one that moves the fewest kinds. */
async function cheapestSharing(kinds: readonly Kind[], solve: Solve | undefined): Promise<readonly Cutting[]> {
  let ways: (readonly Kind[])[] = [[]];
  for (const kind of kinds) {
    const hosts = [kind, ...kinds.filter((other) => other !== kind && mayHost(other, kind))];
    ways = ways.flatMap((way) => hosts.map((host) => [...way, host]));
    if (ways.length > mostWays) return cuttingsOf(kinds, kinds, solve);
  }
  // A kind whose spools serve others keeps them for itself too.
  const sound = ways.filter((way) => way.every((host) => way[kinds.indexOf(host)] === host));
  let best: { readonly cuttings: readonly Cutting[]; readonly cents: number; readonly moved: number } | undefined;
  for (const way of sound) {
    const cuttings = await cuttingsOf(kinds, way, solve);
    const cents = cuttings.reduce((sum, { plan }) => sum + (plan.cents ?? uncutCents), 0);
    const moved = way.filter((host, at) => host !== kinds[at]).length;
    if (!best || cents < best.cents || (cents === best.cents && moved < best.moved)) best = { cuttings, cents, moved };
  }
  return best?.cuttings ?? [];
}

/** Weighs more than any wire: what can be cut at all is preferred. [cents] */
const uncutCents = 1e12;

async function cuttingsOf(
  kinds: readonly Kind[],
  way: readonly Kind[],
  solve: Solve | undefined,
): Promise<readonly Cutting[]> {
  const cuttings: Cutting[] = [];
  for (const host of new Set(way)) {
    const guests = kinds.filter((kind, at) => way[at] === host && kind !== host);
    const pieces = [host, ...guests]
      .flatMap(({ needs }) => needs)
      .flatMap(({ pieces: own = [], code }) => {
        const unit = host.articles.find((article) => article.code === code)?.unit ?? unitOf(guests, code);
        return own.map(({ loop, quantity }) => ({ meters: quantity * (metersPerUnit(unit) ?? 1), for: loop ?? "" }));
      });
    const plan = await cutFrom({ pieces, spools: spoolsOf(host.articles), ...(solve ? { solve } : {}) });
    cuttings.push({ host, guests, plan });
  }
  return cuttings;
}

const unitOf = (kinds: readonly Kind[], code: string): string =>
  kinds.flatMap(({ articles }) => articles).find((article) => article.code === code)?.unit ?? "m";

function notCuttable({ host, guests, plan }: Cutting): readonly Query[] {
  return [host, ...guests]
    .flatMap(({ needs }) => needs)
    .map(({ code, need, unit }) => ({
      sheet: "Price book",
      row: null,
      column: "packSize",
      typed: code,
      message: `${plan.why ?? "It cannot be cut."} ${need} ${unit} are ordered by their sum: enter a spool that is long enough.`,
    }));
}

function writtenDown({ host, guests, plan }: Cutting, book: PriceBook) {
  const all = [host, ...guests].flatMap(({ needs }) => needs);
  const codes = [...new Set(plan.spools.map(({ code }) => code))];
  const ordered = codes.flatMap((code) => {
    const article = articleByCode({ book, code });
    return article ? [{ article, spools: plan.spools.filter((spool) => spool.code === code) }] : [];
  });
  return {
    needs: ordered.map(({ article, spools }): MaterialNeed => {
      const { code, description, unit, taxClass } = article;
      const loops = [
        ...new Set(spools.flatMap(({ cuts }) => cuts.flatMap((cut) => (cut.for === "" ? [] : [cut.for])))),
      ];
      const own = all.filter((need) => need.loops.some((loop) => loops.includes(loop)));
      const moved = guests.flatMap(({ needs }) => needs).filter((need) => own.includes(need));
      return {
        code,
        description,
        class: article.class,
        unit,
        taxClass,
        bare: own.reduce((sum, need) => sum + need.bare, 0),
        need: Math.ceil(cutLength(article, spools) - 1e-6),
        rule: [
          ...new Set(own.map(({ rule }) => rule)),
          spoolWords(article, spools),
          ...moved.map((need) => `the lengths for ${need.description} are cut from it too, which costs less`),
        ].join("; "),
        loops,
      };
    }),
    toOrder: ordered.map(({ article, spools }): Need => {
      const bought = spools.filter(({ fromStock }) => !fromStock);
      const quantity = bought.reduce((sum, spool) => sum + inUnits(article, spool.meters), 0);
      const loops = new Set(spools.flatMap(({ cuts }) => cuts.map((cut) => cut.for)));
      loops.delete("");
      return { code: article.code, quantity: quantity + takenFromVan(article, spools), loops: [...loops] };
    }),
    taken: new Map(
      ordered.map(({ article, spools }) => {
        const bought = spools.find(({ fromStock }) => !fromStock);
        const packSize = bought && inUnits(article, bought.meters);
        return [article.code, { fromStock: takenFromVan(article, spools), packSize }] as const;
      }),
    ),
    spools: ordered.flatMap(({ article, spools }) =>
      spools.map((spool, at): WireSpool => {
        return {
          code: article.code,
          unit: article.unit,
          number: at + 1,
          fromStock: spool.fromStock,
          holds: inUnits(article, spool.meters),
          cuts: spool.cuts.map((cut) => ({
            loop: cut.for === "" ? undefined : cut.for,
            quantity: inUnits(article, cut.meters),
          })),
          leftOver: inUnits(article, spool.leftoverMeters),
        };
      }),
    ),
  };
}

/** Lengths to the hundredth of a unit. */
const inUnits = ({ unit }: Article, meters: number): number =>
  Math.round((meters / (metersPerUnit(unit) ?? 1)) * 100) / 100;

const cutLength = (article: Article, spools: readonly CutSpool[]): number =>
  spools.reduce((sum, { cuts }) => sum + cuts.reduce((own, { meters }) => own + inUnits(article, meters), 0), 0);

/** Whole units that leave the van, as they are charged. */
function takenFromVan(article: Article, spools: readonly CutSpool[]): number {
  const length = cutLength(
    article,
    spools.filter(({ fromStock }) => fromStock),
  );
  return Math.max(0, Math.ceil(length - 1e-6));
}

function spoolWords(article: Article, spools: readonly CutSpool[]): string {
  const parts = [true, false].flatMap((fromStock) => {
    const own = spools.filter((spool) => spool.fromStock === fromStock);
    const lengths = own.map(({ meters }) => `${inUnits(article, meters)} ${article.unit}`).join(" + ");
    return own.length === 0 ? [] : [`${lengths} ${fromStock ? "on the van" : "bought"}`];
  });
  return `each length in one piece, cut from ${parts.join(" and ")}`;
}

/** The article with the van's wire as the cut list uses it, and only the packs it was cut from. */
function asCut(article: Article, taken: { fromStock: number; packSize: number | undefined } | undefined): Article {
  if (!taken) return article;
  const fitting = article.offers.filter(({ packSize }) => packSize === taken.packSize);
  return { ...article, stock: taken.fromStock, offers: fitting.length > 0 ? fitting : article.offers };
}
