import { parseArgs } from "node:util";
import { formatOhms } from "../quantities/format-ohms.js";
import { parseOhms } from "../quantities/parse-ohms.js";
import { type PreferredSeries, preferredNeighbours, preferredWords } from "../quantities/preferred-numbers.js";
import type { Command } from "./run-command.js";
import { UsageError } from "./usage-error.js";

export const resistorCommand: Command = {
  usage: "loopwright resistor OHMS [--series E24]",
  summary: "Nearest preferred values of a resistance, with colour bands.",
  help: [
    "OHMS  2.27k, 2k2, 5600, 1M",
    "--series E3|E6|E12|E24|E48|E96|E192  E24 when left out (IEC 60063; bands IEC 60062)",
    "",
    "Example: loopwright resistor 2.27k --series E24",
  ].join("\n"),
  run: async (args) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { series: { type: "string" } },
      allowPositionals: true,
      strict: true,
    });
    process.stdout.write(`${resistorWords({ words: positionals, series: values.series ?? "E24" }).join("\n")}\n`);
  },
};

/** The lines `resistor` prints. An unknown series throws an InputError that names the known ones. */
export function resistorWords({
  words,
  series,
}: {
  readonly words: readonly string[];
  readonly series: string;
}): readonly string[] {
  if (words.length === 0) throw new UsageError("resistor needs a resistance");
  const typed = words.join(" ");
  const parsed = parseOhms(typed);
  if (!parsed.ok) throw new UsageError(parsed.message);
  const ohms = parsed.value?.reading?.ohms;
  if (typeof ohms !== "number") throw new UsageError(`"${typed}" is no resistance in ohms: write 2.27k, 2k2 or 5600`);
  const found = preferredNeighbours({ ohms, series: series.toUpperCase() as PreferredSeries });
  return [
    `${formatOhms(ohms)}: nearest in ${found.series} is ${formatOhms(found.nearest.ohms)}`,
    ...preferredWords(found, formatOhms).map((line) => `  ${line}`),
    "  Off = (preferred − asked) / asked; nearest by ratio, because the steps of a series are ratios.",
  ];
}
