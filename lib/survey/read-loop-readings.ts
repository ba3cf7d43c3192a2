import type { OhmsReading } from "../quantities/ohms-reading.js";
import { parseOhms, type TypedOhms } from "../quantities/parse-ohms.js";
import { field } from "./read-tables.js";
import type { RowReader } from "./row-reader.js";
import type { NoteFact, SurveyCable, SurveyLoop } from "./survey.js";

/** Least voltage that is taken for the supply of a 12 V detector rather than for a stray one. [V] */
const SUPPLY_VOLTS = { least: 8, most: 16 };

/** Voltages of one row, sorted by where they stood. */
export interface SupplyVolts {
  readonly pairDc?: number;
  readonly pairAc?: number;
  readonly atDetector?: number;
  readonly taken: boolean;
}

/** A column that says only "Volts" holds the supply where a powered detector stands, and the pair's volts elsewhere. */
export function readSupplyVolts(
  row: RowReader,
  cable: SurveyCable | undefined,
  milliamps: number | undefined,
): SupplyVolts {
  const { volts: readVolts, words } = row.readers;
  const dc = row.parsed("voltsPairDc", readVolts);
  const ac = row.parsed("voltsPairAc", readVolts);
  const atDetector = row.parsed("voltsAtDetector", readVolts)?.volts;
  const saysPair = /\b(pair|loop|zone|lifted)\b/i.test(row.headingOf("voltsPairDc"));
  const device = row.text("device") ?? "";
  const supplied = (milliamps ?? 0) > 0 || words(device).includes("powered") || (cable?.conductors ?? 0) >= 4;
  const volts = dc?.volts;
  const isSupply =
    dc?.kind !== "ac" && volts !== undefined && volts >= SUPPLY_VOLTS.least && volts <= SUPPLY_VOLTS.most;
  if (!saysPair && supplied && isSupply && atDetector === undefined)
    return { atDetector: volts, ...field("pairAc", ac?.volts), taken: true };
  const acVolts = ac?.volts ?? (dc?.kind === "ac" ? volts : undefined);
  return {
    ...field("pairDc", dc?.kind === "ac" ? undefined : volts),
    ...field("pairAc", acVolts),
    ...field("atDetector", atDetector),
    taken: false,
  };
}

/** One reading, or several as "1: OL; 2: 2.2k" with opening 1 nearest the panel. */
export function readOpened(row: RowReader, closed: OhmsReading | undefined): SurveyLoop["opened"] | undefined {
  const text = row.text("opened");
  if (text === undefined) return undefined;
  const options = closed === undefined ? {} : { sameAs: closed };
  const numbered = text
    .split(/[;\n]|,\s+(?=\d+\s*:)/)
    .map((part) => /^\s*(?:opening\s*|no\.?\s*|#)?(\d{1,3})\s*[:=]\s*(.+)$/i.exec(part));
  if (numbered.every((match) => match !== null)) {
    const list = numbered.flatMap((match) => {
      const reading = row.ohms("opened", options, match?.[2] ?? "")?.reading;
      return reading === undefined ? [] : [{ opening: Number(match?.[1]), reading }];
    });
    return list.length === 0 ? undefined : list;
  }
  const reading = row.ohms("opened", options)?.reading;
  return reading === undefined ? undefined : [{ opening: null, reading }];
}

/** Readings beside the shut and the opened one. */
export function readOtherReadings(
  row: RowReader,
  closed: TypedOhms | undefined,
): Pick<SurveyLoop, "openedTogether" | "reversed" | "earth" | "toOtherPair"> {
  const options = closed?.reading === undefined ? {} : { sameAs: closed.reading };
  const one = (column: string) => row.ohms(column, options)?.reading;
  const earth = earthOf(row);
  return {
    ...field("openedTogether", one("openedTogether")),
    ...field("reversed", row.text("reversed") === undefined ? closed?.reversed : one("reversed")),
    ...field("earth", earth),
    ...field("toOtherPair", one("toOtherPair")),
  };
}

/** One figure stands for the lower of the two conductors; "a: OL; b: 40k" names both. */
function earthOf(row: RowReader): SurveyLoop["earth"] | undefined {
  const both = /^\s*a\s*[:=]\s*([^;,/]+)[;,/]\s*b\s*[:=]\s*(.+)$/i.exec(row.text("earth") ?? "");
  const one = (text: string) => row.ohms("earth", {}, text)?.reading;
  if (both !== null) return { ...field("aOhms", one(both[1] ?? "")), ...field("bOhms", one(both[2] ?? "")) };
  const reading = row.ohms("earth")?.reading;
  return reading === undefined ? undefined : { aOhms: reading };
}

/** The tap column, else a closed reading that jumped, else two readings in the notes that say it moved. */
export function readTapped(
  row: RowReader,
  closed: TypedOhms | undefined,
  facts: readonly NoteFact[],
  notes: string,
): SurveyLoop["tapped"] | undefined {
  const typed = row.ohms("tapped")?.reading;
  if (typed !== undefined)
    return {
      low: { ohms: typed.lowOhms, lowOhms: typed.lowOhms, highOhms: typed.lowOhms },
      high: { ohms: typed.highOhms, lowOhms: typed.highOhms, highOhms: typed.highOhms },
    };
  const spread = (low: OhmsReading["ohms"], high: OhmsReading["ohms"]) => ({
    low: { ohms: low, lowOhms: low, highOhms: low },
    high: { ohms: high, lowOhms: high, highOhms: high },
  });
  const reading = closed?.reading;
  const moved = facts.some(({ fact }) => fact === "jumping");
  if (reading !== undefined && reading.lowOhms !== reading.highOhms && (closed?.behaviour === "jumping" || moved))
    return spread(reading.lowOhms, reading.highOhms);
  const then = /\breads?\s+(\d[\d.,]*\s?[kM]?)\s+then\s+(\d[\d.,]*\s?[kM]?)/i.exec(notes);
  if (then === null) return undefined;
  const values = [then[1] ?? "", then[2] ?? ""]
    .map((text) => parseOhms(text.replace(/[.,]$/, "")))
    .flatMap((answer) =>
      answer.ok && typeof answer.value?.reading?.ohms === "number" ? [answer.value.reading.ohms] : [],
    );
  if (values.length !== 2) return undefined;
  row.ask(
    "notes",
    `"${then[0]}" was taken as the lowest and highest reading of an unsteady loop. Write them in the column for tapping.`,
    then[0],
  );
  return spread(Math.min(...values), Math.max(...values));
}
