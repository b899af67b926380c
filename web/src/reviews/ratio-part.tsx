import { plural, t } from '@lingui/core/macro';
import { Plural, Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { PairPartsFragment } from '../graphql/generated/graphql.js';
import { birds, twoDecimals } from '../ui/words.js';
import { pictureNotes } from './agreement-notes.js';
import { about, comparedWith, isOffLevel, ratioWords, restsOn } from './agreement-words.js';
import { MethodNote } from './method-note.js';
import { groupWords, RatioPlot } from './ratio-plot.js';
import { reachOf } from './ratio-scale.js';
import { StatisticTable } from './statistic-table.js';
import type { Column } from './tab-separated.js';

/** Pictures that stand open; those of further pairs, who differ less, are one click away. */
const MOST_OPEN = 6;

/** What one pair's picture means, in a sentence or two. */
function pairSentence(pair: PairPartsFragment): string {
  const { ratios, measures } = pair;
  const alone = measures.percentAgreement.n - ratios.points.length;
  const left = plural(alone, {
    one: '# group that only one of them saw has no ratio.',
    other: '# groups that only one of them saw have no ratio.',
  });
  return alone > 0 ? `${comparison(pair)} ${left}` : comparison(pair);
}

function comparison({ a, b, ratios }: PairPartsFragment): string {
  const { meanRatio, lower, upper, points } = ratios;
  const [nameA, nameB] = [a.name, b.name];
  if (meanRatio.value === null || lower.value === null || upper.value === null) {
    const shared = points.length;
    return plural(shared, {
      one: `${nameA} and ${nameB} both saw # group: too few to say how their numbers compare.`,
      other: `${nameA} and ${nameB} both saw # groups: too few to say how their numbers compare.`,
    });
  }
  const compared = comparedWith(meanRatio.value, nameB);
  const average = isOffLevel(meanRatio)
    ? t`${nameA} counts ${compared} on average.`
    : t`${nameA} and ${nameB} do not clearly differ on average.`;
  const [lowest, highest] = [ratioWords(lower.value), ratioWords(upper.value)];
  return `${average} ${t`On a single group, expect anything from ${lowest} to ${highest}.`}`;
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
  const more = folded.length;
  return (
    <>
      <p>
        <Trans>
          Each ring is a group of birds that both saw: how many there were, and the first observer’s
          number divided by the second’s. The solid line is their mean, the dashed lines hold the
          middle 95 % of groups, each with its interval as a pale band. A wide band of rings says
          that two counts of one group differ much; it does not say who is right.
        </Trans>
      </p>
      {panels(open)}
      {folded.length === 0 ? null : (
        <details>
          <summary>
            <Plural
              value={more}
              one="# more pair who differ less"
              other="# more pairs who differ less"
            />
          </summary>
          {panels(folded)}
        </details>
      )}
      <StatisticTable
        label={t`ratios of two observers`}
        columns={limitColumns()}
        rows={pairs}
        keyOf={keyOf}
        least={least}
      />
      <details>
        <summary>
          <Trans>Every ring in numbers</Trans>
        </summary>
        <StatisticTable
          label={t`ratios group by group`}
          columns={pointColumns()}
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

function limitColumns(): readonly Column<PairPartsFragment>[] {
  return [
    { kind: 'text', title: t`Observers`, text: ({ a, b }) => `${a.name} : ${b.name}` },
    {
      kind: 'statistic',
      title: t`Mean ratio`,
      statistic: ({ ratios }) => ratios.meanRatio,
      write: twoDecimals,
    },
    {
      kind: 'statistic',
      title: t`Lower limit`,
      statistic: ({ ratios }) => ratios.lower,
      write: twoDecimals,
    },
    {
      kind: 'statistic',
      title: t`Upper limit`,
      statistic: ({ ratios }) => ratios.upper,
      write: twoDecimals,
    },
  ];
}

type NamedPoint = PairPartsFragment['ratios']['points'][number] & {
  readonly nameA: string;
  readonly nameB: string;
};

function pointColumns(): readonly Column<NamedPoint>[] {
  return [
    { kind: 'text', title: t`Group`, text: ({ taxa }) => groupWords(taxa) },
    { kind: 'text', title: t`Observers`, text: ({ nameA, nameB }) => `${nameA} : ${nameB}` },
    { kind: 'number', title: t`First`, number: ({ a }) => a, write: birds },
    { kind: 'number', title: t`Second`, number: ({ b }) => b, write: birds },
    { kind: 'number', title: t`Ratio`, number: ({ ratio }) => ratio, write: twoDecimals },
  ];
}

function hereOf(pairs: readonly PairPartsFragment[], least: number): string {
  return pairs
    .map(({ a, b, ratios }) => about(`${a.name} : ${b.name}`, restsOn(ratios.meanRatio, least)))
    .join(' ');
}
