import { type ListEntry, numberedList } from "./numbered-list.js";
import { circle, line, lineHeight, patchedText, polygon, polyline, rect, svgPicture, textLines } from "./svg.js";
import { textWidth, wrapText } from "./text-width.js";

/** What the picture of one loop shows. All texts are shown as they come. */
export interface LoopPicture {
  readonly title: string;
  /** The place of the old panel. */
  readonly panel: string;
  /** Size and length of the pair, "22/4, 30 m". */
  readonly cable: string;
  /** In wiring order, number 1 nearest the panel. */
  readonly openings: readonly {
    readonly label: string;
    /** NC opens the series loop when it moves; NO closes across the pair. */
    readonly form: "NC" | "NO";
    /** A resistor across this contact. */
    readonly resistorAcross?: string;
  }[];
  /** Where the end-of-line resistor sits and its value; null when there is none. */
  readonly eol: { readonly at: "farEnd" | "panelInSeries" | "panelAcross" | "unknown"; readonly label: string } | null;
  /** Known joints; `before` is the opening they lie before, counted from 1; one more than the openings = past the last. */
  readonly joints?: readonly { readonly before: number; readonly label: string }[];
  /** Suspected faults; `before` as for joints, null when the place is not known. */
  readonly faults?: readonly {
    readonly kind:
      | "open"
      | "resistance"
      | "short"
      | "leak"
      | "earth"
      | "foreignVoltage"
      | "otherPair"
      | "bypass"
      | "other";
    readonly before: number | null;
    readonly label: string;
  }[];
  readonly notes?: readonly string[];
}

const WIDTH = 760;
const TOP = 96;
const BOTTOM = 196;
const PANEL = { x: 14, y: 60, width: 112, height: 172 };
const FIRST_X = 270;
/** Openings stand before this; room for a mark past the last one follows. */
const LAST_X = 596;
const END_X = 640;
const UNKNOWN_X = 192;
/** More openings than this are drawn as the first, a gap and the last; the list below still names all. */
const MOST_DRAWN = 6;

/**
 * One loop as wired: panel, pair with size and length, openings in order, joints, end-of-line resistor where it sits,
 * and every suspected fault with a flag F1, F2 …; a fault of unknown place is dashed on the pair. Black on white, no
 * meaning by colour. SVG text.
 */
export function loopSchematic(loop: LoopPicture): string {
  const slots = slotsOf(loop.openings.length);
  const xs = new Map(slots.map((slot, i) => [slot, slotX(i, slots.length)]));
  const parts = [
    panelBox(loop),
    pair(loop),
    ...loop.openings.map((opening, i) => {
      const x = xs.get(i + 1);
      return x === undefined ? "" : contact(opening, i + 1, x);
    }),
    slots.includes("gap") ? gap(xs.get("gap") ?? 0, loop.openings.length - slots.length + 1) : "",
    farEnd(loop),
    ...jointMarks(loop, xs),
    ...faultMarks(loop, xs),
  ];
  const title = wrapText({ text: loop.title, sizePx: 15, widthPx: WIDTH - 28, bold: true });
  const shift = (title.length - 1) * lineHeight(15);
  const list = numberedList({
    entries: entriesOf(loop),
    x: PANEL.x,
    y: 262,
    width: WIDTH - 2 * PANEL.x,
    columns: loop.openings.length > 4 ? 2 : 1,
  });
  const body = [...parts, list.svg].join("\n");
  return svgPicture({
    width: WIDTH,
    height: 262 + list.height + 12 + shift,
    title: loop.title,
    parts: [
      textLines(title, { x: PANEL.x, y: 26 }, { sizePx: 15, bold: true }),
      `<g transform="translate(0 ${shift})">`,
      body,
      "</g>",
    ],
  });
}

type Slot = number | "gap";

function slotsOf(count: number): Slot[] {
  const all = Array.from({ length: count }, (_, i) => i + 1);
  if (count <= MOST_DRAWN) return all;
  return [...all.slice(0, 3), "gap", ...all.slice(-2)];
}

function slotX(index: number, count: number): number {
  const step = (LAST_X - FIRST_X) / Math.max(1, count);
  return FIRST_X + step * (index + 0.5);
}

/** Place on the pair just before an opening; past the last one, just before the far end. */
function beforeX(before: number, loop: LoopPicture, xs: ReadonlyMap<Slot, number>): number {
  const step = (LAST_X - FIRST_X) / Math.max(1, xs.size);
  if (before > loop.openings.length) return xs.size === 0 ? (FIRST_X + END_X) / 2 : (LAST_X + END_X) / 2 - 2;
  const x = xs.get(Math.max(1, before)) ?? xs.get("gap") ?? FIRST_X;
  return x - step / 2;
}

function panelBox(loop: LoopPicture): string {
  const { lines, sizePx } = panelName(loop.panel);
  const middle = (TOP + BOTTOM) / 2 - ((lines.length - 1) * lineHeight(sizePx)) / 2 + 4;
  return [
    rect(PANEL, "white", { widthPx: 2 }),
    textLines(lines, { x: PANEL.x + PANEL.width / 2, y: middle }, { sizePx, anchor: "middle" }),
    ...[TOP, BOTTOM].map(
      (y) =>
        circle(PANEL.x + PANEL.width - 10, y, 5) +
        line(PANEL.x + PANEL.width - 13, y + 3, PANEL.x + PANEL.width - 7, y - 3),
    ),
  ].join("");
}

/** The panel's name between its terminals; a name too long for that is shortened there and stands in the list. */
function panelName(panel: string): Fitted {
  return fitted(panel, PANEL.width - 12, [
    { sizePx: 12, most: 5 },
    { sizePx: 10, most: 6 },
  ]);
}

function cableText(cable: string): Fitted {
  return fitted(cable, 160, [
    { sizePx: 12, most: 2 },
    { sizePx: 10, most: 2 },
  ]);
}

function eolText(label: string): Fitted {
  return fitted(label, WIDTH - END_X - 20, [{ sizePx: 11, most: 8 }]);
}

interface Fitted {
  readonly lines: readonly string[];
  readonly sizePx: number;
  /** The text did not fit and ends in dots. */
  readonly shortened: boolean;
}

function fitted(text: string, widthPx: number, tries: readonly { sizePx: number; most: number }[]): Fitted {
  let last: Fitted = { lines: [text], sizePx: 12, shortened: false };
  for (const { sizePx, most } of tries) {
    const lines = wrapText({ text, sizePx, widthPx });
    if (lines.length <= most) return { lines, sizePx, shortened: false };
    last = { lines: [...lines.slice(0, most - 1), "… see list"], sizePx, shortened: true };
  }
  return last;
}

function pair(loop: LoopPicture): string {
  const from = PANEL.x + PANEL.width - 5;
  const { lines, sizePx } = cableText(loop.cable);
  return [
    line(from, TOP, END_X, TOP),
    line(from, BOTTOM, END_X, BOTTOM),
    ...[TOP, BOTTOM].map((at) => line(238, at + 6, 244, at - 6)),
    textLines(lines, { x: PANEL.x + PANEL.width + 8, y: TOP - 46 }, { sizePx }),
  ].join("");
}

function contact(opening: LoopPicture["openings"][number], number: number, x: number): string {
  const label = textLines([String(number)], { x, y: TOP - 18 }, { sizePx: 13, bold: true, anchor: "middle" });
  if (opening.form === "NO") {
    const upper = TOP + 34;
    const lower = BOTTOM - 30;
    return [
      label,
      line(x, TOP, x, upper),
      line(x, lower, x, BOTTOM),
      circle(x, TOP, 2.5, "black"),
      circle(x, BOTTOM, 2.5, "black"),
      line(x, lower, x - 14, upper + 2, { widthPx: 2 }),
      circle(x, upper, 3.5),
      circle(x, lower, 3.5),
      textLines(["NO"], { x: x + 8, y: (upper + lower) / 2 + 4 }, { sizePx: 10 }),
      acrossContact(opening.resistorAcross, x),
    ].join("");
  }
  return [
    label,
    rect({ x: x - 12, y: TOP - 3, width: 24, height: 6 }, "white", { widthPx: 0 }),
    line(x - 12, TOP - 5, x + 14, TOP - 5, { widthPx: 2 }),
    line(x - 12, TOP, x - 12, TOP - 5),
    circle(x - 12, TOP, 3),
    circle(x + 12, TOP, 3),
    acrossContact(opening.resistorAcross, x),
  ].join("");
}

function acrossContact(label: string | undefined, x: number): string {
  if (label === undefined) return "";
  return [
    polyline([
      [x - 15, TOP],
      [x - 15, TOP + 16],
      [x + 15, TOP + 16],
      [x + 15, TOP],
    ]),
    rect({ x: x - 11, y: TOP + 11, width: 22, height: 10 }, "white"),
  ].join("");
}

function gap(x: number, hidden: number): string {
  const cut = [TOP, BOTTOM].map(
    (y) =>
      rect({ x: x - 14, y: y - 4, width: 28, height: 8 }, "white", { widthPx: 0 }) +
      textLines(["· · ·"], { x, y: y + 4 }, { anchor: "middle", bold: true }),
  );
  return [...cut, textLines([`${hidden} more`], { x, y: TOP - 26 }, { sizePx: 11, anchor: "middle" })].join("");
}

function resistorDown(x: number, label: string, dashed = false): string {
  const middle = (TOP + BOTTOM) / 2;
  const { lines } = eolText(label);
  const y = middle - ((lines.length - 1) * lineHeight(11)) / 2 + 4;
  return [
    line(x, TOP, x, middle - 22, { dashed }),
    rect({ x: x - 8, y: middle - 22, width: 16, height: 44 }, "white", { widthPx: 2, dashed }),
    line(x, middle + 22, x, BOTTOM, { dashed }),
    textLines(lines, { x: x + 14, y }, { sizePx: 11 }),
  ].join("");
}

function farEnd(loop: LoopPicture): string {
  const { eol } = loop;
  const closed = loop.openings.some((opening) => opening.form === "NC") || loop.openings.length === 0;
  const plain = closed ? line(END_X, TOP, END_X, BOTTOM) : "";
  if (eol?.at === "farEnd") return resistorDown(END_X, farEndWords(loop));
  if (eol?.at === "unknown") return resistorDown(END_X, farEndWords(loop), true);
  const atPanel = 158;
  const says = wrapText({ text: closed ? "no EOL at the far end" : "no EOL, pair open", sizePx: 11, widthPx: 92 });
  const words = textLines(says, { x: END_X + 10, y: (TOP + BOTTOM) / 2 }, { sizePx: 11 });
  if (eol?.at === "panelAcross") return plain + words + resistorAcrossPanel(atPanel);
  if (eol?.at === "panelInSeries") return plain + words + resistorInSeries(atPanel);
  return plain + words;
}

/** What stands beside a resistor drawn at the far end; "" when none is drawn there. */
function farEndWords({ eol }: LoopPicture): string {
  if (eol?.at === "farEnd") return `EOL ${eol.label}`;
  return eol?.at === "unknown" ? `EOL ${eol.label}, place not known` : "";
}

function resistorInSeries(x: number): string {
  return rect({ x: x - 18, y: TOP - 7, width: 36, height: 14 }, "white", { widthPx: 2 }) + eolSign(x, TOP - 14);
}

function resistorAcrossPanel(x: number): string {
  const middle = (TOP + BOTTOM) / 2;
  return [
    line(x, TOP, x, BOTTOM),
    circle(x, TOP, 2.5, "black"),
    circle(x, BOTTOM, 2.5, "black"),
    rect({ x: x - 7, y: middle - 20, width: 14, height: 40 }, "white", { widthPx: 2 }),
    eolSign(x, TOP - 14),
  ].join("");
}

function eolSign(x: number, y: number): string {
  return textLines(["EOL"], { x, y }, { sizePx: 11, anchor: "middle", bold: true });
}

/** One mark per place; joints that fall on the same place share the first one's sign with a plus. */
function jointMarks(loop: LoopPicture, xs: ReadonlyMap<Slot, number>): string[] {
  const signs = new Map<number, string>();
  (loop.joints ?? []).forEach((joint, i) => {
    const x = beforeX(joint.before, loop, xs);
    const first = signs.get(x);
    signs.set(x, first === undefined ? `J${i + 1}` : first.endsWith("+") ? first : `${first}+`);
  });
  return [...signs].map(([x, sign]) => jointMark(sign, x));
}

function jointMark(sign: string, x: number): string {
  const diamond: [number, number][] = [
    [x - 6, TOP],
    [x, TOP - 6],
    [x + 6, TOP],
    [x, TOP + 6],
  ];
  return polygon(diamond, "white") + textLines([sign], { x, y: TOP - 12 }, { sizePx: 11, anchor: "middle" });
}

function faultMarks(loop: LoopPicture, xs: ReadonlyMap<Slot, number>): string[] {
  const taken: number[] = [];
  return (loop.faults ?? []).map((fault, i) => {
    const known = fault.before !== null;
    // Faults of unknown place stand on the bare pair between panel and first opening.
    const own = fault.kind === "bypass" && fault.before !== null ? xs.get(fault.before) : undefined;
    let x = own ?? (known ? beforeX(fault.before ?? 1, loop, xs) : UNKNOWN_X);
    while (taken.some((other) => Math.abs(other - x) < 31)) x += 31;
    taken.push(x);
    return faultMark(fault.kind, x, known) + flag(`F${i + 1}`, x);
  });
}

/** A flag below the pair, with a pole up to it, that no legend is needed to see. */
function flag(sign: string, x: number): string {
  const y = BOTTOM + 22;
  const width = textWidth(sign, 12, true) + 8;
  return [
    line(x, BOTTOM + 6, x, y, { widthPx: 2.5 }),
    rect({ x: x - width / 2, y, width, height: 19 }, "black", { widthPx: 1 }),
    `<g fill="white">${textLines([sign], { x, y: y + 14 }, { sizePx: 12, bold: true, anchor: "middle" })}</g>`,
  ].join("");
}

function faultMark(kind: NonNullable<LoopPicture["faults"]>[number]["kind"], x: number, known: boolean): string {
  const dashed = !known;
  const bold = { widthPx: 2.5, dashed };
  const middle = (TOP + BOTTOM) / 2;
  switch (kind) {
    case "open":
      return (
        rect({ x: x - 5, y: TOP - 4, width: 10, height: 8 }, "white", { widthPx: 0 }) +
        cross(x, TOP, 8) +
        pole(x, TOP + 12)
      );
    case "resistance":
      return [
        rect({ x: x - 11, y: TOP - 7, width: 22, height: 14 }, "white", { widthPx: 0 }),
        polyline(
          zigzag(x - 11, x + 11, 6).map(([along, off]) => [along, TOP + off] as const),
          { widthPx: 2.5 },
        ),
        pole(x, TOP + 10),
      ].join("");
    case "short":
      return polyline(
        zigzag(TOP, BOTTOM, 7).map(([along, off]) => [x + off, along] as const),
        bold,
      );
    case "leak":
      return [
        line(x, TOP, x, middle - 16, { dashed: true }),
        rect({ x: x - 6, y: middle - 16, width: 12, height: 32 }, "white", { widthPx: 2, dashed: true }),
        line(x, middle + 16, x, BOTTOM, { dashed: true }),
      ].join("");
    case "earth":
      return [
        line(x, TOP, x, middle + 12, { dashed: true }),
        ...[12, 8, 4].map((half, i) =>
          line(x - half, middle + 12 + 5 * i, x + half, middle + 12 + 5 * i, { widthPx: 2.5 }),
        ),
      ].join("");
    case "foreignVoltage":
      return [
        line(x, TOP, x, BOTTOM, { dashed: true }),
        circle(x, middle, 13, "white", { widthPx: 2.5 }),
        polygon(
          [
            [x + 2, middle - 10],
            [x - 6, middle + 2],
            [x - 1, middle + 2],
            [x - 2, middle + 10],
            [x + 6, middle - 2],
            [x + 1, middle - 2],
          ],
          "black",
          { widthPx: 0.5 },
        ),
      ].join("");
    case "otherPair":
      return [
        line(x, TOP, x, TOP + 26, { widthPx: 2.5, dashed: true }),
        polygon(
          [
            [x - 6, TOP + 26],
            [x + 6, TOP + 26],
            [x, TOP + 37],
          ],
          "black",
        ),
        patchedText("other pair", { x, y: TOP + 54 }, 10),
      ].join("");
    case "bypass":
      return (
        `<path d="M${x - 24} ${TOP} C ${x - 20} ${TOP + 36}, ${x + 20} ${TOP + 36}, ${x + 24} ${TOP}" fill="none" stroke="black" stroke-width="2.5"${dashed ? ' stroke-dasharray="5 4"' : ""}/>` +
        pole(x, TOP + 30)
      );
    default:
      return cross(x, BOTTOM, 6);
  }
}

/** Thin lead from a mark on the upper conductor down to its flag. */
function pole(x: number, from: number): string {
  return line(x, from, x, BOTTOM + 6, { widthPx: 1, dashed: true });
}

function cross(x: number, y: number, half: number): string {
  const look = { widthPx: 2.5 };
  return line(x - half, y - half, x + half, y + half, look) + line(x - half, y + half, x + half, y - half, look);
}

/** Points along a line that swing to both sides of it. */
function zigzag(from: number, to: number, swing: number): (readonly [number, number])[] {
  const teeth = 6;
  const step = (to - from) / teeth;
  const inner = Array.from(
    { length: teeth },
    (_, i) => [from + step * (i + 0.5), i % 2 === 0 ? -swing : swing] as const,
  );
  return [[from, 0], ...inner, [to, 0]];
}

function entriesOf(loop: LoopPicture): ListEntry[] {
  const panelEol =
    loop.eol?.at === "panelInSeries"
      ? [
          {
            sign: "EOL",
            text: `${loop.eol.label} in series at the panel: cable not supervised against a short`,
            bold: true,
          },
        ]
      : loop.eol?.at === "panelAcross"
        ? [{ sign: "EOL", text: `${loop.eol.label} across the terminals at the panel`, bold: true }]
        : [];
  const long = [
    { sign: "panel", text: loop.panel, drawn: panelName(loop.panel) },
    { sign: "pair", text: loop.cable, drawn: cableText(loop.cable) },
    { sign: "EOL", text: loop.eol?.label ?? "", drawn: eolText(farEndWords(loop)) },
  ].filter((entry) => entry.drawn.shortened);
  return [
    ...(loop.faults ?? []).map((fault, i) => ({
      sign: `F${i + 1}`,
      text: `suspected: ${fault.label}${fault.before === null ? " (place not known)" : ""}`,
      bold: true,
    })),
    ...panelEol,
    ...loop.openings.map((opening, i) => ({
      sign: String(i + 1),
      text: `${opening.label} (${opening.form})${opening.resistorAcross === undefined ? "" : `, ${opening.resistorAcross} across it`}`,
    })),
    ...(loop.joints ?? []).map((joint, i) => ({ sign: `J${i + 1}`, text: joint.label })),
    ...long.map(({ sign, text }) => ({ sign, text })),
    ...(loop.notes ?? []).map((note) => ({ sign: "–", text: note })),
  ];
}
