import { readFile, readdir, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { folderForEachTest, run } from '../support/run-in-folder.js';
import type { Score } from '../../server/core/score/score.js';

let folder: string;
const newFolder = folderForEachTest();

beforeEach(() => {
  folder = newFolder();
});

const small = ['--sections', '2', '--observers', '2', '--birds', '400'];

describe('simulate', () => {
  it('writes a count folder that has nothing to mend, with its truth', async () => {
    const out = path.join(folder, 'count');
    const { code, out: said } = await run('simulate', '--seed', '7', ...small, '--out', out);
    expect(code).toBe(0);
    expect(said).toMatch(/400 birds on 2 sections, 4 tallies, \d+ lines/u);
    expect((await readdir(out)).sort()).toEqual([
      'count.json',
      'links.csv',
      'places.geojson',
      'tallies.csv',
      'truth.json',
    ]);
    expect(await run('check', out)).toMatchObject({ code: 0 });
  });

  it('writes the same bytes for the same seed', async () => {
    const [one, other] = [path.join(folder, 'one'), path.join(folder, 'other')];
    await run('simulate', '--seed', '7', ...small, '--out', one);
    await run('simulate', '--seed', '7', ...small, '--out', other);
    for (const name of await readdir(one)) {
      const [first, second] = await Promise.all(
        [one, other].map((each) => readFile(path.join(each, name), 'utf8')),
      );
      expect(first).toBe(second);
    }
  });

  it('never writes over what is there', async () => {
    await writeFile(path.join(folder, 'count.json'), '{}');
    const { code, err } = await run('simulate', '--seed', '7', '--out', folder);
    expect(code).toBe(2);
    expect(err).toMatch(/is not empty\. Give a new folder/u);
    expect(await readdir(folder)).toEqual(['count.json']);
  });

  it('says every wrong option at once, by the name it was given by', async () => {
    const out = path.join(folder, 'count');
    const { code, err } = await run(
      ...['simulate', '--seed', 'x', '--per-section', '0', '--out', out],
    );
    expect(code).toBe(1);
    expect(err.trimEnd().split('\n')).toEqual([
      '--seed must be a whole number from 0 to 4294967295, not NaN.',
      '--per-section must be a whole number from 1 to 10, not 0.',
    ]);
  });
});

describe('score', () => {
  it('holds a simulated count against its truth, as text and as JSON', async () => {
    const out = path.join(folder, 'count');
    await run('simulate', '--seed', '7', ...small, '--past-the-line', '1', '--out', out);
    const text = await run('score', out);
    expect(text).toMatchObject({ code: 0, err: '' });
    expect(text.out).toMatch(/^simulated-7 against its truth\n/u);
    expect(text.out).toMatch(/misidentified +20\+/u);
    const json = await run('score', out, '--format', 'json');
    const score = JSON.parse(json.out) as Score;
    expect(score.compiled.truth).toBe(400);
    expect(score.coverage.length).toBeGreaterThan(0);
    // No more than the proposals say is taken off.
    const { raw, afterProposals } = score.totals ?? { raw: 0, afterProposals: 0 };
    const proposed = score.links.birdsRight + score.links.birdsWrong;
    expect(raw - afterProposals).toBeGreaterThan(0);
    expect(raw - afterProposals).toBeLessThanOrEqual(proposed);
    expect(text.out).toMatch(/^against birds that somebody recorded +\d/mu);
    expect(text.out).toMatch(/^links that say +on average +are right +links$/mu);
  });

  it('scores the made-up lake of the scenarios, whose three double counts are found', async () => {
    const lake = new URL('../../scenarios/lake-emberlow', import.meta.url).pathname;
    const { code, out } = await run('score', lake, '--format', 'json');
    const score = JSON.parse(out) as Score;
    expect(code).toBe(0);
    expect(score.compiled.truth).toBe(11_970);
    expect(score.links).toMatchObject({ trueLinks: 3, proposed: 3, proposedRight: 3 });
    expect(score.planted).toBeNull();
  });

  it('needs the truth, and one without faults', async () => {
    const out = path.join(folder, 'count');
    await run('simulate', '--seed', '7', ...small, '--out', out);
    await writeFile(path.join(out, 'truth.json'), '{"total": {}}');
    const { code, err } = await run('score', out);
    expect(code).toBe(1);
    expect(err).toMatch(/truth\.json, key truth\.sections: nothing is given/u);
    await rm(path.join(out, 'truth.json'));
    expect(await run('score', out)).toMatchObject({ code: 2 });
  });
});
