import type { PlanningProblem } from "./problem.js";

/** The part of a problem that concerns these panels. */
export function subproblem(problem: PlanningProblem, panels: readonly string[]): PlanningProblem {
  const kept = new Set(panels);
  const loops = problem.loops.filter((loop) => kept.has(loop.panel));
  const ids = new Set(loops.map((loop) => loop.id));
  const places = problem.panels.filter((panel) => kept.has(panel.id));
  return {
    ...problem,
    loops,
    panels: places,
    controllers: problem.controllers.filter((one) => places.some((panel) => panel.controller === one.id)),
    together: (problem.together ?? []).filter((set) => set.loops.some((loop) => ids.has(loop))),
    pins: (problem.pins ?? []).filter((pin) => ids.has(pin.loop)),
  };
}

const wantsSpare = ({ spareInputs = 0, spareInputsWhenUsed = 0 }: PlanningProblem["panels"][number]) =>
  spareInputs > 0 || spareInputsWhenUsed > 0;

/**
 * Panels that must be solved together. Articles bought by the piece at one price and without stock couple nothing;
 * any other article couples the panels that may use it; `withLimits`: so does a shared controller.
 */
export function coupledPanels(problem: PlanningProblem, withLimits: boolean): readonly (readonly string[])[] {
  const parent = new Map(problem.panels.map((panel) => [panel.id, panel.id]));
  const find = (id: string): string => {
    const up = parent.get(id) ?? id;
    return up === id ? id : find(up);
  };
  const unite = (ids: readonly string[]) => {
    for (const id of ids) parent.set(find(id), find(ids[0] ?? id));
  };
  const priced = (supply: { stock: number; tiers: readonly { from: number }[] } | undefined) =>
    supply !== undefined && supply.stock === 0 && supply.tiers.length === 1 && (supply.tiers[0]?.from ?? 2) <= 1;
  for (const item of problem.items) {
    if (priced(item.supply)) continue;
    const users = problem.loops.filter((loop) =>
      [...loop.withoutInput, ...loop.keep].some((offer) => (offer.items?.[item.code] ?? 0) > 0),
    );
    unite(users.map((loop) => loop.panel));
  }
  for (const module of problem.modules) {
    const owner = problem.modules.find((other) => other.type === (module.sharesSupplyWith ?? module.type));
    if (priced(owner?.supply)) continue;
    const article = new Set(
      problem.modules.filter((other) => (other.sharesSupplyWith ?? other.type) === owner?.type).map(({ type }) => type),
    );
    const users = problem.loops
      .filter((loop) => [...loop.keep, ...loop.repair].some((offer) => article.has(offer.module)))
      .map((loop) => loop.panel);
    unite([...users, ...problem.panels.filter(wantsSpare).map((panel) => panel.id)]);
  }
  if (withLimits) {
    for (const controller of problem.controllers) {
      unite(problem.panels.filter((panel) => panel.controller === controller.id).map((panel) => panel.id));
    }
  }
  const parts = new Map<string, string[]>();
  for (const panel of problem.panels) {
    const root = find(panel.id);
    const part = parts.get(root);
    if (part) part.push(panel.id);
    else parts.set(root, [panel.id]);
  }
  return [...parts.values()];
}
