import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg, plural, t } from '@lingui/core/macro';
import { Plural } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type {
  CountAgreementQuery,
  IntraclassPartsFragment,
  MeasuresFragment,
  PairPartsFragment,
} from '../graphql/generated/graphql.js';
import { readTaxon } from '../ui/taxon.js';
import { decimals, listed, percent, twoDecimals } from '../ui/words.js';
import { measureKeys, measureNotes, pictureNotes, type MeasureKey } from './agreement-notes.js';
import { about, restsOn, writeMeasure } from './agreement-words.js';
import { MethodNote } from './method-note.js';
import { StatisticTable } from './statistic-table.js';
import type { Column } from './tab-separated.js';

/** A column for each statistic of a comparison. */
export function measureColumns<Row>(
  measuresOf: (row: Row) => MeasuresFragment,
): readonly Column<Row>[] {
  return measureKeys.map((key) => ({
    kind: 'statistic',
    title: i18n._(measureNotes[key].name),
    statistic: (row: Row) => measuresOf(row)[key],
    write: writeMeasure(key),
  }));
}

interface OverallRow {
  readonly key: MeasureKey;
  readonly measures: MeasuresFragment;
}

/** All pairs together: a row a statistic, with what it says; its method one click away. */
export function OverallTable(props: {
  readonly overall: MeasuresFragment;
  readonly least: number;
}): ReactNode {
  const { overall, least } = props;
  return (
    <>
      <StatisticTable<OverallRow>
        label={t`agreement overall`}
        columns={[
          { kind: 'text', title: t`Statistic`, text: ({ key }) => i18n._(measureNotes[key].name) },
          {
            kind: 'statistic',
            title: t`Value`,
            statistic: ({ key, measures }) => measures[key],
            write: twoDecimals,
          },
          {
            kind: 'text',
            title: t`What it says`,
            text: ({ key }) => i18n._(measureNotes[key].says),
          },
        ]}
        rows={measureKeys.map((key) => ({ key, measures: overall }))}
        keyOf={({ key }) => key}
        least={least}
      />
      <div>
        {measureKeys.map((key) => (
          <MethodNote key={key} note={measureNotes[key]} here={restsOn(overall[key], least)} />
        ))}
      </div>
    </>
  );
}

/** The statistics of every two observers. */
export function PairTable(props: {
  readonly pairs: readonly PairPartsFragment[];
  readonly least: number;
}): ReactNode {
  return (
    <StatisticTable<PairPartsFragment>
      label={t`agreement pair by pair`}
      columns={[
        { kind: 'text', title: t`Observers`, text: ({ a, b }) => listed([a.name, b.name]) },
        ...measureColumns<PairPartsFragment>(({ measures }) => measures),
      ]}
      rows={props.pairs}
      keyOf={({ a, b }) => `${a.id} ${b.id}`}
      least={props.least}
    />
  );
}

type TaxonRow = CountAgreementQuery['count']['review']['agreement']['byTaxon'][number];

const taxonKeys = [
  'percentAgreement',
  'withinTolerance',
  'brayCurtisSimilarity',
  'concordance',
  'alpha',
] as const;

/** Taxa with something to say; the others are named, so that nobody looks for them in vain. */
export function TaxonTable(props: {
  readonly rows: readonly TaxonRow[];
  readonly least: number;
}): ReactNode {
  const { rows, least } = props;
  const hasNumber = (row: TaxonRow): boolean =>
    row.sensitivity.value !== null || taxonKeys.some((key) => row[key].value !== null);
  const telling = rows.filter(hasNumber);
  const silent = rows.filter((row) => !hasNumber(row));
  const few = silent.length;
  const columns: readonly Column<TaxonRow>[] = [
    { kind: 'text', title: t`Taxon`, text: ({ taxon }) => readTaxon(taxon).common },
    ...taxonKeys.map((key): Column<TaxonRow> => ({
      kind: 'statistic',
      title: i18n._(measureNotes[key].name),
      statistic: (row) => row[key],
      write: writeMeasure(key),
    })),
    {
      kind: 'statistic',
      title: i18n._(pictureNotes.sensitivity.name),
      statistic: ({ sensitivity }) => sensitivity,
      write: percent,
    },
  ];
  return (
    <>
      <p>
        {telling.length === 0
          ? plural(least, {
              one: 'No taxon was compared in # cell (places and windows) or more, so that nothing can be said taxon by taxon.',
              other:
                'No taxon was compared in # cells (places and windows) or more, so that nothing can be said taxon by taxon.',
            })
          : t`How well two observers agree on each taxon. A low number says that the taxon is hard here, or that one of the two went further in naming it; not who was right.`}
      </p>
      {telling.length === 0 ? null : (
        <StatisticTable
          label={t`agreement taxon by taxon`}
          columns={columns}
          rows={telling}
          keyOf={({ taxon }) => taxon}
          least={least}
        />
      )}
      {silent.length === 0 ? null : (
        <details>
          <summary>
            <Plural value={few} one="Too few to say: # taxon" other="Too few to say: # taxa" />
          </summary>
          <p className="soft">{silent.map(({ taxon }) => readTaxon(taxon).common).join(', ')}.</p>
        </details>
      )}
    </>
  );
}

const forms = [
  ['oneWaySingle', msg`One-way, single`],
  ['oneWayMean', msg`One-way, mean`],
  ['agreementSingle', msg`Agreement, single`],
  ['agreementMean', msg`Agreement, mean`],
  ['consistencySingle', msg`Consistency, single`],
  ['consistencyMean', msg`Consistency, mean`],
] as const satisfies readonly (readonly [string, MessageDescriptor])[];

/** The six forms, by set of observers. */
export function IntraclassTable(props: {
  readonly rows: readonly IntraclassPartsFragment[];
  readonly least: number;
}): ReactNode {
  const { rows, least } = props;
  const nameOf = ({ observers }: IntraclassPartsFragment): string =>
    listed(observers.map(({ name }) => name));
  return (
    <>
      <StatisticTable<IntraclassPartsFragment>
        label={t`intraclass correlation`}
        columns={[
          { kind: 'text', title: t`Observers`, text: nameOf },
          ...forms.map(([key, title]): Column<IntraclassPartsFragment> => ({
            kind: 'statistic',
            title: i18n._(title),
            statistic: (row) => row[key],
            write: threeDecimals,
          })),
        ]}
        rows={rows}
        keyOf={({ observers }) => observers.map(({ id }) => id).join(' ')}
        least={least}
      />
      <MethodNote
        note={pictureNotes.intraclass}
        here={rows.map((row) => about(nameOf(row), restsOn(row.oneWaySingle, least))).join(' ')}
      />
    </>
  );
}

/** These lie close below 1, where two decimals would all read 1.00. */
function threeDecimals(value: number): string {
  return value < 1 && value > 0.9995 ? `>${decimals(0.999, 3, 3)}` : decimals(value, 3, 3);
}
