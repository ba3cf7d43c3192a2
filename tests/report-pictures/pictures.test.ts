import { Resvg } from "@resvg/resvg-js";
import fc from "fast-check";
import { expect, test } from "vitest";
import { InputError } from "../../lib/problems/input-error.js";
import { type LoopPicture, loopSchematic } from "../../lib/report/pictures/loop-schematic.js";
import { type ModuleWiringPicture, moduleWiring } from "../../lib/report/pictures/module-wiring.js";
import { type ReadingScalePicture, readingScale, scaleX } from "../../lib/report/pictures/reading-scale.js";
import { textWidth, wrapText } from "../../lib/report/pictures/text-width.js";
import { fontWidths } from "./font-widths.js";

const FONTS = ["DejaVuSans", "DejaVuSans-Bold"].map((name) => `node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`);
const [normal, bold] = FONTS.map(fontWidths);

/** True width of a text by the font file's own advance widths. */
function trueWidth(text: string, sizePx: number, isBold: boolean): number {
  const width = isBold ? bold : normal;
  if (width === undefined) throw new Error("no font");
  return [...text].reduce((sum, one) => sum + (width(one.codePointAt(0) ?? 0) / 1000) * sizePx, 0);
}

interface TextBox {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const unmarked = (text: string): string =>
  text.replaceAll("&lt;", "<").replaceAll("&gt;", ">").replaceAll("&quot;", '"').replaceAll("&amp;", "&");

/** Every text of a picture with the box it takes. */
function textBoxes(svg: string): TextBox[] {
  const shift = Number(/translate\(0 (\d+)\)/.exec(svg)?.[1] ?? 0);
  const groupAt = svg.indexOf("<g transform");
  const found = svg.matchAll(
    /<text x="([-\d.]+)" y="([-\d.]+)" font-size="(\d+)" text-anchor="(\w+)"( font-weight="bold")?>([^<]*)<\/text>/g,
  );
  return [...found].map((match) => {
    const [, x, y, size, anchor, weight, raw = ""] = match;
    const text = unmarked(raw);
    const width = trueWidth(text, Number(size), weight !== undefined);
    const left = Number(x) - (anchor === "middle" ? width / 2 : anchor === "end" ? width : 0);
    const base = Number(y) + (groupAt >= 0 && (match.index ?? 0) > groupAt ? shift : 0);
    return { text, left, right: left + width, top: base - 0.75 * Number(size), bottom: base + 0.2 * Number(size) };
  });
}

/** Renders, so that anything but well-formed SVG fails, and returns its size. */
function rendered(svg: string): { width: number; height: number } {
  const picture = new Resvg(svg, { font: { fontFiles: FONTS, loadSystemFonts: false } }).render();
  expect(picture.pixels.some((byte) => byte === 0)).toBe(true);
  return { width: picture.width, height: picture.height };
}

/** Inside the paper, no text over another, black and white only. */
function expectLegible(svg: string): void {
  const { width, height } = rendered(svg);
  const boxes = textBoxes(svg).filter((box) => box.text.trim() !== "");
  expect(boxes.length).toBeGreaterThan(2);
  expect(boxes.length).toBe(
    (svg.match(/<text /g) ?? []).length - textBoxes(svg).filter((b) => b.text.trim() === "").length,
  );
  for (const box of boxes) {
    expect(box.left, box.text).toBeGreaterThanOrEqual(0);
    expect(box.right, box.text).toBeLessThanOrEqual(width);
    expect(box.top, box.text).toBeGreaterThanOrEqual(0);
    expect(box.bottom, box.text).toBeLessThanOrEqual(height);
  }
  boxes.forEach((one, i) => {
    for (const other of boxes.slice(i + 1)) {
      const apart =
        one.right <= other.left || other.right <= one.left || one.bottom <= other.top || other.bottom <= one.top;
      expect(apart, `"${one.text}" over "${other.text}"`).toBe(true);
    }
  });
  const paints = [...svg.matchAll(/(?:fill|stroke)="([^"]*)"/g)].map((match) => match[1]);
  expect(new Set(paints)).toEqual(
    new Set([...new Set(paints)].filter((p) => ["black", "white", "none", "url(#hatch)"].includes(p ?? ""))),
  );
}

/** Words as people write them: long, with markup, with one endless word. */
const words = fc.oneof(
  fc
    .array(fc.constantFrom("window", "Küche", "<b>", "&", "W".repeat(30), "22/4", "MMMM", "door"), { maxLength: 25 })
    .map((list) => list.join(" ")),
  fc.string({ maxLength: 80 }),
);

const loops: fc.Arbitrary<LoopPicture> = fc.record({
  title: words,
  panel: words,
  cable: words,
  openings: fc.array(
    fc.record(
      { label: words, form: fc.constantFrom("NC", "NO"), resistorAcross: fc.constant("1 kΩ") },
      { requiredKeys: ["label", "form"] },
    ),
    { maxLength: 14 },
  ),
  eol: fc.option(fc.record({ at: fc.constantFrom("farEnd", "panelInSeries", "panelAcross", "unknown"), label: words })),
  joints: fc
    .uniqueArray(fc.integer({ min: 1, max: 6 }), { maxLength: 3 })
    .map((places) => places.map((before) => ({ before, label: `joint ${before}` }))),
  faults: fc.array(
    fc.record({
      kind: fc.constantFrom("open", "resistance", "short", "leak", "earth", "foreignVoltage", "bypass", "other"),
      before: fc.option(fc.integer({ min: 1, max: 3 })),
      label: words,
    }),
    { maxLength: 3 },
  ),
  notes: fc.array(words, { maxLength: 2 }),
});

test("the width table is never narrower than the DejaVu Sans font file's advance widths, normal and bold", () => {
  for (let code = 32; code < 592; code++) {
    if (code >= 127 && code < 160) continue;
    const text = String.fromCodePoint(code);
    const own = normal?.(code) ?? 0;
    if (own <= 1000) expect(textWidth(text, 1000), text).toBeGreaterThanOrEqual(own - 0.51);
    if (code < 127) {
      expect(textWidth(text, 1000)).toBeCloseTo(own, -0.5);
      expect(textWidth(text, 1000, true), text).toBeGreaterThanOrEqual((bold?.(code) ?? 0) - 0.51);
    }
  }
  expect(textWidth("Ω", 1000)).toBeCloseTo(normal?.(0x3a9) ?? 0, -0.5);
});

test("wrapping loses no character and no line is wider than asked (property)", () => {
  fc.assert(
    fc.property(words, fc.integer({ min: 40, max: 300 }), (text, widthPx) => {
      const lines = wrapText({ text, sizePx: 12, widthPx });
      expect(lines.join("").replace(/\s/g, "")).toBe(text.replace(/\s/g, ""));
      for (const one of lines) expect(textWidth(one, 12)).toBeLessThanOrEqual(widthPx);
    }),
  );
});

test("loop pictures: render, stay on the paper, no text over another, no colour, every opening and fault named", () => {
  let drawn = 0;
  fc.assert(
    fc.property(loops, (loop) => {
      const svg = loopSchematic(loop);
      expectLegible(svg);
      drawn++;
      const said = textBoxes(svg)
        .map((box) => box.text)
        .join("")
        .replace(/\s/g, "");
      for (const { label } of [...loop.openings, ...(loop.faults ?? [])]) {
        // biome-ignore lint/suspicious/noControlCharactersInRegex: what XML does not allow is left out
        expect(said).toContain(label.replace(/[\s\u0000-\u001f]/g, ""));
      }
      for (let i = 1; i <= (loop.faults ?? []).length; i++) expect(said).toContain(`F${i}suspected`);
    }),
    { numRuns: 100 },
  );
  expect(drawn).toBeGreaterThanOrEqual(100);
});

test("reading scales: render, stay on the paper, no text over another, values in words", () => {
  const ohms = fc.oneof(
    fc.constant("OL" as const),
    fc.double({ min: -1, max: 7.5, noNaN: true }).map((p) => 10 ** p),
    fc.constant(0),
  );
  const picture: fc.Arbitrary<ReadingScalePicture> = fc.record({
    title: words,
    readings: fc.array(fc.record({ label: words, ohms }), { minLength: 1, maxLength: 6 }),
    bands: fc.array(
      fc
        .record({
          label: words,
          low: fc.double({ min: 0, max: 1e6, noNaN: true }),
          more: fc.option(fc.double({ min: 0, max: 1e6, noNaN: true })),
          kind: fc.constantFrom("expected", "input", "other"),
        })
        .map(({ label, low, more, kind }) => ({
          label,
          lowOhms: low,
          highOhms: more === null ? ("OL" as const) : low + more,
          kind,
        })),
      { maxLength: 4 },
    ),
  });
  fc.assert(
    fc.property(picture, (scale) => {
      expectLegible(readingScale(scale));
    }),
    { numRuns: 60 },
  );
});

test("the scale rises with the resistance, near zero left, over-range right of every number", () => {
  const values = [0, 0.3, 0.99, 1, 3, 100, 2200, 5600, 1e5, 9e6, 1e8];
  const xs = [...values.map(scaleX), scaleX("OL")];
  xs.forEach((x, i) => {
    if (i > 0) expect(x).toBeGreaterThan(xs[i - 1] ?? 0);
  });
  // One decade is one seventh of the logarithmic part.
  expect(scaleX(1000) - scaleX(100)).toBeCloseTo(scaleX(100) - scaleX(10), 9);
  const band = { label: "b", lowOhms: 10, highOhms: 5, kind: "input" } as const;
  expect(() => readingScale({ title: "t", readings: [], bands: [band] })).toThrow(InputError);
  expect(() => readingScale({ title: "t", readings: [{ label: "r", ohms: Number.NaN }], bands: [] })).toThrow(
    InputError,
  );
});

test("module wiring: render, stay on the paper, no text over another, every conductor with tag, loop and EOL", () => {
  const conductor = fc.record(
    { conductor: words, tag: words, loop: words, eol: words },
    { requiredKeys: ["conductor", "tag", "loop"] },
  );
  const wiring: fc.Arbitrary<ModuleWiringPicture> = fc.record({
    title: words,
    terminals: fc.array(fc.record({ terminal: words, conductors: fc.array(conductor, { maxLength: 3 }) }), {
      minLength: 1,
      maxLength: 8,
    }),
    settings: fc.array(words, { maxLength: 3 }),
    notes: fc.array(words, { maxLength: 2 }),
  });
  fc.assert(
    fc.property(wiring, (picture) => {
      const svg = moduleWiring(picture);
      expectLegible(svg);
      const said = textBoxes(svg)
        .map((box) => box.text)
        .join("")
        .replace(/\s/g, "");
      for (const one of picture.terminals.flatMap((terminal) => terminal.conductors)) {
        // biome-ignore lint/suspicious/noControlCharactersInRegex: what XML does not allow is left out
        for (const text of Object.values(one)) expect(said).toContain(text.replace(/[\s\u0000-\u001f]/g, ""));
      }
    }),
    { numRuns: 40 },
  );
});
