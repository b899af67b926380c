import { t } from '@lingui/core/macro';
import { v7 } from 'uuid';
import { countingErrorOf } from '../../../server/core/compare/counting-error.js';
import { defaultProtocol } from '../../../server/core/model/default-protocol.js';
import { TOTAL_METHODS } from '../../../server/core/model/snapshot.js';
import { composeRaft, type RaftComposition } from '../../../server/core/raft/compose-raft.js';
import { raftLines } from '../../../server/core/raft/raft-lines.js';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { taxonName } from '../../../server/core/taxa/taxon-name.js';
import { countedBirds, countedSamples } from '../ui/counted.js';
import { birds, sentenceCase } from '../ui/words.js';
import type { DraftRaft, DraftSample } from './raft.js';
import { emptyLine, wholeNumber, type Draft, type DraftLine } from './draft.js';

/** A new raft under a label that nothing in the tally has. */
export function emptyRaft(draft: Draft): DraftRaft {
  const taken = new Set([
    ...draft.rafts.map(({ label }) => label),
    ...draft.lines.map(({ flock }) => flock.trim()),
  ]);
  let number = 1;
  while (taken.has(`raft ${number}`)) number += 1;
  return {
    id: v7(),
    label: `raft ${number}`,
    total: '',
    method: 'block',
    block: '',
    taxa: [],
    samples: [[]],
  };
}

export function withRaft(draft: Draft, raft: DraftRaft): Draft {
  const known = draft.rafts.some(({ id }) => id === raft.id);
  return {
    ...draft,
    rafts: known
      ? draft.rafts.map((one) => (one.id === raft.id ? raft : one))
      : [...draft.rafts, raft],
  };
}

/** Without the raft; its lines go too, since they rest on its samples. */
export function withoutRaft(draft: Draft, raft: DraftRaft): Draft {
  return {
    ...draft,
    rafts: draft.rafts.filter(({ id }) => id !== raft.id),
    lines: draft.lines.filter((line) => !isLineOf(raft, line)),
  };
}

export function isLineOf({ label }: DraftRaft, line: DraftLine): boolean {
  return line.method === 'sample' && line.flock.trim() === label;
}

export function numberIn(sample: DraftSample, taxon: string): number {
  return sample.find((each) => each.taxon === taxon)?.number ?? 0;
}

/** So many more, or fewer, of a taxon in one small count; never fewer than none. */
export function withBirds(
  raft: DraftRaft,
  sampleAt: number,
  taxon: string,
  more: number,
): DraftRaft {
  const samples = raft.samples.map((sample, at) => {
    if (at !== sampleAt) return sample;
    const number = Math.max(0, numberIn(sample, taxon) + more);
    const others = sample.filter((each) => each.taxon !== taxon);
    return number === 0 ? others : [...others, { taxon, number }];
  });
  return { ...raft, samples };
}

/** What the samples say; `null` while no bird was scanned. */
export function compositionOf({ samples }: DraftRaft): RaftComposition | null {
  return composeRaft(
    samples.map((sample) =>
      sample.flatMap(({ taxon, number }) => {
        const parsed = parseTaxon(taxon);
        return parsed.ok ? [{ candidates: parsed.candidates, number }] : [];
      }),
    ),
  );
}

/** The raft in whole birds; `null` while there is no total or nothing was scanned. */
export function birdsOf(raft: DraftRaft): ReturnType<typeof raftLines> | null {
  const total = wholeNumber(raft.total);
  const composition = compositionOf(raft);
  if (total === null || total === 0 || composition === null) return null;
  // The count's own table of errors is the compilers'; the phone goes by the usual one.
  return raftLines(total, countingErrorOf(total, raft.method, defaultProtocol), composition);
}

/**
 * The draft with the raft's birds as lines of method "sample" under its label, in place of those it had
 * before; a line of the same taxon keeps its id and what else was said of it.
 */
export function withRaftLines(draft: Draft, raft: DraftRaft): Draft {
  const lines = birdsOf(raft) ?? [];
  const before = draft.lines.filter((line) => isLineOf(raft, line));
  const made = lines
    .filter(({ number }) => number > 0)
    .map(({ candidates, number }): DraftLine => {
      const taxon = taxonName(candidates);
      const same = before.find((line) => line.taxon === taxon) ?? emptyLine(taxon);
      return {
        ...same,
        quantity: 'number',
        number: String(number),
        method: 'sample',
        totalMethod: raft.method,
        block: raft.method === 'block' ? raft.block : '',
        flock: raft.label,
        note: same.note === '' || isRaftNote(same.note) ? raftNote(raft) : same.note,
      };
    });
  return {
    ...withRaft(draft, raft),
    lines: [...draft.lines.filter((line) => !isLineOf(raft, line)), ...made],
  };
}

/** Whether the tally's lines say what the raft says: none yet, all of it, or another thing. */
export function stateOf(draft: Draft, raft: DraftRaft): 'no-lines' | 'in-lines' | 'changed' {
  const lines = draft.lines.filter((line) => isLineOf(raft, line));
  if (lines.length === 0) return 'no-lines';
  const text = (all: readonly DraftLine[]): string =>
    all
      .map(({ taxon, number }) => `${taxon} ${number}`)
      .sort()
      .join(', ');
  const wanted = withRaftLines(draft, raft).lines.filter((line) => isLineOf(raft, line));
  return text(lines) === text(wanted) ? 'in-lines' : 'changed';
}

/** What a line says of where its number comes from, for whoever compiles it. */
function raftNote(raft: DraftRaft): string {
  const scanned = raft.samples.flat().reduce((sum, { number }) => sum + number, 0);
  const block = wholeNumber(raft.block);
  const size = block === null ? null : birds(block);
  const how = {
    'one-by-one': t`counted one by one`,
    block: size === null ? t`counted in blocks` : t`counted in blocks of ${size}`,
    guess: t`guessed`,
  }[raft.method];
  const samples = raft.samples.filter((sample) => sample.length > 0).length;
  const total = birds(wholeNumber(raft.total) ?? 0);
  const sampled = countedSamples(samples);
  const scannedBirds = countedBirds(scanned);
  return t`Raft of ${total}, ${how}; ${sampled} of ${scannedBirds}.`;
}

/** Whether a note was written by a raft, in whichever language, and nobody has changed it since. */
function isRaftNote(note: string): boolean {
  return /^(Raft of|Rassemblement de) [\d\s,.]*,/u.test(note);
}

/** A kept raft of this version of the app; `null` if it is none. */
export function asRaft(value: unknown): DraftRaft | null {
  if (typeof value !== 'object' || value === null) return null;
  const { id, label, total, method, block, taxa, samples } = value as Partial<
    Record<keyof DraftRaft, unknown>
  >;
  if (typeof id !== 'string' || typeof label !== 'string') return null;
  const isText = (one: unknown): one is string => typeof one === 'string';
  const asSample = (sample: unknown): DraftSample =>
    (Array.isArray(sample) ? sample : []).flatMap((one: { taxon?: unknown; number?: unknown }) =>
      isText(one.taxon) && typeof one.number === 'number'
        ? [{ taxon: one.taxon, number: one.number }]
        : [],
    );
  const read = Array.isArray(samples) ? samples.map(asSample) : [];
  return {
    id,
    label,
    total: isText(total) ? total : '',
    method: TOTAL_METHODS.find((one) => one === method) ?? 'block',
    block: isText(block) ? block : '',
    taxa: Array.isArray(taxa) ? taxa.filter(isText) : [],
    samples: read.length === 0 ? [[]] : read,
  };
}

/** Birds of a raft that never became lines would be lost: asked about before the tally is sent. */
export function raftFaults(draft: Draft): readonly { field: string; sentence: string }[] {
  return draft.rafts
    .filter((raft) => stateOf(draft, raft) === 'no-lines')
    .map((raft) => ({
      field: raftField(raft),
      sentence: notInLines(sentenceCase(raft.label)),
    }));
}

/** What faults of a raft name as their field. */
export function raftField({ id }: DraftRaft): string {
  return `raft ${id}`;
}

function notInLines(raft: string): string {
  return t`${raft} is not in the tally lines yet: open it and turn it into lines, or remove it.`;
}
