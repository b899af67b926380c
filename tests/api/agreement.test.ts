import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aLine, planTestCount, type PersonId, type TestCount } from '../support/test-count.js';
import { TestApp } from '../support/start-app.js';

const TAXA = [
  'Aythya marila',
  'Anas platyrhynchos',
  'Branta canadensis',
  'Fulica americana',
  'Bucephala albeola',
  'Mergus merganser',
];

let app: TestApp;
let count: TestCount;

beforeAll(async () => {
  app = await TestApp.start();
  count = await planTestCount(app, {
    assignments: [
      ['ola', ['s1']],
      ['pia', ['s1']],
      ['uma', ['s2']],
      ['kai', ['s2']],
    ],
  });
  const tally = (factor: number, uneven: number): object[] =>
    TAXA.map((taxon, place) =>
      aLine({ taxon, number: factor * (place + 3) + uneven * (place % 3) }),
    );
  await count.submit('ola', { lines: tally(10, 0) });
  await count.submit('pia', { lines: tally(12, 1) });
  await count.submit('uma', { sectionIds: ['s2'], lines: tally(31, 0) });
  await count.submit('kai', { sectionIds: ['s2'], lines: tally(37, 2) });
});

afterAll(() => app.stop());

const STATISTIC = '{ value low high n }';
const OWN = `query ($id: ID!) { count(id: $id) { ownAgreement {
  byPair { a { id name } b { id name } measures { withinTolerance ${STATISTIC} kappa ${STATISTIC} }
    ratios { points { taxa a b ratio } meanRatio ${STATISTIC} lower ${STATISTIC} upper ${STATISTIC} }
    confusion { taxa entries { a b number } }
    sensitivities { taxon byA byB byBoth ofA ${STATISTIC} ofB ${STATISTIC} } }
  ratios { observer { id } ratio ${STATISTIC} } } } }`;

interface Pair {
  readonly a: { readonly id: string };
  readonly b: { readonly id: string };
  readonly ratios: {
    readonly points: readonly { readonly a: number; readonly b: number; readonly ratio: number }[];
    readonly meanRatio: { readonly value: number | null };
  };
  readonly confusion: {
    readonly entries: readonly { readonly a: string | null; readonly b: string | null }[];
  };
}

interface Own {
  readonly byPair: readonly Pair[];
  readonly ratios: readonly { readonly observer: { readonly id: string } }[];
}

async function own(person: PersonId): Promise<Own> {
  const answer = await count.as[person].ask<{ count: { ownAgreement: Own } }>(OWN, {
    id: count.id,
  });
  return answer.count.ownAgreement;
}

describe('agreement as each may see it', () => {
  it('says nothing to observers while a window is open, and never to a compiler who counts nothing', async () => {
    expect((await count.as.ola.refused(OWN, { id: count.id })).code).toBe('NOT_NOW');
    expect((await count.as.kim.refused(OWN, { id: count.id })).code).toBe('NOT_ALLOWED');
    await count.close();
  });

  it('shows observers their own pairs, from their side, and nobody else', async () => {
    const ofOla = await own('ola');
    const ofPia = await own('pia');
    expect(ofOla.byPair.map(({ a, b }) => [a.id, b.id])).toEqual([['ola', 'pia']]);
    expect(ofPia.byPair.map(({ a, b }) => [a.id, b.id])).toEqual([['pia', 'ola']]);
    expect(ofOla.ratios.map(({ observer }) => observer.id)).toEqual(['ola']);
    const products = [0, 1, 2, 3, 4, 5].map(
      (place) => (12 * (place + 3) + (place % 3)) / (10 * (place + 3)),
    );
    const mean = products.reduce((product, ratio) => product * ratio, 1) ** (1 / 6);
    expect(ofOla.byPair[0]?.ratios.meanRatio.value).toBeCloseTo(1 / mean, 5);
    expect(ofPia.byPair[0]?.ratios.meanRatio.value).toBeCloseTo(mean, 5);
    expect(ofPia.byPair[0]?.ratios.points.every(({ a, b, ratio }) => a > b && ratio > 1)).toBe(
      true,
    );
    // Pia counted more of each: birds that only she has stand under a.
    expect(ofPia.byPair[0]?.confusion.entries.filter(({ b }) => b === null).length).toBe(6);
    const text = JSON.stringify(ofOla);
    for (const stranger of ['uma', 'kai', 'Delacroix', 'Moreau']) {
      expect(text).not.toContain(stranger);
    }
  });

  it('shows single observers to the leader alone', async () => {
    const query = `query ($id: ID!) { count(id: $id) { review { agreement {
      byPair { a { id } } observers { observer { id } } observerModel { n observers { observer { id } } }
      observerConsistency { groups } detection { byObserver { flocks } } } } } }`;
    const see = async (person: PersonId) => {
      const answer = await count.as[person].ask<{
        count: {
          review: {
            agreement: {
              byPair: object[];
              observers: object[];
              observerModel: { observers: object[] } | null;
            };
          };
        };
      }>(query, { id: count.id });
      return answer.count.review.agreement;
    };
    const leader = await see('lea');
    const compiler = await see('kim');
    expect(leader.byPair.length).toBe(2);
    expect(leader.observers.length).toBe(4);
    expect(leader.observerModel?.observers.length).toBe(4);
    expect(compiler.byPair.length).toBe(2);
    expect(compiler.observers).toEqual([]);
    expect(compiler.observerModel).toBeNull();
  });
});
