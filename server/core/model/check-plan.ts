import type { Fault } from './fault.js';
import { isObject, KeyReader } from './key-reader.js';
import { nearestOf } from './nearest.js';
import type { RawDocument } from './raw.js';
import { readDate, readInstant } from './reading.js';
import type { CountWindow, Person, Role, Snapshot } from './snapshot.js';
import { instant } from './time.js';
import { joined, say } from './saying.js';

export type Plan = Pick<
  Snapshot,
  'id' | 'name' | 'waterbody' | 'date' | 'timeZone' | 'windows' | 'people'
>;

export interface CheckedPlan {
  readonly plan: Plan;
  /** Ids that other files may refer to; `null` if the list could not be read. */
  readonly peopleIds: readonly string[] | null;
  readonly windowIds: readonly string[] | null;
  /** The `protocol` key, to be checked once the places are known. */
  readonly protocol: unknown;
}

const PLAN_KEYS = [
  'id',
  'name',
  'waterbody',
  'date',
  'timeZone',
  'windows',
  'people',
  'protocol',
] as const;

const ROLES: readonly Role[] = ['leader', 'observer', 'compiler'];

/** Checks `count.json`, its protocol apart. The values count only if no fault was added. */
export function checkPlan(
  document: RawDocument,
  timeZones: readonly string[],
  faults: Fault[],
  notes: string[],
): CheckedPlan {
  const value = document.value;
  if (!isObject(value)) {
    if (value !== undefined) faults.push(notAnObject(document.file));
    const nothing = { id: '', name: '', waterbody: '', date: '', timeZone: '' };
    const plan = { ...nothing, windows: [], people: [] };
    return { plan, peopleIds: null, windowIds: null, protocol: undefined };
  }
  const reader = new KeyReader(document.file, '', value, faults);
  reader.unknownKeys(PLAN_KEYS, notes);
  const windows = checkWindows(reader, notes);
  const people = checkPeople(reader, notes);
  return {
    plan: {
      id: reader.newId('id') ?? '',
      name: reader.text('name', say('the name of the count')) ?? '',
      waterbody: reader.text('waterbody', say('the name of the waterbody')) ?? '',
      date: reader.read('date', say('a date such as 2027-01-16'), readDate) ?? '',
      timeZone: checkTimeZone(reader, timeZones),
      windows: windows ?? [],
      people: people ?? [],
    },
    peopleIds: people === null ? null : people.map(({ id }) => id).filter((id) => id !== ''),
    windowIds: windows === null ? null : windows.map(({ id }) => id).filter((id) => id !== ''),
    protocol: reader.value('protocol'),
  };
}

function notAnObject(file: string): Fault {
  return {
    code: 'wrong-type',
    file,
    row: null,
    column: null,
    value: null,
    problem: say('the document is not a JSON object'),
    expected: say('an object with the keys {keys}', { keys: joined(PLAN_KEYS, ', ') }),
    nearest: null,
  };
}

function checkTimeZone(reader: KeyReader, timeZones: readonly string[]): string {
  const expected = say('an IANA time zone such as America/Toronto');
  const name = reader.text('timeZone', expected);
  if (name !== null && !timeZones.includes(name)) {
    const nearest = nearestOf(name, timeZones);
    reader.fault(
      'timeZone',
      'unknown-time-zone',
      say('"{name}" is not a time zone', { name }),
      expected,
      nearest,
    );
  }
  return name ?? '';
}

function checkWindows(reader: KeyReader, notes: string[]): readonly CountWindow[] | null {
  const entries = reader.objects('windows', say('a list of windows with id, start and end'));
  if (entries === null) return null;
  if (entries.length === 0) {
    reader.fault('windows', 'missing-value', say('the list is empty'), say('at least one window'));
  }
  const ids = new Map<string, string>();
  const windows = entries.map((entry) => {
    entry.unknownKeys(['id', 'start', 'end', 'slackMinutes'], notes);
    const start = entry.read('start', say('when the window opens'), readInstant);
    const end = entry.read('end', say('when the window closes'), readInstant);
    if (start !== null && end !== null && (instant(end) ?? 0) <= (instant(start) ?? 0)) {
      const problem = say('the window ends at {end}, not after it starts at {start}', {
        end,
        start,
      });
      entry.fault('end', 'ends-before-start', problem, say('an end after the start'));
    }
    const slack = say('whole minutes, 0 or more');
    return {
      id: uniqueId(entry, ids),
      start: start ?? '',
      end: end ?? '',
      slackMinutes: entry.whole('slackMinutes', slack, false) ?? 0,
    };
  });
  return windows.sort((a, b) => (a.id < b.id ? -1 : 1));
}

function checkPeople(reader: KeyReader, notes: string[]): readonly Person[] | null {
  const entries = reader.objects('people', say('a list of people with id, name and roles'));
  if (entries === null) return null;
  const ids = new Map<string, string>();
  const people = entries.map((entry) => {
    entry.unknownKeys(['id', 'name', 'roles'], notes);
    return {
      id: uniqueId(entry, ids),
      name: entry.text('name', say("the person's name as it is shown")) ?? '',
      roles: checkRoles(entry),
    };
  });
  return people.sort((a, b) => (a.id < b.id ? -1 : 1));
}

function checkRoles(entry: KeyReader): readonly Role[] {
  const expected = say('a list of roles: {roles}', { roles: joined(ROLES, ', ') });
  const roles = entry.list('roles', expected) ?? [];
  const taken = new Set<Role>();
  for (const [index, role] of roles.entries()) {
    const known = ROLES.find((name) => name === role);
    if (known !== undefined) {
      taken.add(known);
      continue;
    }
    entry.faultAt(entry.at(`roles[${index}]`), role, {
      code: 'unknown-word',
      problem: say('{role} is not a role', { role: JSON.stringify(role) }),
      expected: joined(ROLES, ', '),
      nearest: typeof role === 'string' ? nearestOf(role, ROLES) : null,
    });
  }
  if (roles.length === 0 && entry.value('roles') !== undefined) {
    entry.fault('roles', 'missing-value', say('the person has no role'), expected);
  }
  return ROLES.filter((role) => taken.has(role));
}

/** The entry's id, with a fault if an earlier entry of the list has it; `ids` grows. */
export function uniqueId(entry: KeyReader, ids: Map<string, string>): string {
  const id = entry.newId('id');
  if (id === null) return '';
  const earlier = ids.get(id);
  if (earlier === undefined) ids.set(id, entry.at('id'));
  else
    entry.fault(
      'id',
      'duplicate-id',
      say('"{id}" is {earlier} too', { id, earlier }),
      say('an id of its own'),
    );
  return id;
}
