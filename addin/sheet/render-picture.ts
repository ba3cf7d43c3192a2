import type { RenderPicture } from "./draw.js";

/** Twice as fine as its size on the sheet, as in the file. */
const sharpness = 2;

/** Draws an SVG in the page that runs the add-in. */
export const renderPictureInPage: RenderPicture = async ({ svg, widthPixels, heightPixels }) => {
  const url = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  try {
    const image = new Image();
    await new Promise<void>((resolve, reject) => {
      image.onload = () => resolve();
      image.onerror = () => reject(new Error("a picture could not be drawn"));
      image.src = url;
    });
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(widthPixels * sharpness);
    canvas.height = Math.round(heightPixels * sharpness);
    const drawing = canvas.getContext("2d");
    if (drawing === null) throw new Error("this browser draws no pictures");
    drawing.fillStyle = "#ffffff";
    drawing.fillRect(0, 0, canvas.width, canvas.height);
    drawing.drawImage(image, 0, 0, canvas.width, canvas.height);
    return canvas.toDataURL("image/png").replace(/^data:image\/png;base64,/, "");
  } finally {
    URL.revokeObjectURL(url);
  }
};
