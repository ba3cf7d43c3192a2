import type * as z from "zod";
import { SurveyRefused } from "../survey/survey-refused.js";

/** Most faults named in one message. */
const mostFaults = 10;

/** The refusal for JSON that is not of its form: every fault with the path at which it stands. */
export function refusedJson(what: string, error: z.ZodError): SurveyRefused {
  const lines = error.issues.slice(0, mostFaults).map((issue) => {
    if (issue.code !== "unrecognized_keys") return `${pathText(issue.path)}: ${issue.message}`;
    return issue.keys.map((key) => `${pathText([...issue.path, key])}: unknown field`).join("; ");
  });
  return new SurveyRefused("badJson", `${what} cannot be read: ${lines.join("; ")}.`);
}

function pathText(path: readonly PropertyKey[]): string {
  if (path.length === 0) return "the whole file";
  return path
    .map((step) => (typeof step === "number" ? `[${step}]` : `.${String(step)}`))
    .join("")
    .replace(/^\./, "");
}
