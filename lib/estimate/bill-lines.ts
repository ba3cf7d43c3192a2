import type { MaterialNeed } from "../materials/bill-of-materials.js";
import type { OrderResult } from "../purchasing/order-records.js";
import { roundCents } from "../quantities/money.js";
import type { BillLine } from "./estimate.js";

/**
 * Joins what the job needs with what is ordered and what the van gives: one line for each article, and one more for
 * each further supplier or pack size it is bought from. A line costs what is bought for the job, whole packs, plus what
 * leaves the van, all at the price of the purchase (of the book, where nothing is bought). The van's share stands on the
 * article's first line.
 */
export function billLines({
  needs,
  ordered,
}: {
  readonly needs: readonly MaterialNeed[];
  readonly ordered: OrderResult;
}): readonly BillLine[] {
  return needs.flatMap((need) => {
    const cover = ordered.covers.find(({ code }) => code === need.code);
    const bought = ordered.orders.flatMap(({ supplier, lines }) =>
      lines.filter(({ code }) => code === need.code).map((line) => ({ supplier, line })),
    );
    const purchases = bought.length === 0 ? [undefined] : bought;
    return purchases.map((purchase, at): BillLine => {
      const fromStock = at === 0 ? (cover?.fromStock ?? 0) : 0;
      const stockCents = cover?.stockCents ?? 0;
      const unitCents = purchase?.line.unitCents ?? (fromStock > 0 ? stockCents / fromStock : 0);
      const quantity = (purchase?.line.quantity ?? 0) + fromStock;
      const { code, description, unit, taxClass, rule, loops } = need;
      return {
        id: at === 0 || !purchase ? code : `${code} (${purchase.supplier}, ${purchase.line.packSize})`,
        code,
        description,
        class: need.class,
        unit,
        need: at === 0 ? need.need : 0,
        packs: purchase?.line.packs ?? 0,
        packSize: purchase?.line.packSize ?? 1,
        fromStock,
        unitCents,
        lineCents: roundCents(quantity * unitCents),
        taxClass,
        supplier: purchase?.supplier ?? null,
        rule: at === 0 ? rule : `the rest of ${code}: two sources together cost less than one`,
        loops,
      };
    });
  });
}
