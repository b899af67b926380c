import type { ReactNode } from 'react';
import type { DetectionPartsFragment } from '../graphql/generated/graphql.js';
import { birds, countOf, listed, percent, twoDecimals } from '../ui/words.js';
import { pictureNotes } from './agreement-notes.js';
import { missingWord } from './agreement-words.js';
import { IntervalRows, type IntervalScale } from './interval-rows.js';
import { MethodNote } from './method-note.js';
import { StatisticTable } from './statistic-table.js';
import type { Column } from './tab-separated.js';

/** Fewest flocks seen by two or more for an estimate, as the method's note says. */
const FEWEST_MATCHED = 7;

/** How many flocks were missed by all: an estimate that stands beside the count, never in it. */
export function DetectionPart(props: {
  readonly rows: readonly DetectionPartsFragment[];
  readonly least: number;
}): ReactNode {
  const { rows, least } = props;
  const withModel = rows.filter(({ model }) => model !== null);
  const chances = rows.flatMap((row) =>
    row.byObserver.map((one) => ({ ...one, set: observersOf(row) })),
  );
  return (
    <>
      <IntervalRows
        label="Share of flocks that all observers missed, with intervals"
        scale={missedScale(rows)}
        groups={[
          {
            key: 'all',
            title: null,
            rows: rows.map((row) => ({
              key: keyOf(row),
              label: placeOf(row),
              statistic: row.missedByAll,
              text:
                row.missedByAll.value === null
                  ? missingWord({ ...row.missedByAll, n: row.matched }, FEWEST_MATCHED)
                  : percent(row.missedByAll.value),
            })),
          },
        ]}
      />
      <ul className="plain-list stack-tight">
        {rows.map((row) => (
          <li key={keyOf(row)}>
            <strong>{observersOf(row)}</strong> ({placeOf(row)}): {detectionSentence(row)}
          </li>
        ))}
      </ul>
      <StatisticTable
        label="flocks that were missed"
        columns={detectionColumns}
        rows={rows}
        keyOf={keyOf}
        least={Math.max(least, FEWEST_MATCHED)}
      />
      {withModel.length === 0 ? null : (
        <>
          <p>
            With what makes a flock easier to see taken into account, where there were flocks enough
            for it:
          </p>
          <StatisticTable
            label="flocks that were missed, with size and distance"
            columns={modelColumns}
            rows={withModel}
            keyOf={keyOf}
            least={least}
          />
        </>
      )}
      {chances.length === 0 ? null : (
        <>
          <p>
            How many of the flocks that another of them saw each observer saw too. Only leaders see
            it; it says nothing of who looked better, as some flocks are harder to see from where
            somebody stands.
          </p>
          <StatisticTable
            label="flocks seen, by observer"
            columns={chanceColumns}
            rows={chances}
            keyOf={({ observer, set }) => `${observer.id} ${set}`}
            least={least}
          />
        </>
      )}
      <MethodNote
        note={pictureNotes.detection}
        here={rows
          .map(
            (row) =>
              `${observersOf(row)}: ${countOf(row.seen, 'flock')} seen, ${birds(row.matched)} by two or more.`,
          )
          .join(' ')}
      />
    </>
  );
}

/** Flocks seen, and how many there may have been. */
function detectionSentence({
  seen,
  matched,
  flocks,
  missedByAll,
  warning,
}: DetectionPartsFragment): string {
  const head = `${countOf(seen, 'flock')} seen, ${birds(matched)} by two or more.`;
  const estimate =
    flocks.value === null || missedByAll.value === null
      ? ''
      : ` There were about ${birds(Math.round(flocks.value))} (${birds(Math.floor(flocks.low ?? 0))} to ${
          flocks.high === null ? 'any number' : birds(Math.ceil(flocks.high))
        }); ${percent(missedByAll.value)} were missed by all.`;
  return `${head}${estimate}${warning === null ? '' : ` ${warning}`}`;
}

function missedScale(rows: readonly DetectionPartsFragment[]): IntervalScale {
  const most = Math.max(
    0.1,
    ...rows.flatMap(({ missedByAll }) => [missedByAll.value ?? 0, missedByAll.high ?? 0]),
  );
  const high = most <= 0.1 ? 0.1 : most <= 0.25 ? 0.25 : most <= 0.5 ? 0.5 : 1;
  return {
    low: 0,
    high,
    at: (value) => value / high,
    ticks: [0, high / 2, high].map((value) => ({ value, text: `${100 * value} %` })),
  };
}

type ChanceRow = DetectionPartsFragment['byObserver'][number] & { readonly set: string };

const detectionColumns: readonly Column<DetectionPartsFragment>[] = [
  { kind: 'text', title: 'Observers', text: observersOf },
  { kind: 'text', title: 'Sections', text: placeOf },
  { kind: 'number', title: 'Seen', number: ({ seen }) => seen, write: birds },
  { kind: 'number', title: 'By two or more', number: ({ matched }) => matched, write: birds },
  { kind: 'statistic', title: 'Flocks', statistic: ({ flocks }) => flocks, write: birds },
  {
    kind: 'statistic',
    title: 'Missed by all',
    statistic: ({ missedByAll }) => missedByAll,
    write: percent,
  },
];

const none = { value: null, low: null, high: null, n: 0 };

const modelColumns: readonly Column<DetectionPartsFragment>[] = [
  { kind: 'text', title: 'Observers', text: observersOf },
  {
    kind: 'statistic',
    title: 'Flocks',
    statistic: ({ model }) => model?.flocks ?? none,
    write: birds,
  },
  {
    kind: 'statistic',
    title: 'Birds in them',
    statistic: ({ model }) => model?.birds ?? none,
    write: birds,
  },
  {
    kind: 'statistic',
    title: 'Missed by all',
    statistic: ({ model }) => model?.missedByAll ?? none,
    write: percent,
  },
  { kind: 'text', title: 'Change of the logit', text: ({ model }) => slopesText(model) },
];

function slopesText(model: DetectionPartsFragment['model']): string {
  return (model?.slopes ?? [])
    .map(
      ({ covariate, slope, standardError }) =>
        `${covariate === 'distance' ? 'a kilometre' : 'ln size'}: ${twoDecimals(slope)} ± ${twoDecimals(standardError)}`,
    )
    .join('; ');
}

const chanceColumns: readonly Column<ChanceRow>[] = [
  { kind: 'text', title: 'Observer', text: ({ observer }) => observer.name },
  { kind: 'text', title: 'Among', text: ({ set }) => set },
  { kind: 'number', title: 'Flocks seen', number: ({ flocks }) => flocks, write: birds },
  {
    kind: 'statistic',
    title: 'Of the others’, seen too',
    statistic: ({ chance }) => chance,
    write: percent,
  },
];

function observersOf({ observers }: DetectionPartsFragment): string {
  return listed(observers.map(({ name }) => name));
}

function placeOf({ sections }: DetectionPartsFragment): string {
  return listed(sections.map(({ name }) => name));
}

function keyOf({ observers, sections }: DetectionPartsFragment): string {
  return [...observers, ...sections].map(({ id }) => id).join(' ');
}
