import { Resvg } from "@resvg/resvg-js";
import { describe, expect, it } from "vitest";
import { palettePng } from "../../lib/workbook/finish/palette-png.js";

/** Pixels of a PNG file as the drawing library decodes it, pixel for pixel. */
function decoded(png: Uint8Array, width: number, height: number): Uint8Array {
  const data = Buffer.from(png).toString("base64");
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><image width="${width}" height="${height}" image-rendering="optimizeSpeed" href="data:image/png;base64,${data}"/></svg>`;
  return new Uint8Array(new Resvg(svg).render().pixels);
}

/** An opaque picture with `colours` different colours, an odd number of pixels in each row. */
function picture(colours: number): { pixels: Uint8Array; width: number; height: number } {
  const [width, height] = [37, 23];
  const pixels = new Uint8Array(width * height * 4);
  for (let at = 0; at < width * height; at++) {
    const colour = (at * 7) % colours;
    pixels.set([(colour * 5) % 256, 255 - (colour % 256), colour >> 8, 255], at * 4);
  }
  return { pixels, width, height };
}

describe("pictures with a palette (ISO/IEC 15948), decoded by another library", () => {
  it.each([2, 3, 4, 5, 16, 17, 200])("%i colours come back as they were", (colours) => {
    const { pixels, width, height } = picture(colours);
    const png = palettePng({ pixels, width, height });
    expect(png).toBeDefined();
    expect(decoded(png ?? new Uint8Array(), width, height)).toEqual(pixels);
  });

  it("moves a grey by at most half of one sixteenth of the way from black to white", () => {
    const [width, height] = [16, 16];
    const pixels = new Uint8Array(256 * 4).map((_, at) => (at % 4 === 3 ? 255 : Math.floor(at / 4)));
    const back = decoded(palettePng({ pixels, width, height }) ?? new Uint8Array(), width, height);
    expect(Math.max(...pixels.map((value, at) => Math.abs(value - (back[at] ?? 0))))).toBeLessThanOrEqual(8.5);
    expect([back[0], back[255 * 4]]).toEqual([0, 255]);
  });

  it("leaves more than 256 colours to another kind of file", () => {
    expect(palettePng(picture(300))).toBeUndefined();
  });
});
