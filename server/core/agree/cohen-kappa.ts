import { weightedKappa, type Kappa } from './weighted-kappa.js';

/**
 * Cohen's kappa (1960, Educ. Psychol. Meas. 20:37): how far two observers give the same names
 * beyond what chance would give with their totals. 1 = always, 0 = as by chance.
 *
 * Method, edge cases and errors as `weightedKappa`, with weight only where both gave the same name.
 * Where both gave one and the same name to everything kappa is 0/0: `null`.
 *
 * @param table rows: what the first named; columns: what the second did; same order of names
 * @example cohenKappa([[20, 5], [10, 15]]).value // 0.4
 */
export function cohenKappa(table: readonly (readonly number[])[], level = 0.95): Kappa {
  const same = table.map((_, row) => table.map((__, column) => (row === column ? 1 : 0)));
  return weightedKappa(table, same, level);
}
