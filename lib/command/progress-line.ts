import type { PlanProgress } from "../plan/choose-plan.js";

/** One line on the terminal that is rewritten while work goes on; silent where nobody looks. */
export function progressLine(): {
  readonly say: (words: string) => void;
  readonly plan: (progress: PlanProgress) => void;
  readonly end: () => void;
} {
  const out = process.stderr;
  const say = (words: string) => {
    if (out.isTTY) out.write(`\r\u001B[K${words} …`);
  };
  return {
    say,
    plan: ({ stage, bestCents, boundCents }) => {
      const best = bestCents === null ? "" : `, best so far ${(bestCents / 100).toFixed(2)}`;
      const bound = boundCents === null ? "" : `, not below ${(boundCents / 100).toFixed(2)}`;
      say(`planning: ${stage}${best}${bound}`);
    },
    end: () => {
      if (out.isTTY) out.write("\r\u001B[K");
    },
  };
}
