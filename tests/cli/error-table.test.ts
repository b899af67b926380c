import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';

import { folderForEachTest, run } from '../support/run-in-folder.js';
import { writeFolder } from '../../server/exchange/write-folder.js';
import { aCount, aProtocol, aTally } from '../core/a-count.js';

let folder: string;
const newFolder = folderForEachTest();

beforeEach(() => {
  folder = newFolder();
});

const SPECIES = ['Mallard', 'Redhead', 'Bufflehead', 'Mute Swan', 'Common Loon', 'American Coot'];

describe('error-table', () => {
  it('shows old and new side by side', async () => {
    // Six flocks in blocks: 100 by the one, 80 or 125 by the other, each a factor of 1.25 apart:
    // variance ln(1.25)² / 2 = 0.0249, so a coefficient of variation of √(e^0.0249 − 1) = 15.9 %.
    const snapshot = aCount([
      aTally(
        'o1',
        SPECIES.map((name) => [name, 100, { method: 'block' }]),
      ),
      aTally(
        'o2',
        SPECIES.map((name, k) => [name, k % 2 === 0 ? 80 : 125, { method: 'block' }]),
      ),
    ]);
    for (const { name, text } of writeFolder(snapshot, aProtocol())) {
      await writeFile(path.join(folder, name), text);
    }
    const { code, out, err } = await run('error-table', folder);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^block +all +20 % +16 % +\d+ % to \d+ % +6$/mu);
    expect(out).toMatch(/^guess +all +50 % +too few +0$/mu);
    const json = JSON.parse((await run('error-table', folder, '--format', 'json')).out) as {
      rows: { method: string; cv: number | null; protocol: number }[];
    };
    const block = json.rows.find(({ method }) => method === 'block');
    expect(block?.protocol).toBe(0.2);
    expect(block?.cv).toBeCloseTo(Math.sqrt(Math.exp(Math.log(1.25) ** 2 / 2) - 1), 6);
  });

  it('ends with 2 where a folder cannot be read', async () => {
    expect(await run('error-table', path.join(folder, 'none'))).toMatchObject({ code: 2, out: '' });
  });
});
