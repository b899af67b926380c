import { joined, say, type Said, type Saying } from '../core/model/saying.js';
import type { AuditAct, AuditDetails, AuditEntry, EntryBody } from '../database/audit-log.js';
import type { CountRecord } from '../database/count-record.js';
import { ROLE_WORDS } from '../plans/count-access.js';

/** What an audit entry says, in one plain sentence. What is recorded and hashed is its body. */
export function auditText(record: CountRecord, entry: AuditEntry): Saying {
  const { act, by, details } = JSON.parse(entry.body) as EntryBody;
  const name = (id: unknown): string =>
    record.participants.find(({ person }) => person.id === id)?.person.name ?? String(id);
  const what = SENTENCES[act as AuditAct]?.(details, name) ?? act;
  return by === null
    ? say('The server {what}.', { what })
    : say('{person} {what}.', { person: name(by), what });
}

type Sentence = (details: AuditDetails, name: (id: unknown) => string) => Saying;

/** What entries tell of several acts. */
function place({ sections, window }: AuditDetails): Saying {
  return say('{sections} in window {window}', {
    sections: joined(sections as readonly string[], '+'),
    window: String(window),
  });
}

function role(recorded: unknown): Said {
  const known = Object.entries(ROLE_WORDS).find(([each]) => each.toLowerCase() === recorded);
  return known?.[1] ?? String(recorded);
}

const SENTENCES: Readonly<Partial<Record<AuditAct, Sentence>>> = {
  'count.plan': () => say('planned the count'),
  'count.import': () => say('imported the count'),
  'assignment.make': (details, name) =>
    say('assigned {person} to {place}', { person: name(details['person']), place: place(details) }),
  'assignment.remove': (details, name) =>
    say('took an assignment of {person} back', { person: name(details['person']) }),
  'window.close': ({ window }) => say('closed window {window}', { window: String(window) }),
  'tally.submit': (details, name) =>
    say('submitted tally {tally} of {observer} for {place}', {
      tally: String(details['tally']),
      observer: name(details['observer']),
      place: place(details),
    }),
  'tally.correct': (details) =>
    say('corrected tally {earlier} for {place}: version {version} is {tally}', {
      earlier: String(details['replaces']),
      place: place(details),
      version: String(details['version']),
      tally: String(details['tally']),
    }),
  'ruling.give': (details) => {
    const ruling = String(details['ruling']);
    return details['needsSecond'] === 'yes'
      ? say('gave ruling {ruling}, which needs a second person', { ruling })
      : say('gave ruling {ruling}', { ruling });
  },
  'ruling.second': ({ ruling }) => say('seconded ruling {ruling}', { ruling: String(ruling) }),
  'ruling.withdraw': ({ ruling }) => say('took ruling {ruling} back', { ruling: String(ruling) }),
  'query.ask': ({ query, to }, name) =>
    say('put query {query} to {person}', { query: String(query), person: name(to) }),
  'query.answer': ({ query }) => say('answered query {query}', { query: String(query) }),
  'count.sign-off': (details) =>
    say('signed the count off as {role}', { role: role(details['role']) }),
  'count.seal': () => say('sealed the count'),
};
