import { table } from '../../server/cli/summary/layout.js';
import { LEVELS } from '../../server/core/score/group-score.js';
import { RULES_COMPARED, type Accuracy } from './accuracy-run.js';

/**
 * The goals beside what was measured. Coverage: groups on several independent counts with counting
 * error, before rounding to whole birds. Total: the weighted mean against the highest count and the
 * mean, by root mean square error of the sum over groups. Misidentifications of 20 birds or more: recall
 * of those that another tally contradicts, share found of all that were planted, precision.
 */
export function goalsTable(measured: readonly (readonly [string, Accuracy])[]): string {
  const columns = [
    '',
    '50 %',
    '80 %',
    '95 %',
    'below highest',
    'below mean',
    'recall',
    'of all',
    'precision',
  ];
  const goals = ['goal', '47–53', '77–83', '93–97', '25 or more', '0 or more', '95', '', '90'];
  const rows = measured.map(([name, { coverage, totals, planted }]) => {
    const several = coverage.get('several');
    const groups = several?.groups ?? 0;
    const rmse = (rule: 'highest' | 'mean' | 'weighted-mean'): number =>
      rootMeanSquare(totals.get(rule) ?? []);
    const below = (rule: 'highest' | 'mean'): string =>
      percent(rmse(rule) - rmse('weighted-mean'), rmse(rule));
    const misidentified = planted.get('misidentified 20');
    return [
      name,
      ...LEVELS.map((_, level) => percent(several?.covered[level] ?? 0, groups)),
      below('highest'),
      below('mean'),
      percent(misidentified?.found ?? 0, misidentified?.findable ?? 0),
      percent(misidentified?.foundOfAll ?? 0, misidentified?.planted ?? 0),
      percent(misidentified?.shownRight ?? 0, misidentified?.shown ?? 0),
    ];
  });
  const laidOut = table(
    columns.map((title, at) => ({ title, align: at === 0 ? 'left' : 'right', most: 40 })),
    [goals, ...rows],
  );
  return laidOut.join('\n');
}

/** Everything that was measured in one setting, as lines of text. */
export function accuracyTable(accuracy: Accuracy): string {
  return [
    ...coverageLines(accuracy),
    ...totalLines(accuracy),
    ...plantedLines(accuracy),
    ...linkLines(accuracy),
  ].join('\n');
}

function coverageLines({ coverage }: Accuracy): string[] {
  return [...coverage].map(([ground, { groups, covered, coveredRounded }]) => {
    const shares = LEVELS.map(
      (level, index) =>
        `${100 * level} %: ${percent(covered[index] ?? 0, groups)} (whole birds ` +
        `${percent(coveredRounded[index] ?? 0, groups)})`,
    );
    return `  coverage, groups on ${ground} (${groups}): ${shares.join(', ')}`;
  });
}

function totalLines({ totals, severalTotals, compiled }: Accuracy): string[] {
  const line = (name: string, errors: ReadonlyMap<string, readonly number[]>): string => {
    const highest = rootMeanSquare(errors.get('highest') ?? []);
    const said = RULES_COMPARED.map((rule) => {
      const own = errors.get(rule) ?? [];
      const rmse = rootMeanSquare(own);
      const below = `${percent(highest - rmse, highest)} below highest`;
      return `${rule} ${share(rmse)} (bias ${share(meanOf(own))}; ${below})`;
    });
    return `  RMSE of the ${name}: ${said.join(', ')}`;
  };
  return [
    line('sum over groups', totals),
    line('sum over groups on several', severalTotals),
    `  RMSE of the compiled total, nothing ruled: ${share(rootMeanSquare(compiled))} (bias ${share(meanOf(compiled))})`,
  ];
}

function plantedLines({ planted }: Accuracy): string[] {
  return [...planted].map(([key, sums]) => {
    const { planted: all, foundOfAll, findable, found, shown, shownRight } = sums;
    const recall = `recall ${percent(found, findable)} of ${findable} findable`;
    const ofAll = `${percent(foundOfAll, all)} of all ${all} planted`;
    return `  ${key}+: ${recall}, ${ofAll}; shown ${shown}, precision ${percent(shownRight, shown)}`;
  });
}

function linkLines({ links }: Accuracy): string[] {
  return [
    `  links: ${links.trueLinks} true; shown ${links.shown}, precision ${percent(links.shownRight, links.shown)}, ` +
      `recall ${percent(links.shownFound, links.trueLinks)}; proposed ${links.proposed}, precision ` +
      `${percent(links.proposedRight, links.proposed)}, recall ${percent(links.proposedFound, links.trueLinks)}; ` +
      `birds taken off ${links.birdsRight} rightly, ${links.birdsWrong} wrongly`,
  ];
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function rootMeanSquare(values: readonly number[]): number {
  return Math.sqrt(meanOf(values.map((value) => value ** 2)));
}

function share(value: number): string {
  return `${(100 * value).toFixed(2)} %`;
}

function percent(part: number, whole: number): string {
  return whole === 0 ? '–' : `${((100 * part) / whole).toFixed(1)} %`;
}
