import { v7 as newId } from 'uuid';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Act, CountState, Role } from '../../server/api/generated/schema.js';
import { ACTS, permission } from '../../server/people/policy.js';
import type { ApiClient } from '../support/api-client.js';
import { aLine, aTally, planTestCount, SUBMIT, type TestCount } from '../support/test-count.js';
import { TestApp } from '../support/start-app.js';

const STATES: readonly CountState[] = ['OPEN', 'CLOSED', 'SIGNED', 'SEALED'];
const ROLES: readonly Role[] = ['LEADER', 'COMPILER', 'OBSERVER'];

/**
 * The whole policy a second time, by hand: a letter a state, open to sealed. y yes, . no, u but in
 * cells one is blind to, o only in cells whose own tally is in, - never.
 */
const EXPECTED = `
  act           leader  compiler  observer
  PLAN          y...    -         -
  INVITE        yyyy    -         -
  CLOSE_WINDOW  y...    -         -
  PRINT_FIELD_SHEET yyyy -      yyyy
  SUBMIT_TALLY  -       -         y...
  SEE_COVERAGE  yyyy    yyyy      -
  SEE_TALLIES   .yyy    uyyy      oyyy
  REVIEW        .yyy    uyyy      -
  SEE_OWN_AGREEMENT - -         .yyy
  RULE          -       uyy.      -
  SECOND        .yy.    uyy.      -
  ASK           -       uyy.      -
  ANSWER        -       -         yyy.
  SIGN_OFF      .yy.    .yy.      -
  SEAL          ..y.    ..y.      -
  SEE_COMPILED  .yyy    uyyy      ...y
  SEE_AUDIT     yyyy    yyyy      ...y
`;

const LETTERS: Readonly<Record<string, string>> = {
  y: 'yes',
  '.': 'no',
  u: 'unblinded',
  o: 'after-own',
};

interface PolicyCell {
  readonly act: Act;
  readonly role: Role;
  readonly state: CountState;
  readonly expected: string;
  readonly isNever: boolean;
}

const CELLS: readonly PolicyCell[] = EXPECTED.trim()
  .split('\n')
  .slice(1)
  .flatMap((row) => {
    const [act, ...columns] = row.trim().split(/\s+/u);
    return ROLES.flatMap((role, column) =>
      STATES.map((state, index) => ({
        act: act as Act,
        role,
        state,
        expected: LETTERS[columns[column]?.[index] ?? '.'] ?? 'no',
        isNever: columns[column] === '-',
      })),
    );
  });

describe('the policy table', () => {
  it('has every act', () => {
    expect([...new Set(CELLS.map(({ act }) => act))].sort()).toEqual([...ACTS].sort());
  });

  for (const { act, role, state, expected } of CELLS) {
    it(`${act} as ${role} while ${state}: ${expected}`, () => {
      expect(permission(act, role, state)).toBe(expected);
    });
  }
});

const PERSON = { LEADER: 'lea', COMPILER: 'kim', OBSERVER: 'ola' } as const;

/** A count in a state, with what the attempts below need. */
interface Stage {
  readonly count: TestCount;
  readonly ruling: string;
  readonly query: string;
  readonly umasTally: string;
  /** Ola's. */
  readonly assignment: string;
}

/**
 * Tries an act in a way that changes nothing where the policy lets it through: it then fails for
 * another reason, or only reads.
 */
const ATTEMPTS: Readonly<
  Record<
    Exclude<Act, 'SEE_TALLIES' | 'PRINT_FIELD_SHEET'>,
    (stage: Stage, role: Role) => readonly [string, object]
  >
> = {
  PLAN: ({ count }) => [
    'mutation ($input: AssignInput!) { assign(input: $input) { id } }',
    { input: { id: newId(), countId: count.id, personId: '?', sectionIds: [], windowId: 'w1' } },
  ],
  INVITE: ({ count }) => [
    'mutation ($id: ID!) { invite(countId: $id, personId: "?") { path } }',
    { id: count.id },
  ],
  CLOSE_WINDOW: ({ count }) => [
    'mutation ($id: ID!) { closeWindow(countId: $id, windowId: "?") { id } }',
    { id: count.id },
  ],
  SUBMIT_TALLY: ({ count }) => [
    SUBMIT,
    { input: aTally({ countId: count.id, lines: [aLine({ taxon: '?' })] }) },
  ],
  SEE_COVERAGE: field('coverage { independentTallies }'),
  REVIEW: field('review { inputHash }'),
  SEE_OWN_AGREEMENT: field('ownAgreement { ratios { observer { id } } }'),
  SEE_COMPILED: field('compiled { total }'),
  SEE_AUDIT: field('auditTrail { size }'),
  RULE: ({ count }) => [
    'mutation ($input: RulingInput!) { giveRuling(input: $input) { id } }',
    {
      input: {
        id: newId(),
        countId: count.id,
        disagreementId: '?',
        decision: { kind: 'let-stand' },
        reason: 'x',
      },
    },
  ],
  SECOND: ({ ruling }) => [
    'mutation ($id: ID!) { secondRuling(rulingId: $id) { id } }',
    { id: ruling },
  ],
  ASK: ({ count }) => [
    'mutation ($input: AskQueryInput!) { askQuery(input: $input) { id } }',
    { input: { id: newId(), countId: count.id, toPersonId: '?', question: 'x' } },
  ],
  ANSWER: ({ query }) => [
    'mutation ($id: ID!) { answerQuery(queryId: $id, answer: "something else") { id } }',
    { id: query },
  ],
  SIGN_OFF: ({ count }, role) => [
    'mutation ($id: ID!, $as: Role!) { signOff(countId: $id, as: $as, inputHash: "?") { id } }',
    { id: count.id, as: role },
  ],
  SEAL: ({ count }) => ['mutation ($id: ID!) { seal(countId: $id) { id } }', { id: count.id }],
};

function field(fields: string): (stage: Stage) => readonly [string, object] {
  return ({ count }) => [`query ($id: ID!) { count(id: $id) { ${fields} } }`, { id: count.id }];
}

/** Builds a count and takes it as far as a state. */
async function stageIn(app: TestApp, state: CountState): Promise<Stage> {
  const count = await planTestCount(app, {
    assignments: [
      ['ola', ['s1']],
      ['uma', ['s1']],
    ],
  });
  await count.submit('ola', {});
  const { id: umasTally } = await count.submit('uma', {});
  const { kim, ola } = count.as;
  const [ruling, query] = [newId(), newId()];
  await kim.ask('mutation ($input: RulingInput!) { giveRuling(input: $input) { id } }', {
    input: {
      id: ruling,
      countId: count.id,
      target: { kind: 'group', cell: 's1:w1', group: ['Aythya marila'] },
      decision: { kind: 'let-stand' },
      reason: 'They agree',
    },
  });
  await kim.ask('mutation ($input: AskQueryInput!) { askQuery(input: $input) { id } }', {
    input: { id: query, countId: count.id, toPersonId: 'ola', question: 'Sure?' },
  });
  await ola.ask('mutation ($id: ID!) { answerQuery(queryId: $id, answer: "Yes") { id } }', {
    id: query,
  });
  if (state !== 'OPEN') await count.close();
  if (state === 'SIGNED' || state === 'SEALED') await sign(kim, count.id);
  if (state === 'SEALED') {
    await kim.ask('mutation ($id: ID!) { seal(countId: $id) { id } }', { id: count.id });
  }
  const { count: planned } = await ola.ask<{
    count: { assignments: { id: string; person: { id: string } }[] };
  }>('query ($id: ID!) { count(id: $id) { assignments { id person { id } } } }', { id: count.id });
  const assignment = planned.assignments.find(({ person }) => person.id === 'ola')?.id ?? fail();
  return { count, ruling, query, umasTally, assignment };
}

async function sign(compiler: ApiClient, id: string): Promise<void> {
  const { count } = await compiler.ask<{ count: { review: { inputHash: string } } }>(
    'query ($id: ID!) { count(id: $id) { review { inputHash } } }',
    { id },
  );
  await compiler.ask(
    'mutation ($id: ID!, $hash: String!) { signOff(countId: $id, as: COMPILER, inputHash: $hash) { id } }',
    { id, hash: count.review.inputHash },
  );
}

describe('the server keeps to the policy', () => {
  let app: TestApp;
  const stages = new Map<CountState, Stage>();

  beforeAll(async () => {
    app = await TestApp.start();
    for (const state of STATES) stages.set(state, await stageIn(app, state));
  });

  afterAll(() => app.stop());

  for (const state of STATES) {
    for (const role of ROLES) {
      const cells = CELLS.filter((cell) => cell.state === state && cell.role === role);
      const who = `a ${role.toLowerCase()} while ${state.toLowerCase()}`;

      it(`shows ${who} what they may do`, async () => {
        const { count } = stages.get(state) ?? fail();
        const answer = await count.as[PERSON[role]].ask<{
          count: { may: string[]; state: string };
        }>('query ($id: ID!) { count(id: $id) { state may } }', { id: count.id });
        const allowed = cells.filter(({ expected }) => expected !== 'no').map(({ act }) => act);
        expect(answer.count.state).toBe(state);
        expect([...answer.count.may].sort()).toEqual([...allowed].sort());
      });

      // Sealing comes last: it is the one attempt that takes the count on where it is let through.
      for (const { act, expected, isNever } of cells.filter((cell) => cell.act !== 'SEAL')) {
        it(`${expected === 'no' ? 'refuses' : 'lets'} ${who}: ${act}`, async () => {
          const stage = stages.get(state) ?? fail();
          const client = stage.count.as[PERSON[role]];
          if (act === 'SEE_TALLIES') {
            const answer = await client.send('query ($id: ID!) { tally(id: $id) { id } }', {
              id: stage.umasTally,
            });
            expect(answer.errors === undefined).toBe(expected !== 'no');
            return;
          }
          if (act === 'PRINT_FIELD_SHEET') {
            const { status } = await client.get(`/field-sheets/${stage.assignment}.pdf`);
            expect(status).toBe(expected === 'no' ? 403 : 200);
            return;
          }
          await expectPolicy(client, ATTEMPTS[act](stage, role), expected, isNever);
        });
      }
    }
  }

  for (const state of STATES) {
    for (const role of ['OBSERVER', 'LEADER', 'COMPILER'] as const) {
      const cell = CELLS.find(
        (one) => one.act === 'SEAL' && one.state === state && one.role === role,
      );
      const { expected, isNever } = cell ?? fail();
      // Sealing what is sealed already gives the seal again and writes nothing.
      const outcome = state === 'SEALED' && !isNever ? 'yes' : expected;
      it(`${outcome === 'no' ? 'refuses' : 'lets'} a ${role.toLowerCase()} while ${state.toLowerCase()}: SEAL`, async () => {
        const stage = stages.get(state) ?? fail();
        const client = stage.count.as[PERSON[role]];
        await expectPolicy(client, ATTEMPTS.SEAL(stage, role), outcome, isNever);
      });
    }
  }
});

async function expectPolicy(
  client: ApiClient,
  [document, variables]: readonly [string, object],
  expected: string,
  isNever: boolean,
): Promise<void> {
  const { errors = [] } = await client.send(document, variables);
  const [error] = errors;
  const code = error?.extensions.code;
  if (expected === 'no') {
    // A query is answered by the one it was put to: to others it is not even there.
    const isForeign = code === 'NOT_FOUND' && document.includes('answerQuery');
    if (!isForeign) expect(code).toBe(isNever ? 'NOT_ALLOWED' : 'NOT_NOW');
    return;
  }
  expect(code).not.toBe('INTERNAL_SERVER_ERROR');
  expect(error?.message ?? '').not.toMatch(/^You may not/u);
}

function fail(): never {
  throw new Error('the stage was not built');
}
