import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  logCountsOf,
  tau2OfCell,
  tau2OfGroup,
  tau2WhereSpreadIs,
} from '../../../server/core/consensus/between-observers.js';
import { plainIntervalOf } from '../../../server/core/consensus/interval.js';
import { numbersByRule } from '../../../server/core/consensus/numbers-by-rule.js';
import { pauleMandelTau2 } from '../../../server/core/consensus/paule-mandel.js';
import type { Unit } from '../../../server/core/consensus/units.js';
import { logDeviation } from '../../../server/core/compare/counting-error.js';
import { normalQuantile } from '../../../server/core/math/normal.js';
import { seededRandom } from '../../../server/core/math/seeded-random.js';

const counted = (total: number, cv = 0.2): Unit => ({
  looks: [],
  total,
  highest: total,
  logVariance: logDeviation(cv) ** 2,
});

/** BCG vaccine trials, ln risk ratios: Colditz et al. 1994 (JAMA 271:698), as R's dat.bcg has them. */
const BCG = {
  values: [
    -0.889311333920205, -1.58538865720143, -1.34807314829969, -1.44155119002131, -0.217547322211296,
    -0.786115585818864, -1.62089822359839, 0.0119523335238405, -0.469417648738149,
    -1.37134480347278, -0.339358828338391, 0.445913400571379, -0.0173139482168798,
  ],
  variances: [
    0.325584765003961, 0.194581121398144, 0.415367965367965, 0.0200100319022476, 0.0512101721696309,
    0.00690561845590876, 0.223017247572315, 0.00396157929781773, 0.056434210463249,
    0.0730247936130289, 0.0124122139715597, 0.532505845200153, 0.0714046596839863,
  ],
};

describe('what observers differ beyond counting error', () => {
  it('has the limits of the Q-profile interval (Viechtbauer 2007; R, metafor 3.8.1, dat.bcg)', () => {
    // Chi-squared with 12 degrees of freedom, 97.5 and 2.5 % points of printed tables: 23.337, 4.404.
    expect(tau2WhereSpreadIs(BCG, 23.33666 / 12)).toBeCloseTo(0.119718361141, 6);
    expect(tau2WhereSpreadIs(BCG, 4.403789 / 12)).toBeCloseTo(1.11147908406, 5);
  });

  it('is Paule & Mandel’s where the spread is to be as expected', () => {
    expect(tau2WhereSpreadIs(BCG, 1)).toBeCloseTo(pauleMandelTau2(BCG.values, BCG.variances), 9);
  });

  it('is 0 where most groups differ no more than counting error makes them', () => {
    const groups = [
      [counted(100), counted(104)],
      [counted(300), counted(290)],
      [counted(40), counted(400)],
    ];
    expect(tau2OfCell(groups)).toBe(0);
    expect(tau2OfCell([])).toBe(0);
    expect(tau2OfCell([[counted(12, 0), counted(15, 0)], [counted(400)]])).toBe(0);
  });

  it('is found again in a made-up cell, though a few of its groups were mostly overlooked', () => {
    const random = seededRandom(11);
    const normal = (): number => normalQuantile(random.uniform());
    const tau = 0.3;
    const groups = Array.from({ length: 4001 }, (_, index) => {
      // Student's t with 8 degrees of freedom: normal, by a chi-squared that the group has in common.
      const chi = Array.from({ length: 8 }, () => normal() ** 2).reduce((a, b) => a + b);
      const deviation = Math.hypot(tau, logDeviation(0.2)) / Math.sqrt(chi / 8);
      const draw = (): Unit => counted(1000 * Math.exp(deviation * normal()));
      return [draw(), index % 50 === 0 ? counted(20) : draw()];
    });
    const found = Math.sqrt(tau2OfCell(groups));
    expect(found).toBeGreaterThan(0.28);
    expect(found).toBeLessThan(0.33);
  });

  it('does not hang on the order of groups or counts, and is the cell’s unless a group speaks against it', () => {
    const units = fc.array(
      fc.record({
        total: fc.integer({ min: 1, max: 5000 }),
        cv: fc.constantFrom(0, 0.05, 0.2, 0.5),
      }),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(fc.array(units, { maxLength: 8 }), (groups) => {
        const cell = groups.map((group) => group.map(({ total, cv }) => counted(total, cv)));
        const found = tau2OfCell(cell);
        expect(found).toBeGreaterThanOrEqual(0);
        expect(tau2OfCell([...cell].reverse().map((each) => [...each].reverse()))).toBeCloseTo(
          found,
          9,
        );
        for (const group of cell) {
          expect(tau2OfGroup(group, found)).toBeGreaterThanOrEqual(found);
          if (logCountsOf(group) === null) expect(tau2OfGroup(group, found)).toBe(found);
        }
      }),
    );
  });

  it('never makes an interval wider by a second observer who says the same, in every group', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 5000 }), fc.constantFrom(0, 0.05, 0.2)), {
          minLength: 1,
          maxLength: 8,
        }),
        fc.constantFrom(0.5, 0.8, 0.95),
        (groups, level) => {
          const one = groups.map(([total, cv]) => [counted(total, cv)]);
          const two = groups.map(([total, cv]) => [counted(total, cv), counted(total, cv)]);
          one.forEach((units, index) => {
            const number = units[0]?.total ?? 0;
            const before = plainIntervalOf(number, units, tau2OfCell(one), level);
            const after = plainIntervalOf(number, two[index] ?? [], tau2OfCell(two), level);
            expect(after.low).toBeGreaterThanOrEqual(before.low - 1e-9);
            expect(after.high).toBeLessThanOrEqual(before.high + 1e-9);
          });
        },
      ),
    );
  });
});

describe('the weighted mean', () => {
  it('lies between the counts, nearer to the finer method, and is the mean of equal methods', () => {
    // Weights 1/ln(1.0025) and 1/ln(1.04): 400.5 and 25.5, so (400.5 · 100 + 25.5 · 110) / 426.
    const fine = numbersByRule([counted(100, 0.05), counted(110, 0.2)], null, 0)['weighted-mean'];
    expect(fine).toBeCloseTo(100.5986, 3);
    const alike = numbersByRule([counted(100), counted(120)], null, 0.04)['weighted-mean'];
    expect(alike).toBeCloseTo(110, 9);
  });
});
