import { type LabourLine, labourLines } from "../labour/labour-lines.js";
import { billOfMaterials, type MaterialNeed } from "../materials/bill-of-materials.js";
import type { Solve } from "../plan/milp-model.js";
import type { Plan } from "../plan/plan.js";
import { type PlannedLoop, plannedLoops } from "../plan/planned-loop.js";
import type { JobPrice } from "../pricing/price-job.js";
import type { PriceRange } from "../pricing/price-range.js";
import type { Query } from "../problems/query.js";
import { cutWire, type WireSpool } from "../purchasing/cut-wire.js";
import { orderFor } from "../purchasing/order-for.js";
import type { OrderResult } from "../purchasing/order-records.js";
import { labourUnits } from "../reference/generated/labour-units.js";
import { type FittedModule, fitModules, type TerminalRow, terminalSchedule } from "../terminals/terminal-schedule.js";
import { locationWork } from "../treatments/location-work.js";
import { bothWorks, type Work } from "../treatments/treatment.js";
import { billLines } from "./bill-lines.js";
import { blankPlates } from "./cut-over-of.js";
import type { BillLine } from "./estimate.js";
import { type HeldPlan, heldBill, type PacksWanted, withPacks } from "./held-plan.js";
import { jobTasks } from "./job-work.js";
import { type PreparedJob, returnsOf } from "./prepare-job.js";
import { contingencyCents, priceOf } from "./price-of.js";
import { type RadioRecord, radioOf } from "./radio-of.js";
import { rangeOf } from "./range-of.js";
import type { SupplyChoice } from "./supply-cure-offers.js";
import { type SupplyAtPanel, supplyOf } from "./supply-of.js";

/** Why there is no estimate: the wishes and limits leave no plan, or the needs cannot be bought. */
export class NoEstimate extends Error {
  override readonly name = "NoEstimate";
}

/** What one plan leads to. */
export interface WorkedOut {
  readonly plan: Plan;
  readonly planned: readonly PlannedLoop[];
  readonly fitted: readonly FittedModule[];
  readonly terminals: readonly TerminalRow[];
  readonly needs: readonly MaterialNeed[];
  readonly ordered: OrderResult;
  readonly cuts: readonly WireSpool[];
  readonly bill: readonly BillLine[];
  readonly labour: readonly LabourLine[];
  readonly price: JobPrice;
  readonly range: PriceRange;
  readonly supply: readonly SupplyAtPanel[];
  readonly radio: readonly RadioRecord[];
  readonly queries: readonly Query[];
}

/**
 * Plan to price: terminals, materials, orders, labour, money, range. Every option of a job passes through here, so
 * that options differ by their plan and by nothing else.
 * @throws {@link NoEstimate} when there is no plan, or something that is needed is for sale nowhere.
 */
export async function workOut({
  prepared,
  plan,
  solve,
  packsWanted = {},
  held,
}: {
  readonly prepared: PreparedJob;
  readonly plan: Plan;
  readonly solve: Solve | undefined;
  /** Packs written on the Bill of a former estimate. */
  readonly packsWanted?: PacksWanted;
  /** Keeps what is bought and the contingency as they were. */
  readonly held?: HeldPlan;
}): Promise<WorkedOut> {
  if (plan.status === "infeasible") throw new NoEstimate(plan.why ?? "no plan keeps every limit and wish");
  const { survey, treatments, profiles, moduleSettings, rates, job } = prepared;
  const bare = plannedLoops({ plan, treatments, moduleSettings, rates });
  const sharedReturns = returnsOf(survey);
  const fitted = fitModules({
    planned: bare,
    profiles,
    settings: moduleSettings,
    modules: plan.modules,
    sharedReturns,
  });
  const { book } = rates;
  const { supply, cures, queries: supplyQueries } = supplyOf({ survey, planned: bare, fitted, profiles, rates, job });
  const planned = withCures(bare, cures);
  const terminals = terminalSchedule({ fitted, planned, loops: survey.loops, profiles });
  const locations = [...new Set(fitted.map(({ panel }) => panel))].map((panel) => {
    const place = supply.find((one) => one.panel === panel)?.place;
    return place ? locationWork({ book, batteryAmpereHours: place.battery.neededAmpHours }) : prepared.location;
  });
  const { radio, work: repeaters, queries: radioQueries } = radioOf({ survey, planned, fitted, book, job });
  const others = [repeaters];
  const removedDevices = blankPlates({ prepared, planned, fitted });
  const counted = billOfMaterials({
    planned,
    fitted,
    terminals,
    profiles,
    locations,
    others,
    book,
    job,
    removedDevices,
  });
  const wire = await cutWire({ needs: counted, book, solve });
  const { needs } = wire;
  const ordered = await orderFor({
    needs: wire.toOrder,
    priceBook: wire.book,
    ...(solve ? { solve } : {}),
    stock: "first",
    stockAt: "bookPrice",
    ...(survey.site.startOn === undefined ? {} : { startOn: survey.site.startOn }),
  });
  if (ordered.status === "infeasible") {
    throw new NoEstimate(ordered.why ?? "something that is needed is for sale nowhere");
  }
  const bill = held
    ? heldBill({ held, book, packsWanted })
    : billLines({ needs, ordered }).map((line) => withPacks(line, packsWanted));
  const { lines: labour, queries } = labourOf({ prepared, planned, locations, others, fitted });
  const contingency = held?.contingencyCents ?? contingencyCents({ planned, rates });
  const price = priceOf({ bill, labour, contingency, rates, job });
  const range = rangeOf({ planned, loops: survey.loops, labour, price, job, rates });
  return {
    plan,
    planned,
    fitted,
    terminals,
    needs,
    ordered,
    cuts: wire.spools,
    bill,
    labour,
    price,
    range,
    supply,
    radio,
    queries: [...wire.queries, ...ordered.queries, ...queries, ...supplyQueries, ...radioQueries],
  };
}

/** The chosen supply cures are work of their loops like any other. */
function withCures(planned: readonly PlannedLoop[], cures: ReadonlyMap<string, SupplyChoice>): readonly PlannedLoop[] {
  return planned.map((loop) => {
    const cure = cures.get(loop.key);
    return cure === undefined ? loop : { ...loop, work: bothWorks(loop.work, cure.work), supplyCure: cure.words };
  });
}

function labourOf({
  prepared,
  planned,
  locations,
  others,
  fitted,
}: {
  readonly prepared: PreparedJob;
  readonly planned: readonly PlannedLoop[];
  readonly locations: readonly Work[];
  /** Work of the job that belongs to no loop and no place with modules. */
  readonly others: readonly Work[];
  readonly fitted: readonly FittedModule[];
}): { readonly lines: readonly LabourLine[]; readonly queries: readonly Query[] } {
  const { survey, holds, job, rates } = prepared;
  const loopTasks = [...planned.map(({ work }) => work), ...others].flatMap(({ tasks }) => tasks);
  const panels = new Set(survey.loops.map(({ panel }) => panel)).size;
  const held = holds.length > 0;
  const tasks = [
    ...loopTasks,
    ...jobTasks({ planned, fitted, locations, panels, held, loopTasks, labour: rates.labour, job }),
  ];
  const words = (task: string) => labourUnits.find((row) => row.task === task)?.words ?? task;
  const { lines, unknown } = labourLines({ tasks, labour: rates.labour, words });
  const queries = unknown.map((task) => ({
    sheet: "Labour",
    row: null,
    column: "task",
    typed: task,
    message: "The labour table has no hours for this task, so it is priced at nothing: add a row for it.",
  }));
  return { lines, queries };
}
