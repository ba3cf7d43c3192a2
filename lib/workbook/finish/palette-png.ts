import { zlibSync } from "fflate";

/** Greys are kept in so many steps: on line drawings they are only the soft edge of a black line. */
const greySteps = 16;
const greyStep = 255 / (greySteps - 1);

/**
 * A PNG file with a palette (ISO/IEC 15948, colour type 3) of an opaque picture of few colours: line drawings take a
 * tenth of what they take in full colour. Undefined where there are more than 256 colours.
 */
export function palettePng(picture: {
  /** Red, green, blue, alpha of each pixel, row by row, 0 to 255. */
  readonly pixels: Uint8Array;
  readonly width: number;
  readonly height: number;
}): Uint8Array | undefined {
  const indexed = indexColours(picture.pixels);
  if (indexed === undefined) return undefined;
  const { palette, indices } = indexed;
  const bits = palette.length <= 2 ? 1 : palette.length <= 4 ? 2 : palette.length <= 16 ? 4 : 8;
  const { width, height } = picture;
  const head = new Uint8Array(13);
  const view = new DataView(head.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  head.set([bits, 3, 0, 0, 0], 8);
  return joined([
    Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a),
    chunk("IHDR", head),
    chunk("PLTE", Uint8Array.from(palette.flatMap((colour) => [colour >> 16, (colour >> 8) & 255, colour & 255]))),
    chunk("IDAT", zlibSync(packedRows({ indices, width, height, bits }), { level: 6 })),
    chunk("IEND", new Uint8Array()),
  ]);
}

function indexColours(
  pixels: Uint8Array,
): { readonly palette: readonly number[]; readonly indices: Uint8Array } | undefined {
  const places = new Map<number, number>();
  const indices = new Uint8Array(pixels.length / 4);
  let before = -1;
  let place: number | undefined = 0;
  for (let at = 0; at < indices.length; at++) {
    const from = at * 4;
    const exact = ((pixels[from] ?? 0) << 16) | ((pixels[from + 1] ?? 0) << 8) | (pixels[from + 2] ?? 0);
    // Most pixels are like their neighbour.
    if (exact !== before) {
      before = exact;
      const colour = softened(exact);
      place = places.get(colour);
      if (place === undefined) {
        if (places.size === 256) return undefined;
        place = places.size;
        places.set(colour, place);
      }
    }
    indices[at] = place ?? 0;
  }
  return { palette: [...places.keys()], indices };
}

function softened(colour: number): number {
  const grey = colour & 255;
  if (colour !== grey * 0x010101) return colour;
  return Math.round(Math.round(grey / greyStep) * greyStep) * 0x010101;
}

/** Each row with its filter byte 0 in front, several pixels to a byte, the first in the highest bits. */
function packedRows(picture: {
  readonly indices: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly bits: number;
}): Uint8Array {
  const { indices, width, height, bits } = picture;
  const perByte = 8 / bits;
  const rowBytes = 1 + Math.ceil(width / perByte);
  const rows = new Uint8Array(rowBytes * height);
  for (let y = 0; y < height; y++) {
    let byte = 0;
    let free = 8;
    let at = y * rowBytes + 1;
    for (let x = 0; x < width; x++) {
      free -= bits;
      byte |= (indices[y * width + x] ?? 0) << free;
      if (free > 0 && x < width - 1) continue;
      rows[at++] = byte;
      byte = 0;
      free = 8;
    }
  }
  return rows;
}

function chunk(type: string, data: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(12 + data.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, data.length);
  for (let at = 0; at < 4; at++) bytes[4 + at] = type.charCodeAt(at);
  bytes.set(data, 8);
  view.setUint32(8 + data.length, crc32(bytes.subarray(4, 8 + data.length)));
  return bytes;
}

const crcTable = Uint32Array.from({ length: 256 }, (_, byte) => {
  let crc = byte;
  for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  return crc;
});

function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = (crc >>> 8) ^ (crcTable[(crc ^ byte) & 255] ?? 0);
  return (crc ^ 0xffffffff) >>> 0;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
