import { beforeAll, describe, expect, it } from 'vitest';
import type { Disagreement, Result } from '../../server/core/model/result.js';
import { reconcile } from '../../server/core/reconcile.js';
import { DEMO, textOf } from './lake-emberlow-files.js';
import { readLakeEmberlow } from './read-lake-emberlow.js';

/** Rows of the README's demo table: taxon, number, how. */
function suggestedEntries(): readonly (readonly string[])[] {
  const demo = textOf('README.md').split('## Demo')[1] ?? '';
  return demo
    .split('\n')
    .filter((line) => line.startsWith('| '))
    .slice(2)
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );
}

/** The folder's tallies without those the demo leaves out, and with what the README suggests. */
function demoTallies(entries: readonly (readonly string[])[]): string {
  const [header = '', ...rows] = textOf('tallies.csv').trimEnd().split('\n');
  const kept = rows.filter((row) => !DEMO.leaveOut.includes(row.split(',')[0] ?? ''));
  const columns = header.split(',');
  const entered = entries.map(([taxon = '', number = '', how = ''], index) => {
    const block = /block of (\d+)/u.exec(how)?.[1];
    const values: Readonly<Record<string, string>> = {
      tally: 'visitor',
      observer: DEMO.observer,
      section: 's3',
      window: 'w1',
      start: '2027-01-16T09:20:00-05:00',
      end: '2027-01-16T10:40:00-05:00',
      taxon,
      number,
      method: block === undefined ? 'one-by-one' : 'block',
      block: block ?? '',
      line: `visitor:${index + 1}`,
    };
    return columns.map((column) => values[column] ?? '').join(',');
  });
  return [header, ...kept, ...entered].join('\n');
}

async function reviewOf(entries: readonly (readonly string[])[]): Promise<Result> {
  const { snapshot, protocol } = await readLakeEmberlow(demoTallies(entries));
  return reconcile(snapshot, [], protocol);
}

describe('the demo of Lake Emberlow', () => {
  let before: Result;
  let after: Result;
  const inWest = (result: Result): readonly Disagreement[] =>
    result.disagreements.filter((each) => each.cell === 's3:w1');

  beforeAll(async () => {
    const entries = suggestedEntries();
    expect(entries.length).toBeGreaterThan(5);
    before = await reviewOf([]);
    after = await reviewOf(entries);
  });

  it('starts with the West Basin counted by one observer', () => {
    const cell = before.cells.find((each) => each.id === 's3:w1');
    expect(cell?.tallies.map((tally) => tally.observer)).toEqual(['o3']);
    expect(inWest(before).map((each) => each.kind)).toContain('coverage-gap');
  });

  it('gives the compiler new disagreements on a pair and a group once a visitor has submitted', () => {
    const rafts = inWest(after).filter((each) => each.group?.includes('Aythya sp.'));
    expect(rafts.map((each) => each.kind).sort()).toEqual(['count-spread', 'resolution-gap']);
    for (const each of rafts) {
      expect(each.group).toContain('Aythya affinis/marila');
      expect(each.severity).not.toBe('note');
      expect(each.proposals.length).toBeGreaterThan(0);
    }
  });

  it('has the geese identified differently, and what only o3 saw', () => {
    const geese = inWest(after).find((each) => each.kind === 'identified-differently');
    expect(geese?.group).toEqual(['Branta canadensis', 'Branta hutchinsii']);
    const coots = inWest(after).find(
      (each) => each.kind === 'seen-by-one' && each.group?.includes('Fulica americana'),
    );
    expect(coots).toMatchObject({ birds: 250, observers: ['o3', 'o4'] });
  });
});
