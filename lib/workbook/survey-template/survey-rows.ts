import { askedSettings } from "../../reference/generated/asked-settings.js";
import { moneySettings } from "../../reference/generated/demo/money-settings.js";
import type { SurveySheetName } from "../../survey/columns.js";
import { mapHeadings } from "../../survey/map-headings.js";
import { assumedMark } from "../../survey/read-tables.js";
import type { Survey, SurveyLoop } from "../../survey/survey.js";

/** What one cell of a survey sheet holds; absent cells are empty. */
export type SheetRow = Readonly<Record<string, string | number | undefined>>;

const isBare = (text: string | undefined): text is string =>
  text !== undefined && /^[~<>]?\s*[\d.,]+\s*\??$/.test(text);
const numberIn = (text: string): number => Number(text.replace(/[^\d.]/g, ""));

/**
 * The row as typed, made to stand under our headings: a number that took its unit from another heading or from its
 * neighbours gets that unit, and supply volts move to the column that says so.
 */
export function loopRow(loop: SurveyLoop): SheetRow {
  const { typed } = loop;
  const row: Record<string, string | undefined> = { ...typed, key: loop.key, panel: loop.panel, loop: loop.loop };
  const meters = loop.run?.meters;
  const run = typed["run"];
  if (run !== undefined && meters !== undefined && !/\d\s*(['a-z])/i.test(run.replace(/\b(total|all round)\b/gi, ""))) {
    const feet = Math.abs(meters / numberIn(run) - 0.3048) < 0.002;
    row["run"] = run.replace(/(\d)(?!.*\d)/, feet ? "$1 ft" : "$1 m");
  }
  for (const [column, ohms] of [
    ["closed", loop.closed?.ohms],
    ["opened", loop.opened?.[0]?.reading.ohms],
    ["earth", loop.earth?.aOhms?.ohms],
    ["eolValue", loop.eolOhms],
  ] as const) {
    const text = typed[column];
    if (isBare(text) && typeof ohms === "number" && Math.abs(ohms / numberIn(text) - 1000) < 1)
      row[column] = `${text}k`;
  }
  if (loop.voltsAtDetector !== undefined && typed["voltsAtDetector"] === undefined) {
    row["voltsAtDetector"] = typed["voltsPairDc"];
    row["voltsPairDc"] = undefined;
  }
  if (loop.powered !== undefined) row["powered"] = loop.powered ? "yes" : "no";
  row["notes"] = loop.notes;
  return row;
}

/** Items of the site in our words; items that mean nothing to us follow as they were typed. */
export function siteRows(
  survey: Survey,
): readonly { readonly column?: string; readonly item: string; readonly value: string | number }[] {
  const { site } = survey;
  const meter = site.meter;
  const headings = Object.keys(site.typed);
  const matches = (["Site", "Panels"] as const).flatMap((sheet) => mapHeadings({ sheet, name: sheet, headings }));
  /** Words beside the figure would be lost with the figure alone. */
  const typedAs = (wanted: string): string | undefined => {
    const at = matches.find(({ column }) => column === wanted)?.position;
    return at === undefined ? undefined : site.typed[headings[at] ?? ""];
  };
  const known: readonly (readonly [string, string | number | undefined])[] = [
    ["name", site.name],
    ["surveyed", site.surveyed],
    ["currency", site.currency],
    ["yearBuilt", typedAs("yearBuilt") ?? site.yearBuilt],
    ["hazardRegister", site.hazardRegister],
    ["temperatureCelsius", site.temperatureCelsius],
    [
      "meter",
      meter === undefined
        ? undefined
        : `${meter.percent}% + ${meter.counts}${meter.displayCounts === undefined ? "" : `, ${meter.displayCounts} counts`}`,
    ],
    [
      "leads",
      meter === undefined
        ? undefined
        : meter.leadOhms === undefined
          ? meter.leadsZeroed
            ? "zeroed"
            : "not zeroed"
          : `${meter.leadOhms} ${meter.leadsZeroed ? "zeroed" : "not zeroed"}`,
    ],
    ["standbyHours", site.standbyHours],
    ["monitored", site.monitored],
    ["accountOnTest", site.accountOnTest === undefined ? undefined : site.accountOnTest ? "yes" : "no"],
    ["releaseName", site.lifeSafetyRelease?.name],
    ["releaseDate", site.lifeSafetyRelease?.date],
    ["panelCount", survey.panels.length],
  ];
  const ours = known.flatMap(([column, value]) => (value === undefined ? [] : [{ column, item: column, value }]));
  const understood = new Set(matches.flatMap(({ column, position }) => (column === null ? [] : [position])));
  const others = Object.entries(site.typed).flatMap(([item, value], index) =>
    understood.has(index) || value === "" ? [] : [{ item, value }],
  );
  return [...ours, ...others];
}

/** Three decimals could be thousands to a reader: a fourth settles it. */
const distanceText = (meters: number): string => `${meters}`.replace(/\.\d{3}$/, (decimals) => `${decimals}0`);

/** Rows of every other sheet, by our column names. */
export function tableRows(
  sheet: Exclude<SurveySheetName, "Site">,
  survey: Survey,
  /** Settings that nobody gave; they say so, and stay assumed when they are read again with the same value. */
  assumedSettings: readonly string[] = [],
): readonly SheetRow[] {
  const money = (cents: number) => cents / 100;
  switch (sheet) {
    case "Loops":
      return survey.loops.map(loopRow);
    case "Panels":
      return survey.panels.map(({ typed: _, ...panel }) => panel);
    case "Old zones":
      return survey.oldZones.map((zone) => ({ ...zone }));
    case "Radio tests":
      return survey.radioTests.map(({ meters, ...test }) => ({
        ...test,
        distance: meters === undefined ? undefined : distanceText(meters),
      }));
    case "Price book":
      return survey.priceBook.map(({ unitCents, shippingCents, ...row }) => ({
        ...row,
        unitPrice: money(unitCents),
        shipping: money(shippingCents),
      }));
    case "Input modules":
      return survey.inputModules.map(({ returns, eolOhms, ...row }) => ({
        ...row,
        returns: returns.map(({ holds }) => holds).join(", "),
        eolOhms: eolOhms.join("; "),
      }));
    case "Labour":
      return survey.labour.map((unit) => ({ ...unit }));
    case "Finished jobs":
      return (survey.finishedJobs ?? []).map(({ typed }) => typed);
    case "Settings":
      return [
        ...Object.entries(survey.settings).map(([setting, value]) => {
          const known = [...moneySettings, ...askedSettings].find((row) => row.setting === setting);
          const assumed = assumedSettings.includes(setting) ? `${assumedMark(value)}: ` : "";
          return { setting, value, unit: known?.unit, meaning: `${assumed}${known?.meaning ?? ""}` };
        }),
        ...settingsReady(survey),
      ];
  }
}

/** Settings that stand ready without a value: what the owner is asked for, and in a blank survey all the others too. */
export function settingsReady({ settings }: Pick<Survey, "settings">): readonly SheetRow[] {
  const blank = Object.keys(settings).length === 0;
  const open = ({ setting }: { readonly setting: string }) => settings[setting] === undefined;
  const usual = moneySettings.map(({ setting, unit, meaning, value }) => ({
    setting,
    unit,
    meaning: `${meaning}; empty = ${value}`,
  }));
  return [...(blank ? usual : []), ...askedSettings.filter(open)].map(({ setting, unit, meaning }) => ({
    setting,
    unit,
    meaning,
  }));
}
