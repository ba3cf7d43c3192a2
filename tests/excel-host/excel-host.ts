import { HostError, type HostObject } from "./host-object.js";
import { type Client, loadClient } from "./load-client.js";
import { type Action, carryOut, type RequestBody } from "./wire.js";
import { Book } from "./workbook.js";

/** What goes wrong, and when. */
export interface Failure {
  /** Number of the request, from 1 on. */
  readonly request: number;
  /** Number of the action in it, from 0 on; absent = the request is refused before anything is done. */
  readonly action?: number;
  readonly code?: string;
  readonly message?: string;
}

/** One request as it went over the wire. */
export interface SentRequest {
  readonly bytes: number;
  readonly actions: number;
  readonly text: string;
}

/** Excel on the web takes and gives at most this much at once. [bytes] */
const mostBytes = 5_000_000;
/** Flag of a request that waits until no cell is edited any more. */
const delayForCellEdit = 64;

let client: Client | undefined;

/** An Excel in memory that answers the vendor's unmodified client library. */
export class ExcelHost {
  readonly book: Book;
  /** Requests as sent, oldest first. */
  requests: SentRequest[] = [];
  /** The user is typing in a cell: Excel refuses every request. */
  cellEdit = false;
  failure: Failure | undefined;
  /** Size of the largest answer. [bytes] */
  largestAnswer = 0;
  /** A request that came while the user typed waited for him, as it had asked. */
  waited = 0;
  /** Highest ExcelApi requirement set that the client asked for and got. */
  highestAsked = 0;
  /** Does something between two requests, as a user would. */
  between: ((request: number) => void) | undefined;
  /** Highest ExcelApi requirement set the host claims. */
  version = 17;
  readonly #client: Client;
  readonly #references = new Map<string, HostObject>();
  /** References handed out so far; none is used twice. */
  #given = 0;

  constructor() {
    client ??= loadClient();
    this.#client = client;
    this.book = new Book(client.Excel);
  }

  /** The library's namespace, connected to this host. */
  get excel(): typeof Excel {
    this.#client.requirements.isSetSupported = (set, version) => {
      const known = this.supports(set, version);
      const minor = Number(version?.split(".")[1] ?? 0);
      if (known && set === "ExcelApi") this.highestAsked = Math.max(this.highestAsked, minor);
      return known;
    };
    this.#client.OfficeExtension.SessionBase._overrideSession = {
      _resolveRequestUrlAndHeaderInfo: () => Promise.resolve({ url: "", headers: {} }),
      _createRequestExecutorOrNull: () => ({
        executeAsync: (_data: unknown, flags: number, message: { readonly Body: RequestBody }) =>
          Promise.resolve(this.#answer(message.Body, (flags & delayForCellEdit) !== 0)),
      }),
    };
    return this.#client.Excel;
  }

  /** As Office.context.requirements.isSetSupported answers. */
  supports(set: string, version = "1.1"): boolean {
    const [major, minor] = version.split(".").map(Number);
    if (set === "DelayForCellEdit") return true;
    return set === "ExcelApi" && major === 1 && (minor ?? 0) <= this.version;
  }

  get bytes(): number {
    return this.requests.reduce((sum, { bytes }) => sum + bytes, 0);
  }
  get largest(): number {
    return Math.max(0, ...this.requests.map(({ bytes }) => bytes));
  }

  #answer(sent: RequestBody, waits: boolean) {
    const text = JSON.stringify(sent);
    const body = JSON.parse(text) as RequestBody;
    const bytes = Buffer.byteLength(text);
    this.requests.push({ bytes, actions: body.Actions.length, text });
    this.between?.(this.requests.length);
    if (this.cellEdit && waits) {
      this.waited++;
      this.cellEdit = false;
    }
    if (this.cellEdit)
      return refused("InvalidOperationInCellEditMode", "Excel is in cell-editing mode. Please exit the edit mode.");
    if (bytes > mostBytes) return refused("RequestPayloadSizeLimitExceeded", `the request holds ${bytes} bytes`);
    const { failure } = this;
    const fails = failure?.request === this.requests.length;
    const code = failure?.code ?? "GeneralException";
    const message = failure?.message ?? "There was an internal error while processing the request.";
    if (fails && failure.action === undefined) return refused(code, message);
    const before = (_action: Action, index: number) => {
      if (fails && index >= (failure.action ?? 0)) throw new HostError(code, message);
    };
    const reference = () => `ref${++this.#given}`;
    const model = { root: this.book.root, references: this.#references, reference };
    const { results, error } = carryOut(body, model, before);
    const answered = Buffer.byteLength(JSON.stringify(results));
    this.largestAnswer = Math.max(this.largestAnswer, answered);
    if (answered > mostBytes) return refused("ResponsePayloadSizeLimitExceeded", `the answer holds ${answered} bytes`);
    if (error === undefined)
      return { ErrorCode: "", ErrorMessage: "", Headers: {}, HttpStatusCode: 200, Body: { Results: results } };
    return refused(error.code, error.message, results, error.index);
  }
}

function refused(code: string, message: string, results: unknown[] = [], index = 0) {
  return {
    ErrorCode: code,
    ErrorMessage: message,
    Headers: {},
    HttpStatusCode: 400,
    Body: { Results: results, Error: { Code: code, Message: message, Location: "", ActionIndex: index } },
  };
}
