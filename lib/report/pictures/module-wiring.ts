import { numberedList } from "./numbered-list.js";
import { circle, line, lineHeight, rect, svgPicture, textLines } from "./svg.js";
import { wrapText } from "./text-width.js";

/** One conductor on a terminal. */
export interface TerminalConductor {
  /** Colour or number of the conductor, in words. */
  readonly conductor: string;
  /** Tag on the pair. */
  readonly tag: string;
  /** Loop and what it protects. */
  readonly loop: string;
  /** Value and place of the loop's EOL, where this conductor belongs to an input. */
  readonly eol?: string;
}

/** A module's terminal strip and what goes where. */
export interface ModuleWiringPicture {
  /** "Panel A, module 1, type six". */
  readonly title: string;
  /** In the order of the strip. A terminal without conductors is shown as spare. */
  readonly terminals: readonly { readonly terminal: string; readonly conductors: readonly TerminalConductor[] }[];
  /** What each bank or the module is set to: "inputs 1 to 3: 2.2 kΩ". */
  readonly settings: readonly string[];
  readonly notes?: readonly string[];
}

const WIDTH = 760;
const MARGIN = 14;
const STRIP = { x: 14, width: 104 };
const SCREW_X = 104;
const COLUMNS = { conductor: 150, tag: 258, loop: 346, eol: 596 };
const SIZE = 12;

/**
 * The terminal strip of one module with every conductor: terminal, colour, tag, loop, EOL value and place. Several
 * conductors under one screw are drawn to that screw. Black on white, with room to write at the right. SVG text.
 */
export function moduleWiring(picture: ModuleWiringPicture): string {
  const title = wrapText({ text: picture.title, sizePx: 15, widthPx: WIDTH - 2 * MARGIN, bold: true });
  let y = 26 + (title.length - 1) * lineHeight(15) + 18;
  const settings = picture.settings.flatMap((setting) =>
    wrapText({ text: `set: ${setting}`, sizePx: SIZE, widthPx: WIDTH - 2 * MARGIN, bold: true }),
  );
  const settingsY = y + SIZE;
  y += settings.length * lineHeight(SIZE) + 10;
  const headY = y + SIZE;
  y += lineHeight(SIZE) + 6;
  const stripTop = y;
  const rows: string[] = [];
  for (const { terminal, conductors } of picture.terminals) {
    const drawn = terminalRow(terminal, conductors, y);
    rows.push(drawn.svg);
    y += drawn.height;
  }
  const strip = rect({ x: STRIP.x, y: stripTop, width: STRIP.width, height: y - stripTop }, "none", { widthPx: 2.5 });
  const notes = numberedList({
    entries: (picture.notes ?? []).map((text) => ({ sign: "–", text })),
    x: MARGIN,
    y: y + 14,
    width: WIDTH - 2 * MARGIN,
    columns: 1,
  });
  return svgPicture({
    width: WIDTH,
    height: y + 14 + notes.height + 8,
    title: picture.title,
    parts: [
      textLines(title, { x: MARGIN, y: 26 }, { sizePx: 15, bold: true }),
      textLines(settings, { x: MARGIN, y: settingsY }, { bold: true }),
      header(headY),
      ...rows,
      strip,
      notes.svg,
    ],
  });
}

function header(y: number): string {
  return [
    textLines(["terminal"], { x: STRIP.x + 6, y }, { sizePx: 11 }),
    textLines(["conductor"], { x: COLUMNS.conductor, y }, { sizePx: 11 }),
    textLines(["tag"], { x: COLUMNS.tag, y }, { sizePx: 11 }),
    textLines(["loop"], { x: COLUMNS.loop, y }, { sizePx: 11 }),
    textLines(["EOL"], { x: COLUMNS.eol, y }, { sizePx: 11 }),
  ].join("");
}

function terminalRow(
  terminal: string,
  conductors: readonly TerminalConductor[],
  y: number,
): { readonly svg: string; readonly height: number } {
  const name = wrapText({ text: terminal, sizePx: SIZE, widthPx: SCREW_X - STRIP.x - 24, bold: true });
  const parts: string[] = [];
  const middles: number[] = [];
  let down = 6;
  for (const conductor of conductors) {
    const cells = [
      cell(conductor.conductor, COLUMNS.conductor, COLUMNS.tag),
      cell(conductor.tag, COLUMNS.tag, COLUMNS.loop),
      cell(conductor.loop, COLUMNS.loop, COLUMNS.eol),
      cell(conductor.eol ?? "", COLUMNS.eol, WIDTH - 4),
    ];
    const most = Math.max(...cells.map((one) => one.lines.length));
    for (const one of cells) parts.push(textLines(one.lines, { x: one.x, y: y + down + SIZE }, { sizePx: SIZE }));
    middles.push(y + down + SIZE - 4);
    down += most * lineHeight(SIZE) + 4;
  }
  const height = Math.max(26, down + 4, name.length * lineHeight(SIZE) + 10);
  const middle = y + height / 2;
  if (conductors.length === 0) {
    parts.push(textLines(["spare"], { x: COLUMNS.conductor, y: middle + 4 }, { sizePx: SIZE }));
  }
  for (const at of middles) parts.push(line(SCREW_X, middle, 126, at), line(126, at, COLUMNS.conductor - 6, at));
  const nameY = middle - ((name.length - 1) * lineHeight(SIZE)) / 2 + 4;
  const svg = [
    rect({ x: STRIP.x, y, width: STRIP.width, height }, "white", { widthPx: 1 }),
    textLines(name, { x: STRIP.x + 6, y: nameY }, { sizePx: SIZE, bold: true }),
    line(STRIP.x + STRIP.width, y + height, WIDTH - MARGIN, y + height, { widthPx: 0.4 }),
    ...parts,
    circle(SCREW_X, middle, 6),
    line(SCREW_X - 4, middle + 4, SCREW_X + 4, middle - 4),
  ].join("");
  return { svg, height };
}

function cell(text: string, from: number, to: number): { readonly x: number; readonly lines: readonly string[] } {
  return { x: from, lines: text === "" ? [] : wrapText({ text, sizePx: SIZE, widthPx: to - from - 10 }) };
}
