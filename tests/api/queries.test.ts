import { v7 as newId } from 'uuid';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aLine, planTestCount, type TestCount } from '../support/test-count.js';
import { TestApp } from '../support/start-app.js';

const QUERY = '{ id disagreementId about question askedBy { id } to { id } answer answeredAt }';
const ASK = `mutation ($input: AskQueryInput!) { askQuery(input: $input) ${QUERY} }`;
const ANSWER = `mutation ($id: ID!, $answer: String!) { answerQuery(queryId: $id, answer: $answer) ${QUERY} }`;
const QUERIES = `query ($id: ID!) { count(id: $id) { queries ${QUERY} } }`;

interface Query {
  id: string;
  about: string;
  disagreementId: string | null;
  answer: string | null;
}

let app: TestApp;

beforeAll(async () => {
  app = await TestApp.start();
});

afterAll(() => app.stop());

async function aDispute(): Promise<{ count: TestCount; disagreementId: string }> {
  const count = await planTestCount(app, {
    assignments: [
      ['ola', ['s1']],
      ['pia', ['s1']],
      ['uma', ['s1']],
    ],
  });
  await count.submit('ola', { lines: [aLine({ id: `${count.id}-a1`, number: 900 })] });
  await count.submit('pia', { lines: [aLine({ number: 313 })] });
  const { count: found } = await count.as.kim.ask<{
    count: { review: { disagreements: { id: string }[] } };
  }>(
    'query ($id: ID!) { count(id: $id) { review { disagreements(kind: "count-spread") { id } } } }',
    { id: count.id },
  );
  return { count, disagreementId: found.review.disagreements[0]?.id ?? '' };
}

async function asked(
  { count, disagreementId }: { count: TestCount; disagreementId: string },
  changes: object = {},
): Promise<{ input: object; query: Query }> {
  const input = {
    id: newId(),
    countId: count.id,
    disagreementId,
    toPersonId: 'ola',
    question: 'Could the far raft be in it twice?',
    ...changes,
  };
  const { askQuery } = await count.as.kim.ask<{ askQuery: Query }>(ASK, { input });
  return { input, query: askQuery };
}

async function queriesOf(
  count: TestCount,
  person: 'ola' | 'pia' | 'kim' | 'lea',
): Promise<Query[]> {
  const answer = await count.as[person].ask<{ count: { queries: Query[] } }>(QUERIES, {
    id: count.id,
  });
  return answer.count.queries;
}

describe('a query', () => {
  it('shows the one asked their own lines, and the compiler the whole disagreement', async () => {
    const dispute = await aDispute();
    const { query } = await asked(dispute);
    expect(query.about).toContain('900');
    expect(query.about).toContain('313');

    const [forOla] = await queriesOf(dispute.count, 'ola');
    expect(forOla).toMatchObject({ id: query.id, disagreementId: null, answer: null });
    expect(forOla?.about).toBe(`These lines of yours: ${dispute.count.id}-a1: Aythya marila, 900.`);
    expect(await queriesOf(dispute.count, 'pia')).toEqual([]);
    expect(await queriesOf(dispute.count, 'kim')).toEqual([query]);
    expect(await queriesOf(dispute.count, 'lea')).toEqual([]);
  });

  it('tells what it is about in the language of the reader, though it is recorded in English', async () => {
    const dispute = await aDispute();
    const { count } = dispute;
    for (const person of ['kim', 'ola'] as const) count.as[person].language = 'fr';
    const { id } = (await asked(dispute)).query;
    const [[forKim], [forOla]] = [await queriesOf(count, 'kim'), await queriesOf(count, 'ola')];
    expect(forKim?.about).toMatch(/^Oiseaux comptés dans le secteur North Bay/u);
    expect(forOla?.about).toBe(
      `Ces lignes de votre relevé\u00a0: ${count.id}-a1: Aythya marila, 900.`,
    );
    const recorded = app.onDisk((database) =>
      database.prepare('SELECT about, aboutForAsked FROM observer_query WHERE id = ?').get(id),
    );
    count.as.kim.language = 'en';
    expect(recorded).toEqual({
      about: (await queriesOf(count, 'kim'))[0]?.about,
      aboutForAsked: `These lines of yours: ${count.id}-a1: Aythya marila, 900.`,
    });
  });

  it('is answered once, by the one who was asked, and the answer stays', async () => {
    const dispute = await aDispute();
    const { as } = dispute.count;
    const { query } = await asked(dispute);
    const answer = { id: query.id, answer: 'No, it lay behind the island' };
    expect((await as.pia.refused(ANSWER, answer)).code).toBe('NOT_FOUND');
    expect((await as.ola.refused(ANSWER, { id: query.id, answer: ' ' })).code).toBe('BAD_INPUT');

    await as.ola.ask(ANSWER, answer);
    await as.ola.ask(ANSWER, answer);
    const other = { id: query.id, answer: 'Well, perhaps' };
    expect((await as.ola.refused(ANSWER, other)).code).toBe('NOT_NOW');
    expect(await queriesOf(dispute.count, 'kim')).toMatchObject([{ answer: answer.answer }]);
  });

  it('sent twice is put once; another under its id is refused', async () => {
    const dispute = await aDispute();
    const { input } = await asked(dispute);
    await dispute.count.as.kim.ask(ASK, { input });
    expect(await queriesOf(dispute.count, 'kim')).toHaveLength(1);
    const changed = { ...input, question: 'Something else?' };
    expect((await dispute.count.as.kim.refused(ASK, { input: changed })).code).toBe('ID_REUSED');
  });

  it('is put by compilers to people of the count whose own tally is in', async () => {
    const dispute = await aDispute();
    const { as, id: countId } = dispute.count;
    const refused = (client: 'kim' | 'lea' | 'ola', changes: object) =>
      as[client].refused(ASK, {
        input: {
          id: newId(),
          countId,
          disagreementId: dispute.disagreementId,
          toPersonId: 'ola',
          question: 'Why?',
          ...changes,
        },
      });
    expect((await refused('lea', {})).code).toBe('NOT_ALLOWED');
    expect((await refused('ola', {})).code).toBe('NOT_ALLOWED');
    expect((await refused('kim', { toPersonId: 'nobody' })).code).toBe('NOT_FOUND');
    expect((await refused('kim', { disagreementId: 'none' })).code).toBe('NOT_FOUND');
    expect((await refused('kim', { question: '' })).code).toBe('BAD_INPUT');
    const early = await refused('kim', { toPersonId: 'uma' });
    expect(early.code).toBe('NOT_NOW');
    expect(early.message).toContain('still has to submit');
    const uninvolved = await refused('kim', { toPersonId: 'kai' });
    expect(uninvolved.code).toBe('NOT_NOW');
    expect(uninvolved.message).toContain('has no tally here');
  });
});
