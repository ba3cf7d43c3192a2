import type { LabourLine } from "../labour/labour-lines.js";
import type { PlannedLoop } from "../plan/planned-loop.js";
import type { JobSettings } from "../price-book/job-settings.js";
import { type CostLine, type JobPrice, type PriceRules, priceJob } from "../pricing/price-job.js";
import { type Cents, roundCents } from "../quantities/money.js";
import { riskCents, type WorkRates } from "../treatments/work-cents.js";
import type { BillLine } from "./estimate.js";

/** Expected cost of what may still go wrong: repairs that fail, and what the readings leave open. [cents] */
export function contingencyCents({
  planned,
  rates,
}: {
  readonly planned: readonly PlannedLoop[];
  readonly rates: WorkRates;
}): Cents {
  return roundCents(planned.reduce((sum, { risk }) => sum + (risk ? riskCents({ risk, rates }) : 0), 0));
}

/** How this job's cost becomes its price. Freight is a share of material and stands for the suppliers' shipping. */
export function priceRules(job: JobSettings): PriceRules {
  return {
    marginByClass: { material: job.marginMaterial, labour: job.marginLabour, contingency: job.marginLabour },
    taxByClass: { material: job.taxMaterial, labour: job.taxLabour },
    freight: { fraction: job.freight, taxClass: "material" },
    minimumCharge: {
      cents: roundCents((job.minimumCallHours * job.labourCostPerHour * 100) / (1 - job.marginLabour)),
      taxClass: "labour",
    },
  };
}

/** Every line of cost: the bill at what is bought and taken, labour at mean hours, the contingency. */
export function costLines({
  bill,
  labour,
  contingency,
  labourCentsPerHour,
}: {
  readonly bill: readonly BillLine[];
  readonly labour: readonly LabourLine[];
  readonly contingency: Cents;
  readonly labourCentsPerHour: number;
}): readonly CostLine[] {
  return [
    ...bill.map(
      (line): CostLine => ({
        id: line.id,
        kind: "material",
        class: "material",
        description: line.description,
        quantity: line.packs * line.packSize + line.fromStock,
        unitCents: line.unitCents,
        taxClass: line.taxClass,
        loops: line.loops,
      }),
    ),
    ...labour.map(
      (line): CostLine => ({
        id: line.task,
        kind: "labour",
        class: "labour",
        description: line.words,
        quantity: line.meanHours,
        unitCents: labourCentsPerHour,
        taxClass: "labour",
        loops: [],
      }),
    ),
    ...(contingency === 0
      ? []
      : [
          {
            id: "contingency",
            kind: "contingency" as const,
            class: "contingency",
            description:
              "Contingency: repairs that fail and loops that prove other than they read, at their probabilities",
            quantity: 1,
            unitCents: contingency,
            taxClass: "labour",
            loops: [],
          },
        ]),
  ];
}

/** What the job costs us, what it sells for, and the tax, line by line. */
export function priceOf({
  bill,
  labour,
  contingency,
  rates,
  job,
}: {
  readonly bill: readonly BillLine[];
  readonly labour: readonly LabourLine[];
  readonly contingency: Cents;
  readonly rates: WorkRates;
  readonly job: JobSettings;
}): JobPrice {
  const { labourCentsPerHour } = rates;
  return priceJob({ lines: costLines({ bill, labour, contingency, labourCentsPerHour }), rules: priceRules(job) });
}
