import { fQuantile } from '../math/f-distribution.js';
import { studentTQuantile } from '../math/student-t.js';
import { mean, sampleVariance, squaredDeviations, sum } from '../math/sum.js';

export interface LaboratoryConsistency {
  readonly n: number;
  readonly mean: number;
  /** `null` with one value. */
  readonly standardDeviation: number | null;
  /** How far its mean lies from that of all, in standard deviations of the means. */
  readonly h: number | null;
  /** How its own spread stands to the spread of all, 1 being the same. */
  readonly k: number | null;
  /** Above this a k is questioned; depends on how many values are its own. */
  readonly kCritical: number | null;
}

export interface MandelConsistency {
  readonly laboratories: readonly LaboratoryConsistency[];
  readonly grandMean: number;
  readonly deviationOfMeans: number;
  readonly repeatability: number | null;
  readonly reproducibility: number | null;
  /** Above this |h| is questioned. */
  readonly hCritical: number;
}

/**
 * Mandel's h and k: which laboratory (or observer) stands apart by its mean, and which by its spread
 * (Mandel 1985, in Journal of Testing and Evaluation 13:3; ISO 5725-2:2019, 7.3.1; ASTM E691).
 *
 * h = (mean − mean of means) / standard deviation of means, k = own standard deviation / pooled one.
 * Critical values are those of the distributions under no difference: h by Student's t with p − 2
 * degrees of freedom, two-sided; k by F of own against the others', one-sided. Numbers of values may
 * differ. Repeatability is the pooled standard deviation, reproducibility adds that between
 * laboratories. Assumes independent normal values.
 *
 * @param laboratories values of each, at least three with one value or more
 * @param significance share of sound laboratories that a critical value questions: 0.05, 0.01, 0.005
 * @returns `null` where no mean differs from another
 * @throws RangeError for fewer than three laboratories, or one without values
 */
export function mandelConsistency(
  laboratories: readonly (readonly number[])[],
  significance: number,
): MandelConsistency | null {
  const p = laboratories.length;
  if (p < 3 || laboratories.some((values) => values.length === 0)) {
    throw new RangeError(`mandelConsistency requires three laboratories with values, not ${p}`);
  }
  const means = laboratories.map(mean);
  const grandMean = mean(means);
  const deviationOfMeans = Math.sqrt(sampleVariance(means));
  if (deviationOfMeans <= 1e-13 * Math.abs(grandMean)) return null;
  const degrees = laboratories.map((values) => values.length - 1);
  const squares = laboratories.map(squaredDeviations);
  const allDegrees = sum(degrees);
  const pooled = allDegrees === 0 ? null : sum(squares) / allDegrees;
  const spread = pooled === null || pooled === 0 ? null : pooled;
  return {
    laboratories: laboratories.map((values, laboratory) => {
      const own = degrees[laboratory] ?? 0;
      const variance = own === 0 ? null : (squares[laboratory] ?? NaN) / own;
      return {
        n: values.length,
        mean: means[laboratory] ?? NaN,
        standardDeviation: variance === null ? null : Math.sqrt(variance),
        h: ((means[laboratory] ?? NaN) - grandMean) / deviationOfMeans,
        k: variance === null || spread === null ? null : Math.sqrt(variance / spread),
        kCritical:
          own === 0 || allDegrees === own
            ? null
            : kCriticalValue(own, allDegrees - own, significance),
      };
    }),
    grandMean,
    deviationOfMeans,
    repeatability: pooled === null ? null : Math.sqrt(pooled),
    reproducibility: pooled === null ? null : reproducibilityOf(laboratories, means, pooled),
    hCritical: hCriticalValue(p, significance),
  };
}

/** √(pooled + between): between from the means' spread, less what repeats alone give (never below 0). */
function reproducibilityOf(
  laboratories: readonly (readonly number[])[],
  means: readonly number[],
  pooled: number,
): number {
  const harmonic = laboratories.length / sum(laboratories.map(({ length }) => 1 / length));
  const between = Math.max(0, sampleVariance(means) - pooled / harmonic);
  return Math.sqrt(pooled + between);
}

/**
 * Critical value of Mandel's |h|: (p − 1) t / √(p (t² + p − 2)), Student's t with p − 2 degrees of
 * freedom, two-sided.
 *
 * @param laboratories at least 3
 * @example hCriticalValue(7, 0.005) // 2.0536251289
 */
export function hCriticalValue(laboratories: number, significance: number): number {
  const t = studentTQuantile(1 - significance / 2, laboratories - 2);
  // For few laboratories and small shares t is large: the limit stays below (p − 1)/√p.
  const bend = Math.sqrt(1 + (laboratories - 2) / (t * t));
  return (laboratories - 1) / Math.sqrt(laboratories) / bend;
}

/**
 * Critical value of Mandel's k: √((ν + ν') F / (ν F + ν')), F of own ν against the others' ν' degrees
 * of freedom.
 *
 * @param own degrees of freedom of the laboratory, values less one
 * @param others degrees of freedom of all others together
 * @example kCriticalValue(2, 12, 0.005) // 2.0261712960
 */
export function kCriticalValue(own: number, others: number, significance: number): number {
  const f = fQuantile(1 - significance, own, others);
  return Math.sqrt(((own + others) * f) / (own * f + others));
}
