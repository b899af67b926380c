import { t } from '@lingui/core/macro';
import { useMemo, type ReactNode } from 'react';
import type { FlockPartsFragment, LinkPartsFragment } from '../graphql/generated/graphql.js';
import {
  WaterbodyMap,
  type MapSection,
  type MapShorePart,
  type MapVantage,
} from '../plans/waterbody-map.js';
import { chance } from '../ui/words.js';
import { placeOf, sceneOf } from './link-marks.js';

/** How much of the waterbody the map shows. */
export type Extent = 'whole' | 'sections' | 'near';

/** Where the two sightings of a link were, among the flocks seen by then. */
export function LinkMap(props: {
  readonly link: LinkPartsFragment;
  readonly links?: readonly LinkPartsFragment[];
  readonly flocks?: readonly FlockPartsFragment[];
  readonly sections: readonly MapSection[];
  readonly vantages: readonly MapVantage[];
  readonly shoreline?: readonly MapShorePart[];
  readonly timeZone: string;
  /** Milliseconds since 1970; by default all is shown. */
  readonly moment?: number;
  readonly extent?: Extent;
  readonly onChoose?: (linkId: string) => void;
}): ReactNode {
  const { link, links = [link], flocks = [], sections, timeZone, onChoose } = props;
  const { moment = Infinity, extent = 'sections' } = props;
  const scene = useMemo(
    () => sceneOf({ chosen: link, links, flocks, sections, moment, timeZone }),
    [link, links, flocks, sections, moment, timeZone],
  );
  const fit = useMemo(() => fitOf(link, sections, extent), [link, sections, extent]);
  const [from, to] = [link.first.section.name, link.second.section.name];
  const likely = chance(link.probability);
  return (
    <WaterbodyMap
      label={
        link.kind === 'overlap'
          ? t`Map. A line joins ${from} and ${to}, ${likely} likely one flock.`
          : t`Map. An arrow leads from ${from} to ${to}, ${likely} likely one flock.`
      }
      sections={sections}
      vantages={props.vantages}
      shoreline={props.shoreline ?? []}
      fillOf={() => 'two'}
      flocks={scene.flocks}
      arrows={scene.arrows}
      {...(onChoose && { onArrow: onChoose })}
      {...(fit && { fit })}
      {...(extent === 'near' && { leastKilometres: 1, margin: 72 })}
      mostHeight={extent === 'whole' ? 640 : 480}
    />
  );
}

function fitOf(
  link: LinkPartsFragment,
  sections: readonly MapSection[],
  extent: Extent,
): readonly (readonly number[])[] | null {
  if (extent === 'whole') return null;
  const ends = [link.first, link.second];
  if (extent === 'near') {
    return ends.flatMap((sighting) => {
      const place = placeOf(sighting, sections);
      return place === null ? [] : [place.at];
    });
  }
  return sections
    .filter(({ id }) => ends.some(({ section }) => section.id === id))
    .flatMap(({ polygon }) => polygon.flat());
}
