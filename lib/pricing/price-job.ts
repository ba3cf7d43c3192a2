import { InputError } from "../problems/input-error.js";
import { type Cents, roundCents } from "../quantities/money.js";
import { allocateCents } from "./allocate-cents.js";

/** One line of cost: material of the bill, hours of a task, travel, hire, a fee. */
export interface CostLine {
  readonly id: string;
  readonly kind: "material" | "labour" | "travel" | "contingency" | "other";
  /** Class for the margin; falls back to the kind where the class has none. */
  readonly class: string;
  readonly description: string;
  /** Units or hours. */
  readonly quantity: number;
  /** May be a fraction of a cent. [cents per unit or hour] */
  readonly unitCents: number;
  /**
   * Cost already rounded, where the line is not quantity × price (packs bought and stock taken together); the sheet
   * shows it as a figure. [cents]
   */
  readonly costCents?: Cents;
  readonly taxClass: string;
  /** Loops it serves; empty = the job as a whole. */
  readonly loops: readonly string[];
}

/** How cost becomes a price. All fractions as fractions. */
export interface PriceRules {
  /** Margin (sell − cost)/sell by class or kind, below 1. */
  readonly marginByClass: Readonly<Record<string, number>>;
  /** Tax on the sell price by tax class. */
  readonly taxByClass: Readonly<Record<string, number>>;
  /** Freight as a share of material cost; its margin is the class `freight`, else `material`. */
  readonly freight?: { readonly fraction: number; readonly taxClass: string };
  /** Least price before tax; a line of its own makes up for what is missing. */
  readonly minimumCharge?: { readonly cents: Cents; readonly taxClass: string };
}

export interface PricedLine extends Omit<CostLine, "kind" | "costCents"> {
  readonly kind: CostLine["kind"] | "freight" | "minimumCharge";
  readonly marginFraction: number;
  readonly taxFraction: number;
  /** ROUND(quantity × unitCents), see {@link priceFormulas}. */
  readonly costCents: Cents;
  /** ROUND(costCents ÷ (1 − margin)). */
  readonly sellCents: Cents;
  /** ROUND(sellCents × tax). */
  readonly taxCents: Cents;
}

/** Sums of one class of lines. */
export interface ClassTotal {
  readonly class: string;
  readonly costCents: Cents;
  readonly sellCents: Cents;
  readonly taxCents: Cents;
  /** (sell − cost)/sell; null where nothing is sold. */
  readonly marginFraction: number | null;
  /** (sell − cost)/cost; null where nothing is spent. */
  readonly markupFraction: number | null;
}

export interface JobPrice {
  readonly lines: readonly PricedLine[];
  readonly byClass: readonly ClassTotal[];
  readonly byTaxClass: readonly { readonly taxClass: string; readonly sellCents: Cents; readonly taxCents: Cents }[];
  readonly costCents: Cents;
  readonly sellCents: Cents;
  readonly taxCents: Cents;
  /** sell + tax. */
  readonly totalCents: Cents;
  readonly marginFraction: number | null;
  readonly markupFraction: number | null;
  /** Sell price by loop and for the job as a whole (loop null); adds up to `sellCents`. */
  readonly byLoop: readonly { readonly loop: string | null; readonly sellCents: Cents }[];
}

/**
 * The formulas of every line, in cents, as a spreadsheet writes them; a sheet with live formulas that follows them
 * agrees to the cent. In currency units: cost ROUND(ROUND(quantity*unitPrice,9),2), sell
 * ROUND(ROUND(cost/(1-margin),9),2), tax ROUND(ROUND(sell*taxRate,9),2). ROUND rounds halves away from zero, as
 * roundCents does. The inner ROUND takes the binary noise off a product that is a half of a cent in decimal:
 * 752.5 × 647.8 is 487469.5, but 487469.49999999994 in binary, which LibreOffice would round down. Where every unit
 * price is whole cents and every quantity whole, the outer ROUND alone does the same.
 */
export const priceFormulas = {
  costCents: "ROUND(ROUND(quantity*unitCents,7),0)",
  freightCostCents: "ROUND(ROUND(freightFraction*SUM(costCents of material),7),0)",
  sellCents: "ROUND(ROUND(costCents/(1-marginFraction),7),0)",
  minimumChargeSellCents: "MAX(0,minimumChargeCents-SUM(sellCents of all other lines))",
  taxCents: "ROUND(ROUND(sellCents*taxFraction,7),0)",
  totalCents: "SUM(sellCents)+SUM(taxCents)",
  marginFraction: "(SUM(sellCents)-SUM(costCents))/SUM(sellCents)",
  markupFraction: "(SUM(sellCents)-SUM(costCents))/SUM(costCents)",
} as const;

/**
 * Cost to price, line by line, see {@link priceFormulas}. Every sum is a sum of rounded lines, so totals by class, by
 * tax class and by loop agree with the lines to the cent.
 * @throws {@link InputError} naming the line when it has no margin or tax class, or a quantity or price is negative.
 * @example priceJob({ lines, rules: { marginByClass: { material: 0.35, labour: 0.45 }, taxByClass: { material: 0.08, labour: 0 } } }).totalCents
 */
export function priceJob({
  lines,
  rules,
}: {
  readonly lines: readonly CostLine[];
  readonly rules: PriceRules;
}): JobPrice {
  const priced = lines.map((line) => priceLine(line, rules));
  const freight = freightLine(priced, rules);
  if (freight) priced.push(freight);
  const minimum = minimumLine(priced, rules);
  if (minimum) priced.push(minimum);
  const costCents = sumOf(priced, "costCents");
  const sellCents = sumOf(priced, "sellCents");
  const taxCents = sumOf(priced, "taxCents");
  return {
    lines: priced,
    byClass: [...new Set(priced.map((line) => line.class))].map((name) => classTotal(name, priced)),
    byTaxClass: [...new Set(priced.map(({ taxClass }) => taxClass))].map((taxClass) => {
      const own = priced.filter((line) => line.taxClass === taxClass);
      return { taxClass, sellCents: sumOf(own, "sellCents"), taxCents: sumOf(own, "taxCents") };
    }),
    costCents,
    sellCents,
    taxCents,
    totalCents: sellCents + taxCents,
    ...fractions(costCents, sellCents),
    byLoop: byLoop(priced),
  };
}

const sumOf = (lines: readonly PricedLine[], column: "costCents" | "sellCents" | "taxCents"): Cents =>
  lines.reduce((sum, line) => sum + line[column], 0);

function fractions(costCents: Cents, sellCents: Cents) {
  return {
    marginFraction: sellCents === 0 ? null : (sellCents - costCents) / sellCents,
    markupFraction: costCents === 0 ? null : (sellCents - costCents) / costCents,
  };
}

function classTotal(name: string, lines: readonly PricedLine[]): ClassTotal {
  const own = lines.filter((line) => line.class === name);
  const costCents = sumOf(own, "costCents");
  const sellCents = sumOf(own, "sellCents");
  return { class: name, costCents, sellCents, taxCents: sumOf(own, "taxCents"), ...fractions(costCents, sellCents) };
}

function priceLine(line: CostLine, rules: PriceRules): PricedLine {
  const at = (field: string) => `${field} of ${line.id}`;
  for (const field of ["quantity", "unitCents"] as const) {
    if (line[field] >= 0 && Number.isFinite(line[field])) continue;
    throw new InputError({ field: at(field), got: `${line[field]}`, expected: "0 or more" });
  }
  if (line.costCents !== undefined && !(Number.isInteger(line.costCents) && line.costCents >= 0)) {
    throw new InputError({ field: at("costCents"), got: `${line.costCents}`, expected: "whole cents, 0 or more" });
  }
  const costCents = line.costCents ?? roundCents(line.quantity * line.unitCents);
  const marginFraction = rules.marginByClass[line.class] ?? rules.marginByClass[line.kind];
  if (marginFraction === undefined || !(marginFraction < 1)) {
    const got = marginFraction === undefined ? "no margin" : `${marginFraction}`;
    throw new InputError({ field: at("margin"), got, expected: `a margin below 1 for ${line.class} or ${line.kind}` });
  }
  return finishLine(
    { ...line, costCents, marginFraction, sellCents: roundCents(costCents / (1 - marginFraction)) },
    rules,
  );
}

function finishLine(line: Omit<PricedLine, "taxFraction" | "taxCents">, rules: PriceRules): PricedLine {
  const taxFraction = rules.taxByClass[line.taxClass];
  if (taxFraction === undefined || !(taxFraction >= 0)) {
    const got = taxFraction === undefined ? `no rate for ${line.taxClass}` : `${taxFraction}`;
    throw new InputError({ field: `tax of ${line.id}`, got, expected: "a tax rate of 0 or more for its class" });
  }
  return { ...line, taxFraction, taxCents: roundCents(line.sellCents * taxFraction) };
}

function freightLine(priced: readonly PricedLine[], rules: PriceRules): PricedLine | undefined {
  const { freight } = rules;
  const base = sumOf(
    priced.filter(({ kind }) => kind === "material"),
    "costCents",
  );
  if (!freight || base === 0) return undefined;
  const costCents = roundCents(freight.fraction * base);
  const marginFraction = rules.marginByClass["freight"] ?? rules.marginByClass["material"] ?? 0;
  const line = {
    id: "freight",
    kind: "freight" as const,
    class: "freight",
    description: "Freight on material",
    quantity: freight.fraction,
    unitCents: base,
    costCents,
    marginFraction,
    sellCents: roundCents(costCents / (1 - marginFraction)),
    taxClass: freight.taxClass,
    loops: [],
  };
  return finishLine(line, rules);
}

function minimumLine(priced: readonly PricedLine[], rules: PriceRules): PricedLine | undefined {
  const { minimumCharge } = rules;
  const sell = sumOf(priced, "sellCents");
  if (!minimumCharge || priced.length === 0 || sell >= minimumCharge.cents) return undefined;
  const line = {
    id: "minimumCharge",
    kind: "minimumCharge" as const,
    class: "minimumCharge",
    description: "Difference to the minimum charge",
    quantity: 1,
    unitCents: 0,
    costCents: 0,
    marginFraction: 1,
    sellCents: minimumCharge.cents - sell,
    taxClass: minimumCharge.taxClass,
    loops: [],
  };
  return finishLine(line, rules);
}

/** Each line shared evenly among the loops it serves, nothing lost to rounding. */
function byLoop(lines: readonly PricedLine[]): JobPrice["byLoop"] {
  const sums = new Map<string | null, Cents>([[null, 0]]);
  for (const { loops, sellCents } of lines) {
    const names: readonly (string | null)[] = loops.length === 0 ? [null] : loops;
    const parts = allocateCents({ totalCents: sellCents, weights: names.map(() => 1) });
    names.forEach((name, index) => {
      sums.set(name, (sums.get(name) ?? 0) + (parts[index] ?? 0));
    });
  }
  return [...sums].map(([loop, sellCents]) => ({ loop, sellCents }));
}
