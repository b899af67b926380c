import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg, plural, select, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useId, useMemo, useState, type ReactNode } from 'react';
import type { CountLinksQuery, LinkPartsFragment } from '../graphql/generated/graphql.js';
import { kilometresBetween } from '../plans/projection.js';
import { clock } from '../ui/words.js';
import { LinkMap, type Extent } from './link-map.js';
import { isSeen } from './link-marks.js';
import { LinkTimeLine, spanOf } from './link-time-line.js';
import { SeenFlocks } from './seen-flocks.js';

const extents: readonly { readonly value: Extent; readonly words: MessageDescriptor }[] = [
  { value: 'sections', words: msg`Both sections` },
  { value: 'near', words: msg`Close by` },
  { value: 'whole', words: msg`Whole waterbody` },
];

/** Sightings nearer than this, in kilometres, would lie upon each other on a map of whole sections. */
const NEAR = 0.5;

function firstExtent({ first, second }: LinkPartsFragment): Extent {
  if (!first.position || !second.position) return 'sections';
  return kilometresBetween(first.position, second.position) < NEAR ? 'near' : 'sections';
}

/** The map of the waterbody at a moment of the window, and the time line that chooses the moment. */
export function LinkView(props: {
  readonly link: LinkPartsFragment;
  readonly links: readonly LinkPartsFragment[];
  readonly count: CountLinksQuery['count'];
  readonly onChoose: (linkId: string) => void;
}): ReactNode {
  const { link, count } = props;
  const { timeZone, review } = count;
  const id = useId();
  const [chosenExtent, setExtent] = useState<Extent | null>(null);
  const extent = chosenExtent ?? firstExtent(link);
  const windowOf = useMemo(
    () => new Map(review.cells.map((cell) => [cell.id, cell.window.id])),
    [review.cells],
  );
  const windowId = windowOf.get(link.first.cell);
  const window = count.windows.find((one) => one.id === windowId) ?? count.windows[0];
  const flocks = useMemo(
    () => review.flocks.filter((flock) => flock.window.id === windowId),
    [review.flocks, windowId],
  );
  const links = useMemo(
    () => props.links.filter(({ first }) => windowOf.get(first.cell) === windowId),
    [props.links, windowOf, windowId],
  );
  const span = useMemo(
    () => (window === undefined ? null : spanOf(window, flocks)),
    [window, flocks],
  );
  const [chosenMoment, setMoment] = useState<{ link: string; moment: number } | null>(null);
  if (span === null) return null;
  // Another link begins with the whole window.
  const moment = chosenMoment?.link === link.id ? chosenMoment.moment : span.end;
  const seen = flocks.filter((flock) => isSeen(flock, moment));
  return (
    <figure className="stack-tight link-view">
      <figcaption className="sentence-small">{viewSentence()}</figcaption>
      <div className="row not-printed">
        <label htmlFor={id} className="label">
          <Trans>The map shows</Trans>
        </label>
        <select
          id={id}
          value={extent}
          onChange={(event) => setExtent(event.target.value as Extent)}
        >
          {extents.map(({ value, words }) => (
            <option key={value} value={value}>
              {i18n._(words)}
            </option>
          ))}
        </select>
      </div>
      <LinkMap
        link={link}
        links={links}
        flocks={flocks}
        sections={count.sections}
        vantages={count.vantages}
        shoreline={count.shoreline}
        timeZone={timeZone}
        moment={moment}
        extent={extent}
        onChoose={props.onChoose}
      />
      <LinkTimeLine
        link={link}
        flocks={flocks}
        span={span}
        moment={moment}
        timeZone={timeZone}
        onChange={(next) => setMoment({ link: link.id, moment: next })}
      />
      <p className="soft small">
        <Trans>
          Circle 1 is the first sighting, square 2 the second; other circles are flocks as recorded,
          larger for more birds, heavier while they were being seen. The thicker an arrow, the
          likelier one flock; its percentage stands beside it. A line without a head is a flock that
          may have stayed in view of both; a dotted one is ruled two flocks. Triangles are vantage
          points, dashed outlines what is seen from them.
        </Trans>
      </p>
      <SeenFlocks flocks={seen} timeZone={timeZone} />
    </figure>
  );

  /** What the map shows now, in words. */
  function viewSentence(): string {
    const [all, shown] = [flocks.length, seen.length];
    const placed = seen.filter(({ position }) => position).length;
    const by = clock(new Date(moment).toISOString(), timeZone);
    const [first, second] = [isSeen(link.first, moment), isSeen(link.second, moment)];
    const sightings = first ? (second ? 'both' : 'first') : second ? 'second' : 'neither';
    return t`By ${by}, ${shown} of ${plural(all, { one: '# flock', other: '# flocks' })} had been seen, ${select(
      sightings,
      {
        both: 'both sightings among them',
        first: 'the first sighting among them, the second not yet',
        second: 'the second sighting among them, the first not yet',
        other: 'neither sighting among them yet',
      },
    )}; ${plural(placed, { one: '# has a noted place and is on the map', other: '# have a noted place and are on the map' })}.`;
  }
}
