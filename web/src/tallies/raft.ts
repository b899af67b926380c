import type { TotalMethod } from '../../../server/core/model/snapshot.js';

/** A mixed raft while it is being worked on. */
export interface DraftRaft {
  readonly id: string;
  /** The flock label of its lines, by which they and its samples belong together. */
  readonly label: string;
  /** Birds in the whole raft, as typed. */
  readonly total: string;
  readonly method: TotalMethod;
  readonly block: string;
  /** What is scanned for, in the order of the buttons; names that `parseTaxon` reads. */
  readonly taxa: readonly string[];
  /** Small counts, at least one; taxa that are not in one were not seen in it. */
  readonly samples: readonly DraftSample[];
}

export type DraftSample = readonly { readonly taxon: string; readonly number: number }[];
