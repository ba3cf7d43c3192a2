import type { Formula } from "../../lib/report/formula.js";
import type { Block, Cell, Report, Sheet } from "../../lib/report/model.js";

/** One text of a report and where it stands. */
export interface PlacedText {
  readonly sheet: string;
  readonly where: string;
  readonly text: string;
}

/** Every text a report prints: cells, headings, titles, labels, notes, prompts, alternative texts, words in formulas. */
export function everyText(report: Report): readonly PlacedText[] {
  const head = [report.title, report.job, report.revision].map((text) => ({ sheet: "", where: "head", text }));
  return [...head, ...report.sheets.flatMap(textsOfSheet)];
}

export function textsOfSheet(sheet: Sheet): readonly PlacedText[] {
  return [
    { sheet: sheet.name, where: "name", text: sheet.name },
    ...sheet.blocks.flatMap(textsOfBlock).map((found) => ({ sheet: sheet.name, ...found })),
  ];
}

type Found = { readonly where: string; readonly text: string };

function textsOfBlock(block: Block): readonly Found[] {
  switch (block.kind) {
    case "title":
      return [{ where: "title", text: block.text }];
    case "paragraph":
      return textsOfCell(block.cell, "paragraph");
    case "keyValue":
      return block.rows.flatMap((row) => [
        { where: "label", text: row.label },
        ...textsOfCell(row.cell, `value of ${row.label}`),
        ...(row.note === undefined ? [] : [{ where: `note of ${row.label}`, text: row.note }]),
        ...(row.input === undefined ? [] : [{ where: "prompt", text: row.input.message }]),
      ]);
    case "table":
      return [
        ...block.columns.flatMap((column) => [
          { where: `${block.name} heading`, text: `${column.heading} ${column.unit ?? ""}` },
          ...(column.input === undefined ? [] : [{ where: `${block.name} prompt`, text: column.input.message }]),
          ...(column.formula === undefined ? [] : wordsInFormula(column.formula, block.name)),
        ]),
        ...block.rows.flatMap((row) =>
          row.flatMap((cell, index) => textsOfCell(cell, `${block.name}.${block.columns[index]?.key ?? index}`)),
        ),
        { where: block.name, text: block.whenEmpty },
      ];
    case "picture":
      return [
        { where: "picture", text: block.alt },
        ...[...block.svg.matchAll(/>([^<>]+)</g)].map((match) => ({ where: "picture", text: match[1] ?? "" })),
      ];
    case "chart":
      return [block.title, block.alt, block.valueTitle ?? "", block.categoryTitle ?? ""].map((text) => ({
        where: "chart",
        text,
      }));
    case "beside":
      return block.parts.flatMap(({ blocks }) => blocks.flatMap(textsOfBlock));
    default:
      return [];
  }
}

function textsOfCell(cell: Cell, where: string): readonly Found[] {
  if (cell.kind === "text" || cell.kind === "link") return [{ where, text: cell.text }];
  return cell.kind === "formula" ? wordsInFormula(cell.formula, where) : [];
}

function wordsInFormula(formula: Formula, where: string): readonly Found[] {
  switch (formula.kind) {
    case "literal":
      return typeof formula.value === "string" ? [{ where, text: formula.value }] : [];
    case "binary":
      return [...wordsInFormula(formula.left, where), ...wordsInFormula(formula.right, where)];
    case "negate":
      return wordsInFormula(formula.of, where);
    case "call":
      return formula.arguments.flatMap((part) => wordsInFormula(part, where));
    default:
      return [];
  }
}
