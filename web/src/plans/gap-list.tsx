import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { CountCoverageQuery } from '../graphql/generated/graphql.js';
import { listed, span } from '../ui/words.js';
import { gapOf, type Gap } from './coverage-gaps.js';
import type { CoverageEntry } from './coverage-words.js';

type Count = CountCoverageQuery['count'];

const kinds: readonly { readonly gap: Gap; readonly words: MessageDescriptor }[] = [
  { gap: 'nobody', words: msg`Counted by nobody` },
  { gap: 'part-only', words: msg`Seen only in part` },
  { gap: 'no-second', words: msg`Without a second independent observer` },
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
    return places.length === 0 ? [] : [{ gap, words: i18n._(words), places: listed(places) }];
  });
  return (
    <section className="stack-tight" aria-labelledby="gaps-heading">
      <h2 id="gaps-heading">
        <Trans>What is missing</Trans>
      </h2>
      {count.windows.every(({ closed }) => closed) ? null : (
        <p className="soft">
          <Trans>Tallies that are still to come are taken as coming.</Trans>
        </p>
      )}
      {found.length === 0 ? (
        <p>
          <Trans>Nothing: every section has a second independent observer.</Trans>
        </p>
      ) : (
        <ul className="gap-list">
          {found.map(({ gap, words, places }) => (
            <li key={gap}>
              <Trans>
                <strong>{words}:</strong> {places}.
              </Trans>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
