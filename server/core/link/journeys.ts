import type { Protocol } from '../model/protocol.js';
import { addVariance, meanError } from './position-error.js';
import { movedDensity, movedDensityAtMost, type Doing } from './routes.js';
import type { Leg, Waterbody, Whereabouts } from './whereabouts.js';

/**
 * How likely flocks are to have got from one place to another, by the time that they had: densities per
 * km², averaged over where they may have been. Between places that are not known better than by what an
 * observer could see, the same is asked for many flocks, so it is kept by the minute.
 */
export class Journeys {
  readonly #waterbody: Waterbody;
  readonly #protocol: Protocol;
  readonly #everywhere: number;
  readonly #kept = new Map<Whereabouts, Map<Whereabouts, Map<Doing, number[]>>>();

  constructor(waterbody: Waterbody, protocol: Protocol) {
    this.#waterbody = waterbody;
    this.#protocol = protocol;
    this.#everywhere = waterbody.areaOf();
  }

  legs(from: Whereabouts, to: Whereabouts): readonly Leg[] {
    return this.#waterbody.legs(from, to);
  }

  /** km; of the length of a leg. */
  error(from: Whereabouts, to: Whereabouts): number {
    return meanError(addVariance(from.variance, to.variance));
  }

  /**
   * Density at the second place, per km², of a flock that was at the first and moved.
   *
   * @param left minutes at which it may have left, all as likely, in order
   * @param came minutes at which it may have turned up, in order
   * @param enough if the density cannot reach this, 0 will do for an answer
   */
  density(
    from: Whereabouts,
    to: Whereabouts,
    left: readonly number[],
    came: readonly number[],
    doing: Doing,
    enough = 0,
  ): number {
    const longest = (came.at(-1) ?? 0) - (left[0] ?? 0);
    if (longest < 0) return 0;
    const kept = from.stated || to.stated ? null : this.#keptFor(from, to, doing);
    const legs = kept === null ? lengthsOf(from, to) : [];
    const error = this.error(from, to);
    if (kept === null && this.#atMost(Math.min(...legs), longest, error, doing) < enough) return 0;
    let sum = 0;
    for (const end of came) {
      for (const start of left) {
        if (end < start) continue;
        if (kept === null) {
          sum += this.#after(end - start, legs, error, doing);
          continue;
        }
        const minutes = Math.round(end - start);
        kept[minutes] ??= this.#after(minutes, lengthsOf(from, to), error, doing);
        sum += kept[minutes];
      }
    }
    return sum / (left.length * came.length);
  }

  /** Averaged over ways of these lengths. */
  #after(minutes: number, legs: readonly number[], error: number, doing: Doing): number {
    let sum = 0;
    for (const far of legs) {
      sum += movedDensity(far, minutes / 60, error, doing, this.#everywhere, this.#protocol);
    }
    return sum / Math.max(1, legs.length);
  }

  #atMost(shortest: number, longest: number, error: number, doing: Doing): number {
    return movedDensityAtMost(
      shortest,
      longest / 60,
      error,
      doing,
      this.#everywhere,
      this.#protocol,
    );
  }

  #keptFor(from: Whereabouts, to: Whereabouts, doing: Doing): number[] {
    const byEnd = this.#kept.get(from) ?? new Map<Whereabouts, Map<Doing, number[]>>();
    this.#kept.set(from, byEnd);
    const byDoing = byEnd.get(to) ?? new Map<Doing, number[]>();
    byEnd.set(to, byDoing);
    const kept = byDoing.get(doing) ?? [];
    byDoing.set(doing, kept);
    return kept;
  }
}

/** Kilometres of every way from a point of the one to a point of the other. */
function lengthsOf(from: Whereabouts, to: Whereabouts): number[] {
  const lengths: number[] = [];
  for (const [west, south] of from.points) {
    for (const [east, north] of to.points)
      lengths.push(Math.sqrt((east - west) ** 2 + (north - south) ** 2));
  }
  return lengths;
}
