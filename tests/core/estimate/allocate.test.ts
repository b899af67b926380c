import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allocate } from '../../../server/core/estimate/allocate.js';
import { inEnglish } from '../../../server/core/model/saying.js';
import { betaQuantile } from '../../../server/core/math/beta.js';
import { seededRandom } from '../../../server/core/math/seeded-random.js';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { keyOf } from '../../../server/core/taxa/candidate-set.js';
import { NESTED_LEVELS } from '../../published/em-partially-classified.js';

const line = (taxon: string, number: number) => {
  const parsed = parseTaxon(taxon);
  if (!parsed.ok) throw new Error(inEnglish(parsed.problem));
  return { candidates: parsed.candidates, number };
};

const GREATER = 'Aythya marila';
const LESSER = 'Aythya affinis';
const PAIR = 'Aythya affinis/marila';

describe('allocate', () => {
  it('shares a pair out by the identified share, in whole birds that add up', () => {
    // 30 : 10 identified, so 20 of the pair are 15 : 5.
    const lines = [line(GREATER, 30), line(LESSER, 10), line(PAIR, 20)];
    expect(allocate(lines, [lines], 5)).toEqual([
      {
        species: GREATER,
        identified: 30,
        estimated: 45,
        low: 30,
        high: 50,
        interval: 'bounds',
        undetermined: 0,
        of: [{ taxon: PAIR, number: 20, disputed: 0, estimated: 15 }],
      },
      {
        species: LESSER,
        identified: 10,
        estimated: 15,
        low: 10,
        high: 30,
        interval: 'bounds',
        undetermined: 0,
        of: [{ taxon: PAIR, number: 20, disputed: 0, estimated: 5 }],
      },
    ]);
  });

  it('splits nested levels as their closed form says', () => {
    // The made-up nested example, its four members read as four pochards: 160 birds in all.
    const [a, b, c, d] = [GREATER, LESSER, 'Aythya americana', 'Aythya collaris'] as const;
    const { species, groups, expected } = NESTED_LEVELS;
    const [ab, cd, all] = groups;
    const lines = [
      line(a, species.a),
      line(b, species.b),
      line(c, species.c),
      line(d, species.d),
      line(`${a}/${b}`, ab.count),
      line(`${c}/${d}`, cd.count),
      line([a, b, c, d].join('/'), all.count),
    ];
    const found = new Map(allocate(lines, [], 5).map((each) => [each.species, each.estimated]));
    [a, b, c, d].forEach((each, index) => {
      expect(found.get(each)).toBeCloseTo((expected.proportions[index] ?? NaN) * 160, -0.5);
    });
    expect([...found.values()].reduce<number>((sum, birds) => sum + (birds ?? 0), 0)).toBe(160);
  });

  it('has no estimate where a candidate was never identified: not half, and not none either', () => {
    const found = allocate([line(GREATER, 100), line(PAIR, 500)], [], 5);
    expect(found).toMatchObject([
      {
        species: GREATER,
        identified: 100,
        estimated: null,
        low: 100,
        high: 600,
        undetermined: 500,
      },
      { species: LESSER, identified: 0, estimated: null, low: 0, high: 500, undetermined: 500 },
    ]);
  });

  it('shares out what it can, and lets the rest only raise what a species may be at most', () => {
    const found = allocate(
      [line(GREATER, 30), line(LESSER, 10), line(PAIR, 20), line('Aythya sp.', 7)],
      [],
      5,
    );
    const greater = found.find(({ species }) => species === GREATER);
    expect(greater).toMatchObject({ estimated: 45, undetermined: 7, high: 57 });
    expect(greater?.of).toContainEqual({
      taxon: 'Aythya sp.',
      number: 7,
      disputed: 0,
      estimated: null,
    });
    const redhead = found.find(({ species }) => species === 'Aythya americana');
    expect(redhead).toMatchObject({ identified: 0, estimated: null, low: 0, high: 7 });
  });

  it('says nothing where every bird was identified', () => {
    expect(allocate([line(GREATER, 30), line(LESSER, 10), line(PAIR, 0)], [], 5)).toEqual([]);
  });

  it('has a narrower interval where cells agree on the mixture than where they do not', () => {
    const alike = Array.from({ length: 8 }, () => [line(GREATER, 30), line(LESSER, 10)]);
    const apart = Array.from({ length: 8 }, (_, index) =>
      index % 4 === 0 ? [line(LESSER, 40)] : [line(GREATER, 40)],
    );
    const compiled = [line(GREATER, 240), line(LESSER, 80), line(PAIR, 100)];
    const [even] = allocate(compiled, alike, 5);
    const [uneven] = allocate(compiled, apart, 5);
    expect(even).toMatchObject({ estimated: 315, interval: 'bootstrap' });
    expect(uneven).toMatchObject({ estimated: 315, interval: 'bootstrap' });
    // Eight cells of one mixture leave only the chance of which birds they are: 100 at 3 in 4 have
    // a standard deviation of √(100 · 3/4 · 1/4) = 4.33, so 315 ± 1.96 · 4.33, rounded outward.
    expect(even).toMatchObject({ low: 306, high: 324 });
    expect(uneven?.low).toBeLessThan(300);
    expect(uneven?.high).toBeGreaterThan(330);
  });

  it('holds the truth in at least 93 of 100 made-up counts whose cells differ in their mixture', () => {
    // Twelve cells, sizes from 5 to 270 birds, mixtures by a beta distribution with a variance of a
    // ninth of the most that it can be; two cells leave most birds at the pair, the others few.
    const random = seededRandom(11);
    const runs = 120;
    let held = 0;
    for (let run = 0; run < runs; run += 1) {
      const mean = 0.2 + 0.6 * random.uniform();
      let greater = 0;
      const cells = Array.from({ length: 12 }, (_, cell) => {
        const share = betaQuantile(random.uniform(), 8 * mean, 8 * (1 - mean));
        const size = Math.round(5 * Math.exp(4 * random.uniform()));
        const seen = { greater: 0, lesser: 0, pair: 0 };
        for (let bird = 0; bird < size; bird += 1) {
          const isGreater = random.uniform() < share;
          if (isGreater) greater += 1;
          if (random.uniform() < (cell < 2 ? 0.7 : 0.02)) seen.pair += 1;
          else seen[isGreater ? 'greater' : 'lesser'] += 1;
        }
        return [line(GREATER, seen.greater), line(LESSER, seen.lesser), line(PAIR, seen.pair)];
      });
      const total = (at: number): number =>
        cells.reduce((sum, lines) => sum + (lines[at]?.number ?? 0), 0);
      const [found] = allocate(
        [line(GREATER, total(0)), line(LESSER, total(1)), line(PAIR, total(2))],
        cells,
        5,
      );
      if (found !== undefined && found.low <= greater && greater <= found.high) held += 1;
    }
    expect(held / runs).toBeGreaterThanOrEqual(0.93);
  });

  const anyLines = fc.uniqueArray(
    fc.record({
      candidates: fc
        .subarray(['Aythya affinis', 'Aythya americana', 'Aythya marila', 'Bucephala clangula'], {
          minLength: 1,
        })
        .map((set) => [...set].sort()),
      number: fc.nat({ max: 200 }),
    }),
    { selector: ({ candidates }) => keyOf(candidates), maxLength: 10 },
  );

  it('adds up whatever there is, within what is possible (property)', () => {
    fc.assert(
      fc.property(anyLines, fc.array(anyLines, { maxLength: 6 }), (lines, cells) => {
        const found = allocate(lines, cells, 2);
        const byGroup = new Map<string, { number: number; parts: (number | null)[] }>();
        for (const { of } of found) {
          for (const { taxon, number, estimated } of of) {
            const known = byGroup.get(taxon) ?? { number, parts: [] };
            byGroup.set(taxon, { number, parts: [...known.parts, estimated] });
          }
        }
        for (const { number, parts } of byGroup.values()) {
          if (parts.includes(null)) expect(parts.every((part) => part === null)).toBe(true);
          else expect(parts.reduce<number>((sum, part) => sum + (part ?? 0), 0)).toBe(number);
        }
        for (const each of found) {
          const most = each.of.reduce((sum, { number }) => sum + number, each.identified);
          expect(each.low).toBeGreaterThanOrEqual(each.identified);
          expect(each.high).toBeLessThanOrEqual(most);
          expect(each.low).toBeLessThanOrEqual(each.estimated ?? each.low);
          expect(each.high).toBeGreaterThanOrEqual(each.estimated ?? each.high);
        }
      }),
      { numRuns: 100 },
    );
  });
});
