import { join } from "node:path";
import { parseArgs } from "node:util";
import { estimateJob, NoEstimate } from "../estimate/estimate-job.js";
import type { HeldPlan, PacksWanted } from "../estimate/held-plan.js";
import { readHeldPlan } from "../json-input/held-plan-input.js";
import { printablePlan } from "../report/printable-plan.js";
import { packsWantedIn } from "../sheets/packs-wanted.js";
import { planRecordIn } from "../sheets/plan-record-sheet.js";
import { hasDemoPrices } from "../sheets/sheet-input.js";
import { solveWithHighsInWorker } from "../solver/highs-in-worker.js";
import type { SurveySheetName } from "../survey/columns.js";
import type { ConfirmedFeeds } from "../survey/confirm-feeds.js";
import type { HeadingMapping } from "../survey/map-headings.js";
import { readSurvey, type SheetToRead, type SurveyInput } from "../survey/read-survey.js";
import { purchaseCsv } from "../workbook/csv/purchase-csv.js";
import { estimateWorkbookReport } from "../workbook/estimate-workbook-report.js";
import { readFileInWorker } from "../workbook/read/in-worker.js";
import { writeWorkbook } from "../workbook/write/write-workbook.js";
import { checkTargets } from "./check-targets.js";
import { onInterrupt } from "./interrupt.js";
import { progressLine } from "./progress-line.js";
import { readInput, readJsonInput } from "./read-input.js";
import type { Command } from "./run-command.js";
import { summaryWords } from "./summary-words.js";
import { today } from "./today.js";
import { NoResult, UsageError } from "./usage-error.js";
import { writeAtomically } from "./write-atomically.js";

/** Options that name a loose sheet, and which sheet it is. */
const looseSheets: Readonly<Record<string, SurveySheetName>> = {
  site: "Site",
  radio: "Radio tests",
  "old-zones": "Old zones",
  prices: "Price book",
  modules: "Input modules",
  labour: "Labour",
  "finished-jobs": "Finished jobs",
};

export const estimateCommand: Command = {
  usage: "loopwright estimate SURVEY… -o FILE.xlsx [--json FILE.json] [--csv FOLDER] [--hold-plan]",
  summary: "Judge every loop, plan, price and write the workbook.",
  help: [
    "SURVEY        a workbook made by `loopwright new`, a JSON survey, or the loops sheet as typed (.csv, .xlsx)",
    "-o FILE.xlsx  where the workbook goes; it is written beside and then renamed, never half",
    "--json FILE   the estimate as JSON too",
    "--csv FOLDER  bill.csv and orders.csv for the purchaser's program into a folder that exists; text a spreadsheet",
    "              would run gets a ' in front",
    "--site, --radio, --old-zones, --prices, --modules, --labour, --finished-jobs FILE  loose sheets beside the loops",
    "--map FILE    JSON {sheet: {typed heading: our column}} to correct how headings were understood;",
    "              its key fedFrom confirms where powered detectors take their supply: {loop: feeding loop or panel},",
    '              such as {"fedFrom": {"P1 6": "CORR A", "R007": "R006", "P1 3": "panel"}}',
    "--seconds N   most time for the plan, 30 when left out; Ctrl-C ends it early with the best plan so far",
    "--hold-plan   keep treatments, modules and orders of the given estimate, work out the money again",
    "",
    "Exit code 0 even with queries; they are printed and stand on the Queries sheet.",
  ].join("\n"),
  run: async (args) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: {
        output: { type: "string", short: "o" },
        json: { type: "string" },
        csv: { type: "string" },
        map: { type: "string" },
        seconds: { type: "string" },
        "hold-plan": { type: "boolean" },
        ...Object.fromEntries(Object.keys(looseSheets).map((name) => [name, { type: "string" as const }])),
      },
      allowPositionals: true,
      strict: true,
    });
    if (positionals.length === 0) throw new UsageError("estimate needs a survey");
    if (values.output === undefined) throw new UsageError("estimate needs -o FILE.xlsx");
    const seconds = Number(values.seconds ?? "30");
    if (!(seconds > 0)) throw new UsageError(`--seconds: got ${values.seconds}, expected a number over 0`);
    const csvFiles = values.csv === undefined ? undefined : csvIn(values.csv);
    await checkTargets({
      output: values.output,
      json: values.json,
      more: Object.values(csvFiles ?? {}),
      workbooks: positionals,
      others: looseFiles(values),
    });
    const input = await surveyInput(positionals, values);
    const { survey, headings } = readSurvey(input);
    const former = formerEstimate(input);
    const hold = values["hold-plan"] === true;
    if (hold && !former.before) {
      throw new NoResult("--hold-plan: this survey carries no former plan. Name a workbook written by estimate.");
    }
    const progress = progressLine();
    const interrupt = onInterrupt(() => progress.say("ending with the best plan so far"));
    const estimate = await estimateJob({
      survey,
      solve: solveWithHighsInWorker,
      seconds,
      hold,
      ...former,
      onProgress: progress.plan,
      signal: interrupt.signal,
    })
      .catch((error: unknown) => {
        throw error instanceof NoEstimate ? new NoResult(error.message) : error;
      })
      .finally(interrupt.done);
    progress.say("writing the workbook");
    const plan = printablePlan(
      estimateWorkbookReport({
        estimate,
        survey,
        headings,
        date: today(),
        revision: (former.before?.revision ?? 0) + 1,
        ...(former.packsWanted ? { packsWanted: former.packsWanted } : {}),
      }),
    );
    await writeAtomically(values.output, await writeWorkbook(plan));
    if (values.json !== undefined) {
      const text = `${JSON.stringify(estimate, null, 1)}\n`;
      await writeAtomically(values.json, text);
    }
    if (csvFiles !== undefined) {
      const { bill, orders } = purchaseCsv({
        plan,
        bill: estimate.bill,
        orders: estimate.orders,
        demo: hasDemoPrices({ estimate, survey }),
      });
      await writeAtomically(csvFiles.bill, bill);
      await writeAtomically(csvFiles.orders, orders);
    }
    progress.end();
    const written = [values.output, values.json, ...Object.values(csvFiles ?? {})].filter((path) => path !== undefined);
    process.stdout.write(`${summaryWords(estimate).join("\n")}\nWritten: ${written.join(", ")}\n`);
  },
};

const csvIn = (folder: string) => ({ bill: join(folder, "bill.csv"), orders: join(folder, "orders.csv") });

/** Files named beside the survey. */
const looseFiles = (values: Readonly<Record<string, string | boolean | undefined>>): readonly string[] =>
  [...Object.keys(looseSheets), "map"].flatMap((name) => {
    const path = values[name];
    return typeof path === "string" ? [path] : [];
  });

/** What a workbook written by a former run says of its plan and of the packs wanted since. */
function formerEstimate(input: SurveyInput): { before?: HeldPlan; packsWanted?: PacksWanted } {
  if (!("sheets" in input)) return {};
  const sheets = input.sheets.map(({ typed }) => typed);
  const record = planRecordIn(sheets);
  return record === undefined ? {} : { before: readHeldPlan(record), packsWanted: packsWantedIn(sheets) };
}

/** The mapping file: headings of sheets, and beside them the confirmed feeds. */
function mappingOf(json: unknown): Pick<SurveyInput, "mapping" | "fedFrom"> {
  if (typeof json !== "object" || json === null || Array.isArray(json)) {
    throw new UsageError("--map: expected a JSON object {sheet: {typed heading: our column}}");
  }
  const { fedFrom, ...mapping } = json as HeadingMapping & { readonly fedFrom?: ConfirmedFeeds };
  return { mapping, ...(fedFrom === undefined ? {} : { fedFrom }) };
}

async function surveyInput(
  surveys: readonly string[],
  values: Readonly<Record<string, string | boolean | undefined>>,
): Promise<SurveyInput> {
  const mapping = typeof values["map"] === "string" ? mappingOf(await readJsonInput(values["map"])) : {};
  const [first] = surveys;
  if (first?.toLowerCase().endsWith(".json")) {
    if (surveys.length > 1) throw new UsageError("a JSON survey stands alone: name no second survey");
    return { ...mapping, json: await readJsonInput(first) };
  }
  const sheets: SheetToRead[] = [];
  for (const path of surveys) {
    for (const typed of await readFileInWorker(await readInput(path))) sheets.push({ typed });
  }
  for (const [option, as] of Object.entries(looseSheets)) {
    const path = values[option];
    if (typeof path !== "string") continue;
    const [typed] = await readFileInWorker(await readInput(path));
    if (typed) sheets.push({ typed, as });
  }
  return { ...mapping, sheets };
}
