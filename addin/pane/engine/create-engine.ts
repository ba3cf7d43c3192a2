import type { Place } from "../../loopwright-pane.js";
import type {
  Activity,
  Engine,
  EngineState,
  FileToOpen,
  FileToSave,
  Jump,
  LoopDrawing,
  LoopWish,
  PaneHost,
  PinKind,
} from "./engine-state.js";
import { History } from "./history.js";
import type { FilesAsked, Jobs, OpenSheets, SurveyOpened, WorkedOut } from "./jobs.js";
import { problemWords } from "./problem-words.js";
import { forbidden, pinned, wishesOf, withWishes } from "./wishes.js";
import type { WorkbookLink } from "./workbook-link.js";

/** What an engine stands on. */
export interface EngineParts {
  readonly host: PaneHost;
  readonly jobs: Jobs;
  /** Files of the bundled invented site. */
  readonly demoFiles: () => Promise<readonly FileToOpen[]>;
  /** Day on this machine's clock, YYYY-MM-DD. */
  readonly today: () => string;
  /** The workbook beside the pane; only in Excel. */
  readonly workbook?: WorkbookLink;
  readonly units?: EngineState["units"];
  readonly paper?: EngineState["paper"];
}

/** One state of what is asked: it can be taken back, and its estimate with it. */
interface Step {
  readonly asked: OpenSheets;
  readonly opened: SurveyOpened;
  /** Wishes chosen in the pane, by loop; they go before those typed in the survey. */
  readonly chosen: Readonly<Record<string, LoopWish>>;
  /** Filled in once it has been worked out. */
  worked?: WorkedOut;
}

const thisWorkbook = { source: "this workbook", demo: false };

/** Most time for the plan, unless said otherwise. [s] */
const usualSeconds = 30;

const nothingOpen: Pick<
  EngineState,
  | "source"
  | "demo"
  | "sheets"
  | "headings"
  | "survey"
  | "queries"
  | "estimate"
  | "summary"
  | "stale"
  | "wishes"
  | "choices"
  | "before"
> = {
  source: null,
  demo: false,
  sheets: [],
  headings: [],
  survey: null,
  queries: [],
  estimate: null,
  summary: null,
  stale: false,
  wishes: {},
  choices: {},
  before: null,
};

/** The engine of the pane. */
export function createEngine(parts: EngineParts): Engine {
  return new PaneEngine(parts);
}

class PaneEngine implements Engine {
  readonly #parts: EngineParts;
  readonly #listeners = new Set<(state: EngineState) => void>();
  #state: EngineState;
  #history: History<Step> | undefined;
  /** The step whose estimate is shown. */
  #shown: Step | undefined;
  /** Number of the run whose results count; a later one replaces it. */
  #run = 0;
  #working: Promise<void> = Promise.resolve();
  /** The user ended the run that works something out. */
  #ended = false;

  constructor(parts: EngineParts) {
    this.#parts = parts;
    this.#state = {
      ...nothingOpen,
      host: parts.host,
      units: parts.units ?? "metric",
      paper: parts.paper ?? "A4",
      progress: null,
      problem: null,
      canUndo: false,
      canRedo: false,
    };
  }

  get state(): EngineState {
    return this.#state;
  }

  subscribe(listener: (state: EngineState) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  openFiles(files: readonly FileToOpen[]): Promise<void> {
    const source = files.map(({ name }) => name).join(", ");
    return this.#open({ source, demo: false, files: () => Promise.resolve(files) });
  }

  demo(): Promise<void> {
    return this.#open({ source: "the demo site (invented)", demo: true, files: this.#parts.demoFiles });
  }

  async readFromWorkbook(): Promise<void> {
    const { workbook } = this.#parts;
    if (workbook === undefined) return;
    await this.#doing("opening", "Reading the workbook", async (counts) => {
      const step = await this.#workbookStep(workbook);
      // Wishes that were not written into the workbook yet are kept.
      if (counts()) this.#start({ ...step, chosen: this.#history?.now.chosen ?? {} }, thisWorkbook);
    });
  }

  takeSheetAs(sheet: string, as: EngineState["sheets"][number]["as"]): Promise<void> {
    return this.#readAgain((asked) => ({ ...asked, takenAs: { ...asked.takenAs, [sheet]: as } }));
  }

  takeHeadingAs(sheet: string, heading: string, column: string | null): Promise<void> {
    return this.#readAgain((asked) => ({
      ...asked,
      mapping: { ...asked.mapping, [sheet]: { ...asked.mapping[sheet], [heading]: column ?? "" } },
    }));
  }

  workOut(how: { readonly prove?: boolean; readonly seconds?: number } = {}): Promise<void> {
    const step = this.#history?.now;
    if (step === undefined) return Promise.resolve();
    const { prove = true, seconds = usualSeconds } = how;
    this.#working = this.#doing("working out", "Judging the loops", async (counts, onShare) => {
      const { jobs } = this.#parts;
      const asked = { survey: withWishes(step.opened.survey, step.chosen), former: step.asked.former, prove, seconds };
      this.#ended = false;
      const worked = await jobs.workOut({ ...asked, compare: false }, onShare);
      if (!counts()) return;
      this.#worked(step, worked);
      if (!prove || this.#ended) return;
      // The plan is shown by now; comparing it takes longer. What is ended there half-way is not shown.
      const compared = await jobs.workOut({ ...asked, compare: true }, onShare);
      if (counts() && !this.#ended) this.#worked(step, compared);
    });
    return this.#working;
  }

  cancel(): void {
    const { progress } = this.#state;
    if (progress === null) return;
    this.#parts.jobs.cancel();
    if (progress.activity !== "working out") {
      this.#run++;
      this.#set({ progress: null });
      return;
    }
    this.#ended = true;
    this.#set({ progress: { ...progress, words: "Ending with the best plan so far", share: null } });
  }

  pin(loopKey: string, kind: PinKind): void {
    this.#wish(loopKey, (wish) => pinned(wish, kind));
  }

  forbid(loopKey: string, kind: PinKind): void {
    this.#wish(loopKey, (wish) => forbidden(wish, kind));
  }

  clearWish(loopKey: string): void {
    this.#wish(loopKey, () => ({ pin: null, forbid: [] }));
  }

  undo(): void {
    this.#history?.undo();
    this.#showStep();
  }

  redo(): void {
    this.#history?.redo();
    this.#showStep();
  }

  setUnits(units: EngineState["units"]): void {
    this.#set({ units });
  }

  setPaper(paper: EngineState["paper"]): void {
    this.#set({ paper });
  }

  dismissProblem(): void {
    this.#set({ problem: null });
  }

  async exportWorkbook(): Promise<FileToSave | null> {
    return this.#save("Writing the workbook", async (asked) => ({
      name: `${this.#fileName("estimate")}.xlsx`,
      type: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
      bytes: new Uint8Array(await this.#parts.jobs.workbook(asked)),
    }));
  }

  async exportOrdersCsv(): Promise<FileToSave | null> {
    return this.#save("Writing the order list", async (asked) => ({
      name: `${this.#fileName("orders")}.csv`,
      type: "text/csv;charset=utf-8",
      bytes: new Uint8Array(new TextEncoder().encode(await this.#parts.jobs.ordersCsv(asked))),
    }));
  }

  async blankSurvey(): Promise<FileToSave | null> {
    let file: FileToSave | null = null;
    await this.#doing("exporting", "Writing a blank survey", async (counts) => {
      const { jobs, today } = this.#parts;
      const bytes = await jobs.blankSurvey({ paper: this.#state.paper, date: today() });
      const type = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
      if (counts()) file = { name: "survey.xlsx", type, bytes: new Uint8Array(bytes) };
    });
    return file;
  }

  async setUpSurvey(): Promise<void> {
    const { workbook } = this.#parts;
    if (workbook === undefined) return;
    await this.#doing("writing", "Setting up the survey", (_, onShare) =>
      workbook.setUp({ paper: this.#state.paper, onShare }),
    );
  }

  async writeToWorkbook(): Promise<void> {
    const { workbook } = this.#parts;
    const step = this.#history?.now;
    if (workbook === undefined || step === undefined) return;
    await this.#working;
    await this.#doing("writing", "Writing the sheets", async (counts, onShare) => {
      const { paper } = this.#state;
      const estimate = await workbook.write({ survey: step.opened.survey, wishes: step.chosen, paper, onShare });
      const written = await this.#workbookStep(workbook);
      const worked = { estimate, ...(await this.#parts.jobs.aside({ survey: written.opened.survey, estimate })) };
      if (counts()) this.#start({ ...written, worked }, thisWorkbook);
    });
  }

  tell(change: Partial<Pick<EngineState, "progress" | "problem">>): void {
    this.#set(change);
  }

  async jumpTo(place: Place): Promise<Jump> {
    const row = place.row === null ? [] : [`row ${place.row}`];
    const words = [place.sheet, ...row, ...(place.column === null ? [] : [place.column])].join(", ");
    const { workbook } = this.#parts;
    if (workbook === undefined) return { shown: false, words };
    try {
      return { shown: await workbook.show(place), words };
    } catch (error) {
      this.#set({ problem: { activity: "jumping", words: problemWords(error) } });
      return { shown: false, words };
    }
  }

  async loopPicture(loopKey: string): Promise<LoopDrawing | null> {
    const { estimate, survey, units } = this.#state;
    if (estimate === null || survey === null) return null;
    const unit = units === "metric" ? "m" : "ft";
    try {
      return await this.#parts.jobs.drawing({ estimate, survey, key: loopKey, unit });
    } catch {
      // A picture is an extra; what it shows stands in words beside it.
      return null;
    }
  }

  async #open(given: {
    readonly source: string;
    readonly demo: boolean;
    readonly files: () => Promise<readonly FileToOpen[]>;
  }): Promise<void> {
    const { source, demo, files } = given;
    await this.#doing("opening", `Reading ${source}`, async (counts) => {
      const read = await this.#parts.jobs.read(await files());
      const asked: OpenSheets = { ...read, takenAs: {}, mapping: {}, former: read.sheets };
      const opened = await this.#parts.jobs.open(asked);
      if (counts()) this.#start({ asked, opened, chosen: {} }, { source, demo });
    });
  }

  async #workbookStep(workbook: WorkbookLink): Promise<Step> {
    const asked: OpenSheets = { ...(await workbook.read()), mapping: this.#history?.now.asked.mapping ?? {} };
    return { asked, opened: await this.#parts.jobs.open(asked), chosen: {} };
  }

  #start(step: Step, from: Pick<EngineState, "source" | "demo">): void {
    this.#history = new History(step);
    this.#shown = undefined;
    this.#state = { ...this.#state, ...nothingOpen, ...from };
    this.#showStep();
  }

  /** Reads the same sheets in another way, as a step that can be taken back. */
  async #readAgain(change: (asked: OpenSheets) => OpenSheets): Promise<void> {
    const step = this.#history?.now;
    if (step === undefined) return;
    await this.#doing("opening", "Reading the survey", async (counts) => {
      const asked = change(step.asked);
      const opened = await this.#parts.jobs.open(asked);
      if (counts()) this.#addStep({ asked, opened, chosen: step.chosen });
    });
  }

  #wish(key: string, change: (wish: LoopWish | undefined) => LoopWish): void {
    const step = this.#history?.now;
    if (!step?.opened.survey.loops.some((loop) => loop.key === key)) return;
    const wish = change(wishesOf(step.opened.survey, step.chosen)[key]);
    this.#addStep({ asked: step.asked, opened: step.opened, chosen: { ...step.chosen, [key]: wish } });
  }

  #addStep(step: Step): void {
    this.#history?.add(step);
    this.#showStep();
  }

  #worked(step: Step, worked: WorkedOut): void {
    step.worked = worked;
    if (this.#history?.now === step) this.#showStep();
  }

  /** Shows the step that now counts; without an estimate of its own the last one stays, marked stale. */
  #showStep(): void {
    const history = this.#history;
    if (history === undefined) return;
    const step = history.now;
    const { opened, chosen, worked } = step;
    const former = this.#shown;
    if (worked !== undefined) this.#shown = step;
    const { estimate } = this.#state;
    const changed = worked !== undefined && former !== undefined && former !== step && estimate !== null;
    const survey = withWishes(opened.survey, chosen);
    this.#set({
      sheets: opened.sheets,
      headings: opened.headings,
      survey,
      queries: worked?.estimate.queries ?? survey.queries,
      wishes: wishesOf(opened.survey, chosen),
      stale: worked === undefined && estimate !== null,
      canUndo: history.canUndo,
      canRedo: history.canRedo,
      ...(worked === undefined ? {} : worked),
      ...(changed ? { before: { totalCents: estimate.price.totalCents, costCents: estimate.price.costCents } } : {}),
    });
  }

  /** Works out what is stale; false when there is no estimate in the end. */
  async #upToDate(): Promise<boolean> {
    await this.#working;
    if (this.#history?.now.worked === undefined) await this.workOut();
    return this.#history?.now.worked !== undefined;
  }

  async #save(words: string, write: (asked: FilesAsked) => Promise<FileToSave>): Promise<FileToSave | null> {
    if (!(await this.#upToDate())) return null;
    let file: FileToSave | null = null;
    await this.#doing("exporting", words, async (counts) => {
      const step = this.#history?.now;
      if (step?.worked === undefined) return;
      const written = await write({
        estimate: step.worked.estimate,
        survey: withWishes(step.opened.survey, step.chosen),
        headings: step.opened.headings,
        former: step.asked.former,
        paper: this.#state.paper,
        date: this.#parts.today(),
      });
      if (counts()) file = written;
    });
    return file;
  }

  /** "Old boathouse" → "old-boathouse-estimate". */
  #fileName(what: string): string {
    const site = this.#state.survey?.site.name ?? "";
    const plain = site
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, "-")
      .replace(/^-|-$/g, "")
      .slice(0, 60);
    return plain === "" ? what : `${plain}-${what}`;
  }

  /** Does one thing; whatever was going on ends. Progress and problems are told to the screen. */
  async #doing(
    activity: Activity,
    words: string,
    work: (counts: () => boolean, onShare: (words: string, share: number | null) => void) => Promise<void>,
  ): Promise<void> {
    if (this.#state.progress !== null) this.#parts.jobs.cancel();
    const run = ++this.#run;
    const counts = () => this.#run === run;
    let most = 0;
    this.#set({ progress: { activity, words, share: null }, problem: null });
    try {
      await work(counts, (said, share) => {
        if (!counts()) return;
        most = Math.max(most, share ?? 0);
        this.#set({ progress: { activity, words: said, share: share === null ? null : most } });
      });
    } catch (error) {
      if (counts()) this.#set({ problem: { activity, words: problemWords(error) } });
    } finally {
      if (counts()) this.#set({ progress: null });
    }
  }

  #set(change: Partial<EngineState>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of [...this.#listeners]) listener(this.#state);
  }
}
