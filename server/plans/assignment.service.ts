import { Injectable } from '@nestjs/common';
import type * as Api from '../api/generated/schema.js';
import type { Fault } from '../core/model/fault.js';
import { nearestOf } from '../core/model/nearest.js';
import { Refusal } from '../core/refusal.js';
import { countChain } from '../database/audit-log.js';
import type { Assignment, CountRecord } from '../database/count-record.js';
import { assignmentContent, storeAssignments } from '../database/count-rows.js';
import { Database } from '../database/database.js';
import type { Viewer } from '../people/viewer.js';
import { contentHash } from '../seals/canonical.js';
import { currentTallies } from '../tallies/blindness.js';
import { allowedIn, openCount } from './count-access.js';
import { assignmentView } from './count.view.js';
import { assignmentEntry } from './store-count.js';
import { joined, say, type Saying } from '../core/model/saying.js';

@Injectable()
export class AssignmentService {
  constructor(private readonly database: Database) {}

  /** @throws Refusal BAD_INPUT with every fault, ID_REUSED, NOT_FOUND, NOT_ALLOWED, NOT_NOW */
  assign(viewer: Viewer | null, input: Api.AssignInput): Promise<Api.Assignment> {
    return this.database.write(async (transaction) => {
      const access = await openCount(transaction, viewer, input.countId);
      allowedIn(access, 'PLAN');
      const { record } = access;
      const assignment = checkedAssignment(record, input);
      const stored = await transaction.assignment.findUnique({ where: { id: input.id } });
      if (stored?.contentHash === assignment.contentHash) {
        return { value: assignmentView(access, assignment, []), entries: [] };
      }
      if (stored !== null) {
        throw new Refusal(
          'ID_REUSED',
          say('There is another assignment with the id {id}. Give this one a new id.', {
            id: input.id,
          }),
        );
      }
      checkOpen(record, assignment.window);
      const by = access.viewer.personId;
      await storeAssignments(transaction, record.id, [assignment], by);
      const after = await openCount(transaction, viewer, record.id);
      return {
        value: assignmentView(after, assignment, []),
        entries: [assignmentEntry(record.id, by, assignment)],
      };
    });
  }

  /** @throws Refusal NOT_FOUND, NOT_ALLOWED, NOT_NOW once a tally was submitted for it */
  unassign(viewer: Viewer | null, assignmentId: string): Promise<boolean> {
    return this.database.write(async (transaction) => {
      const row = await transaction.assignment.findUnique({ where: { id: assignmentId } });
      const missing = new Refusal(
        'NOT_FOUND',
        say('There is no assignment {assignmentId}.', { assignmentId }),
      );
      if (row === null) throw missing;
      const access = await openCount(transaction, viewer, row.countId);
      allowedIn(access, 'PLAN');
      const { record } = access;
      const assignment = record.assignments.find(({ id }) => id === assignmentId);
      if (assignment === undefined) throw missing;
      checkOpen(record, assignment.window);
      const rests = currentTallies(record.tallies).find(
        ({ observer, window, sections }) =>
          observer === assignment.person &&
          window === assignment.window &&
          sections.some((section) => assignment.sections.includes(section)),
      );
      if (rests !== undefined) {
        throw new Refusal(
          'NOT_NOW',
          say(
            'Tally {id} was submitted for this assignment, so it stays. A compiler can leave the tally out by a ruling.',
            { id: rests.id },
          ),
        );
      }
      await transaction.assignment.delete({ where: { id: assignmentId } });
      return {
        value: true,
        entries: [
          {
            chain: countChain(record.id),
            by: access.viewer.personId,
            act: 'assignment.remove',
            details: { assignment: assignmentId, person: assignment.person },
          },
        ],
      };
    });
  }
}

function checkOpen(record: CountRecord, window: string): void {
  if (!record.closedWindows.has(window)) return;
  throw new Refusal(
    'NOT_NOW',
    say('Window {window} is closed, so who counts in it is settled.', { window }),
  );
}

function checkedAssignment(record: CountRecord, input: Api.AssignInput): Assignment {
  const faults: Fault[] = [];
  const observers = record.participants
    .filter(({ roles }) => roles.includes('observer'))
    .map(({ person }) => person.id);
  const ids = (nouns: readonly { readonly id: string }[]): string[] => nouns.map(({ id }) => id);
  checkId(faults, 'personId', input.personId, observers, say('an observer of this count'));
  checkId(faults, 'windowId', input.windowId, ids(record.windows), say('a window of this count'));
  for (const section of input.sectionIds) {
    checkId(faults, 'sectionIds', section, ids(record.sections), say('a section of this count'));
  }
  if (input.sectionIds.length === 0) {
    checkId(faults, 'sectionIds', '', [], say('one section of this count at least'));
  }
  if (input.vantageId) {
    const vantages = ids(record.vantages);
    checkId(faults, 'vantageId', input.vantageId, vantages, say('a vantage point of this count'));
  }
  if (faults.length > 0) throw Refusal.badInput(faults);
  const assignment = {
    id: input.id,
    person: input.personId,
    sections: [...new Set(input.sectionIds)].sort(),
    window: input.windowId,
    vantage: input.vantageId ?? null,
  };
  return { ...assignment, contentHash: contentHash(assignmentContent(record.id, assignment)) };
}

function checkId(
  faults: Fault[],
  column: string,
  value: string,
  known: readonly string[],
  expected: Saying,
): void {
  if (known.includes(value)) return;
  faults.push({
    code: 'unknown-id',
    file: 'assignment',
    row: null,
    column,
    value,
    problem:
      value === ''
        ? say('nothing is given')
        : say('"{value}" is not the id of {expected}', { value, expected }),
    expected:
      known.length === 0
        ? expected
        : say('{expected}: {known}', { expected, known: joined(known, ', ') }),
    nearest: nearestOf(value, known),
  });
}
