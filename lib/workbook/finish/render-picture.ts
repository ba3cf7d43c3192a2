import { createRequire } from "node:module";
import { Resvg } from "@resvg/resvg-js";
import { palettePng } from "./palette-png.js";

const fontFiles = ["DejaVuSans", "DejaVuSans-Bold", "DejaVuSans-Oblique", "DejaVuSansMono"].map((name) =>
  createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`),
);

/** Printed at about 200 dots per inch when a picture pixel is 1/96 inch. */
const sharpness = 2;

/**
 * The PNG of an SVG drawing, twice as fine as its size on the sheet. Only the fonts that come with us are used, so that
 * every machine draws the same and no text vanishes.
 */
export function renderPicture(picture: { readonly svg: string; readonly widthPixels: number }): Uint8Array {
  const renderer = new Resvg(picture.svg, {
    background: "#ffffff",
    fitTo: { mode: "width", value: Math.round(picture.widthPixels * sharpness) },
    font: {
      fontFiles,
      loadSystemFonts: false,
      defaultFontFamily: "DejaVu Sans",
      sansSerifFamily: "DejaVu Sans",
      serifFamily: "DejaVu Sans",
      monospaceFamily: "DejaVu Sans Mono",
    },
  });
  const drawn = renderer.render();
  const { pixels, width, height } = drawn;
  return palettePng({ pixels, width, height }) ?? new Uint8Array(drawn.asPng());
}
