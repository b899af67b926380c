import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { ObserverMark, type ObserverLetter } from '../ui/observer-mark.js';
import { TaxonName } from '../ui/taxon.js';
import { birds } from '../ui/words.js';

interface BoundView {
  readonly species: string;
  readonly observer: string;
  readonly atLeast: number;
  readonly atMost: number;
}

const width = 180;

/** For each species and observer: at least the birds named as it, at most with all that it may be among. */
export function BoundsTable(props: {
  readonly bounds: readonly BoundView[];
  readonly groupTaxa: readonly string[] | null;
  readonly letters: ReadonlyMap<string, ObserverLetter>;
}): ReactNode {
  const species = speciesOf(props.groupTaxa);
  const shown = props.bounds.filter(
    (bound) => bound.atMost > 0 && (species === null || species.has(bound.species)),
  );
  if (shown.length === 0) return null;
  const full = Math.max(...shown.map(({ atMost }) => atMost), 1);
  const at = (value: number): number => (value / full) * (width - 2);
  const sorted = [...shown].sort((one, other) =>
    one.species === other.species
      ? one.observer < other.observer
        ? -1
        : 1
      : one.species < other.species
        ? -1
        : 1,
  );
  return (
    <details>
      <summary>
        <Trans>At least and at most, by species</Trans>
      </summary>
      <p className="soft">
        <Trans>
          At least: the birds that the observer named as this species. At most: these and every bird
          that they left as a pair or group with it.
        </Trans>
      </p>
      <div
        className="wide"
        role="region"
        aria-label={t`At least and at most, by species`}
        tabIndex={0}
      >
        <table>
          <thead>
            <tr>
              <th scope="col">
                <Trans>Species</Trans>
              </th>
              <th scope="col">
                <Trans>Observer</Trans>
              </th>
              <th scope="col" className="number">
                <Trans>At least</Trans>
              </th>
              <th scope="col" className="number">
                <Trans>At most</Trans>
              </th>
              <th scope="col">
                <span className="for-readers">
                  <Trans>Drawn, all rows on one scale</Trans>
                </span>
              </th>
            </tr>
          </thead>
          <tbody>
            {sorted.map((bound) => {
              const letter = props.letters.get(bound.observer);
              return (
                <tr key={`${bound.species} ${bound.observer}`}>
                  <th scope="row">
                    <TaxonName taxon={bound.species} />
                  </th>
                  <td>
                    {letter === undefined ? bound.observer : <ObserverMark observer={letter} />}
                  </td>
                  <td className="number">{birds(bound.atLeast)}</td>
                  <td className="number">{birds(bound.atMost)}</td>
                  <td>
                    <svg width={width} height={16} aria-hidden="true">
                      <line x1="0" x2={width} y1="14" y2="14" stroke="var(--hairline)" />
                      <rect
                        className="mark-bounds"
                        x={at(bound.atLeast)}
                        width={Math.max(at(bound.atMost) - at(bound.atLeast), 2)}
                        y="2"
                        height="10"
                      />
                    </svg>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </details>
  );
}

/** Every species that some taxon of the group could be. */
function speciesOf(taxa: readonly string[] | null): ReadonlySet<string> | null {
  if (taxa === null) return null;
  const species = new Set<string>();
  for (const taxon of taxa) {
    const parsed = parseTaxon(taxon);
    if (parsed.ok) for (const one of parsed.candidates) species.add(one);
  }
  return species;
}
