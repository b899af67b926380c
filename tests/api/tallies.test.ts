import { v7 as newId } from 'uuid';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  aLine,
  aTally,
  invited,
  planTestCount,
  SUBMIT,
  type TestCount,
} from '../support/test-count.js';
import { TestApp } from '../support/start-app.js';

const MINE = `query ($id: ID!) { count(id: $id) {
  myTallies { id version replaces reason lines { taxon number present low high } }
  assignments { id submitted person { id } tally { id } }
} }`;
const TALLY =
  'query ($id: ID!, $countId: ID) { tally(id: $id, countId: $countId) { id version observer { id } } }';

interface Mine {
  count: {
    myTallies: { id: string; version: number; replaces: string | null; reason: string | null }[];
    assignments: { submitted: boolean; person: { id: string }; tally: { id: string } | null }[];
  };
}

let app: TestApp;

beforeAll(async () => {
  app = await TestApp.start();
});

afterAll(() => app.stop());

function aCount(): Promise<TestCount> {
  return planTestCount(app, {
    assignments: [
      ['ola', ['s1']],
      ['ola', ['s2']],
      ['pia', ['s1']],
    ],
  });
}

async function auditActs(count: TestCount): Promise<string[]> {
  const { count: found } = await count.planner.ask<{
    count: { auditTrail: { entries: { act: string }[] } };
  }>('query ($id: ID!) { count(id: $id) { auditTrail { entries { act } } } }', { id: count.id });
  return found.auditTrail.entries.map(({ act }) => act).reverse();
}

describe('submitting a tally', () => {
  it('stores it with what it claims: numbers, ranges, presence, a stated zero', async () => {
    const count = await aCount();
    await count.submit('ola', {
      lines: [
        aLine({ taxon: 'GRSC/LESC', number: 60, low: 50, high: 80 }),
        aLine({ taxon: 'Aythya sp.', number: null, low: 20, high: 30 }),
        aLine({ taxon: 'Mallard', number: null, method: 'one-by-one' }),
        aLine({ taxon: 'Redhead', number: 0, method: 'one-by-one' }),
      ],
    });
    const mine = await count.as.ola.ask<{
      count: { myTallies: { lines: { taxon: string }[] }[] };
    }>(MINE, { id: count.id });
    const lines = mine.count.myTallies.flatMap((tally) => tally.lines);
    expect(lines.sort((a, b) => (a.taxon < b.taxon ? -1 : 1))).toEqual([
      { taxon: 'Anas platyrhynchos', number: null, present: true, low: null, high: null },
      { taxon: 'Aythya affinis/marila', number: 60, present: false, low: 50, high: 80 },
      { taxon: 'Aythya americana', number: 0, present: false, low: null, high: null },
      { taxon: 'Aythya sp.', number: null, present: false, low: 20, high: 30 },
    ]);
  });

  it('is done once however often it is sent, also at the same time', async () => {
    const count = await aCount();
    const input = aTally({ countId: count.id });
    const all = await Promise.all(
      Array.from({ length: 5 }, () => count.as.ola.ask(SUBMIT, { input })),
    );
    expect(new Set(all.map((answer) => JSON.stringify(answer))).size).toBe(1);
    expect((await auditActs(count)).filter((act) => act === 'tally.submit')).toHaveLength(1);
  });

  it('gives a late retry the stored tally, though the window is closed by now', async () => {
    const count = await aCount();
    const input = aTally({ countId: count.id });
    const first = await count.as.ola.ask(SUBMIT, { input });
    await count.close();
    expect(await count.as.ola.ask(SUBMIT, { input })).toEqual(first);
  });

  it('refuses the same id with other content, and the id of somebody else', async () => {
    const count = await aCount();
    const { id } = await count.submit('ola', {});
    const other = aTally({ countId: count.id, id, lines: [aLine({ number: 7 })] });
    expect((await count.as.ola.refused(SUBMIT, { input: other })).code).toBe('ID_REUSED');
    expect((await count.as.pia.refused(SUBMIT, { input: other })).code).toBe('ID_REUSED');
  });

  it('refuses bad input with every fault at once and stores nothing', async () => {
    const count = await aCount();
    const input = aTally({
      countId: count.id,
      sectionIds: ['s9'],
      coverage: 1.5,
      start: '2027-01-16 08:15',
      lines: [
        aLine({ taxon: 'Aythya marilla' }),
        aLine({ number: -3 }),
        aLine({ method: 'blok' }),
        aLine({ number: 10, male: 8, female: 5 }),
        aLine({ lon: -79 }),
      ],
    });
    const { code, message, faults } = await count.as.ola.refused(SUBMIT, { input });

    expect(code).toBe('BAD_INPUT');
    expect(faults.map(({ row, column }) => [row, column])).toEqual(
      expect.arrayContaining([
        [null, 'section'],
        [null, 'coverage'],
        [null, 'start'],
        [1, 'taxon'],
        [2, 'number'],
        [3, 'method'],
        [4, 'male'],
        [5, 'lat'],
      ]),
    );
    expect(faults).toHaveLength(8);
    expect(faults.find(({ row }) => row === 1)?.nearest).toBe('Aythya marila');
    expect(faults.find(({ row }) => row === 3)?.nearest).toBe('block');
    expect(message).toContain('Nothing was taken in: 8 things need mending.');
    expect(message).toContain('Did you mean Aythya marila?');
    const mine = await count.as.ola.ask<Mine>(MINE, { id: count.id });
    expect(mine.count.myTallies).toEqual([]);
  });

  it('refuses line ids that are in use elsewhere in the count', async () => {
    const count = await aCount();
    const line = aLine();
    await count.submit('ola', { lines: [line] });
    const input = aTally({ countId: count.id, lines: [line] });
    const { faults } = await count.as.pia.refused(SUBMIT, { input });
    expect(faults.map(({ code }) => code)).toEqual(['duplicate-id']);
  });

  it('refuses in the language of the reader, and answers with which that is', async () => {
    const count = await aCount();
    const client = count.as.ola;
    const input = aTally({ countId: count.id, coverage: 1.5, lines: [aLine({ taxon: 'Mallrd' })] });
    const english = await client.refused(SUBMIT, { input });
    client.language = 'fr-CA, en;q=0.5';
    const french = await client.refused(SUBMIT, { input });
    expect(english.message).toContain('Nothing was taken in: 2 things need mending.');
    expect(french.message.replace(/\s/gu, ' ').split('\n')[0]).toContain(
      'Rien n’a été enregistré : 2 choses sont à corriger.',
    );
    expect(french.faults.map(({ problem }) => problem.replace(/\s/gu, ' '))).toEqual([
      '« 1.5 » est hors des limites',
      '« Mallrd » n’est pas un taxon connu',
    ]);
    expect(french.faults.map(({ code, nearest }) => [code, nearest])).toEqual(
      english.faults.map(({ code, nearest }) => [code, nearest]),
    );
    const elsewhere = aTally({ countId: count.id, sectionIds: ['s3'] });
    expect((await client.refused(SUBMIT, { input: elsewhere })).message).toContain(
      'Vos affectations sont s1 pendant w1, s2 pendant w1.',
    );
    const stranger = app.client();
    stranger.language = 'fr';
    const signIn = 'mutation { signIn(name: "Nobody Here", password: "not the password") { id } }';
    expect((await stranger.refused(signIn)).message).toMatch(/^Le nom et le mot de passe/u);
    const sheet = await stranger.get('/field-sheets/none.pdf');
    expect(await sheet.text()).toMatch(/^Personne n’est connecté\./u);
    expect(sheet.headers.get('content-language')).toBe('fr');
    expect(sheet.headers.get('vary')).toContain('Accept-Language');
  });

  it('is for one’s own assignments, and for observers', async () => {
    const count = await aCount();
    const elsewhere = aTally({ countId: count.id, sectionIds: ['s3'] });
    const refused = await count.as.ola.refused(SUBMIT, { input: elsewhere });
    expect(refused.code).toBe('NOT_ALLOWED');
    expect(refused.message).toContain('Your assignments are s1 in w1, s2 in w1.');
    const input = aTally({ countId: count.id });
    expect((await count.as.lea.refused(SUBMIT, { input })).code).toBe('NOT_ALLOWED');
    expect((await count.as.kim.refused(SUBMIT, { input })).code).toBe('NOT_ALLOWED');
    expect((await app.client().refused(SUBMIT, { input })).code).toBe('NOT_SIGNED_IN');
  });

  it('counts a section of a window once', async () => {
    const count = await aCount();
    const { id } = await count.submit('ola', {});
    const { code, message } = await count.as.ola.refused(SUBMIT, {
      input: aTally({ countId: count.id }),
    });
    expect(code).toBe('ALREADY_SUBMITTED');
    expect(message).toContain(`You have already submitted tally ${id}`);
  });

  it('takes one of two that two phones send at the same time, and says that of the other', async () => {
    const count = await aCount();
    const inputs = [newId(), newId()].map((id) => ({
      ...aTally({ countId: count.id, id }),
      id,
    }));
    const outcomes = await Promise.allSettled(
      inputs.map((input) => count.as.ola.ask(SUBMIT, { input })),
    );
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    const mine = await count.as.ola.ask<Mine>(MINE, { id: count.id });
    const taken = inputs[outcomes.findIndex(({ status }) => status === 'fulfilled')];
    expect(mine.count.myTallies.map(({ id }) => id)).toEqual([taken?.id]);
    const other = inputs.find((input) => input !== taken);
    const { code } = await count.as.ola.refused(SUBMIT, { input: other });
    expect(code).toBe('ALREADY_SUBMITTED');
    // Sent as a correction instead, it takes the other's place; both stay on record.
    await count.as.ola.ask(SUBMIT, {
      input: { ...other, replaces: taken?.id, reason: 'The other phone had it right' },
    });
    const after = await count.as.ola.ask<Mine>(MINE, { id: count.id });
    expect(after.count.myTallies).toMatchObject([{ id: other?.id, version: 2 }]);
  });

  it('is not taken as that of somebody else who has signed in on the same phone', async () => {
    const count = await aCount();
    const input = { ...aTally({ countId: count.id }), observerId: 'ola' };
    const { code, message } = await count.as.pia.refused(SUBMIT, { input });
    expect(code).toBe('NOT_SIGNED_IN');
    expect(message).toContain('Pia Osei');
    await count.as.ola.ask(SUBMIT, { input });
    // Who is asked does not belong to the content: sent without it, it is the same tally.
    await count.as.ola.ask(SUBMIT, { input: { ...input, observerId: null } });
  });

  it('is over when the window is closed, and says what to do', async () => {
    const count = await planTestCount(app, {
      windows: ['w1', 'w2'],
      assignments: [['ola', ['s1']]],
    });
    await count.close();
    const { code, message } = await count.as.ola.refused(SUBMIT, {
      input: aTally({ countId: count.id }),
    });
    expect(code).toBe('NOT_NOW');
    expect(message).toContain('Tell the compiler');
  });

  it('fulfils its assignment, part by part', async () => {
    const count = await planTestCount(app, { assignments: [['ola', ['s1', 's2']]] });
    const submitted = async (): Promise<boolean[]> => {
      const mine = await count.as.ola.ask<Mine>(MINE, { id: count.id });
      return mine.count.assignments.map((assignment) => assignment.submitted);
    };
    await count.submit('ola', { sectionIds: ['s1'] });
    expect(await submitted()).toEqual([false]);
    await count.submit('ola', { sectionIds: ['s2'] });
    expect(await submitted()).toEqual([true]);
  });

  it('keeps the audit chain whole when many submit at once', async () => {
    const people = ['ola', 'pia', 'uma', 'kai'] as const;
    const count = await planTestCount(app, {
      assignments: people.flatMap((person) =>
        ['s1', 's2', 's3'].map((section) => [person, [section]] as const),
      ),
    });
    await Promise.all(
      people.flatMap((person) =>
        ['s1', 's2', 's3'].map((section) => count.submit(person, { sectionIds: [section] })),
      ),
    );
    const { count: found } = await count.planner.ask<{
      count: { auditTrail: { intact: boolean; entries: { seq: number; act: string }[] } };
    }>('query ($id: ID!) { count(id: $id) { auditTrail { intact entries { seq act } } } }', {
      id: count.id,
    });
    const { intact, entries } = found.auditTrail;
    expect(intact).toBe(true);
    expect(entries.map(({ seq }) => seq)).toEqual(
      Array.from({ length: entries.length }, (_, index) => entries.length - index),
    );
    expect(entries.filter(({ act }) => act === 'tally.submit')).toHaveLength(12);
  });
});

describe('correcting a tally', () => {
  it('is a new version that names the old one and says why; the old one stays', async () => {
    const count = await aCount();
    const first = await count.submit('ola', {});
    const second = await count.submit('ola', { replaces: first.id, reason: 'One row twice' });
    expect(second.version).toBe(2);

    const mine = await count.as.ola.ask<Mine>(MINE, { id: count.id });
    expect(mine.count.myTallies).toMatchObject([
      { id: second.id, version: 2, replaces: first.id, reason: 'One row twice' },
    ]);
    expect(await count.as.ola.ask(TALLY, { id: first.id })).toMatchObject({
      tally: { version: 1 },
    });
    expect(await auditActs(count)).toContain('tally.correct');
  });

  it('may move the tally to another of one’s sections', async () => {
    const count = await aCount();
    const first = await count.submit('ola', {});
    await count.submit('ola', {
      sectionIds: ['s2'],
      replaces: first.id,
      reason: 'It was Mill Reach',
    });
    const mine = await count.as.ola.ask<Mine>(MINE, { id: count.id });
    expect(mine.count.assignments.map(({ submitted }) => submitted).sort()).toEqual([false, true]);
  });

  it('needs a reason, the newest version, and an author’s own tally', async () => {
    const count = await aCount();
    const first = await count.submit('ola', {});
    const send = (person: 'ola' | 'pia', tally: object) =>
      count.as[person].refused(SUBMIT, { input: aTally({ countId: count.id, ...tally }) });

    const silent = await send('ola', { replaces: first.id });
    expect([silent.code, silent.faults[0]?.column]).toEqual(['BAD_INPUT', 'reason']);
    const groundless = await send('ola', { reason: 'Why not' });
    expect([groundless.code, groundless.faults[0]?.column]).toEqual(['BAD_INPUT', 'reason']);
    const foreign = await send('pia', { replaces: first.id, reason: 'I know better' });
    expect(foreign.code).toBe('NOT_FOUND');

    const second = await count.submit('ola', { replaces: first.id, reason: 'One row twice' });
    const outdated = await send('ola', { replaces: first.id, reason: 'Again' });
    expect(outdated.code).toBe('ALREADY_SUBMITTED');
    expect(outdated.message).toContain(second.id);
  });

  it('is over when the window is closed', async () => {
    const count = await aCount();
    const first = await count.submit('ola', {});
    await count.close();
    const input = aTally({ countId: count.id, replaces: first.id, reason: 'Too late' });
    expect((await count.as.ola.refused(SUBMIT, { input })).code).toBe('NOT_NOW');
  });
});

describe('a tally id in several counts', () => {
  it('is told apart by the count', async () => {
    const one = await aCount();
    const other = await planTestCount(app, { assignments: [['ola', ['s1']]] });
    const id = newId();
    await one.submit('ola', { id });
    await other.submit('ola', { id });
    expect(await one.as.ola.ask(TALLY, { id })).toMatchObject({ tally: { id } });

    const both = await invited(app, one.planner, one.id, 'ola');
    const { invite } = await other.planner.ask<{ invite: { path: string } }>(
      'mutation ($countId: ID!) { invite(countId: $countId, personId: "ola") { path } }',
      { countId: other.id },
    );
    await both.acceptInvite(invite.path);
    expect((await both.refused(TALLY, { id })).code).toBe('NOT_FOUND');
    expect(await both.ask(TALLY, { id, countId: one.id })).toMatchObject({ tally: { id } });
  });
});

describe('assignments', () => {
  const ASSIGN = 'mutation ($input: AssignInput!) { assign(input: $input) { id submitted } }';
  const UNASSIGN = 'mutation ($id: ID!) { unassign(assignmentId: $id) }';

  it('are made once, checked as a whole, and taken back until a tally came', async () => {
    const count = await planTestCount(app);
    const input = {
      id: newId(),
      countId: count.id,
      personId: 'ola',
      sectionIds: ['s1'],
      windowId: 'w1',
    };
    await count.planner.ask(ASSIGN, { input });
    await count.planner.ask(ASSIGN, { input });
    const changed = { ...input, sectionIds: ['s2'] };
    expect((await count.planner.refused(ASSIGN, { input: changed })).code).toBe('ID_REUSED');
    const wrong = { ...input, id: newId(), personId: 'lea', sectionIds: ['s7'], windowId: 'w9' };
    const { faults } = await count.planner.refused(ASSIGN, { input: wrong });
    expect(faults.map(({ column }) => column)).toEqual(['personId', 'windowId', 'sectionIds']);

    await count.submit('ola', {});
    expect((await count.planner.refused(UNASSIGN, { id: input.id })).code).toBe('NOT_NOW');
    const spare = { ...input, id: newId(), sectionIds: ['s3'] };
    await count.planner.ask(ASSIGN, { input: spare });
    expect(await count.planner.ask(UNASSIGN, { id: spare.id })).toEqual({ unassign: true });
    expect((await count.as.kim.refused(UNASSIGN, { id: input.id })).code).toBe('NOT_ALLOWED');
  });
});
