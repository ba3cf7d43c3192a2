import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { answers } from "../../../addin/functions/explain.js";
import { associations } from "../../../addin/functions/generated/associations.js";
import { developmentUrl, functionsMetadata, staleFiles } from "../../../tools/build-addin.mjs";
import { exampleFormulas, isAsPrinted } from "./example-formula.js";
import { type ExcelRuntime, excelRuntime } from "./excel-runtime.js";

interface Metadata {
  readonly functions: readonly {
    readonly id: string;
    readonly name: string;
    readonly description: string;
    readonly helpUrl: string;
    readonly options?: { readonly volatile?: boolean; readonly stream?: boolean };
    readonly parameters: readonly {
      readonly name: string;
      readonly description: string;
      readonly optional?: boolean;
      readonly repeating?: boolean;
      readonly dimensionality?: string;
    }[];
    readonly result: { readonly dimensionality?: string };
  }[];
}

const folder = "addin/functions/generated";
const metadata = JSON.parse(readFileSync(`${folder}/functions.json`, "utf8")) as Metadata;
const page = readFileSync("docs/custom-functions.md", "utf8");
const help = readFileSync(`${folder}/help.html`, "utf8");
const functions: Readonly<Record<string, (...args: never[]) => unknown>> = associations;
const examples = exampleFormulas(page);

test("generated metadata, association, help, reference page and icons are those of the docstrings as they stand", async () => {
  expect(await staleFiles()).toEqual([]);
});

test("metadata, association, EXPLAIN and both pages name the same functions", () => {
  const ids = metadata.functions.map(({ id }) => id);
  expect(ids.length).toBeGreaterThanOrEqual(14);
  expect(new Set(ids).size).toBe(ids.length);
  expect(Object.keys(associations).sort()).toEqual([...ids].sort());
  expect([...answers.keys(), "EXPLAIN"].sort()).toEqual([...ids].sort());
  expect([...page.matchAll(/^## (.+)$/gm)].map(([, id]) => id)).toEqual(ids);
  expect([...help.matchAll(/<h2 id="([^"]+)">/g)].map(([, id]) => id)).toEqual(ids);
  expect(new Set(examples.map(({ id }) => id))).toEqual(new Set(ids));
});

describe.each(metadata.functions)("$id", (one) => {
  test("takes as many arguments as described, needed ones first, each with its text; nothing is volatile", () => {
    expect(functions[one.id]?.length).toBe(one.parameters.length);
    expect(one.name).toBe(one.id);
    expect(one.id).toMatch(/^[A-Z][A-Z0-9_]{1,127}$/);
    expect(one.options?.volatile ?? false).toBe(false);
    expect(one.options?.stream ?? false).toBe(false);
    expect(one.helpUrl).toBe(`${developmentUrl}/functions/generated/help.html#${one.id}`);
    const optional = one.parameters.map((parameter) => parameter.optional === true);
    expect(optional).toEqual([...optional].sort((a, b) => Number(a) - Number(b)));
    expect(one.parameters.findIndex(({ repeating }) => repeating)).toBeOneOf([-1, one.parameters.length - 1]);
    for (const text of [one.description, ...one.parameters.map(({ description }) => description)]) {
      expect(text.length).toBeGreaterThan(10);
      expect(page).toContain(text.replaceAll("|", "\\|"));
    }
  });
});

describe("examples of the reference page", () => {
  test.each(examples)("$formula", async ({ id, args, printed }) => {
    const one = metadata.functions.find((candidate) => candidate.id === id);
    // As Excel calls: a range argument comes as a table, repeated ones as one list, what is left out as null.
    const repeatedFrom = one?.parameters.findIndex(({ repeating }) => repeating) ?? -1;
    const table = (cell: unknown) => (Array.isArray(cell) ? cell : [[cell]]);
    const called = (one?.parameters ?? []).map((parameter, i) => {
      if (i === repeatedFrom) return args.slice(i).map(table);
      return parameter.dimensionality === "matrix" && args[i] !== undefined ? table(args[i]) : (args[i] ?? null);
    });
    const result = await (functions[id] as ((...cells: unknown[]) => unknown) | undefined)?.(...called);
    expect(Array.isArray(result)).toBe(one?.result.dimensionality === "matrix");
    const cells = Array.isArray(result) ? (result[0] as unknown[]) : [result];
    expect(cells.length).toBe(printed.length);
    cells.forEach((cell, i) => {
      expect({ cell, asPrinted: isAsPrinted(cell, printed[i] ?? "") }).toMatchObject({ asPrinted: true });
    });
  });
});

describe("the generator stops at what Excel would not register", () => {
  const scratch = mkdtempSync(join(tmpdir(), "loopwright-functions-"));
  afterAll(() => rmSync(scratch, { recursive: true }));
  const generated = (source: string) => {
    const file = join(scratch, "source.ts");
    writeFileSync(file, source);
    return functionsMetadata(developmentUrl, [file]);
  };
  test("a type it does not know", async () => {
    const source =
      "/** Sum. @customfunction SUM_UP SUM_UP */\nexport function sumUp(list: ReadonlyArray<number>): number { return list.length; }";
    await expect(generated(source)).rejects.toThrow(/does not support type/);
  });
  test("no function at all", async () => {
    await expect(generated("export const nothing = 1;")).rejects.toThrow(/none found/);
  });
  test("a function without texts or example", async () => {
    const source = "/** @customfunction BARE BARE */\nexport function bare(a: number): number { return a; }";
    await expect(generated(source)).rejects.toThrow(/BARE lacks/);
  });
});

describe("registration with the vendor's own runtime", () => {
  let runtime: ExcelRuntime;
  beforeAll(() => {
    runtime = excelRuntime();
  });
  afterAll(() => vi.unstubAllGlobals());
  test("outside Excel nothing is registered and nothing throws", async () => {
    const { registerFunctions } = await import("../../../addin/functions/register.js");
    expect(registerFunctions()).toBe(false);
  });
  test("inside Excel every id of the metadata leads to its function", async () => {
    vi.stubGlobal("CustomFunctions", runtime);
    const { registerFunctions } = await import("../../../addin/functions/register.js");
    expect(registerFunctions()).toBe(true);
    expect(runtime._association.mappings).toEqual({ ...associations });
  });
});
