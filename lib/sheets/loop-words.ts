import type { BillLine, EstimatedLoop } from "../estimate/estimate.js";
import { formatOhms } from "../quantities/format-ohms.js";
import { formatPercentOnPaper } from "../quantities/format-percent-on-paper.js";
import { bandsFromOhms } from "../quantities/resistor-code.js";
import type { SurveyLoop } from "../survey/survey.js";
import { treatmentWords } from "../treatments/treatment.js";
import { zoneUse, zoneUseWords } from "../zones/zone-use.js";
import { isExcluded } from "./sheet-input.js";

/** Tolerance of end-of-line resistors that are fitted new. [%] */
const newEolPercent = 1;

/** What was read, as typed: shut, then opened. */
export function readingWords(survey: SurveyLoop | undefined): string {
  const { closed, opened } = survey?.typed ?? {};
  const parts = [
    closed === undefined ? "shut: not measured" : `shut ${closed}`,
    opened === undefined ? "opened: not measured" : `opened ${opened}`,
  ];
  return parts.join("; ");
}

/** The verdict in words; an excluded loop has none. */
export function verdictWords(loop: EstimatedLoop): string {
  if (isExcluded(loop)) return "None: excluded, do not touch.";
  return loop.findings.find(({ condition }) => condition === loop.condition)?.words ?? loop.condition;
}

/** How sure the verdict is, to the nearest 5 %; nothing for an excluded loop. */
export const surenessWords = (loop: EstimatedLoop): string =>
  isExcluded(loop) ? "" : formatPercentOnPaper(loop.probability);

/** "1 of 3" openings proved. */
export const provedWords = ({ openingsProved }: EstimatedLoop): string =>
  `${openingsProved.proved} of ${openingsProved.total}`;

export const treatmentOf = (loop: EstimatedLoop): string => treatmentWords[loop.treatment];

/** Colour bands of a new resistor. */
export const bandWords = (ohms: number): string =>
  bandsFromOhms({ ohms, tolerancePercent: newEolPercent, bands: 5 }).join(" – ");

/** Whether a new resistor goes on the loop: a split or a repair may need one too, and then the bill holds one for it. */
export const fitsNewEol = ({ key, treatment }: EstimatedLoop, bill: readonly BillLine[]): boolean =>
  treatment === "fitEol" ||
  treatment === "changeEol" ||
  bill.some((line) => line.class === "eolResistor" && line.loops.includes(key));

/** Zone name from what it protects, else label or loop. */
export const zoneName = (loop: EstimatedLoop): string => loop.protects ?? loop.tag ?? loop.loop;

/** What the zone is for, in words; "not written" when the survey does not say. */
export function useWords(survey: SurveyLoop | undefined): string {
  const use = zoneUse(survey?.use);
  if (use !== undefined) return zoneUseWords(use);
  return survey?.use === undefined ? "not written" : `as written: ${survey.use}`;
}

/** Expected band in words: "2.14 kΩ to 2.31 kΩ". */
export function bandOf({ lowOhms, highOhms }: { readonly lowOhms: number; readonly highOhms: number }): string {
  return `${formatOhms(lowOhms)} to ${formatOhms(highOhms)}`;
}

/** Expected reading with one opening open. */
export function openedWords(loop: EstimatedLoop): string {
  const opened = loop.expectedAsLeft?.opened;
  if (opened === undefined) return "";
  return opened === "OL" ? "over-range" : bandOf(opened);
}

/** Range to set a meter to by hand: the lowest decade of 2 that holds the expected reading; common practice. */
export function meterRange(highOhms: number): string {
  const range = [200, 2000, 20_000, 200_000].find((top) => highOhms <= top * 0.95) ?? 2_000_000;
  return range < 1000 ? `${range} Ω` : range < 1e6 ? `${range / 1000} kΩ` : `${range / 1e6} MΩ`;
}

/** Range for the reading with one opening open, or with a normally-open device pressed. */
export function openedRange({ expectedAsLeft }: EstimatedLoop): string {
  const opened = expectedAsLeft?.opened;
  return opened === undefined || opened === "OL" ? "opened: highest" : `pressed: ${meterRange(opened.highOhms)}`;
}

/** Panel, loop and tag in one line. */
export function cardName({ panel, loop, tag }: EstimatedLoop): string {
  return [panel, `loop ${loop}`, ...(tag === null || tag === "" || tag === loop ? [] : [tag])].join(" · ");
}
