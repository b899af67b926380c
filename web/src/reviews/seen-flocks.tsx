import { t } from '@lingui/core/macro';
import { Plural, Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { FlockPartsFragment } from '../graphql/generated/graphql.js';
import { TaxonName } from '../ui/taxon.js';
import { birds, clock, listed } from '../ui/words.js';
import { timesOf } from './link-words.js';

/** What the map draws, and what it cannot, as a table. */
export function SeenFlocks(props: {
  readonly flocks: readonly FlockPartsFragment[];
  readonly timeZone: string;
}): ReactNode {
  const seen = props.flocks.length;
  return (
    <details>
      <summary>
        <Plural
          value={seen}
          one="List of the # flock seen by then"
          other="List of the # flocks seen by then"
        />
      </summary>
      <div className="wide" role="region" aria-label={t`Flocks seen by then`} tabIndex={0}>
        <table>
          <caption>
            <Trans>Each flock as its observer recorded it, earliest first.</Trans>
          </caption>
          <thead>
            <tr>
              <th scope="col">
                <Trans context="time">Seen</Trans>
              </th>
              <th scope="col" className="number">
                <Trans>Birds</Trans>
              </th>
              <th scope="col">
                <Trans>Taxon</Trans>
              </th>
              <th scope="col">
                <Trans>Section</Trans>
              </th>
              <th scope="col">
                <Trans>By</Trans>
              </th>
              <th scope="col">
                <Trans>Place</Trans>
              </th>
            </tr>
          </thead>
          <tbody>
            {props.flocks.map((flock) => (
              <tr key={flock.lines.join('+')}>
                <td>{seenWords(flock, props.timeZone)}</td>
                <td className="number">{birds(flock.number)}</td>
                <td>
                  <TaxonName taxon={flock.taxon} />
                </td>
                <td>{listed(flock.sections.map(({ name }) => name))}</td>
                <td>{flock.observer.name}</td>
                <td>
                  {flock.position ? t`on the map` : t({ message: 'not noted', context: 'place' })}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

/** When a flock was seen; where that was not noted, the time span in which it was. */
function seenWords(flock: FlockPartsFragment, timeZone: string): string {
  if (flock.timeNoted) return timesOf(flock, timeZone);
  const [start, end] = [clock(flock.start, timeZone), clock(flock.end, timeZone)];
  return t`between ${start} and ${end}`;
}
