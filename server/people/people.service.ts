import { Injectable } from '@nestjs/common';
import { Refusal } from '../core/refusal.js';
import {
  PEOPLE_CHAIN,
  type AuditAct,
  type AuditDetails,
  type NewEntry,
} from '../database/audit-log.js';
import { Database } from '../database/database.js';
import type { Transaction } from '../database/source.js';
import { allowedIn, openCount } from '../plans/count-access.js';
import type * as Api from '../api/generated/schema.js';
import { checkNewPassword, hashPassword, passwordFits } from './password.js';
import { SignInThrottle } from './sign-in-throttle.js';
import { hashToken, newToken } from './token.js';
import { mayEnter, signedIn, type Viewer } from './viewer.js';
import { say } from '../core/model/saying.js';

const DAY_MS = 24 * 60 * 60_000;
const SESSION_DAYS = 30;
/** A link works until so long after the count's date. */
const INVITE_DAYS = 30;

/** A session that was just opened: the token goes into the cookie and is kept nowhere else. */
export interface OpenedSession {
  readonly person: Api.Person;
  readonly token: string;
  readonly expiresAt: Date;
}

export function peopleEntry(
  act: AuditAct,
  by: string | null,
  details: AuditDetails = {},
): NewEntry {
  return { chain: PEOPLE_CHAIN, act, by, details };
}

/** Names are told apart as a person reads them: without regard to case, spaces at the ends, or code points. */
export function signInNameOf(name: string): string {
  return name.trim().replace(/\s+/gu, ' ').normalize('NFKC').toLowerCase();
}

/** Who someone is: passwords, invite links and sessions. What they may do stands in the policy. */
@Injectable()
export class PeopleService {
  constructor(
    private readonly database: Database,
    private readonly throttle: SignInThrottle,
  ) {}

  /** @returns whoever holds this session token, or null if it is unknown or has run out */
  async viewerOf(token: string | null): Promise<Omit<Viewer, 'wording'> | null> {
    if (token === null) return null;
    const session = await this.database.read.session.findUnique({
      where: { tokenHash: hashToken(token) },
      include: { person: true },
    });
    if (session === null || session.expiresAt <= new Date().toISOString()) return null;
    return {
      personId: session.personId,
      name: session.person.name,
      session: session.tokenHash,
      counts: session.counts === null ? null : (JSON.parse(session.counts) as string[]),
    };
  }

  /** @throws Refusal WRONG_PASSWORD, TOO_MANY_TRIES */
  async signIn(name: string, password: string, address: string): Promise<OpenedSession> {
    const signInName = signInNameOf(name);
    this.throttle.begin(signInName, address);
    const person = await this.database.read.person.findUnique({ where: { signInName } });
    // Tried even where there is no such person, so that the time taken does not tell.
    if (!(await passwordFits(password, person?.passwordHash ?? null)) || person === null) {
      throw new Refusal(
        'WRONG_PASSWORD',
        say(
          'Name and password do not belong together. Use the name as your leader wrote it; observers sign in by their invite link.',
        ),
      );
    }
    this.throttle.succeeded(signInName, address);
    return this.database.write(async (transaction) => {
      const opened = await openSession(transaction, person, null);
      return {
        value: opened,
        entries: [peopleEntry('session.open', person.id, { how: 'password' })],
      };
    });
  }

  /**
   * Opens a session for the one person that a link was made for. The link goes on working until it
   * runs out or a newer one takes its place: a mail program's own browser must not use it up.
   *
   * @param viewer who was signed in before: the same person keeps the counts already open to them
   * @throws Refusal INVITE_SPENT
   */
  acceptInvite(token: string, viewer: Viewer | null): Promise<OpenedSession> {
    return this.database.write(async (transaction) => {
      const invite = await transaction.invite.findUnique({
        where: { tokenHash: hashToken(token) },
        include: { participant: { include: { person: true } } },
      });
      const isOver =
        invite === null || invite.voidedAt !== null || invite.expiresAt <= new Date().toISOString();
      if (isOver) {
        throw new Refusal(
          'INVITE_SPENT',
          say(
            'This invite link no longer works: it has run out, or a newer one was made for you. Ask your leader for a new link.',
          ),
        );
      }
      const { countId, participant } = invite;
      const counts = countsAfterInvite(viewer, participant.personId, countId);
      const opened = await openSession(transaction, participant.person, counts);
      return {
        value: opened,
        entries: [
          peopleEntry('session.open', participant.personId, { how: 'invite', count: countId }),
        ],
      };
    });
  }

  /** Ends the session; nothing happens if there is none. */
  async signOut(token: string | null): Promise<boolean> {
    const viewer = await this.viewerOf(token);
    if (token === null || viewer === null) return false;
    return this.database.write(async (transaction) => {
      await transaction.session.update({
        where: { tokenHash: hashToken(token) },
        data: { expiresAt: new Date().toISOString() },
      });
      return { value: true, entries: [peopleEntry('session.close', viewer.personId)] };
    });
  }

  /** @throws Refusal NOT_SIGNED_IN, NOT_FOUND, NOT_ALLOWED, NOT_NOW */
  invite(viewer: Viewer | null, countId: string, personId: string): Promise<Api.Invite> {
    return this.database.write(async (transaction) => {
      const access = await openCount(transaction, viewer, countId);
      allowedIn(access, 'INVITE');
      const participant = access.record.participants.find(({ person }) => person.id === personId);
      if (participant === undefined) {
        throw new Refusal(
          'NOT_FOUND',
          say('Nobody with the id {personId} takes part in this count.', { personId }),
        );
      }
      const person = await transaction.person.findUniqueOrThrow({ where: { id: personId } });
      if (person.passwordHash !== null) {
        throw new Refusal(
          'NOT_NOW',
          say(
            '{name} has a password and signs in with it. A forgotten password is renewed where the server runs.',
            { name: person.name },
          ),
        );
      }
      const token = await makeInvite(transaction, access.record.date, {
        countId,
        personId,
        madeBy: access.viewer.personId,
      });
      return {
        value: { person: { id: person.id, name: person.name }, path: `/invite/${token}` },
        entries: [
          peopleEntry('invite.make', access.viewer.personId, { count: countId, person: personId }),
        ],
      };
    });
  }

  /**
   * Sets one's own password. A first password opens every count of the person, so it can only be set
   * from a session that already opens them all: a leader who makes a link for someone else's
   * colleague gains nothing.
   *
   * @throws Refusal NOT_SIGNED_IN, WRONG_PASSWORD, NOT_ALLOWED, BAD_INPUT
   */
  async setPassword(
    viewer: Viewer | null,
    current: string | null,
    password: string,
  ): Promise<Api.Person> {
    const { personId, session } = signedIn(viewer);
    checkNewPassword(password);
    await this.checkMaySetPassword(signedIn(viewer), current);
    const passwordHash = await hashPassword(password);
    return this.database.write(async (transaction) => {
      const person = await givePassword(transaction, personId, passwordHash);
      await transaction.session.update({ where: { tokenHash: session }, data: { counts: null } });
      return {
        value: { id: person.id, name: person.name },
        entries: [peopleEntry('person.password', personId, { person: personId })],
      };
    });
  }

  private async checkMaySetPassword(viewer: Viewer, current: string | null): Promise<void> {
    const person = await this.database.read.person.findUniqueOrThrow({
      where: { id: viewer.personId },
      include: { participants: true },
    });
    if (person.passwordHash !== null) {
      this.throttle.begin(person.signInName ?? person.id, 'set-password');
      if (!(await passwordFits(current ?? '', person.passwordHash))) {
        throw new Refusal('WRONG_PASSWORD', say('The current password is not right.'));
      }
      this.throttle.succeeded(person.signInName ?? person.id, 'set-password');
      return;
    }
    if (person.participants.every(({ countId }) => mayEnter(viewer, countId))) return;
    throw new Refusal(
      'NOT_ALLOWED',
      say(
        'You take part in counts that this invite link does not open. Open the link of each of them first, then set a password.',
      ),
    );
  }
}

function countsAfterInvite(
  viewer: Viewer | null,
  personId: string,
  countId: string,
): readonly string[] | null {
  if (viewer === null || viewer.personId !== personId) return [countId];
  return viewer.counts && [...new Set([...viewer.counts, countId])].sort();
}

async function openSession(
  transaction: Transaction,
  person: { readonly id: string; readonly name: string },
  counts: readonly string[] | null,
): Promise<OpenedSession> {
  const token = newToken();
  const expiresAt = new Date(Date.now() + SESSION_DAYS * DAY_MS);
  await transaction.session.create({
    data: {
      tokenHash: hashToken(token),
      personId: person.id,
      counts: counts && JSON.stringify(counts),
      openedAt: new Date().toISOString(),
      expiresAt: expiresAt.toISOString(),
    },
  });
  return { person: { id: person.id, name: person.name }, token, expiresAt };
}

/** Makes a link's token; earlier links of the same person in the same count stop working. */
export async function makeInvite(
  transaction: Transaction,
  countDate: string,
  invite: { readonly countId: string; readonly personId: string; readonly madeBy: string },
): Promise<string> {
  const now = new Date();
  const { countId, personId } = invite;
  await transaction.invite.updateMany({
    where: { countId, personId, voidedAt: null },
    data: { voidedAt: now.toISOString() },
  });
  const token = newToken();
  const lastDay = Math.max(now.getTime(), Date.parse(countDate)) + INVITE_DAYS * DAY_MS;
  await transaction.invite.create({
    data: {
      ...invite,
      tokenHash: hashToken(token),
      madeAt: now.toISOString(),
      expiresAt: new Date(lastDay).toISOString(),
    },
  });
  return token;
}

/** @throws Refusal NOT_NOW if someone else already signs in by that name */
export async function givePassword(
  transaction: Transaction,
  personId: string,
  passwordHash: string,
): Promise<{ readonly id: string; readonly name: string }> {
  const person = await transaction.person.findUniqueOrThrow({ where: { id: personId } });
  const signInName = signInNameOf(person.name);
  const namesake = await transaction.person.findUnique({ where: { signInName } });
  if (namesake !== null && namesake.id !== personId) {
    throw new Refusal(
      'NOT_NOW',
      say(
        'Someone else already signs in as "{name}". Ask your leader to write your name in a way that tells you apart.',
        { name: person.name },
      ),
    );
  }
  return transaction.person.update({ where: { id: personId }, data: { signInName, passwordHash } });
}
