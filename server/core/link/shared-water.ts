import { chanceOf } from './looks.js';
import type { Seen } from './seen.js';
import type { Point } from '../math/local-plane.js';
import { roundError } from './position-error.js';
import { mayMeet, type Ground, type Waterbody } from './whereabouts.js';

/**
 * This share of observers tally what is in view even past the line of the own section: about what makes
 * a raw total 8 % high (common practice, no source). How it is in a count is learned from it: `rates.ts`.
 */
export const PAST_THE_LINE = 0.2;

/** Where two grounds meet: how likely a flock is to be in the tallies of either, place by place. */
interface Meeting {
  /** Square kilometres that each place stands for, and how it lies to either ground. */
  readonly places: readonly { readonly area: number; readonly a: Lie; readonly b: Lie }[];
}

/** Chance that an observer takes birds at a place to be inside, and whether they are in view. */
interface Lie {
  readonly inside: number;
  readonly inView: number;
}

/** What a flock that stayed, and of which no place was noted, is worth: see {@link SharedWater.odds}. */
export interface MeetingOdds {
  /** km² of the water where it would be in both tallies as it is, ... */
  readonly both: number;
  /** ... and in the one only. */
  readonly onlyA: number;
  readonly onlyB: number;
}

/** Water that the observers of two grounds may both have put into their tallies. */
export class SharedWater {
  readonly #waterbody: Waterbody;
  readonly #lies = new Map<Point, Map<number, Lie>>();
  readonly #meetings = new Map<number, Meeting>();
  readonly #odds = new Map<number, Map<string, MeetingOdds>>();

  constructor(waterbody: Waterbody) {
    this.#waterbody = waterbody;
  }

  /**
   * Chance that an observer at a ground puts birds at a place into the tally, if the birds are found.
   *
   * @param past chance that the observer tallies what is past the line
   */
  chanceInTally(point: Point, { ground, groundNumber }: Seen, past: number): number {
    const kept = this.#lies.get(point) ?? new Map<number, Lie>();
    this.#lies.set(point, kept);
    const lie = kept.get(groundNumber) ?? this.#lie(point, ground);
    kept.set(groundNumber, lie);
    return chanceAt(lie, past);
  }

  #lie(point: Point, ground: Ground): Lie {
    return {
      inside: this.#waterbody.chanceInside(point, roundError(0), ground),
      inView: this.#waterbody.isInView(point, 0, ground) === true ? 1 : 0,
    };
  }

  /**
   * Over all places where a flock may have been: the water from which it would be in the tallies of just
   * these observers of both grounds, and of just these of the one and nobody of the other.
   *
   * @param found chance that one who looks has it
   * @param past chance that an observer tallies what is past the line
   */
  odds(a: Seen, b: Seen, found: number, past: number): MeetingOdds {
    const [seenA, seenB] = [a.seenBy, b.seenBy];
    const key = `${seenA.saw}/${seenA.of} ${seenB.saw}/${seenB.of} ${found} ${past}`;
    const kept = this.#oddsOf(a, b);
    const known = kept.get(key);
    if (known !== undefined) return known;
    let [both, onlyA, onlyB] = [0, 0, 0];
    for (const place of this.#meeting(a, b).places) {
      const [inA, inB] = [found * chanceAt(place.a, past), found * chanceAt(place.b, past)];
      const [hasA, hasB] = [chanceOf(seenA, inA), chanceOf(seenB, inB)];
      both += place.area * hasA * hasB;
      onlyA += place.area * hasA * (1 - inB) ** seenB.of;
      onlyB += place.area * hasB * (1 - inA) ** seenA.of;
    }
    const odds = { both, onlyA, onlyB };
    kept.set(key, odds);
    return odds;
  }

  /** km² of water from which a flock would be in some tally of both grounds. */
  inBoth(a: Seen, b: Seen, looked: readonly [number, number], found: number, past: number): number {
    if (!mayMeet(a.reach, b.reach)) return 0;
    let sum = 0;
    for (const place of this.#meeting(a, b).places) {
      const [inA, inB] = [found * chanceAt(place.a, past), found * chanceAt(place.b, past)];
      sum += place.area * (1 - (1 - inA) ** looked[0]) * (1 - (1 - inB) ** looked[1]);
    }
    return sum;
  }

  #oddsOf(a: Seen, b: Seen): Map<string, MeetingOdds> {
    const key = this.#pairNumber(a, b);
    const kept = this.#odds.get(key) ?? new Map<string, MeetingOdds>();
    this.#odds.set(key, kept);
    return kept;
  }

  #pairNumber(a: Seen, b: Seen): number {
    return a.groundNumber * MOST_GROUNDS + b.groundNumber;
  }

  #meeting(a: Seen, b: Seen): Meeting {
    const key = this.#pairNumber(a, b);
    const known = this.#meetings.get(key);
    if (known !== undefined) return known;
    const places = [a, b].flatMap(({ ground, area }) => {
      const points = this.#waterbody.pointsOf(ground);
      return points.map((point) => ({
        area: area / points.length,
        a: this.#lie(point, a.ground),
        b: this.#lie(point, b.ground),
      }));
    });
    const meeting = { places: places.filter((place) => isInReach(place.a) || isInReach(place.b)) };
    this.#meetings.set(key, meeting);
    return meeting;
  }
}

/** More grounds than any count has. */
const MOST_GROUNDS = 2 ** 20;

function isInReach({ inside, inView }: Lie): boolean {
  return inside + inView > 0;
}

function chanceAt({ inside, inView }: Lie, past: number): number {
  return (1 - past) * inside + past * inView;
}
