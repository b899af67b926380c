import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
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
  const [nameA, nameB] = [a.name, b.name];
  const columns: readonly Column<Row>[] = [
    { kind: 'text', title: t`Taxon`, text: ({ taxon }) => readTaxon(taxon).common },
    { kind: 'number', title: t`So named by ${nameA}`, number: ({ byA }) => byA, write: birds },
    { kind: 'number', title: t`by ${nameB}`, number: ({ byB }) => byB, write: birds },
    { kind: 'number', title: t`by both`, number: ({ byBoth }) => byBoth, write: birds },
    {
      kind: 'statistic',
      title: t`Of ${nameB}’s, also by ${nameA}`,
      statistic: ({ ofA }) => ofA,
      write: percent,
    },
    {
      kind: 'statistic',
      title: t`Of ${nameA}’s, also by ${nameB}`,
      statistic: ({ ofB }) => ofB,
      write: percent,
    },
  ];
  return (
    <details>
      <summary>
        <Trans>How well each finds what the other finds, taxon by taxon</Trans>
      </summary>
      <p className="soft">
        <Trans>Birds that both saw. Neither observer is the truth.</Trans>
      </p>
      <StatisticTable
        label={t`taxon by taxon, of two observers`}
        columns={columns}
        rows={sensitivities}
        keyOf={({ taxon }) => taxon}
        least={props.least}
      />
    </details>
  );
}
