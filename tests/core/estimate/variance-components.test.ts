import { describe, expect, it } from 'vitest';
import { varianceComponents } from '../../../server/core/estimate/variance-components.js';
import { inverseOfPositiveDefinite } from '../../../server/core/math/cholesky.js';
import { PENICILLIN } from '../../published/variance-components-penicillin.js';
import { expectRelative } from '../../support/expect-relative.js';

describe('varianceComponents', () => {
  const values = PENICILLIN.diameters.flat();
  const plates = PENICILLIN.diameters.flatMap((row, plate) => row.map(() => `plate ${plate}`));
  const samples = PENICILLIN.diameters.flatMap((row) => row.map((_, sample) => `sample ${sample}`));
  const alone = { weights: values.map(() => 1) };
  const { expected } = PENICILLIN;

  it('agrees with the two crossed random effects of the penicillin data', () => {
    const whole = values.map(() => '');
    const { variances, inseparable } = varianceComponents(values, whole, [
      { levels: plates },
      { levels: samples },
      alone,
    ]);
    expectRelative(variances[0] ?? NaN, expected.plate, 1e-6);
    expectRelative(variances[1] ?? NaN, expected.sample, 1e-6);
    expectRelative(variances[2] ?? NaN, expected.residual, 1e-6);
    expect(inseparable).toEqual([false, false, false]);
  });

  it('gives the same for samples and residual where plates are fixed: balanced data do not mind', () => {
    const { variances, covariances } = varianceComponents(values, plates, [
      { levels: samples },
      alone,
    ]);
    expectRelative(variances[0] ?? NaN, expected.sample, 1e-6);
    expectRelative(variances[1] ?? NaN, expected.residual, 1e-6);
    // Closed form for balanced data: Var(residual) = 2 residual² / 115 degrees of freedom.
    expectRelative(covariances?.[1]?.[1] ?? NaN, (2 * expected.residual ** 2) / 115, 1e-6);
  });

  it('takes half the mean squared difference of pairs as the variance of one', () => {
    // Differences 1, 2 and 3: (1 + 4 + 9) / 3 / 2.
    const { variances } = varianceComponents(
      [5, 6, 1, 3, 10, 7],
      ['a', 'a', 'b', 'b', 'c', 'c'],
      [{ weights: [1, 1, 1, 1, 1, 1] }],
    );
    expectRelative(variances[0] ?? NaN, 14 / 6, 1e-9);
  });

  it('solves for classes that meet in pairs of each kind', () => {
    // Pairs of two finer counts differ by 1 (variance 1/2 each), pairs of two coarser ones by 3 (9/2).
    const { variances } = varianceComponents(
      [0, 1, 0, -1, 0, 3, 0, -3],
      ['a', 'a', 'b', 'b', 'c', 'c', 'd', 'd'],
      [{ weights: [1, 1, 1, 1, 0, 0, 0, 0] }, { weights: [0, 0, 0, 0, 1, 1, 1, 1] }],
    );
    expectRelative(variances[0] ?? NaN, 0.5, 1e-6);
    expectRelative(variances[1] ?? NaN, 4.5, 1e-6);
  });

  it('says which sources it cannot tell apart: two classes that only meet each other', () => {
    const { inseparable, covariances } = varianceComponents(
      [0, 1, 0, 3, 0, 2],
      ['a', 'a', 'b', 'b', 'c', 'c'],
      [{ weights: [1, 0, 1, 0, 1, 0] }, { weights: [0, 1, 0, 1, 0, 1] }],
    );
    expect(inseparable).toEqual([true, true]);
    expect(covariances).toBeNull();
  });

  it('finds no variance where values of a block are all the same, and never one below zero', () => {
    expect(
      varianceComponents([4, 4, 7, 7], ['a', 'a', 'b', 'b'], [{ weights: [1, 1, 1, 1] }]),
    ).toMatchObject({
      variances: [0],
    });
    // Observers differ less than their errors would let them: classical estimates would be negative.
    const { variances } = varianceComponents(
      [0, 2, 2, 0, 0, 2, 2, 0],
      ['a', 'a', 'b', 'b', 'c', 'c', 'd', 'd'],
      [{ levels: ['p', 'q', 'p', 'q', 'p', 'q', 'p', 'q'] }, { weights: [1, 1, 1, 1, 1, 1, 1, 1] }],
    );
    expect(variances[0]).toBe(0);
    expectRelative(variances[1] ?? NaN, 2, 1e-6);
  });

  it('refuses blocks of one value', () => {
    expect(() => varianceComponents([1, 2], ['a', 'b'], [{ weights: [1, 1] }])).toThrow(RangeError);
  });
});

describe('inverseOfPositiveDefinite', () => {
  it('inverts a Hilbert matrix of order 3 (its inverse is known: 9 −36 30, −36 192 −180, 30 −180 180)', () => {
    const hilbert = Float64Array.from(
      { length: 9 },
      (_, k) => 1 / (Math.floor(k / 3) + (k % 3) + 1),
    );
    const inverse = inverseOfPositiveDefinite(hilbert, 3);
    [9, -36, 30, -36, 192, -180, 30, -180, 180].forEach((value, k) => {
      expect(inverse?.[k]).toBeCloseTo(value, 9);
    });
  });

  it('has none for a matrix that is not positive definite', () => {
    expect(inverseOfPositiveDefinite(Float64Array.of(1, 2, 2, 1), 2)).toBeNull();
  });
});
