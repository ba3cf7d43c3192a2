import type ExcelJS from "exceljs";
import { indentedRoles } from "../../report/layout.js";
import type { Format, Role } from "../../report/model.js";
import { isFigure, numberFormat } from "./formats.js";

/** Font of every cell: metric twins of it exist on every desktop, so that column widths hold. */
export const cellFont = "Arial";
const ink = { argb: "FF000000" };
const grey: ExcelJS.Border = { style: "hair", color: { argb: "FF808080" } };
const thin: ExcelJS.Border = { style: "thin", color: ink };
const thick: ExcelJS.Border = { style: "medium", color: ink };
const inputBlue: ExcelJS.Border = { style: "dashed", color: { argb: "FF1F4E79" } };
const around = (border: ExcelJS.Border): Partial<ExcelJS.Borders> => ({
  top: border,
  left: border,
  bottom: border,
  right: border,
});
const solid = (argb: string): ExcelJS.FillPattern => ({ type: "pattern", pattern: "solid", fgColor: { argb } });

interface Look {
  readonly size?: number;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly underline?: boolean;
  readonly color?: string;
  readonly fill?: string;
  readonly borders?: Partial<ExcelJS.Borders>;
}

/** Each role differs from the others by weight, slant, rule or size, not by colour alone. */
const looks: Readonly<Record<Role, Look>> = {
  body: {},
  title: { size: 16, bold: true },
  heading: { size: 12, bold: true, borders: { bottom: thin } },
  subheading: { size: 10, bold: true },
  columnHeading: { bold: true, fill: "FFE7E6E6", borders: { top: thin, bottom: thick } },
  figureHeading: { bold: true, fill: "FFE7E6E6", borders: { top: thin, bottom: thick } },
  label: { color: "FF404040" },
  note: { italic: true, color: "FF404040" },
  input: { fill: "FFFFF2CC", color: "FF1F4E79", borders: around(inputBlue) },
  total: { bold: true, borders: { top: thin, bottom: { style: "double", color: ink } } },
  warning: { bold: true, fill: "FFFCE4D6", borders: { left: thick } },
  stop: { bold: true, fill: "FFF8CBAD", borders: around(thick) },
  handwriting: { borders: around(thin) },
  link: { underline: true, color: "FF0563C1" },
};

/** What of a cell its style depends on. */
interface StyledCell {
  readonly format: Format;
  readonly role: Role;
  readonly locked: boolean;
  readonly inTable: boolean;
  readonly afterFigures?: boolean;
}

/** The style of a cell; equal requests give the same object, which exceljs then writes once. */
export interface StyleBook {
  readonly of: (cell: StyledCell) => Partial<ExcelJS.Style>;
}

/** Styles for one workbook in one currency. */
export function styleBook(currency: string): StyleBook {
  const made = new Map<string, Partial<ExcelJS.Style>>();
  return {
    of: ({ format, role, locked, inTable, afterFigures = false }) => {
      const key = `${format} ${role} ${locked} ${inTable} ${afterFigures}`;
      const before = made.get(key);
      if (before !== undefined) return before;
      const style = makeStyle({ format, role, locked, inTable, afterFigures, currency });
      made.set(key, style);
      return style;
    },
  };
}

function makeStyle(wanted: StyledCell & { readonly currency: string }): Partial<ExcelJS.Style> {
  const look = looks[wanted.role];
  const heading = wanted.role === "columnHeading" || wanted.role === "figureHeading";
  const toTheRight = heading ? wanted.role === "figureHeading" : isFigure(wanted.format);
  const borders = look.borders ?? (wanted.inTable ? { bottom: grey } : undefined);
  return {
    numFmt: numberFormat(wanted.format, wanted.currency),
    font: {
      name: cellFont,
      size: look.size ?? 10,
      bold: look.bold ?? false,
      italic: look.italic ?? false,
      underline: look.underline ?? false,
      color: { argb: look.color ?? "FF000000" },
    },
    alignment: {
      vertical: heading ? "bottom" : "middle",
      wrapText: wanted.format === "wrapped",
      ...(toTheRight ? { horizontal: "right" as const } : {}),
      ...((indentedRoles.has(wanted.role) || wanted.afterFigures === true) && !toTheRight
        ? { horizontal: "left" as const, indent: 1 }
        : {}),
    },
    protection: { locked: wanted.locked },
    ...(look.fill === undefined ? {} : { fill: solid(look.fill) }),
    ...(borders === undefined ? {} : { border: borders }),
  };
}

/** Style of a conditional format: what changes on top of the cell's own style. */
export function highlightStyle(role: Role): Partial<ExcelJS.Style> {
  const look = looks[role];
  return {
    font: { bold: look.bold ?? false, italic: look.italic ?? false, color: { argb: look.color ?? "FF000000" } },
    ...(look.fill === undefined
      ? {}
      : { fill: { type: "pattern", pattern: "solid", bgColor: { argb: look.fill } } as ExcelJS.FillPattern }),
  };
}
