import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { conditionsWords, type NotedConditions } from '../ui/conditions-words.js';
import type { MapSection, MapVantage } from '../plans/waterbody-map.js';
import { ObserverMark, type ObserverLetter } from '../ui/observer-mark.js';
import { TaxonName } from '../ui/taxon.js';
import { birds, percent } from '../ui/words.js';
import { SeenAreas, type DrawnTally } from './seen-areas.js';

export interface CellTallyView extends DrawnTally {
  readonly total: number;
  readonly conditions: readonly NotedConditions[];
  readonly counted: boolean;
  readonly lines: readonly { readonly taxon: string; readonly number: number }[];
}

/** The tallies of a cell beside one another, aligned by taxon; only the group at first. */
export function SideBySide(props: {
  readonly cell: { readonly tallies: readonly CellTallyView[] };
  /** Where the cell is. */
  readonly sections: readonly MapSection[];
  readonly vantages: readonly MapVantage[];
  readonly groupTaxa: readonly string[] | null;
  readonly letters: ReadonlyMap<string, ObserverLetter>;
}): ReactNode {
  const { tallies } = props.cell;
  const [showAll, setShowAll] = useState(props.groupTaxa === null);
  const { groupTaxa } = props;
  const isShown = (taxon: string): boolean =>
    showAll || groupTaxa === null || groupTaxa.includes(taxon);
  const most = new Map<string, number>();
  for (const { lines } of tallies) {
    for (const { taxon, number } of lines) most.set(taxon, Math.max(most.get(taxon) ?? 0, number));
  }
  const taxa = [...most.keys()]
    .filter(isShown)
    .sort((one, other) => (most.get(other) ?? 0) - (most.get(one) ?? 0) || (one < other ? -1 : 1));
  const numberOf = (tally: CellTallyView, taxon: string): number | null => {
    const lines = tally.lines.filter((line) => line.taxon === taxon);
    return lines.length === 0 ? null : lines.reduce((sum, { number }) => sum + number, 0);
  };
  const hidden = most.size - taxa.length;
  return (
    <section className="stack-tight" aria-labelledby="side-by-side-heading">
      <h2 id="side-by-side-heading">
        <Trans>The tallies side by side</Trans>
      </h2>
      {tallies.some(({ conditions }) => conditions.length > 0) ? (
        <ul className="plain-list">
          {tallies.flatMap((tally) =>
            tally.conditions.map((conditions, index) => (
              <ConditionsItem
                key={`${tally.tally}-${index}`}
                observer={tally.observerName}
                conditions={conditions}
              />
            )),
          )}
        </ul>
      ) : null}
      <SeenAreas
        tallies={tallies}
        sections={props.sections}
        vantages={props.vantages}
        letters={props.letters}
      />
      <div className="wide" role="region" aria-label={t`Table: tallies side by side`} tabIndex={0}>
        <table className="side-by-side">
          <thead>
            <tr>
              <th scope="col">
                <Trans>Taxon</Trans>
              </th>
              {tallies.map((tally) => {
                const letter = props.letters.get(tally.observer);
                const coverage = percent(tally.coverage);
                return (
                  <th key={tally.tally} scope="col" className="number">
                    {letter === undefined ? null : <ObserverMark observer={letter} />}
                    <span className="block observer-name">{tally.observerName}</span>
                    {tally.coverage < 1 ? (
                      <span className="block soft">
                        <Trans>saw {coverage}, a lower bound</Trans>
                      </span>
                    ) : null}
                    {tally.counted ? null : (
                      <span className="block soft">
                        <Trans>compared only</Trans>
                      </span>
                    )}
                  </th>
                );
              })}
            </tr>
          </thead>
          <tbody>
            {taxa.map((taxon) => (
              <tr key={taxon}>
                <th scope="row">
                  <TaxonName taxon={taxon} />
                </th>
                {tallies.map((tally) => {
                  const number = numberOf(tally, taxon);
                  return (
                    <td key={tally.tally} className="number">
                      {number === null ? <span className="soft">–</span> : birds(number)}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">{showAll ? t`All taxa` : t`Together`}</th>
              {tallies.map((tally) => (
                <td key={tally.tally} className="number">
                  <strong>
                    {birds(
                      tally.lines.reduce(
                        (sum, line) => (isShown(line.taxon) ? sum + line.number : sum),
                        0,
                      ),
                    )}
                  </strong>
                </td>
              ))}
            </tr>
          </tfoot>
        </table>
      </div>
      {groupTaxa === null ? null : (
        <label className="choice not-printed">
          <input
            type="checkbox"
            checked={showAll}
            onChange={(event) => setShowAll(event.target.checked)}
          />
          {showAll || hidden === 0
            ? t`All taxa of this place`
            : t`All taxa of this place (${hidden} more)`}
        </label>
      )}
    </section>
  );
}

function ConditionsItem(props: {
  readonly observer: string;
  readonly conditions: NotedConditions;
}): ReactNode {
  const { observer } = props;
  const conditions = conditionsWords(props.conditions);
  return (
    <li className="small">
      <Trans>
        <strong>{observer}</strong>: {conditions}.
      </Trans>
    </li>
  );
}
