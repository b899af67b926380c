import { digamma } from './digamma.js';
import { sum } from './sum.js';

export interface DirichletMultinomial {
  /** Mean share of each category, adding up to 1. */
  readonly shares: readonly number[];
  /**
   * How alike two units of one sample are, 1 / (1 + Σα): 0 for plain multinomial samples, near 1
   * where each sample has one category only.
   */
  readonly alikeness: number;
}

/** Logarithms of Σα between which it is sought: beyond, samples are as good as multinomial. */
const SMALLEST = -12;
const LARGEST = 16;
const SETTLED = 1e-11;
const MOST_STEPS = 500;

/**
 * Dirichlet-multinomial distribution of greatest likelihood for several samples of one mixture
 * (Mosimann 1962, Biometrika 49:65), by turns: the precision Σα for the present shares by bisection of
 * its score, then the shares by Minka's fixed point (2000, Estimating a Dirichlet distribution, eq 55).
 *
 * Samples that differ no more than multinomial ones (score at Σα = ∞ not towards less) have pooled
 * shares and alikeness 0; so has a single sample.
 *
 * @param samples rows: samples; columns: categories; whole units, every row and column with some
 * @throws RangeError without samples
 */
export function fitDirichletMultinomial(
  samples: readonly (readonly number[])[],
): DirichletMultinomial {
  const sizes = samples.map((sample) => sum(sample));
  const total = sum(sizes);
  if (!(total > 0)) throw new RangeError('fitDirichletMultinomial requires samples with units');
  const columns = samples[0]?.map((_, k) => samples.map((sample) => sample[k] ?? 0)) ?? [];
  const pooled = columns.map((column) => sum(column) / total);
  if (!differsMore(samples, sizes, pooled)) return { shares: pooled, alikeness: 0 };

  let shares = pooled;
  let precision = 1;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const nextPrecision = bestPrecision(columns, sizes, shares);
    const weights = shares.map((share, k) => share * gain(nextPrecision * share, columns[k] ?? []));
    const all = sum(weights);
    const next = weights.map((weight) => weight / all);
    const moved = Math.max(...next.map((share, k) => Math.abs(share - (shares[k] ?? 0))));
    shares = next;
    const settled =
      moved < SETTLED && Math.abs(nextPrecision - precision) < SETTLED * nextPrecision;
    precision = nextPrecision;
    if (settled) break;
  }
  return { shares, alikeness: 1 / (1 + precision) };
}

/** Whether the likelihood rises from the multinomial one as samples are allowed to differ more. */
function differsMore(
  samples: readonly (readonly number[])[],
  sizes: readonly number[],
  shares: readonly number[],
): boolean {
  const pairsAlike = sum(
    samples.flatMap((sample) => sample.map((x, k) => (x * (x - 1)) / (shares[k] ?? 1))),
  );
  return pairsAlike > sum(sizes.map((size) => size * (size - 1))) * (1 + 1e-12);
}

/** Σα for which the score is 0, given the shares. */
function bestPrecision(
  columns: readonly (readonly number[])[],
  sizes: readonly number[],
  shares: readonly number[],
): number {
  const score = (precision: number): number =>
    sum(shares.map((share, k) => share * gain(precision * share, columns[k] ?? []))) -
    gain(precision, sizes);
  let low = SMALLEST;
  let high = LARGEST;
  for (let step = 0; step < 70; step += 1) {
    const middle = (low + high) / 2;
    if (score(Math.exp(middle)) > 0) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}

/** Σ ψ(alpha + x) − ψ(alpha) over numbers. */
function gain(alpha: number, numbers: readonly number[]): number {
  const base = digamma(alpha);
  return sum(numbers.map((x) => digamma(alpha + x) - base));
}
