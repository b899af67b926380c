/**
 * Dissimilarity of Bray & Curtis (1957, Ecol. Monogr. 27:325): Σ|xᵢ − yᵢ| / Σ(xᵢ + yᵢ), the share of
 * all birds of both lists that the other list does not match.
 *
 * Purpose: how alike two observers' numbers are over taxa or groups. 0 = the same numbers, 1 =
 * nothing in common. Two lists of zeros have no dissimilarity: `null`.
 *
 * @param x numbers of one observer, each at least 0
 * @param y numbers of the other for the same taxa
 * @throws RangeError for lists of different length, or a negative number
 * @example brayCurtis([6, 7, 4], [10, 0, 6]) // 0.3939393939393939
 */
export function brayCurtis(x: readonly number[], y: readonly number[]): number | null {
  if (x.length !== y.length) {
    throw new RangeError(
      `brayCurtis requires lists of the same length, not ${x.length} and ${y.length}`,
    );
  }
  let difference = 0;
  let total = 0;
  for (let index = 0; index < x.length; index += 1) {
    const [one, other] = [x[index] ?? NaN, y[index] ?? NaN];
    if (!(one >= 0) || !(other >= 0)) {
      throw new RangeError(`brayCurtis requires numbers of at least 0, not ${one} and ${other}`);
    }
    difference += Math.abs(one - other);
    total += one + other;
  }
  return total === 0 ? null : difference / total;
}
