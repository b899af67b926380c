import { i18n } from '@lingui/core';
import { plural, t } from '@lingui/core/macro';
import { Plural, Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { ConsistencyPartsFragment } from '../graphql/generated/graphql.js';
import { listed, percent, twoDecimals } from '../ui/words.js';
import { pictureNotes } from './agreement-notes.js';
import { noNumber } from './agreement-words.js';
import { IntervalRows, type IntervalScale } from './interval-rows.js';
import { MethodNote } from './method-note.js';
import { StatisticTable } from './statistic-table.js';
import type { Column } from './tab-separated.js';

type Critical = ConsistencyPartsFragment['hCritical'];

/** Who stands apart by the mean, and who by the spread: Mandel's h and k. For leaders only. */
export function ConsistencyPart(props: {
  readonly sets: readonly ConsistencyPartsFragment[];
  readonly least: number;
}): ReactNode {
  const { sets, least } = props;
  if (sets.length === 0) {
    return (
      <p>
        <Plural
          value={least}
          one="No three observers counted the same # group or more, so that nobody can be said to stand apart from the others."
          other="No three observers counted the same # groups or more, so that nobody can be said to stand apart from the others."
        />
      </p>
    );
  }
  return (
    <>
      {sets.map((set) => (
        <ConsistentSet key={namesOf(set)} set={set} least={least} />
      ))}
      <p className="soft">
        <Trans>
          Lines mark what one in twenty, and one in a hundred, would pass by chance. Standing apart
          is a reason to ask, not a fault: it may be the one who looked best. Only leaders see it.
        </Trans>
      </p>
      <MethodNote note={pictureNotes.consistency} here={sets.map(fromGroups).join(' ')} />
    </>
  );
}

function fromGroups(set: ConsistencyPartsFragment): string {
  const { groups } = set;
  const names = namesOf(set);
  return plural(groups, {
    one: `${names}: from # group.`,
    other: `${names}: from # groups.`,
  });
}

function ConsistentSet(props: {
  readonly set: ConsistencyPartsFragment;
  readonly least: number;
}): ReactNode {
  const { set } = props;
  const names = namesOf(set);
  const draw = (which: 'h' | 'k'): ReactNode => (
    <IntervalRows
      label={which === 'h' ? t`Mandel’s h of each observer` : t`Mandel’s k of each observer`}
      scale={which === 'h' ? scaleOf(set, 'h') : scaleOf(set, 'k')}
      groups={[
        {
          key: which,
          title: which === 'h' ? t`h: the mean` : t`k: the spread`,
          rows: set.observers.map((one) => ({
            key: `${one.observer.id} ${which}`,
            label: one.observer.name,
            statistic: { value: one[which], low: null, high: null, n: set.groups },
            text: one[which] === null ? i18n._(noNumber) : twoDecimals(one[which]),
          })),
        },
      ]}
    />
  );
  return (
    <>
      {draw('h')}
      {draw('k')}
      <p>{apartSentence(set)}</p>
      <StatisticTable
        label={t`who stands apart: ${names}`}
        columns={columnsOf(set)}
        rows={set.observers}
        keyOf={({ observer }) => observer.id}
        least={props.least}
      />
    </>
  );
}

/** Names who stands apart by what, and how sure that is. */
export function apartSentence(set: ConsistencyPartsFragment): string {
  const apart = set.observers.flatMap(({ observer, h, k }) => [
    ...byMean(observer.name, wordOf(h, set.hCritical)),
    ...bySpread(observer.name, wordOf(k, set.kCritical)),
  ]);
  const { groups } = set;
  const [names, who] = [namesOf(set), listed(apart)];
  return apart.length === 0
    ? plural(groups, {
        one: `Among ${names}, on # group that all of them counted, nobody stands apart by the mean or by the spread.`,
        other: `Among ${names}, on # groups that all of them counted, nobody stands apart by the mean or by the spread.`,
      })
    : plural(groups, {
        one: `Among ${names}, on # group that all of them counted: ${who}.`,
        other: `Among ${names}, on # groups that all of them counted: ${who}.`,
      });
}

function byMean(name: string, howSure: string): readonly string[] {
  return howSure === '' ? [] : [t`${name} stands apart by the mean (${howSure})`];
}

function bySpread(name: string, howSure: string): readonly string[] {
  return howSure === '' ? [] : [t`${name} stands apart by the spread (${howSure})`];
}

/** What a value of h or k says against its critical values; empty where it says nothing. */
function wordOf(value: number | null, { questioned, serious }: Critical): string {
  const size = Math.abs(value ?? 0);
  return size > serious ? t`beyond 1 %` : size > questioned ? t`beyond 5 %` : '';
}

function scaleOf(set: ConsistencyPartsFragment, which: 'h' | 'k'): IntervalScale {
  const critical = which === 'h' ? set.hCritical : set.kCritical;
  const most = Math.max(critical.serious, ...set.observers.map((one) => Math.abs(one[which] ?? 0)));
  const high = 1.1 * most;
  const low = which === 'h' ? -high : 0;
  const isNear = critical.serious - critical.questioned < 0.08 * (high - low);
  const limits = [critical.questioned, critical.serious];
  const [five, one] = [percent(0.05), percent(0.01)];
  const lines = which === 'h' ? [...limits, ...limits.map((limit) => -limit)] : limits;
  return {
    low,
    high,
    at: (value) => (value - low) / (high - low),
    ticks: [
      { value: which === 'h' ? 0 : 1, text: which === 'h' ? '0' : '1' },
      // The two lie close together where there are few observers.
      { value: critical.questioned, text: isNear ? `${five}, ${one}` : five },
      ...(isNear ? [] : [{ value: critical.serious, text: one }]),
    ],
    lines,
  };
}

type Row = ConsistencyPartsFragment['observers'][number];

function columnsOf(set: ConsistencyPartsFragment): readonly Column<Row>[] {
  return [
    { kind: 'text', title: t`Observer`, text: ({ observer }) => observer.name },
    { kind: 'number', title: 'h', number: ({ h }) => h, write: twoDecimals },
    { kind: 'text', title: t`By the mean`, text: ({ h }) => wordOf(h, set.hCritical) },
    { kind: 'number', title: 'k', number: ({ k }) => k, write: twoDecimals },
    { kind: 'text', title: t`By the spread`, text: ({ k }) => wordOf(k, set.kCritical) },
  ];
}

function namesOf({ observers }: ConsistencyPartsFragment): string {
  return listed(observers.map(({ observer }) => observer.name));
}
