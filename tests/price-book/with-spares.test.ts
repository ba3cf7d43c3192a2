import { expect, test } from "vitest";
import { withSpares } from "../../lib/price-book/with-spares.js";

const need = (wanted: string, count: number) => withSpares({ class: wanted, count }).need;

test("spares (common practice, no source): 11 resistors + 20 % + 2, 20 splices + 15 %, fuses twice, none for none", () => {
  expect(need("eolResistor", 11)).toBe(16);
  expect(need("gelSplice", 20)).toBe(23);
  expect(need("fuse", 3)).toBe(6);
  expect(need("spareInput", 4)).toBe(5);
  expect(need("spareInput", 31)).toBe(35);
  expect(need("eolResistor", 0)).toBe(0);
  expect(need("enclosure", 2)).toBe(2);
});

test("the words hold the arithmetic, worked by hand", () => {
  expect(withSpares({ class: "eolResistor", count: 4 }).words).toBe("4 × 1.2 + 2 = 6.8, rounded up");
  expect(withSpares({ class: "fuse", count: 2 }).words).toBe("2 × 2 = 4");
  expect(withSpares({ class: "spareInput", count: 4 }).words).toBe("4 × 1.1 = 4.4, rounded up");
  expect(withSpares({ class: "enclosure", count: 2 }).words).toBe("");
});

test("a job's own waste stands in for the rule's; negative figures are refused by name", () => {
  expect(withSpares({ class: "wire", count: 100, fraction: 0.25 }).need).toBe(125);
  expect(() => withSpares({ class: "wire", count: -1 })).toThrow(/count/);
  expect(() => withSpares({ class: "wire", count: 1, fraction: -0.1 })).toThrow(/fraction/);
});
