import { InputError } from "../problems/input-error.js";
import type { NetworkElement, ResistorNetwork } from "./resistor-network.js";
import { terminalOhms } from "./terminal-ohms.js";

/** One opening on the loop with its contact. Opening 1 is nearest the panel. */
export interface LoopOpening {
  /** Contact when it conducts. [Ω] */
  readonly contactOhms: number;
  /** Rest: closed loop contact that opens (NC, in one leg) or one that closes the legs together (NO). */
  readonly form: "NC" | "NO";
  /** Resistor across the contact, where each opening has its own (double EOL, two zones on a pair). [Ω] */
  readonly acrossOhms?: number;
}

/**
 * Something in the wire that does not belong there. `place` counts the stretches of cable: 1 is just before opening 1,
 * n + 1 just past the last opening, 0 the panel's terminals.
 */
export type LoopFault =
  /** Bad joint or worn contact in one leg of the stretch that leads up to `place`. */
  | { readonly kind: "joint"; readonly place: number; readonly ohms: number }
  /** Damp or damaged insulation between the legs. */
  | { readonly kind: "leak"; readonly place: number; readonly ohms: number }
  /** Legs touching; 0 Ω unless measured. */
  | { readonly kind: "short"; readonly place: number; readonly ohms?: number }
  /** Wire cut in the stretch that leads up to `place`. */
  | { readonly kind: "cut"; readonly place: number }
  /** Contact jumpered or stuck: it conducts whatever the opening does. */
  | { readonly kind: "bypass"; readonly opening: number }
  /** Path to earth from one leg; node "earth" can be probed. */
  | { readonly kind: "earth"; readonly place: number; readonly leg: "a" | "b"; readonly ohms: number };

/** One contact loop as built, from the panel's two terminals outward. */
export interface LoopWiring {
  /**
   * Both conductors of each stretch of cable, out and back: panel to opening 1, opening 1 to 2 … One per opening, and one
   * more where the cable runs on past the last opening. [Ω]
   */
  readonly pairOhms: readonly number[];
  readonly openings: readonly LoopOpening[];
  /** Splices of each stretch, added to it. [Ω] */
  readonly spliceOhms?: readonly number[];
  /**
   * Contacts one after the other in a leg (default), or all across each other, so that only all open together show; those
   * are reckoned as standing at opening 1.
   */
  readonly contacts?: "series" | "parallel";
  /** End-of-line resistor. At the panel it is in series with a leg or across the terminals. */
  readonly eol?: { readonly place: "end" | "panelSeries" | "panelAcross"; readonly ohms: number };
  /** What closes the far end when no resistor stands there: joined legs (NC loops) or nothing (NO loops). */
  readonly farEnd?: "joined" | "open";
  readonly faults?: readonly LoopFault[];
}

/** Name of a leg's node: "a" carries the contacts, "b" is the return; place 0 is the panel end. */
const node = (leg: "a" | "b", place: number, side: "before" | "after" = "before"): string => `${leg}${place}${side}`;

function checkWiring({ pairOhms, openings, spliceOhms, faults = [] }: LoopWiring, open: readonly number[]): void {
  const count = openings.length;
  if (pairOhms.length !== count && pairOhms.length !== count + 1) {
    throw new InputError({
      field: "pairOhms",
      got: `${pairOhms.length} stretches`,
      expected: `${count} or ${count + 1}`,
    });
  }
  if (spliceOhms !== undefined && spliceOhms.length !== pairOhms.length) {
    throw new InputError({
      field: "spliceOhms",
      got: `${spliceOhms.length} stretches`,
      expected: `${pairOhms.length}`,
    });
  }
  const within = (value: number, least: number, most: number) =>
    Number.isInteger(value) && value >= least && value <= most;
  for (const opening of open) {
    if (!within(opening, 1, count)) {
      throw new InputError({ field: "open", got: `opening ${opening}`, expected: `openings 1 to ${count}` });
    }
  }
  for (const fault of faults) {
    const inWire = fault.kind === "joint" || fault.kind === "cut";
    const [value, least, most] =
      fault.kind === "bypass" ? [fault.opening, 1, count] : [fault.place, inWire ? 1 : 0, count + 1];
    if (!within(value, least, most)) {
      throw new InputError({ field: `faults ${fault.kind}`, got: `place ${value}`, expected: `${least} to ${most}` });
    }
  }
}

/** Two halves of every stretch of cable; splices and bad joints sit in leg a. */
function cable(wiring: LoopWiring): readonly NetworkElement[] {
  const { pairOhms, spliceOhms, openings, faults = [] } = wiring;
  const stretches = Array.from({ length: openings.length + 1 }, (_, i) => i + 1);
  return stretches.flatMap((place) => {
    const half = (pairOhms[place - 1] ?? 0) / 2;
    const extra = faults.reduce(
      (sum, fault) => {
        if (!("place" in fault) || fault.place !== place) return sum;
        return fault.kind === "cut" ? Number.POSITIVE_INFINITY : fault.kind === "joint" ? sum + fault.ohms : sum;
      },
      spliceOhms?.[place - 1] ?? 0,
    );
    return [
      { from: node("a", place - 1, "after"), to: node("a", place), ohms: half + extra },
      { from: node("b", place - 1), to: node("b", place), ohms: half },
    ];
  });
}

function contacts(wiring: LoopWiring, open: readonly number[]): readonly NetworkElement[] {
  const { openings, faults = [] } = wiring;
  const bypassed = new Set(faults.flatMap((fault) => (fault.kind === "bypass" ? [fault.opening] : [])));
  return openings.flatMap((opening, index): readonly NetworkElement[] => {
    const place = index + 1;
    const conducts = bypassed.has(place) || open.includes(place) === (opening.form === "NO");
    const ohms = !conducts ? Number.POSITIVE_INFINITY : bypassed.has(place) ? 0 : opening.contactOhms;
    const before = node("a", place);
    const after = node("a", place, "after");
    if (opening.form === "NO") {
      const across = { from: before, to: node("b", place), ohms };
      return [{ from: before, to: after, ohms: 0 }, across, ...resistorAcross(opening, before, node("b", place))];
    }
    if (wiring.contacts === "parallel" && place > 1) {
      const [first, onward] = [node("a", 1), node("a", 1, "after")];
      return [
        { from: before, to: after, ohms: 0 },
        { from: first, to: onward, ohms },
        ...resistorAcross(opening, first, onward),
      ];
    }
    return [{ from: before, to: after, ohms }, ...resistorAcross(opening, before, after)];
  });
}

function resistorAcross({ acrossOhms }: LoopOpening, from: string, to: string): readonly NetworkElement[] {
  return acrossOhms === undefined ? [] : [{ from, to, ohms: acrossOhms }];
}

function farEndAndPanel({ eol, openings, farEnd = "joined" }: LoopWiring): readonly NetworkElement[] {
  const end = openings.length + 1;
  const far = { from: node("a", end), to: node("b", end) };
  const open = farEnd === "open" ? Number.POSITIVE_INFINITY : 0;
  const atEnd = { ...far, ohms: eol?.place === "end" ? eol.ohms : open };
  const inSeries = { from: "panelA", to: node("a", 0, "after"), ohms: eol?.place === "panelSeries" ? eol.ohms : 0 };
  const across = eol?.place === "panelAcross" ? [{ from: "panelA", to: node("b", 0), ohms: eol.ohms }] : [];
  return [atEnd, inSeries, ...across];
}

function faultPaths({ faults = [] }: LoopWiring): readonly NetworkElement[] {
  return faults.flatMap((fault): readonly NetworkElement[] => {
    if (fault.kind === "joint" || fault.kind === "cut" || fault.kind === "bypass") return [];
    const a = node("a", fault.place, fault.place === 0 ? "after" : "before");
    const b = node("b", fault.place);
    if (fault.kind === "earth") return [{ from: fault.leg === "a" ? a : b, to: "earth", ohms: fault.ohms }];
    return [{ from: a, to: b, ohms: fault.ohms ?? 0 }];
  });
}

/**
 * The resistor network of one contact loop with some openings open, probed at the panel's two terminals.
 * Nodes: "panelA" and "b0before" are the terminals, "earth" is earth.
 * @param open Numbers of the openings that stand open; [] = everything shut.
 * @throws {@link InputError} for an opening or place that the loop does not have.
 */
export function loopNetwork(wiring: LoopWiring, open: readonly number[] = []): ResistorNetwork {
  checkWiring(wiring, open);
  return {
    probe: ["panelA", node("b", 0)],
    elements: [...farEndAndPanel(wiring), ...cable(wiring), ...contacts(wiring, open), ...faultPaths(wiring)],
  };
}

/**
 * What a meter at the panel shows for a loop in one state; Infinity when nothing conducts. [Ω]
 * @example loopTerminalOhms({ pairOhms: [2], openings: [{ contactOhms: 0.1, form: "NC" }], eol: { place: "end", ohms: 2200 } }); // 2202.1
 */
export function loopTerminalOhms(wiring: LoopWiring, open: readonly number[] = []): number {
  return terminalOhms(loopNetwork(wiring, open));
}
