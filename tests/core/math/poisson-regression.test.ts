import { describe, expect, it } from 'vitest';
import { poissonRegression } from '../../../server/core/math/poisson-regression.js';
import { expectRelative } from '../../support/expect-relative.js';

describe('poissonRegression', () => {
  it('has the example of a randomised trial (Dobson 1990, as in the help of R stats::glm)', () => {
    // Counts by outcome (3) and treatment (3). Printed in the help's output, from memory: coefficients
    // 3.045, −0.4543, −0.2930, 0, 0; deviance 5.129 on 4 degrees of freedom; AIC 56.76.
    const counts = [18, 17, 15, 20, 10, 20, 25, 13, 12];
    const design = counts.map((_, i) => [
      1,
      Number(i % 3 === 1),
      Number(i % 3 === 2),
      Number(Math.floor(i / 3) === 1),
      Number(Math.floor(i / 3) === 2),
    ]);
    const found = poissonRegression(design, counts);
    if (!found.fitted) throw new Error(found.reason);
    [3.045, -0.4543, -0.293, 0, 0].forEach((value, place) => {
      expect(Math.abs((found.coefficients[place] ?? NaN) - value)).toBeLessThan(5e-4);
    });
    expect(found.deviance).toBeCloseTo(5.129, 3);
    expect(2 * (5 - found.logLikelihood)).toBeCloseTo(56.76, 2);
    expect(Math.sqrt(found.covariance[0] ?? NaN)).toBeCloseTo(0.1709, 4);
  });

  it('takes a single column as a mean', () => {
    const found = poissonRegression([[1], [1], [1]], [0, 4, 5]);
    if (!found.fitted) throw new Error(found.reason);
    expectRelative(found.coefficients[0] ?? NaN, Math.log(3), 1e-12);
    expectRelative(found.covariance[0] ?? NaN, 1 / 9, 1e-9);
  });

  it('says where columns say the same and where there is no end', () => {
    expect(
      poissonRegression(
        [
          [1, 1],
          [1, 1],
        ],
        [2, 3],
      ),
    ).toEqual({
      fitted: false,
      reason: 'not-told-apart',
    });
    expect(
      poissonRegression(
        [
          [1, 0],
          [1, 0],
          [1, 1],
        ],
        [2, 3, 0],
      ),
    ).toEqual({
      fitted: false,
      reason: 'at-the-edge',
    });
    expect(() => poissonRegression([[1, 0]], [2])).toThrow('at least as many as columns');
    expect(() => poissonRegression([[1]], [0.5])).toThrow('whole count');
  });
});
