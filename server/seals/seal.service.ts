import { Injectable } from '@nestjs/common';
import { v7 as newId } from 'uuid';
import type * as Api from '../api/generated/schema.js';
import type { Result } from '../core/model/result.js';
import { Refusal } from '../core/refusal.js';
import { countChain } from '../database/audit-log.js';
import type { SealRecord } from '../database/count-record.js';
import { Database } from '../database/database.js';
import type { Transaction } from '../database/source.js';
import { loadRulings } from '../database/ruling-rows.js';
import { loadTallies } from '../database/tally-rows.js';
import { isEverAllowed, permission } from '../people/policy.js';
import type { Viewer } from '../people/viewer.js';
import { type CountAccess, ROLE_WORDS, allowedIn, openCount } from '../plans/count-access.js';
import { countView, type CountView } from '../plans/count.view.js';
import { loadReviewWithin } from '../reviews/loaded-review.js';
import { openMatters } from '../reviews/open-matters.js';
import { ReviewService } from '../reviews/review.service.js';
import { sourceLines } from '../reviews/source-lines.js';
import { resultText } from '../reviews/stored-result.js';
import { currentTallies } from '../tallies/blindness.js';
import { sha256 } from './canonical.js';
import { compiledView, sealView, type CompiledView } from './compiled.view.js';
import { merkleRoot } from './merkle.js';
import { type Saying, joined, say, together } from '../core/model/saying.js';

@Injectable()
export class SealService {
  constructor(
    private readonly database: Database,
    private readonly reviews: ReviewService,
  ) {}

  /**
   * Approves a count as it stands. Signing the same thing again changes nothing.
   *
   * @param inputHash the review that was read and is meant
   * @throws Refusal NOT_ALLOWED; NOT_NOW with every open matter; STALE if the count is another now
   */
  signOff(
    viewer: Viewer | null,
    countId: string,
    as: Api.Role,
    inputHash: string,
  ): Promise<CountView> {
    return this.database.write(async (transaction) => {
      const access = await openCount(transaction, viewer, countId);
      allowedIn(access, 'SIGN_OFF');
      checkSignsAs(access, as);
      const review = await loadReviewWithin(transaction, access);
      if (review.reconciled.inputHash !== inputHash) {
        throw new Refusal(
          'STALE',
          say(
            'The count has changed since you read it: a tally or a ruling came in. Read it again, then sign.',
          ),
        );
      }
      refuseOpenMatters(say('The count cannot be signed off yet:'), openMatters(review));
      const role = as.toLowerCase();
      const by = access.viewer.personId;
      const isSigned = access.record.signOffs.some(
        (signOff) => signOff.role === role && signOff.inputHash === inputHash,
      );
      if (isSigned) return { value: countView(access), entries: [] };
      await transaction.signOff.create({
        data: { countId, role, inputHash, byId: by, at: new Date().toISOString() },
      });
      return {
        value: countView(await openCount(transaction, viewer, countId)),
        entries: [
          { chain: countChain(countId), by, act: 'count.sign-off', details: { role, inputHash } },
        ],
      };
    });
  }

  /**
   * Freezes a signed count: the very bytes that went into and came out of the engine, and the root
   * of the audit chain up to here. Sealing it again gives the same seal.
   *
   * @throws Refusal NOT_ALLOWED, NOT_NOW
   */
  seal(viewer: Viewer | null, countId: string): Promise<Api.Seal> {
    return this.database.write(async (transaction) => {
      const access = await openCount(transaction, viewer, countId);
      const { record } = access;
      if (record.seal !== null && isEverAllowed('SEAL', access.roles)) {
        return { value: sealView(record, record.seal), entries: [] };
      }
      allowedIn(access, 'SEAL');
      const seal = await storeSeal(transaction, access);
      const { inputHash, resultHash, auditRoot, auditSize } = seal;
      return {
        value: sealView(record, seal),
        entries: [
          {
            chain: countChain(countId),
            by: seal.by,
            act: 'count.seal',
            details: { seal: seal.id, inputHash, resultHash, auditRoot, auditSize },
          },
        ],
      };
    });
  }

  /**
   * The compiled count: the sealed one if there is a seal, otherwise the draft.
   *
   * @throws Refusal NOT_ALLOWED, NOT_NOW
   */
  async compiled(access: CountAccess): Promise<CompiledView> {
    allowedIn(access, 'SEE_COMPILED');
    const { record } = access;
    if (record.seal === null) {
      const review = await this.reviews.load(access);
      return compiledView(review, review.result, sourceLines(review));
    }
    const { result } = await this.database.read.seal.findUniqueOrThrow({
      where: { id: record.seal.id },
    });
    const tallies = currentTallies(await loadTallies(this.database.read, record.id));
    const rulings = await loadRulings(this.database.read, record.id);
    return compiledView(
      { access, rulings },
      JSON.parse(result) as Result<string>,
      sourceLines({ access, tallies }),
    );
  }

  /** The line of one taxon, by its scientific name as compiled. */
  line(compiled: CompiledView, taxon: string): Api.CompiledLine | null {
    return compiled.lines.find((line) => line.taxon === taxon) ?? null;
  }

  /** The whole ledger, or what concerns one taxon. */
  ledger(compiled: CompiledView, taxon: string | null): readonly Api.Posting[] {
    return compiled.ledger.filter((posting) => taxon === null || posting.taxon === taxon);
  }
}

function checkSignsAs({ roles, state }: CountAccess, as: Api.Role): void {
  if (roles.includes(as) && permission('SIGN_OFF', as, state) === 'yes') return;
  throw new Refusal(
    'NOT_ALLOWED',
    say('You cannot sign off as {as}: you take part as {roles}.', {
      as: ROLE_WORDS[as],
      roles: together(roles.map((role) => ROLE_WORDS[role])),
    }),
  );
}

function refuseOpenMatters(head: Saying, matters: readonly Saying[]): void {
  if (matters.length === 0) return;
  throw new Refusal(
    'NOT_NOW',
    joined([head, ...matters.map((matter) => joined(['- ', matter], ''))], '\n'),
  );
}

async function storeSeal(transaction: Transaction, access: CountAccess): Promise<SealRecord> {
  const countId = access.record.id;
  const review = await loadReviewWithin(transaction, access);
  refuseOpenMatters(say('The count cannot be sealed yet:'), openMatters(review));
  const { input, inputHash } = review.reconciled;
  const result = resultText(review.result);
  const entries = await transaction.auditEntry.findMany({
    where: { chain: countChain(countId) },
    orderBy: { seq: 'asc' },
  });
  const root = merkleRoot(entries.map(({ body }) => Buffer.from(body, 'utf8')));
  const seal: SealRecord = {
    id: newId(),
    by: access.viewer.personId,
    at: new Date().toISOString(),
    inputHash,
    resultHash: sha256(result),
    auditRoot: root.toString('hex'),
    auditSize: entries.length,
  };
  const { by, ...columns } = seal;
  await transaction.seal.create({
    data: { ...columns, countId, byId: by, input, result },
  });
  return seal;
}
