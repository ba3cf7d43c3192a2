/** Errors of the library and of Excel whose message is meant for the user. They may come from another thread or realm. */
const spoken = new Set(["FileRefused", "SurveyRefused", "NoEstimate", "ExcelProblem", "InputError"]);

/** What to tell the user of anything that was thrown. */
export function problemWords(error: unknown): string {
  if (error instanceof Error && spoken.has(error.name)) return error.message;
  const detail = error instanceof Error ? error.message : String(error);
  return `This failed for a reason that is not the survey's: ${detail}. Try again; if it stays, open the file in a new window.`;
}
