import type { ReactNode } from 'react';
import type { PairPartsFragment } from '../graphql/generated/graphql.js';
import { readTaxon } from '../ui/taxon.js';
import { birds, percent } from '../ui/words.js';
import { StatisticTable } from './statistic-table.js';
import type { Column } from './tab-separated.js';

type Row = PairPartsFragment['sensitivities'][number];

/** How well each of two observers finds the birds of a taxon that the other finds. */
export function SensitivityTable(props: {
  readonly pair: PairPartsFragment;
  readonly least: number;
}): ReactNode {
  const { a, b, sensitivities } = props.pair;
  if (sensitivities.length === 0) return null;
  const columns: readonly Column<Row>[] = [
    { kind: 'text', title: 'Taxon', text: ({ taxon }) => readTaxon(taxon).common },
    { kind: 'number', title: `So named by ${a.name}`, number: ({ byA }) => byA, write: birds },
    { kind: 'number', title: `by ${b.name}`, number: ({ byB }) => byB, write: birds },
    { kind: 'number', title: 'by both', number: ({ byBoth }) => byBoth, write: birds },
    {
      kind: 'statistic',
      title: `Of ${b.name}’s, also by ${a.name}`,
      statistic: ({ ofA }) => ofA,
      write: percent,
    },
    {
      kind: 'statistic',
      title: `Of ${a.name}’s, also by ${b.name}`,
      statistic: ({ ofB }) => ofB,
      write: percent,
    },
  ];
  return (
    <details>
      <summary>How well each finds what the other finds, taxon by taxon</summary>
      <p className="soft">Birds that both saw. Neither observer is the truth.</p>
      <StatisticTable
        label="taxon by taxon, of two observers"
        columns={columns}
        rows={sensitivities}
        keyOf={({ taxon }) => taxon}
        least={props.least}
      />
    </details>
  );
}
