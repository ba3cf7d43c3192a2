import type { Solve } from "../plan/milp-model.js";
import type { PriceBook } from "../price-book/article.js";
import { type OrderProblem, orderProblem } from "./order-problem.js";
import type { Need, OrderResult } from "./order-records.js";
import { orderResult } from "./order-result.js";
import { type FoundOrder, searchSuppliers } from "./search-suppliers.js";
import { solveOrder } from "./solve-order.js";

export interface OrderInput {
  readonly needs: readonly Need[];
  readonly priceBook: PriceBook;
  /** MILP solver for orders too large for enumeration; without one those get a stated bound instead of a proof. */
  readonly solve?: Solve;
  /** Most time for the solver, default 20. [s] */
  readonly solveSeconds?: number;
  /** first: the van before anything is bought; cheapest (default): whichever is cheaper; none: leave the van alone. */
  readonly stock?: "first" | "cheapest" | "none";
  /** What a unit from the van is charged at: nothing (default, money still to be spent) or the book's price. */
  readonly stockAt?: "free" | "bookPrice";
  /** First day on site, YYYY-MM-DD; gives need-by and order-by dates. */
  readonly startOn?: string;
  /** Day of ordering, YYYY-MM-DD; with `startOn`, offers that come too late are used only where nobody is in time. */
  readonly orderOn?: string;
  /** Days that are no working days besides weekends. */
  readonly holidays?: readonly string[];
  /**
   * Groups of codes that may stand in for each other, for the alternates of a line. They are listed, never chosen:
   * that two articles of one class (two resistor values, two cables) do the same work is for a person to say.
   */
  readonly equivalents?: readonly (readonly string[])[];
  /** Most suppliers for which every subset is tried, default 12 (4,096 subsets). */
  readonly mostSuppliers?: number;
}

/**
 * One list to buy everything once: minimises goods (whole packs, all-units tiers, over-buying to a tier allowed) +
 * flat shipping per order + van stock as charged. Every subset of suppliers is tried with an exact cover per article,
 * which is exact because with the subset fixed the articles no longer depend on each other. Too many suppliers or too
 * fine packs: the same as a MILP by the solver passed in; without one, the cheapest of a few plain choices with the
 * bound Σ (cheapest cover over all suppliers) + the least shipping that any single article forces.
 * An order never mixes radio bands: a supplier selling two bands that are needed gets two orders, two shippings.
 * @example (await orderFor({ needs: [{ code: "REP", quantity: 1, loops: [] }], priceBook: book })).orders
 */
export async function orderFor(input: OrderInput): Promise<OrderResult> {
  const { stock = "cheapest", stockAt = "free", mostSuppliers = 12 } = input;
  const problem = orderProblem({ ...input, stock, stockAt });
  const refused = uncoverable(problem);
  if (refused) return refused;
  const found = searchSuppliers(problem, mostSuppliers);
  if (found.status === "optimal" || !input.solve) return orderResult({ problem, input, ...found });
  let solved: FoundOrder | undefined;
  try {
    solved = await solveOrder(problem, input.solve, input.solveSeconds ?? 20);
  } catch {
    return orderResult({ problem, input, ...found, method: `${found.method}; the solver could not run` });
  }
  if (!solved) return orderResult({ problem, input, ...found });
  const best = solved.cents <= found.cents ? solved : found;
  const boundCents = Math.min(best.cents, Math.max(solved.boundCents, found.boundCents));
  const status = boundCents >= best.cents ? "optimal" : "feasible";
  return orderResult({ problem, input, ...best, boundCents, status, method: solved.method });
}

/** An article that neither the van nor any offer covers makes the whole order impossible; it is named. */
function uncoverable(problem: OrderProblem): OrderResult | undefined {
  const missing = problem.items.filter((item) => item.offers.length === 0 && item.stock < item.need);
  if (missing.length === 0) return undefined;
  return {
    status: "infeasible",
    totalCents: null,
    boundCents: null,
    orders: [],
    covers: [],
    method: "nothing searched",
    queries: problem.queries,
    why: `Nobody in the price book sells ${missing.map(({ article }) => article.code).join(", ")}.`,
  };
}
