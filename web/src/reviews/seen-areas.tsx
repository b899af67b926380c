import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useMemo, type ReactNode } from 'react';
import {
  WaterbodyMap,
  type MapOutline,
  type MapSection,
  type MapVantage,
} from '../plans/waterbody-map.js';
import type { ObserverLetter } from '../ui/observer-mark.js';
import { listed, percent } from '../ui/words.js';

/** A tally of a cell with what was drawn of it. */
export interface DrawnTally {
  readonly tally: string;
  readonly observer: string;
  readonly observerName: string;
  readonly coverage: number;
  readonly seenAreas: readonly MapOutline['rings'][];
}

/** What observers drew as seen of a place, on its map and in words; nothing where nobody drew. */
export function SeenAreas(props: {
  readonly tallies: readonly DrawnTally[];
  readonly sections: readonly MapSection[];
  readonly vantages: readonly MapVantage[];
  readonly letters: ReadonlyMap<string, ObserverLetter>;
}): ReactNode {
  const { tallies, sections, letters } = props;
  const outlines = useMemo(
    () =>
      tallies.flatMap(({ tally, observer, seenAreas }) =>
        seenAreas.map((rings, index): MapOutline => {
          const letter = letters.get(observer);
          return {
            id: `${tally}-${index}`,
            words: letter?.letter ?? '',
            lineStyle: letter?.lineStyle ?? 0,
            rings,
          };
        }),
      ),
    [tallies, letters],
  );
  const fit = useMemo(
    () => [
      ...sections.flatMap(({ polygon }) => polygon.flat()),
      ...outlines.flatMap(({ rings }) => rings.flat()),
    ],
    [sections, outlines],
  );
  if (outlines.length === 0) return null;
  const place = listed(sections.map(({ name }) => name));
  const drawn = tallies.filter(({ seenAreas }) => seenAreas.length > 0);
  const said = drawn.map((tally) => {
    const letter = letters.get(tally.observer)?.letter ?? '';
    const { observerName: name } = tally;
    const share = percent(tally.coverage);
    return {
      key: tally.tally,
      words: t`${letter}. ${name} covered ${share} of ${place}, drawn on the map.`,
    };
  });
  const sentences = said.map(({ words }) => words).join(' ');
  return (
    <figure className="stack-tight">
      <WaterbodyMap
        label={t`Map of what observers drew as seen. ${sentences}`}
        sections={sections}
        vantages={props.vantages}
        outlines={outlines}
        fit={fit}
        mostHeight={360}
      />
      <figcaption className="small">
        <ul className="plain-list">
          {said.map(({ key, words }) => (
            <li key={key}>{words}</li>
          ))}
        </ul>
        <p className="soft">
          <Trans>
            The outline is as the observer drew it; the share counts only what lies in the section.
          </Trans>
        </p>
      </figcaption>
    </figure>
  );
}
