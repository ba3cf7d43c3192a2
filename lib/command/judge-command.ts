import { parseArgs } from "node:util";
import { judgeJob } from "../findings/judge-job.js";
import { readJudgeInput } from "../json-input/judge-input.js";
import { readJsonInput } from "./read-input.js";
import type { Command } from "./run-command.js";
import { UsageError } from "./usage-error.js";

export const judgeCommand: Command = {
  usage: "loopwright judge FILE.json|-",
  summary: "Judge metered loops: JSON in, JSON out.",
  help: 'FILE.json holds {"loops": [ … ]}; "-" reads standard input. Unknown fields are refused with their path.',
  run: async (args) => {
    const { positionals } = parseArgs({ args: [...args], options: {}, allowPositionals: true, strict: true });
    const [path] = positionals;
    if (path === undefined || positionals.length > 1)
      throw new UsageError("judge needs one file, or - for standard input");
    const loops = judgeJob(readJudgeInput(await readJsonInput(path))).loops;
    process.stdout.write(`${JSON.stringify({ schema: "loopwright.judgement.1", loops }, null, 1)}\n`);
  },
};
