import { describe, expect, it } from 'vitest';

import { checkRulings } from '../../../server/core/model/check-rulings.js';
import { faultSentence } from '../../../server/core/model/fault.js';
import type { Snapshot } from '../../../server/core/model/snapshot.js';

const SNAPSHOT: Snapshot = {
  id: 'alder-pond',
  name: 'Alder Pond',
  waterbody: 'Alder Pond',
  date: '2027-01-16',
  timeZone: 'America/Toronto',
  windows: [],
  people: [
    { id: 'per', name: 'Per Lund', roles: ['compiler'] },
    { id: 'ida', name: 'Ida Novak', roles: ['observer'] },
  ],
  sections: [],
  vantages: [],
  views: [],
  history: [],
  samples: [],
  tallies: [],
};

const ruling = (changes: object): object => ({
  id: 'r1',
  by: 'per',
  reason: 'Photographs show it.',
  target: { kind: 'group', cell: 's1:w1', group: ['Aythya marila', 'Aythya affinis'] },
  decision: { kind: 'let-stand' },
  ...changes,
});

function sentences(value: unknown): readonly string[] {
  const checked = checkRulings(value, SNAPSHOT, 'rulings.json');
  return checked.ok ? [] : checked.faults.map(faultSentence);
}

describe('checkRulings', () => {
  it('takes rulings as they are exported, and taxa as anyone writes them', () => {
    const value = [
      ruling({ basis: ['x'] }),
      ruling({
        id: 'r2',
        decision: { kind: 'identify-as', from: 'Aythya sp.', to: 'scaup sp.' },
      }),
      ruling({
        id: 'r3',
        decision: {
          kind: 'set-numbers',
          lines: [
            { taxon: 'GRSC/LESC', number: 4 },
            { candidates: ['Aythya marila'], number: 0 },
          ],
        },
      }),
    ];
    const checked = checkRulings(value, SNAPSHOT, 'rulings.json');
    expect(checked.ok ? checked.value : checked.faults).toEqual([
      {
        id: 'r1',
        by: 'per',
        reason: 'Photographs show it.',
        target: { kind: 'group', cell: 's1:w1', group: ['Aythya affinis', 'Aythya marila'] },
        decision: { kind: 'let-stand' },
        basis: ['x'],
      },
      expect.objectContaining({
        basis: null,
        decision: {
          kind: 'identify-as',
          from: [
            'Aythya affinis',
            'Aythya americana',
            'Aythya collaris',
            'Aythya marila',
            'Aythya valisineria',
          ],
          to: ['Aythya affinis', 'Aythya marila'],
        },
      }),
      expect.objectContaining({
        decision: {
          kind: 'set-numbers',
          lines: [
            { candidates: ['Aythya affinis', 'Aythya marila'], number: 4 },
            { candidates: ['Aythya marila'], number: 0 },
          ],
        },
      }),
    ]);
  });

  it('says everything that is wrong at once', () => {
    const value = [
      ruling({ by: 'pre', reason: ' ' }),
      ruling({ decision: { kind: 'exclude' } }),
      ruling({ id: 'r3', target: { kind: 'line', line: 'a1' }, decision: { kind: 'exclude' } }),
      ruling({ id: 'r4', decision: { kind: 'identify-as', from: 'Aythya marilla', to: '' } }),
      ruling({ id: 'r5', decision: { kind: 'take-rule', rule: 'avarage' }, resaon: 'x' }),
      'nonsense',
    ];
    expect(sentences(value)).toEqual([
      'rulings.json, key rulings[5]: nonsense is of the wrong kind. Expected a list of rulings.',
      'rulings.json, key rulings[0].by: "pre" is not a person of this count. Expected ida or per.',
      'rulings.json, key rulings[0].reason: nothing is written. Expected why it was decided so.',
      'rulings.json, key rulings[1].id: "r1" is rulings[0].id too. Expected an id of its own.',
      'rulings.json, key rulings[1].decision.kind: "exclude" is not a decision about a group. Expected let-stand, accept-observer, set-numbers, take-rule, identify-as, merge-groups or split-group.',
      'rulings.json, key rulings[2].target.line: "a1" is not a line of this count. Expected the id of a line, but the count has none.',
      'rulings.json, key rulings[3].decision.from: "Aythya marilla" is not a known taxon. Expected a scientific, English or French name, a four-letter code of the IBP–AOS list of 2025, a group such as Aythya sp., or a pair such as Aythya affinis/marila. Did you mean Aythya marila?',
      'rulings.json, key rulings[3].decision.to: nothing is written. Expected a taxon.',
      'rulings.json, key rulings[4].resaon: "resaon" is not a known key. Expected keys id, by, reason, target, decision, basis.',
      'rulings.json, key rulings[4].decision.rule: "avarage" is not a rule. Expected designated, highest, mean, median, random-effects, weighted-mean or robust-mean.',
    ]);
  });

  it.each([[null], [{}], ['x'], [3]])('refuses %j, which is no list', (value) => {
    expect(sentences(value)).toHaveLength(1);
  });
});
