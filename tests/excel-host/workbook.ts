import { addressOf, type Box, lettersOf } from "./cells.js";
import { aFlag, aText, HostError, type HostObject, invalid, isHostObject, oneOf, settings } from "./host-object.js";
import { rangeAt, Sheet } from "./sheet.js";
import { type Table, tableCollection } from "./table.js";

/** The workbook. Fields are for tests to look at. */
export class Book {
  readonly enums: typeof Excel;
  sheets: Sheet[] = [];
  active: Sheet | undefined;
  selected: { readonly sheet: Sheet; readonly box: Box } | undefined;
  counter = 0;
  readonly names = new Map<string, Map<string, unknown>>();
  readonly runtime = new Map<string, unknown>([["EnableEvents", true]]);
  readonly application = new Map<string, unknown>([["CalculationMode", "Automatic"]]);
  /** What formulas show; a formula that no test gave a value shows #BUSY!. */
  readonly calculated = new Map<string, unknown>();
  /** The structure is protected: no sheet can be added, renamed, moved or deleted. */
  structureLocked = false;
  suspensions = 0;
  calculations = 0;

  constructor(enums: typeof Excel) {
    this.enums = enums;
    this.active = this.add("Sheet1");
  }

  tables(): Table[] {
    return this.sheets.flatMap(({ tables }) => tables);
  }

  allowStructure(): void {
    if (this.structureLocked) throw new HostError("AccessDenied", "The structure of the workbook is protected.");
  }

  add(name?: unknown): Sheet {
    this.allowStructure();
    const wanted = this.legalName(name ?? `Sheet${this.sheets.length + 1}`, undefined);
    const sheet = new Sheet(this, wanted, `{S${++this.counter}}`);
    this.sheets.push(sheet);
    return sheet;
  }

  legalName(name: unknown, own: Sheet | undefined): string {
    const text = aText(name, "sheet name") as string;
    if (text === "" || text.length > 31 || /[\\/?*[\]:]/.test(text) || /^'|'$/.test(text))
      throw invalid(`${text} is no name for a sheet`);
    if (this.sheets.some((sheet) => sheet !== own && sheet.name.toLowerCase() === text.toLowerCase()))
      throw new HostError("ItemAlreadyExists", `there is a sheet ${text} already`);
    return text;
  }

  rename(sheet: Sheet, name: unknown): void {
    this.allowStructure();
    const former = sheet.name;
    sheet.name = this.legalName(name, sheet);
    this.renameInFormulas(former, sheet.name);
  }

  /** Formulas and names follow a renamed sheet. */
  renameInFormulas(former: string, now: string): void {
    const quoted = (name: string) => `'${name.replaceAll("'", "''")}'!`;
    const follow = (formula: string) => formula.replaceAll(quoted(former), quoted(now));
    for (const { cells } of this.sheets) cells.eachFormula(follow);
    for (const bag of this.names.values()) bag.set("Formula", follow(String(bag.get("Formula"))));
  }

  move(sheet: Sheet, to: unknown): void {
    const rest = this.sheets.filter((one) => one !== sheet);
    rest.splice(Number(to), 0, sheet);
    this.sheets = rest;
  }

  remove(sheet: Sheet): void {
    this.allowStructure();
    if (this.sheets.filter((one) => one.bag.get("Visibility") === "Visible" && one !== sheet).length === 0)
      throw invalid("a workbook needs a sheet that shows");
    this.sheets = this.sheets.filter((one) => one !== sheet);
    if (this.active === sheet) this.active = this.sheets[0];
  }

  renameTable(table: Table, name: unknown): void {
    const text = aText(name, "table name") as string;
    if (!/^[\p{L}_\\][\p{L}\p{N}_.\\]*$/u.test(text) || text.length > 255)
      throw invalid(`${text} is no name for a table`);
    if (this.tables().some((one) => one !== table && one.name.toLowerCase() === text.toLowerCase()))
      throw new HostError("ItemAlreadyExists", `there is a table ${text} already`);
    table.name = text;
  }

  get face(): HostObject {
    return {
      kind: "Workbook",
      child: {
        Worksheets: () => this.sheetsFace(),
        Tables: () => tableCollection(this),
        Names: () => namedItems(this, this.names),
        Application: () => this.applicationFace(),
        Protection: () => ({ kind: "WorkbookProtection", get: { Protected: () => this.structureLocked } }),
      },
    };
  }

  /** The root of the wire: context.workbook, context.runtime and context.application hang on it. */
  get root(): HostObject {
    const book = this.face;
    return {
      ...book,
      child: {
        ...book.child,
        Workbook: () => this.face,
        Application: () => this.applicationFace(),
        _Runtime: () => settings("Runtime", this.runtime, { EnableEvents: aFlag }),
      },
    };
  }

  applicationFace(): HostObject {
    return settings(
      "Application",
      this.application,
      { CalculationMode: oneOf(this.enums.CalculationMode) },
      {
        call: {
          SuspendApiCalculationUntilNextSync: () => void this.suspensions++,
          SuspendScreenUpdatingUntilNextSync: () => undefined,
          Calculate: (type) => {
            oneOf(this.enums.CalculationType)(type, "calculation type");
            this.calculations++;
          },
        },
      },
    );
  }

  sheetsFace(): HostObject {
    const find = (name: unknown) =>
      this.sheets.find((sheet) => sheet.name.toLowerCase() === String(name).toLowerCase() || sheet.id === name);
    return {
      kind: "WorksheetCollection",
      get: { Count: () => this.sheets.length },
      items: () => this.sheets.map(({ face }) => face),
      call: {
        GetItem: (name) => {
          const sheet = find(name);
          if (sheet === undefined) throw new HostError("ItemNotFound", `there is no sheet ${String(name)}`);
          return sheet.face;
        },
        GetItemOrNullObject: (name) => find(name)?.face ?? null,
        GetActiveWorksheet: () => this.active?.face ?? null,
        Add: (name) => this.add(name).face,
      },
    };
  }
}

/** Names of the book or of one sheet. */
export function namedItems(book: Book, names: Map<string, Map<string, unknown>>): HostObject {
  const face = (name: string, bag: Map<string, unknown>): HostObject => {
    const own = settings("NamedItem", bag, { Formula: aText, Visible: aFlag });
    return {
      ...own,
      id: name,
      get: { ...own.get, Name: () => name },
      call: { Delete: () => void names.delete(key(name)) },
    };
  };
  const key = (name: unknown) => String(name).toLowerCase();
  return {
    kind: "NamedItemCollection",
    items: () => [...names.values()].map((bag) => face(String(bag.get("Name")), bag)),
    call: {
      GetItem: (name) => {
        const bag = names.get(key(name));
        if (bag === undefined) throw new HostError("ItemNotFound", `there is no name ${String(name)}`);
        return face(String(bag.get("Name")), bag);
      },
      GetItemOrNullObject: (name) => {
        const bag = names.get(key(name));
        return bag === undefined ? null : face(String(bag.get("Name")), bag);
      },
      Add: (name, at) => {
        const text = aText(name, "name") as string;
        if (!/^[\p{L}_][\p{L}\p{N}_.]*$/u.test(text) || /^[a-z]{1,3}\d+$/i.test(text))
          throw invalid(`${text} is no name`);
        if (names.has(key(text))) throw new HostError("ItemAlreadyExists", `there is a name ${text} already`);
        const bag = new Map<string, unknown>([
          ["Name", text],
          ["Formula", isHostObject(at) ? formulaOf(at) : aText(at, "reference")],
          ["Visible", true],
        ]);
        names.set(key(text), bag);
        return face(text, bag);
      },
    },
  };
  function formulaOf(at: unknown): string {
    const { sheet, box } = rangeAt(at);
    const cell = `$${lettersOf(box.left)}$${box.top + 1}`;
    const end = addressOf(box).includes(":") ? `:$${lettersOf(box.right)}$${box.bottom + 1}` : "";
    if (!book.sheets.includes(sheet)) throw invalid("the sheet is gone");
    return `='${sheet.name.replaceAll("'", "''")}'!${cell}${end}`;
  }
}
