import { describe, expect, it } from 'vitest';
import { expectedSpan } from '../../../server/core/disagreements/expected-span.js';
import { inEnglish } from '../../../server/core/model/saying.js';
import { seededRandom, type SeededRandom } from '../../../server/core/math/seeded-random.js';
import type { Disagreement } from '../../../server/core/model/result.js';
import type { EarlierNumber, Snapshot } from '../../../server/core/model/snapshot.js';
import { reconcileInEnglish as reconcile } from '../../support/reconcile-in-english.js';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { aCount, aProtocol, aTally, type ShortLine } from '../a-count.js';

const FIRST_YEAR = 2017;

/** Numbers of one taxon in years on end from 2017; `null` for a year without a row. */
function years(taxon: string, numbers: readonly (number | null)[]): EarlierNumber[] {
  const parsed = parseTaxon(taxon);
  if (!parsed.ok) throw new Error(inEnglish(parsed.problem));
  return numbers.flatMap((number, index) =>
    number === null ? [] : [{ candidates: parsed.candidates, year: FIRST_YEAR + index, number }],
  );
}

/** All three sections counted in full by one observer, who has these lines in the first of them. */
function countOf(lines: readonly ShortLine[], history: readonly EarlierNumber[]): Snapshot {
  const [window] = aCount([]).windows;
  return {
    ...aCount([
      aTally('o1', lines),
      aTally('o2', [], { sections: ['s2'] }),
      aTally('o3', [], { sections: ['s3'] }),
    ]),
    windows: window === undefined ? [] : [window],
    history,
  };
}

function implausibleIn(snapshot: Snapshot): Disagreement<string>[] {
  return reconcile(snapshot, [], aProtocol()).disagreements.filter(
    ({ kind }) => kind === 'implausible',
  );
}

const REDHEADS = [80, 95, 120, 101, 130, 75, 99, 110, 90, 110];

describe('implausible numbers', () => {
  it('questions a number above what earlier years lead one to expect, and proposes what settles it', () => {
    const history = years('Redhead', REDHEADS);
    const { high } = expectedSpan(REDHEADS, 0.95);
    const [found, ...others] = implausibleIn(countOf([['Redhead', high + 1]], history));
    expect(others).toEqual([]);
    expect(found).toMatchObject({
      id: 'implausible:Aythya americana',
      severity: 'questioned',
      birds: 1,
      cell: 's1:w1',
      group: ['Aythya americana'],
      lines: ['t-o1:1'],
      text: `${high + 1} Redhead are compiled, more than the ${expectedSpan(REDHEADS, 0.95).low} to ${high} that 10 earlier years (2017 to 2026) lead one to expect.`,
      ruledBy: null,
    });
    expect(implausibleIn(countOf([['Redhead', high]], history))).toEqual([]);
    const serious = expectedSpan(REDHEADS, 0.999).high + 1;
    expect(implausibleIn(countOf([['Redhead', serious]], history))).toMatchObject([
      { severity: 'serious', birds: serious - high },
    ]);
  });

  it('is settled by the ruling that it proposes', () => {
    const snapshot = countOf([['Redhead', 1000]], years('Redhead', REDHEADS));
    const [found] = implausibleIn(snapshot);
    const [proposal] = found?.proposals ?? [];
    if (found === undefined || proposal === undefined) throw new Error('nothing is proposed');
    const ruled = reconcile(
      snapshot,
      [{ ...proposal, id: 'r1', by: 'o4', reason: 'Photographs', basis: found.basis }],
      aProtocol(),
    );
    expect(ruled.rulings).toMatchObject([{ id: 'r1', state: 'applied' }]);
    expect(ruled.disagreements.find(({ id }) => id === found.id)?.ruledBy).toBe('r1');
  });

  it('questions a number below, also where nobody saw any', () => {
    const history = years('Redhead', REDHEADS);
    const { low } = expectedSpan(REDHEADS, 0.95);
    expect(implausibleIn(countOf([['Redhead', low]], history))).toEqual([]);
    expect(implausibleIn(countOf([['Redhead', low - 1]], history))).toMatchObject([
      { severity: 'questioned', birds: 1, group: ['Aythya americana'] },
    ]);
    expect(implausibleIn(countOf([['Mallard', 4]], history))).toMatchObject([
      // Never recorded before: the mallards. Missing: the redheads, which no group is about.
      { id: 'implausible:Aythya americana', severity: 'questioned', group: null, proposals: [] },
      { id: 'implausible:Anas platyrhynchos', birds: 4 },
    ]);
  });

  it('says nothing of too few birds where a section was not counted or was seen in part', () => {
    const history = years('Redhead', REDHEADS);
    const whole = countOf([['Redhead', 1]], history);
    expect(implausibleIn(whole)).toHaveLength(1);
    const { tallies } = whole;
    expect(implausibleIn({ ...whole, tallies: tallies.slice(0, 2) })).toEqual([]);
    const inPart = tallies.map((tally) =>
      tally.observer === 'o2' ? { ...tally, coverage: 0.5 } : tally,
    );
    expect(implausibleIn({ ...whole, tallies: inPart })).toEqual([]);
  });

  it('questions a taxon never recorded before', () => {
    const history = years('Redhead', REDHEADS);
    expect(
      implausibleIn(
        countOf(
          [
            ['Redhead', 100],
            ['Tufted Duck', 1],
          ],
          history,
        ),
      ),
    ).toMatchObject([
      {
        id: 'implausible:Aythya fuligula',
        severity: 'questioned',
        birds: 1,
        text: '1 Tufted Duck is compiled; none was recorded in 10 earlier years (2017 to 2026).',
      },
    ]);
  });

  it('says nothing with fewer years than the protocol asks for', () => {
    const history = years('Redhead', REDHEADS.slice(0, 4));
    expect(
      implausibleIn(
        countOf(
          [
            ['Redhead', 9000],
            ['Tufted Duck', 1],
          ],
          history,
        ),
      ),
    ).toEqual([]);
  });

  it('takes a year that has other taxa but not this one as a year without any', () => {
    const silent = [
      ...years('Mallard', [20, 22, 18, 25, 21, 19]),
      ...years('Redhead', [null, null, null, null, null, 3]),
    ];
    const zeros = [
      ...years('Mallard', [20, 22, 18, 25, 21, 19]),
      ...years('Redhead', [0, 0, 0, 0, 0, 3]),
    ];
    const lines: ShortLine[] = [
      ['Mallard', 20],
      ['Redhead', 60],
    ];
    expect(implausibleIn(countOf(lines, silent))).toHaveLength(1);
    expect(implausibleIn(countOf(lines, silent))).toEqual(implausibleIn(countOf(lines, zeros)));
  });

  it('does not mistake a year that identified fewer birds for one that had fewer', () => {
    // In earlier years most scaup stayed a pair, this year they were named.
    const history = [
      ...years('Greater Scaup', [40, 55, 30, 61, 45, 50]),
      ...years('GRSC/LESC', [900, 1100, 950, 1000, 1200, 870]),
    ];
    expect(
      implausibleIn(
        countOf(
          [
            ['Greater Scaup', 900],
            ['Lesser Scaup', 60],
          ],
          history,
        ),
      ),
    ).toEqual([]);
    // This year all stayed a pair: greater scaup are not missing.
    expect(implausibleIn(countOf([['GRSC/LESC', 1000]], history))).toEqual([]);
    // But so many of the two together were never there; told once, of the pair.
    expect(
      implausibleIn(
        countOf(
          [
            ['GRSC/LESC', 9000],
            ['Greater Scaup', 40],
          ],
          history,
        ),
      ).map(({ id }) => id),
    ).toEqual(['implausible:Aythya affinis/marila']);
  });
});

describe('expectedSpan', () => {
  it('spans no bird after years without any', () => {
    expect(expectedSpan([0, 0, 0, 0, 0], 0.95)).toEqual({ low: 0, high: 0 });
  });

  it('is about what normal theory gives for large numbers with little more spread than Poisson', () => {
    // Squared deviations 2 · (150² + 130² + 100² + 80² + 50²) = 116,600; sd √(116,600 / 9) = 113.8;
    // t with 9 degrees of freedom 2.262; so 10,000 ± 2.262 · 113.8 · √1.1 = 10,000 ± 270.
    const numbers = [9850, 10150, 9900, 10100, 9950, 10050, 9870, 10130, 10080, 9920];
    const { low, high } = expectedSpan(numbers, 0.95);
    expect(Math.abs(low - 9730)).toBeLessThanOrEqual(5);
    expect(Math.abs(high - 10_270)).toBeLessThanOrEqual(5);
  });

  it.each([
    [10, 50, 3],
    [10, 4, 1],
    [6, 200, 5],
    [10, 30, Infinity],
    [20, 500, 0.8],
  ])(
    'misses the next number in at most 6.5 in 100 made-up series of %d years of mean %d and size %d',
    (count, mean, size) => {
      const random = seededRandom(2027);
      const runs = 1000;
      let missed = 0;
      for (let run = 0; run < runs; run += 1) {
        const numbers = Array.from({ length: count }, () => drawNumber(mean, size, random));
        const { low, high } = expectedSpan(numbers, 0.95);
        const next = drawNumber(mean, size, random);
        if (next < low || next > high) missed += 1;
      }
      expect(missed / runs).toBeLessThanOrEqual(0.065);
    },
  );
});

/** A Poisson number whose mean is a gamma number (Marsaglia & Tsang 2000), or the mean itself. */
function drawNumber(mean: number, size: number, random: SeededRandom): number {
  return drawPoisson(size === Infinity ? mean : (drawGamma(size, random) * mean) / size, random);
}

function drawGamma(shape: number, random: SeededRandom): number {
  if (shape < 1) return drawGamma(shape + 1, random) * random.uniform() ** (1 / shape);
  const d = shape - 1 / 3;
  for (;;) {
    const angle = 2 * Math.PI * random.uniform();
    const x = Math.sqrt(-2 * Math.log(1 - random.uniform())) * Math.cos(angle);
    const v = (1 + x / Math.sqrt(9 * d)) ** 3;
    if (v > 0 && Math.log(1 - random.uniform()) < 0.5 * x * x + d - d * v + d * Math.log(v)) {
      return d * v;
    }
  }
}

/** Arrivals at rate 1 until the mean is used up. */
function drawPoisson(mean: number, random: SeededRandom): number {
  let arrivals = -1;
  for (let time = 0; time < mean; time -= Math.log(1 - random.uniform())) arrivals += 1;
  return Math.max(0, arrivals);
}
