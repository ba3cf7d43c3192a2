import { create, lupDependencies, lusolveDependencies } from "mathjs";
import { InputError } from "../problems/input-error.js";

const math = create({ ...lupDependencies, ...lusolveDependencies });

/** A square system of linear equations: matrix · x = right side. */
export interface LinearSystem {
  readonly matrix: readonly (readonly number[])[];
  readonly rightSide: readonly number[];
}

/**
 * Solves matrix · x = right side by LU decomposition with partial pivoting.
 * @throws {@link InputError} when the matrix is not square, the sizes differ, or it is singular.
 * @example solveLinear({ matrix: [[2, 0], [0, 4]], rightSide: [1, 1] }); // [0.5, 0.25]
 */
export function solveLinear({ matrix, rightSide }: LinearSystem): readonly number[] {
  checkSizes({ matrix, rightSide });
  const decomposed = math.lup(matrix.map((row) => [...row]));
  const upper = decomposed.U as readonly (readonly number[])[];
  // lusolve itself answers a singular system with one of its many solutions.
  const singular = upper.some((row, i) => !(Math.abs(row[i] ?? 0) > 0));
  const solution: unknown = singular ? [] : math.lusolve(decomposed, [...rightSide]).valueOf();
  const numbers = (solution as readonly (readonly number[])[]).map((row) => row[0] ?? Number.NaN);
  if (numbers.length !== rightSide.length || !numbers.every(Number.isFinite)) {
    throw new InputError({ field: "matrix", got: "a singular matrix", expected: "independent equations" });
  }
  return numbers;
}

function checkSizes({ matrix, rightSide }: LinearSystem): void {
  const size = rightSide.length;
  if (size === 0 || matrix.length !== size || matrix.some((row) => row.length !== size)) {
    const rows = matrix.map((row) => row.length).join(", ");
    throw new InputError({
      field: "matrix",
      got: `rows of ${rows || "nothing"} beside ${size} right sides`,
      expected: "a square matrix with as many rows as the right side has numbers",
    });
  }
  if (![...matrix.flat(), ...rightSide].every(Number.isFinite)) {
    throw new InputError({ field: "matrix", got: "a number that is not finite", expected: "finite numbers" });
  }
}
