/*
 * Source: NIST Statistical Reference Datasets (StRD), analysis of variance; U.S. public domain.
 * Certified values: SiRstv, SmLs01 and SmLs04 from the certified tables; AtmWtAg seen in a stored copy
 * of the NIST file. SmLs02, 03 and 05 to 09 are from memory: their data follow the published generator
 * (Simon & Lesage 1989: offset + 0.2, 0.1, 0.3, 0.1, 0.3 … for treatments, and the same for
 * replicates, which gives SmLs01 and 04 exactly), and certified sums of squares are 0.08 × replicates
 * between and 0.09 × (replicates − 1) within, whatever the offset.
 *
 * Stated a set: the log relative error, the least number of correct digits of sums of squares, F, R²
 * and residual deviation (15 at most). Decimal data are not exact in a double: with an offset of a
 * million, three digits go before any arithmetic; of a million millions, data are off by up to
 * 6.1e-5. Exact rational arithmetic on the doubles reaches no more (SmLs04 10.1, SmLs05 9.9, SmLs07 4.0
 * and SmLs08 3.9 digits between), so nothing is lost here.
 * Found: SiRstv 13.1, AtmWtAg 10.2, SmLs01 to 03 15, SmLs04 10.1, 05 and 06 9.9, 07 4.0, 08 and 09 3.9.
 */
import { expect, it } from 'vitest';
import { oneWayAnalysis } from '../../server/core/agree/analysis-of-variance.js';

interface Certified {
  readonly betweenDf: number;
  readonly between: number;
  readonly withinDf: number;
  readonly within: number;
  readonly f: number;
  readonly rSquared: number;
  readonly deviation: number;
}

const SILICON = [
  [196.3052, 196.124, 196.189, 196.2569, 196.3403],
  [196.3042, 196.3825, 196.1669, 196.3257, 196.0422],
  [196.1303, 196.2005, 196.2889, 196.0343, 196.1811],
  [196.2795, 196.1748, 196.1494, 196.1485, 195.9885],
  [196.2119, 196.1051, 196.185, 196.0052, 196.209],
];
const SILVER = [
  [
    107.8681568, 107.8681465, 107.8681572, 107.8681785, 107.8681446, 107.8681903, 107.8681526,
    107.8681494, 107.8681616, 107.8681587, 107.8681519, 107.8681486, 107.8681419, 107.8681569,
    107.8681508, 107.8681672, 107.8681385, 107.8681518, 107.8681662, 107.8681424, 107.868136,
    107.8681333, 107.868161, 107.8681477,
  ],
  [
    107.8681079, 107.8681344, 107.8681513, 107.8681197, 107.8681604, 107.8681385, 107.8681642,
    107.8681365, 107.8681151, 107.8681082, 107.8681517, 107.8681448, 107.8681198, 107.8681482,
    107.8681334, 107.8681609, 107.8681101, 107.8681512, 107.8681469, 107.868136, 107.8681254,
    107.8681261, 107.868145, 107.8681368,
  ],
];

const effect = (index: number): number => (index === 0 ? 2 : index % 2 === 1 ? 1 : 3);

/** Tenths are added as whole numbers, so that data are the doubles nearest to the decimal ones. */
function simonLesage(replicates: number, offset: number): number[][] {
  return Array.from({ length: 9 }, (_, treatment) =>
    Array.from({ length: replicates }, (__, replicate) =>
      Number(`${offset}.${effect(treatment) + effect(replicate)}`),
    ),
  );
}

function certifiedSimonLesage(replicates: number): Certified {
  const [between, within] = [0.08 * replicates, 0.09 * (replicates - 1)];
  return {
    betweenDf: 8,
    between,
    withinDf: 9 * (replicates - 1),
    within,
    f: replicates,
    rSquared: between / (between + within),
    deviation: 0.1,
  };
}

const SETS: readonly {
  readonly name: string;
  readonly groups: readonly (readonly number[])[];
  readonly certified: Certified;
  readonly atLeast: number;
}[] = [
  {
    name: 'SiRstv',
    groups: SILICON,
    certified: {
      betweenDf: 4,
      between: 5.11462616e-2,
      withinDf: 20,
      within: 2.1663656e-1,
      f: 1.18046237440255,
      rSquared: 1.90999039051129e-1,
      deviation: 1.04076068334656e-1,
    },
    atLeast: 13,
  },
  {
    name: 'AtmWtAg',
    groups: SILVER,
    certified: {
      betweenDf: 1,
      between: 3.638341875e-9,
      withinDf: 46,
      within: 1.04951729166667e-8,
      f: 1.5946733567793e1,
      rSquared: 2.57426544538321e-1,
      deviation: 1.5104831444641e-5,
    },
    atLeast: 10,
  },
  ...[1, 1000000, 1000000000000].flatMap((offset, difficulty) =>
    [21, 201, 2001].map((replicates, size) => ({
      name: `SmLs0${3 * difficulty + size + 1}`,
      groups: simonLesage(replicates, offset),
      certified: certifiedSimonLesage(replicates),
      atLeast: [14.5, 9.8, 3.8][difficulty] ?? NaN,
    })),
  ),
];

/** Correct digits: −log₁₀ of the relative error, 15 at most. */
function digits(found: number | null, certified: number): number {
  const error = Math.abs((found ?? NaN) - certified) / Math.abs(certified);
  return error === 0 ? 15 : Math.min(15, -Math.log10(error));
}

it.each(SETS)('$name: at least $atLeast digits', ({ name, groups, certified, atLeast }) => {
  const { between, within, rSquared, residualDeviation } = oneWayAnalysis(groups);
  expect(between.degreesOfFreedom).toBe(certified.betweenDf);
  expect(within.degreesOfFreedom).toBe(certified.withinDf);
  const each = [
    digits(between.sumOfSquares, certified.between),
    digits(within.sumOfSquares, certified.within),
    digits(between.f, certified.f),
    digits(rSquared, certified.rSquared),
    digits(residualDeviation, certified.deviation),
  ];
  const least = Math.min(...each);
  expect(least, `${name}: ${each.map((digit) => digit.toFixed(1)).join(' ')}`).toBeGreaterThan(
    atLeast,
  );
  if (process.env['PRINT_DIGITS'] !== undefined) {
    console.log(`${name}: ${each.map((digit) => digit.toFixed(1)).join(' ')}`);
  }
});
