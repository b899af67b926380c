import { wordsFor, type Words } from './words.js';
import type { Agreement, Detection, Statistic } from '../../core/model/agreement.js';
import type { Result } from '../../core/model/result.js';
import type { Snapshot } from '../../core/model/snapshot.js';
import { englishName, taxonName } from '../../core/taxa/taxon-name.js';
import { agreementLines, statistic } from './agreement.js';
import { table, wrap, type Style } from './layout.js';
import { whisker, WHISKER_SCALE } from './whisker.js';

/** Pairs of names shown of a confusion table: the ones that most birds stand behind. */
const MOST_CONFUSED = 12;

/** How well the observers of a count agree, with a sentence under each part on what it means. */
export function agreeText(result: Result<string>, snapshot: Snapshot, style: Style): string {
  const words = wordsFor(snapshot);
  const { agreement } = result;
  const section = (title: string, lines: readonly string[], meaning: string): readonly string[] =>
    lines.length === 0 ? [] : ['', style.heading(title), '', ...lines, '', ...wrap(meaning)];
  return [
    style.heading(`Agreement of observers: ${snapshot.name}`),
    ...wrap(
      `Before any ruling; only full counts by independent observers. Intervals are 95 %; "too few" stands where under ${result.protocol.minimumUnits} groups were compared.`,
    ),
    ...section(
      'Ratios of two observers',
      ratioLines(agreement, words),
      'A point is the mean ratio of the first to the second; its bar holds the middle 95 % of ratios of groups. A wide bar says that two counts of one group differ much, not who is right.',
    ),
    ...section(
      'Birds that both saw and named differently',
      confusionLines(result),
      'All pairs of observers together, from the pairing balance. A name beside a pair or group that holds it is a difference of detail, not a contradiction.',
    ),
    ...section(
      'Observers against those who counted the same',
      observerLines(agreement, words),
      'From the model ln total = group + observer + residual. 1 is level with the mean of the observers of the same set; observers of different sets never counted the same groups. It says nothing of who was right.',
    ),
    ...section('Overall and by pair', agreementLines(result, words), MEASURES_MEAN),
    ...section(
      'By section',
      sectionLines(agreement, words),
      'Birds agreed as above. Within 20 %: groups whose smaller number is at least 80 % of the larger. Alpha: Krippendorff, of numbers. Weighted kappa: names, where a pair or group counts as partly the same as what it holds.',
    ),
    ...section(
      'Who stands apart (Mandel, ISO 5725-2)',
      consistencyLines(agreement, words),
      'h: mean of an observer beside the others; k: spread beside theirs. * questioned at 5 %, ** at 1 %.',
    ),
    ...section(
      'Estimate: flocks that were missed',
      detectionLines(agreement.detection, words),
      'An estimate beside the count, from flocks of ten birds or more that one observer saw and another did not. It is never added to the compiled count.',
    ),
    '',
  ].join('\n');
}

const MEASURES_MEAN =
  'Birds agreed: the same name and number, to the bird. Bray–Curtis: overlap of numbers, 1 the same. Concordance: nearness to equal counts, on a scale of ratios. Kappa: names that agree beyond chance.';

function ratioLines({ byPair }: Agreement<string>, words: Words): readonly string[] {
  if (byPair.length === 0) return [];
  const rows = byPair.map(({ a, b, ratios: { meanRatio, lower, upper } }) => [
    `${words.observer({ observer: a })} : ${words.observer({ observer: b })}`,
    whisker(meanRatio.value, lower.value, upper.value),
    meanRatio.value === null
      ? 'too few'
      : `${two(meanRatio.value)} (${two(lower.value)}–${two(upper.value)})`,
    String(meanRatio.n),
  ]);
  return table(
    [
      { title: '', align: 'left', most: 28 },
      { title: WHISKER_SCALE, align: 'left' },
      { title: 'ratio (limits)', align: 'right' },
      { title: 'groups', align: 'right' },
    ],
    rows,
  );
}

function confusionLines({ cells, agreement }: Result<string>): readonly string[] {
  const { entries } = agreement.confusion;
  const english = new Map(
    cells.flatMap(({ groups }) =>
      groups.flatMap(({ identifications }) =>
        identifications.map((set) => [taxonName(set), englishName(set)] as const),
      ),
    ),
  );
  const nameOf = (taxon: string): string => english.get(taxon) ?? taxon;
  // Symmetric: each pair of names stands twice, half of the birds each.
  const pairs = entries.flatMap(({ a, b, number }) =>
    a !== null && b !== null && a < b ? [{ a, b, number: 2 * number }] : [],
  );
  if (entries.length === 0) return [];
  if (pairs.length === 0) return ['None.'];
  const shown = [...pairs]
    .sort((one, other) => other.number - one.number || (one.a + one.b < other.a + other.b ? -1 : 1))
    .slice(0, MOST_CONFUSED);
  const lines = table(
    [
      { title: 'by one', align: 'left', most: 34 },
      { title: 'by the other', align: 'left', most: 34 },
      { title: 'birds', align: 'right' },
    ],
    shown.map(({ a, b, number }) => [nameOf(a), nameOf(b), String(Math.round(number))]),
  );
  const left = pairs.length - shown.length;
  return left === 0 ? lines : [...lines, `and ${left} more with fewer birds`];
}

function observerLines(
  { observerModel, observers }: Agreement<string>,
  words: Words,
): readonly string[] {
  if (observerModel === null) {
    return observers.length === 0 ? [] : ['Too few groups, or nothing that differs, for a model.'];
  }
  const { betweenGroups, betweenObservers, residual } = observerModel;
  const deviation = ({ value, low, high }: Statistic): string =>
    value === null
      ? 'too few'
      : `${percent(value)}${low === null || high === null ? '' : ` (${percent(low)}–${percent(high)})`}`;
  return [
    ...table(
      [
        { title: '', align: 'left', most: 28 },
        { title: WHISKER_SCALE, align: 'left' },
        { title: 'ratio', align: 'right' },
        { title: 'groups', align: 'right' },
        { title: 'set', align: 'right' },
      ],
      observerModel.observers.map(({ observer, ratio, set }) => [
        words.observer({ observer }),
        whisker(ratio.value, ratio.low, ratio.high),
        ratio.value === null
          ? 'too few'
          : `${two(ratio.value)} (${two(ratio.low)}–${two(ratio.high)})`,
        String(ratio.n),
        String(set),
      ]),
    ),
    '',
    ...wrap(
      `Spread as coefficients of variation: between observers ${deviation(betweenObservers)}, left over ${deviation(residual)}; variance of ln totals between groups ${two(betweenGroups.value)}.`,
    ),
  ];
}

function sectionLines({ bySection }: Agreement<string>, words: Words): readonly string[] {
  if (bySection.length === 0) return [];
  return table(
    [
      { title: '', align: 'left', most: 28 },
      { title: 'birds agreed', align: 'right' },
      { title: 'within 20 %', align: 'right' },
      { title: 'alpha', align: 'right' },
      { title: 'weighted kappa', align: 'right' },
      { title: 'groups', align: 'right' },
    ],
    bySection.map(({ place, percentAgreement, withinTolerance, alpha, weightedKappa }) => [
      words.place(place),
      ...[percentAgreement, withinTolerance, alpha, weightedKappa].map(statistic),
      String(percentAgreement.n),
    ]),
  );
}

function consistencyLines(
  { observerConsistency }: Agreement<string>,
  words: Words,
): readonly string[] {
  return observerConsistency.flatMap(({ groups, hCritical, kCritical, observers }) => {
    const marked = (value: number | null, critical: typeof hCritical): string => {
      if (value === null) return '';
      const size = Math.abs(value);
      return `${two(value)}${size > critical.serious ? '**' : size > critical.questioned ? '*' : ''}`;
    };
    return table(
      [
        { title: `${groups} groups`, align: 'left', most: 28 },
        { title: 'h', align: 'right' },
        { title: 'k', align: 'right' },
      ],
      observers.map(({ observer, h, k }) => [
        words.observer({ observer }),
        marked(h, hCritical),
        marked(k, kCritical),
      ]),
    );
  });
}

function detectionLines(detection: readonly Detection<string>[], words: Words): readonly string[] {
  return detection.flatMap(({ observers, seen, matched, flocks, missedByAll, warning }) => {
    const who = observers.map((observer) => words.observer({ observer })).join(', ');
    const estimate =
      flocks.value === null
        ? ''
        : ` There were about ${Math.round(flocks.value)} (${Math.floor(flocks.low ?? 0)} to ${flocks.high === null ? 'any number' : Math.ceil(flocks.high)}); ${shareOf(missedByAll)} were missed by all.`;
    return wrap(
      `${who}: ${seen} flocks, ${matched} of them seen by two or more.${estimate}${warning === null ? '' : ` ${warning}`}`,
      '- ',
    );
  });
}

/** Two decimals; a dash where there is no number. */
function two(value: number | null): string {
  return value === null ? '–' : value.toFixed(2);
}

/** Variance of ln numbers as coefficient of variation: 0.04 → "20 %". */
function percent(variance: number): string {
  return `${Math.round(100 * Math.sqrt(Math.expm1(variance)))} %`;
}

/** "3 % (0 to 12 %)". */
function shareOf({ value, low, high }: Statistic): string {
  if (value === null) return 'an unknown share';
  const whole = (share: number): string => String(Math.round(100 * share));
  const interval = low === null || high === null ? '' : ` (${whole(low)} to ${whole(high)} %)`;
  return `${whole(value)} %${interval}`;
}
