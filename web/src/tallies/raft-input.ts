import { v7 } from 'uuid';
import type { OwnTallyFragment, ScanSampleInput } from '../graphql/generated/graphql.js';
import { TOTAL_METHODS } from '../../../server/core/model/snapshot.js';
import type { DraftRaft } from './raft.js';

/** A raft's small counts as they are sent: those that have birds, numbered from 1. */
export function samplesOf({ label, samples }: DraftRaft): readonly ScanSampleInput[] {
  return samples
    .filter((sample) => sample.length > 0)
    .flatMap((sample, at) =>
      sample.map(({ taxon, number }) => ({ raft: label, sample: String(at + 1), taxon, number })),
    );
}

/** The rafts of a submitted tally, from its samples and the lines under their labels. */
export function raftsOf({ samples, lines }: OwnTallyFragment): readonly DraftRaft[] {
  const labels = [...new Set(samples.map(({ raft }) => raft))];
  return labels.map((label) => {
    const own = samples.filter(({ raft }) => raft === label);
    const names = [...new Set(own.map(({ sample }) => sample))];
    const inLines = lines.filter(({ flock, method }) => flock === label && method === 'sample');
    return {
      id: v7(),
      label,
      total: String(inLines.reduce((sum, { number }) => sum + (number ?? 0), 0)),
      method: TOTAL_METHODS.find((one) => one === inLines[0]?.totalMethod) ?? 'block',
      block: String(inLines[0]?.block ?? ''),
      taxa: [...new Set(own.map(({ taxon }) => taxon))],
      samples: names.map((name) =>
        own
          .filter(({ sample, number }) => sample === name && number > 0)
          .map(({ taxon, number }) => ({ taxon, number })),
      ),
    };
  });
}
