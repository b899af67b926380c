import { v7 as newId } from 'uuid';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { TestApp } from '../support/start-app.js';
import { aLine, planTestCount, type TestCount } from '../support/test-count.js';

const COUNT = `query ($id: ID!) { count(id: $id) {
  review { inputHash links { id birds ruling deducted deduction { taxon number } } }
  compiled { lines { taxon number } ledger { from to taxon number text becauseKind becauseRef } }
  auditTrail { entries { act } }
} }`;
const GIVE = 'mutation ($input: RulingInput!) { giveRuling(input: $input) { state } }';
const WITHDRAW =
  'mutation ($id: ID!, $reason: String!) { withdrawRuling(rulingId: $id, reason: $reason) { state } }';

interface Answer {
  readonly count: {
    readonly review: {
      readonly inputHash: string;
      readonly links: readonly {
        readonly id: string;
        readonly birds: number;
        readonly ruling: string | null;
        readonly deducted: boolean;
        readonly deduction: readonly { readonly taxon: string; readonly number: number }[];
      }[];
    };
    readonly compiled: {
      readonly lines: readonly { readonly taxon: string; readonly number: number }[];
      readonly ledger: readonly {
        readonly from: string;
        readonly to: string;
        readonly taxon: string;
        readonly number: number;
        readonly text: string;
      }[];
    };
    readonly auditTrail: { readonly entries: readonly { readonly act: string }[] };
  };
}

let app: TestApp;

beforeAll(async () => {
  app = await TestApp.start();
});

afterAll(() => app.stop());

/** A raft that Pia saw leave North Bay and Uma saw come to Mill Reach, where other scaup were too. */
async function raftThatMoved(): Promise<TestCount> {
  const count = await planTestCount(app, {
    assignments: [
      ['pia', ['s1']],
      ['uma', ['s2']],
    ],
  });
  await count.submit('pia', {
    sectionIds: ['s1'],
    lines: [
      {
        ...aLine({ taxon: 'Aythya affinis', number: 400, flock: 'R', to: 's2' }),
        ...{ time: '2027-01-16T08:40:00-05:00', lon: -79.045, lat: 44.02 },
      },
    ],
  });
  await count.submit('uma', {
    sectionIds: ['s2'],
    lines: [
      {
        ...aLine({ taxon: 'Aythya affinis/marila', number: 390, from: 's1', flock: 'K' }),
        ...{ time: '2027-01-16T09:10:00-05:00', lon: -79.01, lat: 44.02 },
      },
      aLine({ taxon: 'Aythya affinis/marila', number: 110 }),
    ],
  });
  return count;
}

const open = async ({ as, id }: TestCount) => (await as.kim.ask<Answer>(COUNT, { id })).count;

const numbersOf = ({ compiled }: Answer['count']) =>
  Object.fromEntries(compiled.lines.map(({ taxon, number }) => [taxon, number]));

it('a link says what it takes off, takes it when confirmed, and gives it back when withdrawn or rejected', async () => {
  const count = await raftThatMoved();
  const before = await open(count);
  const taken = [{ taxon: 'Aythya affinis/marila', number: 390 }];
  const [link] = before.review.links;
  expect(before.review.links).toMatchObject([{ birds: 390, deducted: false, deduction: taken }]);
  expect(numbersOf(before)).toEqual({ 'Aythya affinis': 400, 'Aythya affinis/marila': 500 });

  const give = async (kind: string, inputHash: string): Promise<string> => {
    const id = newId();
    await count.as.kim.ask(GIVE, {
      input: {
        ...{ id, countId: count.id, target: { kind: 'link', link: link?.id }, inputHash },
        ...{ decision: { kind }, reason: 'It was seen to come from there.' },
      },
    });
    return id;
  };
  const ruling = await give('confirm-link', before.review.inputHash);
  const confirmed = await open(count);
  expect(confirmed.review.links).toMatchObject([
    { ruling: 'confirmed', deducted: true, deduction: taken },
  ]);
  expect(numbersOf(confirmed)).toEqual({ 'Aythya affinis': 400, 'Aythya affinis/marila': 110 });
  const posted = confirmed.compiled.ledger.filter(({ to }) => to === `double-count/${link?.id}`);
  expect(posted).toMatchObject(taken);
  expect(posted[0]?.text).toBe(
    'Found twice: 390 Aythya affinis/marila in Mill Reach are taken off; the same flock is counted in North Bay.',
  );

  await count.as.kim.ask(WITHDRAW, { id: ruling, reason: 'It was another raft.' });
  const withdrawn = await open(count);
  expect(withdrawn.compiled).toEqual(before.compiled);
  expect(withdrawn.review).toEqual(before.review);

  await give('reject-link', withdrawn.review.inputHash);
  const rejected = await open(count);
  expect(rejected.compiled).toEqual(before.compiled);
  expect(rejected.review.links).toMatchObject([{ ruling: 'rejected', deducted: false }]);

  // Every act is on record, and nothing of what was undone is gone.
  const acts = rejected.auditTrail.entries.map(({ act }) => act);
  expect(acts.filter((act) => act.includes('ruling'))).toHaveLength(3);
});
