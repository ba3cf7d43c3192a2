import { beforeAll, describe, expect, it } from "vitest";
import type { Estimate } from "../../lib/estimate/estimate.js";
import { estimateJob } from "../../lib/estimate/estimate-job.js";
import { solveWithHighs } from "../../lib/solver/highs.js";
import { readSurvey } from "../../lib/survey/read-survey.js";
import type { Survey } from "../../lib/survey/survey.js";
import { demoSheets } from "../sheets/demo-estimate.js";

/** Ten cells of one price book row, as typed. */
const row = (
  code: string,
  kind: string,
  unitPrice: number,
  supplier: string,
  more: Record<string, string | number> = {},
) => ({
  code,
  class: kind,
  description: `${kind} of ${supplier}`,
  unit: "each",
  unitPrice,
  packSize: 1,
  fromQuantity: 1,
  stock: 0,
  supplier,
  shipping: 5,
  leadDays: 3,
  taxClass: "material",
  ...more,
});
const loop = { panel: "P1", openings: 1, device: "door contact", cable: "22/2", run: "30 ft", use: "entry door" };
const wire = { unit: "ft", packSize: 500, gaugeAwg: 22, conductors: 2 };

describe("orders of an estimate", () => {
  let survey: Survey;
  let estimate: Estimate;
  beforeAll(async () => {
    ({ survey } = readSurvey({
      json: {
        site: { name: "Orders", startOn: "2026-03-02", currency: "USD" },
        loops: [1, 2, 3].map((number) => ({
          ...loop,
          loop: number,
          closed: 1.2,
          opened: "OL",
          voltsPairDc: 0,
          lifted: "yes",
        })),
        priceBook: [
          row("W", "wire", 0.11, "North", wire),
          row("W", "wire", 0.12, "South", { ...wire, leadDays: 1 }),
          row("MOD-6", "inputModule", 20, "North"),
          row("MOD-10", "inputModule", 35, "North"),
          row("REC", "wirelessContactRecessed", 900, "North"),
          row("SURF", "wirelessContactSurface", 900, "North"),
          row("R", "eolResistor", 0.3, "North", { eolOhms: "2.2k" }),
        ],
      },
    }));
    estimate = await estimateJob({ survey, solve: solveWithHighs, seconds: 20 });
  });

  it("take a second supplier of the same article and quantity as an alternate, not as a mistake", () => {
    expect(survey.priceBook.filter(({ code }) => code === "W").map(({ supplier }) => supplier)).toEqual([
      "North",
      "South",
    ]);
    expect(estimate.queries.filter(({ message }) => message.includes("stands twice"))).toEqual([]);
    const line = estimate.orders.flatMap(({ lines }) => lines).find(({ code }) => code === "W");
    expect(line?.alternates).toMatchObject([{ supplier: "South", unitCents: 12, sameArticle: true }]);
  });

  it("have dates counted back from the first day on site: three working days before Monday 2 March are Wednesday", () => {
    const [order] = estimate.orders;
    expect(order?.needBy).toBe("2026-03-02");
    // 27 (Friday), 26, 25 February 2026.
    expect(order?.orderBy).toBe("2026-02-25");
  });

  it("come with a cut list that gives each kept loop its length in one piece", () => {
    const wired = estimate.loops.filter(({ input }) => input !== null).map(({ key }) => key);
    expect(wired.length).toBe(3);
    const cuts = estimate.cuts.flatMap((spool) => spool.cuts);
    expect(cuts.map((cut) => cut.loop).sort()).toEqual(wired);
    // (1.5 m + 2 · 2 m) ÷ 0.3048 m/ft · 1.1 waste, by hand 19.85 ft.
    for (const { quantity } of cuts) expect(quantity).toBeCloseTo(19.85, 2);
  });
});

it("a day that is no date is asked about and used for nothing", () => {
  const read = readSurvey({
    json: { site: { startOn: "2 March" }, loops: [{ ...loop, loop: 1, closed: 1.2 }] },
  });
  expect(read.survey.site.startOn).toBeUndefined();
  expect(read.survey.queries.find(({ typed }) => typed === "2 March")?.message).toContain("YYYY-MM-DD");
});

describe("spares to carry on the demo", () => {
  let estimate: Estimate;
  beforeAll(async () => {
    const { survey } = readSurvey({ sheets: demoSheets() });
    estimate = await estimateJob({ survey });
  });

  it("come from the van or stand in an order besides, each in full", () => {
    const lines = estimate.carry?.lines.filter(({ carry }) => carry > 0) ?? [];
    expect(lines.length).toBeGreaterThan(0);
    for (const { carry, fromVan, order } of lines) {
      const ordered = order === null ? 0 : order.packs * order.packSize;
      expect(fromVan + ordered).toBeGreaterThanOrEqual(carry);
      expect(order === null || order.supplier !== "").toBe(true);
    }
  });
});
