/*
 * The conditional likelihood of Huggins (1991) in flat arrays: it is evaluated some dozen times over all
 * flocks.
 */

/** A row for every flock and observer who was there; those of flock f from `starts[f]` on. */
export interface Design {
  readonly size: number;
  readonly starts: Int32Array;
  readonly seen: Uint8Array;
  /** Rows one after another. */
  readonly x: Float64Array;
}

export interface State {
  readonly logLikelihood: number;
  readonly gradient: Float64Array;
  readonly information: Float64Array;
  /** Per flock: the chance that somebody saw it, and that nobody did. */
  readonly seen: Float64Array;
  readonly missed: Float64Array;
  /** Per flock and coefficient: Σ chance × x over observers. */
  readonly slopes: Float64Array;
  readonly widest: number;
}

/** The log-likelihood at some coefficients, with its slope and (expected = observed) information. */
export function evaluated({ size, starts, seen, x }: Design, beta: Float64Array): State {
  const flocks = starts.length - 1;
  const gradient = new Float64Array(size);
  const information = new Float64Array(size * size);
  const state = {
    seen: new Float64Array(flocks),
    missed: new Float64Array(flocks),
    slopes: new Float64Array(flocks * size),
  };
  const chances = new Float64Array(seen.length);
  let logLikelihood = 0;
  let widest = 0;
  for (let flock = 0; flock < flocks; flock += 1) {
    const [start, end] = [starts[flock] ?? 0, starts[flock + 1] ?? 0];
    const slopes = state.slopes.subarray(flock * size, (flock + 1) * size);
    let logMissed = 0;
    for (let row = start; row < end; row += 1) {
      let eta = 0;
      for (let i = 0; i < size; i += 1) eta += (x[row * size + i] ?? 0) * (beta[i] ?? 0);
      widest = Math.max(widest, Math.abs(eta));
      // ln(1 + e^η) without overflow; ln p = η − that, ln(1 − p) = − that.
      const log1pExp = Math.max(0, eta) + Math.log1p(Math.exp(-Math.abs(eta)));
      logMissed -= log1pExp;
      logLikelihood += (seen[row] === 1 ? eta : 0) - log1pExp;
      const p = 1 / (1 + Math.exp(-eta));
      chances[row] = p;
      for (let i = 0; i < size; i += 1) slopes[i] = (slopes[i] ?? 0) + p * (x[row * size + i] ?? 0);
    }
    const seenAtAll = -Math.expm1(logMissed);
    const missed = Math.exp(logMissed);
    state.seen[flock] = seenAtAll;
    state.missed[flock] = missed;
    logLikelihood -= Math.log(seenAtAll);
    for (let row = start; row < end; row += 1) {
      const p = chances[row] ?? 0;
      const weight = (p * (1 - p)) / seenAtAll;
      const surprise = (seen[row] ?? 0) - p / seenAtAll;
      for (let i = 0; i < size; i += 1) {
        const one = x[row * size + i] ?? 0;
        if (one === 0) continue;
        gradient[i] = (gradient[i] ?? 0) + surprise * one;
        for (let j = 0; j <= i; j += 1) {
          const place = i * size + j;
          information[place] = (information[place] ?? 0) + weight * one * (x[row * size + j] ?? 0);
        }
      }
    }
    const pull = missed / seenAtAll ** 2;
    for (let i = 0; i < size; i += 1) {
      for (let j = 0; j <= i; j += 1) {
        const place = i * size + j;
        information[place] = (information[place] ?? 0) - pull * (slopes[i] ?? 0) * (slopes[j] ?? 0);
      }
    }
  }
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < i; j += 1) information[j * size + i] = information[i * size + j] ?? 0;
  }
  return { logLikelihood, gradient, information, ...state, widest };
}
