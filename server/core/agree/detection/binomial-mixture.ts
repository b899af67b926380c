import type { Interval } from '../../math/bootstrap.js';
import { inverseOfPositiveDefinite } from '../../math/cholesky.js';
import { chiSquaredQuantile } from '../../math/chi-squared.js';
import { derivativesOf } from '../../math/derivatives.js';
import { minimise } from '../../math/minimise.js';
import { zOfLevel } from '../../math/normal.js';
import { mean, sum } from '../../math/sum.js';
import { siteLogLikelihood, withoutEnd, type Abundance } from './mixture-likelihood.js';

/** A number on a scale without bounds, and its standard error there; `null` at an edge. */
interface OnScale {
  readonly value: number;
  readonly standardError: number | null;
}

interface Estimate extends Interval {
  readonly value: number;
}

export interface BinomialMixtureFit {
  readonly sites: number;
  readonly counts: number;
  /** The mean number at a site, and the chance that an individual there is counted. */
  readonly mean: Estimate | null;
  readonly chance: Estimate | null;
  /** Mean × sites. */
  readonly total: Estimate | null;
  readonly logMean: OnScale | null;
  readonly logitChance: OnScale | null;
  /** Of the negative binomial: a small size is a large spread between sites. */
  readonly logSize: OnScale | null;
  readonly logLikelihood: number | null;
  readonly aic: number | null;
  /** How far the counts allow an estimate. Where not `sound`, `warning` says why. */
  readonly standing: 'sound' | 'weak' | 'not-identifiable' | 'too-few';
  readonly warning: string | null;
}

/** Fewer sites that were counted twice say too little of both numbers and chances. */
const FEWEST_SITES = 5;
/** Sizes beyond are a Poisson distribution as far as counts tell. */
const LARGEST_LOG_SIZE = 12;
/** A gain in log-likelihood over chance 0 below this is rounding: the best fit is at the edge. */
const NO_GAIN = 1e-4;

/**
 * Numbers at sites from repeated counts without matching: the binomial mixture of Royle (2004,
 * Biometrics 60:108). A site has N individuals, Poisson or negative binomial over sites; each count
 * there finds each of them with the same chance.
 *
 * Purpose: several observers, or visits, of many places where nothing tells which bird or flock is
 * which. The sum over N is carried on until nothing is added, so that no upper end has to be chosen
 * (Couturier et al. 2013, Ecology 94:1472, on what a poor choice does).
 *
 * Warning: that the counts of a site differ from one another is all that tells the chance apart from
 * the mean. Where they go up and down no more than counts of different sites, a mean without bounds
 * and a chance of 0 fit best, and nothing can be said (Dennis, Morgan & Ridout 2015, Biometrics
 * 71:237; Kéry 2018, Ecology 99:281). This is `not-identifiable`: no numbers are given. Where chance
 * 0 fits not significantly worse, the mean has no upper limit: `weak`. Assumes closed sites, no
 * double counting, and individuals found independently of each other: flocks, or birds that do not
 * flock; for flocking birds it is not meant (Martin et al. 2011, Methods Ecol. Evol. 2:595).
 *
 * @param counts rows: sites; columns: visits; `null` where nobody counted
 * @param abundance over sites
 * @throws RangeError unless counts are whole and at least 0
 */
export function fitBinomialMixture(
  counts: readonly (readonly (number | null)[])[],
  abundance: Abundance = 'poisson',
  level = 0.95,
): BinomialMixtureFit {
  const sites = counts
    .map((row) => row.filter((count) => count !== null).sort((one, other) => one - other))
    .filter((row) => row.length > 0);
  const all = sites.flat();
  if (!all.every((count) => Number.isInteger(count) && count >= 0)) {
    throw new RangeError('fitBinomialMixture requires whole counts of at least 0');
  }
  const size = { sites: sites.length, counts: all.length };
  const repeated = sites.filter((row) => row.length >= 2);
  if (repeated.length < FEWEST_SITES) {
    return nothing(
      size,
      'too-few',
      `Only ${repeated.length} sites were counted twice or more; at least ${FEWEST_SITES} are needed.`,
    );
  }
  if (sum(all) === 0) {
    return nothing(
      size,
      'not-identifiable',
      'All counts are 0: that says nothing of the chance of finding what is there.',
    );
  }
  const patterns = patternsOf(sites);
  // Not spread into the call: a call takes some hundred thousand arguments at most.
  const highest = all.reduce((most, each) => Math.max(most, each), 0);
  const most = Math.log(largestMean(highest));
  const negative = ([
    logMean = NaN,
    logitChance = NaN,
    logSize = NaN,
  ]: readonly number[]): number => {
    // Further out is only more of the same, at the price of ever longer sums.
    if (logMean > most || logSize > LARGEST_LOG_SIZE) return Infinity;
    return -sum(
      patterns.map(
        ({ row, times }) =>
          times *
          siteLogLikelihood(
            row,
            Math.exp(logMean),
            logistic(logitChance),
            abundance === 'poisson' ? Infinity : Math.exp(logSize),
          ),
      ),
    );
  };
  const found = minimise(negative, startOf(sites, abundance), 0.4);
  const edge = withoutEnd(patterns, mean(all), abundance);
  const gain = -found.value - edge;
  if (!(gain > NO_GAIN) || (found.at[0] ?? 0) > most - 0.05) {
    return nothing(
      size,
      'not-identifiable',
      'Counts of the same site differ as much as those of different sites: a chance of finding near 0 and a number without bounds fit best. No number is given.',
    );
  }
  return described(size, found, negative, gain, { abundance, level });
}

function nothing(
  size: { sites: number; counts: number },
  standing: 'not-identifiable' | 'too-few',
  warning: string,
): BinomialMixtureFit {
  return {
    ...size,
    mean: null,
    chance: null,
    total: null,
    logMean: null,
    logitChance: null,
    logSize: null,
    logLikelihood: null,
    aic: null,
    standing,
    warning,
  };
}

/** A mean that would make the chance of finding under about a two-hundredth, of large counts a twentieth. */
function largestMean(largest: number): number {
  return Math.max(20 * largest, Math.min(200 * (largest + 1), 5000));
}

/** Sites with the same counts, in any order, are one pattern: most are alike. */
function patternsOf(
  sites: readonly (readonly number[])[],
): { row: readonly number[]; times: number }[] {
  const patterns = new Map<string, { row: readonly number[]; times: number }>();
  for (const row of sites) {
    const key = row.join(' ');
    const pattern = patterns.get(key) ?? { row, times: 0 };
    pattern.times += 1;
    patterns.set(key, pattern);
  }
  return [...patterns.keys()].sort().flatMap((key) => patterns.get(key) ?? []);
}

/** From moments: counts of a site go together by mean × chance², each varies by mean × chance. */
function startOf(sites: readonly (readonly number[])[], abundance: Abundance): number[] {
  const centre = mean(sites.flat());
  const products = sites.flatMap((row) =>
    row.flatMap((one, i) => row.slice(i + 1).map((other) => (one - centre) * (other - centre))),
  );
  const together = mean(products);
  const within = mean(
    sites
      .filter((row) => row.length >= 2)
      .map((row) => {
        const own = mean(row);
        return sum(row.map((count) => (count - own) ** 2)) / (row.length - 1);
      }),
  );
  // Within a site the variance is N p (1 − p); with the mean N p this gives p whatever N does.
  const chance = Math.min(0.95, Math.max(0.05, 1 - within / centre));
  const start = [Math.log(centre / chance), Math.log(chance / (1 - chance))];
  if (abundance === 'poisson') return start;
  const extra = together / chance ** 2 - centre / chance;
  const size = extra > 0 ? (centre / chance) ** 2 / extra : 10;
  return [...start, Math.log(Math.min(100, Math.max(0.05, size)))];
}

function described(
  size: { sites: number; counts: number },
  found: { at: readonly number[]; value: number; settled: boolean },
  negative: (at: readonly number[]) => number,
  gain: number,
  { abundance, level }: { abundance: Abundance; level: number },
): BinomialMixtureFit {
  const [logMean = NaN, logitChance = NaN, logSize = NaN] = found.at;
  const { hessian } = derivativesOf(negative, found.at);
  const parameters = found.at.length;
  const covariance = inverseOfPositiveDefinite(hessian, parameters);
  const errorOf = (place: number): number | null =>
    covariance === null ? null : Math.sqrt(covariance[place * parameters + place] ?? NaN);
  const z = zOfLevel(level);
  const interval = (
    value: number,
    error: number | null,
    back: (x: number) => number,
  ): Estimate => ({
    value: back(value),
    low: error === null ? back(-Infinity) : back(value - z * error),
    high: error === null ? back(Infinity) : back(value + z * error),
  });
  const ofMean = interval(logMean, errorOf(0), Math.exp);
  const weak = gain < chiSquaredQuantile(level, 1) / 2 || covariance === null || !found.settled;
  // Where chance 0 is not ruled out, no number is too large.
  const high = weak ? Infinity : ofMean.high;
  const ofChance = interval(logitChance, errorOf(1), logistic);
  return {
    ...size,
    mean: { ...ofMean, high },
    chance: weak ? { ...ofChance, low: 0 } : ofChance,
    total: {
      value: ofMean.value * size.sites,
      low: ofMean.low * size.sites,
      high: high * size.sites,
    },
    logMean: { value: logMean, standardError: errorOf(0) },
    logitChance: { value: logitChance, standardError: errorOf(1) },
    logSize: abundance === 'poisson' ? null : { value: logSize, standardError: errorOf(2) },
    logLikelihood: -found.value,
    aic: 2 * (found.value + parameters),
    standing: weak ? 'weak' : 'sound',
    warning: weak
      ? 'A chance of finding near 0 fits these counts nearly as well: the number has no upper limit.'
      : null,
  };
}

function logistic(x: number): number {
  return 1 / (1 + Math.exp(-x));
}
