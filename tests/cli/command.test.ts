import { readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { parse } from 'csv-parse/sync';
import { beforeEach, describe, expect, it } from 'vitest';

import { folderForEachTest, run } from '../support/run-in-folder.js';
import type { Result } from '../../server/core/model/result.js';
import { filesOf, setField, smallFolder, type SmallFolder } from '../support/small-folder.js';

let folder: string;
const newFolder = folderForEachTest();

beforeEach(() => {
  folder = newFolder();
});

async function store(count: SmallFolder): Promise<void> {
  for (const { name, content } of filesOf(count)) await writeFile(path.join(folder, name), content);
}

describe('check', () => {
  it('ends with 0 and says how much was checked', async () => {
    await store(smallFolder());
    expect(await run('check', folder)).toEqual({
      code: 0,
      out: 'Nothing to mend: 2 tallies, 5 lines, 2 sections.\n',
      err: '',
    });
  });

  it('ends with 1 and lists every fault, a line each', async () => {
    const count = smallFolder();
    setField(count, 2, 'taxon', 'Aythya marilla');
    setField(count, 4, 'number', '-12');
    await store(count);
    const { code, out } = await run('check', folder);
    expect(code).toBe(1);
    expect(out.trimEnd().split('\n')).toEqual([
      expect.stringMatching(
        /^tallies\.csv, row 2, column taxon: .* Did you mean Aythya marila\?$/u,
      ),
      expect.stringMatching(/^tallies\.csv, row 4, column number: "-12" is negative\./u),
      '2 things need mending.',
    ]);
  });

  it.each([
    ['is not there', 'nowhere', /There is no folder .*nowhere\. Check the path\./u],
    ['is a file', 'count.json', /is a file\. Give the count folder/u],
    ['is no count folder', '.', /is not a count folder: it has none of count\.json/u],
  ])('ends with 2 where the folder %s', async (_, name, message) => {
    if (name === 'count.json') await store(smallFolder());
    const { code, out } = await run('check', path.join(folder, name));
    expect(code).toBe(2);
    expect(out).toMatch(message);
  });
});

describe('reconcile', () => {
  it('writes the result as one line of JSON, keys in the order of the format, the same bytes again', async () => {
    await store(smallFolder());
    const first = await run('reconcile', folder);
    expect(first).toMatchObject({ code: 0, err: '' });
    expect(first.out.endsWith('}\n')).toBe(true);
    expect(first.out.trimEnd()).not.toContain('\n');
    const keys = Object.keys(JSON.parse(first.out) as Result);
    // The order in formats: count, reported, protocol, cells, disagreements, links, agreement,
    // compiled, ledger, faults; allocation and rulings are ours.
    expect(keys).toEqual([
      'count',
      'reported',
      'protocol',
      'cells',
      'disagreements',
      'links',
      'agreement',
      'compiled',
      'allocation',
      'ledger',
      'rulings',
      'faults',
    ]);
    expect((await run('reconcile', folder)).out).toBe(first.out);
  });

  it('gives the same bytes whatever the order of the rows', async () => {
    const count = smallFolder();
    await store(count);
    const before = await run('reconcile', folder);
    const [header = '', ...rows] = count.rows;
    count.rows = [header, ...rows.reverse()];
    await store(count);
    expect((await run('reconcile', folder)).out).toBe(before.out);
  });

  it('refuses a faulty folder as check does, and writes nothing', async () => {
    const count = smallFolder();
    setField(count, 2, 'method', 'blok');
    await store(count);
    const out = path.join(folder, 'result.json');
    const { code, err } = await run('reconcile', folder, '--out', out);
    expect(code).toBe(1);
    expect(err).toContain('row 2, column method: "blok" is not a counting method');
    expect(await readdir(folder)).not.toContain('result.json');
  });

  it('writes --out whole, in place of what was there, and leaves nothing beside it', async () => {
    await store(smallFolder());
    const out = path.join(folder, 'result.json');
    await writeFile(out, 'old');
    const { code, out: said } = await run('reconcile', folder, '--out', out);
    expect([code, said]).toEqual([0, '']);
    expect(await readFile(out, 'utf8')).toBe((await run('reconcile', folder)).out);
    expect((await readdir(folder)).sort()).toEqual([
      'count.json',
      'places.geojson',
      'result.json',
      'tallies.csv',
    ]);
  });

  it('says why --out could not be written', async () => {
    await store(smallFolder());
    const out = path.join(folder, 'no', 'such', 'place.json');
    const { code, err } = await run('reconcile', folder, '--out', out);
    expect(code).toBe(2);
    expect(err).toContain('place.json could not be written');
  });

  it('writes the compiled lines as CSV', async () => {
    await store(smallFolder());
    const { compiled } = JSON.parse((await run('reconcile', folder)).out) as Result;
    const { out } = await run('reconcile', folder, '--format', 'csv');
    const rows: Record<string, string>[] = parse(out, { columns: true });
    expect(rows.map(({ taxon, number, at_most: atMost }) => [taxon, number, atMost])).toEqual(
      compiled.map((line) => [line.taxon, String(line.number), String(line.atMost)]),
    );
  });

  it('applies rulings from a file', async () => {
    await store(smallFolder());
    const { disagreements } = JSON.parse((await run('reconcile', folder)).out) as Result;
    const spread = disagreements.find(({ kind }) => kind === 'seen-by-one');
    const proposal = spread?.proposals.at(-1);
    const file = path.join(folder, 'rulings.json');
    const ruling = {
      id: 'r1',
      by: 'o2',
      reason: 'They were decoys.',
      ...proposal,
      text: undefined,
    };
    await writeFile(file, JSON.stringify([ruling]));
    const { code, out, err } = await run('reconcile', folder, '--rulings', file);
    expect([code, err]).toEqual([0, '']);
    expect((JSON.parse(out) as Result).rulings).toEqual([
      expect.objectContaining({ id: 'r1', state: 'applied' }),
    ]);
  });

  it('refuses faulty rulings', async () => {
    await store(smallFolder());
    const file = path.join(folder, 'rulings.json');
    await writeFile(file, '[{ "id": "r1" }]');
    const { code, out, err } = await run('reconcile', folder, '--rulings', file);
    expect([code, out]).toEqual([1, '']);
    expect(err).toContain('key rulings[0].reason: nothing is given');
    const missing = await run('reconcile', folder, '--rulings', `${file}.not`);
    expect(missing.code).toBe(2);
    expect(missing.err).toContain('The rulings could not be read from');
  });
});

describe('reconcile --format text', () => {
  it('tells the whole count within 100 columns and without colour', async () => {
    await store(smallFolder());
    const { code, out } = await run('reconcile', folder, '--format', 'text');
    expect(code).toBe(0);
    const lines = out.split('\n');
    expect(lines[0]).toBe('Alder Pond');
    expect(lines[1]).toBe('Alder Pond, 2027-01-16, window w1 08:00–11:00 (America/Toronto)');
    expect(lines[2]).toBe('2 tallies with 5 lines by 2 observers in 2 sections');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(100);
    expect(out).not.toContain('\u001b');
  });

  it('has the numbers of the JSON result, grouped in thousands, and their total', async () => {
    const count = smallFolder();
    setField(count, 2, 'number', '12300');
    setField(count, 5, 'number', '12300');
    await store(count);
    const { compiled } = JSON.parse((await run('reconcile', folder)).out) as Result;
    const { out } = await run('reconcile', folder, '--format', 'text');
    const rows = out.split('\n');
    expect(rows.find((row) => row.startsWith('Greater Scaup '))).toMatch(
      /^Greater Scaup +Aythya marila +12,300 /u,
    );
    const total = compiled.reduce((sum, line) => sum + line.number, 0);
    const grouped = new Intl.NumberFormat('en').format(total);
    expect(rows.find((row) => row.startsWith('Total'))).toMatch(
      new RegExp(`^Total +${grouped} `, 'u'),
    );
  });

  it('says the pairing balance of two observers as a sentence', async () => {
    await store(smallFolder());
    const { out } = await run('reconcile', folder, '--format', 'text');
    const { cells } = JSON.parse((await run('reconcile', folder)).out) as Result;
    const pairing = cells.find(({ layer }) => layer === 'using')?.pairings[0];
    const words = out.replaceAll(/\s+/gu, ' ');
    expect(words).toContain(
      `${String(pairing?.agreed)} agreed, ${String(pairing?.compatible)} agree at a coarser level, ${String(pairing?.differently)} identified differently`,
    );
    expect(words).toContain('Not counted in window w1: South Bay.');
  });
});

describe('other calls', () => {
  it.each([[['frobnicate']], [['reconcile']], [['reconcile', '.', '--format', 'pdf']]])(
    'ends %j with 2 and says what is wrong',
    async (args) => {
      const { code, err } = await run(...args);
      expect(code).toBe(2);
      expect(err).toMatch(/^error: /u);
    },
  );

  it('shows its calls', async () => {
    const { code, out } = await run('--help');
    expect(code).toBe(0);
    for (const call of ['reconcile', 'check', 'serve', 'migrate']) expect(out).toContain(call);
  });
});
