import { addressOf, type Box, boxed, columnsOf, meet, rowsOf } from "./cells.js";
import { aFlag, aText, HostError, type HostObject, invalid, settings } from "./host-object.js";
import { rangeAt, type Sheet, toBox } from "./sheet.js";
import type { Book } from "./workbook.js";

/** A table over cells of a sheet. */
export class Table {
  readonly sheet: Sheet;
  readonly id: string;
  name: string;
  /** With heading and totals row. */
  box: Box;
  totals = false;
  readonly bag = new Map<string, unknown>([["ShowFilterButton", true]]);

  constructor(sheet: Sheet, box: Box, id: string, name: string) {
    this.sheet = sheet;
    this.box = box;
    this.id = id;
    this.name = name;
    this.checkHeadings();
  }

  headings(): string[] {
    const { top, left, right } = this.box;
    return Array.from({ length: right - left + 1 }, (_, index) =>
      String(this.sheet.cells.content(top, left + index)?.value ?? ""),
    );
  }

  /** Excel would invent or number headings; the add-in must never need that. */
  checkHeadings(): void {
    const seen = new Set<string>();
    for (const heading of this.headings()) {
      if (heading === "") throw invalid(`a heading of ${this.name} is empty`);
      if (seen.has(heading.toLowerCase())) throw invalid(`the heading ${heading} stands twice in ${this.name}`);
      seen.add(heading.toLowerCase());
    }
  }

  get body(): Box {
    return { ...this.box, top: this.box.top + 1, bottom: this.box.bottom - (this.totals ? 1 : 0) };
  }

  requireBlank(box: Box): void {
    for (const table of this.sheet.tables)
      if (table !== this && meet(table.box, box)) throw invalid(`${this.name} would run into ${table.name}`);
    const filled = this.sheet.grid(box, (row, column) => this.sheet.cells.content(row, column)).flat();
    if (filled.some((content) => content !== undefined))
      throw invalid(`${addressOf(box)} is not blank: Excel would push cells about`);
  }

  setTotals(wanted: boolean): void {
    if (wanted === this.totals) return;
    this.sheet.allowLooks();
    const row = { ...this.box, top: this.box.bottom + 1, bottom: this.box.bottom + 1 };
    if (wanted) {
      this.requireBlank(row);
      this.box = { ...this.box, bottom: row.bottom };
    } else {
      for (let column = row.left; column <= row.right; column++)
        this.sheet.cells.write(this.box.bottom, column, undefined);
      this.box = { ...this.box, bottom: this.box.bottom - 1 };
    }
    this.totals = wanted;
  }

  resize(at: Box): void {
    this.sheet.allowLooks();
    if (this.totals) throw invalid("this host resizes no table with its totals row showing");
    if (at.top !== this.box.top) throw invalid("the headings must stay in their row");
    if (!meet(at, this.box)) throw invalid("the new area must overlap the old one");
    if (rowsOf(at) < 2) throw invalid("a table needs a row of data");
    for (const table of this.sheet.tables)
      if (table !== this && meet(table.box, at)) throw invalid("A table can't overlap another table.");
    this.box = at;
    this.checkHeadings();
  }

  addRows(values: readonly (readonly unknown[])[]): void {
    this.sheet.allowLooks();
    if (this.totals) throw invalid("this host adds no rows above a totals row");
    const added = { ...this.box, top: this.box.bottom + 1, bottom: this.box.bottom + values.length };
    this.requireBlank(added);
    this.box = { ...this.box, bottom: added.bottom };
    for (let column = this.box.left; column <= this.box.right; column++) {
      const strip = { ...added, left: column, right: column };
      this.sheet.cells.setLook(strip, "NumberFormat", this.sheet.formatAt(added.top - 1, column));
      this.sheet.cells.setLook(strip, "Locked", this.sheet.cells.look(added.top - 1, column, "Locked"));
    }
    this.sheet.write(added, values, "rows.add");
  }

  addColumn(values: readonly (readonly unknown[])[]): void {
    this.sheet.allowLooks();
    const added = { ...this.box, left: this.box.right + 1, right: this.box.right + 1 };
    if (values.length !== rowsOf(added)) throw invalid("columns.add: a value for the heading and for every row");
    this.requireBlank(added);
    this.sheet.write(added, values, "columns.add");
    this.box = { ...this.box, right: added.right };
    this.checkHeadings();
  }

  get face(): HostObject {
    const own = settings("Table", this.bag, {
      ShowFilterButton: aFlag,
      ShowBandedRows: aFlag,
      ShowBandedColumns: aFlag,
      Style: aText,
    });
    return {
      ...own,
      id: this.id,
      get: { ...own.get, Id: () => this.id, Name: () => this.name, ShowTotals: () => this.totals },
      set: {
        ...own.set,
        Name: (value) => this.sheet.book.renameTable(this, value),
        ShowTotals: (value) => this.setTotals(aFlag(value, "showTotals") as boolean),
      },
      child: {
        Worksheet: () => this.sheet.face,
        Columns: () => this.columnsFace(),
        Rows: () => ({
          kind: "TableRowCollection",
          get: { Count: () => rowsOf(this.body) },
          call: {
            Add: (index, values) => {
              if (index !== null && index !== undefined) throw invalid("this host adds rows at the end only");
              this.addRows(values as readonly (readonly unknown[])[]);
              return { kind: "TableRow" };
            },
          },
        }),
      },
      call: {
        GetRange: () => this.sheet.range(this.box),
        GetHeaderRowRange: () => this.sheet.range({ ...this.box, bottom: this.box.top }),
        GetDataBodyRange: () => this.sheet.range(this.body),
        GetTotalRowRange: () => {
          if (!this.totals) throw new HostError("ItemNotFound", `${this.name} has no totals row`);
          return this.sheet.range({ ...this.box, top: this.box.bottom });
        },
        Resize: (at) => this.resize(boxed(toBox(this.sheet, at))),
        ConvertToRange: () => {
          this.sheet.allowLooks();
          this.sheet.tables = this.sheet.tables.filter((one) => one !== this);
          return this.sheet.range(this.box);
        },
        ClearFilters: () => undefined,
      },
    };
  }

  columnsFace(): HostObject {
    const at = (index: number): HostObject => ({
      kind: "TableColumn",
      id: String(index + 1),
      get: { Name: () => this.headings()[index], Index: () => index },
      call: {
        GetDataBodyRange: () =>
          this.sheet.range({ ...this.body, left: this.box.left + index, right: this.box.left + index }),
      },
    });
    const named = (name: unknown) =>
      this.headings().findIndex((one) => one.toLowerCase() === String(name).toLowerCase());
    return {
      kind: "TableColumnCollection",
      get: { Count: () => columnsOf(this.box) },
      items: () => this.headings().map((_, index) => at(index)),
      call: {
        GetItem: (name) => {
          if (named(name) < 0) throw new HostError("ItemNotFound", `${this.name} has no column ${String(name)}`);
          return at(named(name));
        },
        GetItemOrNullObject: (name) => (named(name) < 0 ? null : at(named(name))),
        Add: (index, values) => {
          if (index !== null && index !== undefined) throw invalid("this host adds columns at the end only");
          this.addColumn(values as readonly (readonly unknown[])[]);
          return at(columnsOf(this.box) - 1);
        },
      },
    };
  }
}

/** Tables of the book, or of one sheet. */
export function tableCollection(book: Book, sheet?: Sheet): HostObject {
  const all = () => sheet?.tables ?? book.tables();
  const find = (name: unknown) =>
    all().find((table) => table.name.toLowerCase() === String(name).toLowerCase() || table.id === name);
  return {
    kind: "TableCollection",
    get: { Count: () => all().length },
    items: () => all().map(({ face }) => face),
    call: {
      GetItem: (name) => {
        const table = find(name);
        if (table === undefined) throw new HostError("ItemNotFound", `there is no table ${String(name)}`);
        return table.face;
      },
      GetItemOrNullObject: (name) => find(name)?.face ?? null,
      Add: (at, hasHeaders) => {
        if (hasHeaders !== true) throw invalid("this host makes no table without headings");
        const place = typeof at === "string" && sheet ? { sheet, box: toBox(sheet, at) } : rangeAt(at);
        place.sheet.allowLooks();
        if (rowsOf(place.box) < 2) throw invalid("a table needs a row of data");
        if (place.sheet.tables.some((table) => meet(table.box, place.box)))
          throw invalid("A table can't overlap another table.");
        if (place.sheet.merges.some((merge) => meet(merge, place.box))) throw invalid("a table over merged cells");
        const number = ++book.counter;
        const table = new Table(place.sheet, place.box, `{T${number}}`, `Table${number}`);
        place.sheet.tables.push(table);
        return table.face;
      },
    },
  };
}
