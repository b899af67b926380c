import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  limitsOfAgreement,
  ratioLimitsOfAgreement,
} from '../../../server/core/agree/bland-altman.js';
import { cohenKappa } from '../../../server/core/agree/cohen-kappa.js';
import { fleissKappa } from '../../../server/core/agree/fleiss-kappa.js';
import { intraclassCorrelations } from '../../../server/core/agree/intraclass-correlation.js';
import {
  krippendorffAlpha,
  krippendorffAlphaInterval,
} from '../../../server/core/agree/krippendorff-alpha.js';
import { pabak } from '../../../server/core/agree/pabak.js';
import { seededRandom } from '../../../server/core/math/seeded-random.js';
import { JUDGES, JUDGES_ICC } from '../../published/intraclass-correlation.js';
import { SALMON } from '../../published/kappa.js';
import { MINI_WRIGHT, PEAK_FLOW_LIMITS, WRIGHT } from '../../published/peak-flow.js';
import { FOUR_OBSERVERS, TEN_SUBJECTS } from '../../published/several-raters.js';
import { expectRelative } from '../../support/expect-relative.js';

const TOLERANCE = 1e-8;

describe('intraclassCorrelations', () => {
  const found = intraclassCorrelations(JUDGES);

  it('agrees with the mean squares of Shrout and Fleiss (1979)', () => {
    for (const name of ['things', 'observers', 'residual', 'within'] as const) {
      expectRelative(found.meanSquares[name], JUDGES_ICC.meanSquares[name], TOLERANCE);
    }
  });

  it.each([
    'oneWaySingle',
    'oneWayMean',
    'agreementSingle',
    'agreementMean',
    'consistencySingle',
    'consistencyMean',
  ] as const)('agrees with psych on %s', (form) => {
    expectRelative(found[form].value ?? NaN, JUDGES_ICC[form].value, TOLERANCE);
    expectRelative(found[form].low ?? NaN, JUDGES_ICC[form].lower, TOLERANCE);
    expectRelative(found[form].high ?? NaN, JUDGES_ICC[form].upper, TOLERANCE);
  });

  it('does not mind a bias between observers in its consistency form, but does in agreement', () => {
    const biased = JUDGES.map((row) => row.map((value, judge) => value + 3 * judge));
    const other = intraclassCorrelations(biased);
    expect(other.consistencySingle.value).toBeCloseTo(found.consistencySingle.value ?? NaN, 10);
    expect(other.agreementSingle.value).toBeLessThan(found.agreementSingle.value ?? NaN);
  });

  it('has exact answers without limits where observers leave no residual', () => {
    const same = intraclassCorrelations([
      [1, 1],
      [4, 4],
      [9, 9],
    ]);
    const level = intraclassCorrelations([
      [0.1, 0.3],
      [0.4, 0.6],
      [0.7, 0.9],
    ]);
    const nothing = intraclassCorrelations([
      [2, 2],
      [2, 2],
    ]);
    const none = { low: null, high: null };
    for (const form of Object.values(same)) {
      if ('value' in form) expect(form).toEqual({ value: 1, ...none });
    }
    expect(level.consistencySingle).toEqual({ value: 1, ...none });
    // Mean squares by hand: things 0.18, observers 0.06, so 0.18 / (0.18 + 2 × 0.06 / 3).
    expect(level.agreementSingle.value).toBeCloseTo(0.18 / 0.22, 12);
    expect(level.agreementSingle.low).toBeNull();
    expect(nothing.consistencyMean).toEqual({ value: null, ...none });
    expect(nothing.agreementMean).toEqual({ value: null, ...none });
    expect(() => intraclassCorrelations([[1, 2], [1]])).toThrow('two things or more');
  });
});

describe('limitsOfAgreement', () => {
  const found = limitsOfAgreement(WRIGHT, MINI_WRIGHT);
  const expected = PEAK_FLOW_LIMITS;

  it('agrees with Bland and Altman (1986) on mean, deviation and limits', () => {
    expectRelative(found.meanDifference.value, expected.mean_difference, TOLERANCE);
    expectRelative(found.meanDifference.low, expected.mean_ci95[0], TOLERANCE);
    expectRelative(found.meanDifference.high, expected.mean_ci95[1], TOLERANCE);
    expectRelative(found.standardDeviation, expected.sd_difference, TOLERANCE);
    // The source takes 1.96 for the normal quantile 1.959964.
    expect(found.lower.value).toBeCloseTo(expected.lower_limit, 2);
    expect(found.upper.value).toBeCloseTo(expected.upper_limit, 2);
  });

  it('agrees with scipy on the exact intervals of the limits', () => {
    expectRelative(found.lower.low, expected.exact_lower_limit_ci95[0], TOLERANCE);
    expectRelative(found.lower.high, expected.exact_lower_limit_ci95[1], TOLERANCE);
    expectRelative(found.upper.low, expected.exact_upper_limit_ci95[0], TOLERANCE);
    expectRelative(found.upper.high, expected.exact_upper_limit_ci95[1], TOLERANCE);
  });

  it('gives ratios of counts, from flocks that both saw', () => {
    const ratios = ratioLimitsOfAgreement([110, 220, 30, 0, 500], [100, 180, 33, 4, 0]);
    const logs = limitsOfAgreement([110, 220, 30].map(Math.log), [100, 180, 33].map(Math.log));
    expect(ratios.n).toBe(3);
    expect(ratios.meanRatio.value).toBeCloseTo(((1.1 * 220 * 30) / 180 / 33) ** (1 / 3), 12);
    expect(ratios.upper.high).toBeCloseTo(Math.exp(logs.upper.high), 9);
    expect(() => limitsOfAgreement([1], [1])).toThrow('at least 2');
  });
});

describe('pabak', () => {
  it('agrees with epiR on the salmon samples', () => {
    const found = pabak(SALMON.table);
    expectRelative(found.value, SALMON.expected.pabak.est, TOLERANCE);
    expectRelative(found.low, SALMON.expected.pabak.lower, TOLERANCE);
    expectRelative(found.high, SALMON.expected.pabak.upper, TOLERANCE);
    expect(() => pabak([[3]])).toThrow('two names');
  });

  it('is Cohen kappa where all names are equally common', () => {
    const table = [
      [20, 5],
      [5, 20],
    ];
    expect(pabak(table).value).toBeCloseTo(cohenKappa(table).value ?? NaN, 12);
  });
});

describe('fleissKappa', () => {
  it('agrees with irr on the widely printed example', () => {
    const found = fleissKappa(TEN_SUBJECTS.counts);
    expectRelative(found.value ?? NaN, TEN_SUBJECTS.kappa, TOLERANCE);
    expectRelative(found.standardErrorIfNone ?? NaN, TEN_SUBJECTS.standardErrorIfNone, TOLERANCE);
    const z = (found.value ?? NaN) / (found.standardErrorIfNone ?? NaN);
    expectRelative(z, TEN_SUBJECTS.z, TOLERANCE);
    expectRelative(found.observed, TEN_SUBJECTS.observed, TOLERANCE);
    expectRelative(found.expected, TEN_SUBJECTS.expected, TOLERANCE);
    TEN_SUBJECTS.byName.forEach((kappa, name) => {
      expectRelative(found.byName[name] ?? NaN, kappa, TOLERANCE);
    });
  });

  it('has the standard error that leaving out one thing at a time gives', () => {
    const random = seededRandom(1971);
    const counts = Array.from({ length: 300 }, () => {
      const likely = random.integer(3);
      const row = [0, 0, 0];
      for (let rater = 0; rater < 4; rater += 1) {
        const name = random.uniform() < 0.5 ? likely : random.integer(3);
        row[name] = (row[name] ?? 0) + 1;
      }
      return row;
    });
    const found = fleissKappa(counts);
    const without = counts.map(
      (_, left) => fleissKappa(counts.filter((__, thing) => thing !== left)).value ?? NaN,
    );
    const centre = without.reduce((total, value) => total + value, 0) / 300;
    const squares = without.reduce((total, value) => total + (value - centre) ** 2, 0);
    expectRelative(found.standardError ?? NaN, Math.sqrt((299 / 300) * squares), 0.01);
    expect(found.low).toBeLessThan(found.value ?? NaN);
    expect(fleissKappa([[2, 1]])).toMatchObject({ standardError: null, low: null, n: 1 });
  });

  it('has no answer where all is one name, and refuses uneven raters', () => {
    expect(
      fleissKappa([
        [3, 0],
        [3, 0],
      ]),
    ).toMatchObject({ value: null, byName: [null, null] });
    expect(() =>
      fleissKappa([
        [3, 0],
        [2, 0],
      ]),
    ).toThrow('same two or more raters');
  });
});

describe('krippendorffAlpha', () => {
  const [first] = FOUR_OBSERVERS.observers;
  const units = first.map((_, unit) => FOUR_OBSERVERS.observers.map((row) => row[unit] ?? null));

  it.each(['nominal', 'ordinal', 'interval', 'ratio'] as const)('agrees with irr: %s', (metric) => {
    expectRelative(
      krippendorffAlpha(units, metric) ?? NaN,
      FOUR_OBSERVERS.alpha[metric],
      TOLERANCE,
    );
  });

  it('does not depend on the order of units or observers', () => {
    const unit = fc.array(fc.option(fc.integer({ min: 0, max: 6 })), {
      minLength: 2,
      maxLength: 4,
    });
    fc.assert(
      fc.property(fc.array(unit, { minLength: 1, maxLength: 8 }), (rows) => {
        const turned = rows.map((row) => [...row].reverse()).reverse();
        for (const metric of ['nominal', 'ordinal', 'interval', 'ratio'] as const) {
          const [one, other] = [krippendorffAlpha(rows, metric), krippendorffAlpha(turned, metric)];
          if (one === null) expect(other).toBeNull();
          else {
            expect(other).toBeCloseTo(one, 10);
            expect(one).toBeLessThanOrEqual(1);
          }
        }
      }),
    );
  });

  it('is what its definition over all pairs of values says (property)', () => {
    const unit = fc.array(fc.option(fc.integer({ min: 0, max: 5 })), {
      minLength: 2,
      maxLength: 4,
    });
    fc.assert(
      fc.property(fc.array(unit, { minLength: 2, maxLength: 7 }), (rows) => {
        const kept = rows
          .map((row) => row.filter((value) => value !== null))
          .filter((row) => row.length > 1);
        const all = kept.flat();
        const ratio = (a: number, b: number): number => (a === b ? 0 : ((a - b) / (a + b)) ** 2);
        const metrics = {
          nominal: (a: number, b: number): number => (a === b ? 0 : 1),
          interval: (a: number, b: number): number => (a - b) ** 2,
          ratio,
        };
        for (const [metric, difference] of Object.entries(metrics)) {
          const add = (values: readonly number[]): number => values.reduce((x, y) => x + y, 0);
          const over = (row: readonly number[]): number =>
            add(row.flatMap((a) => row.map((b) => difference(a, b))));
          const expected = over(all);
          const observed = add(kept.map((row) => over(row) / (row.length - 1)));
          const alpha = krippendorffAlpha(rows, metric as 'nominal' | 'interval' | 'ratio');
          if (expected === 0) expect(alpha).toBeNull();
          else expect(alpha).toBeCloseTo(1 - ((all.length - 1) * observed) / expected, 10);
        }
      }),
    );
  });

  it('gives an interval around it, the same each time, and none from one unit', () => {
    const alpha = krippendorffAlpha(units, 'interval') ?? NaN;
    const interval = krippendorffAlphaInterval(units, 'interval', seededRandom(4));
    expect(interval?.low).toBeLessThan(alpha);
    expect(interval?.high).toBeGreaterThan(alpha);
    expect(krippendorffAlphaInterval(units, 'interval', seededRandom(4))).toEqual(interval);
    expect(krippendorffAlphaInterval([[1, 2]], 'nominal', seededRandom(4))).toBeNull();
    expect(
      krippendorffAlpha(
        [
          [2, 2],
          [2, null],
        ],
        'ratio',
      ),
    ).toBeNull();
  });
});
