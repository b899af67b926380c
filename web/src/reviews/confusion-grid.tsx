import type { ReactNode } from 'react';
import { readTaxon } from '../ui/taxon.js';
import { birds } from '../ui/words.js';
import type { ConfusionBlock, NamedBirds, NamedKind } from './confusion-blocks.js';

/** The sign before a number, so that neither colour nor shade carries the kind alone. */
const signs: Readonly<Record<NamedKind, string>> = {
  agreed: '=',
  compatible: '~',
  differently: '≠',
  only: '',
};

export const kindWords: Readonly<Record<NamedKind, string>> = {
  agreed: 'the same name',
  compatible: 'agree at a coarser level',
  differently: 'identified differently',
  only: 'counted by one only',
};

/** A bird too many or too few for a whole number, from pairings that are equally good. */
export function wholeBirds(number: number): string {
  return number > 0 && number < 0.5 ? '<1' : birds(Math.round(number));
}

/** Darker for each power of ten. */
function shadeOf(number: number): number {
  return Math.min(4, Math.max(1, 1 + Math.floor(Math.log10(Math.max(1, Math.round(number))))));
}

/**
 * What one observer (rows) called the birds that the other (columns) called something: a number in
 * each cell, shaded by it. Of all pairs together each two names stand once, above the diagonal.
 */
export function ConfusionGrid(props: {
  readonly block: ConfusionBlock;
  /** Names of the two observers; `null` = all pairs together. */
  readonly observers: { readonly a: string; readonly b: string } | null;
}): ReactNode {
  const { block, observers } = props;
  const { taxa } = block;
  const found = new Map(block.named.map((one) => [keyOf(one.a, one.b), one]));
  const [rowHead, columnHead] =
    observers === null ? ['by one', 'by the other'] : [`by ${observers.a}`, `by ${observers.b}`];
  return (
    <div className="wide" role="region" aria-label={`Grid: ${blockWords(block)}`} tabIndex={0}>
      <table className="confusion">
        <caption className="for-readers">
          Birds called as in the row {rowHead}, and as in the column {columnHead}
        </caption>
        <thead>
          <tr>
            <td className="confusion-corner small soft">
              Rows: {rowHead}.<br />
              Columns: {columnHead}.
            </td>
            {taxa.map((taxon) => (
              <th key={taxon} scope="col" className="confusion-column">
                <span>{readTaxon(taxon).common}</span>
              </th>
            ))}
            <th scope="col" className="confusion-column confusion-only">
              <span>{observers === null ? 'by one only' : `only ${rowHead}`}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {taxa.map((row, place) => (
            <tr key={row}>
              <th scope="row">{readTaxon(row).common}</th>
              {taxa.map((column, columnPlace) => (
                <GridCell
                  key={column}
                  named={found.get(keyOf(row, column))}
                  isBelow={observers === null && columnPlace < place}
                />
              ))}
              <GridCell named={found.get(keyOf(row, null))} />
            </tr>
          ))}
          {observers === null ? null : (
            <tr>
              <th scope="row" className="confusion-only">
                only {columnHead}
              </th>
              {taxa.map((column) => (
                <GridCell key={column} named={found.get(keyOf(null, column))} />
              ))}
              <td className="confusion-none" />
            </tr>
          )}
        </tbody>
      </table>
    </div>
  );
}

function GridCell(props: {
  readonly named: NamedBirds | undefined;
  /** Below the diagonal of a symmetric table: the number stands above it. */
  readonly isBelow?: boolean;
}): ReactNode {
  const { named } = props;
  if (named === undefined) {
    return <td className={props.isBelow === true ? 'confusion-none' : 'confusion-empty'} />;
  }
  return (
    <td className="number" data-kind={named.kind} data-shade={shadeOf(named.number)}>
      {signs[named.kind] === '' ? null : <span aria-hidden="true">{signs[named.kind]} </span>}
      {wholeBirds(named.number)}
    </td>
  );
}

/** What colours, signs and shades mean. */
export function ConfusionLegend(): ReactNode {
  return (
    <ul className="plain-list confusion-legend small">
      {(['agreed', 'compatible', 'differently', 'only'] as const).map((kind) => (
        <li key={kind}>
          <span className="confusion-swatch" data-kind={kind} data-shade={3} aria-hidden="true">
            {signs[kind] || '\u00a0'}
          </span>
          {kindWords[kind]}
        </li>
      ))}
      <li className="soft">darker: from 10, 100, 1,000 birds</li>
    </ul>
  );
}

/** `Greater Scaup, Lesser Scaup and 4 more names`. */
export function blockWords({ taxa, named }: ConfusionBlock): string {
  const birdsOf = (taxon: string): number =>
    named.reduce((sum, { a, b, number }) => (a === taxon || b === taxon ? sum + number : sum), 0);
  const names = [...taxa]
    .sort((one, other) => birdsOf(other) - birdsOf(one))
    .map((taxon) => readTaxon(taxon).common);
  return names.length <= 3
    ? names.join(', ')
    : `${names.slice(0, 2).join(', ')} and ${names.length - 2} more names`;
}

function keyOf(a: string | null, b: string | null): string {
  return `${a ?? ''}\n${b ?? ''}`;
}
