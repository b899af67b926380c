import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { countedTaxa } from '../ui/counted.js';
import { birds } from '../ui/words.js';
import { taxaOf, wholesThatDiffer, type TallySheet } from './tally-sheet.js';

/** Versions of one tally next to each other, by taxon: what differs comes first and says so. */
export function SideBySideSheets(props: { readonly sheets: readonly TallySheet[] }): ReactNode {
  const { sheets } = props;
  const taxa = taxaOf(sheets);
  const differing = taxa.filter(({ differs }) => differs).length;
  const wholes = wholesThatDiffer(sheets);
  return (
    <div className="stack-tight">
      <p className="sentence">{differWords(differing, wholes.length > 0)}</p>
      <table className="sheets">
        <caption className="for-readers">
          <Trans>The tallies side by side, birds by taxon</Trans>
        </caption>
        <thead>
          <tr>
            <th scope="col">
              <Trans>Taxon</Trans>
            </th>
            {sheets.map(({ title }) => (
              <th key={title} scope="col" className="number">
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {wholes.map((name) => (
            <tr key={name} data-differs>
              <th scope="row">
                {name}
                <Differs />
              </th>
              {sheets.map(({ title, whole }) => (
                <td key={title} className="number">
                  {whole.get(name)}
                </td>
              ))}
            </tr>
          ))}
          {taxa.map(({ name, differs }) => (
            <tr key={name} data-differs={differs}>
              <th scope="row">
                {name}
                {differs ? <Differs /> : null}
              </th>
              {sheets.map(({ title, rows }) => (
                <td key={title} className="number">
                  {rows.get(name) ?? (
                    <span className="soft">
                      <Trans>not in it</Trans>
                    </span>
                  )}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">
              <Trans>All birds</Trans>
            </th>
            {sheets.map(({ title, total }) => (
              <td key={title} className="number">
                {birds(total)}
              </td>
            ))}
          </tr>
        </tfoot>
      </table>
    </div>
  );
}

function Differs(): ReactNode {
  return (
    <span className="soft small tally-line-details">
      <Trans>differs</Trans>
    </span>
  );
}

function differWords(differing: number, inWholes: boolean): string {
  const taxa = countedTaxa(differing);
  if (differing === 0) {
    return inWholes
      ? t`They have the same numbers for every taxon, and differ in what holds for the whole tally.`
      : t`They have the same numbers for every taxon.`;
  }
  return inWholes
    ? t`They differ in ${taxa}, and in what holds for the whole tally.`
    : t`They differ in ${taxa}.`;
}
