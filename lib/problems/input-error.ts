/** What was wrong with one argument of a function: which field, what came, what was expected. */
export interface InputErrorFacts {
  /** Name of the field, as the caller wrote it. */
  readonly field: string;
  /** The value that came, as text with its unit. */
  readonly got: string;
  /** What would have been accepted, with its unit. */
  readonly expected: string;
}

/** A programming argument outside its range. Data problems of a survey are {@link Query} records, not errors. */
export class InputError extends Error {
  readonly facts: InputErrorFacts;
  constructor(facts: InputErrorFacts) {
    super(`${facts.field}: got ${facts.got}, expected ${facts.expected}`);
    this.name = "InputError";
    this.facts = facts;
  }
}
