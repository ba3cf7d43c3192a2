import {
  chooseSheets,
  estimateJob,
  estimateWorkbookReport,
  type PlanProgress,
  type PrintablePlan,
  packsWantedIn,
  planRecordIn,
  prepareJob,
  printablePlan,
  type RenderPicture,
  readFileSheets,
  readHeldPlan,
  readSurvey,
  type SheetToRead,
  type Solve,
  SurveyRefused,
  summaryOf,
  surveyWorkbookPlan,
  type TypedSheet,
} from "../../loopwright-job.js";
import type { Estimate, Survey } from "../../loopwright-pane.js";
import type { FileToOpen, OpenedSheet, PinKind } from "./engine-state.js";
import type { FilesAsked, FilesRead, Jobs, OnShare, OpenSheets, SurveyOpened, WorkAsked, WorkedOut } from "./jobs.js";
import { loopDrawing } from "./loop-drawing.js";
import { ordersCsv } from "./orders-csv.js";

/** Does every job in the thread that calls. The solver and the pictures are passed in, for they differ by platform. */
export function doJobs({
  solve,
  renderPicture,
}: {
  readonly solve: Solve;
  readonly renderPicture: RenderPicture;
}): Jobs {
  const remembering = rememberingSolver(solve);
  let signal = { aborted: false };
  const written = async (plan: PrintablePlan) =>
    (await import("../../loopwright-files.js")).workbookBytes(plan, renderPicture);
  return {
    read: async (files) => filesRead(files),
    open: async (asked) => opened(asked),
    workOut: (asked, onShare) => {
      signal = { aborted: false };
      return workedOut({ asked, onShare, solve: remembering, signal });
    },
    aside: async (asked) => aside(asked),
    workbook: (asked) => written(reportPlan(asked)),
    ordersCsv: async ({ estimate }) => ordersCsv(estimate),
    blankSurvey: ({ date, paper }) => written(surveyWorkbookPlan({ date, paper, prefill: "demo" })),
    drawing: async (asked) => loopDrawing(asked),
    cancel: () => {
      signal.aborted = true;
    },
  };
}

const isJson = ({ name }: FileToOpen): boolean => /\.json$/i.test(name);

function filesRead(files: readonly FileToOpen[]): FilesRead {
  const [json] = files.filter(isJson);
  if (json === undefined)
    return { sheets: withOwnNames(files.map((file) => ({ file, sheets: readFileSheets(file) }))) };
  if (files.length > 1)
    throw new SurveyRefused("badJson", `${json.name} is a whole survey and stands alone: open it by itself.`);
  const text = new TextDecoder().decode(json.bytes).replace(/^\uFEFF/, "");
  try {
    return { sheets: [], json: JSON.parse(text) as unknown };
  } catch (error) {
    throw new SurveyRefused("badJson", `${json.name} is no JSON: ${error instanceof Error ? error.message : ""}`);
  }
}

/** Sheets of several files; a name that stands in two of them gets its file's in front. */
function withOwnNames(
  read: readonly { readonly file: FileToOpen; readonly sheets: readonly TypedSheet[] }[],
): readonly TypedSheet[] {
  const names = new Set<string>();
  return read.flatMap(({ file, sheets }) =>
    sheets.map((typed) => {
      let name = names.has(typed.sheet) ? `${file.name} ${typed.sheet}` : typed.sheet;
      for (let again = 2; names.has(name); again++) name = `${file.name} ${typed.sheet} (${again})`;
      names.add(name);
      return name === typed.sheet ? typed : { ...typed, sheet: name };
    }),
  );
}

function opened({ sheets, takenAs, mapping, json }: OpenSheets): SurveyOpened {
  if (json !== undefined) return { ...readSurvey({ json, mapping }), sheets: [] };
  const toRead = sheets.flatMap((typed): SheetToRead[] => {
    const as = Object.hasOwn(takenAs, typed.sheet) ? takenAs[typed.sheet] : undefined;
    if (as === null) return [];
    return [as === undefined ? { typed } : { typed, as }];
  });
  const chosen = new Map([...chooseSheets(toRead, mapping)].map(([as, { sheet }]) => [sheet, as]));
  const list = sheets.map(
    ({ sheet, rows }): OpenedSheet => ({ name: sheet, rows: rows.length, as: chosen.get(sheet) ?? null }),
  );
  return { ...readSurvey({ sheets: toRead, mapping }), sheets: list };
}

/** What a workbook of a former estimate says of its plan and of the packs wanted since. */
function formerEstimate(former: readonly TypedSheet[]) {
  const record = planRecordIn(former);
  return record === undefined ? {} : { before: readHeldPlan(record), packsWanted: packsWantedIn(former) };
}

async function workedOut(given: {
  readonly asked: WorkAsked;
  readonly onShare: OnShare;
  readonly solve: Solve;
  readonly signal: { readonly aborted: boolean };
}): Promise<WorkedOut> {
  const { asked, onShare, solve, signal } = given;
  const { survey, former, prove, compare, seconds } = asked;
  onShare("Judging the loops", 0);
  const toCompare = Math.min(40, survey.loops.length) + 8;
  let compared = 0;
  let planned = false;
  const counting: Solve = (model, options) => {
    if (planned) onShare("Comparing other ways", Math.min(0.95, 0.4 + (0.55 * compared++) / toCompare));
    return solve(model, options);
  };
  const estimate = await estimateJob({
    survey,
    seconds,
    compare,
    signal,
    ...formerEstimate(former),
    ...(prove ? { solve: counting } : {}),
    onProgress: ({ stage }) => {
      planned = stage === "equal costs";
      onShare(...stageWords[stage]);
    },
  });
  onShare("Reading the results", 0.98);
  return { estimate, ...aside({ survey, estimate }) };
}

const aside = ({ survey, estimate }: Parameters<Jobs["aside"]>[0]): Omit<WorkedOut, "estimate"> => ({
  summary: summaryOf(estimate),
  choices: choicesOf(survey, estimate),
});

const stageWords: Readonly<Record<PlanProgress["stage"], readonly [words: string, share: number]>> = {
  "quick plan": ["Planning", 0.1],
  exact: ["Proving the plan", 0.2],
  "equal costs": ["Choosing among equal plans", 0.4],
};

/** What each loop can be pinned to: what it is offered, and a split where it deserves to be several zones. */
function choicesOf(survey: Survey, estimate: Estimate): Readonly<Record<string, readonly PinKind[]>> {
  const splits = new Set(estimate.zones.offers.map(({ key }) => key));
  const choices: Record<string, readonly PinKind[]> = {};
  for (const { key, keep, repair, withoutInput } of prepareJob(survey).treatments) {
    const kinds = withoutInput.map(({ kind }) => kind);
    if (kinds.includes("excluded")) choices[key] = [];
    else {
      choices[key] = [
        ...(keep.length > 0 ? (["keep"] as const) : []),
        ...(keep.length > 0 && splits.has(key) ? (["split"] as const) : []),
        ...(repair.length > 0 ? (["repair"] as const) : []),
        ...(["wireless", "retire"] as const).filter((kind) => kinds.includes(kind)),
      ];
    }
  }
  return choices;
}

/** Models that were solved to the end are not solved again: a plan is proved first and then compared, pins come back. */
function rememberingSolver(solve: Solve): Solve {
  const solved = new Map<string, Awaited<ReturnType<Solve>>>();
  return async (model, options) => {
    if (model.value.length > mostRemembered.values) return solve(model, options);
    const key = JSON.stringify([model, options.maxNodes ?? null], (_, value: unknown) =>
      typeof value === "number" && !Number.isFinite(value) ? String(value) : value,
    );
    const known = solved.get(key);
    if (known !== undefined) return known;
    const result = await solve(model, options);
    if (result.status === "cut short") return result;
    if (solved.size >= mostRemembered.models) solved.delete(solved.keys().next().value ?? "");
    solved.set(key, result);
    return result;
  };
}

/** About 100 kB a model of that size, so some 40 MB in all. */
const mostRemembered = { values: 5_000, models: 400 };

function reportPlan({ estimate, survey, headings, former, paper, date }: FilesAsked) {
  const { before, packsWanted } = formerEstimate(former);
  return printablePlan(
    estimateWorkbookReport({
      estimate,
      survey,
      headings,
      paper,
      date,
      revision: (before?.revision ?? 0) + 1,
      ...(packsWanted === undefined ? {} : { packsWanted }),
    }),
  );
}
