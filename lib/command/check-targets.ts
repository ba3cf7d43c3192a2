import { realpath } from "node:fs/promises";
import { resolve } from "node:path";
import { UsageError } from "./usage-error.js";
import { checkTarget } from "./write-atomically.js";

/**
 * Looks at where the results are to go before anything is worked out: a workbook has the ending programs open it by,
 * no file that was handed in is lost, and the place can be written. Onto the survey workbook itself the estimate may go,
 * because it carries the survey; onto anything else that was handed in it may not.
 * @throws {@link UsageError}, {@link FileNotWritten}
 */
export async function checkTargets(paths: {
  readonly output: string;
  readonly json: string | undefined;
  /** Further files to write. */
  readonly more?: readonly string[];
  /** The surveys, of which a workbook may be written over. */
  readonly workbooks: readonly string[];
  /** Other files that were handed in. */
  readonly others: readonly string[];
}): Promise<void> {
  const { output, json, workbooks, others } = paths;
  if (!/.\.xlsx$/i.test(output)) {
    throw new UsageError(`-o: got "${output}", expected a name that ends in .xlsx`);
  }
  const targets = [output, ...(json === undefined ? [] : [json]), ...(paths.more ?? [])];
  const read = [...others, ...workbooks.filter((path) => path !== "-")];
  for (const target of targets) {
    for (const path of read) {
      if (!(await isSame(target, path))) continue;
      const itself = target === output && workbooks.length === 1 && workbooks.includes(path) && !others.includes(path);
      if (itself) continue;
      throw new UsageError(`${target} was handed in and would be lost: name another file to write.`);
    }
  }
  if (json !== undefined && (await isSame(output, json))) throw new UsageError("-o and --json name the same file");
  for (const path of paths.more ?? []) {
    if (json !== undefined && (await isSame(path, json))) throw new UsageError(`--csv and --json both write ${path}`);
  }
  for (const target of targets) await checkTarget(target);
}

async function isSame(one: string, other: string): Promise<boolean> {
  const real = (path: string): Promise<string> => realpath(path).catch(() => resolve(path));
  return (await real(one)) === (await real(other));
}
