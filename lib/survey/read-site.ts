import type { Query } from "../problems/query.js";
import { parseMeter } from "../quantities/parse-meter.js";
import { parseMilliamps } from "../quantities/parse-milliamps.js";
import { parseTemperature } from "../quantities/parse-temperature.js";
import { parseVolts } from "../quantities/parse-volts.js";
import type { Parsed } from "../quantities/parsed.js";
import { cellText, isNothing } from "../quantities/typed-cell.js";
import type { SurveySheetName } from "./columns.js";
import { type HeadingMapping, type HeadingMatch, mapHeadings } from "./map-headings.js";
import { field } from "./read-tables.js";
import type { SurveyPanel, SurveySite, TypedSheet } from "./survey.js";
import { wordsOf } from "./words.js";

/** One item of the site list with what stands beside it. */
interface SiteItem {
  readonly row: number;
  readonly item: string;
  readonly value: string;
  readonly note: string;
  readonly byPanel: ReadonlyMap<string, string>;
}

export interface SiteRead {
  readonly site: SurveySite;
  readonly panels: readonly SurveyPanel[];
  /** Number of panels the sheet claims, when it says so. */
  readonly panelCount?: number;
  readonly matches: readonly HeadingMatch[];
  readonly queries: readonly Query[];
}

const itemHeading = /^(item|field|what|site|question|fact|key)\b/;
const valueHeading = /^(value|site wide|site wide comment|sitewide|answer|site|all|whole site)\b/;
const noteHeading = /^(note|notes|comment|comments|remark|remarks)\b/;
/** Columns of our own site sheet that explain the item; they are not answers. */
const ignoredHeading = /^(what|unit|meaning|expected|example|such as)\b/;

/** Splits the sheet into items; the first row may name a column per panel, or Value and Note, or nothing. */
function siteItems(typed: TypedSheet): readonly SiteItem[] {
  const [first] = typed.rows;
  const named = typed.rows.findIndex(
    ({ cells }) =>
      itemHeading.test(wordsOf(cellText(cells[0])).join(" ")) &&
      cells.filter((cell) => cellText(cell) !== "").length >= 2,
  );
  const head = named >= 0 && named < 10 ? typed.rows[named] : undefined;
  const isHead =
    head !== undefined &&
    Array.from(head.cells)
      .slice(1)
      .some((cell) => /./.test(cellText(cell)) && !/\d{2}/.test(cellText(cell)));
  const names = isHead ? Array.from(head.cells, (cell) => cellText(cell)) : ["Item", "Value", "Note"];
  const roles = names.map((name, index) => {
    const words = wordsOf(name).join(" ");
    if (index === 0 || name === "") return "item";
    if (valueHeading.test(words)) return "value";
    if (ignoredHeading.test(words)) return "ignored";
    return noteHeading.test(words) ? "note" : "panel";
  });
  const from = isHead ? named + 1 : typed.rows.indexOf(first ?? { row: 0, cells: [] });
  return typed.rows.slice(Math.max(0, from)).flatMap(({ row, cells }): SiteItem[] => {
    const texts = Array.from({ length: names.length }, (_, index) => cellText(cells[index]));
    const pick = (role: string) =>
      texts.filter((text, index) => roles[index] === role && index > 0 && text !== "").join("; ");
    const byPanel = new Map(
      names.flatMap((name, index): [string, string][] =>
        roles[index] === "panel" && (texts[index] ?? "") !== "" ? [[name, texts[index] ?? ""]] : [],
      ),
    );
    const item = texts[0] ?? "";
    return item === "" || (pick("value") === "" && byPanel.size === 0 && pick("note") === "")
      ? []
      : [{ row, item, value: pick("value"), note: pick("note"), byPanel }];
  });
}

interface Known {
  readonly item: SiteItem;
  readonly site?: string;
  readonly panel?: string;
}

/** Finds our name of each item among the items of Site and the columns of Panels. */
function knownItems(
  typed: TypedSheet,
  items: readonly SiteItem[],
  mapping: HeadingMapping,
): { readonly known: readonly Known[]; readonly matches: readonly HeadingMatch[] } {
  const headings = items.map(({ item }) => item);
  const match = (sheet: SurveySheetName) =>
    new Map(
      mapHeadings({ sheet, name: typed.sheet, headings, mapping: onlyOwn(mapping, sheet) }).map((one) => [
        one.position,
        one,
      ]),
    );
  const site = match("Site");
  const panel = match("Panels");
  const matches: HeadingMatch[] = [];
  const known = items.map((item, index): Known => {
    const ofSite = site.get(index);
    const ofPanel = panel.get(index);
    const panelColumn = ofPanel?.column === "panel" ? null : ofPanel?.column;
    const best = ofSite?.column != null ? ofSite : panelColumn != null ? ofPanel : ofSite;
    if (best !== undefined) matches.push(best);
    return { item, ...field("site", ofSite?.column ?? undefined), ...field("panel", panelColumn ?? undefined) };
  });
  return { known, matches };
}

/** A mapping of the site file may point at items of Site or at columns of Panels. */
const onlyOwn = (mapping: HeadingMapping, sheet: SurveySheetName): HeadingMapping => {
  const own = Object.entries(mapping).filter(([key]) => wordsOf(key).join(" ") === wordsOf(sheet).join(" "));
  return Object.fromEntries(own);
};

/**
 * Reads a site sheet in either shape: items with Value and Note, or items with a column per panel and one for the
 * whole site. Items that mean nothing to us are kept as typed.
 */
export function readSite(
  typed: TypedSheet,
  input: { readonly mapping?: HeadingMapping; readonly currency: string },
): SiteRead {
  const items = siteItems(typed);
  const { known, matches } = knownItems(typed, items, input.mapping ?? {});
  const queries: Query[] = [];
  const ask = (item: SiteItem, typedText: string, message: string) =>
    queries.push({ sheet: typed.sheet, row: item.row, column: item.item, typed: typedText, message });
  const use = <T>(item: SiteItem, text: string, parse: (text: string) => Parsed<T>): T | undefined => {
    if (text === "" || isNothing(text)) return undefined;
    const answer = parse(text);
    if (!answer.ok) ask(item, text, answer.message);
    else for (const remark of answer.remarks) ask(item, text, remark);
    return answer.ok ? answer.value : undefined;
  };
  const of = (name: string) => known.find((one) => one.site === name)?.item;
  const textOf = (name: string): string | undefined => {
    const item = of(name);
    if (item === undefined) return undefined;
    const text = item.value !== "" ? item.value : [...item.byPanel.values()].join("; ");
    return text === "" ? undefined : text;
  };
  const temperature = of("temperatureCelsius");
  const startOn = of("startOn");
  const release = { name: textOf("releaseName"), date: textOf("releaseDate") };
  const releaseItem = of("releaseName") ?? of("releaseDate");
  if (releaseItem !== undefined && (release.name === undefined) !== (release.date === undefined)) {
    ask(
      releaseItem,
      release.name ?? release.date ?? "",
      "A release of the life-safety circuits needs both a name and a date; it does not count.",
    );
  }
  const currency = textOf("currency") ?? input.currency;
  const onTest = textOf("accountOnTest");
  const site: SurveySite = {
    currency: /^[A-Z]{3}$/.test(currency) ? currency : input.currency,
    ...field("name", textOf("name")),
    ...field("surveyed", joined(of("surveyed"))),
    ...field("startOn", startOn === undefined ? undefined : use(startOn, startOn.value, dateIn)),
    ...field("yearBuilt", yearIn(textOf("yearBuilt"))),
    ...field("hazardRegister", joined(of("hazardRegister"))),
    ...field(
      "temperatureCelsius",
      temperature === undefined || temperature.value === ""
        ? undefined
        : use(temperature, withUnit(temperature), (text) => parseTemperature(text))?.celsius,
    ),
    ...field("meter", meterOf(of("meter"), of("leads"), use)),
    ...field("standbyHours", hoursIn(joined(of("standbyHours")))),
    ...field("monitored", joined(of("monitored"))),
    ...(onTest === undefined ? {} : { accountOnTest: /^(yes|y|true)\b/i.test(onTest) }),
    ...(release.name !== undefined && release.date !== undefined
      ? { lifeSafetyRelease: { name: release.name, date: release.date } }
      : {}),
    typed: Object.fromEntries(items.map((item) => [item.item, joined(item) ?? ""])),
  };
  if (currency !== site.currency)
    ask(
      of("currency") ?? items[0] ?? emptyItem,
      currency,
      `Expected a three-letter currency code such as USD; ${site.currency} is used.`,
    );
  const count = Number(/^\d+/.exec(textOf("panelCount") ?? "")?.[0]);
  return {
    site,
    panels: panelsOf(known, use),
    ...(Number.isInteger(count) && count > 0 ? { panelCount: count } : {}),
    matches,
    queries,
  };
}

/** A calendar date as YYYY-MM-DD; what follows it (a time of day) is left aside. */
function dateIn(text: string): Parsed<string> {
  const iso = /^\d{4}-\d{2}-\d{2}/.exec(text)?.[0];
  const time = iso === undefined ? Number.NaN : Date.parse(`${iso}T00:00:00Z`);
  if (iso !== undefined && Number.isFinite(time) && new Date(time).toISOString().startsWith(iso)) {
    return { ok: true, value: iso, remarks: [] };
  }
  return { ok: false, message: "Expected a day as YYYY-MM-DD, such as 2026-03-16; orders stay without dates." };
}

const emptyItem: SiteItem = { row: 1, item: "", value: "", note: "", byPanel: new Map() };
const joined = (item: SiteItem | undefined): string | undefined => {
  if (item === undefined) return undefined;
  const panels = [...item.byPanel].map(([panel, text]) => `${panel}: ${text}`);
  const text = [...panels, item.value, item.note].filter((part) => part !== "").join("; ");
  return text === "" ? undefined : text;
};
const yearIn = (text: string | undefined): number | undefined => {
  const year = /\b(1[89]\d\d|20\d\d)\b/.exec(text ?? "")?.[1];
  return year === undefined ? undefined : Number(year);
};
const hoursIn = (text: string | undefined): number | undefined => {
  const found =
    /(\d+(?:\.\d+)?)\s*(?:h|hr|hrs|hours?)\b/i.exec(text ?? "")?.[1] ?? /^\d+(?:\.\d+)?$/.exec(text ?? "")?.[0];
  return found === undefined ? undefined : Number(found);
};

/** "Temperature C" states the unit of a bare number below it; the sheet's own unit is °C. */
const withUnit = (item: SiteItem, text = item.value): string =>
  /[a-z°]/i.test(text) ? text : /(\bF\b|°F)/.test(item.item) ? `${text} F` : `${text} C`;

type Use = <T>(item: SiteItem, text: string, parse: (text: string) => Parsed<T>) => T | undefined;

function meterOf(meter: SiteItem | undefined, leads: SiteItem | undefined, use: Use): SurveySite["meter"] {
  if (meter === undefined) return undefined;
  const cells = [meter.value, ...meter.byPanel.values(), meter.note].filter((text) => text !== "");
  const accuracy = cells.find((text) => /%/.test(text)) ?? "";
  const leadCell =
    leads === undefined ? cells.find((text) => /\bleads?\b/i.test(text) && text !== accuracy) : (joined(leads) ?? "");
  const leadWords =
    leadCell === undefined || leadCell === "" || /\bleads?\b/i.test(leadCell) ? (leadCell ?? "") : `leads ${leadCell}`;
  const read = use(meter, [accuracy, leadWords].filter((text) => text !== "").join("; "), (text) => parseMeter(text));
  if (read?.percent === undefined) return undefined;
  return {
    percent: read.percent,
    counts: read.counts ?? 0,
    ...field("displayCounts", read.displayCounts),
    leadsZeroed: read.leadsZeroed ?? false,
    ...field("leadOhms", read.leadOhms),
  };
}

function panelsOf(known: readonly Known[], use: Use): readonly SurveyPanel[] {
  const names = [...new Set(known.flatMap(({ item }) => [...item.byPanel.keys()]))];
  const single = names.length === 0;
  const place = known.find(({ site }) => site === "panelCount")?.item.note;
  return (single ? ["P1"] : names).map((panel): SurveyPanel => {
    const of = (column: string) => known.find((one) => one.panel === column)?.item;
    const text = (column: string): string => {
      const item = of(column);
      return item === undefined ? "" : single ? item.value : (item.byPanel.get(panel) ?? "");
    };
    const words = (column: string): string | undefined => {
      const item = of(column);
      const own = [text(column), single ? (item?.note ?? "") : ""].filter((part) => part !== "").join("; ");
      return own === "" ? undefined : own;
    };
    const number = <T>(column: string, parse: (text: string) => Parsed<T>): T | undefined => {
      const item = of(column);
      return item === undefined ? undefined : use(item, text(column), parse);
    };
    const temperature = of("temperatureCelsius");
    return {
      panel,
      ...field("place", words("place") ?? (single && place !== "" ? place : undefined)),
      ...field("mains", words("mains")),
      ...field("battery", words("battery")),
      ...field("auxMilliamps", number("auxMilliamps", (cell) => parseMilliamps(cell))?.milliamps),
      ...field("auxVolts", number("auxVolts", (cell) => parseVolts(cell))?.volts),
      ...field("auxVoltsOnBattery", number("auxVoltsOnBattery", (cell) => parseVolts(cell))?.volts),
      ...field(
        "temperatureCelsius",
        temperature === undefined || single
          ? undefined
          : use(temperature, withUnitIfAny(temperature, text("temperatureCelsius")), (cell) => parseTemperature(cell))
              ?.celsius,
      ),
      typed: Object.fromEntries(
        known.flatMap(({ item }) => (item.byPanel.has(panel) ? [[item.item, item.byPanel.get(panel) ?? ""]] : [])),
      ),
    };
  });
}

const withUnitIfAny = (item: SiteItem, text: string): string => (text === "" ? "" : withUnit(item, text));
