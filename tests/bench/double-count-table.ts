import { table, type Column } from '../../server/cli/summary/layout.js';
import { quantile } from '../../server/core/math/quantile.js';
import { scoreLinks, type LinkCounts, type LinkScore } from '../../server/core/score/link-score.js';
import type { OneCount, Totals } from './double-count-run.js';

const left = (title: string): Column => ({ title, align: 'left' });
const right = (title: string): Column => ({ title, align: 'right' });

/**
 * What each way of finding double counts comes to, one row a setting and way. Partly: proposals in
 * whose sightings flocks are mixed up, not among the right ones. Of 10+: recall of flocks so large.
 */
export function linksTable(measured: readonly (readonly [string, readonly OneCount[]])[]): string {
  const columns = [
    left('at the threshold'),
    left('way'),
    right('true'),
    right('proposed'),
    right('precision'),
    right('partly'),
    right('recall'),
    right('of 10+'),
    right('shown recall'),
    right('overlap: precision'),
    right('recall'),
    right('movement: precision'),
    right('recall'),
    right('birds: precision'),
    right('recall'),
    right('calibration'),
  ];
  const rows = measured.flatMap(([name, counts]) => [
    rowOf(name, 'engine', scoreOf(counts, 'engine')),
    rowOf('', 'greedy', scoreOf(counts, 'greedy')),
    ['', 'no links', ...noLinks(scoreOf(counts, 'engine'))],
  ]);
  return table(columns, rows).join('\n');
}

function rowOf(name: string, way: string, score: LinkScore): string[] {
  const { overlap, movement } = score.byKind;
  return [
    name,
    way,
    String(score.trueLinks),
    String(score.proposed),
    precision(score),
    percent(score.proposedPartly, score.proposed),
    recall(score),
    percent(score.large.proposedFound, score.large.trueLinks),
    percent(score.shownFound, score.trueLinks),
    precision(overlap),
    recall(overlap),
    precision(movement),
    recall(movement),
    percent(score.birdsRight, score.birdsRight + score.birdsWrong),
    percent(score.birdsFound, score.trueBirds),
    way === 'engine' ? percent(score.calibrationError ?? 0, 1) : '–',
  ];
}

function noLinks({ trueLinks }: LinkScore): string[] {
  return [String(trueLinks), '0', '–', '–', ...Array<string>(3).fill(percent(0, trueLinks))];
}

function precision({ proposed, proposedRight }: LinkCounts): string {
  return percent(proposedRight, proposed);
}

function recall({ trueLinks, proposedFound }: LinkCounts): string {
  return percent(proposedFound, trueLinks);
}

/** How often links that say about the same are right. */
export function reliabilityTable(
  measured: readonly (readonly [string, readonly OneCount[]])[],
): string {
  const tenths = Array.from({ length: 10 }, (_, bin) => right(`${10 * bin}–${10 * bin + 10} %`));
  const rows = measured.map(([name, counts]) => [
    name,
    ...scoreOf(counts, 'engine').reliability.map((bin) =>
      bin.said === null
        ? '–'
        : `${(100 * bin.said).toFixed(0)}→${((100 * bin.right) / bin.shown).toFixed(0)} (${bin.shown})`,
    ),
  ]);
  return table([left('said→right (links), %'), ...tenths], rows).join('\n');
}

/** The compiled total against the truth: lower quartile, median, upper quartile of the error. */
export function totalsTable(measured: readonly (readonly [string, readonly OneCount[]])[]): string {
  const columns = [
    left('relative error of the total, %'),
    left('against birds'),
    right('raw'),
    right('after proposals'),
    right('greedy'),
    right('|raw|'),
    right('|after|'),
    right('|greedy|'),
  ];
  const rows = measured.flatMap(([name, counts]) => {
    const totals = counts.flatMap((count) => count.totals ?? []);
    if (totals.length === 0) return [];
    return (['recorded', 'inSight'] as const).map((truth, index) => [
      index === 0 ? name : '',
      truth === 'recorded' ? 'that somebody recorded' : 'that were in sight',
      ...(['raw', 'after', 'afterGreedy'] as const).map((way) =>
        quartiles(errorsOf(totals, way, truth)),
      ),
      ...(['raw', 'after', 'afterGreedy'] as const).map((way) =>
        (100 * middle(errorsOf(totals, way, truth).map(Math.abs))).toFixed(1),
      ),
    ]);
  });
  return table(columns, rows).join('\n');
}

/** How long a count takes, and what it is like, on average. */
export function timesTable(measured: readonly (readonly [string, readonly OneCount[]])[]): string {
  const columns = [
    left('on average a count'),
    right('sightings'),
    right('true links'),
    right('linking, s'),
    right('reconciling, s'),
  ];
  const rows = measured.map(([name, counts]) => {
    const mean = (of: (count: OneCount) => number): number =>
      counts.reduce((sum, count) => sum + of(count), 0) / counts.length;
    return [
      name,
      mean(({ sightings }) => sightings).toFixed(0),
      mean(({ engine }) => engine.trueLinks.length).toFixed(1),
      mean(({ linking }) => linking).toFixed(2),
      counts.some(({ reconciling }) => reconciling === null)
        ? '–'
        : mean(({ reconciling }) => reconciling ?? 0).toFixed(2),
    ];
  });
  return table(columns, rows).join('\n');
}

function scoreOf(counts: readonly OneCount[], way: 'engine' | 'greedy'): LinkScore {
  return scoreLinks({
    links: counts.flatMap((count) => count[way].links),
    trueLinks: counts.flatMap((count) => count[way].trueLinks),
  });
}

function errorsOf(
  totals: readonly Totals[],
  way: 'raw' | 'after' | 'afterGreedy',
  truth: 'recorded' | 'inSight',
): number[] {
  return totals.map((each) => each[way] / each[truth] - 1).sort((one, other) => one - other);
}

function middle(values: readonly number[]): number {
  return quantile(
    values.toSorted((one, other) => one - other),
    0.5,
  );
}

function quartiles(sorted: readonly number[]): string {
  return [0.25, 0.5, 0.75].map((at) => (100 * quantile(sorted, at)).toFixed(1)).join(' ');
}

function percent(part: number, whole: number): string {
  return whole === 0 ? '–' : `${((100 * part) / whole).toFixed(1)} %`;
}
