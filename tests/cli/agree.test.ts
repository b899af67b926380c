import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { folderForEachTest, run } from '../support/run-in-folder.js';
import { whisker } from '../../server/cli/summary/whisker.js';
import type { Agreement } from '../../server/core/model/agreement.js';
import { writeFolder } from '../../server/exchange/write-folder.js';
import { aCount, aProtocol, aTally } from '../core/a-count.js';

let folder: string;
const newFolder = folderForEachTest();

beforeEach(() => {
  folder = newFolder();
});

const SPECIES = ['Mallard', 'Redhead', 'Bufflehead', 'Mute Swan', 'Common Loon', 'American Coot'];

async function aFolder(): Promise<void> {
  const numbers = [100, 80, 31, 12, 4, 60];
  const snapshot = aCount([
    aTally(
      'o1',
      SPECIES.map((name, place) => [name, numbers[place] ?? 0, { method: 'block' }]),
    ),
    aTally(
      'o2',
      SPECIES.map((name, place) => [name, 2 * (numbers[place] ?? 0), { method: 'block' }]),
    ),
  ]);
  for (const { name, text } of writeFolder(snapshot, aProtocol())) {
    await writeFile(path.join(folder, name), text);
  }
}

describe('agree', () => {
  it('draws the ratio of two observers, and says what it means', async () => {
    await aFolder();
    const { code, out } = await run('agree', folder);
    expect(code).toBe(0);
    // The first counted half of all: the mean ratio is 0.50, and so are both limits.
    expect(out).toContain('0.50 (0.50–0.50)');
    expect(out).toContain('not who is right');
    expect(out.split('\n').every((line) => line.length <= 100)).toBe(true);
  });

  it('gives the same numbers as JSON and as a table', async () => {
    await aFolder();
    const { out } = await run('agree', folder, '--format', 'json');
    const agreement = JSON.parse(out) as Agreement;
    expect(agreement.byPair[0]?.ratios.meanRatio).toEqual({
      value: 0.5,
      low: 0.5,
      high: 0.5,
      n: 6,
    });
    expect(agreement.overall.withinTolerance.value).toBe(0);
    const { out: csv } = await run('agree', folder, '--format', 'csv');
    const rows = csv.trim().split('\n');
    expect(rows[0]).toBe('count,part,of,taxon,statistic,value,low,high,n');
    expect(rows).toContain(`${rows[1]?.split(',')[0] ?? ''},pair,o1 : o2,,meanRatio,0.5,0.5,0.5,6`);
    expect(rows.every((row) => row.split(',').length === 9)).toBe(true);
    expect(csv).not.toMatch(/NaN|undefined|Infinity/u);
  });

  it('is the agreement that reconcile gives', async () => {
    await aFolder();
    const { out } = await run('agree', folder, '--format', 'json');
    const { out: whole } = await run('reconcile', folder);
    expect(JSON.parse(out)).toEqual((JSON.parse(whole) as { agreement: Agreement }).agreement);
  });

  it('says what is wrong with a folder that it cannot read', async () => {
    const { code, err } = await run('agree', path.join(folder, 'nowhere'));
    expect(code).toBe(2);
    expect(err).not.toBe('');
  });
});

describe('whisker', () => {
  it('lies on a scale from a half to twice, with arrows for what lies beyond', () => {
    expect(whisker(1, 0.5, 2)).toBe('├───────────────────●───────────────────┤');
    expect(whisker(3, 0.4, 9)).toBe('←───────────────────────────────────────→');
    expect(whisker(null, null, null)).toBe('····················|····················');
    expect(whisker(1, null, null)).toBe('····················●····················');
  });
});
