import { expect, it } from 'vitest';
import { checkFolder } from '../../server/exchange/check-folder.js';
import { filesOf, smallFolder, type SmallFolder } from '../support/small-folder.js';

/** The small folder with columns of conditions; values by row, the first tally's rows first. */
function withColumns(columns: string, values: readonly string[]): SmallFolder {
  const folder = smallFolder();
  const [header = '', ...rows] = folder.rows;
  return {
    ...folder,
    rows: [`${header},${columns}`, ...rows.map((row, index) => `${row},${values[index] ?? ''}`)],
  };
}

async function faultsOf(folder: SmallFolder): Promise<string[]> {
  const checked = await checkFolder(filesOf(folder));
  if (checked.ok) return [];
  return checked.faults.map(({ row, column, code, nearest }) =>
    [row, column, code, nearest].join(' | '),
  );
}

const COLUMNS = 'visibility,beaufort,sea-state,ice-cover,glare,disturbance,optics';

it('reads conditions that all rows of a tally say alike, and none of one that says nothing', async () => {
  const noted = 'good,3,2,"0,5",some,a dog,telescope';
  const folder = withColumns(COLUMNS, [noted, noted, noted, ',,,,,,', ',,,,,,']);
  const checked = await checkFolder(filesOf(folder));
  if (!checked.ok) throw new Error('The folder has no fault.');
  const [first, second] = checked.snapshot.tallies;
  expect(first?.conditions).toEqual({
    visibility: 'good',
    beaufort: 3,
    seaState: 2,
    iceCover: 0.5,
    glare: 'some',
    disturbance: 'a dog',
    optics: 'telescope',
  });
  expect(second).not.toHaveProperty('conditions');
});

it('lists every planted fault at once', async () => {
  const t1 = 'goood,13,2.5,1.2,stron,,';
  const faults = await faultsOf(withColumns(COLUMNS, [t1, t1, t1, ',3,,,,,', ',4,,,,,']));
  expect(faults.toSorted()).toEqual(
    [
      '2 | visibility | unknown-word | good',
      '2 | beaufort | out-of-range | ',
      '2 | sea-state | fraction | ',
      '2 | ice-cover | out-of-range | ',
      '2 | glare | unknown-word | strong',
      '6 | beaufort | rows-disagree | ',
    ].toSorted(),
  );
});

it('asks about a header that may be one of them', async () => {
  expect(await faultsOf(withColumns('beufort', ['3', '3', '3', '', '']))).toEqual([
    '1 | beufort | unknown-column | beaufort',
  ]);
});
