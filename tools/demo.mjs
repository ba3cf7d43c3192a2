// npm run demo: prices the invented boathouse and writes out/estimate.xlsx and out/estimate.json.
import { mkdirSync } from "node:fs";
import { runCommand } from "../dist/command/run-command.js";

const site = "reference-data/demo/boathouse";
mkdirSync("out", { recursive: true });
process.exitCode = await runCommand([
  "estimate",
  `${site}/loops.csv`,
  `--site=${site}/site.csv`,
  `--radio=${site}/radio-tests.csv`,
  `--old-zones=${site}/old-zones.csv`,
  "-o",
  "out/estimate.xlsx",
  "--json",
  "out/estimate.json",
]);
