import { v7 as newId } from 'uuid';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { showsNumber } from '../support/shows-number.js';
import { aLine, planTestCount, type PersonId, type TestCount } from '../support/test-count.js';
import { TestApp } from '../support/start-app.js';
import { everythingVisible } from '../support/whole-count.js';

// Marks that nothing but one tally can bring into an answer.
const NUMBER = 7919;
const NOTE = 'beyond the sunken barge';

let app: TestApp;

beforeAll(async () => {
  app = await TestApp.start();
});

afterAll(() => app.stop());

interface Secret {
  readonly count: TestCount;
  /** The tally with the marks. */
  readonly tally: string;
}

/** Pia has counted; Ola, Uma and Kai, who also compiles, still have to; nobody else will. */
async function piaHasCounted(sectionIds = ['s1']): Promise<Secret> {
  const count = await planTestCount(app, {
    assignments: [
      ['pia', sectionIds],
      ['ola', ['s1']],
      ['kai', ['s1']],
      ['uma', ['s2']],
    ],
  });
  const line = aLine({ number: NUMBER, note: NOTE });
  const { id } = await count.submit('pia', { sectionIds, lines: [line] });
  return { count, tally: id };
}

async function seen({ count, tally }: Secret, person: PersonId): Promise<string> {
  return everythingVisible(count.as[person], count.id, [tally]);
}

async function sees(secret: Secret, person: PersonId): Promise<boolean> {
  const text = await seen(secret, person);
  const note = text.includes(NOTE);
  const number = showsNumber(text, NUMBER);
  // Seen whole or not at all: a number without its note would be a leak through something computed.
  if (note !== number) {
    throw new Error(`${person} sees part of it: note ${note}, number ${number}`);
  }
  return note;
}

it('tells a number from digits of an id, a hash or another number', () => {
  for (const text of ['"number":7919,', 'of 7919 birds', '7,919', '"mean":7919.5', '(7919)']) {
    expect([text, showsNumber(text, NUMBER)]).toEqual([text, true]);
  }
  const hash = 'b'.repeat(30) + '7919' + 'a'.repeat(30);
  for (const text of [
    '01980000-7919-7919-8919-a00079190000',
    '01980000-0000-7000-8000-a00079190000:1',
    `"inputHash":"${hash}"`,
    '"ratio":0.7919',
    '17919',
    '79190',
  ]) {
    expect([text, showsNumber(text, NUMBER)]).toEqual([text, false]);
  }
});

describe('while a window is open', () => {
  it('an observer sees nothing of a cell before their own tally of it is in', async () => {
    const secret = await piaHasCounted();
    expect(await sees(secret, 'ola')).toBe(false);
    expect(await sees(secret, 'uma')).toBe(false);

    await secret.count.submit('ola', {});
    expect(await sees(secret, 'ola')).toBe(true);
    expect(await sees(secret, 'uma')).toBe(false);
  });

  it('an observer sees no review, compiled count, coverage or trail, even with their own in', async () => {
    const secret = await piaHasCounted();
    await secret.count.submit('ola', {});
    const { as, id } = secret.count;
    // The first two are never for observers; the others only once the count is sealed.
    for (const [field, expected] of [
      ['review { inputHash }', 'NOT_ALLOWED'],
      ['coverage { independentTallies }', 'NOT_ALLOWED'],
      ['compiled { total }', 'NOT_NOW'],
      ['auditTrail { size }', 'NOT_NOW'],
    ]) {
      const query = `query ($id: ID!) { count(id: $id) { ${field} } }`;
      const { code } = await as.ola.refused(query, { id });
      expect([field, code]).toEqual([field, expected]);
    }
  });

  it('the leader sees who has submitted, and no number', async () => {
    const secret = await piaHasCounted();
    expect(await sees(secret, 'lea')).toBe(false);
    const text = await seen(secret, 'lea');
    expect(text).toContain('"submitted":[{"id":"pia"}]');
    // Not even the leader who planned it all.
    const planner = await everythingVisible(secret.count.planner, secret.count.id, [secret.tally]);
    expect(showsNumber(planner, NUMBER)).toBe(false);
    expect(planner).not.toContain(NOTE);
  });

  it('a compiler who does not count sees what is there', async () => {
    expect(await sees(await piaHasCounted(), 'kim')).toBe(true);
  });

  it('a compiler who still has to count a cell sees a review without it', async () => {
    const secret = await piaHasCounted();
    const { count } = secret;
    await count.submit('uma', { sectionIds: ['s2'], lines: [aLine({ number: 333 })] });

    expect(await sees(secret, 'kai')).toBe(false);
    const before = await seen(secret, 'kai');
    expect(before).toContain('"total":333');
    expect(before).toContain('North Bay in window w1: you see it once your own tally');
    expect(before).not.toContain('s1:w1');

    await count.submit('kai', {});
    expect(await sees(secret, 'kai')).toBe(true);
  });

  it('a tally over several sections joins them into one cell', async () => {
    const secret = await piaHasCounted(['s1', 's2']);
    const { count } = secret;
    // Uma's own section is joined to s1 by Pia's tally, so hers is due in the cell as well.
    expect(await sees(secret, 'uma')).toBe(false);
    await count.submit('uma', { sectionIds: ['s2'] });
    expect(await sees(secret, 'uma')).toBe(true);
    expect(await sees(secret, 'ola')).toBe(false);
    expect(await sees(secret, 'kai')).toBe(false);
  });

  it('sections are joined through other tallies and through what is only assigned yet', async () => {
    for (const isSubmitted of [true, false]) {
      const count = await planTestCount(app, {
        assignments: [
          ['ola', ['s1']],
          ['pia', ['s1', 's2']],
          ['kai', ['s2']],
        ],
      });
      const line = aLine({ number: NUMBER, note: NOTE });
      const { id } = await count.submit('ola', { lines: [line] });
      if (isSubmitted) await count.submit('pia', { sectionIds: ['s1', 's2'] });
      // Ola counted s1 alone, but Pia's sections make one cell of s1 and s2, where Kai's is due.
      expect(await sees({ count, tally: id }, 'kai')).toBe(false);
      await count.submit('kai', { sectionIds: ['s2'] });
      expect(await sees({ count, tally: id }, 'kai')).toBe(true);
    }
  });

  it('one tally of two that are due in a cell is not enough', async () => {
    const count = await planTestCount(app, {
      assignments: [
        ['pia', ['s1', 's2']],
        ['ola', ['s1']],
        ['ola', ['s2']],
      ],
    });
    const line = aLine({ number: NUMBER, note: NOTE });
    const { id } = await count.submit('pia', { sectionIds: ['s1', 's2'], lines: [line] });
    const secret = { count, tally: id };
    await count.submit('ola', { sectionIds: ['s1'] });
    expect(await sees(secret, 'ola')).toBe(false);
    await count.submit('ola', { sectionIds: ['s2'] });
    expect(await sees(secret, 'ola')).toBe(true);
  });

  it('whoever is in the party of a tally sees it', async () => {
    const count = await planTestCount(app, { assignments: [['pia', ['s1']]] });
    const line = aLine({ number: NUMBER, note: NOTE });
    const { id } = await count.submit('pia', { partyIds: ['uma'], lines: [line] });
    expect(await sees({ count, tally: id }, 'uma')).toBe(true);
    expect(await sees({ count, tally: id }, 'ola')).toBe(false);
  });

  it('reasons of corrections and earlier versions stay hidden as well', async () => {
    const { count, tally } = await piaHasCounted();
    const reason = 'It was 4231 after all';
    const { id } = await count.submit('pia', {
      replaces: tally,
      reason,
      lines: [aLine({ number: 4231 })],
    });
    for (const person of ['ola', 'lea', 'kai', 'uma'] as const) {
      const text = await everythingVisible(count.as[person], count.id, [tally, id]);
      for (const mark of [reason, NOTE]) {
        expect([person, mark, text.includes(mark)]).toEqual([person, mark, false]);
      }
      for (const number of [4231, NUMBER]) {
        expect([person, number, showsNumber(text, number)]).toEqual([person, number, false]);
      }
    }
  });

  it('rulings and queries on a hidden cell stay hidden from a compiler who is blind there', async () => {
    const { count, tally } = await piaHasCounted();
    const { kim, kai, pia } = count.as;
    const rulingId = newId();
    await kim.ask('mutation ($input: RulingInput!) { giveRuling(input: $input) { id } }', {
      input: {
        id: rulingId,
        countId: count.id,
        target: { kind: 'tally', tally },
        decision: { kind: 'exclude' },
        reason: 'Counted in fog',
      },
    });
    await kim.ask('mutation ($input: AskQueryInput!) { askQuery(input: $input) { id } }', {
      input: {
        id: newId(),
        countId: count.id,
        toPersonId: 'pia',
        question: 'Was the fog thick?',
      },
    });
    const text = await everythingVisible(kai, count.id, [tally]);
    expect(text).not.toContain('Counted in fog');
    expect(text).not.toContain('Was the fog thick?');

    for (const [mutation, variables] of [
      ['mutation ($id: ID!) { secondRuling(rulingId: $id) { id } }', { id: rulingId }],
      [
        'mutation ($id: ID!) { withdrawRuling(rulingId: $id, reason: "No") { id } }',
        { id: rulingId },
      ],
      [
        'mutation ($input: RulingInput!) { giveRuling(input: $input) { id } }',
        {
          input: {
            id: newId(),
            countId: count.id,
            target: { kind: 'tally', tally },
            decision: { kind: 'exclude' },
            reason: 'No',
          },
        },
      ],
      [
        'mutation ($input: AskQueryInput!) { askQuery(input: $input) { id } }',
        { input: { id: newId(), countId: count.id, toPersonId: 'pia', question: 'How many?' } },
      ],
    ] as const) {
      const { code } = await kai.refused(mutation, variables);
      expect([mutation, ['NOT_FOUND', 'NOT_NOW'].includes(code)]).toEqual([mutation, true]);
    }
    // Pia, who was asked, is told of her own lines only.
    expect(await everythingVisible(pia, count.id, [])).toContain('Was the fog thick?');
    expect(await everythingVisible(count.as.ola, count.id, [tally])).not.toContain('fog');
  });
});

describe('when the leader has closed the window', () => {
  it('blindness ends, and only the review stays with those who review', async () => {
    const secret = await piaHasCounted();
    const { count } = secret;
    await count.close();
    for (const person of ['ola', 'uma', 'lea', 'kai', 'kim'] as const) {
      expect([person, await sees(secret, person)]).toEqual([person, true]);
    }
    const review = 'query ($id: ID!) { count(id: $id) { review { inputHash } } }';
    expect((await count.as.ola.refused(review, { id: count.id })).code).toBe('NOT_ALLOWED');
    expect(await count.as.lea.ask(review, { id: count.id })).toMatchObject({ count: {} });
  });

  it('another window stays blind, and the leader waits for all of them', async () => {
    const count = await planTestCount(app, {
      windows: ['w1', 'w2'],
      assignments: [
        ['pia', ['s1'], 'w1'],
        ['pia', ['s1'], 'w2'],
        ['ola', ['s1'], 'w1'],
        ['ola', ['s1'], 'w2'],
      ],
    });
    const at = { start: '2027-01-16T13:15:00-05:00', end: '2027-01-16T14:30:00-05:00' };
    const one = await count.submit('pia', { lines: [aLine({ number: 611 })] });
    const line = aLine({ number: NUMBER, note: NOTE });
    const two = await count.submit('pia', { windowId: 'w2', ...at, lines: [line] });
    await count.close('w1');

    const ola = await everythingVisible(count.as.ola, count.id, [one.id, two.id]);
    expect(ola).toContain('"total":611');
    expect(ola).not.toContain(NOTE);
    expect(await sees({ count, tally: two.id }, 'lea')).toBe(false);
    await count.close('w2');
    expect(await sees({ count, tally: two.id }, 'lea')).toBe(true);
  });
});
