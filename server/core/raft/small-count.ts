import type { CandidateSet } from '../taxa/candidate-set.js';

/** So many birds of one identification in a small count. */
export interface ScannedBirds {
  readonly candidates: CandidateSet;
  /** Whole birds, 0 or more. */
  readonly number: number;
}

/** One scan sample: what was seen in one small part of a raft. */
export type SmallCount = readonly ScannedBirds[];
