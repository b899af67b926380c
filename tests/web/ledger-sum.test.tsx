import { cleanup, screen } from '@testing-library/react';
import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import { draw } from './draw.js';
import { LedgerView, sumWritten } from '../../web/src/seals/ledger-panel.js';
import { ledgerSum } from '../../web/src/seals/ledger-sum.js';

const posting = (id: string, from: string, to: string, number: number) => ({
  id,
  from,
  to,
  number,
  taxon: 'Aythya marila',
  becauseKind: 'rule',
  becauseRef: 'mean',
  text: `${number} birds go from ${from} to ${to}.`,
  lines: [],
});

/** Greater scaup of the count worked by hand: 324 from s1 and 100 from s2 make 424. */
const worked = [
  posting('1', 'tallied/s1:w1/o1+o2', 'consensus/s1:w1/g1', 300),
  posting('2', 'tallied/s1:w1/o2', 'consensus/s1:w1/g1', 40),
  posting('3', 'consensus/s1:w1/g1', 'rounding/s1:w1/g1', 16),
  posting('4', 'consensus/s1:w1/g1', 'compiled/w1', 324),
  posting('5', 'consensus/s2:w1/g1', 'compiled/w1', 100),
];

function compiled(postings: typeof worked, number: number) {
  return {
    countId: 'c1',
    reported: 'w1',
    line: { taxon: 'Aythya marila', number },
    ledger: postings,
  };
}

describe('a line’s ledger', () => {
  afterEach(cleanup);

  test('is written out as a sum that a person can check', () => {
    draw(<LedgerView compiled={compiled(worked, 424)} timeZone="UTC" />);
    screen.getByText('324 + 100 = 424');
    expect(screen.queryByRole('alert')).toBeNull();
  });

  test('takes off what goes to double counts', () => {
    const withLink = [...worked, posting('6', 'compiled/w1', 'double-count/l1', 60)];
    draw(<LedgerView compiled={compiled(withLink, 364)} timeZone="UTC" />);
    screen.getByText('324 + 100 − 60 = 364');
    screen.getByText('− 60');
  });

  test('shows birds found twice as lines of their own, in no sum', () => {
    const found = posting('6', 'consensus/s2:w1/g1', 'double-count/l1', 60);
    draw(<LedgerView compiled={compiled([...worked, found], 424)} timeZone="UTC" />);
    screen.getByText('324 + 100 = 424');
    const table = screen.getByRole('table', { name: /^Found twice/u });
    expect([...table.querySelectorAll('tbody td.number')].map((cell) => cell.textContent)).toEqual([
      '60',
    ]);
    expect(screen.queryAllByText(found.text)).toHaveLength(1);
  });

  test('says loudly when it does not add up', () => {
    draw(<LedgerView compiled={compiled(worked, 425)} timeZone="UTC" />);
    expect(screen.getByRole('alert').textContent).toContain('The postings give 424');
  });

  test('postings of other windows and earlier accounts do not enter the sum', () => {
    const account = fc.constantFrom('compiled/w1', 'compiled/w2', 'consensus/x/g', 'tallied/x/o1');
    const any = fc.record({ from: account, to: account, number: fc.nat(500) });
    fc.assert(
      fc.property(fc.array(any, { maxLength: 20 }), (given) => {
        const postings = given.map((one, index) => ({ ...one, id: String(index) }));
        const sum = ledgerSum(postings, 'w1');
        const into = postings
          .filter(({ to }) => to === 'compiled/w1')
          .reduce((all, one) => all + one.number, 0);
        const outOf = postings
          .filter(({ from }) => from === 'compiled/w1')
          .reduce((all, one) => all + one.number, 0);
        expect(sum.total).toBe(into - outOf);
        expect(sum.terms.length + sum.before.length).toBe(postings.length);
      }),
    );
  });

  test('a sum that begins below zero, or has nothing in it, is still readable', () => {
    expect(sumWritten([-3, 5])).toBe('−3 + 5 = 2');
    expect(sumWritten([])).toBe('0 = 0');
  });
});
