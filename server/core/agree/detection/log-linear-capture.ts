import type { Interval } from '../../math/bootstrap.js';
import { poissonRegression, type PoissonRegression } from '../../math/poisson-regression.js';
import { captureModel, type CaptureModel, type ModelOfHistories } from './capture-model.js';
import { unseenInterval } from './unseen-interval.js';

export type LogLinearCapture =
  | {
      readonly fitted: true;
      readonly seen: number;
      readonly value: number;
      readonly standardError: number;
      /** Log-normal on the unseen. */
      readonly interval: Interval;
      readonly deviance: number;
      readonly degreesOfFreedom: number;
      readonly aic: number;
    }
  | {
      readonly fitted: false;
      /**
       * `too-few`: fewer histories are possible than the model has parameters. The others as in
       * `poissonRegression`; `at-the-edge` also where the unseen would be without number.
       */
      readonly reason: 'too-few' | 'not-told-apart' | 'at-the-edge';
      readonly seen: number;
    };

/** The histories of more observers are too many to list. */
const MOST_OBSERVERS = 12;

/**
 * Number there was from who saw what, by a log-linear model of the histories (Cormack 1989,
 * Biometrics 45:395; Rivest & Baillargeon 2007, Biometrics 63:999): how many have each of the 2ᵗ − 1
 * histories of being seen is Poisson, ln of its mean linear in what the model says, and the mean of
 * the one history that nobody can see is read off it.
 *
 * Purpose: three or more observers of the same flocks, some of which are harder to see than others;
 * the models say how they differ (see `CaptureModel`). Standard error: unseen + gradient of the
 * unseen with the coefficients' covariance, as under multinomial sampling.
 *
 * Assumes that nothing comes or goes, and matching without error. Models that fit as well can give very
 * different numbers (Link 2003, Biometrics 59:1123): AIC does not choose between forms of differing.
 *
 * @param histories who saw each, in the order of observers; two to twelve observers, all alike long
 * @throws RangeError for histories of other length, or one of somebody that nobody saw
 * @example logLinearCapture([[true, true], [true, false], [false, true]], { chances: 'each' }).seen // 3
 */
export function logLinearCapture(
  histories: readonly (readonly boolean[])[],
  model: CaptureModel,
  level = 0.95,
): LogLinearCapture {
  const observers = histories[0]?.length ?? 0;
  if (observers < 2 || observers > MOST_OBSERVERS) {
    throw new RangeError(`logLinearCapture requires 2 to 12 observers, not ${observers}`);
  }
  if (!histories.every((seenBy) => seenBy.length === observers && seenBy.includes(true))) {
    throw new RangeError(
      'logLinearCapture requires histories of the same length, each seen by one',
    );
  }
  const possible = everyHistory(observers);
  const places = new Map(possible.map((history, place) => [history.map(Number).join(''), place]));
  const counts = possible.map(() => 0);
  for (const history of histories) {
    const place = places.get(history.map(Number).join('')) ?? 0;
    counts[place] = (counts[place] ?? 0) + 1;
  }
  const seen = histories.length;
  const { unseen, mayBeNegative, ...design } = captureModel(model, observers);
  let { columns } = design;
  if (columns.length > possible.length) return { fitted: false, reason: 'too-few', seen };
  for (;;) {
    const fit = poissonRegression(designOf(possible, columns), counts);
    if (!fit.fitted) return { fitted: false, reason: fit.reason, seen };
    // What takes the unseen below the bound is left out, the first of them, and the rest fitted anew.
    const out = fit.coefficients.findIndex((value, place) => place >= mayBeNegative && value < 0);
    if (out < 0) return described(fit, unseen, seen, possible.length, level);
    columns = columns.filter((_, place) => place !== out);
  }
}

function described(
  fit: Extract<PoissonRegression, { fitted: true }>,
  unseenOf: ModelOfHistories['unseen'],
  seen: number,
  histories: number,
  level: number,
): LogLinearCapture {
  const { coefficients, covariance, deviance, logLikelihood } = fit;
  const size = coefficients.length;
  const { value: unseen, logGradient } = unseenOf(coefficients);
  if (!(unseen > 0 && unseen < Infinity)) return { fitted: false, reason: 'at-the-edge', seen };
  let spread = 0;
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < size; j += 1) {
      spread += (logGradient[i] ?? 0) * (covariance[i * size + j] ?? 0) * (logGradient[j] ?? 0);
    }
  }
  const variance = unseen + unseen ** 2 * spread;
  return {
    fitted: true,
    seen,
    value: seen + unseen,
    standardError: Math.sqrt(variance),
    interval: unseenInterval(seen, unseen, variance, level),
    deviance,
    degreesOfFreedom: histories - size,
    aic: 2 * (size - logLikelihood),
  };
}

/** Every history but that of being seen by nobody. */
function everyHistory(observers: number): boolean[][] {
  return Array.from({ length: 2 ** observers - 1 }, (_, number) =>
    Array.from({ length: observers }, (__, place) => (((number + 1) >> place) & 1) === 1),
  );
}

function designOf(
  histories: readonly (readonly boolean[])[],
  columns: ModelOfHistories['columns'],
): number[][] {
  return histories.map((history) => columns.map((column) => column(history)));
}
