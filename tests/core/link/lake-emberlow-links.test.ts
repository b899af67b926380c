import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { alignCells } from '../../../server/core/align/cells.js';
import { findLinks } from '../../../server/core/link/find-links.js';
import { checkFolder } from '../../../server/exchange/check-folder.js';
import { openFolder } from '../../../server/exchange/open-folder.js';

/* The demo count says in links.csv which lines are of one flock. Invented, like the count. */
const folder = 'scenarios/lake-emberlow';

async function foundAndTrue() {
  const opened = await openFolder(folder);
  if (!opened.ok) throw new Error(opened.reason);
  const checked = await checkFolder(opened.files);
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults));
  const cells = alignCells(checked.snapshot).filter(({ layer }) => layer === 'using');
  const cellOf = new Map(
    cells.flatMap(({ id, looks }) =>
      looks.flatMap(({ tallies }) => tallies.map((tally) => [tally.id, id] as const)),
    ),
  );
  const found = findLinks(checked.snapshot, ({ id }) => cellOf.get(id) ?? '', checked.protocol);
  const rows = (await readFile(`${folder}/links.csv`, 'utf8')).trim().split(/\r?\n/u).slice(1);
  return { found, truth: rows.map((row) => row.split(',')) };
}

describe('links of the demo count', () => {
  it('every pair of lines that is one flock is joined by a proposed link, no other pair by any', async () => {
    const { found, truth } = await foundAndTrue();
    for (const [a = '', b = '', same] of truth) {
      const links = found.filter(({ first, second }) =>
        [first, second].some((one) => {
          const other = one === first ? second : first;
          return one.lines.includes(a) && other.lines.includes(b);
        }),
      );
      if (same === 'no') expect([a, b, links]).toEqual([a, b, []]);
      else expect([a, b, links.map(({ proposed }) => proposed)]).toEqual([a, b, [true]]);
    }
    const proposed = found.filter((link) => link.proposed);
    const isTrue = proposed.map(({ lines }) =>
      truth.some(
        ([a = '', b = '', same]) => same === 'yes' && lines.includes(a) && lines.includes(b),
      ),
    );
    expect(isTrue).toEqual([true, true, true]);
  });
});
