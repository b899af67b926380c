import type { ReactNode } from 'react';
import type { CountCoverageQuery } from '../graphql/generated/graphql.js';
import { listed, span } from '../ui/words.js';
import { gapOf, type Gap } from './coverage-gaps.js';
import type { CoverageEntry } from './coverage-words.js';

type Count = CountCoverageQuery['count'];

const kinds: readonly { readonly gap: Gap; readonly words: string }[] = [
  { gap: 'nobody', words: 'Counted by nobody' },
  { gap: 'part-only', words: 'Seen only in part' },
  { gap: 'no-second', words: 'Without a second independent observer' },
];

/** Where somebody is still to be sent, worst first. */
export function GapList(props: {
  readonly count: Count;
  readonly entryFor: (sectionId: string, windowId: string) => CoverageEntry | undefined;
  readonly timeZone: string;
}): ReactNode {
  const { count, entryFor, timeZone } = props;
  const gaps = count.windows.flatMap((window) =>
    count.sections.map((section) => ({
      gap: gapOf(entryFor(section.id, window.id), window.closed),
      place:
        count.windows.length > 1
          ? `${section.name} (${span(window.start, window.end, timeZone)})`
          : section.name,
    })),
  );
  const found = kinds.flatMap(({ gap, words }) => {
    const places = gaps.filter((one) => one.gap === gap).map(({ place }) => place);
    return places.length === 0 ? [] : [{ words, places }];
  });
  return (
    <section className="stack-tight" aria-labelledby="gaps-heading">
      <h2 id="gaps-heading">What is missing</h2>
      {count.windows.every(({ closed }) => closed) ? null : (
        <p className="soft">Tallies that are still to come are taken as coming.</p>
      )}
      {found.length === 0 ? (
        <p>Nothing: every section has a second independent observer.</p>
      ) : (
        <ul className="gap-list">
          {found.map(({ words, places }) => (
            <li key={words}>
              <strong>{words}:</strong> {listed(places)}.
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
