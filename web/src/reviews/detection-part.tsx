import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { DetectionPartsFragment } from '../graphql/generated/graphql.js';
import { birds, listed, percent, twoDecimals } from '../ui/words.js';
import { pictureNotes } from './agreement-notes.js';
import { about, missingWord } from './agreement-words.js';
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
        label={t`Share of flocks that all observers missed, with intervals`}
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
            <DetectionSentence row={row} />
          </li>
        ))}
      </ul>
      <StatisticTable
        label={t`flocks that were missed`}
        columns={detectionColumns()}
        rows={rows}
        keyOf={keyOf}
        least={Math.max(least, FEWEST_MATCHED)}
      />
      {withModel.length === 0 ? null : (
        <>
          <p>
            <Trans>
              With what makes a flock easier to see taken into account, where there were flocks
              enough for it:
            </Trans>
          </p>
          <StatisticTable
            label={t`flocks that were missed, with size and distance`}
            columns={modelColumns()}
            rows={withModel}
            keyOf={keyOf}
            least={least}
          />
        </>
      )}
      {chances.length === 0 ? null : (
        <>
          <p>
            <Trans>
              How many of the flocks that another of them saw each observer saw too. Only leaders
              see it; it says nothing of who looked better, as some flocks are harder to see from
              where somebody stands.
            </Trans>
          </p>
          <StatisticTable
            label={t`flocks seen, by observer`}
            columns={chanceColumns()}
            rows={chances}
            keyOf={({ observer, set }) => `${observer.id} ${set}`}
            least={least}
          />
        </>
      )}
      <MethodNote
        note={pictureNotes.detection}
        here={rows.map((row) => about(observersOf(row), seenSentence(row))).join(' ')}
      />
    </>
  );
}

/** Flocks seen, and how many there may have been. */
function DetectionSentence(props: { readonly row: DetectionPartsFragment }): ReactNode {
  const { row } = props;
  const [observers, places] = [observersOf(row), placeOf(row)];
  const sentences = [seenSentence(row), estimateSentence(row), row.warning ?? '']
    .filter((sentence) => sentence !== '')
    .join(' ');
  return (
    <Trans>
      <strong>{observers}</strong> ({places}): {sentences}
    </Trans>
  );
}

function seenSentence({ seen, matched }: DetectionPartsFragment): string {
  const byMore = birds(matched);
  return plural(seen, {
    one: `# flock seen, ${byMore} by two or more.`,
    other: `# flocks seen, ${byMore} by two or more.`,
  });
}

/** Empty without an estimate. */
function estimateSentence({ flocks, missedByAll }: DetectionPartsFragment): string {
  if (flocks.value === null || missedByAll.value === null) return '';
  const [number, low] = [birds(Math.round(flocks.value)), birds(Math.floor(flocks.low ?? 0))];
  const missed = percent(missedByAll.value);
  if (flocks.high === null) {
    return t`There were about ${number} (${low} to any number); ${missed} were missed by all.`;
  }
  const high = birds(Math.ceil(flocks.high));
  return t`There were about ${number} (${low} to ${high}); ${missed} were missed by all.`;
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
    ticks: [0, high / 2, high].map((value) => ({ value, text: writtenShare(value) })),
  };
}

/** Half of a percent too, where a tick of the scale lies there. */
function writtenShare(value: number): string {
  const share = birds(100 * value);
  return t`${share} %`;
}

type ChanceRow = DetectionPartsFragment['byObserver'][number] & { readonly set: string };

function detectionColumns(): readonly Column<DetectionPartsFragment>[] {
  return [
    { kind: 'text', title: t`Observers`, text: observersOf },
    { kind: 'text', title: t`Sections`, text: placeOf },
    { kind: 'number', title: t`Seen`, number: ({ seen }) => seen, write: birds },
    { kind: 'number', title: t`By two or more`, number: ({ matched }) => matched, write: birds },
    { kind: 'statistic', title: t`Flocks`, statistic: ({ flocks }) => flocks, write: birds },
    {
      kind: 'statistic',
      title: t`Missed by all`,
      statistic: ({ missedByAll }) => missedByAll,
      write: percent,
    },
  ];
}

const none = { value: null, low: null, high: null, n: 0 };

function modelColumns(): readonly Column<DetectionPartsFragment>[] {
  return [
    { kind: 'text', title: t`Observers`, text: observersOf },
    {
      kind: 'statistic',
      title: t`Flocks`,
      statistic: ({ model }) => model?.flocks ?? none,
      write: birds,
    },
    {
      kind: 'statistic',
      title: t`Birds in them`,
      statistic: ({ model }) => model?.birds ?? none,
      write: birds,
    },
    {
      kind: 'statistic',
      title: t`Missed by all`,
      statistic: ({ model }) => model?.missedByAll ?? none,
      write: percent,
    },
    { kind: 'text', title: t`Change of the logit`, text: ({ model }) => slopesText(model) },
  ];
}

function slopesText(model: DetectionPartsFragment['model']): string {
  return (model?.slopes ?? [])
    .map(({ covariate, slope, standardError }) => {
      const [change, error] = [twoDecimals(slope), twoDecimals(standardError)];
      return covariate === 'distance'
        ? t`a kilometre: ${change} ± ${error}`
        : t`ln size: ${change} ± ${error}`;
    })
    .join('; ');
}

function chanceColumns(): readonly Column<ChanceRow>[] {
  return [
    { kind: 'text', title: t`Observer`, text: ({ observer }) => observer.name },
    { kind: 'text', title: t`Among`, text: ({ set }) => set },
    { kind: 'number', title: t`Flocks seen`, number: ({ flocks }) => flocks, write: birds },
    {
      kind: 'statistic',
      title: t`Of the others’, seen too`,
      statistic: ({ chance }) => chance,
      write: percent,
    },
  ];
}

function observersOf({ observers }: DetectionPartsFragment): string {
  return listed(observers.map(({ name }) => name));
}

function placeOf({ sections }: DetectionPartsFragment): string {
  return listed(sections.map(({ name }) => name));
}

function keyOf({ observers, sections }: DetectionPartsFragment): string {
  return [...observers, ...sections].map(({ id }) => id).join(' ');
}
