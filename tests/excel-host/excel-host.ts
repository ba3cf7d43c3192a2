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

let client: Client | undefined;

/** An Excel in memory that answers the vendor's unmodified client library. */
export class ExcelHost {
  readonly book: Book;
  /** Requests as sent, oldest first. */
  requests: SentRequest[] = [];
  /** The user is typing in a cell: Excel refuses every request. */
  cellEdit = false;
  failure: Failure | undefined;
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
    this.#client.requirements.isSetSupported = (set, version) => this.supports(set, version);
    this.#client.OfficeExtension.SessionBase._overrideSession = {
      _resolveRequestUrlAndHeaderInfo: () => Promise.resolve({ url: "", headers: {} }),
      _createRequestExecutorOrNull: () => ({
        executeAsync: (_data: unknown, _flags: unknown, message: { readonly Body: RequestBody }) =>
          Promise.resolve(this.#answer(message.Body)),
      }),
    };
    return this.#client.Excel;
  }

  /** As Office.context.requirements.isSetSupported answers. */
  supports(set: string, version = "1.1"): boolean {
    const [major, minor] = version.split(".").map(Number);
    return set === "ExcelApi" && major === 1 && (minor ?? 0) <= this.version;
  }

  get bytes(): number {
    return this.requests.reduce((sum, { bytes }) => sum + bytes, 0);
  }
  get largest(): number {
    return Math.max(0, ...this.requests.map(({ bytes }) => bytes));
  }

  #answer(sent: RequestBody) {
    const text = JSON.stringify(sent);
    const body = JSON.parse(text) as RequestBody;
    const bytes = Buffer.byteLength(text);
    this.requests.push({ bytes, actions: body.Actions.length, text });
    if (this.cellEdit)
      return refused("InvalidOperationInCellEditMode", "Excel is in cell-editing mode. Please exit the edit mode.");
    if (bytes > 5_000_000) return refused("RequestPayloadSizeLimitExceeded", `the request holds ${bytes} bytes`);
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
