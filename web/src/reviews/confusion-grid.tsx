import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg, plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
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

const kindNames: Readonly<Record<NamedKind, MessageDescriptor>> = {
  agreed: msg`the same name`,
  compatible: msg`agree at a coarser level`,
  differently: msg`identified differently`,
  only: msg`counted by one only`,
};

export function kindWords(kind: NamedKind): string {
  return i18n._(kindNames[kind]);
}

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
  const names = blockWords(block);
  const heads = headsOf(observers);
  return (
    <div className="wide" role="region" aria-label={t`Grid: ${names}`} tabIndex={0}>
      <table className="confusion">
        <caption className="for-readers">{heads.caption}</caption>
        <thead>
          <tr>
            <td className="confusion-corner small soft">
              {heads.rows}
              <br />
              {heads.columns}
            </td>
            {taxa.map((taxon) => (
              <th key={taxon} scope="col" className="confusion-column">
                <span>{readTaxon(taxon).common}</span>
              </th>
            ))}
            <th scope="col" className="confusion-column confusion-only">
              <span>{heads.onlyInRow}</span>
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
                {heads.onlyInColumn}
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

/** Who named the birds in the rows, and who in the columns. */
function headsOf(observers: { readonly a: string; readonly b: string } | null): {
  readonly caption: string;
  readonly rows: string;
  readonly columns: string;
  readonly onlyInRow: string;
  readonly onlyInColumn: string;
} {
  if (observers === null) {
    return {
      caption: t`Birds called as in the row by one, and as in the column by the other`,
      rows: t`Rows: by one.`,
      columns: t`Columns: by the other.`,
      onlyInRow: t`by one only`,
      onlyInColumn: t`by one only`,
    };
  }
  const { a, b } = observers;
  return {
    caption: t`Birds called as in the row by ${a}, and as in the column by ${b}`,
    rows: t`Rows: by ${a}.`,
    columns: t`Columns: by ${b}.`,
    onlyInRow: t`only by ${a}`,
    onlyInColumn: t`only by ${b}`,
  };
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
          {kindWords(kind)}
        </li>
      ))}
      <li className="soft">
        <Trans>darker: from 10, 100, 1,000 birds</Trans>
      </li>
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
  if (names.length <= 3) return names.join(', ');
  const [first, second] = names;
  const more = names.length - 2;
  return plural(more, {
    one: `${first}, ${second} and # more name`,
    other: `${first}, ${second} and # more names`,
  });
}

function keyOf(a: string | null, b: string | null): string {
  return `${a ?? ''}\n${b ?? ''}`;
}
