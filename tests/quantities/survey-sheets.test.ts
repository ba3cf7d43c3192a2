import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { parseCable } from "../../lib/quantities/parse-cable.js";
import { parseMilliamps } from "../../lib/quantities/parse-milliamps.js";
import { type OhmsOptions, parseOhms } from "../../lib/quantities/parse-ohms.js";
import { parseOpenings } from "../../lib/quantities/parse-openings.js";
import { parseRun } from "../../lib/quantities/parse-run.js";
import { parseVolts } from "../../lib/quantities/parse-volts.js";
import type { Parsed } from "../../lib/quantities/parsed.js";

type Row = Readonly<Record<string, string>>;

function sheet(name: string, least: number): readonly Row[] {
  const text = readFileSync(new URL(`../fixtures/sites/${name}`, import.meta.url), "utf8");
  // One row of the expert's key has a comma too many in its last words.
  const rows = parse(text, { columns: true, relax_column_count: true }) as Row[];
  expect(rows.length).toBeGreaterThanOrEqual(least);
  return rows;
}

/** The columns of the two sheets as their surveyors headed them, and what reads each. */
const READERS: Readonly<Record<string, (cell: string, row: Row) => Parsed<unknown>>> = {
  Openings: parseOpenings,
  "Qty devs": parseOpenings,
  Cable: parseCable,
  Wire: parseCable,
  "Run est": (cell) => parseRun(cell, { bareUnit: "ft" }),
  Length: (cell) => parseRun(cell, { bareUnit: "ft" }),
  "R closed": (cell) => parseOhms(cell),
  "Ohms (secure)": (cell) => parseOhms(cell),
  "R open": (cell, row) => parseOhms(cell, closedOf(row["R closed"])),
  "Ohms (tripped)": (cell, row) => parseOhms(cell, closedOf(row["Ohms (secure)"])),
  "To ground": (cell) => parseOhms(cell),
  "Ohms to earth": (cell) => parseOhms(cell),
  "EOL val": (cell) => parseOhms(cell),
  Volts: (cell) => parseVolts(cell),
  "V DC": (cell) => parseVolts(cell),
  "V AC": (cell) => parseVolts(cell),
  "Powered mA": (cell) => parseMilliamps(cell),
  "Detector mA": (cell) => parseMilliamps(cell),
};

function closedOf(cell: string | undefined): OhmsOptions {
  const closed = parseOhms(cell);
  return closed.ok && closed.value?.reading !== undefined ? { sameAs: closed.value.reading } : {};
}

const sheets = [
  ["site_a_loops.csv", 9],
  ["site_b_loops.csv", 34],
] as const;

describe("every quantity in two surveyors' sheets is read, empty, or answered with a question", () => {
  it.each(sheets)("%s", (name, least) => {
    let looked = 0;
    const refused: string[] = [];
    for (const row of sheet(name, least)) {
      for (const [heading, cell] of Object.entries(row)) {
        const reader = READERS[heading];
        if (reader === undefined) continue;
        looked += 1;
        const parsed = reader(cell, row);
        if (!parsed.ok) refused.push(`${heading}: ${cell}: ${parsed.message}`);
        else if (cell.trim() === "") expect(parsed.value).toBeUndefined();
        else if (!/^[-?]$/.test(cell)) expect(parsed.value ?? parsed.remarks[0], `${heading}: ${cell}`).toBeDefined();
      }
    }
    expect(looked).toBeGreaterThan(least * 7);
    expect(refused).toEqual([]);
  });
});

describe("the house sheet against its expert's reading of the same rows", () => {
  const keys = new Map(sheet("site_a_key.csv", 9).map((key) => [key["loop_id"], key]));
  const loops = sheet("site_a_loops.csv", 9);

  it.each(loops.map((loop) => [loop["Loop"] ?? "", loop] as const))("loop %s", (id, loop) => {
    const key = keys.get(id);
    if (key === undefined) throw new Error(`the expert did not read loop ${id}`);
    for (const [typed, wanted] of [
      ["R closed", "norm_r_closed_ohm"],
      ["R open", "norm_r_open_ohm"],
      ["To ground", "norm_r_ground_ohm"],
    ] as const) {
      const expert = key[wanted] ?? "";
      const parsed = READERS[typed]?.(loop[typed] ?? "", loop);
      if (parsed?.ok !== true) throw new Error(`${typed} was refused`);
      const value = parsed.value as { reading?: { ohms: unknown }; unpowered?: { ohms: unknown } } | undefined;
      if (expert === "") continue;
      // Row 7 has two readings; the expert's is the one without supply.
      const ohms = expert === "inf" ? (value?.unpowered ?? value?.reading)?.ohms : value?.reading?.ohms;
      expect(ohms, typed).toBe(expert === "inf" ? "OL" : Number(expert));
    }
    expect(parseCable(loop["Cable"])).toMatchObject({
      value: { gaugeAwg: Number(key["norm_awg"]), conductors: Number(key["norm_cond"]) },
    });
    const run = parseRun(loop["Run est"], { bareUnit: "ft" });
    expect(run).toMatchObject({ value: { meters: expect.closeTo(Number(key["norm_len_ft"]) * 0.3048, 9) } });
    expect(parseOpenings(loop["Openings"])).toMatchObject({ value: { count: Number(key["norm_openings"]) } });
  });
});
