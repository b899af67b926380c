/*
 * How well double counting across sections is found on simulated counts, held against the truth and
 * against two simpler ways: greedy nearest match, and no links at all. Run by hand:
 *   npx rolldown tests/bench/double-counts.ts --platform node --file dist/bench/double-counts.js
 *   node dist/bench/double-counts.js [--counts 200] [--from 1] [--setting usual] [--no-totals] [--workers 2]
 * `--setting` takes a part of settings' names. Without totals only links are found, which is fast.
 * The generating model and its figures: server/core/simulate/model.ts.
 */
import { parseArgs } from 'node:util';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { lossesTable } from './double-count-losses-table.js';
import { runCount, type OneCount } from './double-count-run.js';
import { SETTINGS, type Setting } from './double-count-settings.js';
import { linksTable, reliabilityTable, timesTable, totalsTable } from './double-count-table.js';

/** Counts of one setting, by its number in `SETTINGS`, that one worker makes. */
interface Share {
  readonly setting: number;
  readonly seeds: readonly number[];
  readonly withTotals: boolean;
}

if (isMainThread) await main();
else parentPort?.postMessage(runShare(workerData as Share));

function runShare({ setting, seeds, withTotals }: Share): OneCount[] {
  const own = SETTINGS[setting];
  return own === undefined ? [] : seeds.map((seed) => runCount(own, seed, withTotals));
}

async function main(): Promise<void> {
  const { values } = parseArgs({
    options: {
      counts: { type: 'string', default: '200' },
      from: { type: 'string', default: '1' },
      setting: { type: 'string', default: '' },
      'no-totals': { type: 'boolean', default: false },
      workers: { type: 'string', default: '1' },
    },
  });
  const [counts, from] = [Number(values.counts), Number(values.from)];
  const workers = Number(values.workers);
  const withTotals = !values['no-totals'];
  const seeds = Array.from({ length: counts }, (_, index) => from + index);
  const settings = SETTINGS.filter(({ name }) => name.includes(values.setting));
  const single: [string, OneCount[]][] = [];
  for (const setting of settings) {
    single.push([setting.name, await countsOf(setting, seeds, withTotals, workers)]);
  }
  const names = [...new Set(settings.flatMap(({ together }) => together ?? []))];
  const pooled = names.flatMap((name): [string, OneCount[]][] => {
    const own = single.filter((_, index) => settings[index]?.together === name);
    return own.length > 1 ? [[name, own.flatMap(([, each]) => each)]] : [];
  });
  const measured = [...single, ...pooled];

  console.log(
    `${counts} counts of each setting, seeds ${from} to ${from + counts - 1}; 5, 10, 15 %`,
  );
  console.log(
    'of the flocks move. Goals: precision 95 % and recall 85 % with times and positions,',
  );
  console.log(
    '85 % and 60 % with section and time only; calibration error 5 % or less; total after',
  );
  console.log('proposals within 3 % on median.\n');
  console.log(linksTable(measured));
  console.log(`\n${reliabilityTable(measured)}`);
  console.log(`\n${lossesTable(measured)}`);
  if (withTotals) console.log(`\n${totalsTable(measured)}`);
  console.log(`\n${timesTable(measured)}`);
}

/** In order of seeds; with several workers each takes every so manieth. */
async function countsOf(
  setting: Setting,
  seeds: readonly number[],
  withTotals: boolean,
  workers: number,
): Promise<OneCount[]> {
  const shares = Array.from({ length: workers }, (_, own): Share => ({
    setting: SETTINGS.indexOf(setting),
    seeds: seeds.filter((_seed, index) => index % workers === own),
    withTotals,
  }));
  if (workers === 1) return shares.flatMap(runShare);
  const done = await Promise.all(shares.map(inWorker));
  return seeds.flatMap((_, index) => done[index % workers]?.[Math.floor(index / workers)] ?? []);
}

function inWorker(share: Share): Promise<OneCount[]> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: share });
    worker.once('message', resolve).once('error', reject);
  });
}
