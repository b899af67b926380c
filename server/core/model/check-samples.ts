import { keyOf } from '../taxa/candidate-set.js';
import type { Fault } from './fault.js';
import { nearestOf } from './nearest.js';
import type { RawTable } from './raw.js';
import { readTaxonField } from './check-tally-line.js';
import { RowReader } from './row-reader.js';
import type { ScanSample, Tally } from './snapshot.js';
import { alternatives, say, together } from './saying.js';

const BIRDS = say('a whole number of birds, 0 or more');

/**
 * Checks `samples.csv`: small counts by identification inside a raft. The raft is a line's id, or a
 * flock label: of the tally that is named in the column `tally`, or one that lines of one tally alone
 * have. The values count only if no fault was added.
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
    const raft = reader.required('raft', say('a tally line id or a flock label')) ?? '';
    const tally = reader.text('tally');
    const of = [...(talliesOfFlock.get(raft) ?? [])].sort();
    // Where the tallies could not be read, nothing can be said about their rafts.
    if (raft !== '' && tally !== null && tallies.length > 0) {
      if (!of.includes(tally)) {
        const problem = say('no line of tally "{tally}" has the flock label "{raft}"', {
          tally,
          raft,
        });
        const expected =
          of.length === 0
            ? say('a tally that has it')
            : say('a tally that has it: {tallies}', { tallies: alternatives(of) });
        reader.fault('tally', 'unknown-id', problem, expected, nearestOf(tally, of));
      }
    } else if (raft !== '' && lines.length > 0 && !ids.has(raft)) {
      if (of.length === 0) {
        const problem = say('no tally line has "{raft}" as its id or flock label', { raft });
        const known = [...ids, ...talliesOfFlock.keys()];
        const expected = say('a tally line id or a flock label');
        reader.fault('raft', 'unknown-id', problem, expected, nearestOf(raft, known));
      } else if (of.length > 1) {
        const problem = say('"{raft}" is a flock label in tallies {tallies}', {
          raft,
          tallies: together(of),
        });
        const expected = say(
          'the id of a tally line of the raft, or the tally in a column "tally"',
        );
        reader.fault('raft', 'contradiction', problem, expected);
      }
    }
    const sample = reader.required('sample', say('a number or name of the small count')) ?? '';
    const candidates = readTaxonField(reader);
    reader.required('number', BIRDS);
    const number = reader.whole('number', BIRDS) ?? 0;
    const key = JSON.stringify([raft, tally, sample, keyOf(candidates)]);
    const earlier = firstRows.get(key);
    if (earlier === undefined) firstRows.set(key, row);
    else if (candidates.length > 0) {
      const problem = say('row {earlier} has the same taxon in sample {sample} of {raft}', {
        earlier,
        sample,
        raft,
      });
      reader.fault('taxon', 'duplicate-row', problem, say('one row for a taxon in a sample'));
    }
    return { raft, ...(tally !== null && { tally }), sample, candidates, number };
  });
  return samplesInOrder(samples);
}

/** Samples as a snapshot has them: by raft, tally, sample, then candidate set. */
export function samplesInOrder(samples: readonly ScanSample[]): readonly ScanSample[] {
  const key = ({ raft, tally = '', sample, candidates }: ScanSample): string =>
    [raft, tally, sample, keyOf(candidates)].join('\n');
  return [...samples].sort((one, other) => (key(one) < key(other) ? -1 : 1));
}
