import type { Interval } from '../math/bootstrap.js';
import { sum } from '../math/sum.js';
import type { Species } from '../model/snapshot.js';
import { keyOf, type CandidateSet } from '../taxa/candidate-set.js';
import { bySystematicOrder } from '../taxa/systematic-order.js';
import { mixingsOf } from './alikeness.js';
import { shareInterval, type Evidence } from './share-interval.js';
import type { SmallCount } from './small-count.js';
import { speciesShares } from './species-shares.js';

/** An identification's share of a raft, as the small counts have it. */
export interface RaftShare extends Interval {
  readonly candidates: CandidateSet;
  /** Birds in all small counts together. */
  readonly scanned: number;
  readonly share: number;
}

/** A species' share, birds left at a pair or group shared out: an estimate beside the count. */
export interface EstimatedShare extends Interval {
  readonly species: Species;
  readonly share: number;
}

export interface RaftComposition {
  /** Small counts that have birds, and their birds. */
  readonly samples: number;
  readonly scanned: number;
  /** How alike birds of one small count are, 0 to 1: its mean over the ways of mixing. */
  readonly alikeness: number;
  /** In the order of the check-list; shares add up to 1. */
  readonly identifications: readonly RaftShare[];
  /** Those that some pair or group may be, in the order of the check-list. */
  readonly estimates: readonly EstimatedShare[];
  readonly evidence: Evidence;
}

/**
 * What a raft is made of, from scan samples (method section 8): pooled shares with intervals that allow
 * for patches (small counts that differ more than chance lets them), and beside them the estimated
 * share of each species that some birds were left at a pair or group of.
 *
 * Neither the order of the samples, nor that of birds within them, changes anything. Small counts
 * without birds say nothing and are passed over.
 *
 * @returns `null` where no bird was scanned
 */
export function composeRaft(samples: readonly SmallCount[]): RaftComposition | null {
  const counted = samples
    .map((sample) => sample.filter(({ number }) => number > 0))
    .filter((sample) => sample.length > 0);
  const sets = new Map(
    counted.flatMap((sample) =>
      sample.map(({ candidates }) => [keyOf(candidates), candidates] as const),
    ),
  );
  const identifications = [...sets.values()].sort(bySystematicOrder);
  if (identifications.length === 0) return null;
  const rows = counted.map((sample) =>
    identifications.map((each) =>
      sum(
        sample
          .filter(({ candidates }) => keyOf(candidates) === keyOf(each))
          .map(({ number }) => number),
      ),
    ),
  );
  const sizes = rows.map((row) => sum(row));
  const scanned = sum(sizes);
  const evidence = { sizes, mixings: mixingsOf(rows) };
  const pooled = identifications.map((candidates, k) => ({
    candidates,
    number: sum(rows.map((row) => row[k] ?? 0)),
  }));
  const inGroups = new Set(
    identifications.filter(({ length }) => length > 1).flatMap((candidates) => candidates),
  );
  return {
    samples: rows.length,
    scanned,
    alikeness: sum(evidence.mixings.map(({ alikeness, weight }) => alikeness * weight)),
    identifications: pooled.map(({ candidates, number }) => {
      const share = number / scanned;
      return { candidates, scanned: number, share, ...shareInterval(share, scanned, evidence) };
    }),
    estimates: speciesShares(pooled)
      .filter(({ species }) => inGroups.has(species))
      .map(({ species, share, birds }) => ({
        species,
        share,
        ...shareInterval(share, birds, evidence),
      }))
      .sort((one, other) => bySystematicOrder([one.species], [other.species])),
    evidence,
  };
}
