import type { ReactNode } from 'react';
import type { PairPartsFragment } from '../graphql/generated/graphql.js';
import { birds, countOf, twoDecimals } from '../ui/words.js';
import { pictureNotes } from './agreement-notes.js';
import { comparedWith, isOffLevel, ratioWords, restsOn } from './agreement-words.js';
import { MethodNote } from './method-note.js';
import { groupWords, RatioPlot } from './ratio-plot.js';
import { reachOf } from './ratio-scale.js';
import { StatisticTable } from './statistic-table.js';
import type { Column } from './tab-separated.js';

/** Pictures that stand open; those of further pairs, who differ less, are one click away. */
const MOST_OPEN = 6;

/** What one pair's picture means, in a sentence or two. */
function pairSentence({ a, b, ratios, measures }: PairPartsFragment): string {
  const { meanRatio, lower, upper, points } = ratios;
  const alone = measures.percentAgreement.n - points.length;
  const left =
    alone > 0
      ? ` ${countOf(alone, 'group')} that only one of them saw ${alone === 1 ? 'has' : 'have'} no ratio.`
      : '';
  if (meanRatio.value === null || lower.value === null || upper.value === null) {
    return `${a.name} and ${b.name} both saw ${countOf(points.length, 'group')}: too few to say how their numbers compare.${left}`;
  }
  const average = isOffLevel(meanRatio)
    ? `counts ${comparedWith(meanRatio.value, b.name)} on average`
    : `and ${b.name} do not clearly differ on average`;
  return `${a.name} ${average}. On a single group, expect anything from ${ratioWords(lower.value)} to ${ratioWords(upper.value)}.${left}`;
}

/** Ratios of every two observers: pictures, a sentence under each, then the numbers. */
export function RatioPart(props: {
  readonly pairs: readonly PairPartsFragment[];
  readonly least: number;
}): ReactNode {
  const { least } = props;
  const pairs = widestFirst(props.pairs);
  const points = pairs.flatMap(({ ratios }) => ratios.points);
  const reach = reachOf([
    ...points.map(({ ratio }) => ratio),
    ...pairs.flatMap(({ ratios }) => [ratios.lower.low, ratios.upper.high]),
  ]);
  const means = points.map(({ mean }) => mean);
  const sizes = { low: Math.min(1, ...means), high: Math.max(10, ...means) };
  const panels = (shown: readonly PairPartsFragment[]): ReactNode => (
    <div className="ratio-plots">
      {shown.map((pair) => (
        <figure key={keyOf(pair)} className="stack-tight">
          <h3 className="plot-title">
            {pair.a.name} : {pair.b.name}
          </h3>
          {pair.ratios.points.length === 0 ? null : (
            <RatioPlot pair={pair} reach={reach} sizes={sizes} />
          )}
          <figcaption>{pairSentence(pair)}</figcaption>
        </figure>
      ))}
    </div>
  );
  const [open, folded] = [pairs.slice(0, MOST_OPEN), pairs.slice(MOST_OPEN)];
  return (
    <>
      <p>
        Each ring is a group of birds that both saw: how many there were, and the first observer’s
        number divided by the second’s. The solid line is their mean, the dashed lines hold the
        middle 95 % of groups, each with its interval as a pale band. A wide band of rings says that
        two counts of one group differ much; it does not say who is right.
      </p>
      {panels(open)}
      {folded.length === 0 ? null : (
        <details>
          <summary>{countOf(folded.length, 'more pair')} who differ less</summary>
          {panels(folded)}
        </details>
      )}
      <StatisticTable
        label="ratios of two observers"
        columns={limitColumns}
        rows={pairs}
        keyOf={keyOf}
        least={least}
      />
      <details>
        <summary>Every ring in numbers</summary>
        <StatisticTable
          label="ratios group by group"
          columns={pointColumns}
          rows={pairs.flatMap((pair) =>
            pair.ratios.points.map((point) => ({
              ...point,
              nameA: pair.a.name,
              nameB: pair.b.name,
            })),
          )}
          keyOf={({ nameA, nameB, cell, group }) => [nameA, nameB, cell, group].join(' ')}
          least={least}
        />
      </details>
      <MethodNote note={pictureNotes.ratios} here={hereOf(pairs, least)} />
    </>
  );
}

function keyOf({ a, b }: PairPartsFragment): string {
  return `${a.id} ${b.id}`;
}

/** Those who differ most on single groups first; those with too few groups last. */
function widestFirst(pairs: readonly PairPartsFragment[]): readonly PairPartsFragment[] {
  const width = ({ ratios: { lower, upper } }: PairPartsFragment): number =>
    lower.value === null || upper.value === null ? 0 : upper.value / lower.value;
  return [...pairs].sort((one, other) => width(other) - width(one));
}

const limitColumns: readonly Column<PairPartsFragment>[] = [
  { kind: 'text', title: 'Observers', text: ({ a, b }) => `${a.name} : ${b.name}` },
  {
    kind: 'statistic',
    title: 'Mean ratio',
    statistic: ({ ratios }) => ratios.meanRatio,
    write: twoDecimals,
  },
  {
    kind: 'statistic',
    title: 'Lower limit',
    statistic: ({ ratios }) => ratios.lower,
    write: twoDecimals,
  },
  {
    kind: 'statistic',
    title: 'Upper limit',
    statistic: ({ ratios }) => ratios.upper,
    write: twoDecimals,
  },
];

type NamedPoint = PairPartsFragment['ratios']['points'][number] & {
  readonly nameA: string;
  readonly nameB: string;
};

const pointColumns: readonly Column<NamedPoint>[] = [
  { kind: 'text', title: 'Group', text: ({ taxa }) => groupWords(taxa) },
  { kind: 'text', title: 'Observers', text: ({ nameA, nameB }) => `${nameA} : ${nameB}` },
  { kind: 'number', title: 'First', number: ({ a }) => a, write: birds },
  { kind: 'number', title: 'Second', number: ({ b }) => b, write: birds },
  { kind: 'number', title: 'Ratio', number: ({ ratio }) => ratio, write: twoDecimals },
];

function hereOf(pairs: readonly PairPartsFragment[], least: number): string {
  return pairs
    .map(({ a, b, ratios }) => `${a.name} : ${b.name}: ${restsOn(ratios.meanRatio, least)}`)
    .join(' ');
}
