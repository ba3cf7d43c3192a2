import * as z from "zod";
import { cellReaders } from "./cell-readers.js";
import { columnsOf, type SurveyColumn, type SurveySheetName, sheetJsonKeys } from "./columns.js";
import { decimalMarkOf, type RawRow, type RawTable } from "./raw-table.js";
import type { TypedCell, TypedSheet } from "./survey.js";
import { SurveyRefused } from "./survey-refused.js";

const cell = z.union([z.string(), z.number(), z.boolean()]);
const ohms = z.union([z.number(), z.string()]);
/** Fields that JSON may also write as structures; in a sheet they are one text. */
const structured: Readonly<Record<string, z.ZodType>> = {
  "Loops.opened": z.union([cell, z.array(z.strictObject({ opening: z.number().int().min(1), ohms }))]),
  "Loops.earth": z.union([cell, z.strictObject({ aOhms: ohms.optional(), bOhms: ohms.optional() })]),
  "Loops.forbid": z.union([cell, z.array(z.string())]),
  "Loops.tapped": z.union([cell, z.strictObject({ minOhms: ohms, maxOhms: ohms })]),
  "Input modules.returns": z.union([cell, z.array(z.strictObject({ holds: z.number().int().min(1) }))]),
  "Input modules.eolOhms": z.union([cell, z.array(ohms)]),
};

const rowOf = (sheet: SurveySheetName, only: (column: SurveyColumn) => boolean = () => true) =>
  z.strictObject(
    Object.fromEntries(
      columnsOf(sheet)
        .filter(only)
        .map(({ column }) => [column, (structured[`${sheet}.${column}`] ?? cell).nullable().optional()]),
    ),
  );

/** The survey as JSON: the workbook's columns are its keys. Anything else is refused with its path. */
const surveySchema = z.strictObject({
  schema: z.union([z.string(), z.number()]).optional(),
  site: rowOf("Site").optional(),
  panels: z.array(rowOf("Panels")).optional(),
  loops: z.array(rowOf("Loops")).min(1),
  oldZones: z.array(rowOf("Old zones")).optional(),
  radioTests: z.array(rowOf("Radio tests")).optional(),
  priceBook: z.array(rowOf("Price book")).optional(),
  inputModules: z.array(rowOf("Input modules")).optional(),
  labour: z.array(rowOf("Labour")).optional(),
  settings: z.record(z.string(), z.number()).optional(),
  finishedJobs: z.array(rowOf("Finished jobs")).optional(),
  /** Edits by row key; the same fields may stand in the loops themselves. */
  edits: z
    .record(
      z.string(),
      rowOf("Loops", ({ edit }) => edit),
    )
    .optional(),
});

const pathText = (path: readonly PropertyKey[]): string =>
  path
    .map((step) => (typeof step === "number" ? `[${step}]` : `.${String(step)}`))
    .join("")
    .replace(/^\./, "");

function refusal(error: z.ZodError): SurveyRefused {
  const lines = error.issues.slice(0, 10).map((issue) => {
    const at = pathText(issue.path);
    if (issue.code !== "unrecognized_keys") return `${at === "" ? "the whole file" : at}: ${issue.message}`;
    return issue.keys.map((key) => `${pathText([...issue.path, key])}: unknown field`).join("; ");
  });
  const more = error.issues.length > 10 ? ` … and ${error.issues.length - 10} more` : "";
  return new SurveyRefused(
    "badJson",
    `The JSON survey cannot be read: ${lines.join("; ")}${more}. Remove or rename these fields; docs/survey-fields.md lists all of them.`,
  );
}

/** Structures become the text that a sheet would hold. */
function asCell(value: unknown): TypedCell {
  if (value === null || value === undefined) return null;
  if (typeof value === "string" || typeof value === "number" || typeof value === "boolean") return value;
  if (Array.isArray(value)) return value.map((one: unknown) => listItem(one)).join("; ");
  const { aOhms, bOhms, minOhms, maxOhms } = value as Readonly<Record<string, string | number | undefined>>;
  if (minOhms !== undefined) return `${minOhms} to ${maxOhms}`;
  if (aOhms !== undefined && bOhms !== undefined) return `a: ${aOhms}; b: ${bOhms}`;
  return aOhms ?? bOhms ?? null;
}

function listItem(one: unknown): string {
  if (typeof one !== "object" || one === null) return String(one);
  const { opening, ohms: reading, holds } = one as Readonly<Record<string, string | number | undefined>>;
  return holds !== undefined ? String(holds) : `${opening}: ${reading}`;
}

type JsonRow = Readonly<Record<string, unknown>>;

function tableOf(sheet: SurveySheetName, rows: readonly JsonRow[]): RawTable {
  const headings = columnsOf(sheet).map(({ column }, position) => ({
    sheet: sheetJsonKeys[sheet],
    heading: column,
    position,
    column,
    how: "our heading" as const,
  }));
  const rawRows = rows.map(
    (row, index): RawRow => ({
      row: index + 1,
      cells: new Map(
        Object.entries(row).flatMap(([column, value]): [string, TypedCell][] => {
          const typed = asCell(value);
          return typed === null || typed === "" ? [] : [[column, typed]];
        }),
      ),
      spare: [],
    }),
  );
  return {
    sheet,
    name: sheetJsonKeys[sheet],
    headings: new Map(headings.map((heading) => [heading.column, heading])),
    rows: rawRows,
    matches: [],
    queries: [],
    ...decimalMarkOf(rawRows),
    readers: cellReaders(),
  };
}

/**
 * Checks a JSON survey and sorts it into the same tables that sheets are sorted into. Row numbers count from 1.
 * @throws {@link SurveyRefused} with the path of every field that is unknown or has the wrong kind of value.
 */
export function tablesFromJson(json: unknown): {
  readonly tables: ReadonlyMap<SurveySheetName, RawTable>;
  readonly site: TypedSheet | undefined;
} {
  const parsed = surveySchema.safeParse(json);
  if (!parsed.success) throw refusal(parsed.error);
  const survey = parsed.data;
  const edits = new Map(Object.entries(survey.edits ?? {}));
  const loops = survey.loops.map((loop): JsonRow => ({ ...loop, ...(edits.get(String(loop["key"] ?? "")) ?? {}) }));
  const keys = new Set(loops.map((loop) => loop["key"]));
  for (const key of edits.keys()) {
    if (!keys.has(key))
      throw new SurveyRefused(
        "badJson",
        `edits.${key}: no loop has this key. Give the loop its key, or remove the edit.`,
      );
  }
  const tables = new Map<SurveySheetName, RawTable>();
  const add = (sheet: SurveySheetName, rows: readonly JsonRow[] | undefined) => {
    if (rows !== undefined && rows.length > 0) tables.set(sheet, tableOf(sheet, rows));
  };
  add("Loops", loops);
  add("Panels", survey.panels);
  add("Old zones", survey.oldZones);
  add("Radio tests", survey.radioTests);
  add("Price book", survey.priceBook);
  add("Input modules", survey.inputModules);
  add("Labour", survey.labour);
  add(
    "Settings",
    Object.entries(survey.settings ?? {}).map(([setting, value]) => ({ setting, value })),
  );
  add("Finished jobs", survey.finishedJobs);
  return { tables, site: survey.site === undefined ? undefined : siteSheet(survey.site) };
}

/** The site's fields as the list that a site sheet is. */
function siteSheet(site: JsonRow): TypedSheet {
  const rows = Object.entries(site).flatMap(([item, value], index) => {
    const typed = asCell(value);
    return typed === null ? [] : [{ row: index + 1, cells: [item, typed] as readonly TypedCell[] }];
  });
  return { sheet: "site", rows: [{ row: 0, cells: ["Item", "Value", "Note"] }, ...rows] };
}
