import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { associations as functions } from "../../../addin/functions/generated/associations.js";
import { priceBook } from "../../../lib/reference/generated/demo/price-book.js";
import type { TypedCell } from "../../../lib/survey/survey.js";
import { readLimits } from "../../../lib/workbook/read/limits.js";
import { readCsv } from "../../../lib/workbook/read/read-csv.js";

interface JudgeCase {
  readonly loop: {
    readonly id: string;
    readonly job: string;
    readonly cable: { readonly gaugeAwg?: number };
    readonly runMeters: number;
    readonly openings: number;
    readonly poweredDetector: boolean;
    readonly markedLifeSafety: boolean;
    readonly foil: boolean;
    readonly oldPanel: {
      readonly expectedEolOhms?: number;
      readonly restingState?: string;
      readonly resistorAtPanel?: string;
    };
    readonly readings: {
      readonly closedOhms: number | "OL";
      readonly opened?: readonly { readonly opening: number; readonly ohms: number | "OL" }[];
      readonly voltsDc?: number;
      readonly reversedOhms?: number | "OL";
      readonly toOtherPairOhms?: number | "OL";
      readonly earth?: { readonly aOhms: number | "OL"; readonly bOhms: number | "OL" };
    };
  };
  readonly truth: { readonly condition: string; readonly acceptable: readonly string[] };
}

const cases = JSON.parse(readFileSync("tests/fixtures/judge-cases/cases.json", "utf8")) as readonly JudgeCase[];

const HEADINGS = [
  "Loop",
  "Device",
  "Openings",
  "Cable",
  "Run one way (m)",
  "EOL value (Ω)",
  "Shut (Ω)",
  "One opening open (Ω)",
  "Volts DC on lifted pair (V)",
  "Leads swapped (Ω)",
  "To other pairs (Ω)",
  "To earth (Ω)",
  "Old panel at rest",
  "Resistor at panel",
  "Lifted",
  "Life safety",
];

/** A recorded loop as somebody would type it into the loops sheet. */
function typedRow({ loop }: JudgeCase): unknown[] {
  const { readings, oldPanel, cable } = loop;
  const device = loop.foil ? "foil" : loop.poweredDetector ? "motion" : "recessed contact";
  return [
    loop.id,
    device,
    loop.openings,
    cable.gaugeAwg === undefined ? "" : `${cable.gaugeAwg}/4`,
    loop.runMeters,
    oldPanel.expectedEolOhms ?? "",
    readings.closedOhms,
    readings.opened?.map(({ opening, ohms }) => `${opening}: ${ohms}`).join("; ") ?? "",
    readings.voltsDc ?? "",
    readings.reversedOhms ?? "",
    readings.toOtherPairOhms ?? "",
    readings.earth === undefined ? "" : `a: ${readings.earth.aOhms}; b: ${readings.earth.bOhms}`,
    oldPanel.restingState ?? "",
    oldPanel.resistorAtPanel ?? "",
    "both",
    loop.markedLifeSafety ? "yes" : "no",
  ];
}

/** Verdicts of each job's loops as one table, in the order of the cases. */
function verdictsByJob(pooled: boolean): readonly (readonly unknown[])[] {
  const found = new Map<string, readonly unknown[]>();
  for (const job of new Set(cases.map(({ loop }) => loop.job))) {
    const members = cases.filter(({ loop }) => loop.job === job);
    const rows = functions.LOOPS_VERDICT([HEADINGS, ...members.map(typedRow)], pooled);
    expect(rows).toHaveLength(members.length + 1);
    expect(rows[0]).toEqual(["Condition", "Probability", "Action", "Reason", "Questions"]);
    members.forEach(({ loop }, i) => {
      found.set(loop.id, rows[i + 1] ?? []);
    });
  }
  return cases.map(({ loop }) => found.get(loop.id) ?? []);
}

test("recorded loops whose truth is known, typed as survey rows: nine in ten verdicts are among those the truth allows", () => {
  expect(cases.length).toBe(400);
  for (const pooled of [false, true]) {
    const rows = verdictsByJob(pooled);
    const right = cases.filter(({ truth }, i) => truth.acceptable.includes(String(rows[i]?.[0])));
    expect(right.length / cases.length).toBeGreaterThan(0.9);
    for (const [i, { loop }] of cases.entries()) {
      const [condition, probability, action, reason] = rows[i] ?? [];
      expect(probability).toBeGreaterThan(0);
      expect(probability).toBeLessThanOrEqual(1);
      expect(String(reason).length).toBeGreaterThan(10);
      if (loop.markedLifeSafety) expect([condition, action]).toEqual(["lifeSafety", "leaveAlone"]);
    }
  }
});

test("single loops from the same record: LOOP_VERDICT says what LOOPS_VERDICT says of the row by itself", () => {
  const plain = cases.filter(({ loop }) => loop.cable.gaugeAwg !== undefined && !loop.markedLifeSafety).slice(0, 40);
  expect(plain).toHaveLength(40);
  for (const { loop } of plain) {
    const { readings, oldPanel } = loop;
    const first = readings.opened?.[0];
    const args = [
      readings.closedOhms,
      first === undefined ? "" : `${first.ohms}`,
      loop.openings,
      `${loop.cable.gaugeAwg}/4`,
      loop.runMeters,
      "recessed contact",
      oldPanel.expectedEolOhms ?? "",
      readings.voltsDc ?? "",
    ] as const;
    const headings = [6, 7, 2, 3, 4, 1, 5, 8].map((i) => HEADINGS[i]);
    const [single = []] = functions.LOOP_VERDICT(...args);
    const [, whole = []] = functions.LOOPS_VERDICT(
      [
        ["Loop", ...headings],
        ["1", ...args],
      ],
      false,
    );
    expect(single).toEqual(whole.slice(0, 4));
  }
});

test("life-safety words in the device or the notes end the matter, whatever the readings", () => {
  for (const args of [
    [2200, "OL", 1, "22/4", 20, "smoke detector", 2200, 0],
    [2200, "OL", 1, "22/4", 20, "", 2200, 0, "heat detector in the boiler room"],
  ]) {
    const [row = []] = functions.LOOP_VERDICT(...(args as [unknown]));
    expect(row[2]).toBe("leaveAlone");
  }
});

test("a surveyor's own sheet with a title above and blank rows between keeps its rows; bare feet under 'Run ft' are feet", () => {
  const sheet = [
    ["Loops of the clinic", "", "", "", ""],
    ["Loop #", "Shut", "Opened", "Cable", "Run ft"],
    ["1", "2.23k", "OL", "22/4", 66],
    ["", "", "", "", ""],
    ["2", "OL", "OL", "22/4", 66],
  ];
  const rows = functions.LOOPS_VERDICT(sheet, false);
  expect(rows).toHaveLength(5);
  expect(rows[0]).toEqual(["", "", "", "", ""]);
  expect(rows[1]?.[0]).toBe("Condition");
  expect(rows[3]).toEqual(["", "", "", "", ""]);
  const meters = functions.LOOPS_VERDICT(
    [
      ["Loop", "Shut", "Opened", "Cable", "Run m"],
      ["1", "2.23k", "OL", "22/4", 66 * 0.3048],
    ],
    false,
  );
  expect(rows[2]?.slice(0, 3)).toEqual(meters[1]?.slice(0, 3));
  expect(rows[4]?.[0]).toBe("open");
});

test("a row that cannot be read is judged by what is left, and its question stands beside it", () => {
  const rows = functions.LOOPS_VERDICT([
    ["Loop", "Shut", "Cable"],
    ["1", "weird", "22/4"],
  ]);
  expect(String(rows[1]?.[4])).toMatch(/weird/);
});

const text = (cell: TypedCell | undefined): unknown =>
  typeof cell === "object" && cell !== null ? cell.isoDate : (cell ?? "");

/** A recorded site's loops sheet as a range. */
function siteRange(): unknown[][] {
  const bytes = readFileSync("tests/fixtures/sites/site_b_loops.csv");
  return readCsv(bytes, "loops", readLimits).rows.map(({ cells }) => cells.map(text));
}

test("bill: every line is quantity × unit price to the cent, the total is their sum, demo prices are named", async () => {
  const range = siteRange();
  expect(range.length).toBeGreaterThan(10);
  const rows = await functions.BILL(range);
  expect(String(rows[0]?.[8])).toBe("Line, DEMO PRICES (USD)");
  const lines = rows.slice(1, -1);
  expect(lines.length).toBeGreaterThan(3);
  let cents = 0;
  for (const line of lines) {
    const [need = 0, packs = 0, packSize = 0, fromStock = 0, unit = 0, total = 0] = line.slice(3, 9).map(Number);
    const quantity = packs * packSize + fromStock;
    expect(quantity).toBeGreaterThanOrEqual(need);
    expect(Math.abs(quantity * unit - total)).toBeLessThan(0.0051);
    cents += Math.round(total * 100);
  }
  expect(rows.at(-1)?.[8]).toBeCloseTo(cents / 100, 6);
});

test("bill with a price book of one's own: its prices and currency stand in it, twice the price is twice the line", async () => {
  const columns = [
    "code",
    "class",
    "description",
    "unit",
    "unitPrice",
    "packSize",
    "fromQuantity",
    "supplier",
  ] as const;
  const book = (times: number): unknown[][] => [
    [...columns, "taxClass", "stock", "shipping", "radioBand", "eolOhms", "ampereHours", "gaugeAwg", "conductors"],
    ...priceBook.map((row) => [
      ...columns.map((column) => (column === "unitPrice" ? times * row.unitPrice : row[column])),
      row.taxClass,
      0,
      0,
      row.radioBand ?? "",
      row.eolOhms ?? "",
      row.ampereHours ?? "",
      row.gaugeAwg ?? "",
      row.conductors ?? "",
    ]),
  ];
  expect(priceBook.length).toBeGreaterThan(10);
  const loops = [
    ["Loop", "Shut", "Opened", "Openings", "Cable", "Run m", "Device", "EOL value"],
    ["1", "2.23k", "OL", 1, "22/4", 20, "recessed contact", "2.2k"],
  ];
  const once = await functions.BILL(loops, book(1), null as never, "eur");
  const twice = await functions.BILL(loops, book(2), null as never, "EUR");
  expect(once[0]?.[8]).toBe("Line (EUR)");
  const unitPrices = (rows: readonly (readonly unknown[])[]) =>
    new Map(rows.slice(1, -1).map((row) => [row[0], Number(row[7])]));
  const [cheap, dear] = [unitPrices(once), unitPrices(twice)];
  const shared = [...cheap.keys()].filter((code) => dear.has(code));
  expect(shared.length).toBeGreaterThan(2);
  for (const code of shared) expect(dear.get(code)).toBeCloseTo(2 * (cheap.get(code) ?? 0), 6);
});
