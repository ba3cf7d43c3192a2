import { describe, expect, it } from "vitest";
import { judgeJob } from "../../lib/findings/judge-job.js";
import { judgeLoop } from "../../lib/findings/judge-loop.js";
import type { LoopJudgement, LoopRecord } from "../../lib/findings/loop-record.js";

/** A loop with nothing remarkable, to be changed by each row. */
const plain: LoopRecord = {
  id: "1",
  openings: 2,
  runMeters: 20,
  cable: { gaugeAwg: 22 },
  lifted: "both",
  readings: {
    voltsDc: 0,
    closedOhms: 5620,
    opened: [
      { opening: 1, ohms: "OL" },
      { opening: 2, ohms: "OL" },
    ],
  },
  oldPanel: { expectedEolOhms: 5600, restingState: "normal", resistorAtPanel: "none" },
};

function withReadings(readings: LoopRecord["readings"], more: Partial<LoopRecord> = {}): LoopRecord {
  return { ...plain, ...more, readings: { ...plain.readings, ...readings } };
}

const facts = (judgement: LoopJudgement): readonly string[] => judgement.facts.map(({ fact }) => fact);

describe("facts come before probabilities (common practice, no source)", () => {
  it.each([
    [
      "11 V ac on the pair",
      withReadings({ voltsDc: 2.1, voltsAc: 11 }),
      "foreignVolts",
      "foreignVoltage",
      "measureAgain",
    ],
    ["3 V dc on the pair", withReadings({ voltsDc: -3 }), "foreignVolts", "foreignVoltage", "measureAgain"],
    ["0.6 V dc may be pickup", withReadings({ voltsDc: 0.6 }), "pickupVolts", "soundEolAtEnd", "keep"],
    [
      "13.4 V at a supplied detector",
      withReadings({ voltsDc: 13.4 }, { poweredDetector: true, powered: true }),
      "detectorSupply",
      "soundEolAtEnd",
      "keep",
    ],
    ["2 kΩ to earth", withReadings({ earth: { aOhms: 2000, bOhms: 7600 } }), "earthFault", "earthFault", "repair"],
    [
      "300 kΩ to earth is damp",
      withReadings({ earth: { aOhms: 300_000, bOhms: "OL" } }),
      "earthDamp",
      undefined,
      undefined,
    ],
    [
      "moves when tapped",
      withReadings({ tapped: { minOhms: 5620, maxOhms: 9800 } }),
      "movesTapped",
      "highResistance",
      "repair",
    ],
    [
      "a shock sensor moves when tapped",
      withReadings({ tapped: { minOhms: 5620, maxOhms: "OL" } }, { shockSensor: true }),
      "shockMoves",
      "soundEolAtEnd",
      "keep",
    ],
    ["3 Ω to another pair", withReadings({ toOtherPairOhms: 3 }), "lowToOtherPair", undefined, undefined],
    [
      "shared return is known",
      withReadings({ toOtherPairOhms: 3 }, { returnSharedWith: ["2"] }),
      "sharedReturnNoted",
      "soundEolAtEnd",
      "keep",
    ],
    ["polarity", withReadings({ reversedOhms: "OL" }), "polarity", "lifeSafety", "leaveAlone"],
    ["climbing", withReadings({ behaviour: "climbing" }), "climbing", "lifeSafety", "leaveAlone"],
    ["not lifted", { ...plain, lifted: "no" as const }, "notLifted", undefined, "measureAgain"],
  ])("%s", (_, record, fact, condition, action) => {
    const judgement = judgeLoop(record);
    expect(facts(judgement)).toContain(fact);
    if (condition !== undefined) expect(judgement.condition).toBe(condition);
    if (action !== undefined) expect(judgement.action).toBe(action);
  });

  it("no fault is named on a live pair, and nothing more is to be read there", () => {
    const judgement = judgeLoop(withReadings({ voltsAc: 24, closedOhms: 47 }));
    expect(judgement.findings.map(({ condition }) => condition)).toEqual(["foreignVoltage", "unexplained"]);
    expect(judgement).toMatchObject({ next: [], eol: null, run: null });
  });
});

describe("patterns of the readings (common practice, no source)", () => {
  const { oldPanel: _, ...unnoted } = plain;
  const noEol = (readings: LoopRecord["readings"], more: Partial<LoopRecord> = {}): LoopRecord => ({
    ...unnoted,
    ...more,
    readings: { voltsDc: 0, ...readings },
  });
  const one = (ohms: number | "OL", opening = 1) => [{ opening, ohms }];
  it.each([
    [
      "parallel contacts: nothing changes until all are open",
      noEol({ closedOhms: 2.9, opened: [...one(2.9), ...one(3, 2)], openedTogetherOhms: "OL" }),
      "parallelContacts",
    ],
    ["bypassed: an opening changes nothing", withReadings({ opened: [...one(5618), ...one("OL", 2)] }), "bypassed"],
    [
      "double EOL: opening adds a preferred value",
      withReadings({ closedOhms: 5610, opened: [...one(11_200), ...one("OL", 2)] }),
      "doubleEol",
    ],
    [
      "two zones on a pair: 1.0 k, 2.2 k, 3.2 k",
      noEol({ closedOhms: 2.8, opened: [...one(1004), ...one(2210, 2)], openedTogetherOhms: 3215 }),
      "doubledPair",
    ],
    [
      "normally open without EOL: closes when operated",
      noEol({ closedOhms: "OL", opened: [...one(2.1), ...one(2.6, 2)] }),
      "normallyOpen",
    ],
    [
      "normally open with EOL across",
      withReadings({ closedOhms: 5660, opened: one(1.9, 2) }, { contactForm: "NO" }),
      "normallyOpen",
    ],
    ["leak beyond the first contact", noEol({ closedOhms: 2.9, opened: [...one("OL"), ...one(58_000, 2)] }), "leakage"],
    [
      "short between the contacts",
      noEol({ closedOhms: 1.6, opened: [...one("OL"), ...one(1.7, 2)] }, { oldPanel: { restingState: "faulted" } }),
      undefined,
    ],
    [
      "detector read without supply",
      noEol({ closedOhms: "OL" }, { poweredDetector: true, powered: false }),
      "poweredDevice",
    ],
    [
      "tamper pair without EOL",
      noEol({ closedOhms: 2.8, opened: [...one("OL"), ...one("OL", 2)] }, { tamperPair: true }),
      "tamperLoop",
    ],
  ])("%s", (_name, record, condition) => {
    const judgement = judgeLoop(record);
    if (condition === undefined) expect(["shorted", "bypassed"]).toContain(judgement.condition);
    else expect(judgement.condition).toBe(condition);
  });

  it("two legs in parallel: half the value at rest, the whole one when opened", () => {
    const judgement = judgeLoop(
      withReadings({ closedOhms: 2800, opened: one(5550) }, { oldPanel: { expectedEolOhms: 5600 } }),
    );
    expect(facts(judgement)).toContain("legsInParallel");
    expect(judgement).toMatchObject({ condition: "wrongEol", action: "changeEol" });
  });

  it("two EOLs in series read double", () => {
    const judgement = judgeLoop(withReadings({ closedOhms: 11_150 }, { oldPanel: { expectedEolOhms: 5600 } }));
    expect(facts(judgement)).toContain("eolsInSeries");
    expect(["wrongEol", "highResistance"]).toContain(judgement.condition);
  });

  it("a resistor across the terminals of a loop that reads near zero asks why", () => {
    const judgement = judgeLoop(noEol({ closedOhms: 2.6 }, { oldPanel: { resistorAtPanel: "acrossTerminals" } }));
    expect(facts(judgement)).toContain("resistorAcross");
  });

  it("a supplied detector with 12 Ω on 2 Ω of cable is no bad joint", () => {
    const judgement = judgeLoop(
      noEol({ closedOhms: 12.2, opened: one("OL") }, { openings: 1, poweredDetector: true, powered: true }),
    );
    expect(["soundNoEol", "eolInPanel"]).toContain(judgement.condition);
  });
});

describe("blunders are questions, not confident names", () => {
  const others = Array.from({ length: 8 }, (_, i) => ({
    ...plain,
    id: `o${i}`,
    job: "J",
    oldPanel: { restingState: "normal" as const },
    readings: {
      voltsDc: 0,
      closedOhms: 5500 + 25 * i,
      opened: [
        { opening: 1, ohms: "OL" as const },
        { opening: 2, ohms: "OL" as const },
      ],
    },
  }));

  it("kΩ typed as Ω: 5.6 Ω where the panel expects 5.6 kΩ", () => {
    const judgement = judgeLoop(withReadings({ closedOhms: 5.6 }));
    expect(facts(judgement)).toContain("unitSlip");
    expect(judgement.probability).toBeLessThan(0.8);
  });

  it("the same in a job whose other loops show the value", () => {
    const slip = { ...plain, job: "J", oldPanel: { restingState: "normal" as const }, readings: { closedOhms: 5.57 } };
    const judgement = judgeJob([slip, ...others]).loops[0];
    expect(judgement && facts(judgement)).toContain("unitSlip");
    expect(judgement?.probability).toBeLessThan(0.8);
    expect(judgement?.action).toBe("measureAgain");
  });

  it("Ω typed as kΩ: 5.6 MΩ", () => {
    const judgement = judgeLoop(withReadings({ closedOhms: 5_600_000 }));
    expect(facts(judgement)).toContain("unitSlip");
    expect(judgement.condition).toBe("unexplained");
  });

  it("shut and opened reading swapped", () => {
    const judgement = judgeLoop(withReadings({ closedOhms: "OL", opened: [{ opening: 1, ohms: 5610 }] }));
    expect(facts(judgement)).toContain("swappedColumns");
    expect(judgement.condition === "unexplained" || judgement.probability < 0.7).toBe(true);
  });

  it("no opened reading: never above 90 %, none of n openings proved, and it says so", () => {
    const judgement = judgeLoop({ ...plain, readings: { voltsDc: 0, closedOhms: 5620 } });
    expect(judgement.condition).toBe("soundEolAtEnd");
    expect(judgement.probability).toBeLessThan(0.9);
    expect(judgement.openingsProved).toEqual({ proved: 0, total: 2 });
    expect(facts(judgement)).toContain("noOpened");
    expect(judgement.cannotTell.join(" ")).toContain("0 of 2 proved");
  });
});

it("ohms are printed with their unit in one piece, as the SI brochure (section 5.4.3) writes a prefixed unit", () => {
  const printed = [
    judgeLoop(withReadings({ closedOhms: 2190, earth: { aOhms: 300_000, bOhms: "OL" } })),
    judgeLoop(withReadings({ closedOhms: "OL", opened: [{ opening: 1, ohms: 5610 }] })),
    judgeLoop(withReadings({ closedOhms: 5.6, tapped: { minOhms: 5620, maxOhms: "OL" } })),
  ].map((judgement) => JSON.stringify(judgement));
  expect(printed.join(" ")).toContain("2.19 kΩ shut");
  expect(printed.join(" ")).toContain("300 kΩ to earth");
  expect(printed.join(" ")).not.toMatch(/[kM] Ω|Ω Ω|over-range Ω/);
});
