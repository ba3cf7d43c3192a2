// npm run bench [name …]: runs every tools/bench/*.mjs (each exports bench() → rows of name, value, unit) on the built
// library and prints one table. Ratios in one run mean more than the absolute figures of one machine.
import { readdirSync } from "node:fs";
import { basename } from "node:path";

const wanted = process.argv.slice(2);
const folder = new URL("./bench/", import.meta.url);
for (const file of readdirSync(folder)
  .filter((f) => f.endsWith(".mjs"))
  .sort()) {
  const name = basename(file, ".mjs");
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  const { bench } = await import(new URL(file, folder).href);
  if (typeof bench !== "function") continue;
  console.log(`\n${name}`);
  for (const row of await bench()) {
    const value = typeof row.value === "number" ? row.value.toPrecision(4) : row.value;
    console.log(`  ${row.name.padEnd(64)} ${String(value).padStart(12)} ${row.unit}`);
  }
}
