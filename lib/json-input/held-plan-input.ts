import * as z from "zod";
import { type Treatment, treatmentWords } from "../treatments/treatment.js";
import { refusedJson } from "./refused-json.js";

const cents = z.number();
const kind = z.enum(["keep", "repair", "wireless", "retire", "excluded"]);

const record = z.strictObject({
  revision: z.number().int().min(1),
  date: z.string(),
  plan: z.strictObject({
    schema: z.literal("loopwright.plan.1"),
    status: z.enum(["optimal", "feasible"]),
    costCents: cents.nullable(),
    boundCents: cents.nullable(),
    why: z.string().exactOptional(),
    choices: z.array(
      z.strictObject({
        loop: z.string(),
        kind,
        module: z.string().exactOptional(),
        input: z.string().exactOptional(),
        option: z.number().int().min(0).exactOptional(),
      }),
    ),
    modules: z.record(z.string(), z.record(z.string(), z.number().int().min(0))),
  }),
  bill: z.array(
    z.strictObject({
      id: z.string(),
      code: z.string(),
      description: z.string(),
      class: z.string(),
      unit: z.string(),
      need: z.number(),
      packs: z.number().min(0),
      packSize: z.number().positive(),
      fromStock: z.number().min(0),
      unitCents: cents.min(0),
      lineCents: cents.min(0),
      taxClass: z.string(),
      supplier: z.string().nullable(),
      rule: z.string(),
      loops: z.array(z.string()),
    }),
  ),
  contingencyCents: cents.min(0),
  totalCents: cents.min(0),
  loops: z.array(
    z.strictObject({
      key: z.string(),
      name: z.string(),
      treatment: z.custom<Treatment>((value) => typeof value === "string" && Object.hasOwn(treatmentWords, value)),
    }),
  ),
});

/** What {@link readHeldPlan} returns; the estimate stage calls it a held plan. */
export type HeldPlanRecord = z.infer<typeof record>;

/**
 * The plan record of a former estimate, checked.
 * @throws SurveyRefused when the text was changed or is not of that form.
 */
export function readHeldPlan(text: string): HeldPlanRecord {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    json = undefined;
  }
  const parsed = record.safeParse(json);
  if (parsed.success) return parsed.data;
  throw refusedJson("The sheet Plan record of the former estimate", parsed.error);
}
