/**
 * Shares out a whole number in proportion to weights, by largest remainder (Hamilton's method;
 * Balinski & Young 1982, Fair Representation): every part gets its quota rounded down, and what is
 * left goes one each to the largest remainders.
 *
 * @param total whole number, 0 or more.
 * @param weights 0 or more each; all zero with a total above zero is shared evenly.
 * @returns whole parts that add up to `total`. Equal remainders (to a billionth) go to the earlier
 *   part, so the caller's order decides ties: sort by something that is not a person's name.
 */
export function largestRemainder(total: number, weights: readonly number[]): number[] {
  if (weights.length === 0) {
    if (total === 0) return [];
    throw new RangeError('largestRemainder needs at least one part to share a number out to');
  }
  const sum = weights.reduce((running, weight) => running + weight, 0);
  const quotas = weights.map((weight) =>
    sum > 0 ? (total * weight) / sum : total / weights.length,
  );
  // A quota of 66.99999999999999 is 67: floating error must not move a bird.
  const parts = quotas.map((quota) => Math.floor(quota + 1e-9));
  const order = quotas
    .map((quota, index) => ({ index, remainder: Math.round((quota - (parts[index] ?? 0)) * 1e9) }))
    .sort((one, other) => other.remainder - one.remainder || one.index - other.index);
  let left = total - parts.reduce((running, part) => running + part, 0);
  for (const { index } of order) {
    if (left <= 0) break;
    parts[index] = (parts[index] ?? 0) + 1;
    left -= 1;
  }
  return parts;
}
