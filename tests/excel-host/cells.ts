import { invalid } from "./host-object.js";

/** A rectangle; rows and columns count from 0, both ends belong to it. */
export interface Box {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** Contents of a cell. */
export interface Content {
  value: string | number | boolean;
  formula?: string;
  /** Typed with a leading apostrophe. */
  quoted?: boolean;
}

export const rowsOf = (box: Box): number => box.bottom - box.top + 1;
export const columnsOf = (box: Box): number => box.right - box.left + 1;
export const meet = (one: Box, other: Box): boolean =>
  one.top <= other.bottom && other.top <= one.bottom && one.left <= other.right && other.left <= one.right;
export const same = (one: Box, other: Box): boolean =>
  one.top === other.top && one.left === other.left && one.bottom === other.bottom && one.right === other.right;
export const within = (box: Box, row: number, column: number): boolean =>
  row >= box.top && row <= box.bottom && column >= box.left && column <= box.right;

const lastRow = 1_048_575;
const lastColumn = 16_383;

const numberOf = (letters: string): number =>
  [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;

export function lettersOf(column: number): string {
  let letters = "";
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26))
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  return letters;
}

/** A1 text to a box: B7, A1:C9, $4:$4, D:D; a sheet name before it is not looked at here. */
export function boxOf(address: string): Box {
  const bare = address.replace(/^.*!/, "").replaceAll("$", "");
  const cells = /^([A-Z]+)(\d+)(?::([A-Z]+)(\d+))?$/.exec(bare);
  if (cells) {
    const top = Number(cells[2]) - 1;
    const left = numberOf(cells[1] ?? "");
    return boxed({
      top,
      left,
      bottom: cells[4] === undefined ? top : Number(cells[4]) - 1,
      right: cells[3] === undefined ? left : numberOf(cells[3]),
    });
  }
  const rows = /^(\d+):(\d+)$/.exec(bare);
  if (rows) return boxed({ top: Number(rows[1]) - 1, left: 0, bottom: Number(rows[2]) - 1, right: lastColumn });
  const columns = /^([A-Z]+):([A-Z]+)$/.exec(bare);
  if (columns)
    return boxed({ top: 0, left: numberOf(columns[1] ?? ""), bottom: lastRow, right: numberOf(columns[2] ?? "") });
  throw invalid(`${JSON.stringify(address)} is no address`);
}

/** Refuses a box that leaves the sheet or has no cells. */
export function boxed(box: Box): Box {
  const whole = [box.top, box.left, box.bottom, box.right].every(Number.isInteger);
  if (!whole || box.top < 0 || box.left < 0 || box.bottom > lastRow || box.right > lastColumn)
    throw invalid("the range leaves the sheet");
  if (box.bottom < box.top || box.right < box.left) throw invalid("the range has no cells");
  return box;
}

export const addressOf = (box: Box): string => {
  const first = `${lettersOf(box.left)}${box.top + 1}`;
  return rowsOf(box) === 1 && columnsOf(box) === 1 ? first : `${first}:${lettersOf(box.right)}${box.bottom + 1}`;
};

/** Contents and looks of one sheet. Looks are laid over one another; the last one set on a cell holds. */
export class Cells {
  readonly #contents = new Map<number, Content>();
  readonly #looks = new Map<string, { readonly box: Box; readonly value: unknown; readonly order: number }[]>();
  /** Looks of single cells, kept apart: there are many. */
  readonly #single = new Map<string, Map<number, { readonly value: unknown; readonly order: number }>>();
  #order = 0;

  content(row: number, column: number): Content | undefined {
    return this.#contents.get(row * 16_384 + column);
  }
  write(row: number, column: number, content: Content | undefined): void {
    if (content === undefined || content.value === "") this.#contents.delete(row * 16_384 + column);
    else this.#contents.set(row * 16_384 + column, content);
  }
  eachFormula(change: (formula: string) => string): void {
    for (const content of this.#contents.values()) {
      if (content.formula !== undefined) content.formula = change(content.formula);
    }
  }
  look(row: number, column: number, property: string): unknown {
    const single = this.#single.get(property)?.get(row * 16_384 + column);
    const laid = this.#looks.get(property) ?? [];
    for (let index = laid.length - 1; index >= 0; index--) {
      const one = laid[index];
      if (one === undefined || one.order < (single?.order ?? 0)) break;
      if (within(one.box, row, column)) return one.value;
    }
    return single?.value;
  }
  /** The one look of all cells of a box, or null where they differ. */
  lookOf(box: Box, property: string): unknown {
    const first = this.look(box.top, box.left, property);
    for (let row = box.top; row <= box.bottom; row++)
      for (let column = box.left; column <= box.right; column++)
        if (this.look(row, column, property) !== first) return null;
    return first ?? null;
  }
  setLook(box: Box, property: string, value: unknown): void {
    const order = ++this.#order;
    if (rowsOf(box) === 1 && columnsOf(box) === 1) {
      const cells = this.#single.get(property) ?? new Map();
      this.#single.set(property, cells.set(box.top * 16_384 + box.left, { value, order }));
      return;
    }
    const others = (this.#looks.get(property) ?? []).filter((one) => !same(one.box, box));
    this.#looks.set(property, [...others, { box, value, order }]);
  }
  clearLooks(box: Box): void {
    for (const property of new Set([...this.#looks.keys(), ...this.#single.keys()]))
      if (property !== "Locked") this.setLook(box, property, undefined);
    if (this.#looks.has("Locked") || this.#single.has("Locked")) this.setLook(box, "Locked", true);
  }
  used(): Box | undefined {
    let box: { top: number; left: number; bottom: number; right: number } | undefined;
    for (const at of this.#contents.keys()) {
      const row = Math.floor(at / 16_384);
      const column = at % 16_384;
      box =
        box === undefined
          ? { top: row, left: column, bottom: row, right: column }
          : {
              top: Math.min(box.top, row),
              left: Math.min(box.left, column),
              bottom: Math.max(box.bottom, row),
              right: Math.max(box.right, column),
            };
    }
    return box;
  }
}

/** What Excel makes of something written to a cell; README lists what is assumed here. */
export function contentOf(written: unknown, numberFormat: string): Content | undefined {
  if (typeof written === "number") {
    if (!Number.isFinite(written)) throw invalid("a cell holds finite numbers only");
    return { value: written };
  }
  if (typeof written === "boolean") return { value: written };
  if (typeof written !== "string") throw invalid(`a cell cannot hold ${JSON.stringify(written)}`);
  if (written.length > 32_767) throw invalid("a cell holds at most 32,767 characters");
  if (written.startsWith("'")) return { value: written.slice(1), quoted: true };
  if (numberFormat === "@") return { value: written };
  if (/^[=+\-@]/.test(written) && Number.isNaN(Number(written))) return { value: "#BUSY!", formula: written };
  if (written.trim() !== "" && Number.isFinite(Number(written))) return { value: Number(written) };
  if (/^\d{1,4}[/-]\d{1,2}([/-]\d{1,4})?$/.test(written)) return { value: 45_000 };
  if (/^(true|false)$/i.test(written)) return { value: written.toLowerCase() === "true" };
  return { value: written };
}
