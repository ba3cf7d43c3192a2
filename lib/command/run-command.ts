import { InputError } from "../problems/input-error.js";
import { SurveyRefused } from "../survey/survey-refused.js";
import { FileRefused } from "../workbook/read/file-refused.js";
import { NotJson } from "./read-input.js";
import { NoResult, UsageError } from "./usage-error.js";
import { FileNotWritten } from "./write-atomically.js";

/** A command: its words for the help, and what it does with the words after its name. */
export interface Command {
  readonly usage: string;
  readonly summary: string;
  readonly help: string;
  readonly run: (args: readonly string[]) => Promise<void>;
}

/** Loaded when called, so that `wire` does not wait for a spreadsheet library. */
const commands: Readonly<Record<string, () => Promise<Command>>> = {
  new: async () => (await import("./new-survey.js")).newSurveyCommand,
  estimate: async () => (await import("./estimate-command.js")).estimateCommand,
  judge: async () => (await import("./judge-command.js")).judgeCommand,
  plan: async () => (await import("./plan-command.js")).planCommand,
  wire: async () => (await import("./wire-command.js")).wireCommand,
  resistor: async () => (await import("./resistor-command.js")).resistorCommand,
};

/**
 * Runs one command line and returns the exit code: 0 the result is written, even with queries; 1 the data allows no
 * result; 2 wrong use.
 */
export async function runCommand(args: readonly string[]): Promise<number> {
  const [name, ...rest] = args;
  if (name === undefined || name === "--help" || name === "-h" || name === "help") {
    process.stdout.write(await overview());
    return name === undefined ? 2 : 0;
  }
  const load = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (!load) {
    process.stderr.write(`There is no command "${name}".\n\n${await overview()}`);
    return 2;
  }
  const command = await load();
  if (rest.includes("--help") || rest.includes("-h")) {
    process.stdout.write(`${command.usage}\n\n${command.help}\n`);
    return 0;
  }
  try {
    await command.run(rest);
    return 0;
  } catch (error) {
    return report(error, command);
  }
}

function report(error: unknown, command: Command): number {
  if (error instanceof UsageError || (error instanceof TypeError && "code" in error && isParseError(error.code))) {
    process.stderr.write(`${error.message}\n\n${command.usage}\n`);
    return 2;
  }
  if (error instanceof InputError || error instanceof FileNotWritten) {
    process.stderr.write(`${error.message}\n`);
    return 2;
  }
  if ([NoResult, NotJson, SurveyRefused, FileRefused].some((kind) => error instanceof kind)) {
    const { message } = error as Error;
    process.stderr.write(`${message}\n`);
    return 1;
  }
  throw error;
}

const isParseError = (code: unknown) => typeof code === "string" && code.startsWith("ERR_PARSE_ARGS");

async function overview(): Promise<string> {
  const lines = ["loopwright: what stays of an old alarm's wiring, what it costs, and how sure that is.", ""];
  for (const load of Object.values(commands)) {
    const { usage, summary } = await load();
    lines.push(`  ${usage}`, `      ${summary}`);
  }
  return `${lines.join("\n")}\n\nloopwright COMMAND --help tells more. Exit code: 0 written, 1 no result from this data, 2 wrong use.\n`;
}
