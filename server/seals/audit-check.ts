import {
  countChain,
  firstBrokenEntry,
  type AuditEntry,
  type EntryBody,
} from '../database/audit-log.js';
import { loadCount, peopleOf } from '../database/count-record.js';
import { assignmentContent, planHash } from '../database/count-rows.js';
import { answerContent, loadQueries, queryContent } from '../database/query-rows.js';
import { loadRulings, rulingContent } from '../database/ruling-rows.js';
import type { Source } from '../database/source.js';
import { loadTallies, tallyContent } from '../database/tally-rows.js';
import { contentHash, sha256 } from './canonical.js';
import { merkleRoot } from './merkle.js';

/** What is wrong with a count's record, one sentence each; empty if it is intact. */
export type AuditFindings = readonly string[];

/**
 * Checks a count's whole record: that its chain is unbroken, that every row says what was recorded
 * when it came in, that no row is there which no entry tells of, and that a seal still fits.
 *
 * @param entries the count's audit entries, by seq
 */
export async function checkAudit(
  source: Source,
  countId: string,
  entries: readonly AuditEntry[],
): Promise<AuditFindings> {
  const broken = firstBrokenEntry(entries);
  if (broken !== null) return [`Audit entry ${broken} does not follow from the one before it.`];
  const recorded = recordedHashes(entries);
  const stored = await storedHashes(source, countId);
  const seal = await checkSeal(source, countId, entries);
  return [
    ...[...stored]
      .filter(([row, hash]) => recorded.get(row) !== hash)
      .map(([row]) => `The stored ${row} is not what was recorded.`),
    ...[...recorded.keys()]
      .filter((row) => !stored.has(row))
      .map((row) => `The ${row} was recorded but is not stored.`),
    ...seal,
  ];
}

/** What entries say that rows should be: content hash by noun and id. */
function recordedHashes(entries: readonly AuditEntry[]): ReadonlyMap<string, string> {
  const hashes = new Map<string, string>();
  for (const entry of entries) {
    const { act, by, details } = JSON.parse(entry.body) as EntryBody;
    const key = rowOf(act, details);
    if (key === null) continue;
    if (act === 'assignment.remove') hashes.delete(key);
    else hashes.set(key, String(details['contentHash'] ?? contentHash({ by, ...details })));
  }
  return hashes;
}

function rowOf(act: string, details: EntryBody['details']): string | null {
  switch (act) {
    case 'count.plan':
    case 'count.import':
      return 'plan';
    case 'window.close':
      return `closing of window ${String(details['window'])}`;
    case 'count.sign-off':
      return `sign-off as ${String(details['role'])} of ${String(details['inputHash'])}`;
    case 'assignment.make':
    case 'assignment.remove':
      return `assignment ${String(details['assignment'])}`;
    case 'tally.submit':
    case 'tally.correct':
      return `tally ${String(details['tally'])}`;
    case 'ruling.give':
      return `ruling ${String(details['ruling'])}`;
    case 'ruling.second':
      return `second of ruling ${String(details['ruling'])}`;
    case 'ruling.withdraw':
      return `withdrawal of ruling ${String(details['ruling'])}`;
    case 'query.ask':
      return `query ${String(details['query'])}`;
    case 'query.answer':
      return `answer to query ${String(details['query'])}`;
    default:
      return null;
  }
}

/** What the rows are: content hash by noun and id. */
async function storedHashes(source: Source, countId: string): Promise<ReadonlyMap<string, string>> {
  const record = await loadCount(source, countId);
  if (record === null) return new Map();
  const tallies = await loadTallies(source, countId);
  const rulings = await loadRulings(source, countId);
  const queries = await loadQueries(source, { countId });
  const closings = await source.windowClosing.findMany({ where: { countId } });
  const plan = { ...record, people: peopleOf(record) };
  return new Map([
    ['plan', planHash(plan, record.protocol)],
    // These rows hold no more than their entries do.
    ...closings.map(
      ({ windowId: window, closedBy: by }) =>
        [`closing of window ${window}`, contentHash({ by, window })] as const,
    ),
    ...record.signOffs.map(
      ({ role, inputHash, by }) =>
        [`sign-off as ${role} of ${inputHash}`, contentHash({ by, role, inputHash })] as const,
    ),
    ...record.assignments.map(
      (row) => [`assignment ${row.id}`, contentHash(assignmentContent(countId, row))] as const,
    ),
    ...tallies.map((row) => [`tally ${row.id}`, contentHash(tallyContent(row))] as const),
    ...rulings.flatMap((row) => {
      const { ruling, second, withdrawal } = row;
      return [
        [`ruling ${ruling.id}`, contentHash(rulingContent(row))] as const,
        ...(second ? [[`second of ruling ${ruling.id}`, contentHash(second)] as const] : []),
        ...(withdrawal
          ? [[`withdrawal of ruling ${ruling.id}`, contentHash(withdrawal)] as const]
          : []),
      ];
    }),
    ...queries.flatMap((row) => [
      [`query ${row.id}`, contentHash(queryContent(row))] as const,
      ...(row.answer
        ? [
            [
              `answer to query ${row.id}`,
              contentHash(answerContent(row.id, row.answer.text)),
            ] as const,
          ]
        : []),
    ]),
  ]);
}

async function checkSeal(
  source: Source,
  countId: string,
  entries: readonly AuditEntry[],
): Promise<AuditFindings> {
  const seal = await source.seal.findUnique({ where: { countId } });
  if (seal === null) return [];
  const before = entries.slice(0, seal.auditSize);
  const root = merkleRoot(before.map(({ body }) => Buffer.from(body, 'utf8'))).toString('hex');
  const fits =
    entries.length === seal.auditSize + 1 &&
    entries.at(-1)?.chain === countChain(countId) &&
    entries.at(-1)?.act === 'count.seal' &&
    root === seal.auditRoot &&
    sha256(seal.input) === seal.inputHash &&
    sha256(seal.result) === seal.resultHash;
  return fits ? [] : ['The seal does not fit what is stored.'];
}
