import type { AuditAct, AuditDetails, AuditEntry, EntryBody } from '../database/audit-log.js';
import type { CountRecord } from '../database/count-record.js';

/** What an audit entry says, in one plain sentence. */
export function auditText(record: CountRecord, entry: AuditEntry): string {
  const { act, by, details } = JSON.parse(entry.body) as EntryBody;
  const name = (id: unknown): string =>
    record.participants.find(({ person }) => person.id === id)?.person.name ?? String(id);
  const what = SENTENCES[act as AuditAct]?.(details, name) ?? act;
  return `${by === null ? 'The server' : name(by)} ${what}.`;
}

type Sentence = (details: AuditDetails, name: (id: unknown) => string) => string;

const place = ({ sections, window }: AuditDetails): string =>
  `${(sections as readonly string[]).join('+')} in window ${String(window)}`;

const SENTENCES: Readonly<Partial<Record<AuditAct, Sentence>>> = {
  'count.plan': () => 'planned the count',
  'count.import': () => 'imported the count',
  'assignment.make': (details, name) => `assigned ${name(details['person'])} to ${place(details)}`,
  'assignment.remove': (details, name) => `took an assignment of ${name(details['person'])} back`,
  'window.close': ({ window }) => `closed window ${String(window)}`,
  'tally.submit': (details, name) =>
    `submitted tally ${String(details['tally'])} of ${name(details['observer'])} for ${place(details)}`,
  'tally.correct': (details) =>
    `corrected tally ${String(details['replaces'])} for ${place(details)}: version ${String(details['version'])} is ${String(details['tally'])}`,
  'ruling.give': ({ ruling, needsSecond }) =>
    `gave ruling ${String(ruling)}${needsSecond === 'yes' ? ', which needs a second person' : ''}`,
  'ruling.second': ({ ruling }) => `seconded ruling ${String(ruling)}`,
  'ruling.withdraw': ({ ruling }) => `took ruling ${String(ruling)} back`,
  'query.ask': ({ query, to }, name) => `put query ${String(query)} to ${name(to)}`,
  'query.answer': ({ query }) => `answered query ${String(query)}`,
  'count.sign-off': ({ role }) => `signed the count off as ${String(role)}`,
  'count.seal': () => 'sealed the count',
};
