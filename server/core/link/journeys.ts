import type { Protocol } from '../model/protocol.js';
import { addVariance, meanError } from './position-error.js';
import { movedDensity, type Doing } from './routes.js';
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
   * @param left minutes at which it may have left, all as likely
   * @param came minutes at which it may have turned up
   */
  density(
    from: Whereabouts,
    to: Whereabouts,
    left: readonly number[],
    came: readonly number[],
    doing: Doing,
  ): number {
    const kept = from.stated || to.stated ? null : this.#keptFor(from, to, doing);
    let sum = 0;
    for (const end of came) {
      for (const start of left) {
        if (end < start) continue;
        if (kept === null) {
          sum += this.#densityAfter(end - start, from, to, doing);
          continue;
        }
        const minutes = Math.round(end - start);
        kept[minutes] ??= this.#densityAfter(minutes, from, to, doing);
        sum += kept[minutes];
      }
    }
    return sum / (left.length * came.length);
  }

  #densityAfter(minutes: number, from: Whereabouts, to: Whereabouts, doing: Doing): number {
    const error = this.error(from, to);
    let sum = 0;
    for (const [west, south] of from.points) {
      for (const [east, north] of to.points) {
        const far = Math.hypot(east - west, north - south);
        sum += movedDensity(far, minutes / 60, error, doing, this.#everywhere, this.#protocol);
      }
    }
    return sum / Math.max(1, from.points.length * to.points.length);
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
