import * as library from "../loopwright-functions.js";
import { type Answer, type CellValue, cellWords, inCellsLater, NoResult, spill } from "./answer.js";
import { ifGiven, isLeftOut, plainCell, plainRows, refused } from "./arguments.js";
import { readRange, surveyOf, typedRange } from "./loop-rows.js";

/**
 * Bill of materials of a job from its survey rows, by the quick plan: a few loops may be served cheaper by the exact plan of the estimate. Every quantity follows a rule that the last column shows. The first calculation loads the estimate.
 * @customfunction BILL BILL
 * @param loops Range with the loops and their row of headings, as for LOOPS_VERDICT.
 * @param priceBook Range with the price book and its row of headings. Left out: the demo's invented prices, and the headings say so.
 * @param inputModules Range with the input modules and their row of headings. Left out: the demo's two invented profiles.
 * @param currency Currency of the price book, three letters. Left out: USD.
 * @returns Code | description | unit | need | packs | pack size | from stock | unit price | line price | supplier | for loops | how the quantity came about; a row of headings on top, the material's total below.
 * @example =LOOPW.BILL({"Loop","Shut","Opened","Openings","Cable","Run";"1","2.23k","OL",1,"22/4","20 m"}) → "Code" | "Description" | "Unit" | "Need" | "Packs" | "Pack size" | "From stock" | "Unit price, DEMO PRICES (USD)" | "Line, DEMO PRICES (USD)" | "Supplier" | "For loops" | "How the quantity came about"
 */
export function bill(
  loops: unknown[][],
  priceBook?: unknown[][],
  inputModules?: unknown[][],
  currency?: unknown,
): Promise<unknown[][]> {
  return inCellsLater(() => billAnswer(loops, priceBook, inputModules, currency));
}

export async function billAnswer(
  loops: unknown,
  prices?: unknown,
  modules?: unknown,
  money?: unknown,
): Promise<Answer<CellValue[][]>> {
  const currency = ifGiven({ name: "currency", cell: money }, currencyCode) ?? "USD";
  const range = readRange(plainRows({ name: "loops", cell: loops }));
  if (range.rows.size === 0) throw new NoResult("loops: the range has headings but no loop below them");
  const book = tableOf("priceBook", "Price book", prices);
  const profiles = tableOf("inputModules", "Input modules", modules);
  const priceRows = book && library.readPriceBook(book);
  const moduleRows = profiles && library.readInputModules(profiles);
  for (const [name, read] of Object.entries({ priceBook: priceRows, inputModules: moduleRows })) {
    if (read !== undefined && read.rows.length === 0)
      throw new NoResult(`${name}: no usable row. ${firstWords(read.queries)}`);
  }
  const survey = surveyOf(range, {
    currency,
    priceBook: priceRows?.rows ?? [],
    inputModules: moduleRows?.rows ?? [],
  });
  const estimate = await estimated(survey);
  const demo = estimate.demoPrices ? ", DEMO PRICES" : "";
  const lines = estimate.bill.map((line): CellValue[] => [
    line.code,
    line.description,
    line.unit,
    line.need,
    line.packs,
    line.packSize,
    line.fromStock,
    line.unitCents / 100,
    line.lineCents / 100,
    line.supplier ?? "",
    line.loops.join(", "),
    line.rule,
  ]);
  const cents = estimate.bill.reduce((sum, { lineCents }) => sum + lineCents, 0);
  const total = ["", "Material", "", "", "", "", "", "", cents / 100, "", "", ""];
  const questions = [...(priceRows?.queries ?? []), ...(moduleRows?.queries ?? []), ...estimate.queries];
  return {
    value: spill([headings(currency, demo), ...lines, total]),
    words: [`${lines.length} articles by the quick plan.`, cellWords(questions.map(({ message }) => message))],
  };
}

const headings = (currency: string, demo: string): CellValue[] => [
  "Code",
  "Description",
  "Unit",
  "Need",
  "Packs",
  "Pack size",
  "From stock",
  `Unit price${demo} (${currency})`,
  `Line${demo} (${currency})`,
  "Supplier",
  "For loops",
  "How the quantity came about",
];

async function estimated(survey: library.Survey) {
  const { estimateJob, NoEstimate } = await import("../loopwright-estimate.js");
  try {
    return await estimateJob({ survey });
  } catch (error) {
    throw error instanceof NoEstimate ? new NoResult(error.message) : error;
  }
}

function tableOf(name: string, sheet: library.SurveySheetName, cell: unknown): library.RawTable | undefined {
  const rows = plainRows({ name, cell });
  if (rows.flat().every(isLeftOut)) return undefined;
  return library.rawTable(typedRange(name, rows), sheet);
}

const firstWords = (queries: readonly library.Query[]): string => queries[0]?.message ?? "";

function currencyCode(argument: { readonly name: string; readonly cell: unknown }): string {
  const typed = String(plainCell(argument)).trim().toUpperCase();
  if (!/^[A-Z]{3}$/.test(typed)) throw refused(argument.name, `"${typed}"`, "three letters such as USD");
  return typed;
}
