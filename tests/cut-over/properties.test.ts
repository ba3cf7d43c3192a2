import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { batchesOf } from "../../lib/cut-over/batches.js";
import { type CutOverLoop, isExcluded, isHoldUp } from "../../lib/cut-over/cut-over-loop.js";
import { cutOverOrder } from "../../lib/cut-over/cut-over-order.js";
import { removedDevices } from "../../lib/cut-over/removed-devices.js";
import { walkTest } from "../../lib/cut-over/walk-test.js";
import { InputError } from "../../lib/problems/input-error.js";

const loopFrom = fc.record({
  panel: fc.constantFrom("P1", "P2"),
  treatment: fc.constantFrom(
    "keep",
    "fitEol",
    "repair",
    "rewire",
    "split",
    "wireless",
    "measureAgain",
    "retire",
    "excluded",
  ),
  use: fc.constantFrom("entryExit", "perimeter", "holdUp", "tamper", "arming", "lifeSafety", null),
  kind: fc.constantFrom(
    "contactRecessed",
    "contactSurface",
    "motion",
    "holdUp",
    "glassBreak",
    "smokeOrHeat",
    "unknown",
  ),
  area: fc.constantFrom("1", "2", null),
  count: fc.integer({ min: 1, max: 9 }),
  input: fc.option(fc.record({ module: fc.constantFrom("M1", "M2"), number: fc.integer({ min: 1, max: 10 }) })),
});
const anyLoops = (least = 0) =>
  fc.array(loopFrom, { minLength: least, maxLength: 25 }).map((rows) =>
    rows.map(
      ({ treatment, use, kind, area, count, input, panel }, index): CutOverLoop => ({
        key: `R${index + 1}`,
        panel,
        loop: `${index + 1}`,
        tag: `T${index + 1}`,
        zones: [
          { number: index + 1, name: `Zone ${index + 1}`, use: use as CutOverLoop["zones"][number]["use"], area },
        ],
        treatment: treatment as CutOverLoop["treatment"],
        input,
        eol: null,
        openings: { count, assumed: false },
        devices: [{ kind: kind as CutOverLoop["devices"][number]["kind"], count }],
        contactForm: "NC",
      }),
    ),
  );
const anyJob = fc.record({
  loops: anyLoops(),
  panels: fc.constantFrom(
    [{ panel: "P1" }, { panel: "P2", sirens: 2, mains: "hardwired" }],
    [{ panel: "P1", sirens: 0 }],
    [],
  ),
  holds: fc.constantFrom([], [{ hold: "lifeSafetyOnOldControl", loops: ["R1"] }]),
  release: fc.constantFrom(undefined, { name: "N", date: "D" }, { name: "", date: "D" }, { name: "N", date: "  " }),
  agreedDarkMinutes: fc.option(fc.integer({ min: 1, max: 600 }), { nil: undefined }),
});
/** Steps after which a hold-up of the loop or panel can no longer call through the old control. */
const killsLoop = new Set(["moveLoops", "disconnectHoldUp", "retireLoops"]);
const killsPanel = new Set(["powerDownOld", "stripOut", "removeSiren", "checkPhoneLine"]);

describe("properties of every cut-over", () => {
  test("no hold-up is cut off before its substitute is agreed and in place", () => {
    let seen = 0;
    fc.assert(
      fc.property(anyJob, (job) => {
        const { steps } = cutOverOrder(job);
        for (const loop of job.loops.filter(isHoldUp)) {
          const kills = steps.filter(
            ({ step, loops, panel }) =>
              (killsLoop.has(step) && loops.includes(loop.key)) || (killsPanel.has(step) && panel === loop.panel),
          );
          for (const kill of kills) {
            seen += 1;
            const before = steps.slice(0, kill.number - 1);
            const has = (step: string) => before.findIndex((one) => one.step === step && one.loops.includes(loop.key));
            expect(has("agreeHoldUpSubstitute")).toBeGreaterThanOrEqual(0);
            expect(has("holdUpSubstituteInPlace")).toBeGreaterThan(has("agreeHoldUpSubstitute"));
          }
          if (!isExcluded(loop)) expect(kills.length).toBeGreaterThan(0);
        }
      }),
    );
    expect(seen).toBeGreaterThan(50);
  });

  test("life safety unreleased: no power-down, strip-out or siren step whatever the other inputs, release first", () => {
    let held = 0;
    fc.assert(
      fc.property(anyJob, (job) => {
        const order = cutOverOrder(job);
        const released = job.release !== undefined && job.release.name.trim() !== "" && job.release.date.trim() !== "";
        const stands = job.holds.length > 0 || (job.loops.some(isExcluded) && !released);
        expect(order.held).toBe(stands);
        if (!stands) return;
        held += 1;
        expect(order.steps[0]?.step).toBe("obtainRelease");
        for (const { step, words } of order.steps) {
          expect(killsPanel.has(step)).toBe(false);
          expect(words).not.toMatch(/power.?down|strip.?out|siren/i);
        }
      }),
    );
    expect(held).toBeGreaterThan(30);
  });

  test("an excluded loop stands in no step but the release, its substitute while the control is released, and the list", () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const excluded = new Set(job.loops.filter(isExcluded).map(({ key }) => key));
        for (const { step, loops } of cutOverOrder({ ...job, holds: [] }).steps) {
          if (/Release|Substitute/.test(step)) continue;
          expect(loops.filter((key) => excluded.has(key))).toEqual([]);
        }
      }),
    );
  });

  test("every loop that stays is moved once and proved after; numbers and references run backwards only", () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const { steps } = cutOverOrder(job);
        steps.forEach(({ number, after }, index) => {
          expect(number).toBe(index + 1);
          for (const earlier of after) expect(earlier).toBeLessThan(number);
        });
        for (const loop of job.loops) {
          if (isExcluded(loop) || isHoldUp(loop) || ["wireless", "retire"].includes(loop.treatment)) continue;
          const moves = steps.filter(({ step, loops }) => step === "moveLoops" && loops.includes(loop.key));
          expect(moves.length).toBe(1);
          const next = steps[moves[0]?.number ?? 0];
          expect(next?.step).toBe("proveLoops");
          expect(next?.loops).toEqual(moves[0]?.loops);
        }
      }),
    );
  });

  test("lots: in order, nothing lost, none longer than agreed unless one input by itself is", () => {
    fc.assert(
      fc.property(anyLoops(1), fc.integer({ min: 1, max: 120 }), (loops, mostMinutes) => {
        const minutesOf = ({ openings }: CutOverLoop) => openings.count * 10;
        const batches = batchesOf({ loops, minutesOf, mostMinutes });
        expect(batches.flatMap((batch) => batch.loops.map(({ key }) => key)).sort()).toEqual(
          loops.map(({ key }) => key).sort(),
        );
        for (const batch of batches) {
          const inputs = new Set(
            batch.loops.map(({ panel, input, key }) =>
              input === null ? key : `${panel}${input.module}/${input.number}`,
            ),
          );
          expect(batch.minutes).toBe(batch.loops.reduce((sum, loop) => sum + minutesOf(loop), 0));
          if (batch.minutes > mostMinutes) expect(inputs.size).toBe(1);
        }
      }),
    );
  });

  test("every opening of a loop taken over has a walk-test line of its own", () => {
    fc.assert(
      fc.property(anyLoops(1), (loops) => {
        const { lines, without } = walkTest({ loops });
        for (const loop of loops) {
          const mine = lines.filter(({ key }) => key === loop.key);
          const gone = without.some(({ key }) => key === loop.key);
          expect(gone).toBe(isExcluded(loop) || loop.treatment === "retire");
          if (gone) expect(mine).toEqual([]);
          else expect(new Set(mine.map(({ what }) => what)).size).toBe(loop.openings.count);
        }
        expect(lines.map(({ number }) => number)).toEqual(lines.map((_, index) => index + 1));
      }),
    );
  });

  test("every device that goes out of use has a plate or a note in words", () => {
    fc.assert(
      fc.property(anyLoops(1), fc.boolean(), (loops, held) => {
        const removed = removedDevices({ loops, panels: [{ panel: "P1", keypads: 1, sirens: 1 }], held });
        for (const loop of loops) {
          const goes = !isExcluded(loop) && ["wireless", "retire"].includes(loop.treatment);
          const mine = removed.filter(({ key }) => key === loop.key);
          if (goes) expect(mine.map(({ count }) => count)).toEqual([loop.openings.count]);
          if (isExcluded(loop)) expect(mine).toEqual([]);
          for (const { words } of mine) expect(words).not.toBe("");
        }
        expect(removed.some(({ kind }) => kind === "control" || kind === "siren")).toBe(!held);
      }),
    );
  });

  test("an agreed time of no minutes is refused", () => {
    expect(() => cutOverOrder({ loops: [], panels: [], holds: [], agreedDarkMinutes: 0 })).toThrow(InputError);
  });
});
