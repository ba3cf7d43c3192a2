import type { MaterialNeed } from "../materials/bill-of-materials.js";
import type { OrderResult } from "../purchasing/order-records.js";
import { roundCents } from "../quantities/money.js";
import type { BillLine } from "./estimate.js";

/**
 * Joins what the job needs with what is ordered and what the van gives. A line costs what is bought for the job, whole
 * packs, plus what leaves the van, all at the price of the purchase (of the book, where nothing is bought).
 */
export function billLines({
  needs,
  ordered,
}: {
  readonly needs: readonly MaterialNeed[];
  readonly ordered: OrderResult;
}): readonly BillLine[] {
  const lineOf = new Map(
    ordered.orders.flatMap(({ supplier, lines }) => lines.map((line) => [line.code, { supplier, line }])),
  );
  return needs.map((need) => {
    const cover = ordered.covers.find(({ code }) => code === need.code);
    const bought = lineOf.get(need.code);
    const fromStock = cover?.fromStock ?? 0;
    const stockCents = cover?.stockCents ?? 0;
    const unitCents = bought?.line.unitCents ?? (fromStock > 0 ? stockCents / fromStock : 0);
    const quantity = (bought?.line.quantity ?? 0) + fromStock;
    const { code, description, unit, taxClass, rule, loops } = need;
    return {
      code,
      description,
      class: need.class,
      unit,
      need: need.need,
      packs: bought?.line.packs ?? 0,
      packSize: bought?.line.packSize ?? 1,
      fromStock,
      unitCents,
      lineCents: roundCents(quantity * unitCents),
      taxClass,
      supplier: bought?.supplier ?? null,
      rule,
      loops,
    };
  });
}
