/**
 * Inverse of a symmetric positive definite matrix by its Cholesky factor (Golub & Van Loan 2013,
 * Matrix Computations, 4.2).
 *
 * @param matrix `size` rows of `size` numbers, one after another; only read
 * @returns the inverse in the same form; `null` where the matrix is not positive definite
 * @example inverseOfPositiveDefinite(Float64Array.of(4, 0, 0, 4), 2)?.[0] // 0.25
 */
export function inverseOfPositiveDefinite(matrix: Float64Array, size: number): Float64Array | null {
  const lower = Float64Array.from(matrix);
  const at = (array: Float64Array, row: number, column: number): number =>
    array[row * size + column] ?? NaN;
  for (let j = 0; j < size; j += 1) {
    for (let i = j; i < size; i += 1) {
      let value = at(lower, i, j);
      for (let k = 0; k < j; k += 1) value -= at(lower, i, k) * at(lower, j, k);
      if (i > j) lower[i * size + j] = value / at(lower, j, j);
      else if (value > 0) lower[j * size + j] = Math.sqrt(value);
      else return null;
    }
  }
  // Row i of the factor's inverse, in place of row i of the factor.
  for (let i = 0; i < size; i += 1) {
    const pivot = at(lower, i, i);
    for (let j = 0; j < i; j += 1) {
      let value = 0;
      for (let k = j; k < i; k += 1) value -= at(lower, i, k) * at(lower, k, j);
      lower[i * size + j] = value / pivot;
    }
    lower[i * size + i] = 1 / pivot;
  }
  const inverse = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let value = 0;
      for (let k = i; k < size; k += 1) value += at(lower, k, i) * at(lower, k, j);
      inverse[i * size + j] = value;
      inverse[j * size + i] = value;
    }
  }
  return inverse;
}
