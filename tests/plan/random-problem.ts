import type {
  ArticleSupply,
  KeepOffer,
  LoopOffers,
  OfferWithoutInput,
  Pin,
  PlanningProblem,
  TreatmentKind,
} from "../../lib/plan/problem.js";

/** A repeatable sequence of numbers in [0, 1). */
export function sequence(seed: number): () => number {
  let state = (seed * 2654435761 + 12345) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** A small planning problem in which every feature may occur; limits are often tight, some have no plan at all. */
export function randomProblem(seed: number, loopCount: number, options: { lean?: boolean } = {}): PlanningProblem {
  const random = sequence(seed);
  const whole = (low: number, high: number) => low + Math.floor(random() * (high - low + 1));
  const chance = (odds: number) => random() < odds;
  const lean = options.lean ?? false;
  const supply = (cents: number): ArticleSupply => ({
    stock: chance(0.5) ? whole(0, 3) : 0,
    stockUnitCents: chance(0.5) ? 0 : whole(1, 10) * 100,
    tiers: [1, whole(2, 3), whole(4, 6)]
      .slice(0, whole(1, 3))
      .map((from, at) => ({ from, unitCents: Math.round(cents * (1 - 0.15 * at)) })),
  });
  const modules = ["two", "three"].slice(0, lean ? 1 : whole(1, 2)).map((type, at) => ({
    type,
    inputs: at + 2,
    conductorSeats: whole(1, at + 2),
    maxOhms: whole(20, 60),
    fitCents: whole(5, 30) * 100,
    supply: supply(whole(20, 60) * 100),
    ...(at === 1 && chance(0.3) ? { sharesSupplyWith: "two" } : {}),
  }));
  const items = ["contact", "motion"].map((code) => ({ code, supply: supply(whole(20, 50) * 100) }));
  const panels = ["A", "B"].slice(0, whole(1, 2)).map((id) => ({
    id,
    controller: "C",
    ...(chance(0.2) ? { spareInputs: whole(1, 2) } : {}),
    ...(chance(0.25) ? { spareInputsWhenUsed: whole(1, 2) } : {}),
    ...(chance(0.25) ? { openCents: whole(10, 80) * 100 } : {}),
    ...(chance(0.3) ? { supplyMilliamps: whole(20, 80) } : {}),
  }));
  const devices = () => (chance(0.5) ? { contact: whole(1, 2) } : { motion: 1 });
  const loops: LoopOffers[] = Array.from({ length: loopCount }, (_, at) => {
    const panel = panels[whole(0, panels.length - 1)]?.id ?? "A";
    const id = `L${at + 1}`;
    if (chance(0.06)) {
      const excluded: OfferWithoutInput = { kind: "excluded", cents: 0, items: {}, radioDevices: 0 };
      return { id, panel, joinKey: null, ohms: "OL", withoutInput: [excluded], keep: [], repair: [] };
    }
    const withoutInput: OfferWithoutInput[] = Array.from({ length: lean ? 1 : whole(0, 2) }, () => {
      const counts = devices();
      const radioDevices = Object.values(counts).reduce((sum, count) => sum + count, 0);
      return { kind: "wireless", cents: whole(5, 60) * 100, items: counts, radioDevices };
    });
    if (chance(0.15)) withoutInput.push({ kind: "retire", cents: whole(20, 90) * 100, items: {}, radioDevices: 0 });
    const fault = chance(0.25);
    const keep: KeepOffer[] = fault
      ? []
      : modules.map(({ type }) => ({
          module: type,
          baseCents: whole(5, 30) * 100,
          setCents: whole(0, 20) * 100,
          removeCents: whole(0, 15) * 100,
          ...(chance(0.1) ? { items: { motion: 1 }, radioDevices: 1 } : {}),
          ...(chance(0.25) ? { spareInputsWhenUsed: whole(1, 2) } : {}),
          ...(chance(0.25) ? { openCents: whole(10, 80) * 100 } : {}),
          ...(chance(0.3) ? { supplyMilliamps: whole(10, 30) } : {}),
        }));
    const repair = fault
      ? modules.map(({ type }) => ({ module: type, cents: whole(20, 90) * 100, radioDevices: whole(0, 2) }))
      : [];
    const joinKey = chance(0.7) ? `key${whole(1, 2)}` : null;
    return { id, panel, joinKey, ohms: whole(2, 25), withoutInput, keep, repair, openings: whole(1, 4) };
  });
  const together = chance(0.4) ? sharedReturn(loops, whole(0, loopCount - 1), whole(2, 3), chance(0.7)) : [];
  const kinds: TreatmentKind[] = ["keep", "repair", "wireless", "retire"];
  const pins: Pin[] = [];
  for (const loop of loops) {
    const kind = kinds[whole(0, 3)] ?? "keep";
    if (loop.withoutInput[0]?.kind === "excluded" || !chance(0.12)) continue;
    pins.push(chance(0.5) ? { loop: loop.id, kind } : { loop: loop.id, forbid: kind });
  }
  return {
    modules,
    items,
    controllers: [{ id: "C", maxModules: whole(1, 4), maxRadioDevices: whole(2, 2 + loopCount) }],
    panels,
    join: { maxLoops: whole(1, 3), cents: whole(1, 20) * 100, ...(chance(0.5) ? { maxOpenings: whole(3, 8) } : {}) },
    extraConductorCents: chance(0.5) ? whole(1, 60) * 100 : 500,
    loops,
    together,
    pins,
  };
}

function sharedReturn(loops: readonly LoopOffers[], from: number, size: number, sameModule: boolean) {
  const panel = loops[from]?.panel;
  const members = loops.filter((loop) => loop.panel === panel && loop.keep.length + loop.repair.length > 0);
  const ids = members.slice(0, size).map((loop) => loop.id);
  return ids.length > 1 ? [{ loops: ids, sameModule, returnSeats: 1 }] : [];
}
