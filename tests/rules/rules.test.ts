import { readdirSync, readFileSync, statSync } from "node:fs";
import { join, relative } from "node:path";
import { describe, expect, it } from "vitest";
import { generate, tableProblems } from "../../tools/generate-reference.mjs";
import { besideTheFlow, nodeFolders, packagesOf, stageOrder } from "./stages.js";

const root = new URL("../..", import.meta.url).pathname;
const files = (folder: string, ending: string): string[] =>
  readdirSync(join(root, folder)).flatMap((name) => {
    const path = join(folder, name);
    if (name === "node_modules" || name === "dist") return [];
    if (statSync(join(root, path)).isDirectory()) return files(path, ending);
    return path.endsWith(ending) ? [path] : [];
  });
const importsOf = (text: string): string[] =>
  [
    ...text.matchAll(/^(?:import|export)\s[^;"]*?from\s+"([^"]+)"|^import\s+"([^"]+)"|\bimport\(\s*"([^"]+)"\s*\)/gm),
  ].map((match) => match[1] ?? match[2] ?? match[3] ?? "");
const stageOf = (path: string) => relative("lib", path).split("/")[0] ?? "";
const sources = files("lib", ".ts").filter((path) => path.split("/").length > 2);
describe("house rules of lib/", () => {
  it("reads more than a hundred files", () => {
    expect(sources.length).toBeGreaterThan(100);
  });

  it("knows every folder", () => {
    const known = new Set<string>([...stageOrder, ...besideTheFlow]);
    expect([...new Set(sources.map(stageOf))].filter((stage) => !known.has(stage))).toEqual([]);
  });

  it("lets a stage import only itself and earlier stages", () => {
    const order = new Map<string, number>(stageOrder.map((stage, index) => [stage, index]));
    const wrong = sources.flatMap((path) => {
      const stage = stageOf(path);
      const mine = order.get(stage);
      if (mine === undefined) return [];
      return importsOf(readFileSync(join(root, path), "utf8"))
        .filter((from) => from.startsWith("."))
        .filter((from) => {
          const target = stageOf(join("lib", relative(root, join(root, path, "..", from)).replace(/^lib\//, "")));
          const theirs = order.get(target);
          return theirs !== undefined && theirs > mine;
        })
        .map((from) => `${path} imports ${from}`);
    });
    expect(wrong).toEqual([]);
  });

  it("keeps packages and Node where they belong", () => {
    const wrong = sources.flatMap((path) => {
      const stage = stageOf(path);
      return importsOf(readFileSync(join(root, path), "utf8"))
        .filter((from) => !from.startsWith("."))
        .filter((from) =>
          from.startsWith("node:")
            ? !nodeFolders.some((folder) => folder === stage)
            : !(packagesOf[stage] ?? []).some((name) => from === name || from.startsWith(`${name}/`)),
        )
        .map((from) => `${path} imports ${from}`);
    });
    expect(wrong).toEqual([]);
  });

  it("uses no clock, no random numbers and no default locale in calculation stages", () => {
    const pure = sources.filter((path) => ![...nodeFolders, "survey"].some((folder) => folder === stageOf(path)));
    const wrong = pure.filter((path) =>
      /Math\.random|Date\.now|new Date\(\)|toLocaleString\(\)|process\./.test(readFileSync(join(root, path), "utf8")),
    );
    expect(pure.length).toBeGreaterThan(80);
    expect(wrong).toEqual([]);
  });

  it("says units in the names of numbers", () => {
    const bare = /readonly (resistance|length|voltage|current|temperature|duration|price|cost)\??: number/;
    const wrong = sources
      .filter((path) => !path.includes("/generated/"))
      .filter((path) => bare.test(readFileSync(join(root, path), "utf8")));
    expect(wrong).toEqual([]);
  });
});

describe("reference tables", () => {
  it("have a title, units, meanings and a source on every row", () => {
    const { files: generated, problems } = generate();
    expect(generated.size).toBeGreaterThan(20);
    expect(problems).toEqual([]);
  });

  it("are refused without a unit or a source", () => {
    const table = {
      title: "t",
      columns: { ohms: { unit: "", meaning: "m" } },
      sources: { a: "b" },
      rows: [{ ohms: 1 }],
    };
    expect(tableProblems("t.json", table)).toEqual([
      "t.json: column ohms has no unit",
      "t.json row 1: source undefined is not among the table's sources",
    ]);
  });

  it("keep inventions in demo/ only", () => {
    const tables = readdirSync(join(root, "reference-data")).filter((name) => name.endsWith(".json"));
    const invented = tables.filter((name) =>
      /"invented for the demo"/.test(readFileSync(join(root, "reference-data", name), "utf8")),
    );
    expect(tables.length).toBeGreaterThan(10);
    expect(invented).toEqual([]);
  });
});
