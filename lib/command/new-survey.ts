import { parseArgs } from "node:util";
import type { Command } from "./run-command.js";
import { today } from "./today.js";
import { UsageError } from "./usage-error.js";
import { writeAtomically } from "./write-atomically.js";

export const newSurveyCommand: Command = {
  usage: "loopwright new FILE.xlsx",
  summary: "A blank survey workbook with every table, what may be typed, and a key.",
  help: "Fill in Site, Panels and Loops at least; then `loopwright estimate FILE.xlsx -o estimate.xlsx`.",
  run: async (args) => {
    const { positionals } = parseArgs({ args: [...args], options: {}, allowPositionals: true, strict: true });
    const [path] = positionals;
    if (path === undefined || positionals.length > 1) throw new UsageError("new needs one file name");
    if (!path.toLowerCase().endsWith(".xlsx")) throw new UsageError(`${path}: the survey is a workbook, name it .xlsx`);
    const { writeSurveyWorkbook } = await import("../workbook/survey-template/write-survey-workbook.js");
    await writeAtomically(path, await writeSurveyWorkbook({ date: today() }));
    process.stdout.write(`Written: ${path}\n`);
  },
};
