/** Wrong use of the command line: unknown option, missing file, a directory. Exit code 2. */
export class UsageError extends Error {
  override readonly name = "UsageError";
}

/** The data allows no result: a refused file, an infeasible plan, nothing readable. Exit code 1. */
export class NoResult extends Error {
  override readonly name = "NoResult";
}
