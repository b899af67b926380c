import { v7 as newId } from 'uuid';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiClient } from '../support/api-client.js';
import { aLine, planTestCount, type TestCount } from '../support/test-count.js';
import { TestApp } from '../support/start-app.js';
import { REVIEW } from '../support/whole-count.js';

const GIVE =
  'mutation ($input: RulingInput!) { giveRuling(input: $input) { id state text replaces reason target { kind cell group tally line } secondedBy { id } } }';
const SECOND = 'mutation ($id: ID!) { secondRuling(rulingId: $id) { state secondedBy { id } } }';
const WITHDRAW =
  'mutation ($id: ID!, $reason: String!) { withdrawRuling(rulingId: $id, reason: $reason) { state } }';

interface Disagreement {
  id: string;
  kind: string;
  ruling: { id: string; state: string } | null;
}
interface Review {
  inputHash: string;
  openMatters: string[];
  disagreements: Disagreement[];
  cells: { id: string; groups: { taxa: string[]; consensus: { number: number } }[] }[];
  rulings: { id: string; state: string }[];
}

let app: TestApp;

beforeAll(async () => {
  app = await TestApp.start();
});

afterAll(() => app.stop());

/** Ola and Pia differ widely on the scaup of s1; Kai, who also compiles, counted s2 with Uma. */
async function aDispute(): Promise<TestCount> {
  const count = await planTestCount(app, {
    assignments: [
      ['ola', ['s1']],
      ['pia', ['s1']],
      ['kai', ['s2']],
      ['uma', ['s2']],
    ],
  });
  await count.submit('ola', { lines: [aLine({ number: 900 })] });
  await count.submit('pia', { lines: [aLine({ number: 300 })] });
  await count.submit('kai', { sectionIds: ['s2'], lines: [aLine({ number: 800 })] });
  await count.submit('uma', { sectionIds: ['s2'], lines: [aLine({ number: 250 })] });
  return count;
}

async function review(client: ApiClient, countId: string): Promise<Review> {
  const { count } = await client.ask<{ count: { review: Review } }>(
    `query ($id: ID!) { count(id: $id) { review ${REVIEW} } }`,
    { id: countId },
  );
  return count.review;
}

async function spreadIn(count: TestCount, section: string): Promise<Disagreement> {
  const { disagreements } = await review(count.as.kim, count.id);
  const found = disagreements.find(
    ({ kind, id }) => kind === 'count-spread' && id.includes(`${section}:w1`),
  );
  if (found === undefined) throw new Error(`no count spread in ${section}`);
  return found;
}

async function acceptOla(count: TestCount, changes: object = {}): Promise<object> {
  const { id } = await spreadIn(count, 's1');
  return {
    id: newId(),
    countId: count.id,
    disagreementId: id,
    decision: { kind: 'accept-observer', observer: 'ola' },
    reason: 'Ola stood closer',
    ...changes,
  };
}

const numberOf = (found: Review, section: string): number | undefined =>
  found.cells.find(({ id }) => id === `${section}:w1`)?.groups[0]?.consensus.number;

describe('a ruling', () => {
  it('on a disagreement settles it and enters the compiled count', async () => {
    const count = await aDispute();
    expect(numberOf(await review(count.as.kim, count.id), 's1')).toBe(600);

    const { giveRuling } = await count.as.kim.ask<{ giveRuling: { id: string } }>(GIVE, {
      input: await acceptOla(count),
    });
    expect(giveRuling).toMatchObject({
      state: 'APPLIED',
      reason: 'Ola stood closer',
      text: 'The numbers of Ola Ferrant are taken: Aythya marila in s1:w1',
      target: { kind: 'group', cell: 's1:w1', group: ['Aythya marila'] },
    });
    const after = await review(count.as.kim, count.id);
    expect(numberOf(after, 's1')).toBe(900);
    expect((await spreadIn(count, 's1')).ruling).toMatchObject({
      id: giveRuling.id,
      state: 'APPLIED',
    });
  });

  it('sent twice is given once; another under its id is refused', async () => {
    const count = await aDispute();
    const input = await acceptOla(count);
    const first = await count.as.kim.ask(GIVE, { input });
    expect(await count.as.kim.ask(GIVE, { input })).toEqual(first);
    const other = { ...input, reason: 'Changed my mind' };
    expect((await count.as.kim.refused(GIVE, { input: other })).code).toBe('ID_REUSED');
    const matter = { ...input, decision: { kind: 'accept-observer', observer: 'pia' } };
    expect((await count.as.kim.refused(GIVE, { input: matter })).code).toBe('ID_REUSED');
    expect((await count.as.kai.refused(GIVE, { input })).code).toBe('ID_REUSED');
  });

  it('is for compilers', async () => {
    const count = await aDispute();
    const input = await acceptOla(count);
    expect((await count.as.ola.refused(GIVE, { input })).code).toBe('NOT_ALLOWED');
    expect((await count.as.lea.refused(GIVE, { input })).code).toBe('NOT_ALLOWED');
  });

  it('needs a reason and a decision that fits', async () => {
    const count = await aDispute();
    const refused = async (changes: object) =>
      count.as.kim.refused(GIVE, { input: await acceptOla(count, changes) });
    const silent = await refused({ reason: '  ' });
    expect([silent.code, silent.faults[0]?.column]).toEqual(['BAD_INPUT', 'reason']);
    const unfit = await refused({ decision: { kind: 'confirm-link' } });
    expect([unfit.code, unfit.faults[0]?.column]).toEqual(['BAD_INPUT', 'kind']);
    const misspelt = await refused({
      decision: {
        kind: 'set-numbers',
        numbers: [
          { taxon: 'Aythya marilla', number: 5 },
          { taxon: 'Redhead', number: -1 },
        ],
      },
    });
    expect(misspelt.faults.map(({ row, column, nearest }) => [row, column, nearest])).toEqual([
      [1, 'taxon', 'Aythya marila'],
      [2, 'number', null],
    ]);
    const stranger = await refused({ decision: { kind: 'accept-observer', observer: 'uma' } });
    expect(stranger.code).toBe('BAD_INPUT');
    expect((await refused({ disagreementId: 'nothing' })).code).toBe('NOT_FOUND');
    const nowhere = { target: { kind: 'group', cell: 's1:w1', group: ['Gavia immer'] } };
    expect((await refused(nowhere)).code).toBe('NOT_FOUND');
    expect((await refused({ target: { kind: 'group' } })).code).toBe('BAD_INPUT');
  });

  it('is refused when the review that was looked at is no longer the present one', async () => {
    const count = await aDispute();
    const { inputHash } = await review(count.as.kim, count.id);
    const mine = await count.as.pia.ask<{ count: { myTallies: { id: string }[] } }>(
      'query ($id: ID!) { count(id: $id) { myTallies { id } } }',
      { id: count.id },
    );
    await count.submit('pia', {
      replaces: mine.count.myTallies[0]?.id ?? '',
      reason: 'Slip of the pen',
      lines: [aLine({ number: 350 })],
    });
    const late = await acceptOla(count, { inputHash });
    expect((await count.as.kim.refused(GIVE, { input: late })).code).toBe('STALE');
    const fresh = await review(count.as.kim, count.id);
    await count.as.kim.ask(GIVE, {
      input: await acceptOla(count, { inputHash: fresh.inputHash }),
    });
  });

  it('tells the hash that the next ruling is given with, unless something else came between', async () => {
    const count = await aDispute();
    const { inputHash } = await review(count.as.kim, count.id);
    const { giveRuling } = await count.as.kim.ask<{ giveRuling: { inputHash: string } }>(
      'mutation ($input: RulingInput!) { giveRuling(input: $input) { inputHash } }',
      { input: await acceptOla(count, { inputHash }) },
    );
    expect(giveRuling.inputHash).not.toBe(inputHash);
    expect(giveRuling.inputHash).toBe((await review(count.as.kim, count.id)).inputHash);
  });

  it('goes stale when a tally under it changes, and does not enter then', async () => {
    const count = await aDispute();
    const input = await acceptOla(count);
    await count.as.kim.ask(GIVE, { input });
    const mine = await count.as.pia.ask<{ count: { myTallies: { id: string }[] } }>(
      'query ($id: ID!) { count(id: $id) { myTallies { id } } }',
      { id: count.id },
    );
    await count.submit('pia', {
      replaces: mine.count.myTallies[0]?.id ?? '',
      reason: 'Slip of the pen',
      lines: [aLine({ number: 880 })],
    });
    const after = await review(count.as.kim, count.id);
    expect(after.rulings.map(({ state }) => state)).toEqual(['STALE']);
    expect(numberOf(after, 's1')).toBe(890);
    expect(after.openMatters.join('\n')).toContain('is not applied');
  });

  it('on a tally or line leaves it out', async () => {
    const count = await aDispute();
    const { count: found } = await count.as.ola.ask<{
      count: { myTallies: { id: string; lines: { id: string }[] }[] };
    }>('query ($id: ID!) { count(id: $id) { myTallies { id lines { id } } } }', { id: count.id });
    const [tally] = found.myTallies;
    await count.as.kim.ask(GIVE, {
      input: {
        id: newId(),
        countId: count.id,
        target: { kind: 'tally', tally: tally?.id },
        decision: { kind: 'exclude' },
        reason: 'Counted from a boat',
      },
    });
    expect(numberOf(await review(count.as.kim, count.id), 's1')).toBe(300);
  });
});

describe('rulings that contradict', () => {
  it('are refused, both named, unless one takes the place of the other', async () => {
    const count = await aDispute();
    const first = await acceptOla(count);
    await count.as.kim.ask(GIVE, { input: first });
    const second = await acceptOla(count, {
      decision: { kind: 'accept-observer', observer: 'pia' },
    });
    const { code, message } = await count.as.kai.refused(GIVE, { input: second });
    expect(code).toBe('CONTRADICTION');
    expect(message).toContain((first as { id: string }).id);
    expect(message).toContain((second as { id: string }).id);

    const replacing = { ...second, replaces: (first as { id: string }).id };
    expect(await count.as.kai.ask(GIVE, { input: replacing })).toMatchObject({
      giveRuling: { state: 'APPLIED', replaces: (first as { id: string }).id },
    });
    const after = await review(count.as.kim, count.id);
    expect(after.rulings.map(({ state }) => state)).toEqual(['REPLACED', 'APPLIED']);
    expect(numberOf(after, 's1')).toBe(300);

    const again = await acceptOla(count, { replaces: (first as { id: string }).id });
    expect((await count.as.kim.refused(GIVE, { input: again })).code).toBe('NOT_FOUND');
  });

  it('make room when one is withdrawn, with a reason, by its author', async () => {
    const count = await aDispute();
    const first = await acceptOla(count);
    const { id } = first as { id: string };
    await count.as.kim.ask(GIVE, { input: first });
    expect((await count.as.kai.refused(WITHDRAW, { id, reason: 'No' })).code).toBe('NOT_ALLOWED');
    expect((await count.as.kim.refused(WITHDRAW, { id, reason: '' })).code).toBe('BAD_INPUT');
    const withdraw = { id, reason: 'Wrong bird' };
    expect(await count.as.kim.ask(WITHDRAW, withdraw)).toEqual({
      withdrawRuling: { state: 'WITHDRAWN' },
    });
    // A retry of the same withdrawal changes nothing; another is refused.
    await count.as.kim.ask(WITHDRAW, withdraw);
    expect((await count.as.kim.refused(WITHDRAW, { id, reason: 'Again' })).code).toBe('NOT_NOW');
    expect(numberOf(await review(count.as.kim, count.id), 's1')).toBe(600);
    await count.as.kim.ask(GIVE, { input: await acceptOla(count) });
  });
});

describe('a ruling on a cell of one’s own tally', () => {
  async function ownRuling(count: TestCount): Promise<{ id: string }> {
    const { id: disagreementId } = await spreadIn(count, 's2');
    const input = {
      id: newId(),
      countId: count.id,
      disagreementId,
      decision: { kind: 'accept-observer', observer: 'kai' },
      reason: 'I saw them take off',
    };
    const { giveRuling } = await count.as.kai.ask<{ giveRuling: { id: string; state: string } }>(
      GIVE,
      { input },
    );
    expect(giveRuling.state).toBe('NEEDS_SECOND');
    return giveRuling;
  }

  it('waits for a second compiler and enters only then', async () => {
    const count = await aDispute();
    const { id } = await ownRuling(count);
    const before = await review(count.as.kim, count.id);
    expect(numberOf(before, 's2')).toBe(525);
    expect((await spreadIn(count, 's2')).ruling).toMatchObject({ id, state: 'NEEDS_SECOND' });
    expect(before.openMatters.join('\n')).toContain(
      'The ruling of Kai Moreau on Aythya marila in s2:w1 waits for a second person.',
    );

    expect((await count.as.kai.refused(SECOND, { id })).code).toBe('NOT_ALLOWED');
    expect((await count.as.ola.refused(SECOND, { id })).code).toBe('NOT_ALLOWED');
    expect((await count.as.lea.refused(SECOND, { id })).code).toBe('NOT_NOW');
    expect(await count.as.kim.ask(SECOND, { id })).toEqual({
      secondRuling: { state: 'APPLIED', secondedBy: { id: 'kim' } },
    });
    await count.as.kim.ask(SECOND, { id });
    expect(numberOf(await review(count.as.kim, count.id), 's2')).toBe(800);
  });

  it('is seconded by the leader once the windows are closed', async () => {
    const count = await aDispute();
    const { id } = await ownRuling(count);
    await count.close();
    expect(await count.as.lea.ask(SECOND, { id })).toMatchObject({
      secondRuling: { state: 'APPLIED' },
    });
    expect((await count.as.kim.refused(SECOND, { id })).code).toBe('NOT_NOW');
  });

  it('leaves the ruling that it would replace in force until it is seconded', async () => {
    const count = await aDispute();
    const { id: disagreementId } = await spreadIn(count, 's2');
    const by = (observer: string, replaces?: string): object => ({
      id: newId(),
      countId: count.id,
      disagreementId,
      decision: { kind: 'accept-observer', observer },
      reason: 'Better view',
      replaces,
    });
    const first = by('uma') as { id: string };
    await count.as.kim.ask(GIVE, { input: first });
    const second = by('kai', first.id) as { id: string };
    await count.as.kai.ask(GIVE, { input: second });
    expect(numberOf(await review(count.as.kim, count.id), 's2')).toBe(250);
    await count.as.kim.ask(SECOND, { id: second.id });
    expect(numberOf(await review(count.as.kim, count.id), 's2')).toBe(800);
  });

  it('needs no second elsewhere, and one where the author was only in the party', async () => {
    const count = await planTestCount(app, {
      assignments: [
        ['ola', ['s1']],
        ['pia', ['s1']],
      ],
    });
    await count.submit('ola', { partyIds: ['kai'], lines: [aLine({ number: 900 })] });
    await count.submit('pia', { lines: [aLine({ number: 300 })] });
    const input = await acceptOla(count);
    expect(await count.as.kai.ask(GIVE, { input })).toMatchObject({
      giveRuling: { state: 'NEEDS_SECOND' },
    });
    const other = await aDispute();
    expect(await other.as.kai.ask(GIVE, { input: await acceptOla(other) })).toMatchObject({
      giveRuling: { state: 'APPLIED' },
    });
  });
});
