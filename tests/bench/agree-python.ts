import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** The same statistics by scipy and numpy, each timed on data read from a file. */
const PROGRAM = `
import json, sys, time
import numpy as np
from scipy import stats
from scipy.spatial import distance
data = json.load(open(sys.argv[1]))
x, y = np.array(data['x'], float), np.array(data['y'], float)
groups = [np.array(column, float) for column in zip(*data['ratings'])]
def timed(name, work):
    work()
    start = time.perf_counter()
    times = 0
    while times == 0 or time.perf_counter() - start < 0.2:
        value = work()
        times += 1
    print(json.dumps({'name': name, 'seconds': (time.perf_counter() - start) / times, 'value': float(value)}))
timed('Bray-Curtis', lambda: distance.braycurtis(x, y))
timed('one-way analysis of variance', lambda: stats.f_oneway(*groups)[0])
timed('bootstrap of a mean, 999 draws', lambda: stats.bootstrap((x,), np.mean, n_resamples=999, method='percentile', batch=10).standard_error)
`;

export interface PythonTime {
  readonly name: string;
  readonly seconds: number;
  readonly value: number;
}

/** Which reference programs are installed here, in a sentence each. */
export function referencePrograms(): { readonly scipy: boolean; readonly lines: string[] } {
  const version = (command: string, args: string[]): string | null => {
    const { status, stdout } = spawnSync(command, args, { encoding: 'utf8' });
    return status === 0 ? stdout.trim() : null;
  };
  const scipy = version('python3', ['-c', 'import scipy; print(scipy.__version__)']);
  const statsmodels = version('python3', [
    '-c',
    'import statsmodels; print(statsmodels.__version__)',
  ]);
  const r = version('Rscript', ['-e', 'cat(R.version.string)']);
  const said = (name: string, found: string | null): string =>
    found === null ? `${name} is not installed here: not compared.` : `${name} ${found}`;
  return {
    scipy: scipy !== null,
    lines: [said('scipy', scipy), said('statsmodels', statsmodels), said('R', r)],
  };
}

/** @returns scipy's times and answers on the same data */
export function timesOfScipy(data: object): PythonTime[] {
  const folder = mkdtempSync(path.join(tmpdir(), 'countersign-bench-'));
  try {
    const file = path.join(folder, 'data.json');
    writeFileSync(file, JSON.stringify(data));
    const { stdout, stderr } = spawnSync('python3', ['-c', PROGRAM, file], { encoding: 'utf8' });
    if (stdout === '') throw new Error(`scipy could not be measured: ${stderr}`);
    return stdout
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as PythonTime);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
