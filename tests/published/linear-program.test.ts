import fc from 'fast-check';
import type { Highs } from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { LinearProgram } from '../../server/core/math/linear-program-form.js';
import { linearProgram } from '../../server/core/math/linear-program.js';
import { wholeProgram } from '../../server/core/math/linear-program-whole.js';
import { solveWithHighs, startHighs } from './solve-with-highs.js';
import { WORKED_PROGRAMS, WORKED_WHOLE_PROGRAMS } from './linear-programs.js';

let highs: Highs;
beforeAll(async () => {
  highs = await startHighs();
});

function solved(program: LinearProgram) {
  const answer = linearProgram(program);
  if (answer.kind !== 'optimal') throw new Error(`it is ${answer.kind}`);
  return answer;
}

describe('worked examples of linear programmes', () => {
  it.each(WORKED_PROGRAMS)('$name', ({ program, cost, values, prices }) => {
    const answer = solved(program);
    expect(answer.cost).toBeCloseTo(cost, 9);
    values?.forEach((value, index) => expect(answer.values[index]).toBeCloseTo(value, 9));
    prices?.forEach((price, index) => expect(answer.prices[index]).toBeCloseTo(price, 9));
    expect(solveWithHighs(highs, program)).toMatchObject({ kind: 'optimal' });
    expect(solveWithHighs(highs, program)).toHaveProperty('cost', expect.closeTo(cost, 6));
  });

  it.each(WORKED_WHOLE_PROGRAMS)('$name', ({ program, cost, wholeCost, wholeValues }) => {
    expect(solved(program).cost).toBeCloseTo(cost, 9);
    const answer = wholeProgram(program, [0, 1]);
    expect(answer).toMatchObject({ cost: wholeCost, proven: true });
    answer.values?.forEach((value, index) => expect(value).toBeCloseTo(wholeValues[index] ?? NaN));
    expect(solveWithHighs(highs, program, [0, 1])).toHaveProperty(
      'cost',
      expect.closeTo(wholeCost, 6),
    );
  });

  it('says where there is no solution, and where there is no least cost', () => {
    const bounds = [{ least: 0, most: Infinity }];
    const between = (least: number, most: number): LinearProgram['rows'][number] => ({
      terms: [[0, 1]],
      least,
      most,
    });
    const impossible = [between(3, Infinity), between(-Infinity, 2)];
    expect(linearProgram({ costs: [1], bounds, rows: impossible }).kind).toBe('infeasible');
    expect(linearProgram({ costs: [-1], bounds, rows: [between(3, Infinity)] }).kind).toBe(
      'unbounded',
    );
  });

  it('refuses bounds the wrong way round and unknown variables', () => {
    expect(() => linearProgram({ costs: [1], bounds: [{ least: 2, most: 1 }], rows: [] })).toThrow(
      RangeError,
    );
    const bounds = [{ least: 0, most: 1 }];
    const rows = [{ terms: [[1, 1]] as const, least: 0, most: 1 }];
    expect(() => linearProgram({ costs: [1], bounds, rows })).toThrow(RangeError);
  });
});

const side = fc.integer({ min: -20, max: 20 });
const range = fc.oneof(
  fc.tuple(side, side).map(([a, b]) => ({ least: Math.min(a, b), most: Math.max(a, b) })),
  side.map((least) => ({ least, most: Infinity })),
  side.map((most) => ({ least: -Infinity, most })),
  side.map((both) => ({ least: both, most: both })),
);
const anyProgram: fc.Arbitrary<LinearProgram> = fc
  .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 0, max: 14 }))
  .chain(([variables, rows]) =>
    fc.record({
      costs: fc.array(fc.integer({ min: -5, max: 5 }), {
        minLength: variables,
        maxLength: variables,
      }),
      bounds: fc.array(fc.oneof(fc.constant({ least: 0, most: Infinity }), range), {
        minLength: variables,
        maxLength: variables,
      }),
      rows: fc.array(
        fc.record({
          terms: fc.uniqueArray(fc.tuple(fc.nat(variables - 1), fc.integer({ min: -4, max: 4 })), {
            selector: ([variable]) => variable,
            maxLength: 6,
          }),
          range,
        }),
        { minLength: rows, maxLength: rows },
      ),
    }),
  )
  .map(({ costs, bounds, rows }) => ({
    costs,
    bounds,
    rows: rows.map(({ terms, range: sides }) => ({ terms, ...sides })),
  }));

describe('random linear programmes', () => {
  it('cost what HiGHS finds, and neither has a solution where the other has none', () => {
    const kinds = { optimal: 0, infeasible: 0, unbounded: 0 };
    fc.assert(
      fc.property(anyProgram, (program) => {
        const outside = solveWithHighs(highs, program);
        const own = linearProgram(program);
        expect(own.kind).toBe(outside.kind);
        if (own.kind === 'optimal' && outside.kind === 'optimal') {
          expect(own.cost).toBeCloseTo(outside.cost, 5);
        }
        kinds[own.kind] += 1;
      }),
      { numRuns: 500 },
    );
    // All three kinds must have come up, or the check says little.
    expect(Math.min(kinds.optimal, kinds.infeasible, kinds.unbounded)).toBeGreaterThan(20);
  });

  it('cost what HiGHS finds where all variables must be whole', () => {
    fc.assert(
      fc.property(anyProgram, (program) => {
        const bounds = program.bounds.map(({ least, most }) => ({
          least: Math.max(least, -20),
          most: Math.min(most, 20),
        }));
        const whole = bounds.map((_, index) => index);
        const outside = solveWithHighs(highs, { ...program, bounds }, whole);
        fc.pre(outside.kind === 'optimal');
        const own = wholeProgram({ ...program, bounds }, whole);
        // A search that was given up still gives a bound from below.
        if (own.proven) expect(own.cost).toBe(Math.round(outside.cost));
        else expect(own.cost).toBeLessThanOrEqual(Math.round(outside.cost));
      }),
      { numRuns: 200 },
    );
  });

  it('have prices that prove their cost: no other solution can be cheaper', () => {
    fc.assert(
      fc.property(anyProgram, (program) => {
        const answer = linearProgram(program);
        fc.pre(answer.kind === 'optimal');
        // Weak duality: price every row at the side that its price points to, then every variable
        // at the bound that its remaining cost points to.
        const worth = (price: number, { least, most }: { least: number; most: number }): number =>
          Math.abs(price) < 1e-9 ? 0 : price * (price > 0 ? least : most);
        const rest = [...program.costs];
        let proven = 0;
        program.rows.forEach((row, index) => {
          const price = answer.prices[index] ?? 0;
          proven += worth(price, row);
          for (const [variable, factor] of row.terms) {
            rest[variable] = (rest[variable] ?? 0) - price * factor;
          }
        });
        program.bounds.forEach((bound, variable) => {
          proven += worth(rest[variable] ?? 0, bound);
        });
        expect(proven).toBeCloseTo(answer.cost, 6);
      }),
      { numRuns: 500 },
    );
  });
});
