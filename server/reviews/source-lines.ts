import type * as Api from '../api/generated/schema.js';
import { tallyView } from '../tallies/tally.view.js';
import type { LoadedReview } from './loaded-review.js';

/** Tally lines by id, each with the tally that it came from. */
export interface SourceLines {
  /** Ids that the review does not hold are passed over. */
  of(ids: readonly string[]): Api.SourceLine[];
}

export function sourceLines({
  access,
  tallies,
}: Pick<LoadedReview, 'access' | 'tallies'>): SourceLines {
  const byId = new Map<string, Api.SourceLine>();
  for (const version of tallies) {
    const tally = tallyView(access.record, version);
    for (const line of tally.lines) byId.set(line.id, { line, tally });
  }
  return {
    of: (ids) =>
      ids.flatMap((id) => {
        const found = byId.get(id);
        return found === undefined ? [] : [found];
      }),
  };
}
