import type { Query } from "../problems/query.js";
import { parseMoney } from "../quantities/parse-money.js";
import { parseOhms } from "../quantities/parse-ohms.js";
import { parseRun } from "../quantities/parse-run.js";
import { cellText } from "../quantities/typed-cell.js";
import { preferredNumbers } from "../reference/generated/preferred-numbers.js";
import { lengthKind, runUnit } from "./neighbours.js";
import type { RawTable } from "./raw-table.js";
import { RowReader } from "./row-reader.js";
import type { InputModuleProfile, LabourUnit, OldZone, PriceBookRow, RadioTest } from "./survey.js";
import { wordsOf } from "./words.js";

/** Rows of one table, read, with what they leave open. */
export interface Rows<T> {
  readonly rows: readonly T[];
  readonly queries: readonly Query[];
}

/** Runs a reader over every row; a row it cannot use is left out and has said why in its queries. */
function readRows<T>(table: RawTable, read: (row: RowReader) => T | undefined): Rows<T> {
  const rows: T[] = [];
  const queries: Query[] = [];
  for (const raw of table.rows) {
    const reader = new RowReader(table, raw);
    const row = read(reader);
    if (row !== undefined) rows.push(row);
    queries.push(...reader.queries);
  }
  return { rows, queries };
}

/** The field when it is known, for spreading into a record with optional fields. */
export function field<K extends string, V>(name: K, value: V | undefined): { readonly [P in K]?: V } {
  return value === undefined ? {} : ({ [name]: value } as { [P in K]: V });
}

export function readOldZones(table: RawTable): Rows<OldZone> {
  const seen = new Map<string, number>();
  return readRows(table, (row) => {
    const zone = row.text("zone");
    if (zone === undefined) {
      row.ask("zone", "This row has no zone number and was left out. Write one.");
      return undefined;
    }
    const count = (seen.get(zone) ?? 0) + 1;
    seen.set(zone, count);
    if (count > 1) row.ask("zone", `Zone ${zone} stands in the list more than once. Check which line holds.`);
    return { zone, ...field("name", row.text("name")), ...field("type", row.text("type")) };
  });
}

/** "10 of 10", "8/10", or heard alone under a heading such as "Heard of 10 sent". */
function heardAndSent(row: RowReader): { readonly heard?: number; readonly sent?: number } {
  const both = /^(\d+)\s*(?:of|\/)\s*(\d+)$/i.exec(row.text("heard") ?? "");
  const inHeading = /\bof\s+(\d+)\b/i.exec(row.headingOf("heard"))?.[1];
  const heard = both === null ? row.number("heard", { least: 0, whole: true }) : Number(both[1]);
  const sent =
    both === null
      ? (row.number("sent", { least: 0, whole: true }) ?? (inHeading === undefined ? undefined : Number(inHeading)))
      : Number(both[2]);
  if (heard !== undefined && sent === undefined)
    row.ask("heard", "How many messages were sent? Write both, such as 8 of 10.");
  if (heard !== undefined && sent !== undefined && heard > sent) {
    row.ask("heard", `${heard} messages heard of ${sent} sent cannot be. The count was not used.`);
    return {};
  }
  return { ...field("heard", heard), ...field("sent", heard === undefined ? undefined : sent) };
}

export function readRadioTests(table: RawTable): Rows<RadioTest> {
  const heading = table.headings.get("distance");
  const stated =
    heading?.unit === "ft" || heading?.unit === "m" ? heading.unit : heading?.how === "our heading" ? "m" : undefined;
  const texts = table.rows.flatMap(({ row, cells }) =>
    cells.has("distance") ? [{ row, text: cellText(cells.get("distance")) }] : [],
  );
  const { unit, queries } = runUnit({
    sheet: table.name,
    heading: heading?.heading ?? "distance",
    headingUnit: stated,
    texts,
  });
  const read = readRows(table, (row): RadioTest | undefined => {
    const location = row.text("location");
    if (location === undefined) {
      row.ask("location", "This row says no place and was left out. Write where the test was made.");
      return undefined;
    }
    const options = unit === undefined ? {} : { bareUnit: unit };
    const bareUnread = unit === undefined && lengthKind(row.text("distance") ?? "") === "bare";
    const distance = bareUnread
      ? undefined
      : row.parsed("distance", (cell, mark) => parseRun(cell, { ...options, ...mark }));
    return {
      location,
      ...field("from", row.text("from")),
      ...field("kind", row.text("kind")),
      ...field("meters", distance?.meters),
      ...field("walls", row.text("walls")),
      ...field("signalDbm", row.number("signalDbm", { least: -150, most: 30 })),
      ...field("noiseDbm", row.number("noiseDbm", { least: -150, most: 30 })),
      ...heardAndSent(row),
      ...field("note", row.text("note")),
    };
  });
  return { rows: read.rows, queries: [...queries, ...read.queries] };
}

export function readPriceBook(table: RawTable): Rows<PriceBookRow> {
  const tiers = new Set<string>();
  return readRows(table, (row): PriceBookRow | undefined => {
    const code = row.text("code");
    const kind = row.text("class");
    const unitCents = row.parsed("unitPrice", (cell, mark) => parseMoney(cell, mark));
    if (code === undefined || kind === undefined || unitCents === undefined) {
      row.ask(null, "Code, class and unit price are all needed; this row was left out.");
      return undefined;
    }
    const fromQuantity = row.number("fromQuantity", { least: 1 }) ?? 1;
    const supplier = row.text("supplier") ?? "supplier not named";
    const tier = JSON.stringify([code, supplier, fromQuantity]);
    if (tiers.has(tier))
      row.ask(
        "fromQuantity",
        `${code} from ${fromQuantity} of ${supplier} stands twice; the first one holds. Delete one.`,
      );
    if (tiers.has(tier)) return undefined;
    tiers.add(tier);
    const eol = row.parsed("eolOhms", (cell, mark) => parseOhms(cell, mark))?.reading?.ohms;
    return {
      code,
      class: kind,
      description: row.text("description") ?? code,
      unit: row.text("unit") ?? "each",
      unitCents,
      packSize: row.number("packSize", { least: 1 }) ?? 1,
      fromQuantity,
      stock: row.number("stock", { least: 0 }) ?? 0,
      supplier,
      shippingCents: row.parsed("shipping", (cell, mark) => parseMoney(cell, mark)) ?? 0,
      leadDays: row.number("leadDays", { least: 0 }) ?? 0,
      taxClass: row.text("taxClass") ?? "material",
      ...field("radioBand", row.known("radioBand")),
      ...field("eolOhms", eol === "OL" ? undefined : eol),
      ...field("ampereHours", row.number("ampereHours", { least: 0 })),
      ...field("gaugeAwg", row.number("gaugeAwg", { least: 0, most: 40 })),
      ...field("conductors", row.number("conductors", { least: 1, whole: true })),
    };
  });
}

/** "2.2k, 4.7k" as listed, or "1k-10k" as every E12 value in that range. [Ω] */
function eolList(row: RowReader): readonly number[] | undefined {
  const text = row.known("eolOhms");
  if (text === undefined) return undefined;
  const listed = text.split(/[,;]\s+|;|,(?=\d*[.]?\d*[kK])/).map((part) => parseOhms(part.trim()));
  const values: number[] = [];
  for (const one of listed) {
    const reading = one.ok ? one.value?.reading : undefined;
    if (reading === undefined || reading.lowOhms === "OL" || reading.highOhms === "OL") {
      row.ask("eolOhms", "Expected ohms such as 2.2k, 4.7k, or a range such as 1k-10k.");
      return undefined;
    }
    values.push(
      ...(reading.lowOhms === reading.highOhms ? [reading.lowOhms] : e12Between(reading.lowOhms, reading.highOhms)),
    );
  }
  return [...new Set(values)].sort((a, b) => a - b);
}

function e12Between(low: number, high: number): readonly number[] {
  const decade = preferredNumbers.find(({ series }) => series === "E12")?.values ?? [];
  return [1, 10, 100, 1000, 10_000, 100_000]
    .flatMap((power) => decade.map((value) => Math.round(value * power * 10) / 10))
    .filter((ohms) => ohms >= low && ohms <= high);
}

export function readInputModules(table: RawTable): Rows<InputModuleProfile> {
  const types = new Set<string>();
  return readRows(table, (row): InputModuleProfile | undefined => {
    const type = row.text("type");
    const inputs = row.number("inputs", { least: 1, most: 256, whole: true });
    const holds = (row.known("returns") ?? "")
      .split(/[\s,;]+/)
      .filter((part) => part !== "")
      .map(Number);
    const eolOhms = eolList(row);
    if (
      type === undefined ||
      inputs === undefined ||
      eolOhms === undefined ||
      holds.length === 0 ||
      holds.some((count) => !(Number.isInteger(count) && count >= 1))
    ) {
      row.ask(
        null,
        "Type, inputs, EOL values and the conductors each return holds (such as 3, 3, 3) are all needed; this module was left out.",
      );
      return undefined;
    }
    if (types.has(type)) {
      row.ask("type", `${type} stands twice; the first one holds. Give the other a name of its own.`);
      return undefined;
    }
    types.add(type);
    const bandLow = row.number("bandLow", { least: 0, most: 1 });
    const bandHigh = row.number("bandHigh", { least: 1, most: 10 });
    const maxConductorOhms = row.number("maxConductorOhms", { least: 0 });
    if (bandLow === undefined || bandHigh === undefined || maxConductorOhms === undefined) {
      row.ask(
        null,
        "Band low, band high and the most conductor resistance are needed to tell what fits; 0.80, 1.20 and 100 Ω are assumed for those missing. Take them from the module's sheet.",
      );
    }
    const minLeak = row.parsed("minLeakOhms", (cell, mark) => parseOhms(cell, mark))?.reading?.ohms;
    return {
      type,
      inputs,
      returns: holds.map((count) => ({ holds: count })),
      eolScope: row.choice("eolScope", ["input", "bank", "module"]) ?? "module",
      ...field("bankSize", row.number("bankSize", { least: 1, whole: true })),
      eolOhms,
      bandLow: bandLow ?? 0.8,
      bandHigh: bandHigh ?? 1.2,
      alarmOn: row.choice("alarmOn", ["open", "short", "either"]) ?? "either",
      ...field("minPulseMs", row.number("minPulseMs", { least: 0 })),
      maxConductorOhms: maxConductorOhms ?? 100,
      ...field("minLeakOhms", minLeak === "OL" ? undefined : minLeak),
      ...field("minLeakTimesEol", row.number("minLeakTimesEol", { least: 0 })),
      milliamps: row.number("milliamps", { least: 0 }) ?? 0,
      priceCode: row.text("priceCode") ?? type,
      stock: row.number("stock", { least: 0, whole: true }) ?? 0,
    };
  });
}

export function readLabour(table: RawTable): Rows<LabourUnit> {
  return readRows(table, (row): LabourUnit | undefined => {
    const task = row.text("task");
    const lowHours = row.number("lowHours", { least: 0, most: 1000 });
    const likelyHours = row.number("likelyHours", { least: 0, most: 1000 });
    const highHours = row.number("highHours", { least: 0, most: 1000 });
    if (task === undefined || lowHours === undefined || likelyHours === undefined || highHours === undefined) {
      row.ask(null, "Task and low, likely and high hours are all needed; this row was left out.");
      return undefined;
    }
    if (!(lowHours <= likelyHours && likelyHours <= highHours)) {
      row.ask("likelyHours", "Hours must rise from low over likely to high; this row was left out.");
      return undefined;
    }
    return { task, lowHours, likelyHours, highHours };
  });
}

/** In front of the meaning of a setting that nobody gave: an estimate writes it, and it holds while the value stays. */
export const assumedMark = (value: number): string => `assumed ${value}`;
const assumedValue = (meaning: string | undefined): number | undefined => {
  const found = /^assumed (\S+):/.exec(meaning ?? "")?.[1];
  return found === undefined ? undefined : Number(found);
};

export function readSettings(table: RawTable): Rows<readonly [string, number]> {
  return readRows(table, (row): readonly [string, number] | undefined => {
    const setting = row.text("setting");
    const value = row.number("value");
    if (value !== undefined && assumedValue(row.text("meaning")) === value) return undefined;
    // A setting that stands ready without a value is not given.
    if (setting !== undefined && row.text("value") === undefined) return undefined;
    if (setting === undefined || value === undefined) {
      row.ask(null, "Setting and value are both needed; this row was left out.");
      return undefined;
    }
    return [wordsOf(setting).length === 1 ? setting : setting.trim(), value];
  });
}
