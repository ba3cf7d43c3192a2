import { describe, expect, test } from "vitest";
import { estimatedLoops } from "../../lib/estimate/estimated-loops.js";
import { prepareJob } from "../../lib/estimate/prepare-job.js";
import { workOut } from "../../lib/estimate/work-out.js";
import { judgeJob } from "../../lib/findings/judge-job.js";
import type { LoopRecord } from "../../lib/findings/loop-record.js";
import { choosePlan } from "../../lib/plan/choose-plan.js";
import { pricePlan } from "../../lib/plan/price-plan.js";
import { solveWithHighs } from "../../lib/solver/highs.js";
import { readSurvey } from "../../lib/survey/read-survey.js";
import type { Survey } from "../../lib/survey/survey.js";
import { estimateOf } from "./estimate-of.js";

/** The proved plan and what it leads to, without alternatives and options. */
async function planned(survey: Survey) {
  const prepared = prepareJob(survey);
  const plan = await choosePlan({ problem: prepared.problem, solve: solveWithHighs, seconds: 20, breakTies: false });
  expect(plan.status).toBe("optimal");
  expect(pricePlan(prepared.problem, plan).violations).toEqual([]);
  const worked = await workOut({ prepared, plan, solve: solveWithHighs });
  const { judgements, treatments, rates } = prepared;
  const { loops } = estimatedLoops({ survey, judgements, treatments, ...worked, rates });
  return { loops, terminals: worked.terminals };
}

const surveyOf = (shared: readonly (string | undefined)[], more: Readonly<Record<number, object>> = {}): Survey =>
  readSurvey({
    json: {
      schema: 1,
      site: { name: "Invented pumping house" },
      loops: shared.map((returnSharedWith, index) => ({
        panel: "P1",
        loop: `${index + 1}`,
        label: `PAIR ${index + 1}`,
        protects: `window ${index + 1}`,
        use: "perimeter",
        openings: 1,
        device: "recessed contact",
        cable: "22/4",
        run: "20 m",
        closed: `${3 + index / 10}`,
        opened: "OL",
        voltsPairDc: 0,
        ...(returnSharedWith === undefined ? {} : { returnSharedWith }),
        ...more[index],
      })),
    },
  }).survey;

/** Fourteen loops, two sets of four and three on one return each. */
const manySets = [
  "5, 9, 13",
  undefined,
  undefined,
  "8, 12",
  "1, 9, 13",
  undefined,
  undefined,
  "4, 12",
  "1, 5, 13",
  undefined,
  undefined,
  "4, 8",
  "1, 5, 9",
  undefined,
];

describe("Loops on one return keep one module and one seat (common practice, no source)", () => {
  test("each set on one module, its return seated once, no return holding more than the profile says", async () => {
    const survey = surveyOf(manySets);
    const sets = survey.loops.filter(({ returnSharedWith }) => returnSharedWith !== undefined);
    expect(sets).toHaveLength(7);
    const estimate = await planned(survey);
    const wired = estimate.loops.filter(({ input }) => input !== null);
    expect(wired.length).toBeGreaterThan(8);
    for (const { key, returnSharedWith = [] } of sets) {
      const modules = wired
        .filter((loop) => loop.key === key || returnSharedWith.includes(loop.key))
        .map(({ input }) => input?.module);
      expect(new Set(modules).size).toBeLessThanOrEqual(1);
    }
    const onSets = wired.filter(({ key }) => sets.some((loop) => loop.key === key));
    for (const { input } of onSets) expect(input?.sharedWith).toEqual([]);
    const first = (key: string) =>
      [key, ...(survey.loops.find((loop) => loop.key === key)?.returnSharedWith ?? [])].sort()[0];
    const returns = new Set(onSets.map(({ key }) => first(key)));
    const bonded = estimate.terminals.filter(({ conductor }) => conductor === "B shared");
    expect(bonded.length).toBeGreaterThan(0);
    expect(bonded).toHaveLength(onSets.length - returns.size);
    for (const row of bonded) {
      const partners = survey.loops.find(({ key }) => key === row.loop)?.returnSharedWith ?? [];
      const brought = estimate.terminals.filter(
        ({ loop, conductor, module, terminal }) =>
          partners.includes(loop) && conductor === "B" && module === row.module && terminal === row.terminal,
      );
      expect(brought).toHaveLength(1);
    }
    const seated = new Map<string, number>();
    for (const { module, terminal, conductor } of estimate.terminals) {
      if (!terminal.startsWith("return") || conductor === "B shared") continue;
      const name = `${module} ${terminal}`;
      seated.set(name, (seated.get(name) ?? 0) + 1);
    }
    const typeOf = (name: string) => /^M\d+ /.exec(name)?.[0].trim();
    for (const [name, conductors] of seated) {
      expect(typeOf(name)).toBeDefined();
      // The demo profiles hold three conductors ("six") or one ("ten") in a return.
      expect(conductors).toBeLessThanOrEqual(3);
    }
  }, 60_000);

  test("what is on such a return is never joined with another loop", async () => {
    const estimate = await planned(surveyOf([undefined, undefined, "4", "3"]));
    const shared = estimate.loops.filter(({ key }) => key === "R003" || key === "R004");
    expect(shared).toHaveLength(2);
    for (const { input } of shared) expect(input?.sharedWith ?? []).toEqual([]);
  }, 60_000);

  test("life safety on the return: the others are left alone with it and touched by no paper", async () => {
    const estimate = await estimateOf(
      surveyOf(["2", "1, 3", "2", undefined], { 0: { lifeSafety: "yes", label: "FIRE BELL" } }),
    );
    const byKey = new Map(estimate.loops.map((loop) => [loop.key, loop]));
    for (const key of ["R001", "R002", "R003"]) {
      expect(byKey.get(key)?.treatment).toBe("excluded");
      expect(byKey.get(key)?.next).toEqual([]);
      expect(estimate.terminals.some(({ loop }) => loop === key)).toBe(false);
      expect(estimate.cutOver.labels.some((label) => label.key === key)).toBe(false);
    }
    expect(byKey.get("R002")?.facts.map(({ fact }) => fact)).toContain("lifeSafetyReturn");
    expect(byKey.get("R004")?.treatment).not.toBe("excluded");
    expect(estimate.holds).toHaveLength(1);
  }, 60_000);

  test("foreign volts on the return: hands off the others too", async () => {
    const estimate = await estimateOf(surveyOf(["2", "1", undefined], { 0: { voltsPairDc: 24 } }));
    const [live, shared, free] = estimate.loops;
    expect(live?.treatment).toBe("measureAgain");
    expect(shared?.facts.map(({ fact }) => fact)).toContain("foreignReturn");
    expect(shared?.treatment).toBe("measureAgain");
    expect(shared?.input).toBeNull();
    expect(free?.treatment).not.toBe("measureAgain");
  }, 60_000);
});

describe("Readings over a shared return", () => {
  const record = (id: string, more: Partial<LoopRecord> = {}): LoopRecord => ({
    id,
    job: "one",
    openings: 1,
    cable: { gaugeAwg: 22 },
    runMeters: 20,
    contactForm: "NC",
    readings: { closedOhms: 3, opened: [{ opening: 1, ohms: "OL" }], voltsDc: 0, toOtherPairOhms: 4 },
    ...more,
  });

  test("low to the pair it is known to share a return with says nothing new; unknown, it does", () => {
    const [known] = judgeJob([record("a", { returnSharedWith: ["b"] }), record("b")]).loops;
    const [unknown] = judgeJob([record("a"), record("b")]).loops;
    expect(known?.condition).toMatch(/sound|eolInPanel/);
    expect(unknown?.facts.map(({ fact }) => fact)).toContain("lowToOtherPair");
    expect(known?.facts.map(({ fact }) => fact)).toContain("sharedReturnNoted");
    expect(known?.facts.find(({ fact }) => fact === "sharedReturnNoted")?.words).toMatch(/all their readings at once/);
  });

  test("a return named on one side only holds the other too while a device has to be seen", () => {
    const [, held] = judgeJob([
      record("a", { returnSharedWith: ["b"], readings: { closedOhms: 2200, voltsDc: 0, behaviour: "climbing" } }),
      record("b"),
    ]).loops;
    expect(held?.action).toBe("leaveAlone");
    expect(held?.facts.map(({ fact }) => fact)).toContain("heldReturn");
  });
});
