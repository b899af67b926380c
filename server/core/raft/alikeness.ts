import { logGamma } from '../math/gamma.js';
import { sum } from '../math/sum.js';

/**
 * One way that a raft may be mixed, and how likely it is: how alike two birds of one small count are,
 * from 0 (stirred) to 1 (each patch of one kind).
 */
export interface Mixing {
  readonly alikeness: number;
  /** Adds up to 1 over the list. */
  readonly weight: number;
}

/**
 * Before any sample an alikeness has the density 9 (1 − ρ)⁸: stirred is likeliest, 0.1 the mean. Rafts
 * have patches, and a few small counts say little about them: without this, two counts that happen to
 * look alike would promise far too much. Common practice has no figure; this one is our choice, held
 * against coverage by simulation.
 */
const PATCHINESS = 9;
/** Points that each stand for an equal part of that density. */
const POINTS = 24;

/**
 * How alike the birds of one small count are, after several were made: the Dirichlet-multinomial
 * likelihood (Mosimann 1962, Biometrika 49:65) at the pooled shares, times the density above. Fitting
 * the shares to the same samples makes them look more alike than they are; the likelihood is integrated
 * over the shares by Laplace's method, which takes (k − 1)/2 times ln of the effective birds off.
 *
 * @param counts rows: small counts; columns: identifications; every row and column with some birds
 */
export function mixingsOf(counts: readonly (readonly number[])[]): readonly Mixing[] {
  const sizes = counts.map((row) => sum(row));
  const birds = sum(sizes);
  const shares = (counts[0] ?? []).map((_, k) => sum(counts.map((row) => row[k] ?? 0)) / birds);
  const logLikelihood = (alikeness: number): number => {
    const precision = 1 / alikeness - 1;
    const rise = (alpha: number, by: number): number => logGamma(alpha + by) - logGamma(alpha);
    const terms = counts.flatMap((row, j) => [
      -rise(precision, sizes[j] ?? 0),
      ...row.map((number, k) => rise(precision * (shares[k] ?? 0), number)),
    ]);
    const free = (shares.length - 1) / 2;
    return sum(terms) - free * Math.log(birds / patchiness(sizes, alikeness));
  };
  const points = Array.from(
    { length: POINTS },
    (_, at) => 1 - (1 - (at + 0.5) / POINTS) ** (1 / PATCHINESS),
  );
  const logs = points.map(logLikelihood);
  const largest = Math.max(...logs);
  const weights = logs.map((each) => Math.exp(each - largest));
  const all = sum(weights);
  return points.map((alikeness, at) => ({ alikeness, weight: (weights[at] ?? 0) / all }));
}

/**
 * How many times larger the variance of a pooled share is than if every bird had been drawn by itself:
 * Σ n (1 + (n − 1) ρ) / Σ n over small counts of n birds (Kish's design effect for clusters).
 */
export function patchiness(sizes: readonly number[], alikeness: number): number {
  return sum(sizes.map((size) => size * (1 + (size - 1) * alikeness))) / sum(sizes);
}
