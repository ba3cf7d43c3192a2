import { parseArgs } from "node:util";
import { formatLength } from "../quantities/format-length.js";
import { formatOhms } from "../quantities/format-ohms.js";
import { parseCable } from "../quantities/parse-cable.js";
import { parseRun } from "../quantities/parse-run.js";
import { parseTemperature } from "../quantities/parse-temperature.js";
import { metersFromText } from "../units/quantity-text.js";
import type { Conductor } from "../wiring/conductor.js";
import { pairArithmetic } from "../wiring/pair-arithmetic.js";
import type { Command } from "./run-command.js";
import { UsageError } from "./usage-error.js";

export const wireCommand: Command = {
  usage: "loopwright wire SIZE RUN [--celsius N]",
  summary: "Resistance of a pair, out and back, with its arithmetic.",
  help: [
    "SIZE  22AWG, 22/4, 7/0.2, 0.22 mm², tinned 7/0.2 …",
    "RUN   one-way length along the cable with its unit: 120ft, 36.6m, 55'",
    "--celsius N  conductor temperature, -40 to 90, 20 when left out",
    "",
    "Example: loopwright wire 22AWG 120ft --celsius 35",
  ].join("\n"),
  run: async (args) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { celsius: { type: "string" } },
      allowPositionals: true,
      strict: true,
    });
    process.stdout.write(`${wireWords({ words: positionals, celsius: values.celsius }).join("\n")}\n`);
  },
};

/** The lines `wire` prints. */
export function wireWords({
  words,
  celsius,
}: {
  readonly words: readonly string[];
  readonly celsius: string | undefined;
}): readonly string[] {
  const [size, ...runWords] = words;
  if (size === undefined || runWords.length === 0) throw new UsageError("wire needs a size and a run");
  const cable = parseCable(size);
  if (!cable.ok) throw new UsageError(cable.message);
  const run = parseRun(runWords.join(" "), { metersFromText });
  if (!run.ok) throw new UsageError(run.message);
  if (!cable.value || !run.value) throw new UsageError("wire needs a size and a run");
  const warm = celsius === undefined ? undefined : parseTemperature(celsius, { bareUnit: "C" });
  if (warm && !warm.ok) throw new UsageError(warm.message);
  const { gaugeAwg, areaMm2, strands, metal } = cable.value;
  const conductor: Conductor = {
    ...(areaMm2 !== undefined ? { areaMm2 } : gaugeAwg !== undefined ? { gaugeAwg } : {}),
    ...(strands === undefined ? {} : { strands }),
    ...(metal === undefined ? {} : { metal }),
  };
  const temperatureCelsius = warm?.value?.celsius ?? 20;
  const { meters } = run.value;
  const lines = pairArithmetic({ conductor: { ...conductor, temperatureCelsius }, runMeters: meters });
  const ohms = lines.at(-1)?.value ?? 0;
  return [
    `${formatOhms(ohms)} out and back: ${size}, ${formatLength({ meters, unit: "m" })} one way at ${temperatureCelsius} °C`,
    ...lines.map(({ name, formula, value, unit }) =>
      `  ${name}: ${formula} = ${Number(value.toPrecision(6))} ${unit}`.trimEnd(),
    ),
    ...(cable.remarks.length + run.remarks.length > 0
      ? ["  as read:", ...[...cable.remarks, ...run.remarks].map((remark) => `    ${remark}`)]
      : []),
    "  Nominal value; a cable drum may be a few percent off. Conductor sizes: ASTM B258; copper: IEC 60028.",
  ];
}
