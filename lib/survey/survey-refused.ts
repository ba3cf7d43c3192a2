/** Why no survey could be read at all. */
export type SurveyRefusedCode = "noSheet" | "missingHeadings" | "twoSites" | "noLoops" | "badMapping" | "badJson";

/** Data that allow no survey; the message says where, what is expected and how to mend it. */
export class SurveyRefused extends Error {
  readonly code: SurveyRefusedCode;
  constructor(code: SurveyRefusedCode, message: string) {
    super(message);
    this.name = "SurveyRefused";
    this.code = code;
  }
}
