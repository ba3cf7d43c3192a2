import ExcelJS from "exceljs";
import { expect, test } from "vitest";
import { type CostLine, priceJob } from "../../lib/pricing/price-job.js";
import { recalculatedSheets } from "../tools/libreoffice.js";

/** Repeatable draws: a linear congruential generator (Numerical Recipes constants). */
function drawer(seed: number): (low: number, high: number) => number {
  let state = seed >>> 0;
  return (low, high) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return low + Math.floor(((high - low + 1) * state) / 2 ** 32);
  };
}

test("LibreOffice reckons every line's documented formula, in cents and in currency, to the same cent", async () => {
  const draw = drawer(11);
  const margins = { material: 0.35, labour: 0.45, travel: 0.125 };
  const taxes = { material: 0.0825, labour: 0.19, travel: 0 };
  const lines = Array.from({ length: 600 }, (_, index): CostLine => {
    const kind = (["material", "labour", "travel"] as const)[draw(0, 2)] ?? "material";
    // Halves of a cent are sought out: quantities in quarters, prices in tenths of a cent.
    const [quantity, unitCents] = [draw(0, 4000) / 4, draw(0, 99_999) / 10];
    return { id: `L${index}`, kind, class: kind, description: "", quantity, unitCents, taxClass: kind, loops: [] };
  });
  const price = priceJob({ lines, rules: { marginByClass: margins, taxByClass: taxes } });
  const halves = lines.filter(({ quantity, unitCents }) => Math.abs(((quantity * unitCents) % 1) - 0.5) < 1e-6);
  expect(halves.length).toBeGreaterThan(10);

  const workbook = new ExcelJS.Workbook();
  const sheet = workbook.addWorksheet("Lines");
  for (const [index, line] of lines.entries()) {
    const r = index + 1;
    sheet.addRow([
      line.quantity,
      line.unitCents,
      margins[line.kind as "travel"],
      taxes[line.kind as "travel"],
      line.unitCents / 100,
    ]);
    const formulas = [
      `ROUND(ROUND(A${r}*B${r},7),0)`,
      `ROUND(ROUND(F${r}/(1-C${r}),7),0)`,
      `ROUND(ROUND(G${r}*D${r},7),0)`,
      `ROUND(ROUND(A${r}*E${r},9),2)`,
      `ROUND(ROUND(I${r}/(1-C${r}),9),2)`,
      `ROUND(ROUND(J${r}*D${r},9),2)`,
    ];
    formulas.forEach((formula, column) => {
      sheet.getCell(r, 6 + column).value = { formula, result: -1 };
    });
  }
  const bytes = new Uint8Array(await workbook.xlsx.writeBuffer());
  const rows = (await recalculatedSheets(bytes)).get("Lines") ?? [];
  expect(rows).toHaveLength(600);
  for (const [index, row] of rows.entries()) {
    const own = price.lines[index];
    const wanted = [own?.costCents, own?.sellCents, own?.taxCents];
    expect([index, ...row.slice(5, 8).map(Number)]).toEqual([index, ...wanted]);
    expect([index, ...row.slice(8, 11).map((cell) => Math.round(Number(cell) * 100))]).toEqual([index, ...wanted]);
  }
});
