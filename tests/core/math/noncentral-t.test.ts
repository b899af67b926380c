import { describe, expect, it } from 'vitest';
import { noncentralTCdf, noncentralTQuantile } from '../../../server/core/math/noncentral-t.js';
import { studentTCdf } from '../../../server/core/math/student-t.js';
import { expectRelative } from '../../support/expect-relative.js';

describe('noncentral t', () => {
  // Computed with mpmath 1.3.0 by quadrature at 30 digits; scipy 1.17.1 nct.cdf agrees.
  it.each([
    [3, 4, 2, 0.710539476289959],
    [10, 16, 8.1, 0.804578192366068],
    [5, 16, 8.1, 0.00937472498695295],
    [25, 99, 19.6, 0.996208734519411],
    [90, 1999, 87.65, 0.910797538762023],
    [-1, 4, 2, 0.00257323217484429],
    [0.5, 3, 0, 0.674276017575925],
  ])('share below %d with %d degrees of freedom and noncentrality %d', (t, df, delta, expected) => {
    expectRelative(noncentralTCdf(t, df, delta), expected, 1e-10);
  });

  it('without noncentrality is Student t', () => {
    for (const df of [1, 2, 7, 50]) {
      for (const t of [-4, -0.3, 1, 6]) {
        expectRelative(noncentralTCdf(t, df, 0), studentTCdf(t, df), 1e-10);
      }
    }
  });

  it('has quantiles that undo it', () => {
    for (const p of [0.025, 0.5, 0.975]) {
      expectRelative(noncentralTCdf(noncentralTQuantile(p, 9, 6.2), 9, 6.2), p, 1e-10);
    }
    expect(() => noncentralTQuantile(1, 5, 0)).toThrow('over 0 and under 1');
    expect(() => noncentralTCdf(1, 0, 0)).toThrow('at least 1');
  });
});
