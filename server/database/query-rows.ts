import { canonicalJson } from '../seals/canonical.js';
import type { Source, Transaction } from './source.js';

/** A compiler's question to an observer, and the answer if there is one. */
export interface QueryRecord {
  readonly id: string;
  readonly countId: string;
  readonly disagreement: string | null;
  /** The disagreement's sentence when it was asked. */
  readonly about: string;
  /** What the one who was asked is told instead: only lines of their own. */
  readonly aboutForAsked: string;
  readonly askedBy: string;
  readonly to: string;
  readonly question: string;
  readonly askedAt: string;
  /** The tallies that it stands on. */
  readonly tallies: readonly string[];
  readonly contentHash: string;
  readonly answer: {
    readonly text: string;
    readonly at: string;
    readonly contentHash: string;
  } | null;
}

/** What a query's content hash is taken of. */
export function queryContent(
  query: Omit<QueryRecord, 'contentHash' | 'answer' | 'askedAt'>,
): object {
  const { id, countId, disagreement, about, aboutForAsked, askedBy, to, question, tallies } = query;
  return { id, countId, disagreement, about, aboutForAsked, askedBy, to, question, tallies };
}

/** What an answer's content hash is taken of. */
export function answerContent(queryId: string, text: string): object {
  return { query: queryId, answer: text };
}

/** @returns the queries of a count, by the time they were asked */
export async function loadQueries(
  source: Source,
  where: { readonly countId: string } | { readonly id: string },
): Promise<readonly QueryRecord[]> {
  const rows = await source.observerQuery.findMany({
    where,
    include: { answer: true },
    orderBy: [{ askedAt: 'asc' }, { id: 'asc' }],
  });
  return rows.map((row) => ({
    id: row.id,
    countId: row.countId,
    disagreement: row.disagreementId,
    about: row.about,
    aboutForAsked: row.aboutForAsked,
    askedBy: row.askedById,
    to: row.toId,
    question: row.question,
    askedAt: row.askedAt,
    tallies: JSON.parse(row.tallies) as string[],
    contentHash: row.contentHash,
    answer: row.answer && {
      text: row.answer.answer,
      at: row.answer.answeredAt,
      contentHash: row.answer.contentHash,
    },
  }));
}

export async function storeQuery(transaction: Transaction, query: QueryRecord): Promise<void> {
  await transaction.observerQuery.create({
    data: {
      id: query.id,
      countId: query.countId,
      disagreementId: query.disagreement,
      about: query.about,
      aboutForAsked: query.aboutForAsked,
      askedById: query.askedBy,
      toId: query.to,
      question: query.question,
      askedAt: query.askedAt,
      tallies: canonicalJson(query.tallies),
      contentHash: query.contentHash,
    },
  });
}
