import { describe, expect, it } from 'vitest';
import type { CompiledLine, Disagreement, Result } from '../../server/core/model/result.js';
import { reconcile } from '../../server/core/reconcile.js';
import { checkFolder } from '../../server/exchange/check-folder.js';
import { openFolder } from '../../server/exchange/open-folder.js';

/**
 * Hollow Lake: two observers on one section, one on the other, worked by hand on paper. The sums
 * stand beside the numbers; none was taken from the program.
 */
async function hollowLake(): Promise<Result> {
  const folder = new URL('./worked-example', import.meta.url).pathname;
  const opened = await openFolder(folder);
  if (!opened.ok) throw new Error('the folder cannot be opened');
  const checked = await checkFolder(opened.files);
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults));
  return reconcile(checked.snapshot, [], checked.protocol);
}

const result = await hollowLake();

const cell = (id: string): Result['cells'][number] => {
  const found = result.cells.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no cell ${id}`);
  return found;
};

const compiled = (taxon: string): CompiledLine => {
  const found = result.compiled.find((line) => line.taxon === taxon);
  if (found === undefined) throw new Error(`no compiled line ${taxon}`);
  return found;
};

const disagreement = (kind: string, taxon?: string): Disagreement => {
  const found = result.disagreements.find(
    (each) => each.kind === kind && (taxon === undefined || (each.group?.includes(taxon) ?? false)),
  );
  if (found === undefined) throw new Error(`no disagreement ${kind} ${taxon ?? ''}`);
  return found;
};

describe('Hollow Lake, worked by hand', () => {
  it('reads 417 birds of the first observer and 459 of the second', () => {
    expect(cell('s1:w1').tallies.map((tally) => [tally.observer, tally.total])).toEqual([
      ['o1', 417],
      ['o2', 459],
    ]);
  });

  it('pairs 382 agreed (300 + 10 + 60 + 12), 20 compatible, 10 differently, 5 and 47 by one only', () => {
    expect(cell('s1:w1').pairings).toMatchObject([
      { a: 'o1', b: 'o2', agreed: 382, compatible: 20, differently: 10, onlyA: 5, onlyB: 47 },
    ]);
    expect(382 + 20 + 10 + 5).toBe(417);
    expect(382 + 20 + 10 + 47).toBe(459);
  });

  it('says which birds: 20 lesser with the pair, 10 lesser with greater, 40 greater and 7 mallards only o2', () => {
    const flows = cell('s1:w1').pairings[0]?.flows.filter((flow) => flow.kind !== 'agreed');
    expect(flows).toHaveLength(5);
    for (const flow of [
      { kind: 'compatible', a: 'Aythya affinis', b: 'Aythya affinis/marila', number: 20 },
      { kind: 'differently', a: 'Aythya affinis', b: 'Aythya marila', number: 10 },
      { kind: 'only-a', a: 'Aythya valisineria', b: null, number: 5 },
      { kind: 'only-b', a: null, b: 'Aythya marila', number: 40 },
      { kind: 'only-b', a: null, b: 'Anas platyrhynchos', number: 7 },
    ]) {
      expect(flows).toContainEqual(flow);
    }
  });

  it('forms four groups: the scaup together, redhead, canvasback and mallard alone', () => {
    const groups = cell('s1:w1').groups.map((group) => group.taxa);
    expect(groups).toHaveLength(4);
    expect(groups).toContainEqual(['Aythya affinis', 'Aythya affinis/marila', 'Aythya marila']);
    expect(groups).toContainEqual(['Aythya americana']);
    expect(groups).toContainEqual(['Aythya valisineria']);
    expect(groups).toContainEqual(['Anas platyrhynchos']);
  });

  it('settles the scaup at 420, the mean of 400 and 440, as 324 greater, 29 lesser and 67 of the pair', () => {
    // 340, 30 and 70 of 440 scaled to 420: 324.55, 28.64 and 66.82.
    const scaup = cell('s1:w1').groups.find((group) => group.taxa.includes('Aythya marila'));
    expect(scaup?.totals.map((total) => total.number)).toEqual([400, 440]);
    expect(scaup?.consensus.number).toBe(420);
    expect(scaup?.lines).toEqual([
      { candidates: ['Aythya affinis'], number: 29 },
      { candidates: ['Aythya affinis', 'Aythya marila'], number: 67 },
      { candidates: ['Aythya marila'], number: 324 },
    ]);
  });

  it('compiles 570 birds', () => {
    const numbers = Object.fromEntries(result.compiled.map((line) => [line.taxon, line.number]));
    expect(numbers).toEqual({
      'Aythya marila': 424,
      'Aythya affinis': 29,
      'Aythya affinis/marila': 67,
      'Aythya sp.': 20,
      'Aythya americana': 12,
      'Aythya valisineria': 5,
      'Anas platyrhynchos': 7,
      'Bucephala clangula': 6,
    });
    expect(result.compiled.reduce((sum, line) => sum + line.number, 0)).toBe(570);
  });

  it('bounds greater scaup by at least 424 and at most 424 + 67 + 20 = 511', () => {
    expect(compiled('Aythya marila')).toMatchObject({ atLeast: 424, atMost: 511 });
  });

  it('lists canvasback and mallard as seen by one only', () => {
    expect(disagreement('seen-by-one', 'Aythya valisineria')).toMatchObject({ birds: 5 });
    expect(disagreement('seen-by-one', 'Anas platyrhynchos')).toMatchObject({ birds: 7 });
  });

  it('lists the 10 birds identified differently and the 20 left at a coarser level', () => {
    expect(disagreement('identified-differently')).toMatchObject({ birds: 10, cell: 's1:w1' });
    expect(disagreement('resolution-gap')).toMatchObject({ birds: 20, cell: 's1:w1' });
    expect(disagreement('count-spread', 'Aythya marila')).toMatchObject({
      birds: 40,
      severity: 'note',
    });
  });

  it('lists the second section as having no second count', () => {
    expect(disagreement('coverage-gap')).toMatchObject({ cell: 's2:w1', birds: 126 });
  });

  it('posts greater scaup as 300 agreed + 40 only o2 − 16 to the mean + 100 from the other section = 424', () => {
    const postings = result.ledger.filter((posting) => posting.taxon === 'Aythya marila');
    expect(
      postings.map(({ from, to, number, because }) => [from, to, number, because.ref]),
    ).toEqual([
      ['tallied/s1:w1/o1+o2', expect.stringMatching(/^consensus\/s1:w1\//), 300, 'a1=b1'],
      ['tallied/s1:w1/o2', expect.stringMatching(/^consensus\/s1:w1\//), 40, 'b1'],
      [
        expect.stringMatching(/^consensus\/s1:w1\//),
        expect.stringMatching(/^rounding\/s1:w1\//),
        16,
        'mean',
      ],
      [expect.stringMatching(/^consensus\/s1:w1\//), 'compiled/w1', 324, 'mean'],
      ['tallied/s2:w1/o3', expect.stringMatching(/^consensus\/s2:w1\//), 100, 'c1'],
      [expect.stringMatching(/^consensus\/s2:w1\//), 'compiled/w1', 100, 'mean'],
    ]);
  });
});
