import { textWidth } from "./text-width.js";

/** Text that can stand in XML: markup escaped, characters XML does not allow left out. */
export function xmlText(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: exactly those that XML 1.0 does not allow
  const allowed = text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu, "");
  return allowed.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}

const round = (value: number): string => String(Math.round(value * 100) / 100);

/** A straight line. */
export function line(x1: number, y1: number, x2: number, y2: number, look: Look = {}): string {
  return `<line x1="${round(x1)}" y1="${round(y1)}" x2="${round(x2)}" y2="${round(y2)}" ${stroke(look)}/>`;
}

/** A line through points. */
export function polyline(points: readonly (readonly [number, number])[], look: Look = {}): string {
  const list = points.map(([x, y]) => `${round(x)},${round(y)}`).join(" ");
  return `<polyline points="${list}" fill="none" ${stroke(look)}/>`;
}

/** A closed shape. */
export function polygon(points: readonly (readonly [number, number])[], fill: string, look: Look = {}): string {
  const list = points.map(([x, y]) => `${round(x)},${round(y)}`).join(" ");
  return `<polygon points="${list}" fill="${fill}" ${stroke(look)}/>`;
}

export function rect(
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  fill = "none",
  look: Look = {},
): string {
  const { x, y, width, height } = box;
  return `<rect x="${round(x)}" y="${round(y)}" width="${round(width)}" height="${round(height)}" fill="${fill}" ${stroke(look)}/>`;
}

export function circle(x: number, y: number, radius: number, fill = "white", look: Look = {}): string {
  return `<circle cx="${round(x)}" cy="${round(y)}" r="${round(radius)}" fill="${fill}" ${stroke(look)}/>`;
}

/** How a stroke looks; black, 1.5 px, unbroken when nothing is said. */
export interface Look {
  readonly widthPx?: number;
  readonly dashed?: boolean;
}

function stroke({ widthPx = 1.5, dashed = false }: Look): string {
  return `stroke="black" stroke-width="${widthPx}"${dashed ? ' stroke-dasharray="5 4"' : ""}`;
}

/** Lines of text below one another; `y` is the base line of the first. */
export function textLines(
  lines: readonly string[],
  at: { readonly x: number; readonly y: number },
  look: { readonly sizePx?: number; readonly bold?: boolean; readonly anchor?: "start" | "middle" | "end" } = {},
): string {
  const { sizePx = 12, bold = false, anchor = "start" } = look;
  const weight = bold ? ' font-weight="bold"' : "";
  return lines
    .map((one, i) => {
      const y = round(at.y + i * lineHeight(sizePx));
      return `<text x="${round(at.x)}" y="${y}" font-size="${sizePx}" text-anchor="${anchor}"${weight}>${xmlText(one)}</text>`;
    })
    .join("");
}

/** Distance between base lines. [px] */
export function lineHeight(sizePx: number): number {
  return Math.round(sizePx * 1.3);
}

/** A text on a white patch, so that lines behind it do not run through it. */
export function patchedText(text: string, at: { readonly x: number; readonly y: number }, sizePx = 12): string {
  const width = textWidth(text, sizePx) + 6;
  const patch = `<rect x="${round(at.x - width / 2)}" y="${round(at.y - sizePx)}" width="${round(width)}" height="${round(sizePx * 1.25)}" fill="white"/>`;
  return patch + textLines([text], at, { sizePx, anchor: "middle" });
}

/** The whole picture: black on white, DejaVu Sans, with a title that screen readers say. */
export function svgPicture(picture: {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly parts: readonly string[];
}): string {
  const { width, height, title, parts } = picture;
  const head = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${Math.ceil(height)}" viewBox="0 0 ${width} ${Math.ceil(height)}" font-family="DejaVu Sans" role="img">`;
  const hatch =
    '<defs><pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse"><rect width="6" height="6" fill="white"/><path d="M0 6 L6 0 M-1 1 L1 -1 M5 7 L7 5" stroke="black" stroke-width="1.2"/></pattern></defs>';
  const paper = `<rect width="${width}" height="${Math.ceil(height)}" fill="white"/>`;
  return `${head}<title>${xmlText(title)}</title>${hatch}${paper}\n${parts.filter((part) => part !== "").join("\n")}\n</svg>\n`;
}
