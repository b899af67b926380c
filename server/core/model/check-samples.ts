import { keyOf } from '../taxa/candidate-set.js';
import type { Fault } from './fault.js';
import { nearestOf } from './nearest.js';
import type { RawTable } from './raw.js';
import { readTaxonField } from './check-tally-line.js';
import { RowReader } from './row-reader.js';
import type { ScanSample, Tally } from './snapshot.js';

const BIRDS = 'a whole number of birds, 0 or more';

/**
 * Checks `samples.csv`: small counts by identification inside a raft. The raft is a line's id, or a
 * flock label that lines of one tally alone have. The values count only if no fault was added.
 */
export function checkSamples(
  table: RawTable | null,
  tallies: readonly Tally[],
  faults: Fault[],
): readonly ScanSample[] {
  if (table === null) return [];
  const lines = tallies.flatMap((tally) => tally.lines.map((line) => ({ tally, line })));
  const ids = new Set(lines.map(({ line }) => line.id));
  const talliesOfFlock = new Map<string, Set<string>>();
  for (const { tally, line } of lines) {
    if (line.flock === null) continue;
    talliesOfFlock.set(
      line.flock,
      (talliesOfFlock.get(line.flock) ?? new Set<string>()).add(tally.id),
    );
  }
  const firstRows = new Map<string, number>();
  const samples = table.rows.map(({ row, fields }): ScanSample => {
    const reader = new RowReader(
      table.file,
      (column) => ({ row, cell: fields.get(column) ?? null }),
      faults,
    );
    const raft = reader.required('raft', 'a tally line id or a flock label') ?? '';
    const of = [...(talliesOfFlock.get(raft) ?? [])].sort();
    // Where the tallies could not be read, nothing can be said about their rafts.
    if (raft !== '' && lines.length > 0 && !ids.has(raft)) {
      if (of.length === 0) {
        const problem = `no tally line has "${raft}" as its id or flock label`;
        const known = [...ids, ...talliesOfFlock.keys()];
        const expected = 'a tally line id or a flock label';
        reader.fault('raft', 'unknown-id', problem, expected, nearestOf(raft, known));
      } else if (of.length > 1) {
        const problem = `"${raft}" is a flock label in tallies ${of.join(' and ')}`;
        reader.fault('raft', 'contradiction', problem, 'the id of a tally line of the raft');
      }
    }
    const sample = reader.required('sample', 'a number or name of the small count') ?? '';
    const candidates = readTaxonField(reader);
    reader.required('number', BIRDS);
    const number = reader.whole('number', BIRDS) ?? 0;
    const key = JSON.stringify([raft, sample, keyOf(candidates)]);
    const earlier = firstRows.get(key);
    if (earlier === undefined) firstRows.set(key, row);
    else if (candidates.length > 0) {
      const problem = `row ${earlier} has the same taxon in sample ${sample} of ${raft}`;
      reader.fault('taxon', 'duplicate-row', problem, 'one row for a taxon in a sample');
    }
    return { raft, sample, candidates, number };
  });
  const key = ({ raft, sample, candidates }: ScanSample): string =>
    [raft, sample, keyOf(candidates)].join('\n');
  return samples.sort((one, other) => (key(one) < key(other) ? -1 : 1));
}
