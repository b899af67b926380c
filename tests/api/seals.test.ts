import { createHash } from 'node:crypto';
import { v7 as newId } from 'uuid';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ReviewInput } from '../../server/reviews/review-input.js';
import {
  closedCount,
  GIVE,
  hashOf,
  rule,
  SEAL,
  sealed,
  SIGN,
  sign,
  trail,
} from '../support/sealed-count.js';
import { aTally, SUBMIT, type TestCount } from '../support/test-count.js';
import { TestApp } from '../support/start-app.js';
import { reconcileInEnglish } from '../support/reconcile-in-english.js';

let app: TestApp;

beforeAll(async () => {
  app = await TestApp.start();
});

afterAll(() => app.stop());

const sha256 = (bytes: Uint8Array | string): Buffer => createHash('sha256').update(bytes).digest();

async function state(count: TestCount): Promise<string> {
  const { count: found } = await count.as.kim.ask<{ count: { state: string } }>(
    'query ($id: ID!) { count(id: $id) { state } }',
    { id: count.id },
  );
  return found.state;
}

describe('signing off', () => {
  it('is refused while matters are open, all of them named', async () => {
    const count = await closedCount(app);
    await count.as.kim.ask('mutation ($input: AskQueryInput!) { askQuery(input: $input) { id } }', {
      input: { id: newId(), countId: count.id, toPersonId: 'pia', question: 'Sure?' },
    });
    const hash = await hashOf(count);
    const { code, message } = await count.as.kim.refused(SIGN, {
      id: count.id,
      as: 'COMPILER',
      hash,
    });
    expect(code).toBe('NOT_NOW');
    expect(message).toContain('No ruling settles a serious disagreement');
    expect(message).toContain('Pia Osei has not answered a query of Kim Abara.');
  });

  it('is refused for another state of the count than the present one', async () => {
    const count = await closedCount(app);
    const hash = await hashOf(count);
    await rule(count);
    const { code } = await count.as.kim.refused(SIGN, { id: count.id, as: 'COMPILER', hash });
    expect(code).toBe('STALE');
  });

  it('takes every role that the protocol asks for, each as what they are', async () => {
    const count = await closedCount(app);
    await rule(count);
    const variables = { id: count.id, hash: await hashOf(count) };
    const as = (role: string) => ({ ...variables, as: role });
    expect((await count.as.kim.refused(SIGN, as('LEADER'))).code).toBe('NOT_ALLOWED');
    expect((await count.as.kim.refused(SIGN, as('OBSERVER'))).code).toBe('NOT_ALLOWED');
    expect((await count.as.ola.refused(SIGN, as('COMPILER'))).code).toBe('NOT_ALLOWED');
    expect(await count.as.kim.ask(SIGN, as('COMPILER'))).toEqual({ signOff: { state: 'CLOSED' } });
    expect((await count.as.lea.refused(SEAL, { id: count.id })).code).toBe('NOT_NOW');
    expect(await count.as.lea.ask(SIGN, as('LEADER'))).toEqual({ signOff: { state: 'SIGNED' } });
    expect(await count.as.lea.ask(SIGN, as('LEADER'))).toEqual({ signOff: { state: 'SIGNED' } });
  });

  it('is undone by a later ruling, which makes it another count', async () => {
    const count = await closedCount(app);
    const first = await rule(count);
    await sign(count);
    expect(await state(count)).toBe('SIGNED');
    await rule(count, { replaces: first, decision: { kind: 'accept-observer', observer: 'pia' } });
    expect(await state(count)).toBe('CLOSED');
  });
});

describe('a seal', () => {
  it('holds the bytes, their hashes and the root of the audit chain', async () => {
    // Whatever its leader reads: what is sealed is in English.
    const { count, seal } = await sealed(app, 'fr');
    const stored = app.onDisk((database) =>
      database.prepare('SELECT input, result FROM seal WHERE countId = ?').get(count.id),
    ) as { input: string; result: string };
    expect(sha256(stored.input).toString('hex')).toBe(seal.inputHash);
    expect(sha256(stored.result).toString('hex')).toBe(seal.resultHash);

    // Running the engine again on the sealed input gives the sealed bytes.
    const { snapshot, rulings, protocol } = JSON.parse(stored.input) as ReviewInput;
    expect(JSON.stringify(reconcileInEnglish(snapshot, rulings, protocol))).toBe(stored.result);

    // The root by the definition of RFC 9162, 2.1.1, written out here once more.
    const root = (leaves: readonly Buffer[]): Buffer => {
      if (leaves.length === 1) return sha256(Buffer.concat([Buffer.of(0), ...leaves]));
      const split = 2 ** Math.ceil(Math.log2(leaves.length) - 1);
      const [left, right] = [root(leaves.slice(0, split)), root(leaves.slice(split))];
      return sha256(Buffer.concat([Buffer.of(1), left, right]));
    };
    const { entries, intact } = await trail(count.as.ola, count.id);
    const leaves = [...entries].reverse().map(({ body }) => Buffer.from(body));
    expect(leaves).toHaveLength(seal.auditSize + 1);
    expect(root(leaves.slice(0, seal.auditSize)).toString('hex')).toBe(seal.auditRoot);
    expect(intact).toBe(true);
  });

  it('made twice is the same', async () => {
    const { count, seal } = await sealed(app);
    expect(await count.as.kim.ask(SEAL, { id: count.id })).toEqual({ seal });
  });

  it('opens the compiled count and the trail to observers', async () => {
    const { count, seal } = await sealed(app);
    const answer = await count.as.ola.ask(
      'query ($id: ID!) { count(id: $id) { state compiled { draft total seal { id } signOffs { as by { id } } line(taxon: "Aythya marila") { number englishName } ledger(taxon: "Aythya marila") { from to number text } } } }',
      { id: count.id },
    );
    expect(answer).toMatchObject({
      count: {
        state: 'SEALED',
        compiled: {
          draft: false,
          total: 900,
          seal: { id: seal.id },
          line: { number: 900, englishName: 'Greater Scaup' },
        },
      },
    });
    const { count: found } = answer as unknown as {
      count: { compiled: { ledger: { from: string; to: string; number: number }[] } };
    };
    // What goes into the compiled account, less what goes out of it, is the compiled number.
    const net = found.compiled.ledger.reduce(
      (sum, { from, to, number }) =>
        sum + (to === 'compiled/w1' ? number : 0) - (from === 'compiled/w1' ? number : 0),
      0,
    );
    expect(net).toBe(900);
  });

  it('ends all writing', async () => {
    const { count } = await sealed(app);
    const { kim, lea, ola } = count.as;
    const hash = await hashOf(count);
    const before = await trail(lea, count.id);
    const writes = [
      [ola, SUBMIT, { input: aTally({ countId: count.id }) }],
      [
        kim,
        GIVE,
        {
          input: {
            id: newId(),
            countId: count.id,
            target: { kind: 'group', cell: 's1:w1', group: ['Aythya marila'] },
            decision: { kind: 'let-stand' },
            reason: 'Late',
          },
        },
      ],
      [
        kim,
        'mutation ($input: AskQueryInput!) { askQuery(input: $input) { id } }',
        { input: { id: newId(), countId: count.id, toPersonId: 'ola', question: 'Late?' } },
      ],
      [kim, SIGN, { id: count.id, as: 'COMPILER', hash }],
      [
        lea,
        'mutation ($input: AssignInput!) { assign(input: $input) { id } }',
        {
          input: {
            id: newId(),
            countId: count.id,
            personId: 'uma',
            sectionIds: ['s3'],
            windowId: 'w1',
          },
        },
      ],
    ] as const;
    for (const [client, mutation, variables] of writes) {
      const { code, message } = await client.refused(mutation, variables);
      expect([mutation, code]).toEqual([mutation, 'NOT_NOW']);
      expect(message).toContain('sealed');
    }
    expect((await trail(lea, count.id)).size).toBe(before.size);
  });
});
