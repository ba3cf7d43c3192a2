import { parseArgs } from "node:util";
import { readPlanInput } from "../json-input/plan-input.js";
import { choosePlan } from "../plan/choose-plan.js";
import { solveWithHighsInWorker } from "../solver/highs-in-worker.js";
import { onInterrupt } from "./interrupt.js";
import { progressLine } from "./progress-line.js";
import { readJsonInput } from "./read-input.js";
import type { Command } from "./run-command.js";
import { NoResult, UsageError } from "./usage-error.js";

export const planCommand: Command = {
  usage: "loopwright plan FILE.json|- [--seconds N]",
  summary: "The cheapest plan of a planning problem: JSON in, JSON out.",
  help: [
    'FILE.json holds a planning problem, or {"id", "problem", "expected"}; "-" reads standard input.',
    "--seconds N  most solver time, 60 when left out; cut short, by time or by Ctrl-C, the best plan so far comes with its bound",
  ].join("\n"),
  run: async (args) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { seconds: { type: "string" } },
      allowPositionals: true,
      strict: true,
    });
    const [path] = positionals;
    if (path === undefined || positionals.length > 1)
      throw new UsageError("plan needs one file, or - for standard input");
    const seconds = Number(values.seconds ?? "60");
    if (!(seconds > 0)) throw new UsageError(`--seconds: got ${values.seconds}, expected a number over 0`);
    const problem = readPlanInput(await readJsonInput(path));
    const progress = progressLine();
    const interrupt = onInterrupt(() => progress.say("ending with the best plan so far"));
    const plan = await choosePlan({
      problem,
      solve: solveWithHighsInWorker,
      seconds,
      onProgress: progress.plan,
      signal: interrupt.signal,
    }).finally(interrupt.done);
    progress.end();
    process.stdout.write(`${JSON.stringify(plan, null, 1)}\n`);
    if (plan.status === "infeasible") throw new NoResult(plan.why ?? "no plan keeps every limit");
  },
};
