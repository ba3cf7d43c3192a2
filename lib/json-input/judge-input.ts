import * as z from "zod";
import type { LoopRecord } from "../findings/loop-record.js";
import { refusedJson } from "./refused-json.js";

const ohms = z.union([z.number().min(0), z.literal("OL")]);
const positive = z.number().positive();
const volts = z.number().min(-1000).max(1000);
const text = z.string();

const readings = z.strictObject({
  closedOhms: ohms.exactOptional(),
  opened: z.array(z.strictObject({ opening: z.number().int().min(1), ohms })).exactOptional(),
  openedTogetherOhms: ohms.exactOptional(),
  voltsDc: volts.exactOptional(),
  voltsAc: volts.exactOptional(),
  voltsAtDetector: volts.exactOptional(),
  tapped: z.strictObject({ minOhms: ohms, maxOhms: ohms }).exactOptional(),
  earth: z.strictObject({ aOhms: ohms.exactOptional(), bOhms: ohms.exactOptional() }).exactOptional(),
  reversedOhms: ohms.exactOptional(),
  toOtherPairOhms: ohms.exactOptional(),
  behaviour: z.enum(["steady", "climbing", "falling", "jumping"]).exactOptional(),
});

const cable = z.strictObject({
  gaugeAwg: z.number().int().min(10).max(30).exactOptional(),
  areaMm2: z.number().min(0.05).max(6).exactOptional(),
  strands: z.number().int().min(1).exactOptional(),
  metal: text.exactOptional(),
});

const oldPanel = z.strictObject({
  expectedEolOhms: positive.exactOptional(),
  restingState: z.enum(["normal", "faulted", "unknown"]).exactOptional(),
  resistorAtPanel: z.enum(["inSeries", "acrossTerminals", "seenNotTraced", "none", "notLooked"]).exactOptional(),
});

const meter = z.strictObject({
  percent: z.number().min(0).max(100),
  counts: z.number().min(0),
  displayCounts: z.number().int().min(100),
  overRangeOhms: positive,
  leadsZeroed: z.boolean(),
});

const loop = z.strictObject({
  id: text,
  job: text.exactOptional(),
  label: text.exactOptional(),
  protects: text.exactOptional(),
  device: text.exactOptional(),
  notes: text.exactOptional(),
  use: text.exactOptional(),
  panel: text.exactOptional(),
  cable: cable.exactOptional(),
  cableWords: text.exactOptional(),
  runMeters: z.number().min(0).exactOptional(),
  openings: z.number().int().min(0).max(1000),
  temperatureCelsius: z.number().min(-40).max(90).exactOptional(),
  contactForm: z.enum(["NC", "NO", "mixed", "unknown"]).exactOptional(),
  poweredDetector: z.boolean().exactOptional(),
  powered: z.boolean().exactOptional(),
  markedLifeSafety: z.boolean().exactOptional(),
  foil: z.boolean().exactOptional(),
  shockSensor: z.boolean().exactOptional(),
  tamperPair: z.boolean().exactOptional(),
  returnSharedWith: z.array(text).exactOptional(),
  eolPlace: z.enum(["device", "panel", "none", "unknown"]).exactOptional(),
  lifted: z.enum(["both", "one", "no", "unknown"]).exactOptional(),
  seen: z.strictObject({ name: text, what: text }).exactOptional(),
  oldPanel: oldPanel.exactOptional(),
  meter: meter.exactOptional(),
  readings,
});

const judgeInput = z.strictObject({ schema: z.union([text, z.number()]).optional(), loops: z.array(loop).min(1) });

/**
 * The loops of `loopwright judge` as records. Unknown fields and values outside their range are refused with the path
 * at which they stand.
 * @throws SurveyRefused when the JSON is not of that form.
 * @example readJudgeInput({ loops: [{ id: "1", openings: 1, readings: { closedOhms: "OL" } }] }).length; // 1
 */
export function readJudgeInput(json: unknown): readonly LoopRecord[] {
  const parsed = judgeInput.safeParse(json);
  if (parsed.success) return parsed.data.loops;
  throw refusedJson("The loops", parsed.error);
}
