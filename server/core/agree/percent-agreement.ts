/**
 * Share of things that two observers named the same: the diagonal of their table over its total.
 *
 * Chance agreement is part of it; Cohen's kappa takes it out.
 *
 * @param table rows: what the first named; columns: what the second did; same order of names
 * @returns a share from 0 to 1; `null` for an empty table
 * @example percentAgreement([[20, 5], [10, 15]]) // 0.7
 */
export function percentAgreement(table: readonly (readonly number[])[]): number | null {
  const total = table.flat().reduce((sum, count) => sum + count, 0);
  const same = table.reduce((sum, row, index) => sum + (row[index] ?? 0), 0);
  return total === 0 ? null : same / total;
}
