import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { judgeLoop } from "../../lib/findings/judge-loop.js";
import type { LoopRecord } from "../../lib/findings/loop-record.js";
import { measureNext } from "../../lib/findings/measure-next.js";
import { readingOutcomes } from "../../lib/findings/reading-outcomes.js";

const windows: LoopRecord = {
  id: "3",
  openings: 3,
  runMeters: 30,
  cable: { gaugeAwg: 22 },
  readings: { voltsDc: 0, closedOhms: 3.9 },
};

const readingsOf = (record: LoopRecord) => readingOutcomes({ record }).readings.map(({ reading }) => reading);
const total = (shares: Readonly<Record<string, number>>) =>
  Object.values(shares).reduce((sum, share) => sum + share, 0);

const anyRecord = fc
  .record({
    openings: fc.integer({ min: 1, max: 6 }),
    closedOhms: fc.constantFrom<number | "OL" | undefined>(2.4, 47, 2230, 5600, 90_000, "OL", undefined),
    opened: fc.constantFrom<readonly (number | "OL")[]>([], ["OL"], [2.4], ["OL", 58_000]),
    restingState: fc.constantFrom("normal" as const, "unknown" as const),
  })
  .map(
    ({ openings, closedOhms, opened, restingState }): LoopRecord => ({
      id: "x",
      openings,
      oldPanel: { restingState },
      readings: {
        ...(closedOhms === undefined ? {} : { closedOhms }),
        opened: opened.map((ohms, k) => ({ opening: k + 1, ohms })),
      },
    }),
  );

describe("what each further reading may show", () => {
  it("law of total probability: outcomes add to 1 and average to what is believed now, of every reading", () => {
    let readings = 0;
    fc.assert(
      fc.property(anyRecord, fc.boolean(), (record, pooled) => {
        const judged = pooled ? { judgement: judgeLoop(record) } : {};
        const found = readingOutcomes({ record, ...judged });
        expect(total(found.before)).toBeCloseTo(1, 9);
        for (const { outcomes } of found.readings) {
          readings += 1;
          expect(outcomes.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9);
          for (const { posterior } of outcomes) expect(total(posterior)).toBeCloseTo(1, 9);
          for (const [condition, share] of Object.entries(found.before)) {
            const mean = outcomes.reduce(
              (sum, { probability, posterior }) =>
                sum + probability * ((posterior as Readonly<Record<string, number>>)[condition] ?? 0),
              0,
            );
            expect(mean).toBeCloseTo(share, 9);
          }
        }
      }),
      { numRuns: 100 },
    );
    expect(readings).toBeGreaterThan(300);
  });

  it("an opened reading that changes nothing speaks for a bypass or a short, over-range against both", () => {
    const { before, readings } = readingOutcomes({ record: windows });
    const one = readings.find(({ reading }) => reading === "openOneOpening");
    const same = one?.outcomes.find(({ outcome }) => outcome === "unchanged")?.posterior;
    const open = one?.outcomes.find(({ outcome }) => outcome === "over-range")?.posterior;
    expect(same?.bypassed).toBeGreaterThan(5 * (before.bypassed ?? 1));
    expect(open?.bypassed).toBeLessThan(before.bypassed ?? 0);
  });

  it("opening every opening is offered from two unread ones on, with the minutes of each and what is proved so far", () => {
    const every = (record: LoopRecord) =>
      readingOutcomes({ record }).readings.find(({ reading }) => reading === "openEvery");
    expect(every(windows)?.minutes).toBe(6);
    expect(every(windows)?.words).toContain("3 not yet read; 0 of 3 proved so far");
    const opened = [{ opening: 1, ohms: "OL" as const }];
    const once = { ...windows, readings: { ...windows.readings, opened } };
    expect(every(once)?.minutes).toBe(4);
    expect(every(once)?.words).toContain("2 not yet read; 1 of 3 proved so far");
    expect(every({ ...once, openings: 2 })).toBeUndefined();
    expect(every({ ...windows, openings: 1 })).toBeUndefined();
    const worth = measureNext({ ...windows, oldPanel: { restingState: "normal", resistorAtPanel: "none" } });
    expect(worth.map(({ reading }) => reading)).toContain("openEvery");
  });

  it("nothing on life safety, on a hold or on a live pair; nothing that trips a hold-up before the account is on test", () => {
    expect(readingsOf({ ...windows, markedLifeSafety: true })).toEqual([]);
    expect(readingsOf({ ...windows, device: "2 wire smokes" })).toEqual([]);
    expect(readingsOf({ ...windows, readings: { closedOhms: 5600, behaviour: "climbing" } })).toEqual([]);
    expect(readingsOf({ ...windows, readings: { closedOhms: 5600, voltsAc: 11 } })).toEqual([]);
    const holdUp = { ...windows, use: "hold-up" };
    const trips = ["openOneOpening", "openEvery", "openTogether", "tapped"];
    expect(readingsOf(holdUp).filter((reading) => trips.includes(reading))).toEqual([]);
    const onTest = readingOutcomes({ record: holdUp, options: { accountOnTest: true } }).readings;
    expect(onTest.map(({ reading }) => reading)).toEqual(expect.arrayContaining(trips));
  });
});
