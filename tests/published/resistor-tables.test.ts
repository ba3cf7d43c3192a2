import { describe, expect, test } from "vitest";
import { type PreferredSeries, preferredDecade } from "../../lib/quantities/preferred-numbers.js";
import { bandsFromOhms, ohmsFromBands } from "../../lib/quantities/resistor-code.js";
import { colourCode } from "../../lib/reference/generated/colour-code.js";
import { printed, publishedRows } from "./published-rows.js";

describe("IEC 60063 preferred numbers", () => {
  const rows = publishedRows("iec60063-e-series.csv", 381);
  const series = ["E3", "E6", "E12", "E24", "E48", "E96", "E192"] as const satisfies readonly PreferredSeries[];

  test.each(series)("%s: every value of the published list, in order", (name) => {
    const list = rows.filter((row) => row["series"] === name).map((row) => printed(row, "value"));
    expect(list.length).toBe(Number(name.slice(1)));
    expect(preferredDecade(name)).toEqual(list);
  });

  test.each([48, 96, 192])("E%i is 10^(i/n) rounded to two places, but for 9.20", (count) => {
    const name = series.find((candidate) => candidate === `E${count}`);
    if (name === undefined) throw new Error(`no series E${count}`);
    const computed = Array.from({ length: count }, (_, i) => Number((10 ** (i / count)).toFixed(2)));
    const differing = preferredDecade(name).filter((value, i) => value !== computed[i]);
    expect(differing).toEqual(count === 192 ? [9.2] : []);
  });

  test("IEC 60063: E3 to E24 nest by leaving out every other value; E48 in E96 in E192 likewise", () => {
    const everyOther = (values: readonly number[]): number[] => values.filter((_, i) => i % 2 === 0);
    for (const [coarse, fine] of [
      ["E3", "E6"],
      ["E6", "E12"],
      ["E12", "E24"],
      ["E48", "E96"],
      ["E96", "E192"],
    ] as const) {
      expect(everyOther(preferredDecade(fine)), `${coarse} in ${fine}`).toEqual(preferredDecade(coarse));
    }
  });
});

describe("IEC 60062 colour code", () => {
  const table = publishedRows("iec60062-colour-code.csv", 14);
  const examples = publishedRows("colour-code-examples.csv", 10);

  test("IEC 60062:2016 as quoted: every digit and multiplier; tolerances of 1, 2, 5, 10, 20, 0.5 and 0.25 %", () => {
    for (const row of table) {
      const ours = colourCode.find((candidate) => candidate.colour === row["colour"]);
      expect(ours?.digit?.toString() ?? "", `${row["colour"]} digit`).toBe(row["digit"]);
      expect(ours?.multiplierExponent?.toString() ?? "", `${row["colour"]}`).toBe(row["multiplier_exp10"]);
      if (ours?.tolerancePercent !== undefined) expect(ours.tolerancePercent).toBe(printed(row, "tolerance_pct"));
    }
    const agreed = colourCode.flatMap((row) => row.tolerancePercent ?? []).sort((a, b) => a - b);
    expect(agreed).toEqual([0.25, 0.5, 1, 2, 5, 10, 20]);
  });

  test("IEC 60062: tolerances the sources disagree on are marked and not used", () => {
    for (const colour of ["orange", "yellow", "violet", "grey"]) {
      const read = ohmsFromBands(["brown", "black", "black", "brown", colour]);
      expect(read.tolerancePercent, colour).toBeUndefined();
      expect(read.disputedTolerancePercent, colour).toBeGreaterThan(0);
    }
  });

  test.each(examples.map((row) => [row["source"] ?? "", row["bands"] ?? "", row] as const))(
    "%s: %s",
    (_, bands, row) => {
      const read = ohmsFromBands(bands.split(" "));
      expect(read.ohms).toBe(printed(row, "ohm"));
      // Violet stands for 0.1 % in one example; pages disagree on it, so it comes back as disputed.
      expect(read.tolerancePercent ?? read.disputedTolerancePercent).toBe(printed(row, "tolerance_pct"));
      expect(read.tolerancePercent === undefined).toBe(bands.endsWith("violet"));
    },
  );

  test("worked examples: a value of the published list is coded back into its bands", () => {
    const agreed = examples.filter((row) => !(row["bands"] ?? "").endsWith("violet"));
    expect(agreed.length).toBe(9);
    for (const row of agreed) {
      const bands = (row["bands"] ?? "").split(" ");
      const coded = bandsFromOhms({
        ohms: printed(row, "ohm"),
        tolerancePercent: printed(row, "tolerance_pct"),
        bands: bands.length === 5 ? 5 : 4,
      });
      expect(coded).toEqual(bands);
    }
  });
});
