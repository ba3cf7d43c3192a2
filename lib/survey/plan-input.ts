import * as z from "zod";
import { SurveyRefused } from "./survey-refused.js";

const name = z.string().min(1);
const count = z.number().int().min(0);
const cents = z.number().int().min(0);
const deviceCounts = z.record(z.string(), count);
const treatmentKind = z.enum(["keep", "repair", "wireless", "retire", "excluded"]);

const supply = z.strictObject({
  stock: count,
  stockUnitCents: cents,
  tiers: z.array(z.strictObject({ from: z.number().int().min(1), unitCents: cents })),
});

const moduleArticle = z.strictObject({
  type: name,
  inputs: z.number().int().min(1),
  conductorSeats: z.number().int().min(1),
  maxOhms: z.number().min(0),
  fitCents: cents,
  supply: supply.exactOptional(),
  sharesSupplyWith: name.exactOptional(),
});

const panel = z.strictObject({
  id: name,
  controller: name,
  openCents: cents.exactOptional(),
  spareInputs: count.exactOptional(),
  spareInputsWhenUsed: count.exactOptional(),
  supplyMilliamps: z.number().min(0).exactOptional(),
});

const loop = z.strictObject({
  id: name,
  panel: name,
  joinKey: z.string().nullable(),
  ohms: z
    .union([z.number().min(0), z.literal("OL")])
    .nullable()
    .exactOptional(),
  withoutInput: z.array(
    z.strictObject({
      kind: z.enum(["wireless", "retire", "excluded"]),
      cents,
      items: deviceCounts.default({}),
      radioDevices: count.default(0),
    }),
  ),
  keep: z.array(
    z.strictObject({
      module: name,
      baseCents: cents,
      setCents: cents,
      removeCents: cents,
      items: deviceCounts.exactOptional(),
      radioDevices: count.exactOptional(),
      supplyMilliamps: z.number().min(0).exactOptional(),
    }),
  ),
  repair: z.array(z.strictObject({ module: name, cents, radioDevices: count.default(0) })),
  openings: count.exactOptional(),
});

const planningProblem = z.strictObject({
  modules: z.array(moduleArticle),
  items: z.array(z.strictObject({ code: name, supply })),
  controllers: z.array(z.strictObject({ id: name, maxModules: count, maxRadioDevices: count })),
  panels: z.array(panel),
  join: z.strictObject({ maxLoops: z.number().int().min(1), maxOpenings: count.exactOptional(), cents }),
  extraConductorCents: cents,
  loops: z.array(loop),
  together: z
    .array(z.strictObject({ loops: z.array(name), sameModule: z.boolean(), returnSeats: count }))
    .exactOptional(),
  pins: z
    .array(z.strictObject({ loop: name, kind: treatmentKind.exactOptional(), forbid: treatmentKind.exactOptional() }))
    .exactOptional(),
});

/** A planning problem as it was read; the plan stage checks names and ranges across the whole. */
export type PlanInput = z.infer<typeof planningProblem>;

/**
 * The planning problem of a parsed JSON file: the bare problem, or `{ id, problem, expected }` of which only `problem`
 * counts. Unknown fields are refused with their path.
 * @throws {@link SurveyRefused} naming each field that cannot be read.
 */
export function readPlanInput(json: unknown): PlanInput {
  const wrapped = typeof json === "object" && json !== null && "problem" in json;
  const shape = wrapped
    ? z
        .strictObject({ id: z.unknown(), problem: planningProblem, expected: z.unknown() })
        .partial({ id: true, expected: true })
        .transform((file) => file.problem)
    : planningProblem;
  const parsed = shape.safeParse(json);
  if (parsed.success) return parsed.data;
  const issues = parsed.error.issues;
  const lines = issues.slice(0, 10).map((issue) => {
    if (issue.code !== "unrecognized_keys") return `${pathText(issue.path)}: ${issue.message}`;
    return issue.keys.map((key) => `${pathText([...issue.path, key])}: unknown field`).join("; ");
  });
  const more = issues.length > lines.length ? `; and ${issues.length - lines.length} more` : "";
  throw new SurveyRefused("badJson", `The planning problem cannot be read: ${lines.join("; ")}${more}.`);
}

function pathText(path: readonly PropertyKey[]): string {
  if (path.length === 0) return "the whole file";
  return path
    .map((step) => (typeof step === "number" ? `[${step}]` : `.${String(step)}`))
    .join("")
    .replace(/^\./, "");
}
