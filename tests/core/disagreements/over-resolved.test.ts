import { describe, expect, it } from 'vitest';
import type { Disagreement, Result } from '../../../server/core/model/result.js';
import type { Decision, Ruling } from '../../../server/core/model/ruling.js';
import type { NotedMark, Snapshot } from '../../../server/core/model/snapshot.js';
import { aCount, aProtocol, aTally, type ShortLine } from '../a-count.js';
import { reconcileInEnglish as reconcile } from '../../support/reconcile-in-english.js';

const BILL = ['bill', 'blue-grey with black only at the nail'] as const;
const FACE = ['female face', 'clean white bill base on a dark head'] as const;
const TALL = ['profile and crown', 'tall and highest behind the eye'] as const;
const ROUNDED = ['profile and crown', 'rounded and highest ahead of the eye'] as const;

type Noted = readonly (readonly [mark: string, state: string])[];

/** A count in which Ana has these lines, with marks of the first, and Bo the same birds without. */
function marked(lines: readonly ShortLine[], marks: Noted): Snapshot {
  const count = aCount([aTally('o1', lines), aTally('o2', lines)]);
  const people = count.people.map((each) => (each.id === 'o1' ? { ...each, name: 'Ana' } : each));
  const noted = marks.map(([mark, state]): NotedMark => ({ line: 't-o1:1', mark, state }));
  return { ...count, people, marks: noted };
}

const overResolved = (result: Result<string>): Disagreement<string>[] =>
  result.disagreements.filter(({ kind }) => kind === 'over-resolved');

const rulingOf = (
  disagreement: Disagreement<string>,
  decision: Decision,
  line = 't-o1:1',
): Ruling => ({
  id: 'r1',
  by: 'o4',
  reason: 'For the test',
  target: { kind: 'line', line },
  decision,
  basis: disagreement.basis,
});

describe('over-resolved identification', () => {
  it('says which species the marks fit as well, and by which marks', () => {
    const result = reconcile(marked([['Lesser Scaup', 12]], [BILL, FACE]), [], aProtocol());
    expect(overResolved(result)).toEqual([
      {
        id: 'over-resolved:t-o1:1',
        kind: 'over-resolved',
        severity: 'note',
        birds: 12,
        cell: 's1:w1',
        group: ['Aythya affinis'],
        link: null,
        observers: ['o1'],
        lines: ['t-o1:1'],
        text:
          "Of Ana's 12 Lesser Scaup in North arm the marks noted (bill: blue-grey with black only " +
          'at the nail; female face: clean white bill base on a dark head) fit Greater Scaup as well.',
        proposals: [
          {
            text: 'Read the line as Greater/Lesser Scaup, which the marks fit',
            target: { kind: 'line', line: 't-o1:1' },
            decision: { kind: 'identify-line', to: ['Aythya affinis', 'Aythya marila'] },
          },
          {
            text: 'Keep Lesser Scaup: something beside these marks shows it',
            target: { kind: 'line', line: 't-o1:1' },
            decision: { kind: 'identify-line', to: ['Aythya affinis'] },
          },
          {
            text: 'Leave the line out',
            target: { kind: 'line', line: 't-o1:1' },
            decision: { kind: 'exclude' },
          },
        ],
        basis: ['t-o1:1: Aythya affinis, 12'],
        ruledBy: null,
      },
    ]);
  });

  it('says nothing where the marks suffice, are too weak to decide, or are of no birds', () => {
    const silent = (lines: readonly ShortLine[], marks: Noted): void => {
      expect(overResolved(reconcile(marked(lines, marks), [], aProtocol()))).toEqual([]);
    };
    silent([['Lesser Scaup', 12]], [BILL, TALL]);
    silent([['Greater/Lesser Scaup', 12]], [BILL]);
    silent([['Lesser Scaup', 12]], []);
    silent([['Lesser Scaup', 12]], [['male head gloss', 'purple']]);
    silent([['Lesser Scaup', 0]], [BILL]);
  });

  it('names an undependable mark as what decides nothing', () => {
    const result = reconcile(
      marked([['Lesser Scaup', 12]], [BILL, ['male head gloss', 'purple']]),
      [],
      aProtocol(),
    );
    expect(overResolved(result)[0]?.text).toBe(
      "Of Ana's 12 Lesser Scaup in North arm the marks noted (bill: blue-grey with black only at " +
        'the nail) fit Greater Scaup as well (male head gloss is too undependable to decide).',
    );
  });

  it('is never serious for too few marks, and is so for marks that say otherwise', () => {
    const severityOf = (marks: Noted) =>
      overResolved(reconcile(marked([['Lesser Scaup', 400]], marks), [], aProtocol()))[0]?.severity;
    expect(severityOf([BILL])).toBe('questioned');
    expect(severityOf([BILL, ROUNDED])).toBe('serious');
  });

  it('says what the marks fit instead, and offers it and the pair', () => {
    const [found] = overResolved(
      reconcile(marked([['Lesser Scaup', 12]], [BILL, ROUNDED]), [], aProtocol()),
    );
    expect(found?.text).toMatch(/^Of Ana's 12 Lesser Scaup .* fit Greater Scaup instead\.$/u);
    expect(found?.proposals.map(({ text }) => text)).toEqual([
      'Read the line as Greater Scaup, which the marks fit',
      'Read the line as Greater/Lesser Scaup, which leaves it open',
      'Keep Lesser Scaup: something beside these marks shows it',
      'Leave the line out',
    ]);
  });

  it('says that marks contradict one another, and offers the whole group', () => {
    const [found] = overResolved(
      reconcile(marked([['Lesser Scaup', 12]], [BILL, ['male body', 'grey']]), [], aProtocol()),
    );
    expect(found?.text).toMatch(/contradict one another: no Aythya sp\. has them all\.$/u);
    expect(found?.proposals[0]?.text).toBe('Read the line as Aythya sp., which leaves it open');
  });

  it('tells of birds that only flew through, and of birds that were not counted', () => {
    const [flying] = overResolved(
      reconcile(
        marked([['Lesser Scaup', 12, { activity: 'flying-through' }]], [BILL]),
        [],
        aProtocol(),
      ),
    );
    expect(flying).toMatchObject({ cell: 's1:w1:flying-through' });
    expect(flying?.text).toContain("Ana's 12 Lesser Scaup flying through North arm");
    const [present] = overResolved(
      reconcile(marked([['Lesser Scaup', null]], [BILL]), [], aProtocol()),
    );
    expect(present).toMatchObject({ birds: 0, severity: 'note' });
    expect(present?.text).toContain("Of Ana's Lesser Scaup in North arm");
  });

  it.each([[[BILL]], [[BILL, ROUNDED]], [[BILL, ['male body', 'grey']]]] as const)(
    'is settled by any of its proposals: marks %j',
    (marks) => {
      const snapshot = marked([['Lesser Scaup', 12]], marks);
      const [found] = overResolved(reconcile(snapshot, [], aProtocol()));
      if (found === undefined) throw new Error('not found');
      for (const { decision } of found.proposals) {
        const ruled = reconcile(snapshot, [rulingOf(found, decision)], aProtocol());
        expect(ruled.rulings).toMatchObject([{ state: 'applied' }]);
        const [still] = overResolved(ruled);
        expect(still === undefined || still.ruledBy === 'r1').toBe(true);
      }
    },
  );

  it('lowers the compiled birds only once that is ruled', () => {
    // Bo left the pair, so the finer identification of Ana's line decides until it is lowered.
    const count = aCount([aTally('o1', [['Lesser Scaup', 12]]), aTally('o2', [['GRSC/LESC', 12]])]);
    const snapshot = { ...count, marks: [{ line: 't-o1:1', mark: BILL[0], state: BILL[1] }] };
    const draft = reconcile(snapshot, [], aProtocol());
    expect(draft.compiled).toMatchObject([{ taxon: 'Aythya affinis', number: 12 }]);
    expect(draft.compiled).toEqual(reconcile(count, [], aProtocol()).compiled);
    const [found] = overResolved(draft);
    const [lowered] = found?.proposals ?? [];
    if (found === undefined || lowered === undefined) throw new Error('not found');
    const ruled = reconcile(snapshot, [rulingOf(found, lowered.decision)], aProtocol());
    expect(ruled.compiled).toMatchObject([{ taxon: 'Aythya affinis/marila', number: 12 }]);
  });

  it('is settled by a ruling on its group too, and not by one that has gone stale', () => {
    const snapshot = marked([['Lesser Scaup', 12]], [BILL]);
    const [found] = overResolved(reconcile(snapshot, [], aProtocol()));
    if (found === undefined) throw new Error('not found');
    const onGroup: Ruling = {
      id: 'r1',
      by: 'o4',
      reason: 'For the test',
      target: { kind: 'group', cell: 's1:w1', group: ['Aythya affinis'] },
      decision: { kind: 'let-stand' },
      basis: null,
    };
    expect(overResolved(reconcile(snapshot, [onGroup], aProtocol()))[0]?.ruledBy).toBe('r1');
    const kept = rulingOf(found, { kind: 'identify-line', to: ['Aythya affinis'] });
    const stale = { ...kept, basis: ['t-o1:1: Aythya affinis, 9'] };
    const result = reconcile(snapshot, [stale], aProtocol());
    expect(result.rulings).toMatchObject([{ state: 'stale' }]);
    expect(overResolved(result)[0]?.ruledBy).toBeNull();
  });

  it('passes over marks of lines that a correction has taken away', () => {
    const snapshot = marked([['Lesser Scaup', 12]], [BILL]);
    const marks = [{ line: 'gone', mark: BILL[0], state: BILL[1] }];
    expect(overResolved(reconcile({ ...snapshot, marks }, [], aProtocol()))).toEqual([]);
  });
});
