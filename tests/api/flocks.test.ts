import { v7 as newId } from 'uuid';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aLine, planTestCount, type TestCount } from '../support/test-count.js';
import { TestApp } from '../support/start-app.js';

const FLOCKS = `query ($id: ID!) { count(id: $id) { review {
  flocks { lines observer { id } sections { id } window { id } taxon number start end timeNoted position }
  links { first { lines } second { lines } }
} } }`;

interface Flock {
  readonly lines: readonly string[];
  readonly observer: { readonly id: string };
  readonly sections: readonly { readonly id: string }[];
  readonly window: { readonly id: string };
  readonly taxon: string;
  readonly number: number;
  readonly start: string;
  readonly end: string;
  readonly timeNoted: boolean;
  readonly position: readonly number[] | null;
}

interface Answer {
  readonly count: {
    readonly review: {
      readonly flocks: readonly Flock[];
      readonly links: readonly {
        readonly first: { readonly lines: readonly string[] };
        readonly second: { readonly lines: readonly string[] };
      }[];
    };
  };
}

let app: TestApp;

beforeAll(async () => {
  app = await TestApp.start();
});

afterAll(() => app.stop());

async function reviewOf({ as, id }: TestCount, person: 'kim' | 'kai') {
  return (await as[person].ask<Answer>(FLOCKS, { id })).count.review;
}

/** A raft that Pia saw leave North Bay and Uma saw come to Mill Reach. */
async function raftThatMoved() {
  const count = await planTestCount(app, {
    assignments: [
      ['pia', ['s1']],
      ['uma', ['s2']],
      ['kai', ['s1']],
    ],
  });
  const left = [newId(), newId()].toSorted();
  const came = newId();
  await count.submit('pia', {
    sectionIds: ['s1'],
    lines: [
      {
        ...aLine({ id: left[0], number: 300, flock: 'R', to: 's2' }),
        ...{ time: '2027-01-16T08:40:00-05:00', lon: -79.045, lat: 44.02 },
      },
      aLine({ id: left[1], taxon: 'Aythya affinis', number: 100, flock: 'R' }),
      // A total of the section: no flock that could be followed.
      aLine({ taxon: 'Anas platyrhynchos', number: 500 }),
    ],
  });
  await count.submit('uma', {
    sectionIds: ['s2'],
    lines: [
      {
        ...aLine({ id: came, taxon: 'Aythya affinis/marila', number: 390, from: 's1' }),
        ...{ time: '2027-01-16T09:10:00-05:00', lon: -79.01, lat: 44.02 },
      },
      aLine({ taxon: 'Aythya americana', number: 40, flock: 'Q' }),
    ],
  });
  return { count, left, came };
}

describe('the flocks of a review', () => {
  it('are each observer’s own, earliest first, and the links are between them', async () => {
    const { count, left, came } = await raftThatMoved();
    const { flocks, links } = await reviewOf(count, 'kim');
    expect(flocks).toHaveLength(3);
    // Its own flock label, but no time: anywhere in its tally's span, which begins at 08:15.
    expect(flocks[0]).toMatchObject({
      taxon: 'Aythya americana',
      number: 40,
      start: '2027-01-16T13:15:00.000Z',
      end: '2027-01-16T15:30:00.000Z',
      timeNoted: false,
      position: null,
    });
    expect(flocks[1]).toEqual({
      lines: left,
      observer: { id: 'pia' },
      sections: [{ id: 's1' }],
      window: { id: 'w1' },
      taxon: 'Aythya affinis/marila',
      number: 400,
      start: '2027-01-16T13:40:00.000Z',
      end: '2027-01-16T13:40:00.000Z',
      timeNoted: true,
      position: [-79.045, 44.02],
    });
    expect(flocks[2]).toMatchObject({ lines: [came], number: 390, position: [-79.01, 44.02] });
    expect(links).toEqual([{ first: { lines: left }, second: { lines: [came] } }]);
  });

  it('leave out what a compiler who still has to count must not see', async () => {
    const { count, came } = await raftThatMoved();
    const before = await reviewOf(count, 'kai');
    // Kai's tally of North Bay is due: nothing of it, and no link to it, but all of Mill Reach.
    expect(before.flocks.map(({ observer }) => observer.id)).toEqual(['uma', 'uma']);
    expect(before.flocks[1]?.lines).toEqual([came]);
    expect(before.links).toEqual([]);

    await count.submit('kai', { sectionIds: ['s1'], lines: [aLine({ number: 20 })] });
    const after = await reviewOf(count, 'kai');
    expect(after.flocks.map(({ observer }) => observer.id)).toEqual(['uma', 'pia', 'uma']);
  });
});
