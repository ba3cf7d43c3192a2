import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { beforeAll, describe, expect, it } from "vitest";
import type { Estimate } from "../../lib/estimate/estimate.js";
import { planKindOf } from "../../lib/estimate/pins.js";
import { clinic, estimateOf, house } from "./estimate-of.js";

/** The expert's condition for each row, in our names, and the fact or finding that it turns on. */
const conditionsOf: Readonly<Record<string, { readonly ours: readonly string[]; readonly turnsOn: RegExp }>> = {
  // No EOL and one at the panel are one circuit once the pair is lifted.
  sound_no_eol: { ours: ["soundNoEol", "eolInPanel"], turnsOn: /Read [2-5]\.\d+ Ω shut; .*explain/ },
  sound_eol_far: { ours: ["soundEolAtEnd"], turnsOn: /Read 2\.17 kΩ shut/ },
  high_resistance_intermittent: { ours: ["highResistance"], turnsOn: /moves|jumps/i },
  open_fault: { ours: ["open"], turnsOn: /over-range shut/ },
  short_fault: { ours: ["shorted", "bypassed"], turnsOn: /Read 2\.9 Ω shut/ },
  powered_reads_open_unpowered: { ours: ["poweredDevice", "soundNoEol"], turnsOn: /output resistance is normal/ },
  mixed_loop_sound_no_eol: { ours: ["soundNoEol"], turnsOn: /Read 4\.3 Ω shut/ },
  life_safety: { ours: ["lifeSafety"], turnsOn: /life safety/i },
};

/** The expert's decision for each row, and what our treatments call it. */
const decisions: Readonly<Record<string, { readonly treatments: readonly string[]; readonly supply?: true }>> = {
  keep_as_is: { treatments: ["keep"] },
  keep_set_eol: { treatments: ["fitEol"] },
  keep_powered_set_eol: { treatments: ["keep", "fitEol"], supply: true },
  repair_then_keep: { treatments: ["repair"] },
  replace_wireless: { treatments: ["wireless"] },
  split_then_keep: { treatments: ["split"] },
  exclude_life_safety: { treatments: ["excluded"] },
};

const key: readonly Readonly<Record<string, string>>[] = parse(
  readFileSync(new URL("../fixtures/sites/site_a_key.csv", import.meta.url)),
  { columns: true, relax_column_count: true },
);

describe("a house read by an expert (handed-in key, row by row)", () => {
  let estimate: Estimate;
  beforeAll(async () => {
    estimate = await estimateOf(house());
  });

  it("has an expert's reading for all nine rows", () => {
    expect(key.length).toBe(9);
    expect(estimate.loops.length).toBe(9);
  });

  it.each(key.map((row) => [row["loop_id"] ?? "", row["decision"] ?? ""]))("row %s: %s", (loop, decision) => {
    const ours = estimate.loops.find((one) => one.loop === loop);
    const wanted = decisions[decision];
    expect(wanted).toBeDefined();
    expect(wanted?.treatments).toContain(ours?.recommended);
    if (wanted?.supply) expect(ours?.needsSupply || ours?.input === null).toBe(true);
  });

  it.each(key.map((row) => [row["loop_id"] ?? "", row["condition"] ?? ""]))("row %s is %s", (loop, condition) => {
    const ours = estimate.loops.find((one) => one.loop === loop);
    const wanted = conditionsOf[condition];
    expect(wanted).toBeDefined();
    expect(wanted?.ours).toContain(ours?.condition);
    const said = [...(ours?.facts ?? []), ...(ours?.findings ?? [])].map(({ words }) => words).join(" ");
    expect(said).toMatch(wanted?.turnsOn ?? /^$/);
  });

  it("says by how much where the plan departs from what a loop deserves", () => {
    const departing = estimate.loops.filter(
      ({ treatment, recommended }) => planKindOf[treatment] !== planKindOf[recommended],
    );
    for (const { reason } of departing) expect(reason).toMatch(/By itself it deserves: .*(\d|would cost the same)/);
    for (const { key: row } of departing) {
      expect(estimate.whys?.find((why) => why.key === row)?.recommendedMoreCents).not.toBeNull();
    }
  });

  it("prints nothing for the smoke circuit but that it is left alone", () => {
    const smoke = estimate.loops.find(({ loop }) => loop === "9");
    expect(smoke?.treatment).toBe("excluded");
    expect(smoke?.next).toEqual([]);
    expect(smoke?.expectedAsLeft).toBeNull();
    expect(smoke?.input).toBeNull();
    expect(estimate.terminals.filter(({ loop }) => loop === smoke?.key)).toEqual([]);
    expect(estimate.holds.map(({ hold }) => hold)).toEqual(["lifeSafetyOnOldControl"]);
    expect(estimate.labour.map(({ task }) => task)).not.toContain("stripOut");
  });
});

describe("a clinic read without a key", () => {
  let estimate: Estimate;
  beforeAll(async () => {
    estimate = await estimateOf(clinic());
  });
  const loop = (name: string) => estimate.loops.find(({ tag }) => tag === name);

  // | row | technician | condition | treatment |
  const page = readFileSync(new URL("../../docs/site-readings.md", import.meta.url), "utf8")
    .split("\n")
    .filter((line) => /^\| P\d /.test(line))
    .map((line) => line.split("|").map((cell) => cell.trim()));

  it("docs/site-readings.md has every row once, and its columns say what the program says", () => {
    expect(page.length).toBe(34);
    const ours = estimate.loops.map(({ panel, loop: name, tag, condition, recommended }) => [
      `${panel} ${name} ${tag ?? "(no label)"}`,
      condition,
      recommended,
    ]);
    expect(page.map((cells) => [cells[1], cells[3], cells[4]])).toEqual(ours);
  });

  it("excludes the sprinkler circuit and holds what reads one way only", () => {
    expect(loop("SPRK")?.treatment).toBe("excluded");
    expect(loop("CFO")?.treatment).toBe("excluded");
    expect(loop("CFO")?.reason).toMatch(/reversed reading differs/);
  });

  it("names what a technician would", () => {
    expect(loop("MAIN ENT")?.condition).toBe("soundEolAtEnd");
    expect(loop("HOLDUP")?.condition).toBe("normallyOpen");
    expect(loop("ROLLUP")?.condition).toBe("highResistance");
    expect(loop("EXAM 5-8")?.condition).toBe("leakage");
    expect(loop("LAB/ BELL?")?.condition).toBe("foreignVoltage");
    expect(loop("BSMT STR")?.condition).toBe("eolInPanel");
    expect(loop("CONF WIN")?.condition).toBe("wrongEol");
    expect(loop("ADM PIR")?.condition).toBe("bypassed");
    expect(loop("BALC")?.condition).toBe("highResistance");
  });

  it("keeps every row and leaves the live pair alone", () => {
    expect(estimate.loops.length).toBe(34);
    expect(loop("LAB/ BELL?")?.input).toBeNull();
    expect(loop("LAB/ BELL?")?.wireless).toEqual([]);
  });
});
