import { addressOf, type Box, boxed, boxOf, Cells, columnsOf, contentOf, meet, rowsOf } from "./cells.js";
import { type Chart, chartCollection, type Shape, shapeCollection } from "./drawings.js";
import { checkFormula } from "./formulas.js";
import {
  aColour,
  aFlag,
  aNumber,
  aText,
  atMost,
  HostError,
  type HostObject,
  invalid,
  isHostObject,
  oneOf,
  record,
  settings,
  unknownMember,
} from "./host-object.js";
import { type Table, tableCollection } from "./table.js";
import { type Book, namedItems } from "./workbook.js";

type Enums = typeof Excel;

export interface Validation {
  readonly box: Box;
  readonly bag: Map<string, unknown>;
}
export interface Highlight {
  readonly box: Box;
  readonly bag: Map<string, unknown>;
  readonly font: Map<string, unknown>;
  readonly fill: Map<string, unknown>;
}

/** One worksheet. Fields are for tests to look at; the add-in sees `face`. */
export class Sheet {
  readonly book: Book;
  readonly id: string;
  name: string;
  readonly cells = new Cells();
  tables: Table[] = [];
  merges: Box[] = [];
  validations: Validation[] = [];
  highlights: Highlight[] = [];
  links = new Map<string, unknown>();
  charts: Chart[] = [];
  shapes: Shape[] = [];
  breaks: Box[] = [];
  frozen: Box | undefined;
  printArea: Box | undefined;
  printTitleRows: string | undefined;
  readonly names = new Map<string, Map<string, unknown>>();
  readonly bag = new Map<string, unknown>([["Visibility", "Visible"]]);
  readonly page = new Map<string, unknown>();
  readonly headers = new Map<string, unknown>();
  readonly columnWidths = new Map<number, number>();
  readonly rowHeights = new Map<number, number>();
  protected: { readonly options: unknown; readonly password: string } | undefined;

  constructor(book: Book, name: string, id: string) {
    this.book = book;
    this.name = name;
    this.id = id;
  }

  get enums(): Enums {
    return this.book.enums;
  }

  /** Refuses a change of cells that the protection locks. */
  allowChange(box: Box): void {
    if (this.protected === undefined) return;
    for (let row = box.top; row <= box.bottom; row++)
      for (let column = box.left; column <= box.right; column++)
        if (this.cells.look(row, column, "Locked") !== false) throw accessDenied();
  }
  allowLooks(): void {
    if (this.protected !== undefined) throw accessDenied();
  }

  grid<T>(box: Box, of: (row: number, column: number) => T): T[][] {
    return Array.from({ length: rowsOf(box) }, (_, row) =>
      Array.from({ length: columnsOf(box) }, (_, column) => of(box.top + row, box.left + column)),
    );
  }

  formatAt(row: number, column: number): string {
    return (this.cells.look(row, column, "NumberFormat") as string | undefined) ?? "General";
  }

  write(box: Box, written: unknown, what: string): void {
    this.allowChange(box);
    each(box, written, what, (row, column, value) => {
      const format = this.formatAt(row, column);
      const content = contentOf(value, format);
      if (content?.formula !== undefined) checkFormula(this.book, content.formula);
      const table = this.tables.find(({ box: at }) => row === at.top && column >= at.left && column <= at.right);
      if (table !== undefined) {
        const text = content?.formula === undefined ? String(content?.value ?? "") : "";
        if (text === "")
          throw invalid(
            `the heading ${addressOf({ top: row, left: column, bottom: row, right: column })} of ${table.name} needs text`,
          );
      }
      if (
        this.merges.some((one) => !(one.top === row && one.left === column) && meet(one, cell(row, column))) &&
        content?.value !== ""
      )
        throw invalid("a covered cell of a merged range takes no value");
      this.cells.write(row, column, content);
    });
    for (const table of this.tables) if (meet({ ...table.box, bottom: table.box.top }, box)) table.checkHeadings();
  }

  range(box: Box): HostObject {
    return rangeFace(this, boxed(box));
  }

  get face(): HostObject {
    const enums = this.enums;
    const bag = settings("Worksheet", this.bag, {
      Visibility: oneOf(enums.SheetVisibility),
      TabColor: aColour,
      Gridlines: aFlag,
      Position: aNumber,
    });
    return {
      ...bag,
      id: this.id,
      get: {
        ...bag.get,
        Id: () => this.id,
        Name: () => this.name,
        Position: () => this.book.sheets.indexOf(this),
      },
      set: {
        ...bag.set,
        Name: (value) => this.book.rename(this, value),
        Position: (value) => this.book.move(this, value),
      },
      child: {
        Tables: () => tableCollection(this.book, this),
        Protection: () => this.protectionFace(),
        FreezePanes: () => this.freezeFace(),
        PageLayout: () => this.pageFace(),
        HorizontalPageBreaks: () => ({
          kind: "PageBreakCollection",
          items: () => this.breaks.map((box) => ({ kind: "PageBreak", get: { RowIndex: () => box.top } })),
          call: {
            RemovePageBreaks: () => {
              this.breaks = [];
            },
            Add: (at) => {
              this.breaks.push(toBox(this, at));
              return { kind: "PageBreak" };
            },
          },
        }),
        Charts: () => chartCollection(this),
        Shapes: () => shapeCollection(this),
        Names: () => namedItems(this.book, this.names),
      },
      call: {
        Activate: () => {
          this.book.active = this;
        },
        Delete: () => this.book.remove(this),
        GetRange: (address) =>
          this.range(address === undefined || address === null ? boxOf("A1:XFD1048576") : boxOf(String(address))),
        GetRangeByIndexes: (top, left, height, width) => {
          const [t, l, h, w] = [top, left, height, width].map(Number) as [number, number, number, number];
          return this.range({ top: t, left: l, bottom: t + h - 1, right: l + w - 1 });
        },
        GetRanges: (addresses) => {
          const text = String(addresses);
          if (text.length > 255) throw invalid(`an address list of ${text.length} characters`);
          return areasFace(this, text.split(",").map(boxOf));
        },
        GetUsedRangeOrNullObject: (valuesOnly) => {
          if (valuesOnly !== true) throw unknownMember("Worksheet", "used range with formats");
          const used = this.cells.used();
          return used === undefined ? null : this.range(used);
        },
      },
    };
  }

  protectionFace(): HostObject {
    return {
      kind: "WorksheetProtection",
      get: { Protected: () => this.protected !== undefined, Options: () => this.protected?.options ?? null },
      call: {
        Protect: (options, password) => {
          if (this.protected !== undefined) throw new HostError("InvalidOperation", "the sheet is protected already");
          record(
            Object.fromEntries(
              [
                "allowFormatColumns",
                "allowFormatRows",
                "allowSort",
                "allowAutoFilter",
                "allowFormatCells",
                "allowInsertRows",
              ].map((name) => [name, aFlag]),
            ),
          )(options, "protection options");
          this.protected = { options, password: String(password ?? "") };
        },
        Unprotect: (password) => {
          if (this.protected !== undefined && this.protected.password !== String(password ?? ""))
            throw new HostError("AccessDenied", "The password is not correct.");
          this.protected = undefined;
        },
      },
    };
  }

  freezeFace(): HostObject {
    const freeze = (box: Box | undefined) => {
      this.frozen = box;
    };
    return {
      kind: "WorksheetFreezePanes",
      call: {
        FreezeAt: (at) => freeze(toBox(this, at)),
        FreezeRows: (count) => freeze({ top: 0, left: 0, bottom: Number(count) - 1, right: -1 }),
        FreezeColumns: (count) => freeze({ top: 0, left: 0, bottom: -1, right: Number(count) - 1 }),
        Unfreeze: () => freeze(undefined),
      },
    };
  }

  pageFace(): HostObject {
    const enums = this.enums;
    return settings(
      "PageLayout",
      this.page,
      {
        Orientation: oneOf(enums.PageOrientation),
        PaperSize: oneOf(enums.PaperType),
        Zoom: record({ horizontalFitToPages: aNumber, verticalFitToPages: aNumber, scale: aNumber }),
        ...Object.fromEntries(
          ["Left", "Right", "Top", "Bottom", "Header", "Footer"].map((side) => [`${side}Margin`, aNumber]),
        ),
      },
      {
        child: {
          HeadersFooters: () => ({
            kind: "HeaderFooterGroup",
            child: {
              DefaultForAllPages: () =>
                settings(
                  "HeaderFooter",
                  this.headers,
                  Object.fromEntries(
                    ["Left", "Center", "Right"].flatMap((side) => [
                      [`${side}Header`, atMost(255)],
                      [`${side}Footer`, atMost(255)],
                    ]),
                  ),
                ),
            },
          }),
        },
        call: {
          SetPrintArea: (at) => {
            this.printArea = toBox(this, at);
          },
          SetPrintTitleRows: (at) => {
            toBox(this, at);
            this.printTitleRows = String(at);
          },
        },
      },
    );
  }
}

const cell = (row: number, column: number): Box => ({ top: row, left: column, bottom: row, right: column });
const accessDenied = () => new HostError("AccessDenied", "The sheet is protected; the cells cannot be changed.");

/** Walks over what was written to a range: one value for all, or one for each cell; null leaves a cell as it is. */
function each(
  box: Box,
  written: unknown,
  what: string,
  put: (row: number, column: number, value: unknown) => void,
): void {
  if (!Array.isArray(written)) {
    for (let row = box.top; row <= box.bottom; row++)
      for (let column = box.left; column <= box.right; column++) if (written !== null) put(row, column, written);
    return;
  }
  if (written.length !== rowsOf(box) || written.some((row) => !Array.isArray(row) || row.length !== columnsOf(box)))
    throw invalid(
      `${what}: the number of rows or columns in the input array doesn't match the size or dimensions of the range`,
    );
  written.forEach((values: unknown[], row) => {
    values.forEach((value, column) => {
      if (value !== null) put(box.top + row, box.left + column, value);
    });
  });
}

const boxes = new WeakMap<HostObject, { readonly sheet: Sheet; readonly box: Box }>();

/** The box of a range or of an address on this sheet. */
export function toBox(sheet: Sheet, at: unknown): Box {
  if (typeof at === "string") return boxOf(at);
  const found = isHostObject(at) ? boxes.get(at) : undefined;
  if (found === undefined) throw invalid("expected a range or its address");
  if (found.sheet !== sheet) throw invalid("the range stands on another sheet");
  return found.box;
}

/** Box and sheet of a range, wherever it stands. */
export function rangeAt(at: unknown): { readonly sheet: Sheet; readonly box: Box } {
  const found = isHostObject(at) ? boxes.get(at) : undefined;
  if (found === undefined) throw invalid("expected a range");
  return found;
}

function rangeFace(sheet: Sheet, box: Box): HostObject {
  const { cells } = sheet;
  const value = (row: number, column: number) => {
    const content = cells.content(row, column);
    if (content?.formula !== undefined) return sheet.book.calculated.get(content.formula) ?? "#BUSY!";
    return content?.value ?? "";
  };
  const face: HostObject = {
    kind: "Range",
    byReference: true,
    get: {
      Address: () => `${sheet.name}!${addressOf(box)}`,
      RowIndex: () => box.top,
      ColumnIndex: () => box.left,
      RowCount: () => rowsOf(box),
      ColumnCount: () => columnsOf(box),
      CellCount: () => rowsOf(box) * columnsOf(box),
      Values: () => sheet.grid(box, value),
      Formulas: () =>
        sheet.grid(box, (row, column) => {
          const content = cells.content(row, column);
          return content?.formula ?? content?.value ?? "";
        }),
      NumberFormat: () => sheet.grid(box, (row, column) => sheet.formatAt(row, column)),
      Text: () => sheet.grid(box, (row, column) => String(value(row, column))),
      Top: () => sumBefore(sheet.rowHeights, box.top, 15),
      Left: () => sumBefore(sheet.columnWidths, box.left, 48),
      Hyperlink: () => sheet.links.get(addressOf(box)) ?? null,
    },
    set: {
      Values: (written) => sheet.write(box, written, "values"),
      Formulas: (written) => sheet.write(box, written, "formulas"),
      NumberFormat: (written) => {
        sheet.allowLooks();
        each(box, written, "numberFormat", (row, column, format) =>
          cells.setLook(cell(row, column), "NumberFormat", aText(format, "numberFormat")),
        );
      },
      Hyperlink: (link) => {
        record({ documentReference: aText, textToDisplay: aText, screenTip: aText })(link, "hyperlink");
        sheet.links.set(addressOf(box), link);
        // Excel writes a text of its own into the cell of a new link.
        cells.write(box.top, box.left, { value: String((link as { documentReference?: string }).documentReference) });
      },
    },
    child: {
      Format: () => formatFace(sheet, [box]),
      DataValidation: () => validationFace(sheet, box),
      ConditionalFormats: () => highlightsFace(sheet, box),
      Worksheet: () => sheet.face,
    },
    call: {
      GetCell: (row, column) => sheet.range(cell(box.top + Number(row), box.left + Number(column))),
      GetRow: (row) => sheet.range({ ...box, top: box.top + Number(row), bottom: box.top + Number(row) }),
      GetColumn: (column) => sheet.range({ ...box, left: box.left + Number(column), right: box.left + Number(column) }),
      GetResizedRange: (rows, columns) =>
        sheet.range({ ...box, bottom: box.bottom + Number(rows), right: box.right + Number(columns) }),
      GetBoundingRect: (other) => {
        const at = toBox(sheet, other);
        return sheet.range({
          top: Math.min(box.top, at.top),
          left: Math.min(box.left, at.left),
          bottom: Math.max(box.bottom, at.bottom),
          right: Math.max(box.right, at.right),
        });
      },
      // The client asks this before it writes more than 1,500 rows piece by piece.
      _ValidateArraySize: (rows, columns) => {
        if (rows !== rowsOf(box) || columns !== columnsOf(box)) throw invalid("array size");
      },
      Clear: (what) => {
        oneOf(sheet.enums.ClearApplyTo)(what, "clear");
        sheet.allowLooks();
        if (what === "Formats" || what === "All") cells.clearLooks(box);
        if (what === "Hyperlinks" || what === "All" || what === "RemoveHyperlinks")
          sheet.links = new Map([...sheet.links].filter(([at]) => !meet(boxOf(at), box)));
        if (what === "Contents" || what === "All") sheet.write(box, "", "clear");
      },
      Merge: (across) => {
        if (across !== false) throw unknownMember("Range", "merge across");
        sheet.allowLooks();
        if (sheet.merges.some((one) => meet(one, box))) throw invalid("merged ranges overlap");
        if (sheet.tables.some((table) => meet(table.box, box))) throw invalid("cells of a table cannot be merged");
        sheet.merges.push(box);
      },
      GetMergedAreasOrNullObject: () => {
        const merged = sheet.merges.filter((one) => meet(one, box));
        if (merged.length > 512) throw invalid("more than 512 merged areas in one range");
        return merged.length === 0 ? null : areasFace(sheet, merged);
      },
      Unmerge: () => {
        sheet.allowLooks();
        sheet.merges = sheet.merges.filter((one) => !meet(one, box));
      },
      Select: () => {
        sheet.book.selected = { sheet, box };
      },
    },
  };
  boxes.set(face, { sheet, box });
  return face;
}

function sumBefore(sizes: ReadonlyMap<number, number>, before: number, usual: number): number {
  let sum = 0;
  for (let index = 0; index < before; index++) sum += sizes.get(index) ?? usual;
  return sum;
}

function areasFace(sheet: Sheet, all: readonly Box[]): HostObject {
  return {
    kind: "RangeAreas",
    byReference: true,
    get: { AreaCount: () => all.length },
    child: {
      Format: () => formatFace(sheet, all),
      Areas: () => ({ kind: "RangeCollection", items: () => all.map((box) => sheet.range(box)) }),
    },
  };
}

/** Looks of one or several areas; what is set holds for every cell of them. */
function formatFace(sheet: Sheet, all: readonly Box[]): HostObject {
  const enums = sheet.enums;
  const { cells } = sheet;
  const first = all[0] ?? cell(0, 0);
  const looks = (
    kind: string,
    guards: Readonly<Record<string, (value: unknown, name: string) => unknown>>,
    prefix = "",
  ) => ({
    kind,
    get: Object.fromEntries(Object.keys(guards).map((name) => [name, () => cells.lookOf(first, `${prefix}${name}`)])),
    set: Object.fromEntries(
      Object.entries(guards).map(([name, guard]) => [
        name,
        (value: unknown) => {
          sheet.allowLooks();
          for (const box of all) cells.setLook(box, `${prefix}${name}`, guard(value, `${kind}.${name}`));
        },
      ]),
    ),
  });
  const border = (side: string): HostObject =>
    looks(
      "RangeBorder",
      { Style: oneOf(enums.BorderLineStyle), Weight: oneOf(enums.BorderWeight), Color: aColour },
      `${oneOf(enums.BorderIndex)(side, "border")}.`,
    );
  const own = looks("RangeFormat", {
    WrapText: aFlag,
    HorizontalAlignment: oneOf(enums.HorizontalAlignment),
    VerticalAlignment: oneOf(enums.VerticalAlignment),
    IndentLevel: aNumber,
  });
  const sizes = (to: Map<number, number>, from: "top" | "left", until: "bottom" | "right") => (value: unknown) => {
    sheet.allowLooks();
    for (const box of all)
      for (let index = box[from]; index <= box[until]; index++) to.set(index, aNumber(value, "size") as number);
  };
  return {
    ...own,
    set: {
      ...own.set,
      ColumnWidth: sizes(sheet.columnWidths, "left", "right"),
      RowHeight: sizes(sheet.rowHeights, "top", "bottom"),
    },
    child: {
      Font: () =>
        looks(
          "RangeFont",
          {
            Name: aText,
            Size: aNumber,
            Bold: aFlag,
            Italic: aFlag,
            Underline: oneOf(enums.RangeUnderlineStyle),
            Color: aColour,
          },
          "Font.",
        ),
      Fill: () => ({
        ...looks("RangeFill", { Color: aColour }, "Fill."),
        call: {
          Clear: () => {
            sheet.allowLooks();
            for (const box of all) cells.setLook(box, "Fill.Color", undefined);
          },
        },
      }),
      Borders: () => ({ kind: "RangeBorderCollection", call: { GetItem: (side: unknown) => border(String(side)) } }),
      Protection: () => looks("FormatProtection", { Locked: aFlag }),
    },
    call: {
      AutofitColumns: () => undefined,
      AutofitRows: () => undefined,
    },
  };
}

function validationFace(sheet: Sheet, box: Box): HostObject {
  const one = sheet.validations.find((each) => addressOf(each.box) === addressOf(box)) ?? { box, bag: new Map() };
  const source = (value: unknown, name: string) => {
    if (typeof value === "number") return aNumber(value, name);
    const text = aText(value, name) as string;
    if (!text.startsWith("=") && text.length > 255) throw invalid(`${name}: a list of more than 255 characters`);
    return text;
  };
  const limits = record({ formula1: source, formula2: source, operator: oneOf(sheet.enums.DataValidationOperator) });
  return settings(
    "DataValidation",
    one.bag,
    {
      Rule: (value, name) => {
        sheet.allowLooks();
        if (!sheet.validations.includes(one)) sheet.validations.push(one);
        return record({
          list: record({ inCellDropDown: aFlag, source }),
          wholeNumber: limits,
          decimal: limits,
          textLength: limits,
        })(value, name);
      },
      Prompt: record({ showPrompt: aFlag, title: atMost(32), message: atMost(255) }),
      ErrorAlert: record({
        showAlert: aFlag,
        style: oneOf(sheet.enums.DataValidationAlertStyle),
        title: atMost(32),
        message: atMost(255),
      }),
      IgnoreBlanks: aFlag,
    },
    {
      call: {
        Clear: () => {
          sheet.allowLooks();
          sheet.validations = sheet.validations.filter((each) => !meet(each.box, box));
        },
      },
    },
  );
}

function highlightsFace(sheet: Sheet, box: Box): HostObject {
  return {
    kind: "ConditionalFormatCollection",
    call: {
      ClearAll: () => {
        sheet.allowLooks();
        sheet.highlights = sheet.highlights.filter((each) => !meet(each.box, box));
      },
      Add: (type) => {
        if (type !== sheet.enums.ConditionalFormatType.custom) throw unknownMember("ConditionalFormat", String(type));
        const one: Highlight = { box, bag: new Map(), font: new Map(), fill: new Map() };
        sheet.highlights.push(one);
        return {
          kind: "ConditionalFormat",
          id: `cf${sheet.highlights.length}`,
          child: {
            Custom: () => ({
              kind: "CustomConditionalFormat",
              child: {
                Rule: () => settings("ConditionalFormatRule", one.bag, { Formula: aText }),
                Format: () => ({
                  kind: "ConditionalRangeFormat",
                  child: {
                    Font: () =>
                      settings("ConditionalRangeFont", one.font, { Bold: aFlag, Italic: aFlag, Color: aColour }),
                    Fill: () => settings("ConditionalRangeFill", one.fill, { Color: aColour }),
                  },
                }),
              },
            }),
          },
        };
      },
    },
  };
}
