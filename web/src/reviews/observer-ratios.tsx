import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type {
  ObserverModelPartsFragment,
  RatioPartsFragment,
  StatisticPartsFragment,
} from '../graphql/generated/graphql.js';
import { listed, twoDecimals } from '../ui/words.js';
import { pictureNotes } from './agreement-notes.js';
import {
  about,
  intervalText,
  isOffLevel,
  missingWord,
  ratioWords,
  restsOn,
  variation,
} from './agreement-words.js';
import { IntervalRows, type IntervalScale } from './interval-rows.js';
import { MethodNote } from './method-note.js';
import { logScale, ratioTicks, reachOf, tickText } from './ratio-scale.js';
import { StatisticTable } from './statistic-table.js';
import type { Column } from './tab-separated.js';

interface ObserverRow {
  readonly id: string;
  readonly name: string;
  readonly ratio: StatisticPartsFragment;
  readonly set: number;
}

/**
 * How each observer stands to those who counted the same birds: from the model where there is one,
 * else by simple ratios. It helps to train, and must not rank people in public.
 */
export function ObserverRatios(props: {
  readonly model: ObserverModelPartsFragment | null;
  readonly ratios: readonly RatioPartsFragment[];
  readonly least: number;
}): ReactNode {
  const { model, ratios, least } = props;
  const rows: readonly ObserverRow[] =
    model === null
      ? ratios.map(({ observer, ratio }) => ({ ...observer, ratio, set: 1 }))
      : model.observers.map(({ observer, ratio, set }) => ({ ...observer, ratio, set }));
  const sets = [...new Set(rows.map(({ set }) => set))].sort((one, other) => one - other);
  return (
    <>
      <IntervalRows
        label={t`Observers’ ratios with their intervals`}
        scale={ratioScale(rows.map(({ ratio }) => ratio))}
        groups={sets.map((set) => ({
          key: String(set),
          title: sets.length > 1 ? t`Set ${set}` : null,
          rows: rows
            .filter((row) => row.set === set)
            .map(({ id, name, ratio }) => ({
              key: id,
              label: name,
              statistic: ratio,
              text: ratio.value === null ? missingWord(ratio, least) : twoDecimals(ratio.value),
            })),
        }))}
      />
      <p>{observersSentence(rows)}</p>
      <p className="soft">
        {model === null
          ? t`1 is level with the others.`
          : t`1 is level with the mean of the observers of the same set.`}{' '}
        {sets.length > 1 ? (
          <>
            <Trans>
              Observers of different sets never counted the same groups, so they cannot be compared.
            </Trans>{' '}
          </>
        ) : null}
        <Trans>It is for training, and says nothing of who was right. Only leaders see it.</Trans>
      </p>
      {model === null ? null : <Spread model={model} />}
      <StatisticTable
        label={t`observers’ ratios`}
        columns={observerColumns(sets.length > 1)}
        rows={rows}
        keyOf={({ id }) => id}
        least={least}
      />
      <MethodNote
        note={model === null ? pictureNotes.simpleRatio : pictureNotes.observers}
        here={
          model === null
            ? rows.map(({ name, ratio }) => about(name, restsOn(ratio, least))).join(' ')
            : fromTotals(model)
        }
      />
    </>
  );
}

function fromTotals({ n: totals, groups }: ObserverModelPartsFragment): string {
  return t`From ${plural(totals, { one: '# total', other: '# totals' })} of ${plural(groups, { one: '# group', other: '# groups' })}.`;
}

/** Where the spread of numbers comes from, as coefficients of variation. */
function Spread(props: { readonly model: ObserverModelPartsFragment }): ReactNode {
  const { betweenObservers, residual } = props.model;
  if (betweenObservers.value === null || residual.value === null) return null;
  const written = (part: StatisticPartsFragment): string =>
    `${variation(part.value ?? 0)} ${intervalText(part, variation)}`.trim();
  const [between, within] = [written(betweenObservers), written(residual)];
  return (
    <p>
      <Trans>
        Counts of the same group differ by {between} from observer to observer throughout, and by{' '}
        {within} from group to group, whoever counts (coefficients of variation).
      </Trans>
    </p>
  );
}

/** Who runs above or below by more than chance; nobody is called right or wrong. */
function observersSentence(rows: readonly ObserverRow[]): string {
  if (rows.every(({ ratio }) => ratio.value === null)) {
    return t`Too few groups were counted by two observers to say how their numbers compare.`;
  }
  const off = rows.filter(({ ratio }) => isOffLevel(ratio));
  if (off.length === 0) return t`Nobody’s numbers clearly run above or below those of the others.`;
  const who = listed(
    off.map(({ name, ratio }) => {
      const compared = ratioWords(ratio.value ?? 1);
      return t`${name} counted ${compared}`;
    }),
  );
  return t`${who}, on average over the groups shared with others; nobody else clearly runs above or below.`;
}

/** A logarithmic scale around level that holds the intervals. */
function ratioScale(ratios: readonly StatisticPartsFragment[]): IntervalScale {
  const reach = reachOf(ratios.flatMap(({ value, low, high }) => [value, low, high]));
  return {
    low: 1 / reach,
    high: reach,
    at: logScale(1 / reach, reach, 0, 1),
    ticks: ratioTicks(reach).map((value) => ({ value, text: tickText(value) })),
    lines: [1],
  };
}

function observerColumns(withSet: boolean): readonly Column<ObserverRow>[] {
  return [
    { kind: 'text', title: t`Observer`, text: ({ name }) => name },
    { kind: 'statistic', title: t`Ratio`, statistic: ({ ratio }) => ratio, write: twoDecimals },
    ...(withSet
      ? [
          {
            kind: 'number',
            title: t`Set`,
            number: ({ set }: ObserverRow) => set,
            write: String,
          } as const,
        ]
      : []),
  ];
}
