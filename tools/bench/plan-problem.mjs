/** A repeatable sequence of numbers in [0, 1): multiply-with-carry on 32 bits. */
export function sequence(seed) {
  let state = (seed * 2654435761 + 12345) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/**
 * An invented site: panels of about 25 loops, windows that may be joined by area, detectors, doors, faults to repair,
 * openings the owner gave up, stock and price steps when asked for.
 */
export function planProblem({ loops: loopCount, seed, stock = true, steps = true, maxLoops = 3 }) {
  const random = sequence(seed);
  const whole = (low, high) => low + Math.floor(random() * (high - low + 1));
  const one = (list) => list[Math.floor(random() * list.length)];
  const scale = Math.max(1, Math.round(loopCount / 25));
  const supply = (cents, froms) => {
    const unit = Math.round(cents * (0.8 + random() * 0.4));
    const prices = [1, 0.92, 0.85];
    const tiers = froms.map((from, at) => ({ from, unitCents: Math.round(unit * prices[at]) }));
    return { stock: stock ? whole(0, 2 * scale) : 0, stockUnitCents: 0, tiers: steps ? tiers : tiers.slice(0, 1) };
  };
  const hour = one([3800, 4800, 6000]);
  const modules = [
    {
      type: "eight",
      inputs: 8,
      conductorSeats: 8,
      maxOhms: one([60, 100]),
      fitCents: Math.round(1.5 * hour),
      supply: supply(9800, [1, 4 * scale, 10 * scale]),
    },
    {
      type: "sixteen",
      inputs: 16,
      conductorSeats: 12,
      maxOhms: one([60, 100]),
      fitCents: Math.round(2.2 * hour),
      supply: supply(15800, [1, 3 * scale, 8 * scale]),
    },
  ];
  const items = [
    { code: "contact", supply: supply(3600, [1, 10 * scale, 25 * scale]) },
    { code: "contactForTwo", supply: supply(5200, [1, 6 * scale, 15 * scale]) },
    { code: "motion", supply: supply(6200, [1, 5 * scale, 12 * scale]) },
  ];
  const panelCount = Math.max(1, Math.round(loopCount / 25));
  const panels = Array.from({ length: panelCount }, (_, at) => ({ id: `P${at + 1}`, controller: "C1" }));
  const loops = Array.from({ length: loopCount }, (_, at) => {
    const panel = panels[Math.floor((at * panelCount) / loopCount)].id;
    const kind = random();
    const openings = kind < 0.55 ? whole(1, 4) : 1;
    const ohms = whole(2, 18) + (random() < 0.1 ? whole(20, 90) : 0);
    const motion = kind >= 0.55 && kind < 0.75;
    const withoutInput = [];
    for (let pairs = 0; pairs <= (motion ? 0 : Math.floor(openings / 2)); pairs += 1) {
      const counts = motion ? { motion: 1 } : { contact: openings - 2 * pairs, contactForTwo: pairs };
      const wanted = Object.fromEntries(Object.entries(counts).filter(([, count]) => count > 0));
      const devices = Object.values(wanted).reduce((sum, count) => sum + count, 0);
      withoutInput.push({
        kind: "wireless",
        cents: Math.round(hour * 0.5 * devices + 600),
        items: wanted,
        radioDevices: devices,
      });
      if (random() < 0.4) break;
    }
    if (random() < 0.04) {
      return {
        id: `L${at + 1}`,
        panel,
        joinKey: null,
        ohms,
        withoutInput: [{ kind: "excluded", cents: 0, items: {}, radioDevices: 0 }],
        keep: [],
        repair: [],
      };
    }
    if (random() < 0.08)
      withoutInput.push({
        kind: "retire",
        cents: Math.round(hour * 0.2) + 3000 * openings,
        items: {},
        radioDevices: 0,
      });
    const fault = random() < 0.18;
    const able = modules.filter((module) => ohms <= module.maxOhms);
    const base = Math.round(hour * (0.3 + random() * 0.4));
    const set = one([0, 0, 0.3, 0.4, 1.2]);
    const remove = one([0, 0, 0.3, 0.75]);
    const keep = fault
      ? []
      : able.map(({ type }) => ({
          module: type,
          baseCents: base,
          setCents: Math.round(hour * set),
          removeCents: Math.round(hour * remove),
        }));
    const repairCents = Math.round(hour * (1 + random() * 2)) + Math.round(0.3 * 4500 * openings);
    const repair = fault
      ? modules.map(({ type }) => ({ module: type, cents: repairCents, radioDevices: openings }))
      : [];
    const joinKey = kind < 0.55 && !fault ? `perimeter/${whole(1, 2)}` : motion && random() < 0.5 ? "interior/1" : null;
    return { id: `L${at + 1}`, panel, joinKey, ohms, withoutInput, keep, repair };
  });
  return {
    modules,
    items,
    controllers: [{ id: "C1", maxModules: 3 * panelCount + 2, maxRadioDevices: 40 + 2 * loopCount }],
    panels,
    join: { maxLoops, cents: Math.round(hour * 0.4) },
    extraConductorCents: Math.round(hour * 0.15),
    loops,
  };
}
