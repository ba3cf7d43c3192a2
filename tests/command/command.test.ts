import { spawnSync } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { strFromU8, unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const root = new URL("../..", import.meta.url).pathname;
const main = join(root, "dist/command/main.js");
let folder = "";
beforeAll(() => {
  if (!existsSync(main)) spawnSync("npm", ["run", "build"], { cwd: root, stdio: "inherit" });
  folder = mkdtempSync(join(tmpdir(), "loopwright-command-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (args: readonly string[], input = "") =>
  spawnSync(process.execPath, [main, ...args], { cwd: folder, encoding: "utf8", input });
const write = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text);
  return name;
};
const heading = "Panel,Loop,What it protects,Openings,Device,Cable,Run,Ohms shut,Ohms one opened,Volts DC";

describe("loopwright, used well", () => {
  it("tells what there is", () => {
    const { status, stdout } = run(["--help"]);
    expect(status).toBe(0);
    for (const name of ["new", "estimate", "judge", "plan", "wire", "resistor"])
      expect(stdout).toContain(`loopwright ${name}`);
  });

  it("reckons 120 ft of 22 AWG: 2 · 120 ft · 16.14 Ω per 1000 ft (textbook table) · warmth", () => {
    const { status, stdout } = run(["wire", "22AWG", "120ft", "--celsius", "35"]);
    expect(status).toBe(0);
    const ohms = Number(/^([\d.]+) Ω/.exec(stdout)?.[1]);
    expect(Math.abs(ohms - 2 * 0.12 * 16.14 * (1 + 0.00393 * 15))).toBeLessThan(0.006);
  });

  it("finds 2.2 kΩ in E24 for 2.27 kΩ, red red red gold (IEC 60063, IEC 60062)", () => {
    const { status, stdout } = run(["resistor", "2.27k", "--series", "E24"]);
    expect(status).toBe(0);
    expect(stdout).toContain("nearest in E24 is 2.20 kΩ");
    expect(stdout).toContain("red red red gold");
  });

  it("judges from standard input", () => {
    const loop = {
      id: "A",
      openings: 1,
      readings: { closedOhms: 2.3, opened: [{ opening: 1, ohms: "OL" }], voltsDc: 0 },
    };
    const { status, stdout } = run(["judge", "-"], JSON.stringify({ loops: [loop] }));
    expect(status).toBe(0);
    const { schema, loops } = JSON.parse(stdout);
    expect(schema).toBe("loopwright.judgement.1");
    expect(loops[0].id).toBe("A");
    expect(stdout).not.toMatch(/NaN|Infinity/);
  });

  it("writes a survey workbook and a survey row to a price", () => {
    expect(run(["new", "survey.xlsx"]).status).toBe(0);
    write("loops.csv", `${heading}\nP1,1,front door,1,recessed contact,22/2,48 ft,2.2,OL,0\n`);
    const { status, stdout } = run(["estimate", "loops.csv", "-o", "e.xlsx", "--json", "e.json"]);
    expect(status).toBe(0);
    expect(stdout).toContain("DEMO PRICES");
    const estimate = JSON.parse(readFileSync(join(folder, "e.json"), "utf8"));
    expect(estimate.loops).toHaveLength(1);
    expect(estimate.loops[0].key).toBe("R001");
    expect(readdirSync(folder).filter((name) => name.endsWith(".tmp"))).toEqual([]);
  });

  it("writes bill and orders as CSV another reader understands (RFC 4180), nothing in it a spreadsheet runs (OWASP, CSV injection)", () => {
    mkdirSync(join(folder, "csv"));
    write(
      "run.csv",
      `${heading}\n=1+1,1,front door,1,recessed contact,22/2,48 ft,2.2,OL,0\n=1+1,2,back door,1,recessed contact,22/2,60 ft,2.4,OL,0\n`,
    );
    const { status, stdout } = run(["estimate", "run.csv", "-o", "run.xlsx", "--csv", "csv"]);
    expect(status).toBe(0);
    expect(stdout).toContain(join("csv", "orders.csv"));
    const read = (name: string): Record<string, string>[] =>
      parse(readFileSync(join(folder, "csv", name), "utf8"), { bom: true, columns: true });
    const orders = read("orders.csv");
    const bill = read("bill.csv");
    const articles = orders.filter((line) => line["Code"] !== "");
    expect(articles.length).toBeGreaterThan(1);
    for (const line of articles) {
      const [packs, size, quantity, price, sum] = ["Packs", "Pack size", "Quantity", "Unit price", "Line"].map((name) =>
        Number(line[name]),
      );
      expect(quantity).toBe((packs ?? 0) * (size ?? 0));
      expect(sum).toBeCloseTo((quantity ?? 0) * (price ?? 0), 2);
      expect(bill.find((other) => other["Code"] === line["Code"])?.["Packs"]).toBe(line["Packs"]);
    }
    expect(bill.some((line) => line["For loops"]?.startsWith("'=1+1"))).toBe(true);
    for (const line of [...orders, ...bill]) {
      expect(line["Prices"]).toMatch(/^DEMO PRICES/);
      for (const field of Object.values(line))
        if (Number.isNaN(Number(field))) expect(field).not.toMatch(/^[=+\-@\t\r]/);
    }
  });

  it("refuses a folder for CSV that is none, and one where a file handed in would be lost", () => {
    write("bill.csv", `${heading}\nP1,1,front door,1,contact,22/2,48 ft,2.2,OL,0\n`);
    const missing = run(["estimate", "bill.csv", "-o", "x.xlsx", "--csv", "nowhere"]);
    expect(missing.status).toBe(2);
    expect(missing.stderr).toContain("does not exist");
    const lost = run(["estimate", "bill.csv", "-o", "x.xlsx", "--csv", "."]);
    expect(lost.status).toBe(2);
    expect(lost.stderr).toContain("would be lost");
    expect(existsSync(join(folder, "x.xlsx"))).toBe(false);
  });
});

describe("loopwright, used badly", () => {
  it.each([
    ["no command", [], 2, /loopwright/],
    ["an unknown command", ["guess"], 2, /There is no command "guess"/],
    ["an unknown option", ["estimate", "loops.csv", "--fast"], 2, /--fast/],
    ["no output", ["estimate", "loops.csv"], 2, /-o FILE.xlsx/],
    ["a missing file", ["estimate", "nowhere.csv", "-o", "x.xlsx"], 2, /There is no file nowhere.csv/],
    ["a directory", ["estimate", ".", "-o", "x.xlsx"], 2, /is a directory/],
    ["an unknown series", ["resistor", "2.2k", "--series", "E13"], 2, /E24/],
    ["a gauge of 80", ["wire", "80AWG", "10 ft"], 2, /80/],
    ["a run without unit", ["wire", "22AWG", "120"], 2, /feet or metres|ft|m/],
  ])("%s", (_, args, code, words) => {
    const { status, stderr, stdout } = run(args);
    expect(status).toBe(code);
    expect(stderr + stdout).toMatch(words);
    expect(existsSync(join(folder, "x.xlsx"))).toBe(false);
  });

  it.each([
    ["an empty file", "", /empty/],
    ["headings without rows", `${heading}\n`, /Write one row per loop/],
    ["no headings that mean anything", "a,b,c\n1,2,3\n", /heading|column/i],
    [
      "two sites in one sheet",
      `Site,${heading}\nNorth,P1,1,door,1,contact,22/2,10 ft,2,OL,0\nSouth,P1,2,door,1,contact,22/2,10 ft,2,OL,0\n`,
      /site/i,
    ],
  ])("a loops sheet with %s", (_, text, words) => {
    const { status, stderr } = run(["estimate", write("bad.csv", text), "-o", "x.xlsx"]);
    expect(stderr).toMatch(words);
    expect(status).toBe(1);
    expect(existsSync(join(folder, "x.xlsx"))).toBe(false);
  });

  it("names sheet, row, column, what was typed and what is expected, and goes on with the other rows", () => {
    write(
      "odd.csv",
      `${heading}\nP1,1,front door,1,contact,22/2,48 ft,two and a bit,OL,0\nP1,2,back door,1,contact,22/2,60 ft,2.4,OL,0\n`,
    );
    const { status } = run(["estimate", "odd.csv", "-o", "odd.xlsx", "--json", "odd.json"]);
    expect(status).toBe(0);
    const { loops, queries } = JSON.parse(readFileSync(join(folder, "odd.json"), "utf8"));
    expect(loops).toHaveLength(2);
    const query = queries.find((one: { typed: string }) => one.typed === "two and a bit");
    expect(query).toMatchObject({ sheet: "odd", row: 2, column: "Ohms shut" });
    expect(query.message).toMatch(/write/i);
  });

  it("refuses unknown fields of a JSON survey with their path", () => {
    write("s.json", JSON.stringify({ schema: 1, loops: [{ panel: "P1", loop: "1", colour: "red" }] }));
    const { status, stderr } = run(["estimate", "s.json", "-o", "x.xlsx"]);
    expect(status).toBe(1);
    expect(stderr).toContain("loops[0].colour");
  });

  it("refuses a plan with negative prices, and JSON that is none", () => {
    const problem = {
      modules: [],
      items: [],
      controllers: [],
      panels: [],
      join: { maxLoops: 1, cents: -1 },
      extraConductorCents: 0,
      loops: [],
    };
    expect(run(["plan", "-"], JSON.stringify(problem)).status).toBe(1);
    const { status, stderr } = run(["judge", "-"], "{");
    expect(status).toBe(1);
    expect(stderr).toContain("no JSON");
  });

  it("refuses before it works anything out a target without .xlsx, the survey's own file, and one file for both results", () => {
    const text = `${heading}\nP1,1,front door,1,contact,22/2,48 ft,2.2,OL,0\n`;
    write("own.csv", text);
    write("own.xlsx", text);
    const cases: readonly (readonly [readonly string[], RegExp])[] = [
      [["-o", "noending"], /ends in \.xlsx/],
      [["-o", "own.csv"], /ends in \.xlsx/],
      [["-o", ".xlsx"], /ends in \.xlsx/],
      [["-o", "x.xlsx", "--json", "./own.csv"], /would be lost/],
      [["--site", "own.xlsx", "-o", "own.xlsx"], /would be lost/],
      [["-o", "x.xlsx", "--json", "x.xlsx"], /the same file/],
    ];
    for (const [args, words] of cases) {
      const { status, stderr } = run(["estimate", "own.csv", ...args]);
      expect(stderr).toMatch(words);
      expect(status).toBe(2);
    }
    symlinkSync(join(folder, "own.csv"), join(folder, "link.xlsx"));
    expect(run(["estimate", "own.csv", "--site", "own.csv", "-o", "link.xlsx"]).stderr).toMatch(/would be lost/);
    expect(readFileSync(join(folder, "own.csv"), "utf8")).toBe(text);
    expect(existsSync(join(folder, "x.xlsx"))).toBe(false);
  });

  it("writes texts that a spreadsheet would run, names of object fields and characters XML forbids as plain text", () => {
    const evil = ["=1+1", "+1+1", "-1+1", "@SUM(1)", "=HYPERLINK(1)", "__proto__", "constructor", "a\u0007b"];
    const rows = evil.map((text, index) => `P1,${text},${text} ${index},1,contact,22/2,48 ft,2.2,OL,0`);
    write("evil.csv", `${heading}\n${rows.join("\n")}\n`);
    write("evil-site.csv", 'Item,Value\nSite name,=2+2\n=3+3,"=4+4"\n__proto__,x\n');
    const { status, stderr } = run([
      "estimate",
      "evil.csv",
      "--site",
      "evil-site.csv",
      "-o",
      "evil.xlsx",
      "--json",
      "evil.json",
    ]);
    expect(stderr).toBe("");
    expect(status).toBe(0);
    const { loops } = JSON.parse(readFileSync(join(folder, "evil.json"), "utf8"));
    expect(loops.map(({ loop }: { loop: string }) => loop)).toEqual(
      evil.map((text) => text.replace("\u0007", "\ufffd")),
    );
    const parts = unzipSync(new Uint8Array(readFileSync(join(folder, "evil.xlsx"))));
    const formulas = Object.entries(parts)
      .filter(([name]) => name.startsWith("xl/worksheets/sheet"))
      .flatMap(([, bytes]) => strFromU8(bytes).match(/<f>[^<]*<\/f>/g) ?? []);
    expect(formulas.length).toBeGreaterThan(100);
    expect(formulas.filter((formula) => /1\+1|2\+2|3\+3|4\+4|HYPERLINK/.test(formula))).toEqual([]);
  });

  it("leaves a target that cannot be written as it was", () => {
    write("one.csv", `${heading}\nP1,1,front door,1,contact,22/2,48 ft,2.2,OL,0\n`);
    const { status, stderr } = run(["estimate", "one.csv", "-o", "no/such/folder/e.xlsx"]);
    expect(status).toBe(2);
    expect(stderr).toMatch(/folder/);
  });
});
