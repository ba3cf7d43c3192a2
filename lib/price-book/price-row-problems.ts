import type { Query } from "../problems/query.js";
import type { PriceBookRow } from "../survey/survey.js";

interface PriceRowAt {
  readonly row: PriceBookRow & { readonly currency?: string };
  readonly currency: string;
  readonly sheet: string;
  readonly number: number;
}

const atLeast = (least: number) => (value: number) => Number.isFinite(value) && value >= least;
const above = (limit: number) => (value: number) => Number.isFinite(value) && value > limit;

const NUMBERS: readonly {
  readonly column: "unitCents" | "packSize" | "fromQuantity" | "stock" | "shippingCents" | "leadDays";
  readonly holds: (value: number) => boolean;
  readonly expected: string;
}[] = [
  { column: "unitCents", holds: atLeast(0), expected: "a price of 0 or more" },
  { column: "packSize", holds: above(0), expected: "more than 0 units in a pack" },
  { column: "fromQuantity", holds: atLeast(0), expected: "a least quantity of 0 or more" },
  { column: "stock", holds: atLeast(0), expected: "0 or more units on the van" },
  {
    column: "shippingCents",
    holds: (value) => Number.isInteger(value) && value >= 0,
    expected: "shipping of 0 or more, in whole cents",
  },
  { column: "leadDays", holds: atLeast(0), expected: "0 or more days" },
];

/** What makes one row of a price book unusable, as queries; an empty list = it can be used. */
export function priceRowProblems({ row, currency, sheet, number }: PriceRowAt): readonly Query[] {
  const at = (column: string, typed: string, message: string): Query => ({
    sheet,
    row: number,
    column,
    typed,
    message,
  });
  const queries: Query[] = [];
  for (const column of ["code", "class", "unit", "supplier"] as const) {
    if (row[column].trim() === "") queries.push(at(column, "", `row left out: write the article's ${column}`));
  }
  for (const { column, holds, expected } of NUMBERS) {
    const value = row[column];
    if (!holds(value)) {
      const typed = Number.isFinite(value) ? String(value) : "";
      queries.push(at(column, typed, `row left out: ${typed || "nothing readable"} typed, expected ${expected}`));
    }
  }
  if (row.currency !== undefined && row.currency !== currency) {
    const message = `row left out: priced in ${row.currency}, the job is in ${currency}; convert it or use one currency`;
    queries.push(at("currency", row.currency, message));
  }
  return queries;
}
