import type { Agreement, Statistic } from '../core/model/agreement.js';
import type { Result } from '../core/model/result.js';
import { writeCsv, type CsvCell } from './write-csv.js';

/**
 * All agreement statistics as one long table: what part of the count, which observers, which taxon,
 * the statistic, its value with interval, and n. A value that rests on too little is empty.
 */
export function agreementCsv({ count, agreement }: Result<unknown>): string {
  return writeCsv(
    ['count', 'part', 'of', 'taxon', 'statistic', 'value', 'low', 'high', 'n'],
    rowsOf(agreement).map(({ part, of, taxon, statistic, found }) => [
      count,
      part,
      of,
      taxon,
      statistic,
      found.value,
      found.low,
      found.high,
      found.n,
    ]),
  );
}

interface Row {
  readonly part: string;
  /** Observers, or sections. */
  readonly of: string;
  readonly taxon: string;
  readonly statistic: string;
  readonly found: { readonly [Key in keyof Statistic]: CsvCell };
}

function rowsOf(agreement: Agreement<unknown>): Row[] {
  const model = agreement.observerModel;
  return [
    ...statistics('overall', '', '', agreement.overall),
    ...agreement.byPair.flatMap((pair) => {
      const of = `${pair.a} : ${pair.b}`;
      const { meanRatio, lower, upper } = pair.ratios;
      return [
        ...statistics('pair', of, '', pair),
        ...statistics('pair', of, '', { meanRatio, lowerLimit: lower, upperLimit: upper }),
        ...pair.sensitivities.flatMap(({ taxon, ofA, ofB }) =>
          statistics('pair', of, taxon, { sensitivityOfFirst: ofA, sensitivityOfSecond: ofB }),
        ),
        ...pair.confusion.entries.map(({ a, b, number }) => ({
          ...single('pair', of, 'birds named', number),
          taxon: `${a ?? '(none)'} : ${b ?? '(none)'}`,
        })),
      ];
    }),
    ...agreement.bySection.flatMap(({ place, ...measures }) =>
      statistics('section', place.join('+'), '', measures),
    ),
    ...agreement.byTaxon.flatMap(({ taxon, ...measures }) =>
      statistics('taxon', '', taxon, measures),
    ),
    ...agreement.intraclass.flatMap(({ observers, ...forms }) =>
      statistics('intraclass correlation', observers.join(' : '), '', forms),
    ),
    ...agreement.observers.flatMap(({ observer, ratio }) =>
      statistics('observer', observer, '', { ratio }),
    ),
    ...(model === null
      ? []
      : [
          ...statistics('model', '', '', {
            betweenGroups: model.betweenGroups,
            betweenObservers: model.betweenObservers,
            residual: model.residual,
          }),
          ...model.observers.flatMap(({ observer, ratio, set }) =>
            statistics('model', observer, '', { [`ratioInSet${set}`]: ratio }),
          ),
        ]),
    ...agreement.observerConsistency.flatMap(({ hCritical, kCritical, observers }) =>
      observers.flatMap(({ observer, h, k }) => [
        single('consistency', observer, 'h', h),
        single('consistency', observer, 'hCritical5', hCritical.questioned),
        single('consistency', observer, 'hCritical1', hCritical.serious),
        single('consistency', observer, 'k', k),
        single('consistency', observer, 'kCritical5', kCritical.questioned),
        single('consistency', observer, 'kCritical1', kCritical.serious),
      ]),
    ),
    ...agreement.detection.flatMap(({ observers, flocks, missedByAll, byObserver }) => [
      ...statistics('detection', observers.join(' : '), '', { flocks, missedByAll }),
      ...byObserver.flatMap(({ observer, chance }) =>
        statistics('detection', observer, '', { chance }),
      ),
    ]),
  ];
}

/** The entries that are statistics; what else a part has is left out. */
function statistics(part: string, of: string, taxon: string, found: object): Row[] {
  return Object.entries(found).flatMap(([statistic, value]: [string, unknown]) =>
    isStatistic(value) ? [{ part, of, taxon, statistic, found: value }] : [],
  );
}

function isStatistic(value: unknown): value is Statistic {
  return typeof value === 'object' && value !== null && 'value' in value && 'n' in value;
}

/** A number without interval. */
function single(part: string, of: string, statistic: string, value: number | null): Row {
  return { part, of, taxon: '', statistic, found: { value, low: null, high: null, n: null } };
}
