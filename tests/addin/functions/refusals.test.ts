import { afterEach, describe, expect, test, vi } from "vitest";
import { associations as functions } from "../../../addin/functions/generated/associations.js";
import { excelRuntime } from "./excel-runtime.js";

const runtime = excelRuntime();

interface CellError {
  readonly code: string;
  readonly message: string;
}

/** The error Excel's own class carries to the cell. */
async function errorOf(work: () => unknown): Promise<CellError> {
  vi.stubGlobal("CustomFunctions", runtime);
  try {
    await work();
  } catch (error) {
    expect(error).toBeInstanceOf(runtime.Error);
    return error as CellError;
  }
  throw new Error("nothing was refused");
}

afterEach(() => vi.unstubAllGlobals());

describe("#VALUE! says which argument, what stands there and what is expected", () => {
  const refused: readonly (readonly [string, () => unknown, RegExp])[] = [
    [
      "a word for a length",
      () => functions.PAIR_OHMS(22, "far"),
      /^run: "far" cannot be read here: .*120 ft|^run: "far".*55 ft/,
    ],
    ["no length", () => functions.PAIR_OHMS(22, null), /^run: got nothing, expected .*120 ft or 36 m/],
    ["an empty cell", () => functions.PAIR_OHMS(22, ""), /^run: got nothing/],
    ["a gauge out of range", () => functions.PAIR_OHMS(40, 10), /^cable: "40".*10 to 30 AWG/],
    ["a date made of 22/4", () => functions.PAIR_OHMS(45_039, 10), /date that Excel made.*format the cell as text/],
    ["a hot cable", () => functions.PAIR_OHMS(22, 10, 95), /temperatureCelsius: got 95 °C, expected -40 to 90 °C/],
    ["a negative resistance", () => functions.NEAREST_RESISTOR(-5), /^ohms: /],
    ["an unknown series", () => functions.NEAREST_RESISTOR(100, "E25"), /^series: got "e25", expected E3, E6/],
    ["5 % as Excel stores it", () => functions.RESISTOR_BANDS(2200, 0.05), /a cell that shows 5% holds 0\.05, write 5/],
    ["a colour that is none", () => functions.OHMS_FROM_BANDS("red red plaid"), /plaid/],
    [
      "several cells for one",
      () => functions.PAIR_OHMS([["22"], ["24"]], 10),
      /^cable: got 2 cells, expected one cell/,
    ],
    [
      "an error in a cell",
      () => functions.IN_SERIES([[[{ type: "Error", basicValue: "#REF!" }]]]),
      /#REF!.*mend that cell/,
    ],
    ["nothing to add", () => functions.IN_PARALLEL([[["", null]]]), /^parts: got no resistance/],
    [
      "unequal ranges",
      () => functions.SUPPLY_DROP([["22"]], [[10], [20]], [[5]]),
      /^milliamps: got 1 cells, expected one for each/,
    ],
    ["a band about nothing", () => functions.EOL_TO_FIT(5600, 1.2, 0.8, 1), /^bandLow, bandHigh: got 1.2 and 0.8/],
    [
      "cable without run",
      () => functions.EOL_TO_FIT(5600, 0.8, 1.2, 1, "22/4"),
      /^run: got nothing, expected cable and run/,
    ],
    ["a reading in words", () => functions.LOOP_VERDICT("weird"), /^shut: "weird"/],
    ["a table without headings", () => functions.LOOPS_VERDICT([["a", "b"]]), /loops: .*headings/],
    [
      "a currency in words",
      () =>
        functions.BILL(
          [
            ["Loop", "Shut"],
            [1, 2],
          ],
          null as never,
          null as never,
          "dollars",
        ),
      /^currency: /,
    ],
  ];
  test.each(refused)("%s", async (_, work, message) => {
    const { code, message: said } = await errorOf(work);
    expect(code).toBe("#VALUE!");
    expect(said).toMatch(message);
  });
});

describe("#N/A says why there is no result", () => {
  const without: readonly (readonly [string, () => unknown, RegExp])[] = [
    ["an open pair tells no length", () => functions.RUN_FROM_OHMS("OL", "22/4"), /over-range/],
    ["nothing left for cable", () => functions.RUN_FROM_OHMS(0.2, "22/4", 0.5), /nothing is left for cable/],
    ["an open resistor has no neighbour", () => functions.NEAREST_RESISTOR("OL"), /over-range/],
    ["headings without loops", () => functions.LOOPS_VERDICT([["Loop", "Shut"]]), /no loop below/],
    [
      "a bill without loops",
      () =>
        functions.BILL([
          ["Loop", "Shut"],
          ["", ""],
        ]),
      /no loop below/,
    ],
  ];
  test.each(without)("%s", async (_, work, message) => {
    const { code, message: said } = await errorOf(work);
    expect(code).toBe("#N/A");
    expect(said).toMatch(message);
  });
});

describe("EXPLAIN returns as text what the cell cannot show", () => {
  const explained = (name: unknown, ...values: readonly unknown[]) =>
    functions.EXPLAIN(name, values.map((value) => (Array.isArray(value) ? value : [[value]])) as unknown[][][]);
  test("the message and which error it is", async () => {
    expect(await explained("PAIR_OHMS", 22, "far")).toMatch(/^#VALUE! run: "far"/);
    expect(await explained("loopw.run_from_ohms", "OL", "22/4")).toMatch(/^#N\/A .*over-range/);
    expect(await explained("NO_SUCH", 1)).toMatch(/^#VALUE! functionName: got "NO_SUCH", expected one of BATTERY_AH/);
    expect(
      await explained("BILL", [
        ["Loop", "Shut"],
        ["", ""],
      ]),
    ).toMatch(/^#N\/A loops:/);
  });
  test("the arithmetic and what was assumed", async () => {
    expect(await explained("PAIR_OHMS", "22/4", "120 ft", null)).toMatch(
      /1 \+ .*· \(20 − 20\).*out and back = 2 · 36\.576 m/,
    );
    expect(await explained("EXPECTED_BAND", "", "", 2)).toMatch(/taken as 22 AWG.*run not written/);
    expect(await explained("NEAREST_RESISTOR", "2.27k")).toMatch(/below: 2\.20 kΩ, -3\.1 % off, red red red gold/);
    expect(await explained("EOL_TO_FIT", 5600, 0.8, 1.2, 2)).toMatch(/new EOL at the far end/);
  });
  test("the same text inside Excel: it never throws", async () => {
    vi.stubGlobal("CustomFunctions", runtime);
    expect(await explained("METERS", "far")).toMatch(/^#VALUE! text: "far"/);
    expect(await functions.EXPLAIN(null, null as never)).toMatch(/^#VALUE! functionName/);
  });
});

test("left out is null, undefined or an empty cell: the result is the same", () => {
  const expected = functions.PAIR_OHMS("22/4", 30);
  for (const nothing of [null, undefined, "", [[""]], [[null]]]) {
    expect(functions.PAIR_OHMS("22/4", 30, nothing, nothing)).toBe(expected);
    expect(functions.EXPECTED_BAND("22/4", 30, 2, nothing, nothing, nothing)).toEqual(
      functions.EXPECTED_BAND("22/4", 30, 2),
    );
  }
  expect(
    functions.LOOPS_VERDICT(
      [
        ["Loop", "Shut"],
        ["1", 4],
      ],
      null,
    ),
  ).toEqual(
    functions.LOOPS_VERDICT([
      ["Loop", "Shut"],
      ["1", 4],
    ]),
  );
});

test("a formatted number comes as an object with its basic value", () => {
  const formatted = { type: "FormattedNumber", basicType: "Double", basicValue: 30, numberFormat: '0 "m"' };
  expect(functions.PAIR_OHMS(22, formatted)).toBe(functions.PAIR_OHMS(22, 30));
});
