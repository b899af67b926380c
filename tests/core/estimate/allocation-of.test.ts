import { describe, expect, it } from 'vitest';
import { summaryText } from '../../../server/cli/summary/summary.js';
import { aCount, aProtocol, aTally } from '../a-count.js';
import { reconcileInEnglish as reconcile } from '../../support/reconcile-in-english.js';

const PAIR = 'Aythya affinis/marila';

describe('the allocation of a reconciled count', () => {
  const snapshot = aCount([
    aTally('o1', [
      ['Aythya marila', 30],
      ['Aythya affinis', 10],
      [PAIR, 20],
      ['Mallard', 12],
    ]),
    aTally('o2', [['Aythya affinis', 500]], { window: 'w2', sections: ['s2'], id: 'late' }),
  ]);

  it('is of the window that is reported, and changes no count', () => {
    const first = reconcile(snapshot, [], aProtocol({ windows: 'w1' }));
    expect(first.allocation).toMatchObject([
      {
        species: 'Aythya marila',
        identified: 30,
        estimated: 45,
        of: [{ taxon: PAIR, number: 20 }],
      },
      { species: 'Aythya affinis', identified: 10, estimated: 15 },
    ]);
    expect(first.compiled.map(({ taxon, number }) => [taxon, number])).toEqual([
      ['Anas platyrhynchos', 12],
      ['Aythya marila', 30],
      [PAIR, 20],
      ['Aythya affinis', 10],
    ]);
    const second = reconcile(snapshot, [], aProtocol({ windows: 'w2' }));
    expect(second.allocation).toEqual([]);
  });

  it('does not share out birds that observers named, but not alike', () => {
    // 90 agreed as Canada Geese, 10 agreed as Cackling; 30 more are the one's Canada, the other's Cackling.
    const geese = aCount([
      aTally('o1', [
        ['Canada Goose', 120],
        ['Cackling Goose', 10],
      ]),
      aTally('o2', [
        ['Canada Goose', 90],
        ['Cackling Goose', 40],
      ]),
    ]);
    const { allocation } = reconcile(geese, [], aProtocol());
    expect(allocation).toMatchObject([
      {
        species: 'Branta hutchinsii',
        identified: 10,
        estimated: null,
        low: 10,
        high: 40,
        undetermined: 30,
      },
      { species: 'Branta canadensis', identified: 90, estimated: null, low: 90, high: 120 },
    ]);
    expect(allocation[0]?.of).toEqual([
      { taxon: 'Branta canadensis/hutchinsii', number: 30, disputed: 30, estimated: null },
    ]);
  });

  it('is told of in the summary as an estimate, with what has none', () => {
    const style = { heading: (text: string) => text };
    const first = reconcile(snapshot, [], aProtocol({ windows: 'w1' }));
    const told = summaryText(first, snapshot, style);
    expect(told).toContain('Estimate: species within pairs and groups');
    expect(told).toMatch(/Greater Scaup +30 +45 +30–50 \*/u);
    const unknown = aCount([
      aTally('o1', [
        ['Aythya marila', 30],
        [PAIR, 20],
      ]),
    ]);
    const silent = summaryText(reconcile(unknown, [], aProtocol()), unknown, style);
    expect(silent.replace(/\s+/gu, ' ')).toContain(
      'possible: Greater Scaup 30–50, Lesser Scaup 0–20.',
    );
  });
});
