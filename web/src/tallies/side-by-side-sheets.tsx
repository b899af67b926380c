import type { ReactNode } from 'react';
import { birds, countOf } from '../ui/words.js';
import { taxaOf, wholesThatDiffer, type TallySheet } from './tally-sheet.js';

/** Versions of one tally next to each other, by taxon: what differs comes first and says so. */
export function SideBySideSheets(props: { readonly sheets: readonly TallySheet[] }): ReactNode {
  const { sheets } = props;
  const taxa = taxaOf(sheets);
  const differing = taxa.filter(({ differs }) => differs).length;
  const wholes = wholesThatDiffer(sheets);
  return (
    <div className="stack-tight">
      <p className="sentence">
        {differing === 0
          ? 'They have the same numbers for every taxon'
          : `They differ in ${countOf(differing, 'taxon', 'taxa')}`}
        {wholes.length === 0 ? '.' : ', and in what holds for the whole tally.'}
      </p>
      <table className="sheets">
        <caption className="for-readers">The tallies side by side, birds by taxon</caption>
        <thead>
          <tr>
            <th scope="col">Taxon</th>
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
                <span className="soft small tally-line-details">differs</span>
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
                {differs ? <span className="soft small tally-line-details">differs</span> : null}
              </th>
              {sheets.map(({ title, rows }) => (
                <td key={title} className="number">
                  {rows.get(name) ?? <span className="soft">not in it</span>}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">All birds</th>
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
