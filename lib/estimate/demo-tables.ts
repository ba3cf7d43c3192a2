import type { Query } from "../problems/query.js";
import { roundCents } from "../quantities/money.js";
import { inputModules } from "../reference/generated/demo/input-modules.js";
import { priceBook } from "../reference/generated/demo/price-book.js";
import { labourUnits } from "../reference/generated/labour-units.js";
import type { InputModuleProfile, LabourUnit, PriceBookRow, Survey } from "../survey/survey.js";

/** The survey's own tables, or the demo's where it has none, with one query for each that was borrowed. */
export interface JobTables {
  readonly priceBook: readonly PriceBookRow[];
  readonly inputModules: readonly InputModuleProfile[];
  readonly labour: readonly LabourUnit[];
  /** Prices are the demo's: every sheet with money says so. */
  readonly demoPrices: boolean;
  readonly queries: readonly Query[];
}

/** Completes what a survey leaves out from the demo tables; nothing is borrowed silently. */
export function jobTables(survey: Survey): JobTables {
  const queries: Query[] = [];
  const ask = (sheet: string, message: string) => queries.push({ sheet, row: null, column: null, typed: "", message });
  const demoPrices = survey.priceBook.length === 0 || survey.settings["demoPrices"] === 1;
  if (demoPrices) {
    ask(
      "Price book",
      "No price book was handed in: every price is the DEMO book's, invented. Enter your own prices; in an estimate write 0 for the setting demoPrices then.",
    );
  }
  if (survey.inputModules.length === 0 || isDemo(survey.inputModules)) {
    ask("Input modules", "No input modules were handed in: the demo's two profiles are used, invented. Enter yours.");
  }
  return {
    priceBook: survey.priceBook.length > 0 ? survey.priceBook : demoPriceBook,
    inputModules: survey.inputModules.length > 0 ? survey.inputModules : demoInputModules,
    labour: completedLabour(survey.labour),
    demoPrices,
    queries,
  };
}

/** The demo price book as the survey would hold it. */
export const demoPriceBook: readonly PriceBookRow[] = priceBook.map((row) => {
  const { source: _source, unitPrice, shipping, ...rest } = row;
  return { ...rest, unitCents: roundCents(unitPrice * 100), shippingCents: roundCents(shipping * 100) };
});

/** The demo module profiles as the survey would hold them. */
export const demoInputModules: readonly InputModuleProfile[] = inputModules.map((row) => {
  const { source: _source, returns, eolScope, alarmOn, ...rest } = row;
  return {
    ...rest,
    returns: returns.map((holds) => ({ holds })),
    eolScope: eolScope as InputModuleProfile["eolScope"],
    alarmOn: alarmOn as InputModuleProfile["alarmOn"],
  };
});

/** Whether the profiles are those that a former estimate borrowed and wrote down. */
const isDemo = (modules: readonly InputModuleProfile[]): boolean =>
  modules.length === demoInputModules.length &&
  demoInputModules.every((demo) =>
    modules.some((one) =>
      Object.entries(demo).every(
        ([column, value]) => JSON.stringify(one[column as keyof InputModuleProfile]) === JSON.stringify(value),
      ),
    ),
  );

/** The user's labour units first; tasks they leave out keep the table's hours. */
function completedLabour(given: readonly LabourUnit[]): readonly LabourUnit[] {
  const named = new Set(given.map(({ task }) => task));
  return [...given, ...labourUnits.filter(({ task }) => !named.has(task))];
}
