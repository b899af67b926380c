import { describe, expect, it } from 'vitest';
import type { Result } from '../../server/core/model/result.js';
import type { Decision, Ruling, RulingTarget } from '../../server/core/model/ruling.js';
import { reconcile } from '../../server/core/reconcile.js';
import { Refusal } from '../../server/core/refusal.js';
import { aCount, aProtocol, aTally } from './a-count.js';

const GEESE: RulingTarget = {
  kind: 'group',
  cell: 's1:w1',
  group: ['Branta canadensis', 'Branta hutchinsii'],
};

/** One observer has 36 Cackling Geese, the other 36 Canada Geese: the same birds. */
const geese = aCount([
  aTally('o1', [
    ['Cackling Goose', 36],
    ['Mallard', 20],
  ]),
  aTally('o2', [
    ['Canada Goose', 36],
    ['Mallard', 24],
  ]),
]);

const rule = (target: RulingTarget, decision: Decision, more: Partial<Ruling> = {}): Ruling => ({
  id: 'r1',
  by: 'o3',
  reason: 'Photographs show long bills',
  target,
  decision,
  basis: null,
  ...more,
});

const numbers = (result: Result): Record<string, number> =>
  Object.fromEntries(result.compiled.map((line) => [line.taxon, line.number]));

const ruled = (ruling: Ruling, count = geese): Result => reconcile(count, [ruling], aProtocol());

describe('rulings', () => {
  it('leave birds identified differently as a pair until someone rules', () => {
    expect(numbers(reconcile(geese, [], aProtocol()))).toEqual({
      'Branta canadensis/hutchinsii': 36,
      'Anas platyrhynchos': 22,
    });
  });

  it('accept one observer', () => {
    const result = ruled(rule(GEESE, { kind: 'accept-observer', observer: 'o2' }));
    expect(numbers(result)).toEqual({ 'Branta canadensis': 36, 'Anas platyrhynchos': 22 });
  });

  it('set numbers', () => {
    const decision: Decision = {
      kind: 'set-numbers',
      lines: [
        { candidates: ['Branta canadensis'], number: 30 },
        { candidates: ['Branta canadensis', 'Branta hutchinsii'], number: 4 },
      ],
    };
    const result = ruled(rule(GEESE, decision));
    expect(numbers(result)).toMatchObject({
      'Branta canadensis': 30,
      'Branta canadensis/hutchinsii': 4,
    });
  });

  it('take another rule', () => {
    const mallard: RulingTarget = { kind: 'group', cell: 's1:w1', group: ['Anas platyrhynchos'] };
    const result = ruled(rule(mallard, { kind: 'take-rule', rule: 'highest' }));
    expect(numbers(result)['Anas platyrhynchos']).toBe(24);
  });

  it('raise an identification with evidence, or lower it', () => {
    const pair = ['Branta canadensis', 'Branta hutchinsii'];
    const raised = ruled(
      rule(GEESE, { kind: 'identify-as', from: pair, to: ['Branta canadensis'] }),
    );
    expect(numbers(raised)['Branta canadensis']).toBe(36);
    const line: RulingTarget = { kind: 'line', line: 't-o2:1' };
    const lowered = ruled(rule(line, { kind: 'identify-line', to: pair }));
    // o1's 36 Cackling against o2's 36 of the pair are compatible: the finer stands.
    expect(numbers(lowered)['Branta hutchinsii']).toBe(36);
  });

  it('exclude a line without turning it into a zero', () => {
    const line: RulingTarget = { kind: 'line', line: 't-o1:1' };
    const result = reconcile(
      geese,
      [rule(line, { kind: 'exclude' })],
      aProtocol({ zeros: 'absent' }),
    );
    expect(numbers(result)['Branta canadensis']).toBe(36);
  });

  it('exclude a tally', () => {
    const result = ruled(rule({ kind: 'tally', tally: 't-o1' }, { kind: 'exclude' }));
    expect(numbers(result)).toEqual({ 'Branta canadensis': 36, 'Anas platyrhynchos': 24 });
  });

  it('show in the ledger what they changed, by their id', () => {
    const result = ruled(rule(GEESE, { kind: 'accept-observer', observer: 'o2' }));
    const moved = result.ledger.filter((posting) => posting.because.kind === 'ruling');
    expect(moved.map(({ from, to, taxon, number }) => [from, to, taxon, number])).toEqual([
      ['ruling/r1', 'consensus/s1:w1/g2', 'Branta canadensis', 36],
      ['consensus/s1:w1/g2', 'ruling/r1', 'Branta canadensis/hutchinsii', 36],
      ['consensus/s1:w1/g2', 'compiled/w1', 'Branta canadensis', 36],
    ]);
  });

  it('merge two groups, so that they are settled together', () => {
    const count = aCount([
      aTally('o1', [
        ['Mallard', 20],
        ['Gadwall', 10],
      ]),
      aTally('o2', [
        ['Mallard', 30],
        ['Gadwall', 20],
      ]),
    ]);
    const mallard: RulingTarget = { kind: 'group', cell: 's1:w1', group: ['Anas platyrhynchos'] };
    const result = ruled(rule(mallard, { kind: 'merge-groups', with: ['Mareca strepera'] }), count);
    expect(result.rulings).toMatchObject([{ state: 'applied' }]);
    expect(result.cells[0]?.groups.map((group) => group.taxa)).toEqual([
      ['Anas platyrhynchos', 'Mareca strepera'],
    ]);
    // 30 of 50 and 50 of 50 birds: mean 40, shared out as 30 : 20 of the 50 that were seen at all.
    expect(numbers(result)).toEqual({ 'Anas platyrhynchos': 24, 'Mareca strepera': 16 });
  });

  it('split a group, whose parts are then no longer taken for each other', () => {
    const decision: Decision = {
      kind: 'split-group',
      parts: [['Branta canadensis'], ['Branta hutchinsii']],
    };
    const result = ruled(rule(GEESE, decision));
    expect(result.cells[0]?.pairings[0]).toMatchObject({ differently: 0, onlyA: 36, onlyB: 40 });
    expect(numbers(result)).toEqual({
      'Branta hutchinsii': 36,
      'Branta canadensis': 36,
      'Anas platyrhynchos': 22,
    });
  });

  it('refuse to split a group into anything but all of its parts', () => {
    const decision: Decision = { kind: 'split-group', parts: [['Branta canadensis'], []] };
    expect(() => ruled(rule(GEESE, decision))).toThrow(/Branta hutchinsii/);
  });

  it('are not applied when the tallies have changed since, and say so', () => {
    const draft = reconcile(geese, [], aProtocol());
    const basis = draft.disagreements.find((each) => each.kind === 'identified-differently')?.basis;
    const later = rule(GEESE, { kind: 'accept-observer', observer: 'o2' }, { basis: basis ?? [] });
    expect(ruled(later).rulings).toMatchObject([{ id: 'r1', state: 'applied' }]);
    const corrected = aCount([
      aTally('o1', [['Cackling Goose', 35]]),
      aTally('o2', [
        ['Canada Goose', 36],
        ['Mallard', 24],
      ]),
    ]);
    const result = ruled(later, corrected);
    expect(result.rulings).toMatchObject([{ id: 'r1', state: 'stale' }]);
    expect(numbers(result)['Branta canadensis/hutchinsii']).toBe(35);
  });

  it('are not applied where their group is gone, and say so', () => {
    const alone = aCount([aTally('o1', [['Mallard', 20]])]);
    const result = ruled(rule(GEESE, { kind: 'let-stand' }), alone);
    expect(result.rulings).toMatchObject([{ id: 'r1', state: 'without-target' }]);
  });

  it('are refused, both named, when two are about one thing', () => {
    const two = [
      rule(GEESE, { kind: 'accept-observer', observer: 'o1' }),
      rule(GEESE, { kind: 'accept-observer', observer: 'o2' }, { id: 'r2' }),
    ];
    const run = (): Result => reconcile(geese, two, aProtocol());
    expect(run).toThrow(Refusal);
    expect(run).toThrow(/r1.*r2/s);
  });

  it('are refused where the decision does not fit', () => {
    expect(() => ruled(rule(GEESE, { kind: 'confirm-link' }))).toThrow(/does not fit/);
    expect(() => ruled(rule(GEESE, { kind: 'accept-observer', observer: 'o9' }))).toThrow(/o1, o2/);
  });
});
