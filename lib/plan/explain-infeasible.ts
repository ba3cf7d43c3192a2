import { formulate, type LimitRow, type PlanModel } from "./formulate.js";
import type { MilpModel, Solve, SolveOptions } from "./milp-model.js";
import { permittedOffers } from "./permitted-offers.js";
import type { Pin, PlanningProblem } from "./problem.js";

interface ExplainInput {
  readonly problem: PlanningProblem;
  readonly solve: Solve;
  readonly options: SolveOptions;
}

/** Says in words why no plan keeps every limit: loops without any treatment, pins in conflict, limits too low. */
export async function explainInfeasible({ problem, solve, options }: ExplainInput): Promise<string> {
  const stranded = loopsWithoutTreatment(problem);
  if (stranded.length > 0) return stranded.join("; ");
  const core = await conflictingPins({ problem, solve, options });
  const needs = await limitsTooLow({ problem: { ...problem, pins: core }, solve, options });
  const limits = needs.length > 0 ? needs.join("; or it ") : "cannot keep every limit";
  const wanted = core.length > 0 ? pinWords(core) : `serving ${listed(problem.loops.map((loop) => loop.id))}`;
  return `${wanted} ${limits}`;
}

/** Loops that nothing is left for, each in words. */
export function loopsWithoutTreatment(problem: PlanningProblem): string[] {
  return permittedOffers(problem)
    .filter(({ withoutInput, keep, repair }) => withoutInput.length + keep.length + repair.length === 0)
    .map(({ loop }) => {
      const pins = (problem.pins ?? []).filter((pin) => pin.loop === loop.id);
      const offered = new Set([
        ...loop.withoutInput.map((offer) => offer.kind),
        ...(loop.keep.length > 0 ? ["keep"] : []),
        ...(loop.repair.length > 0 ? ["repair"] : []),
      ]);
      const offers = offered.size > 0 ? `it is offered ${listed([...offered])}` : "nothing is offered for it";
      if (pins.length > 0) return `${pinWords(pins)} leaves nothing for loop ${loop.id}: ${offers}`;
      const ohms = loop.keep.length > 0 ? `, but its ${loop.ohms} Ω are more than any module takes` : "";
      return `loop ${loop.id} has no treatment: ${offers}${ohms}`;
    });
}

async function feasible(model: MilpModel, solve: Solve, options: SolveOptions): Promise<boolean> {
  const result = await solve({ ...model, columnCost: model.columnCost.map(() => 0) }, options);
  return result.status !== "infeasible";
}

/** A smallest set of pins that cannot all be kept: each is left out while the rest still conflicts. */
async function conflictingPins({ problem, solve, options }: ExplainInput): Promise<readonly Pin[]> {
  let core = [...(problem.pins ?? [])];
  for (const pin of [...core]) {
    const fewer = core.filter((other) => other !== pin);
    if (await feasible(formulate({ problem: { ...problem, pins: fewer } }).model, solve, options)) continue;
    core = fewer;
  }
  return core;
}

/** For each limit by itself, what it would have to be; when no single one is enough, a set that is. */
async function limitsTooLow({ problem, solve, options }: ExplainInput): Promise<string[]> {
  const plan = formulate({ problem, liftable: true });
  const words: string[] = [];
  for (const limit of plan.limits) {
    const need = await leastNeed(plan, limit, [limit], solve, options);
    if (need !== undefined) words.push(needWords(problem, limit, need));
  }
  if (words.length > 0) return words;
  let together = [...plan.limits];
  if (!(await feasible(relaxed(plan.model, together), solve, options))) return [];
  for (const limit of plan.limits) {
    const fewer = together.filter((other) => other !== limit);
    if (await feasible(relaxed(plan.model, fewer), solve, options)) together = fewer;
  }
  const parts: string[] = [];
  for (const limit of together) {
    const need = await leastNeed(plan, limit, together, solve, options);
    if (need !== undefined) parts.push(needWords(problem, limit, need));
  }
  return parts.length > 0 ? [`${parts.join(" and ")} (all of these together)`] : [];
}

function relaxed(model: MilpModel, limits: readonly LimitRow[]): MilpModel {
  const rows = new Set(limits.map(({ row }) => row));
  return {
    ...model,
    rowLower: model.rowLower.map((lower, row) => (rows.has(row) ? -Infinity : lower)),
    rowUpper: model.rowUpper.map((upper, row) => (rows.has(row) ? Infinity : upper)),
  };
}

async function leastNeed(
  plan: PlanModel,
  limit: LimitRow,
  without: readonly LimitRow[],
  solve: Solve,
  options: SolveOptions,
): Promise<number | undefined> {
  const { model } = plan;
  const sign = limit.limit === "spareInputs" ? -1 : 1;
  const columnCost = model.columnCost.map(() => 0);
  for (let column = 0; column < columnCost.length; column += 1) {
    for (let at = model.columnStart[column] ?? 0; at < (model.columnStart[column + 1] ?? 0); at += 1) {
      if (model.rowIndex[at] === limit.row) columnCost[column] = sign * (model.value[at] ?? 0);
    }
  }
  const result = await solve({ ...relaxed(model, without), columnCost }, options);
  return result.objective === null || result.status === "infeasible"
    ? undefined
    : (sign * Math.round(result.objective * 1000)) / 1000;
}

function needWords(problem: PlanningProblem, { limit, of, value }: LimitRow, need: number): string {
  const all = problem.controllers.length > 1 ? ` ${of}` : "";
  const plural = (count: number, one: string) => `${count} ${one}${count === 1 ? "" : "s"}`;
  switch (limit) {
    case "modules":
      return `needs ${plural(need, "module")}, the controller${all} takes ${value}`;
    case "radioDevices":
      return `needs ${plural(need, "radio device")}, the controller${all} takes ${value}`;
    case "milliamps":
      return `needs ${need} mA at ${of}, its supply gives ${value} mA`;
    case "spareInputs":
      return `leaves at most ${plural(Math.max(0, need), "spare input")} at ${of}, ${value} asked for`;
    case "stock":
      return `needs ${need} of ${of.replace(/^(device|module) /, "")}, ${value} in stock and none for sale`;
  }
}

function pinWords(pins: readonly Pin[]): string {
  const by = new Map<string, string[]>();
  for (const pin of pins) {
    const key = pin.kind === undefined ? `forbid ${pin.forbid}` : `pin ${pin.kind}`;
    by.set(key, [...(by.get(key) ?? []), pin.loop]);
  }
  return [...by]
    .map(([key, loops]) => {
      const [verb, kind] = key.split(" ");
      return verb === "pin" ? `pinning ${listed(loops)} to ${kind}` : `forbidding ${kind} for ${listed(loops)}`;
    })
    .join(" and ");
}

/** At most a dozen names, "A, B and C". */
function listed(names: readonly string[]): string {
  if (names.length > 12) return `${names.slice(0, 10).join(", ")} and ${names.length - 10} more`;
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names[names.length - 1]}`;
}
