// 10,000 loops through one LOOPS_VERDICT call, unpooled and pooled: the bundle that Excel loads, on typed survey rows
// made from the recorded loops of tests/fixtures/judge-cases. Median of three, CPU time.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "vite";

const LOOPS = 10_000;
const HEADINGS = [
  "Loop",
  "Device",
  "Openings",
  "Cable",
  "Run one way (m)",
  "EOL value (Ω)",
  "Shut (Ω)",
  "One opening open (Ω)",
  "Volts DC on lifted pair (V)",
];

/** Rows as a surveyor types them. */
function typedTable() {
  const file = new URL("../../tests/fixtures/judge-cases/cases.json", import.meta.url);
  /** @type {any[]} */
  const cases = JSON.parse(readFileSync(file, "utf8"));
  const rows = Array.from({ length: LOOPS }, (_, i) => {
    const { loop } = cases[i % cases.length];
    const { closedOhms, opened, voltsDc } = loop.readings;
    return [
      String(i + 1),
      loop.poweredDetector ? "motion" : "recessed contact",
      loop.openings,
      loop.cable.gaugeAwg === undefined ? "" : `${loop.cable.gaugeAwg}/4`,
      loop.runMeters,
      loop.oldPanel.expectedEolOhms ?? "",
      closedOhms,
      (opened ?? []).map((/** @type {any} */ one) => `${one.opening}: ${one.ohms}`).join("; "),
      voltsDc ?? "",
    ];
  });
  return [HEADINGS, ...rows];
}

/** The functions as bundled. @returns {Promise<Record<string, (...cells: unknown[]) => unknown[][]>>} */
async function bundledFunctions() {
  const entry = new URL("../../addin/functions/generated/associations.ts", import.meta.url).pathname;
  const folder = mkdtempSync(join(tmpdir(), "loopwright-bench-"));
  try {
    const built = await build({
      configFile: false,
      logLevel: "error",
      build: {
        write: false,
        target: "es2022",
        rollupOptions: { input: entry, preserveEntrySignatures: "strict", output: { codeSplitting: false } },
      },
    });
    const [chunk] = /** @type {any} */ (built).output;
    const file = join(folder, "functions.mjs");
    writeFileSync(file, chunk.code);
    return (await import(pathToFileURL(file).href)).associations;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** @param {() => void} work */
function cpuSeconds(work) {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1e6;
}

/** @param {number[]} values */
const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

export async function bench() {
  const { LOOPS_VERDICT } = await bundledFunctions();
  if (LOOPS_VERDICT === undefined) throw new Error("no LOOPS_VERDICT in the bundle");
  const table = typedTable();
  const timed = (/** @type {boolean} */ pooled) =>
    median(
      [0, 1, 2].map(() =>
        cpuSeconds(() => {
          if (LOOPS_VERDICT(table, pooled).length !== LOOPS + 1) throw new Error("rows are missing");
        }),
      ),
    );
  timed(false);
  const bytes = Buffer.byteLength(JSON.stringify(LOOPS_VERDICT(table, true)));
  return [
    { name: `${LOOPS} loops in one call, each by itself`, value: timed(false), unit: "CPU s" },
    { name: `${LOOPS} loops in one call, judged together`, value: timed(true), unit: "CPU s" },
    { name: "text of the result", value: bytes / 1e6, unit: "MB" },
  ];
}
