import { derivativesOf } from './derivatives.js';
import { inverseOfPositiveDefinite } from './cholesky.js';

export interface Minimum {
  readonly at: readonly number[];
  readonly value: number;
  /** False where it ran out of steps before it settled. */
  readonly settled: boolean;
}

const MOST_STEPS_EACH = 400;
const SETTLED = 1e-11;
const MOST_NEWTON_STEPS = 12;

/**
 * Minimum of a smooth function of a few numbers: the simplex search of Nelder & Mead (1965, Comput.
 * J. 7:308), begun anew once from where it ended, then Newton steps with numerical derivatives, which
 * give the last digits.
 *
 * Purpose: likelihoods of two to six parameters that have no closed form. Finds a minimum near its
 * start, not the least of several. Infinity marks places that are not allowed.
 *
 * @param start one number a parameter, where the function is finite
 * @param stride how far the first simplex reaches
 * @throws RangeError without parameters, or where the function is not finite at the start
 * @example minimise(([x = 0]) => (x - 3) ** 2, [0]).at[0] // 3
 */
export function minimise(
  of: (at: readonly number[]) => number,
  start: readonly number[],
  stride = 0.5,
): Minimum {
  if (start.length === 0 || !Number.isFinite(of(start))) {
    throw new RangeError('minimise requires a start where the function is finite');
  }
  const first = simplexSearch(of, start, stride);
  const second = simplexSearch(of, first.at, stride / 10);
  return polished(of, second);
}

function simplexSearch(
  of: (at: readonly number[]) => number,
  start: readonly number[],
  stride: number,
): Minimum {
  const size = start.length;
  const corners = [start, ...start.map((_, moved) => shifted(start, moved, stride))].map((at) => ({
    at,
    value: valueAt(of, at),
  }));
  for (let step = 0; step < MOST_STEPS_EACH * size; step += 1) {
    corners.sort((one, other) => one.value - other.value);
    const [best, worst] = [corners[0], corners[size]];
    if (best === undefined || worst === undefined) break;
    const spread = Math.abs(worst.value - best.value);
    if (spread <= SETTLED * (1 + Math.abs(best.value))) return { ...best, settled: true };
    const middle = start.map(
      (_, place) =>
        corners.slice(0, size).reduce((total, { at }) => total + (at[place] ?? 0), 0) / size,
    );
    const towards = (by: number): { at: number[]; value: number } => {
      const at = middle.map((each, place) => each + by * ((worst.at[place] ?? 0) - each));
      return { at, value: valueAt(of, at) };
    };
    const reflected = towards(-1);
    if (reflected.value < best.value) {
      const further = towards(-2);
      corners[size] = further.value < reflected.value ? further : reflected;
    } else if (reflected.value < (corners[size - 1]?.value ?? Infinity)) {
      corners[size] = reflected;
    } else {
      const nearer = towards(reflected.value < worst.value ? -0.5 : 0.5);
      if (nearer.value < Math.min(reflected.value, worst.value)) corners[size] = nearer;
      else {
        corners.forEach(({ at }, index) => {
          if (index === 0) return;
          const shrunk = at.map((each, place) => (each + (best.at[place] ?? 0)) / 2);
          corners[index] = { at: shrunk, value: valueAt(of, shrunk) };
        });
      }
    }
  }
  corners.sort((one, other) => one.value - other.value);
  return { at: corners[0]?.at ?? start, value: corners[0]?.value ?? NaN, settled: false };
}

/** Newton steps as long as they help; where the curvature says nothing, it stays where it is. */
function polished(of: (at: readonly number[]) => number, found: Minimum): Minimum {
  let { at, value } = found;
  for (let step = 0; step < MOST_NEWTON_STEPS; step += 1) {
    const { gradient, hessian } = derivativesOf(of, at);
    const inverse = inverseOfPositiveDefinite(hessian, at.length);
    if (inverse === null) break;
    const move = at.map((_, i) =>
      gradient.reduce((total, slope, j) => total - (inverse[i * at.length + j] ?? 0) * slope, 0),
    );
    const next = at.map((each, i) => each + (move[i] ?? 0));
    const nextValue = valueAt(of, next);
    const rise = nextValue - value;
    if (!(rise <= 1e-13 * (1 + Math.abs(value)))) break;
    const moved = Math.max(...move.map((each, i) => Math.abs(each) / (1 + Math.abs(at[i] ?? 0))));
    [at, value] = [next, nextValue];
    if (moved < 1e-9) break;
  }
  return { at, value, settled: found.settled };
}

function valueAt(of: (at: readonly number[]) => number, at: readonly number[]): number {
  const value = of(at);
  return Number.isNaN(value) ? Infinity : value;
}

function shifted(at: readonly number[], moved: number, by: number): number[] {
  return at.map((each, place) => (place === moved ? each + by : each));
}
