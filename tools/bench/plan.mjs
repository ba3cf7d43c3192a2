import { choosePlan } from "../../dist/plan/choose-plan.js";
import { greedyPlan } from "../../dist/plan/greedy-plan.js";
import { solveWithHighs } from "../../dist/solver/highs.js";
import { planProblem } from "./plan-problem.mjs";

/** Sites by number of loops, with the solver time allowed. */
const sites = [
  { loops: 20, seeds: [1, 2, 3], seconds: 60 },
  { loops: 40, seeds: [4, 5, 6], seconds: 60 },
  { loops: 200, seeds: [7, 8], seconds: 60 },
  { loops: 400, seeds: [9, 10], seconds: 60 },
  { loops: 1000, seeds: [25], seconds: 120 },
];

const cpuSeconds = (from) => {
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1e6;
};

/** CPU time to the proved plan (load of the solver apart), the gap where the time ran out, and the quick plan. */
export async function bench() {
  const rows = [];
  const loading = process.cpuUsage();
  await choosePlan({ problem: planProblem({ loops: 6, seed: 1 }), solve: solveWithHighs });
  rows.push({ name: "plan: load the solver and plan 6 loops", value: cpuSeconds(loading), unit: "CPU s" });
  for (const { loops, seeds, seconds } of sites) {
    for (const seed of seeds) {
      const problem = planProblem({ loops, seed });
      const from = process.cpuUsage();
      const plan = await choosePlan({ problem, solve: solveWithHighs, seconds });
      const gap = plan.costCents === null ? 100 : (100 * (plan.costCents - plan.boundCents)) / plan.costCents;
      const quick = greedyPlan(problem);
      const above = quick ? 100 * (quick.costCents / plan.costCents - 1) : Number.NaN;
      const name = `plan: ${loops} loops, site ${seed}`;
      rows.push({ name: `${name}, ${plan.status}`, value: cpuSeconds(from), unit: "CPU s" });
      rows.push({ name: `${name}, gap left`, value: gap, unit: "%" });
      rows.push({ name: `${name}, quick plan above it`, value: above, unit: "%" });
    }
  }
  const problem = planProblem({ loops: 40, seed: 4 });
  const rounds = 20;
  for (let round = 0; round < 5; round += 1) greedyPlan(problem);
  const from = process.cpuUsage();
  for (let round = 0; round < rounds; round += 1) greedyPlan(problem);
  rows.push({ name: "quick plan: 40 loops, warm", value: (1000 * cpuSeconds(from)) / rounds, unit: "CPU ms" });
  return rows;
}
