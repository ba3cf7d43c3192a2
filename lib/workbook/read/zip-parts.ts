import { Inflate } from "fflate";
import { FileRefused } from "./file-refused.js";
import type { ReadLimits } from "./limits.js";

/** One entry of the archive's directory. Sizes are what the archive claims; they are never trusted. */
export interface ZipEntry {
  readonly name: string;
  readonly method: number;
  readonly encrypted: boolean;
  readonly offset: number;
  readonly packedBytes: number;
}

const directorySignature = 0x02014b50;
const endSignature = 0x06054b50;
const localSignature = 0x04034b50;
const damaged = (what: string) =>
  new FileRefused("damaged", `The file is damaged (${what}). Open it in a spreadsheet program and save it again.`);

/** Where the archive's end record stands, or −1. It may be followed by a comment of up to 65,535 bytes. */
function endRecordAt(view: DataView): number {
  const lowest = Math.max(0, view.byteLength - 22 - 65_535);
  for (let at = view.byteLength - 22; at >= lowest; at--) if (view.getUint32(at, true) === endSignature) return at;
  return -1;
}

/**
 * The archive's own directory, which alone says what is in it.
 * @throws {@link FileRefused} when it is missing, cut off or longer than the limit.
 */
export function zipEntries(bytes: Uint8Array, limits: ReadLimits): readonly ZipEntry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = bytes.length < 22 ? -1 : endRecordAt(view);
  if (end < 0) throw damaged("its directory is missing: the file was cut off while it was copied");
  const count = view.getUint16(end + 10, true);
  if (count > limits.entries) throw new FileRefused("tooLarge", `The file holds ${count} parts; no survey needs that.`);
  const entries: ZipEntry[] = [];
  let at = view.getUint32(end + 16, true);
  for (let index = 0; index < count; index++) {
    if (at + 46 > end || view.getUint32(at, true) !== directorySignature) throw damaged("its directory is broken");
    const nameLength = view.getUint16(at + 28, true);
    if (at + 46 + nameLength > end) throw damaged("its directory is broken");
    entries.push({
      name: new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength)).replaceAll("\\", "/"),
      method: view.getUint16(at + 10, true),
      encrypted: (view.getUint16(at + 8, true) & 1) === 1,
      offset: view.getUint32(at + 42, true),
      packedBytes: view.getUint32(at + 20, true),
    });
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return entries;
}

/** Inflates in small steps and stops at the limit, so that neither a bomb nor a false size costs memory. */
function inflateCapped(packed: Uint8Array, name: string, cap: number): Uint8Array {
  const chunks: Uint8Array[] = [];
  let total = 0;
  const inflate = new Inflate((chunk) => {
    total += chunk.length;
    if (total > cap) throw new FileRefused("tooLarge", tooLarge(name, cap));
    chunks.push(chunk);
  });
  const step = 8 * 1024;
  for (let at = 0; at < packed.length; at += step) {
    inflate.push(packed.subarray(at, at + step), at + step >= packed.length);
  }
  const whole = new Uint8Array(total);
  let to = 0;
  for (const chunk of chunks) {
    whole.set(chunk, to);
    to += chunk.length;
  }
  return whole;
}

const tooLarge = (name: string, cap: number) =>
  `${name} unpacks to more than ${Math.round(cap / 1024 / 1024)} MB, far more than a survey. ` +
  "Copy the survey rows into a new workbook and hand in that one.";

/**
 * Unpacks one entry, at most `cap` bytes of it.
 * @throws {@link FileRefused} encrypted, damaged or larger than the cap.
 */
export function unpackEntry(bytes: Uint8Array, entry: ZipEntry, cap: number): Uint8Array {
  if (entry.encrypted) {
    throw new FileRefused("encryptedOrOldFormat", "The file is encrypted. Remove its password and save it again.");
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const at = entry.offset;
  if (at + 30 > bytes.length || view.getUint32(at, true) !== localSignature) throw damaged(`${entry.name} is missing`);
  const from = at + 30 + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
  const packed = bytes.subarray(from, from + entry.packedBytes);
  if (packed.length < entry.packedBytes) throw damaged(`${entry.name} is cut off`);
  if (entry.method === 0) {
    if (packed.length > cap) throw new FileRefused("tooLarge", tooLarge(entry.name, cap));
    return packed;
  }
  if (entry.method !== 8) throw damaged(`${entry.name} is packed in an unknown way`);
  try {
    return inflateCapped(packed, entry.name, cap);
  } catch (error) {
    if (error instanceof FileRefused) throw error;
    throw damaged(`${entry.name} does not unpack`);
  }
}
