import { v7 as newId } from 'uuid';
import type { ApiClient } from './api-client.js';
import { aLine, planTestCount, type Reachable, type TestCount } from './test-count.js';

export const SIGN =
  'mutation ($id: ID!, $as: Role!, $hash: String!) { signOff(countId: $id, as: $as, inputHash: $hash) { state } }';
export const SEAL =
  'mutation ($id: ID!) { seal(countId: $id) { id inputHash resultHash auditRoot auditSize } }';
export const GIVE = 'mutation ($input: RulingInput!) { giveRuling(input: $input) { id state } }';
const TRAIL =
  'query ($id: ID!) { count(id: $id) { auditTrail(first: 500) { size intact entries { seq act text body hash previous } } } }';

interface Seal {
  id: string;
  inputHash: string;
  resultHash: string;
  auditRoot: string;
  auditSize: number;
}
interface Trail {
  size: number;
  intact: boolean;
  entries: {
    seq: number;
    act: string;
    text: string;
    body: string;
    hash: string;
    previous: string;
  }[];
}

/** Two observers who differ seriously on s1; windows closed; both roles have to sign. */
export async function closedCount(app: Reachable): Promise<TestCount> {
  const count = await planTestCount(app, {
    assignments: [
      ['ola', ['s1']],
      ['pia', ['s1']],
    ],
    protocol: { signOffs: ['leader', 'compiler'] },
  });
  await count.submit('ola', { lines: [aLine({ number: 900 })] });
  await count.submit('pia', { lines: [aLine({ number: 300 })] });
  await count.close();
  return count;
}

/** The hash that a sign-off has to name. */
export async function hashOf(count: TestCount): Promise<string> {
  const { count: found } = await count.as.kim.ask<{ count: { review: { inputHash: string } } }>(
    'query ($id: ID!) { count(id: $id) { review { inputHash } } }',
    { id: count.id },
  );
  return found.review.inputHash;
}

/** Settles the dispute for Ola; @returns the ruling's id. */
export async function rule(count: TestCount, changes: object = {}): Promise<string> {
  const { count: found } = await count.as.kim.ask<{
    count: { review: { disagreements: { id: string }[] } };
  }>(
    'query ($id: ID!) { count(id: $id) { review { disagreements(kind: "count-spread") { id } } } }',
    { id: count.id },
  );
  const id = newId();
  await count.as.kim.ask(GIVE, {
    input: {
      id,
      countId: count.id,
      disagreementId: found.review.disagreements[0]?.id,
      decision: { kind: 'accept-observer', observer: 'ola' },
      reason: 'Ola stood closer',
      ...changes,
    },
  });
  return id;
}

/** Compiler and leader sign off. */
export async function sign(count: TestCount): Promise<void> {
  const hash = await hashOf(count);
  await count.as.kim.ask(SIGN, { id: count.id, as: 'COMPILER', hash });
  await count.as.lea.ask(SIGN, { id: count.id, as: 'LEADER', hash });
}

/** A count taken all the way, by people who read a language. */
export async function sealed(
  app: Reachable,
  language = '*',
): Promise<{ count: TestCount; seal: Seal }> {
  const count = await closedCount(app);
  for (const person of [count.as.kim, count.as.lea]) person.language = language;
  await rule(count);
  await sign(count);
  const { seal } = await count.as.lea.ask<{ seal: Seal }>(SEAL, { id: count.id });
  return { count, seal };
}

/** Its audit trail, newest first. */
export async function trail(client: ApiClient, id: string): Promise<Trail> {
  const { count } = await client.ask<{ count: { auditTrail: Trail } }>(TRAIL, { id });
  return count.auditTrail;
}
