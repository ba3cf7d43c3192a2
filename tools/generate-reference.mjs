// Turns every table of reference-data/ into typed TypeScript under lib/reference/generated/.
// A table without units or a row without a source stops the build. `--check` writes nothing and fails when the
// generated code is stale. Tables: reference-data/*.json and reference-data/demo/*.json; see reference-data/README.md.
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const outFolder = join(root, "lib/reference/generated");
const checkOnly = process.argv.includes("--check");

/** @param {string} name */
const camel = (name) => name.replace(/-([a-z0-9])/g, (_, c) => c.toUpperCase());
/** @param {string} name */
const pascal = (name) => camel(name).replace(/^./, (c) => c.toUpperCase());

/** Problems of one table, as sentences.
 * @param {string} file @param {any} table @returns {string[]} */
export function tableProblems(file, table) {
  const problems = [];
  if (typeof table.title !== "string" || table.title === "") problems.push(`${file}: has no title`);
  const columns = table.columns ?? {};
  const sources = table.sources ?? {};
  if (Object.keys(columns).length === 0) problems.push(`${file}: has no columns`);
  for (const [name, column] of Object.entries(columns)) {
    if (typeof column.unit !== "string" || column.unit === "") problems.push(`${file}: column ${name} has no unit`);
    if (typeof column.meaning !== "string" || column.meaning === "") {
      problems.push(`${file}: column ${name} has no meaning`);
    }
  }
  if (!Array.isArray(table.rows) || table.rows.length === 0) return [...problems, `${file}: has no rows`];
  table.rows.forEach((/** @type {Record<string, unknown>} */ row, /** @type {number} */ index) => {
    const place = `${file} row ${index + 1}`;
    if (typeof row["source"] !== "string" || !(row["source"] in sources)) {
      problems.push(`${place}: source ${JSON.stringify(row["source"])} is not among the table's sources`);
    }
    for (const name of Object.keys(row)) {
      if (name !== "source" && !(name in columns)) problems.push(`${place}: ${name} is not a column of this table`);
    }
  });
  return problems;
}

/** @param {unknown} value @returns {string} */
function typeOf(value) {
  if (Array.isArray(value)) {
    const inner = [...new Set(value.map(typeOf))];
    return inner.length === 0 ? "readonly never[]" : `readonly (${inner.join(" | ")})[]`;
  }
  if (value === null) return "null";
  if (typeof value === "object") {
    const fields = Object.entries(value).map(([k, v]) => `readonly ${JSON.stringify(k)}: ${typeOf(v)}`);
    return `{ ${fields.join("; ")} }`;
  }
  return typeof value;
}

/** @param {string} name @param {string} file @param {any} table */
function code(name, file, table) {
  const lines = [
    `// Generated from reference-data/${file} by tools/generate-reference.mjs. Do not edit.`,
    `/** ${table.title} */`,
    `export interface ${pascal(name)}Row {`,
  ];
  for (const [column, facts] of Object.entries(table.columns)) {
    const present = table.rows.filter((/** @type {object} */ row) => column in row);
    const types = [...new Set(present.map((/** @type {any} */ row) => typeOf(row[column])))].sort();
    lines.push(`  /** ${facts.meaning} [${facts.unit}] */`);
    lines.push(
      `  readonly ${column}${present.length < table.rows.length ? "?" : ""}: ${types.join(" | ") || "never"};`,
    );
  }
  lines.push("  /** Key into the table's sources. */", "  readonly source: string;", "}", "");
  lines.push(`export const ${camel(name)}: readonly ${pascal(name)}Row[] = [`);
  for (const row of table.rows) lines.push(`  ${JSON.stringify(row)},`);
  lines.push("];", "", `export const ${camel(name)}Sources: Readonly<Record<string, string>> = {`);
  for (const [key, text] of Object.entries(table.sources))
    lines.push(`  ${JSON.stringify(key)}: ${JSON.stringify(text)},`);
  lines.push("};", "");
  return lines.join("\n");
}

/** @returns {{ files: Map<string, string>, problems: string[] }} */
export function generate() {
  const files = new Map();
  const problems = [];
  for (const folder of ["", "demo"]) {
    const from = join(root, "reference-data", folder);
    if (!existsSync(from)) continue;
    for (const file of readdirSync(from)
      .filter((f) => f.endsWith(".json"))
      .sort()) {
      const name = basename(file, ".json");
      const table = JSON.parse(readFileSync(join(from, file), "utf8"));
      problems.push(...tableProblems(join(folder, file), table));
      if (problems.length === 0) files.set(join(folder, `${name}.ts`), code(name, join(folder, file), table));
    }
  }
  return { files, problems };
}

/** @returns {string[]} */
function onDisk() {
  const list = [];
  for (const folder of ["", "demo"]) {
    const at = join(outFolder, folder);
    if (existsSync(at))
      list.push(
        ...readdirSync(at)
          .filter((f) => f.endsWith(".ts"))
          .map((f) => join(folder, f)),
      );
  }
  return list;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { files, problems } = generate();
  for (const [file, text] of files) {
    const path = join(outFolder, file);
    if (existsSync(path) && readFileSync(path, "utf8") === text) continue;
    if (checkOnly) problems.push(`lib/reference/generated/${file} is stale: run npm run build`);
    else {
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, text);
    }
  }
  for (const file of onDisk().filter((f) => !files.has(f))) {
    if (checkOnly) problems.push(`lib/reference/generated/${file} has no table any more`);
    else if (problems.length === 0) rmSync(join(outFolder, file));
  }
  if (problems.length > 0) {
    console.error(problems.join("\n"));
    process.exit(1);
  }
}
