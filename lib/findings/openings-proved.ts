import type { Evidence } from "./evidence.js";
import type { Gate } from "./facts.js";
import type { LoopJudgement, LoopRecord } from "./loop-record.js";

/** Openings whose own reading went over-range, or closed on a normally-open device. */
export function openingsProved(
  record: LoopRecord,
  { taken }: Evidence,
  gate: Gate = "none",
): LoopJudgement["openingsProved"] {
  const total = Math.max(0, record.openings);
  if (gate !== "none" || taken.closedOverRange) {
    const counts = gate === "none" && record.contactForm === "NO";
    return { proved: counts ? Math.min(total, taken.opened.filter(Number.isFinite).length) : 0, total };
  }
  const proved = taken.opened.filter(
    (ohms, i) =>
      (taken.openings[i] ?? 0) <= total &&
      (!Number.isFinite(ohms) || (record.contactForm === "NO" && ohms < taken.closed / 2)),
  ).length;
  return { proved: Math.min(total, proved), total };
}
