import { v7 as newId } from 'uuid';
import type { Fault } from '../core/model/fault.js';
import type { Protocol } from '../core/model/protocol.js';
import type { Person, Snapshot, Tally } from '../core/model/snapshot.js';
import { Refusal } from '../core/refusal.js';
import { countChain, PEOPLE_CHAIN, type NewEntry } from '../database/audit-log.js';
import type { Assignment } from '../database/count-record.js';
import {
  assignmentContent,
  planHash,
  storeAssignments,
  storePlan,
} from '../database/count-rows.js';
import type { Transaction } from '../database/source.js';
import { storeTally, tallyContent, type TallyVersion } from '../database/tally-rows.js';
import { contentHash } from '../seals/canonical.js';
import { tallyEntry } from '../tallies/tally-entry.js';
import { say } from '../core/model/saying.js';

/** A checked count on its way in. */
export interface IncomingCount {
  readonly snapshot: Snapshot;
  readonly protocol: Protocol;
  readonly act: 'count.plan' | 'count.import';
  /** Whoever takes it in: gets the leader's part in it. */
  readonly by: { readonly id: string; readonly name: string };
  /** Tallies that are assigned, but not taken in: somebody is still to submit them. */
  readonly leaveOut: readonly string[];
}

/**
 * Stores a whole count: its people, plan, an assignment for each tally, and the tallies. A count that
 * is there already with the very same content is left as it is.
 *
 * @returns the audit entries to store with it; none if it was there already
 * @throws Refusal ID_REUSED for a count id that is taken, BAD_INPUT for a person id that is
 */
export async function storeCount(
  transaction: Transaction,
  incoming: IncomingCount,
): Promise<NewEntry[]> {
  const { protocol, act, by, leaveOut } = incoming;
  const snapshot = { ...incoming.snapshot, people: withLeader(incoming.snapshot.people, by) };
  const hash = planHash(snapshot, protocol);
  const existing = await transaction.count.findUnique({ where: { id: snapshot.id } });
  const versions = snapshot.tallies
    .filter(({ id }) => !leaveOut.includes(id))
    .map((tally) => firstVersion(tally));
  const isSame = existing?.contentHash === hash && existing.plannedBy === by.id;
  if (isSame && (await areStored(transaction, snapshot.id, versions))) return [];
  if (existing !== null) {
    throw new Refusal(
      'ID_REUSED',
      say('There is a count with the id {id} already. Give this one another id.', {
        id: snapshot.id,
      }),
    );
  }
  const added = await storePeople(transaction, snapshot.people, by.id);
  await storePlan(transaction, snapshot, protocol, by.id);
  const assignments = assignmentsFor(snapshot);
  await storeAssignments(transaction, snapshot.id, assignments, by.id);
  for (const version of versions) await storeTally(transaction, snapshot.id, version);
  return [
    ...added,
    { chain: countChain(snapshot.id), by: by.id, act, details: { contentHash: hash } },
    ...assignments.map((assignment) => assignmentEntry(snapshot.id, by.id, assignment)),
    ...versions.map((version) => tallyEntry(snapshot.id, by.id, version)),
  ];
}

/** Whoever takes a count in leads it, or could not open it afterwards. */
function withLeader(people: readonly Person[], by: IncomingCount['by']): readonly Person[] {
  const listed = people.find(({ id }) => id === by.id);
  if (listed?.roles.includes('leader')) return people;
  const leader: Person = { id: by.id, name: by.name, roles: ['leader', ...(listed?.roles ?? [])] };
  return [...people.filter(({ id }) => id !== by.id), leader].sort((a, b) =>
    a.id < b.id ? -1 : 1,
  );
}

/** A person is one and the same over all counts, so an id belongs to one name. */
async function storePeople(
  transaction: Transaction,
  people: readonly Person[],
  by: string,
): Promise<NewEntry[]> {
  const known = await transaction.person.findMany({
    where: { id: { in: people.map(({ id }) => id) } },
  });
  const names = new Map(known.map(({ id, name }) => [id, name]));
  const faults = people
    .filter(({ id, name }) => names.has(id) && names.get(id) !== name)
    .map(({ id, name }): Fault => ({
      code: 'id-in-use',
      file: 'count.json',
      row: null,
      column: 'people',
      value: id,
      problem: say('the person id "{id}" ({name}) already belongs to someone of another name', {
        id,
        name,
      }),
      expected: say('person ids that are unique over all counts of the programme'),
      nearest: null,
    }));
  if (faults.length > 0) throw Refusal.badInput(faults);
  const added = people.filter(({ id }) => !names.has(id));
  const addedAt = new Date().toISOString();
  await transaction.person.createMany({
    data: added.map(({ id, name }) => ({ id, name, addedAt })),
  });
  return added.map(({ id }) => ({
    chain: PEOPLE_CHAIN,
    by,
    act: 'person.add',
    details: { person: id },
  }));
}

/** One for each observer, sections and window that a tally came from. */
function assignmentsFor({ id: countId, tallies }: Snapshot): readonly Assignment[] {
  const byPlace = new Map<string, Tally>();
  for (const tally of tallies) {
    const key = JSON.stringify([tally.observer, tally.sections, tally.window]);
    if (!byPlace.has(key)) byPlace.set(key, tally);
  }
  return [...byPlace.values()].map(({ observer, sections, window, vantage }) => {
    const assignment = { id: newId(), person: observer, sections, window, vantage };
    return { ...assignment, contentHash: contentHash(assignmentContent(countId, assignment)) };
  });
}

async function areStored(
  transaction: Transaction,
  countId: string,
  versions: readonly TallyVersion[],
): Promise<boolean> {
  const rows = await transaction.tally.findMany({ where: { countId } });
  const hashes = new Map(rows.map((row) => [row.id, row.contentHash]));
  return versions.every((version) => hashes.get(version.id) === version.contentHash);
}

function firstVersion(tally: Tally): TallyVersion {
  const version = {
    ...tally,
    // Those of a folder are the count's own.
    samples: [],
    marks: [],
    version: 1,
    replaces: null,
    reason: null,
    submittedAt: new Date().toISOString(),
    contentHash: '',
  };
  return { ...version, contentHash: contentHash(tallyContent(version)) };
}

/** The audit entry of a new assignment. */
export function assignmentEntry(countId: string, by: string, assignment: Assignment): NewEntry {
  return {
    chain: countChain(countId),
    by,
    act: 'assignment.make',
    details: {
      assignment: assignment.id,
      person: assignment.person,
      sections: assignment.sections,
      window: assignment.window,
      contentHash: assignment.contentHash,
    },
  };
}
