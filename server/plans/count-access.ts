import type { Act, CountState, Role } from '../api/generated/schema.js';
import { Refusal } from '../core/refusal.js';
import { loadCount, type CountRecord } from '../database/count-record.js';
import type { Source } from '../database/source.js';
import { isEverAllowed, permissions } from '../people/policy.js';
import { mayEnter, signedIn, type Viewer } from '../people/viewer.js';
import { inputHashOf } from '../reviews/review-input.js';
import { hasOwnIn, isBlindTo, isOwn, type Piece } from '../tallies/blindness.js';
import type { TallyHeader } from '../database/tally-rows.js';
import { type Saying, say, together } from '../core/model/saying.js';

/** A count as one person meets it. */
export interface CountAccess {
  readonly viewer: Viewer;
  readonly record: CountRecord;
  readonly roles: readonly Role[];
  readonly state: CountState;
}

/**
 * Loads a count for somebody who takes part in it.
 *
 * @throws Refusal NOT_SIGNED_IN; NOT_FOUND, also where the count is none of theirs
 */
export async function openCount(
  source: Source,
  viewer: Viewer | null,
  countId: string,
): Promise<CountAccess> {
  const someone = signedIn(viewer);
  const record = mayEnter(someone, countId) ? await loadCount(source, countId) : null;
  const part = record?.participants.find(({ person }) => person.id === someone.personId);
  if (record === null || part === undefined) {
    throw new Refusal(
      'NOT_FOUND',
      say('You take part in no count with the id {countId}.', { countId }),
    );
  }
  return {
    viewer: someone,
    record,
    roles: part.roles.map((role) => role.toUpperCase() as Role),
    state: await stateOf(source, record),
  };
}

/**
 * Where a count stands. It is signed while every required role has signed what is there now: a later
 * ruling changes that and takes it back to closed.
 */
async function stateOf(source: Source, record: CountRecord): Promise<CountState> {
  if (record.seal !== null) return 'SEALED';
  if (record.windows.some(({ id }) => !record.closedWindows.has(id))) return 'OPEN';
  if (record.signOffs.length === 0) return 'CLOSED';
  const inputHash = await inputHashOf(source, record);
  const signed = record.signOffs.filter((signOff) => signOff.inputHash === inputHash);
  const isSigned = record.protocol.signOffs.every((role) =>
    signed.some((signOff) => signOff.role === role),
  );
  return isSigned && signed.length > 0 ? 'SIGNED' : 'CLOSED';
}

const STATE_SENTENCES: Readonly<Record<CountState, Saying>> = {
  OPEN: say('its windows are still open; the leader closes them when all have submitted'),
  CLOSED: say('its windows are closed and it is under review'),
  SIGNED: say('it is signed'),
  SEALED: say('it is sealed and can only be read'),
};

/** An act in words that follow "may not". */
const ACT_WORDS: Readonly<Record<Act, Saying>> = {
  PLAN: say('change the plan of this count'),
  INVITE: say('make invite links for this count'),
  CLOSE_WINDOW: say('close a window of this count'),
  PRINT_FIELD_SHEET: say('print field sheets of this count'),
  SUBMIT_TALLY: say('submit a tally to this count'),
  SEE_COVERAGE: say('see the coverage of this count'),
  SEE_TALLIES: say("see other people's tallies of this count"),
  REVIEW: say('see the review of this count'),
  SEE_OWN_AGREEMENT: say('see how you agree with others on this count'),
  RULE: say('give or withdraw rulings on this count'),
  SECOND: say('second rulings on this count'),
  ASK: say('put queries to observers of this count'),
  ANSWER: say('answer queries of this count'),
  SIGN_OFF: say('sign off this count'),
  SEAL: say('seal this count'),
  SEE_COMPILED: say('see the compiled count'),
  SEE_AUDIT: say('see the audit trail of this count'),
};

/** A role in words that follow "as". */
export const ROLE_WORDS: Readonly<Record<Role, Saying>> = {
  LEADER: say('leader'),
  OBSERVER: say('observer'),
  COMPILER: say('compiler'),
};

/**
 * Asks the policy whether this person may do this now. Where the answer depends on a cell
 * (`after-own`, `unblinded`), what is shown has to be narrowed by `maySeeTally` or `isHidden`.
 *
 * @throws Refusal NOT_ALLOWED if none of their roles ever may; NOT_NOW if the count's state forbids it
 */
export function allowedIn(access: CountAccess, act: Act): void {
  const { roles, state } = access;
  if (permissions(act, roles, state).size > 0) return;
  if (!isEverAllowed(act, roles)) {
    throw new Refusal(
      'NOT_ALLOWED',
      say('You may not {act}: you take part as {roles}.', {
        act: ACT_WORDS[act],
        roles: together(roles.map((role) => ROLE_WORDS[role])),
      }),
    );
  }
  throw new Refusal(
    'NOT_NOW',
    say('You may not {act} now: {state}.', {
      act: ACT_WORDS[act],
      state: STATE_SENTENCES[state],
    }),
  );
}

/** True where someone who reviews must not see a piece yet, since their own tally of it is due. */
export function isHidden(access: CountAccess, piece: Piece): boolean {
  return isBlindTo(access.viewer.personId, piece, access.record);
}

/** Whether a tally may be shown: one's own always, another's by the policy. */
export function maySeeTally(access: CountAccess, tally: TallyHeader): boolean {
  const { viewer, record, roles, state } = access;
  if (isOwn(tally, viewer.personId)) return true;
  const may = permissions('SEE_TALLIES', roles, state);
  if (isHidden(access, tally)) return false;
  if (may.has('yes') || may.has('unblinded')) return true;
  return may.has('after-own') && hasOwnIn(viewer.personId, tally, record);
}

/** @throws Error if the id is none of the count's: rows cannot name such a person */
export function nameOf(record: CountRecord, personId: string): string {
  const found = record.participants.find(({ person }) => person.id === personId);
  if (found === undefined) throw new Error(`${personId} takes no part in ${record.id}`);
  return found.person.name;
}
