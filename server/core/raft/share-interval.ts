import type { Interval } from '../math/bootstrap.js';
import { incompleteBeta } from '../math/beta.js';
import { sum } from '../math/sum.js';
import { patchiness, type Mixing } from './alikeness.js';

/** What an interval is made from, but for the share itself. */
export interface Evidence {
  /** Birds in each small count. */
  readonly sizes: readonly number[];
  readonly mixings: readonly Mixing[];
}

/** Halvings: to a millionth of the raft. */
const HALVINGS = 20;
const TAIL = 0.025;

/**
 * 95 % interval of a share of the raft: the beta distribution of a share with Jeffreys' prior (Brown,
 * Cai & DasGupta 2001, Stat. Sci. 16:101) on as many birds as the scanned ones are worth, averaged over
 * the ways in which the raft may be mixed. It runs to 0 where none was seen, and to 1 where all were.
 *
 * @param share from 0 to 1, as pooled over the small counts
 * @param birds how many fully identified birds, drawn one by one, the share is known from
 */
export function shareInterval(
  share: number,
  birds: number,
  { sizes, mixings }: Evidence,
): Interval {
  const shapes = mixings.map(({ alikeness, weight }) => {
    const worth = birds / patchiness(sizes, alikeness);
    return { weight, a: share * worth + 0.5, b: (1 - share) * worth + 0.5 };
  });
  const below = (x: number): number =>
    sum(shapes.map(({ weight, a, b }) => weight * incompleteBeta(x, a, b)));
  return {
    low: share === 0 ? 0 : Math.min(share, quantile(below, TAIL)),
    high: share === 1 ? 1 : Math.max(share, quantile(below, 1 - TAIL)),
  };
}

function quantile(below: (x: number) => number, target: number): number {
  let [low, high] = [0, 1];
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2;
    if (below(middle) < target) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
