import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type LoopFault, type LoopWiring, loopNetwork, loopTerminalOhms } from "../../lib/network/loop-network.js";
import { terminalOhms } from "../../lib/network/terminal-ohms.js";
import { InputError } from "../../lib/problems/input-error.js";

const OPEN = Number.POSITIVE_INFINITY;
const nc = { contactOhms: 0.1, form: "NC" as const };

/** Three openings on a 6 Ω pair, each stretch 2 Ω out and back. */
function threeWindows(more: Partial<LoopWiring>): LoopWiring {
  return { pairOhms: [2, 2, 2], openings: [nc, nc, nc], ...more };
}
const withFault = (fault: LoopFault): LoopWiring =>
  threeWindows({ eol: { place: "end", ohms: 5600 }, faults: [fault] });

describe("states of a contact loop, each worked by hand with Ohm's law", () => {
  it("EOL at the far end: wire + contacts + EOL shut, open whichever opening is open", () => {
    const wiring = threeWindows({ eol: { place: "end", ohms: 5600 } });
    expect(loopTerminalOhms(wiring)).toBeCloseTo(6 + 0.3 + 5600, 9);
    for (const opening of [1, 2, 3]) expect(loopTerminalOhms(wiring, [opening])).toBe(OPEN);
  });

  it("no EOL and EOL in series at the panel: open reads open, shut differs by the EOL only", () => {
    expect(loopTerminalOhms(threeWindows({}))).toBeCloseTo(6.3, 12);
    const panel = threeWindows({ eol: { place: "panelSeries", ohms: 2200 } });
    expect(loopTerminalOhms(panel)).toBeCloseTo(2206.3, 9);
    expect(loopTerminalOhms(panel, [2])).toBe(OPEN);
  });

  it("EOL across the panel's terminals: near zero shut, the EOL when opened", () => {
    const across = threeWindows({ eol: { place: "panelAcross", ohms: 2200 } });
    expect(loopTerminalOhms(across)).toBeCloseTo((6.3 * 2200) / 2206.3, 9);
    expect(loopTerminalOhms(across, [1])).toBeCloseTo(2200, 9);
  });

  it("double EOL: an opening adds its own resistor", () => {
    const double = threeWindows({
      openings: [{ ...nc, acrossOhms: 1000 }, { ...nc, acrossOhms: 2200 }, nc],
      eol: { place: "end", ohms: 5600 },
    });
    const shut = 6 + 0.1 + (0.1 * 1000) / 1000.1 + (0.1 * 2200) / 2200.1 + 5600;
    expect(loopTerminalOhms(double)).toBeCloseTo(shut, 9);
    expect(loopTerminalOhms(double, [1]) - shut).toBeCloseTo(1000 - (0.1 * 1000) / 1000.1, 6);
    expect(loopTerminalOhms(double, [1, 2])).toBeCloseTo(6 + 0.1 + 1000 + 2200 + 5600, 8);
  });

  it("a short hides what lies beyond it: a nearer opened contact reads open, a farther one changes nothing", () => {
    const short = withFault({ kind: "short", place: 2 });
    expect(loopTerminalOhms(short)).toBeCloseTo(4.1, 12);
    expect(loopTerminalOhms(short, [1])).toBe(OPEN);
    expect(loopTerminalOhms(short, [2])).toBeCloseTo(4.1, 12);
    expect(loopTerminalOhms(short, [3])).toBeCloseTo(4.1, 12);
  });

  it("a leak shows when a contact beyond it is opened, and hides behind one nearer the panel", () => {
    const leak = withFault({ kind: "leak", place: 2, ohms: 51_000 });
    const beyond = 0.2 + 2 + 5600;
    expect(loopTerminalOhms(leak)).toBeCloseTo(4.1 + (51_000 * beyond) / (51_000 + beyond), 8);
    expect(loopTerminalOhms(leak, [3])).toBeCloseTo(4.1 + 51_000, 8);
    expect(loopTerminalOhms(leak, [1])).toBe(OPEN);
  });

  it("joint, cut, bypass, splices", () => {
    expect(loopTerminalOhms(withFault({ kind: "joint", place: 3, ohms: 45 }))).toBeCloseTo(5651.3, 8);
    expect(loopTerminalOhms(withFault({ kind: "cut", place: 4 }))).toBe(OPEN);
    const bypass = withFault({ kind: "bypass", opening: 2 });
    expect(loopTerminalOhms(bypass, [2])).toBeCloseTo(5606.2, 8);
    expect(loopTerminalOhms(bypass, [1])).toBe(OPEN);
    expect(loopTerminalOhms(threeWindows({ spliceOhms: [0.5, 0, 0.5] }))).toBeCloseTo(7.3, 12);
  });

  it("parallel contacts: nothing changes until all openings are open", () => {
    const parallel = threeWindows({ contacts: "parallel", eol: { place: "end", ohms: 5600 } });
    expect(loopTerminalOhms(parallel)).toBeCloseTo(5606 + 0.1 / 3, 8);
    expect(loopTerminalOhms(parallel, [1, 3])).toBeCloseTo(5606.1, 8);
    expect(loopTerminalOhms(parallel, [1, 2, 3])).toBe(OPEN);
  });

  it("normally open: open or EOL at rest, the wire when a contact closes", () => {
    const button = { contactOhms: 0.1, form: "NO" as const };
    const bare: LoopWiring = { pairOhms: [2], openings: [button], farEnd: "open" };
    expect(loopTerminalOhms(bare)).toBe(OPEN);
    expect(loopTerminalOhms(bare, [1])).toBeCloseTo(2.1, 12);
    const withEol: LoopWiring = { pairOhms: [2, 3], openings: [button, button], eol: { place: "end", ohms: 5600 } };
    expect(loopTerminalOhms(withEol)).toBeCloseTo(5605, 8);
    expect(loopTerminalOhms(withEol, [2])).toBeCloseTo(5 + (0.1 * 5600) / 5600.1, 9);
  });

  it("earth fault: shows between a terminal and earth only", () => {
    const wiring = withFault({ kind: "earth", place: 2, leg: "a", ohms: 30_000 });
    expect(loopTerminalOhms(wiring)).toBeCloseTo(5606.3, 8);
    const { elements } = loopNetwork(wiring);
    expect(terminalOhms({ probe: ["panelA", "earth"], elements })).toBeCloseTo(30_000 + 2.1, 6);
    expect(terminalOhms({ probe: ["b0before", "earth"], elements })).toBeGreaterThan(35_000);
  });

  it("refuses openings, places and stretches that the loop does not have", () => {
    expect(() => loopTerminalOhms(threeWindows({}), [4])).toThrow(InputError);
    expect(() => loopTerminalOhms(threeWindows({ pairOhms: [2] }))).toThrow(
      "pairOhms: got 1 stretches, expected 3 or 4",
    );
    expect(() => loopTerminalOhms(threeWindows({ spliceOhms: [0] }))).toThrow(InputError);
    expect(() => loopTerminalOhms(withFault({ kind: "cut", place: 9 }))).toThrow(InputError);
  });
});

describe("loop network, properties", () => {
  it("shut never reads more than with any set of openings open, for NC loops with leaks anywhere", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }),
        fc.double({ min: 1e3, max: 1e7, noNaN: true }),
        fc.integer({ min: 0, max: 7 }),
        fc.array(fc.integer({ min: 1, max: 6 })),
        (count, ohms, place, open) => {
          const wiring: LoopWiring = {
            pairOhms: Array.from({ length: count }, () => 2),
            openings: Array.from({ length: count }, () => nc),
            eol: { place: "end", ohms: 5600 },
            faults: [{ kind: "leak", place: Math.min(place, count + 1), ohms }],
          };
          const shut = loopTerminalOhms(wiring);
          expect(shut).toBeLessThan(5600 + 2 * count + 0.1 * count + 1e-6);
          expect(
            loopTerminalOhms(
              wiring,
              open.filter((n) => n <= count),
            ),
          ).toBeGreaterThanOrEqual(shut * (1 - 1e-12));
        },
      ),
    );
  });
});
