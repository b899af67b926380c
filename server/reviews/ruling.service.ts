import { Injectable } from '@nestjs/common';
import type * as Api from '../api/generated/schema.js';
import type { Ruling } from '../core/model/ruling.js';
import { Refusal } from '../core/refusal.js';
import { targetKey, targetSaying } from '../core/rulings/check-contradictions.js';
import { countChain, type AuditAct, type NewEntry } from '../database/audit-log.js';
import { Database } from '../database/database.js';
import { rulingContent, storeRuling, type RulingRecord } from '../database/ruling-rows.js';
import type { Transaction } from '../database/source.js';
import type { Viewer } from '../people/viewer.js';
import { allowedIn, openCount, type CountAccess } from '../plans/count-access.js';
import { contentHash } from '../seals/canonical.js';
import { isOwn } from '../tallies/blindness.js';
import { loadReviewWithin, type LoadedReview } from './loaded-review.js';
import { reviewInput } from './review-input.js';
import { reconcileAndKeep } from './stored-result.js';
import { readDecision } from './read-decision.js';
import { rulingView } from './ruling.view.js';
import { awaitsSecond, standingRulings } from './rulings-in-force.js';
import { factsOf, targetOf } from './ruling-target.js';
import { say } from '../core/model/saying.js';

@Injectable()
export class RulingService {
  constructor(private readonly database: Database) {}

  /**
   * @throws Refusal BAD_INPUT, CONTRADICTION (both rulings named), STALE if the review that the
   *   compiler looked at is no longer the present one, ID_REUSED, NOT_FOUND, NOT_ALLOWED, NOT_NOW
   */
  giveRuling(viewer: Viewer | null, input: Api.RulingInput): Promise<Api.Ruling> {
    return this.database.write(async (transaction) => {
      const access = await openCount(transaction, viewer, input.countId);
      const stored = await transaction.ruling.findUnique({ where: { id: input.id } });
      if (stored !== null) {
        return { value: await this.sameRuling(transaction, access, input), entries: [] };
      }
      allowedIn(access, 'RULE');
      const review = await loadReviewWithin(transaction, access);
      const record = decide(review, input);
      await checkFits(transaction, review, record);
      await storeRuling(transaction, access.record.id, record);
      const value = rulingView(await loadReviewWithin(transaction, access), record);
      return { value, entries: [rulingEntry(access, 'ruling.give', record)] };
    });
  }

  /** @throws Refusal NOT_FOUND, NOT_ALLOWED, NOT_NOW */
  secondRuling(viewer: Viewer | null, rulingId: string): Promise<Api.Ruling> {
    return this.database.write(async (transaction) => {
      const { access, review, record } = await openRuling(transaction, viewer, rulingId, 'SECOND');
      const { personId } = access.viewer;
      if (record.ruling.by === personId) {
        throw new Refusal(
          'NOT_ALLOWED',
          say(
            'A ruling is seconded by somebody else than its author. Ask another compiler or the leader.',
          ),
        );
      }
      if (record.second?.by === personId) return { value: rulingView(review, record), entries: [] };
      if (!awaitsSecond(record)) {
        throw new Refusal(
          'NOT_NOW',
          say('Ruling {rulingId} needs no second, or has one already.', { rulingId }),
        );
      }
      checkStanding(review, record);
      await checkFits(transaction, review, record);
      const second = { by: personId, at: new Date().toISOString() };
      await transaction.rulingSecond.create({ data: { rulingId, byId: second.by, at: second.at } });
      const seconded = { ...record, second };
      return {
        value: rulingView(await loadReviewWithin(transaction, access), seconded),
        entries: [rulingEntry(access, 'ruling.second', seconded)],
      };
    });
  }

  /** @throws Refusal NOT_FOUND, NOT_ALLOWED, NOT_NOW, BAD_INPUT */
  withdrawRuling(viewer: Viewer | null, rulingId: string, reason: string): Promise<Api.Ruling> {
    return this.database.write(async (transaction) => {
      const { access, review, record } = await openRuling(transaction, viewer, rulingId, 'RULE');
      const { personId } = access.viewer;
      if (record.ruling.by !== personId) {
        throw new Refusal(
          'NOT_ALLOWED',
          say('Only its author takes a ruling back. Give one that takes its place instead.'),
        );
      }
      if (record.withdrawal?.reason === reason.trim()) {
        return { value: rulingView(review, record), entries: [] };
      }
      checkStanding(review, record);
      const withdrawal = { by: personId, reason: stated(reason), at: new Date().toISOString() };
      await transaction.rulingWithdrawal.create({
        data: { rulingId, byId: personId, reason: withdrawal.reason, at: withdrawal.at },
      });
      const withdrawn = { ...record, withdrawal };
      return {
        value: rulingView(await loadReviewWithin(transaction, access), withdrawn),
        entries: [rulingEntry(access, 'ruling.withdraw', withdrawn)],
      };
    });
  }

  /** A ruling sent twice is taken once. What it stood on the first time is not asked again. */
  private async sameRuling(
    transaction: Transaction,
    access: CountAccess,
    input: Api.RulingInput,
  ): Promise<Api.Ruling> {
    allowedIn(access, 'REVIEW');
    const review = await loadReviewWithin(transaction, access);
    const record = review.rulings.find(({ ruling }) => ruling.id === input.id);
    const isSame =
      record?.ruling.by === access.viewer.personId &&
      record.ruling.reason === input.reason.trim() &&
      record.disagreement === (input.disagreementId ?? null) &&
      record.replaces === (input.replaces ?? null) &&
      contentHash(record.ruling.decision) ===
        contentHash(readDecision(input.decision, record.ruling.target)) &&
      (!input.target || targetKey(targetOf(review, input)) === targetKey(record.ruling.target));
    if (isSame) return rulingView(review, record);
    throw new Refusal(
      'ID_REUSED',
      say('Another ruling was already given under the id {id}. Give this one a new id.', {
        id: input.id,
      }),
    );
  }
}

/** Turns what came in into a ruling that can stand beside those there are. */
function decide(review: LoadedReview, input: Api.RulingInput): RulingRecord {
  const { access, reconciled } = review;
  if (input.inputHash && input.inputHash !== reconciled.inputHash) {
    throw new Refusal(
      'STALE',
      say(
        'The count has changed since you opened this page: a tally or a ruling came in. Look at it again before you rule.',
      ),
    );
  }
  const { personId } = access.viewer;
  const { target, basis, tallies } = factsOf(review, targetOf(review, input));
  const ruling: Ruling = {
    id: input.id,
    by: personId,
    reason: stated(input.reason),
    target,
    decision: readDecision(input.decision, target),
    basis,
  };
  const facts = {
    ruling,
    disagreement: input.disagreementId ?? null,
    replaces: input.replaces ?? null,
    tallies,
    needsSecond: review.tallies.some(
      (tally) => tallies.includes(tally.id) && isOwn(tally, personId),
    ),
  };
  const record: RulingRecord = {
    ...facts,
    at: new Date().toISOString(),
    second: null,
    withdrawal: null,
    contentHash: contentHash(rulingContent(facts)),
  };
  checkReplaced(review, record);
  return record;
}

/** The ruling whose place is taken stands, is about the same thing, and nothing else is. */
function checkReplaced(review: LoadedReview, { ruling, replaces }: RulingRecord): void {
  const key = targetKey(ruling.target);
  const onTarget = standingRulings(review.rulings).filter(
    (record) => targetKey(record.ruling.target) === key,
  );
  if (replaces !== null && !onTarget.some((record) => record.ruling.id === replaces)) {
    throw new Refusal(
      'NOT_FOUND',
      say('Ruling {replaces}, whose place this one would take, is not in force on {target}.', {
        replaces,
        target: targetSaying(ruling.target),
      }),
    );
  }
  const other = onTarget.find((record) => record.ruling.id !== replaces);
  if (other === undefined) return;
  throw new Refusal(
    'CONTRADICTION',
    say(
      'Ruling {id} (by {by}: {kind}) and ruling {laterId} (by {laterBy}: {laterKind}) are both about {target}. Withdraw one of them, or let the later one take the place of the earlier.',
      {
        id: other.ruling.id,
        by: other.ruling.by,
        kind: other.ruling.decision.kind,
        laterId: ruling.id,
        laterBy: ruling.by,
        laterKind: ruling.decision.kind,
        target: targetSaying(ruling.target),
      },
    ),
  );
}

/**
 * Tries a ruling out before it counts: the engine refuses what does not fit, and says where a ruling
 * would have no effect.
 */
async function checkFits(
  transaction: Transaction,
  { access, tallies, rulings }: LoadedReview,
  record: RulingRecord,
): Promise<void> {
  const seconded = { ...record, second: { by: '', at: '' } };
  const others = rulings.filter(({ ruling }) => ruling.id !== record.ruling.id);
  const all = [...others, seconded].sort((a, b) => (a.ruling.id < b.ruling.id ? -1 : 1));
  const input = reviewInput(access.record, tallies, all);
  const { result } = await reconcileAndKeep(transaction, input);
  const outcome = result.rulings.find(({ id }) => id === record.ruling.id);
  if (outcome?.state === 'applied') return;
  throw new Refusal(
    'STALE',
    say('The ruling would have no effect: {text}. Load the review again.', {
      text: outcome?.text ?? say('nothing is there for it to settle'),
    }),
  );
}

function checkStanding(review: LoadedReview, { ruling }: RulingRecord): void {
  const stands = standingRulings(review.rulings).some((record) => record.ruling.id === ruling.id);
  if (stands) return;
  throw new Refusal(
    'NOT_NOW',
    say('Ruling {id} was taken back or replaced already.', { id: ruling.id }),
  );
}

/** @throws Refusal BAD_INPUT if no reason is given */
function stated(reason: string): string {
  const text = reason.trim();
  if (text !== '') return text;
  throw Refusal.badInput([
    {
      code: 'missing-value',
      file: 'ruling',
      row: null,
      column: 'reason',
      value: reason,
      problem: say('no reason is given'),
      expected: say('a few words on why, for whoever traces the number later'),
      nearest: null,
    },
  ]);
}

/** Opens the count of a ruling for someone who wants to do this with it. */
async function openRuling(
  transaction: Transaction,
  viewer: Viewer | null,
  rulingId: string,
  act: 'RULE' | 'SECOND',
): Promise<{ access: CountAccess; review: LoadedReview; record: RulingRecord }> {
  const row = await transaction.ruling.findUnique({ where: { id: rulingId } });
  const missing = new Refusal(
    'NOT_FOUND',
    say('There is no ruling {rulingId} that you may see.', { rulingId }),
  );
  if (row === null) throw missing;
  const access = await openCount(transaction, viewer, row.countId);
  allowedIn(access, act);
  const review = await loadReviewWithin(transaction, access);
  const record = review.rulings.find(({ ruling }) => ruling.id === rulingId);
  if (record === undefined) throw missing;
  return { access, review, record };
}

function rulingEntry(access: CountAccess, act: AuditAct, record: RulingRecord): NewEntry {
  const { ruling, second, withdrawal } = record;
  return {
    chain: countChain(access.record.id),
    by: access.viewer.personId,
    act,
    details: {
      ruling: ruling.id,
      ...(act === 'ruling.give' && {
        needsSecond: record.needsSecond ? 'yes' : 'no',
        replaces: record.replaces,
        contentHash: record.contentHash,
      }),
      ...(act === 'ruling.second' && { contentHash: contentHash(second) }),
      ...(act === 'ruling.withdraw' && { contentHash: contentHash(withdrawal) }),
    },
  };
}
