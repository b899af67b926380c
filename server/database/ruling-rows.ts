import type { Decision, Ruling, RulingTarget } from '../core/model/ruling.js';
import { canonicalJson } from '../seals/canonical.js';
import type { Source, Transaction } from './source.js';

/** A ruling with all that happened to it since. */
export interface RulingRecord {
  readonly ruling: Ruling;
  readonly at: string;
  readonly disagreement: string | null;
  readonly replaces: string | null;
  /** The tallies that it stood on when it was given. */
  readonly tallies: readonly string[];
  readonly needsSecond: boolean;
  readonly second: { readonly by: string; readonly at: string } | null;
  readonly withdrawal: {
    readonly by: string;
    readonly reason: string;
    readonly at: string;
  } | null;
  readonly contentHash: string;
}

/** What a ruling's content hash is taken of. */
export function rulingContent(
  record: Pick<RulingRecord, 'ruling' | 'disagreement' | 'replaces' | 'tallies' | 'needsSecond'>,
): object {
  const { ruling, disagreement, replaces, tallies, needsSecond } = record;
  return { ruling, disagreement, replaces, tallies, needsSecond };
}

/** @returns every ruling of the count, in force or not, by id */
export async function loadRulings(
  source: Source,
  countId: string,
): Promise<readonly RulingRecord[]> {
  const rows = await source.ruling.findMany({
    where: { countId },
    include: { second: true, withdrawal: true },
    orderBy: { id: 'asc' },
  });
  return rows.map((row) => ({
    ruling: {
      id: row.id,
      by: row.byId,
      reason: row.reason,
      target: JSON.parse(row.target) as RulingTarget,
      decision: JSON.parse(row.decision) as Decision,
      basis: row.basis === null ? null : (JSON.parse(row.basis) as string[]),
    },
    at: row.at,
    disagreement: row.disagreementId,
    replaces: row.replaces,
    tallies: JSON.parse(row.tallies) as string[],
    needsSecond: row.needsSecond === 1,
    second: row.second && { by: row.second.byId, at: row.second.at },
    withdrawal: row.withdrawal && {
      by: row.withdrawal.byId,
      reason: row.withdrawal.reason,
      at: row.withdrawal.at,
    },
    contentHash: row.contentHash,
  }));
}

export async function storeRuling(
  transaction: Transaction,
  countId: string,
  record: RulingRecord,
): Promise<void> {
  const { ruling } = record;
  await transaction.ruling.create({
    data: {
      countId,
      id: ruling.id,
      byId: ruling.by,
      at: record.at,
      reason: ruling.reason,
      target: canonicalJson(ruling.target),
      decision: canonicalJson(ruling.decision),
      basis: ruling.basis && canonicalJson(ruling.basis),
      disagreementId: record.disagreement,
      replaces: record.replaces,
      tallies: canonicalJson(record.tallies),
      needsSecond: record.needsSecond ? 1 : 0,
      contentHash: record.contentHash,
    },
  });
}
