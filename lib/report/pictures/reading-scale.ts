import { InputError } from "../../problems/input-error.js";
import type { Ohms } from "../../quantities/ohms-reading.js";
import { circle, line, lineHeight, polygon, rect, svgPicture, textLines } from "./svg.js";
import { textWidth, wrapText } from "./text-width.js";

/** A reading shown on the scale. */
export interface ScaleReading {
  /** "shut", "opening 2 open", "reversed". */
  readonly label: string;
  readonly ohms: Ohms;
}

/** A range shown as a bar. */
export interface ScaleBand {
  readonly label: string;
  readonly lowOhms: number;
  readonly highOhms: Ohms;
  /** expected: hatched. input: the band the new input calls normal, a plain frame. other: a dashed frame. */
  readonly kind: "expected" | "input" | "other";
}

export interface ReadingScalePicture {
  readonly title: string;
  readonly readings: readonly ScaleReading[];
  readonly bands: readonly ScaleBand[];
}

const WIDTH = 760;
const MARGIN = 14;
/** Left of this stand the bands' names. */
const NEAR_ZERO = { x: 214, width: 54 };
const AXIS = { from: 268, to: 672 };
const OVER = { x: 672, width: 74 };
/** The logarithmic part runs from 1 Ω to 10 MΩ; below is "near zero", beyond it still over-range is a place of its own. */
const DECADES = 7;

/**
 * Readings of one loop on a logarithmic scale beside the ranges that were expected: near zero at the left edge,
 * over-range at the right. Every reading has its own sign (filled, hollow, diamond …) and its value in words; the
 * picture needs no colour. SVG text.
 * @throws {@link InputError} when a reading or a band is negative or not finite, or a band runs backwards.
 */
export function readingScale(picture: ReadingScalePicture): string {
  for (const { label, ohms } of picture.readings) checkOhms(label, ohms);
  for (const band of picture.bands) checkBand(band);
  const title = wrapText({ text: picture.title, sizePx: 15, widthPx: WIDTH - 2 * MARGIN, bold: true });
  const labels = placeLabels(picture.readings);
  const labelsTop = 26 + title.length * lineHeight(15);
  const levels = signLevels(picture.readings);
  const axisY = labelsTop + labels.height + 20 + Math.max(0, ...levels) * SIGN_HEIGHT;
  let y = axisY + 46;
  const rows = picture.bands.map((band) => {
    const text = `${band.label}: ${rangeText(band)}`;
    const lines = wrapText({ text, sizePx: 12, widthPx: NEAR_ZERO.x - MARGIN - 12 });
    const height = Math.max(26, lines.length * lineHeight(12) + 8);
    const row = { band, lines, y, height };
    y += height;
    return row;
  });
  const bottom = y + 4;
  const parts = [
    textLines(title, { x: MARGIN, y: 26 }, { sizePx: 15, bold: true }),
    axis(axisY, bottom),
    ...rows.map(bandRow),
    ...picture.readings.map((reading, i) => {
      const label = labels.rows[i];
      return label === undefined
        ? ""
        : readingMark(reading, { index: i, level: levels[i] ?? 0, axisY, bottom, labelsTop, label });
    }),
  ];
  return svgPicture({ width: WIDTH, height: bottom + 12, title: picture.title, parts });
}

function checkOhms(label: string, ohms: Ohms): void {
  if (ohms === "OL" || (Number.isFinite(ohms) && ohms >= 0)) return;
  throw new InputError({ field: label, got: String(ohms), expected: '0 Ω or more, or "OL"' });
}

function checkBand({ label, lowOhms, highOhms }: ScaleBand): void {
  checkOhms(label, lowOhms);
  checkOhms(label, highOhms);
  if (highOhms === "OL" || lowOhms <= highOhms) return;
  throw new InputError({
    field: label,
    got: `${lowOhms} to ${highOhms} Ω`,
    expected: "a low value not above the high one",
  });
}

/** Place of a value on the picture. [px] */
export function scaleX(ohms: Ohms): number {
  if (ohms === "OL") return OVER.x + OVER.width / 2;
  if (ohms < 1) return NEAR_ZERO.x + 8 + ohms * (NEAR_ZERO.width - 12);
  const along = Math.min(1, Math.log10(ohms) / DECADES);
  return AXIS.from + along * (AXIS.to - AXIS.from);
}

function axis(y: number, bottom: number): string {
  const names = ["1 Ω", "10", "100", "1 k", "10 k", "100 k", "1 M", "10 M"];
  const step = (AXIS.to - AXIS.from) / DECADES;
  const ticks = names.map((name, i) => {
    const x = AXIS.from + i * step;
    const edge = i === 0 || i === DECADES;
    return [
      line(x, y - 5, x, y + 5),
      line(x, y + 5, x, bottom, { widthPx: edge ? 1.5 : 0.4 }),
      textLines(
        [name],
        { x: i === DECADES ? x - 4 : x + 2, y: y + 18 },
        { sizePx: 11, anchor: i === DECADES ? "end" : i === 0 ? "start" : "middle" },
      ),
    ].join("");
  });
  const minor = Array.from({ length: DECADES }, (_, i) =>
    [2, 5].map((digit) => {
      const x = AXIS.from + (i + Math.log10(digit)) * step;
      return line(x, y - 3, x, y + 3, { widthPx: 1 });
    }),
  ).flat();
  return [
    line(NEAR_ZERO.x, y, OVER.x + OVER.width, y, { widthPx: 2 }),
    rect({ x: NEAR_ZERO.x, y, width: OVER.x + OVER.width - NEAR_ZERO.x, height: bottom - y }, "none", { widthPx: 1 }),
    ...ticks,
    ...minor,
    textLines(["near", "zero"], { x: NEAR_ZERO.x + NEAR_ZERO.width / 2, y: y + 18 }, { sizePx: 11, anchor: "middle" }),
    textLines(["over-range", "OL"], { x: OVER.x + OVER.width / 2, y: y + 18 }, { sizePx: 11, anchor: "middle" }),
  ].join("");
}

function bandRow(row: {
  readonly band: ScaleBand;
  readonly lines: readonly string[];
  readonly y: number;
  readonly height: number;
}): string {
  const { band, lines, y, height } = row;
  const from = scaleX(band.lowOhms);
  const to = band.highOhms === "OL" ? OVER.x + OVER.width - 4 : scaleX(band.highOhms);
  const width = Math.max(4, to - from);
  const box = { x: width > to - from ? from - 2 : from, y: y + (height - 14) / 2, width, height: 14 };
  const fill = band.kind === "expected" ? "url(#hatch)" : "white";
  return [
    textLines(lines, { x: MARGIN, y: y + (height - lines.length * lineHeight(12)) / 2 + 12 }),
    rect(box, fill, { widthPx: band.kind === "input" ? 2.5 : 1.5, dashed: band.kind === "other" }),
  ].join("");
}

interface LabelRow {
  readonly text: string;
  readonly x: number;
  readonly row: number;
  readonly anchor: "start" | "middle" | "end";
}

const LABEL_ROW = 18;

/** Puts the readings' labels into rows so that none overlaps another. */
function placeLabels(readings: readonly ScaleReading[]): {
  readonly rows: readonly LabelRow[];
  readonly height: number;
} {
  const taken: { row: number; from: number; to: number }[] = [];
  const rows = readings.map(({ label, ohms }, i) => {
    const text = shorten(`${SIGNS[i % SIGNS.length]?.name ?? ""} ${label}: ${ohmsText(ohms)}`, WIDTH - 2 * MARGIN);
    const width = textWidth(text, 12, true);
    const middle = Math.min(WIDTH - MARGIN - width / 2, Math.max(MARGIN + width / 2, scaleX(ohms)));
    let row = 0;
    const from = middle - width / 2 - 8;
    const to = middle + width / 2 + 8;
    while (taken.some((one) => one.row === row && one.from < to && one.to > from)) row++;
    taken.push({ row, from, to });
    return { text, x: middle, row, anchor: "middle" as const };
  });
  const most = Math.max(0, ...taken.map((one) => one.row + 1));
  return { rows, height: most * LABEL_ROW };
}

/** A label wider than the picture ends in dots: its value stands first in every table beside it. */
function shorten(text: string, widthPx: number): string {
  if (textWidth(text, 12, true) <= widthPx) return text;
  const [, value = ""] = /: ([^:]*)$/.exec(text) ?? [];
  let kept = text.slice(0, text.length - value.length - 2);
  while (textWidth(`${kept}…: ${value}`, 12, true) > widthPx) kept = kept.slice(0, -1);
  return `${kept}…: ${value}`;
}

interface Sign {
  readonly name: string;
  readonly draw: (x: number, y: number) => string;
}

const triangle = (x: number, y: number): [number, number][] => [
  [x - 7, y - 13],
  [x + 7, y - 13],
  [x, y - 1],
];
const diamond = (x: number, y: number): [number, number][] => [
  [x - 6, y - 8],
  [x, y - 15],
  [x + 6, y - 8],
  [x, y - 1],
];

/** Signs told apart without colour; the letter joins a mark to its label when two lie close together. */
const SIGNS: readonly Sign[] = [
  { name: "▼", draw: (x, y) => polygon(triangle(x, y), "black") },
  { name: "▽", draw: (x, y) => polygon(triangle(x, y), "white") },
  { name: "◆", draw: (x, y) => polygon(diamond(x, y), "black") },
  { name: "◇", draw: (x, y) => polygon(diamond(x, y), "white") },
  { name: "●", draw: (x, y) => circle(x, y - 7, 5.5, "black") },
  { name: "○", draw: (x, y) => circle(x, y - 7, 5.5) },
];

interface MarkPlace {
  readonly index: number;
  readonly level: number;
  readonly axisY: number;
  readonly bottom: number;
  readonly labelsTop: number;
  readonly label: LabelRow;
}

function readingMark(reading: ScaleReading, place: MarkPlace): string {
  const { index, level, axisY, bottom, labelsTop, label } = place;
  const x = scaleX(reading.ohms);
  const base = labelsTop + label.row * LABEL_ROW + 12;
  const sign = SIGNS[index % SIGNS.length];
  return [
    line(x, axisY - 6, x, axisY + 6, { widthPx: 2 }),
    // The line passes below the figures of the axis.
    line(x, axisY + 36, x, bottom, { widthPx: 2, dashed: index > 0 }),
    sign === undefined ? "" : sign.draw(x, axisY - level * SIGN_HEIGHT),
    textLines([label.text], { x: label.x, y: base }, { sizePx: 12, bold: true, anchor: label.anchor }),
  ].join("");
}

const SIGN_HEIGHT = 16;

/** How high each reading's sign stands, so that signs of like readings stand above one another. */
function signLevels(readings: readonly ScaleReading[]): number[] {
  const levels: number[] = [];
  readings.forEach(({ ohms }, i) => {
    const near = levels.filter((_, j) => Math.abs(scaleX(readings[j]?.ohms ?? 0) - scaleX(ohms)) < 15);
    levels[i] = near.length === 0 ? 0 : Math.max(...near) + 1;
  });
  return levels;
}

function rangeText({ lowOhms, highOhms }: ScaleBand): string {
  return `${ohmsText(lowOhms)} to ${ohmsText(highOhms)}`;
}

/** A value as a technician writes it, never broken before its unit. */
function ohmsText(ohms: Ohms): string {
  if (ohms === "OL") return "OL";
  if (ohms >= 1e6) return `${Number((ohms / 1e6).toPrecision(3))}\u00a0MΩ`;
  if (ohms >= 1e3) return `${Number((ohms / 1e3).toPrecision(3))}\u00a0kΩ`;
  return `${Number(ohms.toPrecision(3))}\u00a0Ω`;
}
