import type { Query } from "../problems/query.js";
import { parseMilliamps } from "../quantities/parse-milliamps.js";
import { parseTemperature } from "../quantities/parse-temperature.js";
import { parseVolts } from "../quantities/parse-volts.js";
import { cellText } from "../quantities/typed-cell.js";
import { type SurveySheetName, surveySheets } from "./columns.js";
import { type ConfirmedFeeds, confirmFeeds } from "./confirm-feeds.js";
import type { HeadingMapping, HeadingMatch } from "./map-headings.js";
import { runUnit, unitSlipQueries } from "./neighbours.js";
import { fitsTable, type RawTable, rawTable } from "./raw-table.js";
import { readFinishedJobs } from "./read-finished-jobs.js";
import { readLoop } from "./read-loop.js";
import { readSite, type SiteRead } from "./read-site.js";
import {
  field,
  readInputModules,
  readLabour,
  readOldZones,
  readPriceBook,
  readRadioTests,
  readSettings,
} from "./read-tables.js";
import { rowKeys } from "./row-keys.js";
import { RowReader } from "./row-reader.js";
import { sharedReturns } from "./shared-returns.js";
import type { Survey, SurveyLoop, SurveyPanel, TypedSheet } from "./survey.js";
import { tablesFromJson } from "./survey-json.js";
import { SurveyRefused } from "./survey-refused.js";
import { phraseAt, wordsOf } from "./words.js";

/** A sheet, and what it is when the user has said so. */
export interface SheetToRead {
  readonly typed: TypedSheet;
  readonly as?: SurveySheetName;
}

export type SurveyInput = {
  readonly mapping?: HeadingMapping;
  /** Currency of the job where the survey names none; three letters. */
  readonly currency?: string;
  /** Feeds of powered detectors that a person confirmed; they answer what the notes only propose. */
  readonly fedFrom?: ConfirmedFeeds;
} & ({ readonly sheets: readonly SheetToRead[] } | { readonly json: unknown });

/** The survey and how its headings were understood. */
export interface SurveyRead {
  readonly survey: Survey;
  readonly headings: readonly HeadingMatch[];
}

/** Words by which a sheet's own name tells what it is, most telling first. */
const sheetWords: readonly (readonly [SurveySheetName, readonly string[]])[] = [
  ["Loops", ["survey loops", "loops", "loop", "loop test", "zones tested"]],
  ["Old zones", ["old zones", "oldzones", "old zone list", "zone list", "zonelist"]],
  ["Radio tests", ["radio tests", "radio test", "radio"]],
  ["Price book", ["price book", "pricebook", "prices"]],
  ["Input modules", ["input modules", "modules"]],
  ["Labour", ["labour units", "labour", "labor"]],
  ["Settings", ["money settings", "settings"]],
  ["Finished jobs", ["finished jobs", "finishedjobs"]],
  ["Panels", ["panels"]],
  ["Site", ["site"]],
];

/** How well a sheet's name says that it is this table: 3 "Survey …", 2 our name, 1 contains a word for it, 0 not. */
function nameFit(name: string, sheet: SurveySheetName): number {
  const words = wordsOf(name);
  const own = wordsOf(sheet);
  if (words.length === own.length + 1 && words[0] === "survey" && phraseAt(words, own) === 1) return 3;
  if (words.length === own.length && phraseAt(words, own) === 0) return 2;
  const first = sheetWords.find(([, phrases]) => phrases.some((phrase) => phraseAt(words, wordsOf(phrase)) >= 0));
  return first?.[0] === sheet ? 1 : 0;
}

/** Picks the sheet for each table: as told, else by name, else, for a single sheet, by its headings. */
export function chooseSheets(
  sheets: readonly SheetToRead[],
  mapping: HeadingMapping,
): ReadonlyMap<SurveySheetName, TypedSheet> {
  const chosen = new Map<SurveySheetName, TypedSheet>();
  for (const { typed, as } of sheets) if (as !== undefined) chosen.set(as, typed);
  const free = sheets.filter(({ as }) => as === undefined).map(({ typed }) => typed);
  for (const sheet of surveySheets) {
    if (chosen.has(sheet)) continue;
    const named = free
      .filter((typed) => nameFit(typed.sheet, sheet) > 0)
      .sort((a, b) => nameFit(b.sheet, sheet) - nameFit(a.sheet, sheet));
    const best = named.find((typed) => sheet === "Site" || fitsTable(typed, sheet, mapping)) ?? named[0];
    if (best !== undefined) chosen.set(sheet, best);
  }
  if (!chosen.has("Loops")) {
    const byHeadings =
      free.find((typed) => ![...chosen.values()].includes(typed) && fitsTable(typed, "Loops", mapping)) ??
      (free.length === 1 ? free[0] : undefined);
    if (byHeadings !== undefined) chosen.set("Loops", byHeadings);
  }
  return chosen;
}

/**
 * Reads a survey from typed sheets (loose or our own workbook) or from JSON. What is not settled comes back as
 * queries with sheet, row, column, what was typed and what is expected.
 * @throws {@link SurveyRefused} when no survey can be read at all; the message says how to mend it.
 */
export function readSurvey(input: SurveyInput): SurveyRead {
  const read = readAsTyped(input);
  const { fedFrom } = input;
  return fedFrom === undefined ? read : { ...read, survey: confirmFeeds({ survey: read.survey, fedFrom }) };
}

function readAsTyped(input: SurveyInput): SurveyRead {
  const { mapping = {}, currency = "USD" } = input;
  if ("json" in input) {
    const { tables, site } = tablesFromJson(input.json);
    return assemble({ tables, siteSheet: site, currency, mapping, remarks: [] });
  }
  const chosen = chooseSheets(input.sheets, mapping);
  if (!chosen.has("Loops")) {
    const names = input.sheets.map(({ typed }) => typed.sheet);
    throw new SurveyRefused(
      "noSheet",
      `No loops sheet among ${names.length === 0 ? "no sheets at all" : names.join(", ")}. Name it "Loops", or hand in the loops sheet by itself; "loopwright new" writes a workbook with every sheet.`,
    );
  }
  const tables = new Map<SurveySheetName, RawTable>();
  for (const [sheet, typed] of chosen) {
    if (sheet === "Site" || (sheet !== "Loops" && typed.rows.length === 0)) continue;
    tables.set(sheet, rawTable(typed, sheet, mapping));
  }
  const remarks = [...chosen.values()].flatMap((typed) => typed.remarks ?? []);
  return assemble({ tables, siteSheet: chosen.get("Site"), currency, mapping, remarks });
}

interface Parts {
  readonly tables: ReadonlyMap<SurveySheetName, RawTable>;
  readonly siteSheet: TypedSheet | undefined;
  readonly currency: string;
  readonly mapping: HeadingMapping;
  readonly remarks: readonly Query[];
}

function assemble({ tables, siteSheet, currency, mapping, remarks }: Parts): SurveyRead {
  const site: SiteRead | undefined = siteSheet === undefined ? undefined : readSite(siteSheet, { mapping, currency });
  const queries: Query[] = [...remarks];
  const use = <T>(
    sheet: SurveySheetName,
    read: (table: RawTable) => { readonly rows: readonly T[]; readonly queries: readonly Query[] },
  ): readonly T[] => {
    const table = tables.get(sheet);
    if (table === undefined) return [];
    const result = read(table);
    queries.push(...table.queries, ...result.queries);
    return result.rows;
  };
  const table = tables.get("Loops");
  if (table === undefined) throw new SurveyRefused("noSheet", "The survey has no loops. Hand in the loops sheet.");
  if (table.rows.length === 0)
    throw new SurveyRefused("noLoops", `${table.name} has headings but no loop below them. Write one row per loop.`);
  const typedPanels = [...use("Panels", readPanels), ...(site?.panels ?? [])];
  const loopsRead = readLoops(table, typedPanels, tables.get("Radio tests"));
  const loops = loopsRead.loops;
  queries.push(...(site?.queries ?? []), ...table.queries, ...loopsRead.queries);
  const panels = panelsUsed(typedPanels, loops);
  if (site?.panelCount !== undefined && site.panelCount !== panels.length) {
    queries.push({
      sheet: siteSheet?.sheet ?? "Site",
      row: null,
      column: "Panels",
      typed: String(site.panelCount),
      message: `The site sheet counts ${site.panelCount} panels, the loops name ${panels.length}. Write the panel of each loop in a column Panel.`,
    });
  }
  const survey: Survey = {
    site: site?.site ?? { currency, typed: {} },
    panels,
    loops,
    oldZones: use("Old zones", readOldZones),
    radioTests: use("Radio tests", readRadioTests),
    priceBook: use("Price book", readPriceBook),
    inputModules: use("Input modules", readInputModules),
    labour: use("Labour", readLabour),
    settings: Object.fromEntries(use("Settings", readSettings)),
    finishedJobs: use("Finished jobs", readFinishedJobs),
    queries,
  };
  const headings = [...(site?.matches ?? []), ...[...tables.values()].flatMap(({ matches }) => matches)];
  return { survey, headings };
}

/** The first mention of a panel wins; panels that only the loops name are added. */
function panelsUsed(typed: readonly SurveyPanel[], loops: readonly SurveyLoop[]): readonly SurveyPanel[] {
  const byName = new Map<string, SurveyPanel>();
  for (const panel of typed) if (!byName.has(panel.panel)) byName.set(panel.panel, panel);
  for (const { panel } of loops) if (!byName.has(panel)) byName.set(panel, { panel, typed: {} });
  return [...byName.values()];
}

function readPanels(table: RawTable): { readonly rows: readonly SurveyPanel[]; readonly queries: readonly Query[] } {
  const rows: SurveyPanel[] = [];
  const queries: Query[] = [];
  for (const raw of table.rows) {
    const row = new RowReader(table, raw);
    const panel = row.text("panel");
    if (panel === undefined) row.ask("panel", "This row names no panel and was left out. Write its short name.");
    else {
      rows.push({
        panel,
        ...field("place", row.text("place")),
        ...field("mains", row.text("mains")),
        ...field("battery", row.text("battery")),
        ...field("auxMilliamps", row.parsed("auxMilliamps", (cell) => parseMilliamps(cell))?.milliamps),
        ...field("auxVolts", row.parsed("auxVolts", (cell) => parseVolts(cell))?.volts),
        ...field("auxVoltsOnBattery", row.parsed("auxVoltsOnBattery", (cell) => parseVolts(cell))?.volts),
        ...field(
          "temperatureCelsius",
          row.parsed("temperatureCelsius", (cell) =>
            parseTemperature(cell, row.isOurHeading("temperatureCelsius") ? { bareUnit: "C" } : {}),
          )?.celsius,
        ),
        typed: Object.fromEntries([...raw.cells].map(([column, cell]) => [column, cellText(cell)])),
      });
    }
    queries.push(...row.queries);
  }
  return { rows, queries };
}

function readLoops(
  table: RawTable,
  panels: readonly SurveyPanel[],
  radio: RawTable | undefined,
): { readonly loops: readonly SurveyLoop[]; readonly queries: readonly Query[] } {
  const keys = rowKeys(table);
  const queries: Query[] = [...keys.queries];
  const heading = table.headings.get("run");
  const ours = heading?.how === "our heading" ? "m" : undefined;
  const radioUnit = radio?.headings.get("distance")?.unit;
  const unit = runUnit({
    sheet: table.name,
    heading: heading?.heading ?? "run",
    headingUnit: ours ?? (heading?.unit === "ft" || heading?.unit === "m" ? heading.unit : undefined),
    texts: table.rows.flatMap(({ row, cells }) =>
      cells.has("run") ? [{ row, text: cellText(cells.get("run")) }] : [],
    ),
    ...(radioUnit === "ft" || radioUnit === "m"
      ? { elsewhere: { unit: radioUnit, where: "the radio test sheet" } }
      : {}),
  });
  queries.push(...unit.queries);
  const panel = panels[0]?.panel ?? "P1";
  if (!table.headings.has("panel") && panels.length > 1) {
    queries.push({
      sheet: table.name,
      row: null,
      column: "Panel",
      typed: "",
      message: `The site has ${panels.length} panels and no loop names one; all were put on ${panel}. Add a column Panel.`,
    });
  }
  const supply: SurveyLoop[] = [];
  const each = table.rows.map((raw, index) => {
    const read = readLoop(raw, { table, key: keys.keys[index] ?? "", panel, ...field("bareUnit", unit.unit) });
    queries.push(...read.queries);
    if (read.voltsTakenAsSupply) supply.push(read.loop);
    return read.loop;
  });
  const { loops, queries: returnQueries } = sharedReturns({
    loops: each,
    heading: table.headings.get("returnSharedWith")?.heading ?? "returnSharedWith",
  });
  queries.push(...returnQueries);
  if (supply.length > 0) {
    queries.push({
      sheet: table.name,
      row: null,
      column: table.headings.get("voltsPairDc")?.heading ?? null,
      typed: supply.map(({ typed }) => typed["voltsPairDc"] ?? "").join("; "),
      message: `Rows ${supply.map(({ row }) => row).join(", ")}: these volts were taken as the supply at a powered detector that was on while its loop was metered. If they stood across the lifted pair, head the column "Volts DC on lifted pair".`,
    });
  }
  queries.push(
    ...unitSlipQueries(loops, table.headings.get("closed")?.heading ?? "closed"),
    ...duplicateQueries(loops, table.headings.get("loop")?.heading ?? "loop"),
  );
  return { loops, queries };
}

/** Loops of one panel that go by the same name; the key tells them apart. */
function duplicateQueries(loops: readonly SurveyLoop[], heading: string): readonly Query[] {
  const first = new Map<string, SurveyLoop>();
  return loops.flatMap((loop): Query[] => {
    const name = JSON.stringify([loop.panel.toLowerCase(), loop.loop.toLowerCase()]);
    const earlier = first.get(name);
    if (earlier === undefined) {
      first.set(name, loop);
      return [];
    }
    return [
      {
        sheet: loop.sheet,
        row: loop.row,
        column: heading,
        typed: loop.loop,
        key: loop.key,
        message: `Loop ${loop.loop} of panel ${loop.panel} stands in row ${earlier.row} too (${earlier.key}); both are kept, as ${earlier.key} and ${loop.key}. Give each its own number, or delete the row written twice.`,
      },
    ];
  });
}
