import { terminalOhms } from "../../lib/network/terminal-ohms.js";

/** A two-wire loop as built, fault included. Openings are counted from the panel; `place` 0 is before the first. */
export interface BuiltLoop {
  /** One conductor between two neighbouring points, panel to first contact first. [Ω] */
  readonly segmentOhms: readonly number[];
  /** Closed resistance of each contact; `Infinity` while it stays open. [Ω] */
  readonly contactOhms: readonly number[];
  /** A contact that an operated device leaves closed (bypass) or closes (normally open). */
  readonly bypassed: readonly boolean[];
  readonly normallyOpen: boolean;
  /** Resistor across a contact. [Ω] */
  readonly acrossContactOhms: readonly (number | undefined)[];
  /** Part at the far end in series; absent = the conductors are joined. [Ω] */
  readonly eolOhms?: number;
  readonly jointOhms: number;
  readonly jointPlace: number;
  /** Leak or short between the conductors after so many openings. */
  readonly bridge?: { readonly ohms: number; readonly place: number };
  readonly cut: boolean;
  /** All contacts side by side instead of in series. */
  readonly parallel: boolean;
}

type Element = { readonly from: string; readonly to: string; readonly ohms: number };

/** Terminal resistance with these openings opened, by nodal reduction of the network; `Infinity` = over-range. [Ω] */
export function loopOhms(loop: BuiltLoop, opened: readonly number[]): number {
  return terminalOhms({ probe: ["o0", "b0"], elements: loopElements(loop, opened) });
}

/** The network between the terminals o0 and b0 with these openings opened. */
export function loopElements(loop: BuiltLoop, opened: readonly number[]): readonly Element[] {
  const elements: Element[] = [];
  const count = loop.contactOhms.length;
  // Out-conductor nodes o0 … on with the contacts in it; back-conductor nodes b0 … bn.
  for (let i = 0; i < count; i += 1) {
    const wire = loop.segmentOhms[i] ?? 0;
    const joint = loop.jointPlace === i ? loop.jointOhms : 0;
    elements.push({
      from: `o${i}`,
      to: `c${i}`,
      ohms: wire + joint + (loop.cut && i === 0 ? Number.POSITIVE_INFINITY : 0),
    });
    elements.push({ from: `b${i}`, to: `b${i + 1}`, ohms: wire });
    elements.push(...contact(loop, i, opened));
  }
  const last = loop.segmentOhms[count] ?? 0;
  const closes = (loop.eolOhms ?? 0) + 2 * last;
  if (loop.normallyOpen) {
    if (loop.eolOhms !== undefined) elements.push({ from: `o${count}`, to: `b${count}`, ohms: closes });
  } else elements.push({ from: `o${count}`, to: `b${count}`, ohms: closes });
  if (loop.bridge !== undefined) {
    elements.push({ from: `o${loop.bridge.place}`, to: `b${loop.bridge.place}`, ohms: loop.bridge.ohms });
  }
  return elements;
}

function contact(loop: BuiltLoop, i: number, opened: readonly number[]): readonly Element[] {
  const operated = opened.includes(i + 1);
  const shut = loop.contactOhms[i] ?? 0;
  if (loop.normallyOpen) {
    const through = { from: `c${i}`, to: `o${i + 1}`, ohms: 0 };
    return operated ? [through, { from: `o${i + 1}`, to: `b${i + 1}`, ohms: shut }] : [through];
  }
  const all = loop.contactOhms.every((_, k) => opened.includes(k + 1) && loop.bypassed[k] !== true);
  const open = loop.parallel ? all : operated && loop.bypassed[i] !== true;
  const list: Element[] = [{ from: `c${i}`, to: `o${i + 1}`, ohms: open ? Number.POSITIVE_INFINITY : shut }];
  const across = loop.acrossContactOhms[i];
  if (across !== undefined) list.push({ from: `c${i}`, to: `o${i + 1}`, ohms: across });
  return list;
}
