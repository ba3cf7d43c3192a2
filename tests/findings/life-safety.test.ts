import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { judgeJob } from "../../lib/findings/judge-job.js";
import { judgeLoop } from "../../lib/findings/judge-loop.js";
import { lifeSafetyMatch, redCable } from "../../lib/findings/life-safety.js";
import type { LoopRecord } from "../../lib/findings/loop-record.js";
import { measureNext } from "../../lib/findings/measure-next.js";

const ohms = fc.oneof(fc.constant("OL" as const), fc.double({ min: 0, max: 2e7, noNaN: true }));
const optional = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });

/** Any record at all, readings and notes at random. */
const anyRecord = fc
  .record({
    closedOhms: optional(ohms),
    opened: fc.array(fc.record({ opening: fc.integer({ min: 1, max: 9 }), ohms }), { maxLength: 5 }),
    voltsDc: optional(fc.double({ min: -40, max: 40, noNaN: true })),
    voltsAc: optional(fc.double({ min: 0, max: 40, noNaN: true })),
    reversedOhms: optional(ohms),
    toOtherPairOhms: optional(ohms),
    behaviour: optional(fc.constantFrom("steady", "climbing", "falling", "jumping")),
    earth: optional(fc.record({ aOhms: ohms, bOhms: ohms })),
    openings: fc.integer({ min: 0, max: 9 }),
    runMeters: optional(fc.double({ min: 0, max: 900, noNaN: true })),
    gaugeAwg: optional(fc.integer({ min: 16, max: 26 })),
    expectedEolOhms: optional(fc.constantFrom(1000, 2200, 4700, 5600)),
    restingState: optional(fc.constantFrom("normal", "faulted", "unknown")),
    poweredDetector: optional(fc.boolean()),
    contactForm: optional(fc.constantFrom("NC", "NO", "mixed", "unknown")),
    lifted: optional(fc.constantFrom("both", "one", "no", "unknown")),
    seen: optional(fc.record({ name: fc.constant("R. Keller"), what: fc.constant("window contact") })),
  })
  .map(
    (r) =>
      JSON.parse(
        JSON.stringify({
          id: "x",
          openings: r.openings,
          runMeters: r.runMeters,
          cable: { gaugeAwg: r.gaugeAwg },
          poweredDetector: r.poweredDetector,
          contactForm: r.contactForm,
          lifted: r.lifted,
          seen: r.seen,
          oldPanel: { expectedEolOhms: r.expectedEolOhms, restingState: r.restingState },
          readings: {
            closedOhms: r.closedOhms,
            opened: r.opened,
            voltsDc: r.voltsDc,
            voltsAc: r.voltsAc,
            reversedOhms: r.reversedOhms,
            toOtherPairOhms: r.toOtherPairOhms,
            behaviour: r.behaviour,
            earth: r.earth,
          },
        }),
      ) as LoopRecord,
  );

describe("life safety over every other field, at random (common practice, no source)", () => {
  it("marked: always left alone, nothing to read, no estimate, seen or not", () => {
    fc.assert(
      fc.property(anyRecord, (record) => {
        const marked = { ...record, markedLifeSafety: true };
        const judgement = judgeLoop(marked);
        expect(judgement).toMatchObject({ condition: "lifeSafety", probability: 1, action: "leaveAlone", next: [] });
        expect(judgement).toMatchObject({ eol: null, run: null });
        expect(measureNext(marked)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it("worded: always left alone until a named person has seen something else", () => {
    const words = fc.constantFrom("2 wire smokes", "SPRINKLER FLOW", "Nurse call", "gas detector", "mag-lock door");
    fc.assert(
      fc.property(anyRecord, words, (record, device) => {
        const { seen: _, ...unseen } = record;
        expect(judgeLoop({ ...unseen, device })).toMatchObject({ action: "leaveAlone", next: [] });
      }),
      { numRuns: 300 },
    );
  });

  it("shown by polarity or by a climbing reading: excluded until somebody has seen the device, also in a job", () => {
    fc.assert(
      fc.property(anyRecord, fc.boolean(), (record, climbing) => {
        const { seen: _, lifted: _l, ...unseen } = record;
        const { voltsDc: _d, voltsAc: _a, ...quiet } = record.readings;
        const readings = climbing
          ? { ...quiet, behaviour: "climbing" as const }
          : { ...quiet, closedOhms: 5580, reversedOhms: "OL" as const };
        const one = { ...unseen, readings };
        expect(judgeLoop(one)).toMatchObject({ condition: "lifeSafety", action: "leaveAlone", next: [] });
        const [pooled] = judgeJob([
          { ...one, job: "J" },
          { id: "y", job: "J", openings: 1, readings: { closedOhms: 5600 } },
        ]).loops;
        expect(pooled).toMatchObject({ action: "leaveAlone", next: [] });
      }),
      { numRuns: 200 },
    );
  });

  it("probabilities add to 1 and no answer is NaN or infinite, whatever was typed", () => {
    fc.assert(
      fc.property(anyRecord, (record) => {
        const text = JSON.stringify(judgeLoop(record), (_, value) => {
          if (typeof value === "number" && !Number.isFinite(value)) throw new Error("not finite");
          return value;
        });
        const judgement = JSON.parse(text) as ReturnType<typeof judgeLoop>;
        const sum = judgement.findings.reduce((total, finding) => total + finding.probability, 0);
        expect(sum).toBeGreaterThan(0.88);
        expect(sum).toBeLessThan(1.000001);
        expect(judgement.findings[0]?.condition).toBe(judgement.condition);
      }),
      { numRuns: 500 },
    );
  });
});

describe("words that name life safety (common practice, no source)", () => {
  it.each([
    [{ label: "24HR FIRE" }, "fire", "label"],
    [{ device: "2 wire smokes" }, "smokes", "device"],
    [{ protects: "sprinkler flow + valve" }, "sprinkler", "protects"],
    [{ label: "SPRK", device: "flow switch" }, "sprk", "label"],
    [{ notes: "goes to the nurse-call board" }, "nurse call", "notes"],
    [{ device: "CO detector" }, "co detector", "device"],
    [{ label: "boiler room CO" }, "co", "label"],
    [{ device: "door contact", protects: "mag-lock stair 2" }, "mag lock", "protects"],
    [{ label: "LIFT PHONE" }, "lift phone", "label"],
    [{ cable: "fire rated 2c" }, "fire", "cable"],
    [{ label: "Medical alert button" }, "medical alert", "label"],
  ])("%j", (texts, word, field) => {
    expect(lifeSafetyMatch(texts)).toEqual({ word, field });
  });

  it.each([
    { notes: "EOL red red red at door", device: "recessed contact" },
    { label: "Hart & Co office", device: "contact" },
    { label: "Acme Co. front door" },
    { label: "MEDS", protects: "medication store door" },
    { label: "lift lobby door", device: "recessed" },
    { notes: "did not lift the pair" },
    { label: "fireplace room window" },
    { label: "smokery back door" },
    { label: "heat pump room" },
    { label: "gasket store" },
  ])("no match in %j", (texts) => {
    expect(lifeSafetyMatch(texts)).toBeNull();
  });

  const fireExit: LoopRecord = {
    id: "7",
    label: "FIRE EXIT",
    device: "door contact",
    openings: 1,
    runMeters: 20,
    cable: { gaugeAwg: 22 },
    lifted: "both",
    readings: { voltsDc: 0, closedOhms: 2210, opened: [{ opening: 1, ohms: "OL" }] },
  };

  it("FIRE EXIT door contact: excluded and asked about, not silently kept and not silently lost", () => {
    const judgement = judgeLoop(fireExit);
    expect(judgement).toMatchObject({ condition: "lifeSafety", action: "leaveAlone", next: [] });
    expect(judgement.facts.map(({ fact }) => fact)).toContain("wordedLifeSafety");
    expect(judgement.facts.map(({ words }) => words).join(" ")).toContain("have a named person see it");
  });

  it("… judged once a named person has seen the contact, still saying so", () => {
    const judgement = judgeLoop({
      ...fireExit,
      seen: { name: "R. Keller", what: "intrusion contact on the exit door" },
    });
    expect(judgement.condition).toBe("soundEolAtEnd");
    expect(judgement.facts.map(({ fact }) => fact)).toContain("seenNotLifeSafety");
  });

  it("… but not when nobody is named, nor when what was seen is life safety", () => {
    for (const seen of [
      { name: " ", what: "contact" },
      { name: "R. Keller", what: "smoke vent release" },
    ]) {
      expect(judgeLoop({ ...fireExit, seen }).action).toBe("leaveAlone");
    }
  });

  it("a red jacket is a caution, colour bands and conductor colours are not", () => {
    expect(redCable({ cable: "18/2 red" })).toBe(true);
    expect(redCable({ notes: "red jacket, feeds what?" })).toBe(true);
    expect(redCable({ cable: "22/4 red/black" })).toBe(false);
    expect(redCable({ notes: "red red red" })).toBe(false);
    const { label: _, ...plain } = fireExit;
    const judgement = judgeLoop({ ...plain, cableWords: "18/2 red" });
    expect(judgement.condition).toBe("soundEolAtEnd");
    expect(judgement.facts.map(({ fact }) => fact)).toContain("redCable");
  });
});
