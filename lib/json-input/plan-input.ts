import * as z from "zod";
import { checkPlanProblem } from "../plan/check-problem.js";
import type { PlanningProblem } from "../plan/problem.js";
import { SurveyRefused } from "../survey/survey-refused.js";
import { refusedJson } from "./refused-json.js";

const cents = z.number();
const count = z.number();
const kind = z.enum(["keep", "repair", "wireless", "retire", "excluded"]);
const items = z.record(z.string(), count);
const supply = z.strictObject({
  stock: count,
  stockUnitCents: cents,
  tiers: z.array(z.strictObject({ from: count, unitCents: cents })),
});

const problem = z.strictObject({
  modules: z.array(
    z.strictObject({
      type: z.string(),
      inputs: count,
      conductorSeats: count,
      maxOhms: z.number(),
      fitCents: cents,
      supply: supply.exactOptional(),
      sharesSupplyWith: z.string().exactOptional(),
    }),
  ),
  items: z.array(z.strictObject({ code: z.string(), supply })),
  controllers: z.array(z.strictObject({ id: z.string(), maxModules: count, maxRadioDevices: count })),
  panels: z.array(
    z.strictObject({
      id: z.string(),
      controller: z.string(),
      openCents: cents.exactOptional(),
      spareInputs: count.exactOptional(),
      spareInputsWhenUsed: count.exactOptional(),
      supplyMilliamps: z.number().exactOptional(),
    }),
  ),
  join: z.strictObject({ maxLoops: count, maxOpenings: count.exactOptional(), cents }),
  extraConductorCents: cents,
  loops: z.array(
    z.strictObject({
      id: z.string(),
      panel: z.string(),
      joinKey: z.string().nullable(),
      ohms: z
        .union([z.number(), z.literal("OL")])
        .nullable()
        .exactOptional(),
      openings: count.exactOptional(),
      withoutInput: z.array(
        z.strictObject({ kind: z.enum(["wireless", "retire", "excluded"]), cents, items, radioDevices: count }),
      ),
      keep: z.array(
        z.strictObject({
          module: z.string(),
          baseCents: cents,
          setCents: cents,
          removeCents: cents,
          items: items.exactOptional(),
          radioDevices: count.exactOptional(),
          supplyMilliamps: z.number().exactOptional(),
        }),
      ),
      repair: z.array(z.strictObject({ module: z.string(), cents, radioDevices: count })),
    }),
  ),
  together: z
    .array(z.strictObject({ loops: z.array(z.string()), sameModule: z.boolean(), returnSeats: count }))
    .exactOptional(),
  pins: z
    .array(z.strictObject({ loop: z.string(), kind: kind.exactOptional(), forbid: kind.exactOptional() }))
    .exactOptional(),
});

const planFile = z.strictObject({
  schema: z.unknown().optional(),
  id: z.unknown().optional(),
  problem,
  expected: z.unknown().optional(),
});

/**
 * The problem of `loopwright plan`: bare, or in a file with `id` and `expected`, which are passed over. Unknown fields,
 * wrong kinds and figures that would let a plan cost less than it can are refused with their path.
 * @throws {@link SurveyRefused} naming up to ten faults.
 */
export function readPlanInput(json: unknown): PlanningProblem {
  const wrapped = typeof json === "object" && json !== null && "problem" in json;
  const parsed = wrapped ? planFile.safeParse(json) : problem.safeParse(json);
  if (!parsed.success) throw refusedJson("The planning problem", parsed.error);
  const read: PlanningProblem = "problem" in parsed.data ? parsed.data.problem : parsed.data;
  const faults = checkPlanProblem(read);
  if (faults.length === 0) return read;
  const words = faults.slice(0, 10).map(({ message }) => message);
  throw new SurveyRefused("badJson", `The planning problem cannot be planned: ${words.join("; ")}`);
}
