import { afterAll, beforeAll, expect, it } from 'vitest';
import { aLine, planTestCount, type TestCount } from '../support/test-count.js';
import { TestApp } from '../support/start-app.js';

let app: TestApp;

beforeAll(async () => {
  app = await TestApp.start();
});

afterAll(() => app.stop());

function aCount(): Promise<TestCount> {
  return planTestCount(app, { assignments: [['pia', ['s1']]] });
}

it('a tally keeps scan samples and field marks, and the engine reckons with them', async () => {
  const lines = [
    aLine({
      taxon: 'GRSC',
      number: 120,
      method: 'sample',
      totalMethod: 'block',
      block: 20,
      flock: 'raft 1',
    }),
    aLine({ taxon: 'LESC', number: 80, method: 'sample', flock: 'raft 1' }),
  ];
  const state = 'blue-grey with black only at the nail';
  const [one, other] = lines;
  const plain = await aCount();
  await plain.submit('pia', { lines });
  const sampled = await aCount();
  await sampled.submit('pia', {
    lines: [{ ...one, marks: [{ mark: 'bill', state }] }, { ...other }],
    samples: [
      { raft: 'raft 1', sample: '1', taxon: 'GRSC', number: 3 },
      { raft: 'raft 1', sample: '1', taxon: 'LESC', number: 2 },
    ],
  });
  const NOTED =
    'query ($id: ID!) { count(id: $id) { myTallies { samples { raft sample taxon number } lines { taxon totalMethod block marks { mark state } } } } }';
  const mine = await sampled.as.pia.ask<{
    count: {
      myTallies: {
        lines: {
          taxon: string;
          totalMethod: string | null;
          block: number | null;
          marks: object[];
        }[];
      }[];
    };
  }>(NOTED, { id: sampled.id });
  const numbers = { raft: 'raft 1', sample: '1' };
  expect(mine).toMatchObject({
    count: {
      myTallies: [
        {
          samples: [
            { ...numbers, taxon: 'Aythya affinis', number: 2 },
            { ...numbers, taxon: 'Aythya marila', number: 3 },
          ],
        },
      ],
    },
  });
  const [tally] = mine.count.myTallies;
  expect(tally?.lines.find(({ taxon }) => taxon === 'Aythya marila')).toMatchObject({
    totalMethod: 'block',
    block: 20,
    marks: [{ mark: 'bill', state }],
  });
  expect(tally?.lines.find(({ taxon }) => taxon === 'Aythya affinis')).toMatchObject({
    totalMethod: null,
    block: null,
    marks: [],
  });

  const REVIEWED = `query ($id: ID!) { count(id: $id) {
    compiled { lines { taxon number low high } } review { disagreements { kind text } } } }`;
  interface Reviewed {
    count: {
      compiled: { lines: { taxon: string; number: number; low: number; high: number }[] };
      review: { disagreements: { kind: string; text: string }[] };
    };
  }
  const [before, after] = await Promise.all(
    [plain, sampled].map(async (count) => {
      await count.close();
      const { count: found } = await count.as.kim.ask<Reviewed>(REVIEWED, { id: count.id });
      const line = found.compiled.lines.find(({ taxon }) => taxon === 'Aythya marila');
      const kinds = found.review.disagreements.map(({ kind }) => kind);
      return { line, kinds };
    }),
  );
  expect(after?.line?.number).toBe(120);
  // Five scanned birds say little of the shares.
  expect(after?.line?.high).toBeGreaterThan(before?.line?.high ?? Infinity);
  // The bill fits both scaup.
  expect(before?.kinds).not.toContain('over-resolved');
  expect(after?.kinds).toContain('over-resolved');
});
