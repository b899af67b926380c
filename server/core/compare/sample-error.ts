import { fitDirichletMultinomial } from '../math/dirichlet-multinomial.js';
import { sum } from '../math/sum.js';
import type { Protocol } from '../model/protocol.js';
import { numberOf } from '../model/quantity.js';
import type { ScanSample, Snapshot, Tally, TallyLine } from '../model/snapshot.js';
import { isWithin, keyOf } from '../taxa/candidate-set.js';
import { countingErrorOf } from './counting-error.js';

/**
 * The snapshot with the error of proportion samples on the lines that have scan samples (method
 * section 3.3): the error of the raft's total, by how it was counted (in blocks where that is not said),
 * combined with the error of the line's share.
 * Other lines, of method `sample` without samples too, keep the protocol's table.
 *
 * A raft is the line that the samples name by its id, or all lines of method `sample` with this flock
 * label in the tally that the samples name, or in the one tally that has lines with the label.
 */
export function withSampleErrors(snapshot: Snapshot, protocol: Protocol): Snapshot {
  const { samples, tallies } = snapshot;
  if (samples.length === 0) return snapshot;
  const byRaft = new Map<string, ScanSample[]>();
  for (const sample of samples) {
    const raft = raftKey(sample.raft, sample.tally);
    byRaft.set(raft, [...(byRaft.get(raft) ?? []), sample]);
  }
  const flockOwners = new Map<string, Set<string>>();
  for (const tally of tallies) {
    for (const { flock } of tally.lines) {
      if (flock !== null)
        flockOwners.set(flock, (flockOwners.get(flock) ?? new Set()).add(tally.id));
    }
  }
  const errorOf = (line: TallyLine, tally: Tally): number | null => {
    if (line.method !== 'sample') return null;
    const own = byRaft.get(raftKey(line.id));
    if (own !== undefined) return sampleError(line, [line], own, protocol);
    if (line.flock === null) return null;
    const isOnlyOwner = flockOwners.get(line.flock)?.size === 1;
    const ofFlock =
      byRaft.get(raftKey(line.flock, tally.id)) ??
      (isOnlyOwner ? byRaft.get(raftKey(line.flock)) : undefined);
    const raft = tally.lines.filter(
      ({ method, flock, id }) =>
        method === 'sample' && flock === line.flock && !byRaft.has(raftKey(id)),
    );
    return ofFlock === undefined ? null : sampleError(line, raft, ofFlock, protocol);
  };
  return {
    ...snapshot,
    tallies: tallies.map((tally) => ({
      ...tally,
      lines: tally.lines.map((line) => {
        const error = errorOf(line, tally);
        return error === null ? line : { ...line, sampleError: error };
      }),
    })),
  };
}

function raftKey(raft: string, tally?: string): string {
  return JSON.stringify([raft, tally ?? null]);
}

/** The line's coefficient of variation; `null` where nothing was scanned. */
function sampleError(
  line: TallyLine,
  raft: readonly TallyLine[],
  samples: readonly ScanSample[],
  protocol: Protocol,
): number | null {
  const total = sum(raft.map(({ quantity }) => numberOf(quantity) ?? 0));
  const ofTotal = countingErrorOf(total, line.totalMethod ?? 'block', protocol);
  const ofShare = shareError(line, samples);
  if (ofShare === null) return null;
  // Of a product of two independent numbers.
  return Math.sqrt(ofTotal ** 2 + ofShare ** 2 + ofTotal ** 2 * ofShare ** 2);
}

/**
 * Coefficient of variation of the line's share of the scanned birds, all small counts together: the
 * binomial one for birds drawn one by one, as much larger as birds of one small count are alike
 * (Dirichlet-multinomial; only several small counts can tell). The share is that of the line's own
 * identification, or of those within it where it was not given in the samples. A share of which no
 * bird was scanned is taken as of half a bird (common practice, no source).
 */
function shareError(line: TallyLine, samples: readonly ScanSample[]): number | null {
  const scanned = samples.filter(({ number }) => number > 0);
  const names = [...new Set(scanned.map(({ sample }) => sample))].sort();
  const keys = [...new Set(scanned.map(({ candidates }) => keyOf(candidates)))].sort();
  const birdsIn = (each: readonly ScanSample[]): number => sum(each.map(({ number }) => number));
  const sizes = names.map((name) => birdsIn(scanned.filter(({ sample }) => sample === name)));
  const birds = sum(sizes);
  if (birds === 0) return null;
  const key = keyOf(line.candidates);
  const own = scanned.filter(({ candidates }) =>
    keys.includes(key) ? keyOf(candidates) === key : isWithin(candidates, line.candidates),
  );
  const share = Math.max(birdsIn(own), 0.5) / birds;
  const { alikeness } = fitDirichletMultinomial(
    names.map((name) =>
      keys.map((each) =>
        birdsIn(
          scanned.filter(({ sample, candidates }) => sample === name && keyOf(candidates) === each),
        ),
      ),
    ),
  );
  const larger = sum(sizes.map((size) => size * (1 + (size - 1) * alikeness))) / birds;
  return Math.sqrt((Math.max(0, 1 - share) / (share * birds)) * larger);
}
