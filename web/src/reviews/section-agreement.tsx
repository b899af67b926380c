import { i18n } from '@lingui/core';
import { t } from '@lingui/core/macro';
import type { ReactNode } from 'react';
import type { CountAgreementQuery } from '../graphql/generated/graphql.js';
import { listed, percent } from '../ui/words.js';
import { measureNotes, type MeasureKey } from './agreement-notes.js';
import { about, missingWord, writeMeasure } from './agreement-words.js';
import { evenScale, IntervalRows, Shape, type MarkShape } from './interval-rows.js';
import { measureColumns } from './measures-table.js';
import { tickText } from './ratio-scale.js';
import { StatisticTable } from './statistic-table.js';

type SectionRow = CountAgreementQuery['count']['review']['agreement']['bySection'][number];

/** What is drawn of a section: birds, numbers, names. */
const drawn: readonly { readonly key: MeasureKey; readonly shape: MarkShape }[] = [
  { key: 'percentAgreement', shape: 'dot' },
  { key: 'withinTolerance', shape: 'square' },
  { key: 'weightedKappa', shape: 'diamond' },
];

/** Agreement section by section: three marks each, a sentence, all measures as a table. */
export function SectionAgreement(props: {
  readonly rows: readonly SectionRow[];
  readonly least: number;
}): ReactNode {
  const { rows, least } = props;
  return (
    <>
      <IntervalRows
        label={t`Agreement by section, with intervals`}
        scale={evenScale(tickText)}
        groups={rows.map((row) => ({
          key: keyOf(row),
          title: nameOf(row),
          rows: drawn.map(({ key, shape }) => {
            const statistic = row.measures[key];
            return {
              key: `${keyOf(row)} ${key}`,
              label: i18n._(measureNotes[key].name),
              shape,
              statistic,
              text:
                statistic.value === null
                  ? missingWord(statistic, least)
                  : writeMeasure(key)(statistic.value),
            };
          }),
        }))}
      />
      <ul className="plain-list plot-legend small">
        {drawn.map(({ key, shape }) => (
          <li key={key}>
            <svg width="16" height="16" aria-hidden="true">
              <Shape shape={shape} x={8} y={8} />
            </svg>{' '}
            {about(i18n._(measureNotes[key].name), lowerFirst(i18n._(measureNotes[key].says)))}
          </li>
        ))}
      </ul>
      <p>{sectionsSentence(rows)}</p>
      <StatisticTable
        label={t`agreement by section`}
        columns={[
          { kind: 'text', title: t`Section`, text: nameOf },
          ...measureColumns<SectionRow>(({ measures }) => measures),
        ]}
        rows={rows}
        keyOf={keyOf}
        least={least}
      />
    </>
  );
}

/** Where they agree most and least, and how sure that is. */
function sectionsSentence(rows: readonly SectionRow[]): string {
  const known = rows
    .filter(({ measures }) => measures.percentAgreement.value !== null)
    .sort((one, other) => shareOf(other) - shareOf(one));
  const [most] = known;
  const least = known[known.length - 1];
  if (most === undefined || least === undefined) {
    return t`No section has enough groups that two independent observers counted.`;
  }
  const [mostAgreed, mostShare] = [nameOf(most), percent(shareOf(most))];
  if (most === least) {
    return t`Only ${mostAgreed} has enough groups: the same name for ${mostShare} of its birds.`;
  }
  const apart =
    (least.measures.percentAgreement.high ?? 1) < (most.measures.percentAgreement.low ?? 0);
  const [leastAgreed, leastShare] = [nameOf(least), percent(shareOf(least))];
  return [
    t`Observers agree on most birds in ${mostAgreed} (${mostShare}) and on fewest in ${leastAgreed} (${leastShare}).`,
    apart
      ? t`Their intervals do not overlap.`
      : t`Their intervals overlap, so that the order may be chance.`,
    t`A section with less agreement may have had the harder birds or the worse light; it says nothing of its observers.`,
  ].join(' ');
}

function shareOf({ measures }: SectionRow): number {
  return measures.percentAgreement.value ?? 0;
}

function nameOf({ sections }: SectionRow): string {
  return listed(sections.map(({ name }) => name));
}

function keyOf({ sections }: SectionRow): string {
  return sections.map(({ id }) => id).join('+');
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
