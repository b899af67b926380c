/*
 * Source: Davies OL, Goldsmith PL (1972) Statistical Methods in Research and Production; R data
 * lme4::Penicillin (24 plates, 6 samples, a diameter each).
 * Expected: variances in closed form from the mean squares (balanced data: restricted maximum
 * likelihood gives the same); lme4 1.1.31 gives 0.716905, 3.731132 and 0.302415. The criterion of
 * restricted likelihood at its best, 330.8606, is printed in the documentation of lme4 (from memory).
 * Standard errors: closed form for balanced data, Var(MS) = 2 MS² / df.
 */
import { expect, test } from 'vitest';
import { twoWayModel } from '../../server/core/agree/two-way-model.js';
import { expectRelative } from '../support/expect-relative.js';
import { PENICILLIN } from './variance-components-penicillin.js';

const MEAN_SQUARES = { plate: 4.6038647343, sample: 89.8444444444, residual: 0.302415458937 };

test('plates and samples of penicillin', () => {
  const found = twoWayModel(
    PENICILLIN.diameters.flatMap((row, plate) =>
      row.map((value, sample) => ({ cell: `plate ${plate}`, observer: `sample ${sample}`, value })),
    ),
  );
  expectRelative(found?.betweenCells.variance ?? NaN, PENICILLIN.expected.plate, 1e-6);
  expectRelative(found?.betweenObservers.variance ?? NaN, PENICILLIN.expected.sample, 1e-6);
  expectRelative(found?.residual.variance ?? NaN, PENICILLIN.expected.residual, 1e-6);
  expect(-2 * (found?.restrictedLogLikelihood ?? NaN)).toBeCloseTo(330.8606, 4);
  const { plate, sample, residual } = MEAN_SQUARES;
  const ofResidual = (2 * residual ** 2) / 115;
  expectRelative(found?.residual.standardError ?? NaN, Math.sqrt(ofResidual), 1e-4);
  const ofPlate = ((2 * plate ** 2) / 23 + ofResidual) / 6 ** 2;
  expectRelative(found?.betweenCells.standardError ?? NaN, Math.sqrt(ofPlate), 1e-4);
  const ofSample = ((2 * sample ** 2) / 5 + ofResidual) / 24 ** 2;
  expectRelative(found?.betweenObservers.standardError ?? NaN, Math.sqrt(ofSample), 1e-4);
  expect(found?.observers.map(({ n }) => n)).toEqual([24, 24, 24, 24, 24, 24]);
});
