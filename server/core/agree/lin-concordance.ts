import { zOfLevel } from '../math/normal.js';
import { sum } from '../math/sum.js';

export interface Concordance {
  /** `null` where neither list varies and both have the same mean. */
  readonly value: number | null;
  /** Limits on Fisher's z scale, back-transformed; `null` where one list does not vary. */
  readonly low: number | null;
  readonly high: number | null;
  readonly standardError: number | null;
  /** Pearson's correlation: how near the points lie to some line; `null` as `low`. */
  readonly correlation: number | null;
  /** How near that line lies to the line of equality, 0 to 1; `null` as `low`. */
  readonly biasCorrection: number | null;
  /** What takes the line off: the ratio σy/σx, and (ȳ − x̄)/√(σx σy); `null` as `low`. */
  readonly scaleShift: number | null;
  readonly locationShift: number | null;
  readonly n: number;
}

/** Sums over the points, all that Lin's concordance needs. */
export interface PointSums {
  readonly n: number;
  readonly x: number;
  readonly y: number;
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
}

/**
 * The estimate alone, from sums over the points: 2 s_xy / (s_x² + s_y² + (x̄ − ȳ)²), moments with
 * divisor n. `null` where it is 0/0.
 *
 * @example concordanceOfSums({ n: 2, x: 3, y: 3, xx: 5, yy: 5, xy: 5 }) // 1
 */
export function concordanceOfSums({ n, x, y, xx, yy, xy }: PointSums): number | null {
  if (n === 0) return null;
  const denominator = xx / n - (x / n) ** 2 + yy / n - (y / n) ** 2 + (x / n - y / n) ** 2;
  // Below this share of the raw sums the spread is rounding, not data.
  if (denominator <= 1e-13 * ((xx + yy) / n)) return null;
  return (2 * (xy / n - (x / n) * (y / n))) / denominator;
}

/**
 * Lin's concordance correlation coefficient: how near pairs of measurements lie to equality.
 *
 * Purpose: agreement of two observers' ln counts, where correlation alone would overlook that one
 * of them runs low throughout. Method: Lin (1989, Biometrics 45:255) with the variance as corrected
 * (Lin 2000, Biometrics 56:324), moments with divisor n, the interval on Fisher's z scale. Points
 * are taken as independent and about normal. Equal lists give 1 with an interval of no width.
 *
 * @param x one observer's measurements
 * @param y the other's, of the same things
 * @param level of the interval, such as 0.95
 * @throws RangeError for lists of different length or fewer than three points
 * @example linConcordance([1, 2, 3], [2, 3, 4]).value // 0.5714285714285714
 */
export function linConcordance(
  x: readonly number[],
  y: readonly number[],
  level = 0.95,
): Concordance {
  const n = x.length;
  if (y.length !== n || n < 3) {
    throw new RangeError(
      `linConcordance requires two lists of the same length, at least 3, not ${n} and ${y.length}`,
    );
  }
  const meanX = sum(x) / n;
  const meanY = sum(y) / n;
  const squares = [new Float64Array(n), new Float64Array(n), new Float64Array(n)] as const;
  for (let i = 0; i < n; i += 1) {
    const [ofX, ofY] = [(x[i] ?? NaN) - meanX, (y[i] ?? NaN) - meanY];
    squares[0][i] = ofX * ofX;
    squares[1][i] = ofY * ofY;
    squares[2][i] = ofX * ofY;
  }
  const [varianceX, varianceY, covariance] = [
    sum(squares[0]) / n,
    sum(squares[1]) / n,
    sum(squares[2]) / n,
  ];
  const denominator = varianceX + varianceY + (meanX - meanY) ** 2;
  const value = denominator === 0 ? null : (2 * covariance) / denominator;
  if (value === null || varianceX === 0 || varianceY === 0) {
    const unknown = { low: null, high: null, standardError: null };
    const noLine = {
      correlation: null,
      biasCorrection: null,
      scaleShift: null,
      locationShift: null,
    };
    return { value, ...unknown, ...noLine, n };
  }

  const scale = Math.sqrt(varianceX * varianceY);
  const correlation = covariance / scale;
  const biasCorrection = (2 * scale) / denominator;
  const shift2 = (meanX - meanY) ** 2 / scale;
  // Lin's formula with ρc/ρ = the bias correction, so that a correlation of 0 divides nothing.
  const variance =
    ((1 - correlation ** 2) * biasCorrection ** 2 * (1 - value ** 2) +
      2 * value ** 2 * biasCorrection * (1 - value) * shift2 -
      (value ** 2 * biasCorrection ** 2 * shift2 ** 2) / 2) /
    (n - 2);
  const standardError = Math.sqrt(Math.max(0, variance));
  const onZ = Math.abs(value) >= 1 ? 0 : standardError / (1 - value ** 2);
  const reach = zOfLevel(level) * onZ;
  const limit = (z: number): number => (reach === 0 ? value : Math.tanh(Math.atanh(value) + z));
  const [low, high] = [limit(-reach), limit(reach)];
  const line = {
    correlation,
    biasCorrection,
    scaleShift: Math.sqrt(varianceY / varianceX),
    locationShift: (meanY - meanX) / Math.sqrt(scale),
  };
  return { value, low, high, standardError, ...line, n };
}
