import { Injectable } from '@nestjs/common';
import type * as Api from '../api/generated/schema.js';
import type { Disagreement } from '../core/model/result.js';
import { Refusal } from '../core/refusal.js';
import { basisOfLines } from '../core/rulings/basis.js';
import { countChain } from '../database/audit-log.js';
import { Database } from '../database/database.js';
import {
  answerContent,
  loadQueries,
  queryContent,
  storeQuery,
  type QueryRecord,
} from '../database/query-rows.js';
import type { Source } from '../database/source.js';
import { signedIn, type Viewer } from '../people/viewer.js';
import { permissions } from '../people/policy.js';
import { allowedIn, nameOf, openCount, type CountAccess } from '../plans/count-access.js';
import { contentHash } from '../seals/canonical.js';
import { isBlindTo, isOwn } from '../tallies/blindness.js';
import {
  loadReview,
  loadReviewWithin,
  talliesOfCells,
  type LoadedReview,
} from './loaded-review.js';
import { ALL_TALLIES, aboutOwn } from './query-about.js';
import { queryView } from './query.view.js';
import { inEnglish, say } from '../core/model/saying.js';

@Injectable()
export class QueryService {
  constructor(private readonly database: Database) {}

  /** The queries put to the viewer; for those who may see the review, all of them. */
  async queriesFor(access: CountAccess): Promise<Api.ObserverQuery[]> {
    const mayReview = permissions('REVIEW', access.roles, access.state).size > 0;
    if (!mayReview) {
      const queries = await loadQueries(this.database.read, { countId: access.record.id });
      return queries
        .filter(({ to }) => to === access.viewer.personId)
        .map((query) => queryView(access, query));
    }
    const review = await loadReview(this.database.read, access);
    return review.queries.map((query) => queryView(access, query, aboutWhat(review, query)));
  }

  /** @throws Refusal BAD_INPUT, NOT_FOUND, NOT_ALLOWED, NOT_NOW, ID_REUSED */
  askQuery(viewer: Viewer | null, input: Api.AskQueryInput): Promise<Api.ObserverQuery> {
    return this.database.write(async (transaction) => {
      const access = await openCount(transaction, viewer, input.countId);
      allowedIn(access, 'ASK');
      const [stored] = await loadQueries(transaction, { id: input.id });
      if (stored !== undefined) return { value: sameQuery(access, stored, input), entries: [] };
      const review = await loadReviewWithin(transaction, access);
      const query = composed(review, input);
      await storeQuery(transaction, query);
      return {
        value: queryView(access, query, aboutWhat(review, query)),
        entries: [
          {
            chain: countChain(access.record.id),
            by: access.viewer.personId,
            act: 'query.ask',
            details: { query: query.id, to: query.to, contentHash: query.contentHash },
          },
        ],
      };
    });
  }

  /** @throws Refusal BAD_INPUT, NOT_FOUND, NOT_ALLOWED, NOT_NOW */
  answerQuery(viewer: Viewer | null, queryId: string, answer: string): Promise<Api.ObserverQuery> {
    return this.database.write(async (transaction) => {
      const query = await ownQuery(transaction, viewer, queryId);
      const access = await openCount(transaction, viewer, query.countId);
      const text = stated('answer', answer);
      if (query.answer?.text === text) return { value: queryView(access, query), entries: [] };
      allowedIn(access, 'ANSWER');
      if (query.answer !== null) {
        throw new Refusal(
          'NOT_NOW',
          say(
            'This query is answered already, and answers stay as they were given. Tell the compiler, who can ask again.',
          ),
        );
      }
      const at = new Date().toISOString();
      const hash = contentHash(answerContent(queryId, text));
      await transaction.queryAnswer.create({
        data: { queryId, answer: text, answeredAt: at, contentHash: hash },
      });
      return {
        value: queryView(access, { ...query, answer: { text, at, contentHash: hash } }),
        entries: [
          {
            chain: countChain(query.countId),
            by: access.viewer.personId,
            act: 'query.answer',
            details: { query: queryId, contentHash: hash },
          },
        ],
      };
    });
  }
}

/** @throws Refusal NOT_FOUND unless it was put to this person */
async function ownQuery(
  source: Source,
  viewer: Viewer | null,
  queryId: string,
): Promise<QueryRecord> {
  const { personId } = signedIn(viewer);
  const [query] = await loadQueries(source, { id: queryId });
  if (query?.to === personId) return query;
  throw new Refusal('NOT_FOUND', say('No query {queryId} was put to you.', { queryId }));
}

function sameQuery(
  access: CountAccess,
  stored: QueryRecord,
  input: Api.AskQueryInput,
): Api.ObserverQuery {
  const isSame =
    stored.countId === input.countId &&
    stored.askedBy === access.viewer.personId &&
    stored.to === input.toPersonId &&
    stored.question === input.question.trim() &&
    stored.disagreement === (input.disagreementId ?? null);
  if (isSame) return queryView(access, stored);
  throw new Refusal(
    'ID_REUSED',
    say('Another query was already asked under the id {id}. Give this one a new id.', {
      id: input.id,
    }),
  );
}

function composed(review: LoadedReview, input: Api.AskQueryInput): QueryRecord {
  const { access, result } = review;
  const { record, viewer } = access;
  const to = input.toPersonId;
  if (!record.participants.some(({ person }) => person.id === to)) {
    throw new Refusal(
      'NOT_FOUND',
      say('Nobody with the id {to} takes part in this count.', { to }),
    );
  }
  const disagreement = result.disagreements.find(({ id }) => id === input.disagreementId) ?? null;
  if (input.disagreementId && disagreement === null) {
    throw new Refusal(
      'NOT_FOUND',
      say(
        'There is no disagreement {disagreementId} in this review any more. Load the review again.',
        { disagreementId: input.disagreementId },
      ),
    );
  }
  const own = review.tallies.filter((tally) => isOwn(tally, to));
  const cells = cellsOf(review, disagreement?.link ?? null, disagreement?.cell ?? null);
  const tallies = disagreement === null ? own.map(({ id }) => id) : talliesOfCells(review, cells);
  checkMayBeAsked(review, to, tallies);
  const lines = own
    .flatMap((tally) => tally.lines)
    .filter(({ id }) => disagreement === null || disagreement.lines.includes(id));
  const query = {
    id: input.id,
    countId: record.id,
    disagreement: disagreement?.id ?? null,
    about: inEnglish(disagreement?.text ?? ALL_TALLIES),
    aboutForAsked: inEnglish(aboutOwn(basisOfLines(lines), disagreement !== null)),
    askedBy: viewer.personId,
    to,
    question: stated('question', input.question),
    tallies,
  };
  return {
    ...query,
    askedAt: new Date().toISOString(),
    contentHash: contentHash(queryContent(query)),
    answer: null,
  };
}

function aboutWhat({ result }: LoadedReview, query: QueryRecord): Disagreement | null {
  return result.disagreements.find(({ id }) => id === query.disagreement) ?? null;
}

function cellsOf(
  { result }: LoadedReview,
  link: string | null,
  cell: string | null,
): readonly string[] {
  const linked = result.links.find(({ id }) => id === link);
  if (linked !== undefined) return [linked.first.cell, linked.second.cell];
  return cell === null ? [] : [cell];
}

/** Even a question tells something: it is put to people whose own tallies of its cells are in. */
function checkMayBeAsked(review: LoadedReview, to: string, tallies: readonly string[]): void {
  const { record } = review.access;
  const concerned = review.tallies.filter(({ id }) => tallies.includes(id));
  const owes = concerned.some((tally) => isBlindTo(to, tally, record));
  if (concerned.some((tally) => isOwn(tally, to)) && !owes) return;
  throw new Refusal(
    'NOT_NOW',
    owes
      ? say(
          '{name} still has to submit a tally here. Ask once it is in, so that the question gives nothing away.',
          { name: nameOf(record, to) },
        )
      : say(
          '{name} has no tally here to be asked about. Ask one of the observers of the disagreement.',
          { name: nameOf(record, to) },
        ),
  );
}

/** @throws Refusal BAD_INPUT if it is empty */
function stated(column: 'question' | 'answer', text: string): string {
  if (text.trim() !== '') return text.trim();
  throw Refusal.badInput([
    {
      code: 'missing-value',
      file: 'query',
      row: null,
      column,
      value: text,
      problem: column === 'question' ? say('the question is empty') : say('the answer is empty'),
      expected: say('a sentence or two'),
      nearest: null,
    },
  ]);
}
