import type * as Api from '../api/generated/schema.js';
import { flocksOf, type Flock } from '../core/link/flock.js';
import { taxonName } from '../core/taxa/taxon-name.js';
import { personView, sectionViews, windowView } from '../plans/plan.view.js';
import type { LoadedReview } from './loaded-review.js';

/**
 * The flocks of every tally that the review holds, by the rule that the engine follows flocks by.
 * What the viewer is blind to is not in the review, so it cannot be in here either.
 */
export function flockViews({ access, input }: LoadedReview): Api.Flock[] {
  const { snapshot, protocol } = input;
  return snapshot.windows
    .flatMap((window) =>
      snapshot.tallies
        .filter((tally) => tally.window === window.id)
        .flatMap((tally) => flocksOf(tally, window, protocol)),
    )
    .toSorted((a, b) => a.moment.start - b.moment.start || (a.key < b.key ? -1 : 1))
    .map((flock) => flockView(access.record, flock));
}

function flockView(record: LoadedReview['access']['record'], flock: Flock): Api.Flock {
  const { tally, lines, moment, position } = flock;
  return {
    lines: lines.map(({ id }) => id),
    observer: personView(record, tally.observer),
    sections: sectionViews(record, tally.sections),
    window: windowView(record, tally.window),
    taxon: taxonName([...new Set(lines.flatMap(({ candidates }) => candidates))].toSorted()),
    number: flock.number,
    start: new Date(moment.start).toISOString(),
    end: new Date(moment.end).toISOString(),
    timeNoted: lines.some(({ time }) => time !== null),
    position: position && [...position],
  };
}
