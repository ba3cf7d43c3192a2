import { readFileSync } from "node:fs";

/** Advance widths of a TrueType font in thousandths of its size, read from its cmap (format 4) and hmtx tables. */
export function fontWidths(file: string): (codePoint: number) => number {
  const font = readFileSync(file);
  const tables = new Map<string, number>();
  for (let i = 0; i < font.readUInt16BE(4); i++) {
    const record = 12 + 16 * i;
    tables.set(font.toString("latin1", record, record + 4), font.readUInt32BE(record + 8));
  }
  const table = (name: string): number => {
    const offset = tables.get(name);
    if (offset === undefined) throw new Error(`${file} has no ${name} table`);
    return offset;
  };
  const unitsPerEm = font.readUInt16BE(table("head") + 18);
  const longMetrics = font.readUInt16BE(table("hhea") + 34);
  const cmap = table("cmap");
  const subtables = Array.from(
    { length: font.readUInt16BE(cmap + 2) },
    (_, i) => cmap + font.readUInt32BE(cmap + 8 + 8 * i),
  );
  const format4 = subtables.find((offset) => font.readUInt16BE(offset) === 4);
  if (format4 === undefined) throw new Error(`${file} has no format 4 cmap`);
  const segments = font.readUInt16BE(format4 + 6) / 2;
  const glyphOf = (code: number): number => {
    for (let i = 0; i < segments; i++) {
      const end = font.readUInt16BE(format4 + 14 + 2 * i);
      const start = font.readUInt16BE(format4 + 16 + 2 * segments + 2 * i);
      if (code > end || code < start) continue;
      const delta = font.readUInt16BE(format4 + 16 + 4 * segments + 2 * i);
      const rangeAt = format4 + 16 + 6 * segments + 2 * i;
      const range = font.readUInt16BE(rangeAt);
      if (range === 0) return (code + delta) & 0xffff;
      const glyph = font.readUInt16BE(rangeAt + range + 2 * (code - start));
      return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
    }
    return 0;
  };
  return (code) => {
    const glyph = Math.min(glyphOf(code), longMetrics - 1);
    return (font.readUInt16BE(table("hmtx") + 4 * glyph) * 1000) / unitsPerEm;
  };
}
