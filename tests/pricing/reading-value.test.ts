import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { breakEvenHours } from "../../lib/pricing/break-even-hours.js";
import { clausesFor } from "../../lib/pricing/clauses.js";
import { compareOptions } from "../../lib/pricing/compare-options.js";
import { valueOfReading } from "../../lib/pricing/value-of-reading.js";

describe("value of one more reading", () => {
  const treatments = [
    { treatment: "keep", centsByCondition: { sound: 0, bypassed: 20000 } },
    { treatment: "wireless", centsByCondition: { sound: 9000, bypassed: 9000 } },
  ];

  test("a reading that settles the matter is worth the expected value of perfect information (by hand)", () => {
    // Now: keep costs .4 · 200 = 80, wireless 90. Knowing: .6 · 0 + .4 · 90 = 36. Saved 44.
    const value = valueOfReading({
      treatments,
      before: { sound: 0.6, bypassed: 0.4 },
      after: [
        { outcome: "changes", probability: 0.6, posterior: { sound: 1 } },
        { outcome: "same", probability: 0.4, posterior: { bypassed: 1 } },
      ],
      readingCents: 170,
    });
    expect(value.now).toEqual({ treatment: "keep", meanCents: 8000 });
    expect(value.savingCents).toBe(4400);
    expect(value.netCents).toBe(4230);
    expect(value.changesTreatment).toBe(true);
    expect(value.sdAfterCents).toBe(0);
  });

  test("saves never less than nothing, and nothing where no outcome changes the treatment", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        (p, hit, miss) => {
          // Bayes by hand: P(same | bypassed) = hit, P(same | sound) = miss.
          const same = p * miss + (1 - p) * hit;
          const after = [
            {
              outcome: "same",
              probability: same,
              posterior: { sound: (p * miss) / same, bypassed: ((1 - p) * hit) / same },
            },
            {
              outcome: "changes",
              probability: 1 - same,
              posterior: { sound: (p * (1 - miss)) / (1 - same), bypassed: ((1 - p) * (1 - hit)) / (1 - same) },
            },
          ];
          const value = valueOfReading({ treatments, before: { sound: p, bypassed: 1 - p }, after, readingCents: 0 });
          expect(value.savingCents).toBeGreaterThanOrEqual(0);
          if (!value.changesTreatment) expect(value.savingCents).toBe(0);
        },
      ),
    );
  });

  test("outcomes that do not average to the present belief are refused", () => {
    const after = [{ outcome: "same", probability: 1, posterior: { sound: 1 } }];
    const given = { treatments, before: { sound: 0.6, bypassed: 0.4 }, after, readingCents: 0 };
    expect(() => valueOfReading(given)).toThrow(/average/);
  });
});

test("break-even hours: at that many hours repairing and replacing cost the same", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1000, max: 80000 }),
      fc.integer({ min: 0, max: 900 }),
      fc.integer({ min: 2000, max: 9000 }),
      fc.integer({ min: 90, max: 100 }),
      (replaceCents, repairMaterialCents, centsPerHour, percent) => {
        const succeeds = percent / 100;
        const { hours } = breakEvenHours({ replaceCents, repairMaterialCents, centsPerHour, succeeds });
        const repairing = repairMaterialCents + centsPerHour * hours + (1 - succeeds) * replaceCents;
        if (hours > 0) expect(repairing).toBeCloseTo(replaceCents, 6);
        else expect(repairing).toBeGreaterThanOrEqual(replaceCents - 1e-6);
      },
    ),
  );
  const cheap = { replaceCents: 500, repairMaterialCents: 900, centsPerHour: 5200, succeeds: 0.7, capHours: 1 };
  expect(breakEvenHours(cheap)).toMatchObject({ hours: 0, worthTrying: false });
});

test("options side by side: differences to the base, price per zone gained, and which is never worth it", () => {
  const one = { words: "", costCents: 0, sellCents: 0, openingsLost: [], loopsOnWire: 9, wirelessDevices: 1, days: 1 };
  const compared = compareOptions({
    base: "base",
    options: [
      { ...one, option: "base", totalCents: 100_000, zones: 10 },
      { ...one, option: "split", totalCents: 130_000, zones: 13 },
      { ...one, option: "allWireless", totalCents: 190_000, zones: 12 },
    ],
  });
  expect(compared.map(({ moreCents }) => moreCents)).toEqual([0, 30_000, 90_000]);
  expect(compared[1]?.centsPerZoneGained).toBe(10_000);
  expect(compared.map(({ dominatedBy }) => dominatedBy)).toEqual([null, null, "split"]);
  expect(() => compareOptions({ base: "none", options: [] })).toThrow(/options/);
});

describe("clauses from the state of the loops", () => {
  const loop = (over: object) => ({
    key: "R001",
    name: "1",
    treatment: "keep",
    openingsProved: { proved: 2, total: 2 },
    eolAt: "device" as const,
    sharedWith: [],
    uncertain: false,
    ownerSignedRetire: false,
    ...over,
  });
  const job = {
    validDays: 30,
    repairCapHours: 1,
    wirelessPrice: "104.00 USD",
    demoPrices: false,
    quotedOn: "2026-03-02",
  };
  const ids = (over: object) => clausesFor({ ...job, loops: [loop(over)] }).map(({ id }) => id);

  test("each state calls for its clause and for no other", () => {
    const always = ["readings", "site", "validity"];
    expect(ids({})).toEqual(always);
    expect(ids({ openingsProved: { proved: 1, total: 2 } })).toContain("notProved");
    expect(ids({ eolAt: "panel" })).toContain("eolAtPanel");
    expect(ids({ treatment: "repair" })).toContain("repairCap");
    expect(ids({ sharedWith: ["R002"] })).toContain("sharedInput");
    expect(ids({ treatment: "retire" })).toEqual(["retired", "site", "validity"]);
    expect(ids({ treatment: "excluded" })).toEqual(["lifeSafety", "site", "validity"]);
    expect(ids({ treatment: "wireless" })).toEqual(["site", "validity"]);
  });

  test("one loop is spoken of as one", () => {
    const states = [{ openingsProved: { proved: 1, total: 2 } }, { eolAt: "panel" as const }, { uncertain: true }];
    const treatments = ["repair", "retire", "excluded"].map((treatment) => ({ treatment }));
    for (const state of [...states, ...treatments]) {
      const about = clausesFor({ ...job, loops: [loop({ name: "P1 10", ...state })] }).filter(
        ({ loops }) => loops.length > 0,
      );
      expect(about.length).toBeGreaterThan(0);
      for (const { words } of about) expect(words).not.toMatch(/\bloops\b|\btheir (old )?cable|\bthese\b/i);
    }
  });

  test("the quote holds 30 days from 2 March 2026: until 1 April (calendar)", () => {
    const words = clausesFor({ ...job, loops: [] }).find(({ id }) => id === "validity")?.words;
    expect(words).toContain("2026-04-01");
  });

  test("no clause uses a word that promises what nobody can", () => {
    const loops = [
      loop({
        openingsProved: { proved: 0, total: 2 },
        eolAt: "panel",
        sharedWith: ["R002"],
        uncertain: true,
        treatment: "repair",
      }),
      loop({ treatment: "retire" }),
      loop({ treatment: "excluded" }),
    ];
    const clauses = clausesFor({ ...job, loops, demoPrices: true });
    expect(clauses.length).toBeGreaterThan(8);
    for (const { words } of clauses) {
      expect(words).not.toMatch(
        /\b(safe|dead|isolated|good|OK|passed|protected|secure|compliant|certified|guaranteed)\b/i,
      );
    }
  });
});
