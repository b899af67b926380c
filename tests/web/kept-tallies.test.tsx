import { cleanup, screen, waitFor } from '@testing-library/react';
import fc from 'fast-check';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { makeClient } from '../../web/src/graphql/client.js';
import type { TallyInput } from '../../web/src/graphql/generated/graphql.js';
import { emptyDraft, type Draft } from '../../web/src/tallies/draft.js';
import { keepDraft, readDraft } from '../../web/src/tallies/draft-store.js';
import { keptDatabase, reopenKept } from '../../web/src/tallies/kept-database.js';
import { asOnlySender } from '../../web/src/tallies/one-sender.js';
import { OpenDraft } from '../../web/src/tallies/open-draft.js';
import { outboxOf, putInOutbox, takeFromOutbox } from '../../web/src/tallies/outbox.js';
import { sendWaiting } from '../../web/src/tallies/send-tallies.js';
import { pauseAfter } from '../../web/src/tallies/sender.js';
import { fakeServer } from './fake-server.js';
import { observerAnswers, ownPart } from './observer-count.js';
import { openApp, setOnline } from './open-app.js';

beforeEach(() => {
  localStorage.clear();
  vi.stubGlobal('indexedDB', new IDBFactory());
  reopenKept();
});
afterEach(() => {
  vi.unstubAllGlobals();
});

function aDraft(assignmentId: string, start: string): Draft {
  return { ...emptyDraft('c1', assignmentId), start };
}

function handOver(index: number, person = 'o1'): Promise<boolean> {
  const id = `tally-${String(index).padStart(3, '0')}`;
  const input: TallyInput = {
    id,
    countId: 'c1',
    sectionIds: ['s1'],
    windowId: 'w1',
    scope: 'all-waterbirds',
    coverage: 1,
    lines: [],
  };
  return putInOutbox({
    ...{ id, personId: person, countId: 'c1', assignmentId: `a${index}`, input },
    ...{ draft: null, edit: null, since: index },
  });
}

/**
 * A server that takes each id once, behind a network that fails as it is told: before a request
 * arrives, or after it was answered.
 */
function shakyServer(failures: readonly ('none' | 'before' | 'after')[]): {
  readonly taken: Map<string, string>;
  readonly requests: string[];
} {
  const taken = new Map<string, string>();
  const requests: string[] = [];
  let turn = 0;
  vi.stubGlobal('fetch', (_: unknown, request: RequestInit): Promise<Response> => {
    const failure = failures[turn % failures.length] ?? 'none';
    turn += 1;
    if (failure === 'before') return Promise.reject(new TypeError('no network'));
    const { variables } = JSON.parse(typeof request.body === 'string' ? request.body : '') as {
      variables: { input: TallyInput };
    };
    const content = JSON.stringify(variables.input);
    const id = String(variables.input.id);
    requests.push(id);
    if ((taken.get(id) ?? content) !== content) throw new Error(`${id} came with other content.`);
    taken.set(id, content);
    if (failure === 'after') return Promise.reject(new TypeError('the answer was lost'));
    const submitTally = {
      __typename: 'Tally',
      id,
      version: 1,
      total: 0,
      submittedAt: '2027-01-16T10:42:00Z',
    };
    return Promise.resolve(
      new Response(JSON.stringify({ data: { submitTally } }), {
        headers: { 'content-type': 'application/json' },
      }),
    );
  });
  return { taken, requests };
}

describe('the outbox', () => {
  test('whatever the network does, each tally arrives, once, in order, from two tabs at a time', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 1, max: 12 }),
        fc
          .array(fc.constantFrom('none', 'before', 'after'), { minLength: 1, maxLength: 8 })
          // A network that never works sends nothing, rightly.
          .map((failures) => [...failures, 'none'] as const),
        async (count, failures) => {
          vi.stubGlobal('indexedDB', new IDBFactory());
          reopenKept();
          const server = shakyServer(failures);
          for (let index = 0; index < count; index += 1) await handOver(index);
          for (let round = 0; round < 500; round += 1) {
            const rounds = await Promise.all([
              sendWaiting(makeClient(), 'o1'),
              sendWaiting(makeClient(), 'o1'),
            ]);
            if (rounds.every(({ waitsFor }) => waitsFor === null)) break;
          }
          const items = await outboxOf('o1');
          expect(items.map(({ state }) => state.kind)).toEqual(items.map(() => 'received'));
          expect(items).toHaveLength(count);
          expect([...server.taken.keys()]).toEqual(items.map(({ id }) => id));
        },
      ),
      { numRuns: 12 },
    );
  }, 60_000);

  test('one person’s tallies are not sent for another, and what was being sent when the page died goes again', async () => {
    const server = shakyServer(['none']);
    await handOver(1, 'o1');
    await handOver(2, 'o2');
    const database = await keptDatabase();
    await database.outbox.update('tally-002', { state: { kind: 'sending' } });
    reopenKept();
    await sendWaiting(makeClient(), 'o2');
    expect([...server.taken.keys()]).toEqual(['tally-002']);
    expect(JSON.parse(server.taken.get('tally-002') ?? '{}')).toMatchObject({ observerId: 'o2' });
    expect((await outboxOf('o1')).map(({ state }) => state.kind)).toEqual(['waiting']);
  });

  test('a tally on its way cannot be taken back, one that waits can', async () => {
    await handOver(1);
    const database = await keptDatabase();
    await database.outbox.update('tally-001', { state: { kind: 'sending' } });
    expect(await takeFromOutbox('tally-001')).toBe(false);
    await database.outbox.update('tally-001', {
      state: { kind: 'waiting', because: 'connection' },
    });
    expect(await takeFromOutbox('tally-001')).toBe(true);
    expect(await outboxOf('o1')).toEqual([]);
  });

  test('a browser that keeps nothing says so, and still sends from the page', async () => {
    vi.stubGlobal('indexedDB', undefined);
    reopenKept();
    const server = shakyServer(['before', 'none']);
    expect(await handOver(1)).toBe(false);
    expect((await sendWaiting(makeClient(), 'o1')).waitsFor).toBe('connection');
    expect((await sendWaiting(makeClient(), 'o1')).waitsFor).toBe(null);
    expect([...server.taken.keys()]).toEqual(['tally-001']);
    expect((await outboxOf('o1')).map(({ state }) => state.kind)).toEqual(['received']);
  });

  test('without the browser’s locks a lease lets one work at a time', async () => {
    let working = 0;
    let most = 0;
    const work = async (): Promise<void> => {
      working += 1;
      most = Math.max(most, working);
      await new Promise((resolve) => setTimeout(resolve, 20));
      working -= 1;
    };
    // The stand-in for a browser has none; a real one has, and the browser tests use them.
    expect(navigator.locks).toBe(null);
    await Promise.all([asOnlySender(work), asOnlySender(work)]);
    expect(most).toBe(1);
  });

  test('however many tallies go, the pages ask for the server’s side once, after the last', async () => {
    setOnline(true);
    const taken = {
      __typename: 'Tally',
      version: 1,
      total: 0,
      submittedAt: '2027-01-16T10:42:00Z',
    };
    const server = fakeServer(
      observerAnswers(ownPart(), {
        SubmitTally: ({ input }) => ({ submitTally: { ...taken, id: (input as TallyInput).id } }),
      }),
    );
    openApp('/counts/c1/assignments');
    await screen.findByRole('link', { name: 'Begin the tally' });
    server.unreachable = true;
    setOnline(false);
    for (let index = 0; index < 8; index += 1) await handOver(index);
    await screen.findByText('8 tallies not received yet.');
    const before = server.asked.length;
    server.unreachable = false;
    setOnline(true);
    // Eight requests one after another, on a busy machine.
    await screen.findByText(
      'Everything that this phone has was received.',
      {},
      { timeout: 20_000 },
    );
    const names = (): readonly string[] => server.asked.slice(before).map(({ name }) => name);
    await waitFor(() => expect(names()).toContain('MyAssignments'));
    const sent = Array.from({ length: 8 }, () => 'SubmitTally');
    expect(names().filter((name) => /SubmitTally|MyAssignments/u.test(name))).toEqual([
      ...sent,
      'MyAssignments',
    ]);
    cleanup();
  });

  test('pauses double up to five minutes, give or take a quarter', () => {
    expect([1, 2, 3, 4, 40].map((tries) => pauseAfter(tries, 0.5))).toEqual([
      2000, 4000, 8000, 16_000, 300_000,
    ]);
    expect([pauseAfter(1, 0), pauseAfter(1, 1)]).toEqual([1500, 2500]);
  });
});

describe('a draft', () => {
  /** Opens a draft as a tab of its own does. */
  async function tab(assignmentId: string): Promise<OpenDraft> {
    const open = new OpenDraft('o1', assignmentId);
    open.subscribe(() => undefined);
    await vi.waitFor(() => expect(open.state.isLoading).toBe(false));
    return open;
  }

  test('changed in one tab shows up in the other', async () => {
    const [one, other] = [await tab('a1'), await tab('a1')];
    one.change(aDraft('a1', '08:00'));
    await vi.waitFor(() => expect(other.state.draft?.start).toBe('08:00'));
    other.change(aDraft('a1', '08:15'));
    await vi.waitFor(() => expect(one.state.draft?.start).toBe('08:15'));
    expect([one.state.rivals, other.state.rivals]).toEqual([[], []]);
  });

  test('changed in two tabs at the same time is kept twice, until the observer chooses', async () => {
    const [one, other] = [await tab('a1'), await tab('a1')];
    one.change(aDraft('a1', '08:00'));
    other.change(aDraft('a1', '09:00'));
    for (const open of [one, other]) {
      await vi.waitFor(() => expect(open.state.rivals).toHaveLength(1));
      const versions = [open.state.draft, open.state.rivals[0]?.draft];
      expect(versions.map((draft) => draft?.start).sort()).toEqual(['08:00', '09:00']);
    }
    const chosen = [one.state.draft, one.state.rivals[0]?.draft].find(
      (draft) => draft?.start === '09:00',
    );
    if (!chosen) throw new Error('The version of 09:00 is one of the two.');
    await one.settle(chosen);
    for (const open of [one, other]) {
      await vi.waitFor(() => expect(open.state.rivals).toEqual([]));
      expect(open.state.draft?.start).toBe('09:00');
    }
  });

  test('no change is ever overwritten unseen, in whatever order tabs write', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.record({ tab: fc.nat(2), looksFirst: fc.boolean() }), { maxLength: 20 }),
        async (writes) => {
          vi.stubGlobal('indexedDB', new IDBFactory());
          reopenKept();
          const seenBy: (string | null)[] = [null, null, null];
          /** What the observer typed in each tab last, unless a later change was made on top of it. */
          const live = new Set<string>();
          for (const [index, { tab: at, looksFirst }] of writes.entries()) {
            const kept = await readDraft(await keptDatabase(), 'o1', 'a1');
            if (looksFirst && kept !== null) seenBy[at] = kept.edit;
            const edit = `edit-${index}`;
            const before = seenBy[at] ?? null;
            await keepDraft('o1', {
              draft: aDraft('a1', edit),
              edit,
              seen: before === null ? [] : [before],
            });
            if (before !== null) live.delete(before);
            live.add(edit);
            seenBy[at] = edit;
          }
          const kept = await readDraft(await keptDatabase(), 'o1', 'a1');
          const held = kept === null ? [] : [kept.edit, ...kept.rivals.map(({ edit }) => edit)];
          expect(new Set(held)).toEqual(live);
        },
      ),
      { numRuns: 60 },
    );
  }, 60_000);

  test('that the database had not finished writing when the page went is there at the next opening', async () => {
    const one = await tab('a1');
    one.change(aDraft('a1', '08:00'));
    one.change(aDraft('a1', '08:01'));
    one.leaveBehind();
    one.drop();
    reopenKept();
    const again = await tab('a1');
    await vi.waitFor(() => expect(again.state.draft?.start).toBe('08:01'));
    expect(again.state.rivals).toEqual([]);
    expect(localStorage.length).toBe(0);
  });

  test('and outbox items that earlier versions kept in plain storage are moved once', async () => {
    const earlier: Partial<Draft> = { ...aDraft('a1', '08:00') };
    // As a version wrote it that did not ask for these yet.
    Reflect.deleteProperty(earlier, 'conditions');
    Reflect.deleteProperty(earlier, 'seenArea');
    localStorage.setItem('countersign.draft.o.1.a1', JSON.stringify(earlier));
    localStorage.setItem('countersign.draft.o.1.broken', '{"id":');
    localStorage.setItem(
      'countersign.outbox',
      JSON.stringify([
        {
          ...{ personId: 'o.1', assignmentId: 'a2', since: 5, refusal: null },
          input: { id: 't2', countId: 'c1', lines: [] },
        },
      ]),
    );
    localStorage.setItem('something-else', 'stays');
    const kept = await readDraft(await keptDatabase(), 'o.1', 'a1');
    expect(kept?.draft).toMatchObject({ id: earlier.id, start: '08:00', seenArea: [] });
    expect(await outboxOf('o.1')).toMatchObject([{ id: 't2', state: { kind: 'waiting' } }]);
    expect(localStorage.getItem('countersign.outbox')).toBe(null);
    expect(localStorage.getItem('something-else')).toBe('stays');
  });

  test('that the browser will not keep is said to be unkept, and stays in hand', async () => {
    vi.stubGlobal('indexedDB', undefined);
    reopenKept();
    const one = await tab('a1');
    one.change(aDraft('a1', '08:00'));
    await one.written();
    expect(one.state).toMatchObject({ isKept: false, draft: { start: '08:00' } });
  });

  test('on a full phone is said to be unkept, and kept again once there is room', async () => {
    const one = await tab('a1');
    const database = await keptDatabase();
    const full = vi
      .spyOn(database.drafts, 'put')
      .mockRejectedValueOnce(new DOMException('no room', 'QuotaExceededError'));
    one.change(aDraft('a1', '08:00'));
    await vi.waitFor(() => expect(one.state.isKept).toBe(false));
    full.mockRestore();
    one.change(aDraft('a1', '08:01'));
    await vi.waitFor(() => expect(one.state.isKept).toBe(true));
    expect((await readDraft(database, 'o1', 'a1'))?.draft.start).toBe('08:01');
  });
});
