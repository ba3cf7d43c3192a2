import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { solveLinear } from "../../lib/linear-algebra/solve-linear.js";
import { InputError } from "../../lib/problems/input-error.js";

describe("linear systems", () => {
  it("the solution, put back, gives the right side (diagonally dominant systems)", () => {
    const size = 5;
    const entry = fc.double({ min: -1, max: 1, noNaN: true });
    const row = fc.array(entry, { minLength: size, maxLength: size });
    fc.assert(
      fc.property(fc.array(row, { minLength: size, maxLength: size }), row, (rows, rightSide) => {
        const matrix = rows.map((r, i) => r.map((value, j) => (i === j ? value + 10 : value)));
        const x = solveLinear({ matrix, rightSide });
        for (const [i, r] of matrix.entries()) {
          const back = r.reduce((sum, value, j) => sum + value * (x[j] ?? Number.NaN), 0);
          expect(back).toBeCloseTo(rightSide[i] ?? Number.NaN, 10);
        }
      }),
    );
  });
  it("swaps rows where the first pivot is 0", () => {
    expect(
      solveLinear({
        matrix: [
          [0, 1],
          [2, 0],
        ],
        rightSide: [3, 4],
      }),
    ).toEqual([2, 3]);
  });
  it("refuses singular, ragged and endless systems", () => {
    expect(() =>
      solveLinear({
        matrix: [
          [1, 1],
          [2, 2],
        ],
        rightSide: [1, 2],
      }),
    ).toThrow(InputError);
    expect(() => solveLinear({ matrix: [[1, 1]], rightSide: [1] })).toThrow(InputError);
    expect(() => solveLinear({ matrix: [], rightSide: [] })).toThrow(InputError);
    expect(() => solveLinear({ matrix: [[Number.POSITIVE_INFINITY]], rightSide: [1] })).toThrow(InputError);
  });
});
