import type { Protocol } from '../model/protocol.js';
import type { LinkEvidence } from '../model/result.js';
import type { SetFits } from './composition.js';
import type { Flight } from './flown.js';
import type { Journeys } from './journeys.js';
import type { Looks } from './looks.js';
import type { Seen } from './seen.js';
import type { SharedWater } from './shared-water.js';
import type { Waterbody } from './whereabouts.js';

/** A way in which two sightings can be one flock, and what speaks for it. */
export interface Route {
  readonly kind: 'overlap' | 'movement';
  /** Whether both places were noted: then it does not matter how often observers look past the line. */
  readonly isPlaced: boolean;
  /** Whether an observer said so: a section that the flock went to or came from. */
  readonly isStated: boolean;
  /** Of an overlap: how likely it is that an observer tallied past the line of the own section, 0 to 1. */
  readonly pastTheLine: number;
  readonly first: Seen;
  readonly second: Seen;
  /** Logarithm of the odds, by all that this way has to do with. */
  readonly logOdds: number;
  /** The same in words; it adds up to `logOdds`. */
  readonly evidence: () => readonly LinkEvidence[];
}

/** What routes are judged by, the same for all pairs of a count. */
export interface Setting {
  readonly waterbody: Waterbody;
  readonly journeys: Journeys;
  readonly shared: SharedWater;
  readonly looks: Looks;
  readonly protocol: Protocol;
  readonly setFits: SetFits;
  readonly flights: readonly Flight[];
  /** How many sightings every cell has. */
  readonly flocksIn: ReadonlyMap<string, number>;
}
