import type { ReactNode } from 'react';
import type { FlockPartsFragment } from '../graphql/generated/graphql.js';
import { TaxonName } from '../ui/taxon.js';
import { birds, countOf, listed } from '../ui/words.js';
import { timesOf } from './link-words.js';

/** What the map draws, and what it cannot, as a table. */
export function SeenFlocks(props: {
  readonly flocks: readonly FlockPartsFragment[];
  readonly timeZone: string;
}): ReactNode {
  return (
    <details>
      <summary>List of the {countOf(props.flocks.length, 'flock')} seen by then</summary>
      <div className="wide" role="region" aria-label="Flocks seen by then" tabIndex={0}>
        <table>
          <caption>Each flock as its observer recorded it, earliest first.</caption>
          <thead>
            <tr>
              <th scope="col">Seen</th>
              <th scope="col" className="number">
                Birds
              </th>
              <th scope="col">Taxon</th>
              <th scope="col">Section</th>
              <th scope="col">By</th>
              <th scope="col">Place</th>
            </tr>
          </thead>
          <tbody>
            {props.flocks.map((flock) => (
              <tr key={flock.lines.join('+')}>
                <td>
                  {flock.timeNoted ? '' : 'between '}
                  {timesOf(flock, props.timeZone).replace(
                    ' to ',
                    flock.timeNoted ? ' to ' : ' and ',
                  )}
                </td>
                <td className="number">{birds(flock.number)}</td>
                <td>
                  <TaxonName taxon={flock.taxon} />
                </td>
                <td>{listed(flock.sections.map(({ name }) => name))}</td>
                <td>{flock.observer.name}</td>
                <td>{flock.position ? 'on the map' : 'not noted'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
