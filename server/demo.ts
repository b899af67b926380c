import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Person } from './core/model/snapshot.js';
import { faultSentence } from './core/model/fault.js';
import { PEOPLE_CHAIN } from './database/audit-log.js';
import { loadCount, type CountRecord } from './database/count-record.js';
import type { Database } from './database/database.js';
import { checkFolder } from './exchange/check-folder.js';
import { openFolder } from './exchange/open-folder.js';
import { hashPassword } from './people/password.js';
import { givePassword, makeInvite, peopleEntry } from './people/people.service.js';
import { storeCount } from './plans/store-count.js';
import { PROJECT_ROOT } from './project-root.js';
import { isFulfilled } from './tallies/blindness.js';

/** Known to everyone who reads this: a database that has it is never served without `demo`. */
const DEMO_PASSWORD = 'open-water-1';

export interface DemoSignIn {
  readonly name: string;
  readonly roles: string;
  /** Null for those who come by invite link. */
  readonly password: string | null;
  /** Path of the invite link's page; null for those with a password. */
  readonly path: string | null;
  readonly note: string | null;
}

interface DemoSettings {
  /** Tallies that a visitor submits instead. */
  readonly leaveOut?: readonly string[];
}

/**
 * Loads the scenario into an empty database, and makes the sign-ins anew: a password for leaders and
 * compilers, a fresh invite link for everyone else.
 *
 * @throws Error if the database holds anything but the demonstration
 */
export async function loadDemo(database: Database): Promise<readonly DemoSignIn[]> {
  const folder = demoFolder();
  const opened = await openFolder(folder);
  if (!opened.ok) throw new Error(opened.reason);
  const checked = await checkFolder(opened.files);
  if (!checked.ok) throw new Error(checked.faults.map(faultSentence).join('\n'));
  const { snapshot, protocol } = checked;
  const leader = snapshot.people.find(({ roles }) => roles.includes('leader'));
  if (leader === undefined) throw new Error(`the scenario ${folder} has no leader`);
  if (!(await isDemo(database))) {
    const counts = await database.read.count.count();
    const people = await database.read.person.count();
    if (counts + people > 0) {
      throw new Error(
        'This database holds counts of its own, and the demonstration would give its people passwords that everyone knows. Start it without --demo, or choose another database.',
      );
    }
    const leaveOut = demoSettings(folder).leaveOut ?? [];
    await database.write(async (transaction) => ({
      value: undefined,
      entries: [
        { chain: PEOPLE_CHAIN, by: null, act: 'demo.load', details: { count: snapshot.id } },
        ...(await storeCount(transaction, {
          snapshot,
          protocol,
          act: 'count.import',
          by: leader,
          leaveOut,
        })),
      ],
    }));
  }
  return makeSignIns(database, snapshot.id, leader);
}

/** @throws Error if the database was made by the demonstration, whose passwords are public */
export async function refuseDemoDatabase(database: Database): Promise<void> {
  if (!(await isDemo(database))) return;
  throw new Error(
    'This database holds the demonstration, whose passwords everyone knows. Start it with --demo, or choose another database.',
  );
}

async function isDemo(database: Database): Promise<boolean> {
  const loads = await database.read.auditEntry.count({
    where: { chain: PEOPLE_CHAIN, act: 'demo.load' },
  });
  return loads > 0;
}

/** The first scenario that says how it is demonstrated. */
function demoFolder(): string {
  const scenarios = path.join(PROJECT_ROOT, 'scenarios');
  const name = readdirSync(scenarios)
    .sort()
    .find((one) => existsSync(path.join(scenarios, one, 'demo.json')));
  if (name === undefined) throw new Error(`no folder of ${scenarios} holds a demo.json`);
  return path.join(scenarios, name);
}

function demoSettings(folder: string): DemoSettings {
  return JSON.parse(readFileSync(path.join(folder, 'demo.json'), 'utf8')) as DemoSettings;
}

async function makeSignIns(
  database: Database,
  countId: string,
  leader: Person,
): Promise<readonly DemoSignIn[]> {
  const passwordHash = await hashPassword(DEMO_PASSWORD);
  return database.write(async (transaction) => {
    const record = await loadCount(transaction, countId);
    if (record === null) throw new Error(`the demonstration's count ${countId} is not there`);
    const signIns: DemoSignIn[] = [];
    for (const { person, roles } of record.participants) {
      const common = {
        name: person.name,
        roles: roles.join(', '),
        note: noteOn(record, person.id),
      };
      if (roles.includes('leader') || roles.includes('compiler')) {
        await givePassword(transaction, person.id, passwordHash);
        signIns.push({ ...common, password: DEMO_PASSWORD, path: null });
      } else {
        const invite = { countId, personId: person.id, madeBy: leader.id };
        const token = await makeInvite(transaction, record.date, invite);
        signIns.push({ ...common, password: null, path: `/invite/${token}` });
      }
    }
    const entries = [peopleEntry('demo.sign-ins', null, { count: countId })];
    return { value: signIns.sort(byRank), entries };
  });
}

/** Leader first, then compilers, then observers; those with something to do before the others. */
function byRank(one: DemoSignIn, other: DemoSignIn): number {
  const rank = ({ roles, note }: DemoSignIn): number => {
    if (roles.includes('leader')) return 0;
    if (roles.includes('compiler')) return 1;
    return note === null ? 3 : 2;
  };
  return rank(one) - rank(other);
}

function noteOn(record: CountRecord, personId: string): string | null {
  const due = record.assignments.filter(
    (assignment) => assignment.person === personId && !isFulfilled(assignment, record),
  );
  if (due.length === 0) return null;
  const pieces = due.map(({ sections, window }) => `${sections.join('+')} in ${window}`);
  return `still to submit: ${pieces.join(', ')}`;
}
