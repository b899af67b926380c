import { expect, it } from 'vitest';
import { checkFolder } from '../../server/exchange/check-folder.js';
import { filesOf, smallFolder } from '../support/small-folder.js';

/** The small folder with a column of outlines; by row, the first tally has three rows. */
function withOutlines(outlines: readonly string[]) {
  const folder = smallFolder();
  const [header = '', ...rows] = folder.rows;
  return {
    ...folder,
    rows: [`${header},seen-area`, ...rows.map((row, index) => `${row},"${outlines[index] ?? ''}"`)],
  };
}

async function faultsOf(first: string, last = ''): Promise<string[]> {
  const checked = await checkFolder(filesOf(withOutlines([first, first, first, last, last])));
  if (checked.ok) return [];
  return checked.faults.map(({ row, column, code }) => `${row} | ${column} | ${code}`);
}

const HALF = 'POLYGON ((-79.02 44, -79.01 44, -79.01 44.02, -79.02 44.02, -79.02 44))';

it('reads an outline that all rows of a tally share, and none of a tally that has none', async () => {
  // Either case and any space, as well-known text has it (OGC 06-103r4, 7.2).
  for (const text of [HALF, HALF.toLowerCase().replaceAll(', ', ' ,\t')]) {
    const checked = await checkFolder(filesOf(withOutlines([text, text, text])));
    if (!checked.ok) throw new Error('The folder has no fault.');
    const [first, second] = checked.snapshot.tallies;
    expect(first?.seenArea).toEqual([
      [
        [-79.02, 44],
        [-79.01, 44],
        [-79.01, 44.02],
        [-79.02, 44.02],
        [-79.02, 44],
      ],
    ]);
    expect(second).not.toHaveProperty('seenArea');
  }
});

it.each([
  ['what is no well-known text', '[[-79.02, 44]]', 'not-wkt'],
  ['a number that is none', HALF.replace('44.02', '44,0.2'), 'not-wkt'],
  ['a line', 'LINESTRING (-79.02 44, -79.01 44)', 'not-wkt'],
  ['what is not closed', HALF.replace(', -79.02 44))', '))'), 'not-closed'],
  ['two corners', 'POLYGON ((-79.02 44, -79.01 44, -79.02 44))', 'too-few-positions'],
  [
    'what crosses itself',
    'POLYGON ((-79.02 44, -79.01 44.02, -79.01 44, -79.02 44.02, -79.02 44))',
    'self-crossing',
  ],
  ['what encloses nothing', 'POLYGON ((-79.02 44, -79.01 44, -79 44, -79.02 44))', 'no-area'],
  [
    'a hole',
    HALF.replace('))', '), (-79.018 44.01, -79.012 44.01, -79.012 44.015, -79.018 44.01))'),
    'has-holes',
  ],
  ['what lies beside the section', HALF.replaceAll('-79.0', '-79.5'), 'outside'],
  ['a place that is none', HALF.replace('-79.01 44', '-79.01 144'), 'bad-position'],
  [
    'more corners than anybody draws',
    `POLYGON ((${Array.from({ length: 501 }, (_, at) => `${-79 - at / 1e5} 44`).join(', ')}))`,
    'too-many-positions',
  ],
])('refuses %s, once for the tally', async (_what, outline, code) => {
  expect(await faultsOf(outline)).toEqual([`2 | seen-area | ${code}`]);
});

it('names the row that says otherwise', async () => {
  expect(await faultsOf('', HALF)).toEqual([]);
  const checked = await checkFolder(filesOf(withOutlines([HALF, HALF, ''])));
  expect(checked.ok ? [] : checked.faults.map(({ row, code }) => [row, code])).toEqual([
    [4, 'rows-disagree'],
  ]);
});
