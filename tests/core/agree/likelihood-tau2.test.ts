import fc from 'fast-check';
import { expect, it } from 'vitest';
import { likelihoodTau2, tau2Interval } from '../../../server/core/agree/likelihood-tau2.js';
import { pauleMandelTau2 } from '../../../server/core/consensus/paule-mandel.js';
import { expectRelative } from '../../support/expect-relative.js';

const studies = fc.array(
  fc.record({
    value: fc.double({ min: -3, max: 12, noNaN: true }),
    variance: fc.double({ min: 1e-4, max: 2, noNaN: true }),
  }),
  { minLength: 2, maxLength: 8 },
);
const parts = (rows: readonly { value: number; variance: number }[]): [number[], number[]] => [
  rows.map(({ value }) => value),
  rows.map(({ variance }) => variance),
];

/** −2 ln likelihood as in the textbook, weights and all. */
function deviance(
  values: number[],
  variances: number[],
  tau2: number,
  restricted: boolean,
): number {
  const weights = variances.map((variance) => 1 / (variance + tau2));
  const total = weights.reduce((a, b) => a + b, 0);
  const mean = weights.reduce((a, w, i) => a + w * (values[i] ?? NaN), 0) / total;
  return (
    weights.reduce((a, w, i) => a - Math.log(w) + w * ((values[i] ?? NaN) - mean) ** 2, 0) +
    (restricted ? Math.log(total) : 0)
  );
}

it('no other τ² is likelier', () => {
  const others = fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 20 });
  fc.assert(
    fc.property(studies, others, fc.boolean(), (rows, tau2s, restricted) => {
      const [values, variances] = parts(rows);
      const found = likelihoodTau2(values, variances, restricted ? 'restricted' : 'full');
      const best = deviance(values, variances, found, restricted);
      for (const tau2 of [...tau2s, found * 0.99, found * 1.01, found + 1e-4]) {
        expect(deviance(values, variances, tau2, restricted)).toBeGreaterThanOrEqual(best - 1e-7);
      }
    }),
  );
});

it('equals its closed forms: equal variances, and two values', () => {
  fc.assert(
    fc.property(studies, fc.double({ min: 0.01, max: 2, noNaN: true }), (rows, variance) => {
      const [values] = parts(rows);
      const mean = values.reduce((a, b) => a + b, 0) / values.length;
      const squares = values.reduce((a, value) => a + (value - mean) ** 2, 0);
      const same = values.map(() => variance);
      const closed = (divisor: number): number => Math.max(0, squares / divisor - variance);
      const near = (found: number, expected: number): void => {
        expect(Math.abs(found - expected)).toBeLessThan(1e-6 * (1 + expected));
      };
      near(likelihoodTau2(values, same, 'restricted'), closed(values.length - 1));
      near(likelihoodTau2(values, same, 'full'), closed(values.length));
      const [two, variances] = parts(rows.slice(0, 2));
      near(likelihoodTau2(two, variances, 'restricted'), pauleMandelTau2(two, variances));
    }),
  );
});

it('its interval holds the moment estimate, whatever the unit', () => {
  fc.assert(
    fc.property(studies, fc.constantFrom(1e-6, 1, 1e6), (rows, unit) => {
      const [values, variances] = parts(rows);
      const scaled = [values.map((v) => v * unit), variances.map((v) => v * unit ** 2)] as const;
      const found = tau2Interval(...scaled);
      const moment = pauleMandelTau2(...scaled);
      // Q of Paule and Mandel is k − 1, which lies between the quantiles.
      expect(found.low).toBeLessThanOrEqual(moment * (1 + 1e-9));
      expect(found.high).toBeGreaterThanOrEqual(moment * (1 - 1e-9));
      const plain = tau2Interval(values, variances);
      expectRelative(found.high, plain.high * unit ** 2, 1e-6);
    }),
  );
});
