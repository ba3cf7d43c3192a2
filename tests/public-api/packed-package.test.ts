import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { checkingModule, docExamples } from "./doc-examples.js";
import { type PackedPackage, packedPackage, repository, run } from "./packed-package.js";

let packed: PackedPackage;
beforeAll(() => {
  packed = packedPackage();
});
afterAll(() => packed.remove());

const tool = (path: string, args: readonly string[]) =>
  run(process.execPath, [join(repository, "node_modules", path), ...args], packed.project);
const program = (name: string, code: string) => {
  writeFileSync(join(packed.project, name), code);
  return run(process.execPath, [name], packed.project);
};

describe("the packed tarball", () => {
  it("holds the library, its tables and its papers, and neither tests, sources nor printed oracles", () => {
    const { files } = packed;
    expect(files.length).toBeGreaterThan(300);
    for (const name of [
      "README.md",
      "LICENSE",
      "CHANGELOG.md",
      "dist/index.js",
      "dist/index.d.ts",
      "dist/command/main.js",
    ])
      expect(files).toContain(name);
    expect(files.some((path) => path.startsWith("reference-data/"))).toBe(true);
    const stray = files.filter((path) =>
      /^(tests|lib|addin|tools)\/|published|(?<!\.d)\.ts$|\.tsbuildinfo$/.test(path),
    );
    expect(stray).toEqual([]);
  });

  it("has nothing that publint objects to", () => {
    expect(tool("publint/src/cli.js", ["run", packed.tarball, "--strict"])).toMatch(/All good/);
  });

  it("has types that resolve for every importer of ES modules (are-the-types-wrong)", () => {
    const args = [packed.tarball, "--profile", "esm-only", "--no-definitely-typed", "--format", "json"];
    const report = JSON.parse(tool("@arethetypeswrong/cli/dist/index.js", args));
    expect(Object.keys(report.analysis.entrypoints)).toEqual(expect.arrayContaining([".", "./workbook"]));
    expect(report.analysis.types).not.toBe(false);
    const ignored = ["CJSResolvesToESM", "NoResolution"];
    expect(report.analysis.problems.filter(({ kind }: { kind: string }) => !ignored.includes(kind))).toEqual([]);
  });

  it("gives the names that other people's tools call, from both entry points, with its own dependencies only", () => {
    const output = program(
      "names.mjs",
      `import * as library from "loopwright";
import * as workbook from "loopwright/workbook";
console.log(JSON.stringify([Object.keys(library), Object.keys(workbook)]));`,
    );
    const [library, workbook] = JSON.parse(output);
    const called =
      "terminalOhms conductorOhmsPerMeter pairOhms runMetersFromOhms judgeLoop judgeJob measureNext fitsInput resistorFor supplyTree batteryAmpHours radioMargin choosePlan billOfMaterials orderFor cutFrom priceJob estimate readSurvey";
    expect(library).toEqual(expect.arrayContaining(called.split(" ")));
    expect(workbook).toEqual(expect.arrayContaining(["writeWorkbook", "estimateWorkbook", "readFileSheets"]));
  });

  it("runs its command", () => {
    const output = run(
      process.execPath,
      ["node_modules/loopwright/dist/command/main.js", "wire", "22AWG", "120ft"],
      packed.project,
    );
    expect(output).toMatch(/Ω/);
  });
});

describe("examples in the pages", () => {
  const examples = docExamples();

  it("are found in the README and elsewhere", () => {
    expect(new Set(examples.map(({ page }) => page)).has("README.md")).toBe(true);
    expect(examples.length).toBeGreaterThanOrEqual(5);
    expect(examples.reduce((sum, { code }) => sum + checkingModule(code).checks, 0)).toBeGreaterThanOrEqual(5);
  });

  it("fail when a value stated in them is another", () => {
    const { module, checks } = checkingModule("1 + 1; // 3 of them\n");
    expect(checks).toBe(1);
    expect(() => program("wrong.mjs", javascript(module))).toThrow(/got 2, the page says 3/);
  });

  it("fit the package's types", () => {
    for (const { code } of examples) expect(code).toMatch(/from "loopwright/);
    for (const [index, { code }] of examples.entries())
      writeFileSync(join(packed.project, `example-${index}.ts`), checkingModule(code).module);
    const compilerOptions = {
      strict: true,
      exactOptionalPropertyTypes: true,
      noUncheckedIndexedAccess: true,
      module: "NodeNext",
      target: "ES2022",
      types: ["node"],
      typeRoots: [join(repository, "node_modules/@types")],
      noEmit: true,
      skipLibCheck: true,
    };
    writeFileSync(
      join(packed.project, "tsconfig.json"),
      JSON.stringify({ compilerOptions, include: ["example-*.ts"] }),
    );
    expect(tool("typescript/bin/tsc", ["-p", "tsconfig.json"])).toBe("");
  });

  it("run, and give the values that stand behind them", () => {
    const names = examples.map(({ page, line, code }) => {
      const name = `${page.replaceAll("/", "-")}-line-${line}.mjs`;
      writeFileSync(join(packed.project, name), javascript(checkingModule(code).module));
      return name;
    });
    const output = program(
      "all.mjs",
      `const failed = [];
for (const name of ${JSON.stringify(names)}) await import("./" + name).catch((error) => failed.push(name + ": " + error.message));
console.log("\\nfailed " + JSON.stringify(failed));`,
    );
    expect(output.split("\n").filter((line) => line.startsWith("failed "))).toEqual(["failed []"]);
  });
});

function javascript(module: string): string {
  const compilerOptions = { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022 };
  return ts.transpileModule(module, { compilerOptions }).outputText;
}

it("names no file of the checkout in its map of entry points", () => {
  const { exports, files } = JSON.parse(readFileSync(join(repository, "package.json"), "utf8"));
  expect(Object.keys(exports)).toContain("./workbook");
  expect(files).not.toContain("lib");
});
