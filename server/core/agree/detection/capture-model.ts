/**
 * What a log-linear model says of the chances of being seen.
 *
 * `chances`: one for all observers, or each their own. `differing`: how flocks differ in being easy to
 * see, by what being seen k times adds to ln of the mean: `none` nothing; `poisson` 2ᵏ − 1, `darroch`
 * k²/2, `gamma` ln 3.5 − ln(3.5 + k), in this order from a little to a lot of difference (Rivest &
 * Baillargeon 2007); `lower-bound` as much as may be from three times on, so that the unseen are at
 * least as many (Chao 1987, Biometrics 43:783). `wary`: those that have been seen have another chance of
 * being seen again, as where a flock keeps off after the first observer has come; with `first-apart` the
 * chance is another at the first observer. Their chances are one for all, in order of coming.
 */
export type CaptureModel =
  FlockModel | { readonly chances: 'wary' } | { readonly chances: 'wary-first-apart' };

interface FlockModel {
  readonly chances: 'one' | 'each';
  readonly differing?: 'none' | 'poisson' | 'darroch' | 'gamma' | 'lower-bound';
}

export interface ModelOfHistories {
  /** Of the design, each from a history; a constant first. */
  readonly columns: readonly ((history: readonly boolean[]) => number)[];
  /** Columns from here on are left out where they come out negative. */
  readonly mayBeNegative: number;
  /** The mean number with the history of being seen by nobody, and the gradient of its ln. */
  readonly unseen: (coefficients: readonly number[]) => {
    readonly value: number;
    readonly logGradient: readonly number[];
  };
}

/** Of the gamma model; 3.5 as in the literature, an ordinary difference in the logit. */
const GAMMA = 3.5;

const BY_TIMES = {
  poisson: (times: number): number => 2 ** times - 1,
  darroch: (times: number): number => times ** 2 / 2,
  gamma: (times: number): number => Math.log(GAMMA / (GAMMA + times)),
};

/** The design of a model for so many observers. */
export function captureModel(model: CaptureModel, observers: number): ModelOfHistories {
  if (model.chances === 'wary' || model.chances === 'wary-first-apart') {
    return waryModel(model.chances === 'wary-first-apart', observers);
  }
  return differingModel(model, observers);
}

function differingModel(
  { chances, differing = 'none' }: FlockModel,
  observers: number,
): ModelOfHistories {
  const main =
    chances === 'one'
      ? [timesOf]
      : Array.from(
          { length: observers },
          (_, observer) => (history: readonly boolean[]) => Number(history[observer] ?? false),
        );
  const more =
    differing === 'none'
      ? []
      : differing === 'lower-bound'
        ? Array.from(
            { length: Math.max(0, observers - 2) },
            (_, less) => (history: readonly boolean[]) => Math.max(0, timesOf(history) - 2 - less),
          )
        : [(history: readonly boolean[]) => BY_TIMES[differing](timesOf(history))];
  return {
    columns: [constant, ...main, ...more],
    mayBeNegative: differing === 'lower-bound' ? 1 + main.length : Infinity,
    // Every column but the constant is 0 for who was seen by nobody.
    unseen: (coefficients) => ({
      value: Math.exp(coefficients[0] ?? NaN),
      logGradient: coefficients.map((_, place) => (place === 0 ? 1 : 0)),
    }),
  };
}

/**
 * A flock is first seen after `before` observers missed it, and then again by some of the rest. With b
 * the coefficient of missing and c that of seeing again, those not yet seen after all t observers are
 * the rest of a geometric series: exp(constant + b t) / (1 + eᶜ − eᵇ).
 */
function waryModel(firstApart: boolean, observers: number): ModelOfHistories {
  const before = (history: readonly boolean[]): number => history.indexOf(true);
  return {
    columns: [
      constant,
      before,
      (history) => timesOf(history) - 1,
      ...(firstApart ? [(history: readonly boolean[]) => (before(history) > 0 ? 1 : 0)] : []),
    ],
    mayBeNegative: Infinity,
    unseen: ([start = NaN, missing = NaN, again = NaN, later = 0]) => {
      const left = 1 + Math.exp(again) - Math.exp(missing);
      return {
        value: left > 0 ? Math.exp(start + later + missing * observers) / left : Infinity,
        logGradient: [
          1,
          observers + Math.exp(missing) / left,
          -Math.exp(again) / left,
          ...(firstApart ? [1] : []),
        ],
      };
    },
  };
}

function constant(): number {
  return 1;
}

function timesOf(history: readonly boolean[]): number {
  return history.filter(Boolean).length;
}
