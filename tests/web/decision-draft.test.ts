import { describe, expect, test } from 'vitest';
import {
  decisionFaults,
  decisionInput,
  draftOf,
  targetInput,
} from '../../web/src/reviews/decision-draft.js';
import { sameTarget } from '../../web/src/reviews/ruling-target.js';

const group = { kind: 'group', cell: 's1:w1', group: ['Aythya affinis', 'Aythya marila'] };
const drafted = {
  taxa: ['Aythya affinis', 'Aythya marila'],
  lines: [
    { taxon: 'Aythya marila', number: 324 },
    { taxon: 'Aythya affinis', number: 29 },
  ],
};

describe('a ruling from a proposal', () => {
  test('a proposal for set numbers comes back as it was proposed', () => {
    const numbers = [{ taxon: 'Aythya affinis/marila', number: 353 }];
    const draft = draftOf({ kind: 'set-numbers', numbers }, group, drafted);
    expect(decisionInput(draft)).toEqual({ kind: 'set-numbers', numbers });
    expect(targetInput(draft, group)).toMatchObject(group);
  });

  test('candidate sets are sent as the names that tallies use', () => {
    const draft = draftOf(
      { kind: 'identify-as', from: ['Aythya marila'], to: ['Aythya affinis', 'Aythya marila'] },
      group,
      drafted,
    );
    expect(decisionInput(draft)).toEqual({
      kind: 'identify-as',
      from: 'Aythya marila',
      to: 'Aythya affinis/marila',
    });
  });

  test('only the fields of the chosen kind are sent', () => {
    const draft = draftOf({ kind: 'accept-observer', observer: 'o2' }, group, drafted);
    expect(decisionInput(draft)).toEqual({ kind: 'accept-observer', observer: 'o2' });
    expect(decisionInput({ ...draft, kind: 'let-stand' })).toEqual({ kind: 'let-stand' });
  });

  test('a decision on one line is about that line, whatever the disagreement is about', () => {
    const draft = { ...draftOf({ kind: 'exclude' }, null, drafted), lineId: 'b2' };
    expect(targetInput(draft, group)).toEqual({ kind: 'line', line: 'b2' });
  });

  test('each thing that is missing is named at its field', () => {
    const empty = draftOf(
      { kind: 'set-numbers', numbers: [{ taxon: 'Aythya marilla', number: 1 }] },
      group,
      null,
    );
    const faults = decisionFaults(empty, ' ');
    expect(faults.get('reason')).toContain('Say why');
    // The misspelt name is one letter from the right one.
    expect(faults.get('taxon-0')).toContain('Did you mean Aythya marila?');
    expect(decisionFaults(draftOf({ kind: 'take-rule' }, group, null), 'Reason.').has('rule')).toBe(
      true,
    );
    expect(decisionFaults(draftOf({ kind: 'let-stand' }, group, null), 'Reason.').size).toBe(0);
  });

  test('a group is the same group in whatever order its taxa come', () => {
    expect(sameTarget(group, { ...group, group: [...group.group].reverse() })).toBe(true);
    expect(sameTarget(group, { ...group, cell: 's2:w1' })).toBe(false);
    expect(sameTarget(group, { ...group, link: null, line: null })).toBe(true);
  });
});
