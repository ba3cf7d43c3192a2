import { renderPictureInPage } from "../../sheet/render-picture.js";
import type { DrawInPage } from "./jobs-in-worker.js";

/** The page's drawing of an SVG as the bytes of a PNG file. */
export const drawInPage: DrawInPage = async (picture) => {
  const base64 = await renderPictureInPage({ kind: "picture", alt: "", ...picture });
  return Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
};
