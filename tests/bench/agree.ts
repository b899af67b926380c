/*
 * Time of every agreement statistic on 10³, 10⁵ and 10⁶ observations, its growth exponent (1 = in
 * proportion), and, where scipy has the same statistic and is installed, the ratio of times and the
 * difference of answers. Run by hand (the sizes as arguments; default all three):
 *   npx rolldown tests/bench/agree.ts --platform node --file dist/bench/agree.js && node dist/bench/agree.js 1000 100000
 *
 * The goal of ten times scipy's speed is not met: its sums run in vectorised compiled code, ours in one
 * thread that adds up exactly, so that no order changes a bit. On a machine with nothing else to do the
 * ratios were 0.9 to 4.7; answers agree to 1e-14. Where others use the machine times mean little.
 */
import { oneWayAnalysis } from '../../server/core/agree/analysis-of-variance.js';
import { limitsOfAgreement, ratioLimitsOfAgreement } from '../../server/core/agree/bland-altman.js';
import { brayCurtis } from '../../server/core/agree/bray-curtis.js';
import { cohenKappa } from '../../server/core/agree/cohen-kappa.js';
import { fitBinomialMixture } from '../../server/core/agree/detection/binomial-mixture.js';
import { fitHuggins } from '../../server/core/agree/detection/huggins.js';
import { fleissKappa } from '../../server/core/agree/fleiss-kappa.js';
import { intraclassCorrelations } from '../../server/core/agree/intraclass-correlation.js';
import {
  krippendorffAlpha,
  krippendorffAlphaInterval,
} from '../../server/core/agree/krippendorff-alpha.js';
import { linConcordance } from '../../server/core/agree/lin-concordance.js';
import { mandelConsistency } from '../../server/core/agree/mandel-consistency.js';
import { pabak } from '../../server/core/agree/pabak.js';
import { twoWayModel } from '../../server/core/agree/two-way-model.js';
import { percentWithinTolerance } from '../../server/core/agree/within-tolerance.js';
import { bootstrapReplicates } from '../../server/core/math/bootstrap.js';
import { seededRandom } from '../../server/core/math/seeded-random.js';
import { sampleVariance } from '../../server/core/math/sum.js';
import * as data from './agree-data.js';
import { referencePrograms, timesOfScipy } from './agree-python.js';

const given = process.argv.slice(2).map(Number);
const SIZES = given.length > 0 ? given : [1e3, 1e5, 1e6];

interface Work {
  readonly name: string;
  /** Prepares n observations outside the clock. */
  readonly prepare: (n: number) => () => number | null;
}

const plainMean = (drawn: readonly number[]): number => {
  let total = 0;
  for (const value of drawn) total += value;
  return total / drawn.length;
};

function ofCounts(name: string, work: (x: number[], y: number[]) => number | null): Work {
  return {
    name,
    prepare: (n) => {
      const { x, y } = data.twoCounts(n / 2);
      return () => work(x, y);
    },
  };
}

function alphaOf(metric: 'nominal' | 'ordinal' | 'interval' | 'ratio'): Work {
  return {
    name: `Krippendorff's alpha, ${metric}`,
    prepare: (n) => {
      const units = data.units(n, 4, 500);
      return () => krippendorffAlpha(units, metric);
    },
  };
}

const WORKS: readonly Work[] = [
  {
    name: 'intraclass correlation, six forms',
    prepare: (n) => {
      const rows = data.ratings(n, 4);
      return () => intraclassCorrelations(rows).agreementSingle.value;
    },
  },
  ofCounts("Lin's concordance", (x, y) => linConcordance(x, y).value),
  ofCounts('limits of agreement', (x, y) => limitsOfAgreement(x, y).upper.value),
  ofCounts('limits of ratios', (x, y) => ratioLimitsOfAgreement(x, y).upper.value),
  ofCounts('Bray-Curtis', brayCurtis),
  ofCounts('percent within tolerance', (x, y) => percentWithinTolerance(x, y).value),
  alphaOf('nominal'),
  alphaOf('ordinal'),
  alphaOf('interval'),
  alphaOf('ratio'),
  {
    name: "Krippendorff's alpha, interval by 99 draws",
    prepare: (n) => {
      const units = data.units(n, 4, 500);
      return () =>
        krippendorffAlphaInterval(units, 'interval', seededRandom(1), 0.95, 99)?.low ?? null;
    },
  },
  {
    name: "Cohen's kappa with table of 20 names",
    prepare: (n) => {
      const table = data.namesTable(n, 20);
      return () => cohenKappa(table).value;
    },
  },
  {
    name: 'prevalence- and bias-adjusted kappa',
    prepare: (n) => {
      const table = data.namesTable(n, 20);
      return () => pabak(table).value;
    },
  },
  {
    name: "Fleiss' kappa, 4 raters",
    prepare: (n) => {
      const counts = data.units(n, 4, 5).map((unit) => {
        const row = [0, 0, 0, 0, 0];
        for (const value of unit) row[value ?? 0] = (row[value ?? 0] ?? 0) + 1;
        return row;
      });
      return () => fleissKappa(counts).value;
    },
  },
  {
    name: 'two-way model, 10 observers',
    prepare: (n) => {
      const measured = data
        .ratings(n, 10)
        .flatMap((row, cell) =>
          row.map((value, observer) => ({ cell: `c${cell}`, observer: `o${observer}`, value })),
        );
      return () => twoWayModel(measured)?.residual.variance ?? null;
    },
  },
  {
    name: "Mandel's h and k, 10 laboratories",
    prepare: (n) => {
      const rows = data.ratings(n, 10);
      const columns = Array.from({ length: 10 }, (_, j) => rows.map((row) => row[j] ?? 0));
      return () => mandelConsistency(columns, 0.01)?.laboratories[0]?.h ?? null;
    },
  },
  {
    name: 'one-way analysis of variance',
    prepare: (n) => {
      const rows = data.ratings(n, 4);
      const columns = Array.from({ length: 4 }, (_, j) => rows.map((row) => row[j] ?? 0));
      return () => oneWayAnalysis(columns).between.f;
    },
  },
  {
    name: 'Huggins, 3 observers and size',
    prepare: (n) => {
      const flocks = data.flocks(n / 3);
      return () => {
        const fit = fitHuggins(flocks, { intercepts: 'each' });
        return fit.fitted ? fit.flocks.value : null;
      };
    },
  },
  {
    name: 'binomial mixture, Poisson',
    prepare: (n) => {
      const counts = data.visits(n);
      return () => fitBinomialMixture(counts).mean?.value ?? null;
    },
  },
  {
    name: 'bootstrap of a mean, 999 draws',
    prepare: (n) => {
      const { x } = data.twoCounts(n / 2);
      return () =>
        Math.sqrt(sampleVariance(bootstrapReplicates(x, plainMean, 999, seededRandom(1))));
    },
  },
];

/** Seconds of one run: the mean of as many as fit into a fifth of a second, after one to warm up. */
function timed(run: () => number | null): { seconds: number; value: number | null } {
  const first = performance.now();
  let value = run();
  if (performance.now() - first > 2000)
    return { seconds: (performance.now() - first) / 1000, value };
  const start = performance.now();
  let times = 0;
  while (times === 0 || performance.now() - start < 200) {
    value = run();
    times += 1;
  }
  return { seconds: (performance.now() - start) / times / 1000, value };
}

function milliseconds(seconds: number): string {
  return `${(1000 * seconds).toPrecision(3)} ms`.padStart(12);
}

const { scipy, lines } = referencePrograms();
console.log([`Node ${process.version}`, ...lines].join('\n'));
console.log(
  `\n${'statistic'.padEnd(44)}${SIZES.map((n) => String(n).padStart(12)).join('')}  growth`,
);
const found = new Map<string, { seconds: number; value: number | null }[]>();
for (const { name, prepare } of WORKS) {
  const runs = SIZES.map((n) => timed(prepare(n)));
  found.set(name, runs);
  const [before, after] = runs.slice(-2);
  const [small = 1, large = 1] = SIZES.slice(-2);
  const growth =
    before === undefined || after === undefined || runs.length < 2
      ? ''
      : (Math.log(after.seconds / before.seconds) / Math.log(large / small)).toFixed(2);
  console.log(
    `${name.padEnd(44)}${runs.map(({ seconds }) => milliseconds(seconds)).join('')}  ${growth}`,
  );
}

if (!scipy) {
  console.log('\nNothing to compare with: skipped.');
} else {
  console.log(
    '\nagainst scipy on the same data: ratio of times (over 1: ours is faster), difference of answers',
  );
  SIZES.forEach((n, size) => {
    const { x, y } = data.twoCounts(n / 2);
    for (const { name, seconds, value } of timesOfScipy({ x, y, ratings: data.ratings(n, 4) })) {
      const own = found.get(name)?.[size];
      if (own === undefined) continue;
      // The bootstrap draws other numbers: its answers agree only as chance allows.
      const difference = Math.abs((own.value ?? NaN) - value) / Math.abs(value);
      console.log(
        `${String(n).padStart(9)}  ${name.padEnd(34)} ${(seconds / own.seconds).toFixed(2).padStart(8)}  ${difference.toExponential(1)}${name.startsWith('bootstrap') ? ' (by chance)' : ''}`,
      );
    }
  });
}
