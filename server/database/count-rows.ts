import type { Protocol } from '../core/model/protocol.js';
import type { Snapshot } from '../core/model/snapshot.js';
import { canonicalJson, contentHash } from '../seals/canonical.js';
import type { Assignment } from './count-record.js';
import type { Transaction } from './source.js';

/** A count without its tallies. */
export type Plan = Omit<Snapshot, 'tallies'>;

/** What a count's content hash is taken of. */
export function planHash(plan: Plan, protocol: Protocol): string {
  const { id, name, waterbody, date, timeZone, windows, people, sections, vantages, views } = plan;
  const { history, samples, marks = [], shoreline = [] } = plan;
  return contentHash({
    plan: { id, name, waterbody, date, timeZone, windows, people, sections, vantages, views },
    protocol,
    // Left out where there are none, so that counts from before they were stored keep their hash.
    ...(history.length > 0 && { history }),
    ...(samples.length > 0 && { samples }),
    ...(marks.length > 0 && { marks }),
    ...(shoreline.length > 0 && { shoreline }),
  });
}

/** Stores a count, its places, windows and participants. The people themselves must be there. */
export async function storePlan(
  transaction: Transaction,
  plan: Plan,
  protocol: Protocol,
  plannedBy: string,
): Promise<void> {
  const { id: countId, name, waterbody, date, timeZone } = plan;
  await transaction.count.create({
    data: {
      id: countId,
      name,
      waterbody,
      date,
      timeZone,
      protocol: canonicalJson(protocol),
      plannedBy,
      plannedAt: new Date().toISOString(),
      contentHash: planHash(plan, protocol),
      history: canonicalJson(plan.history),
      samples: canonicalJson(plan.samples),
      marks: canonicalJson(plan.marks ?? []),
      shoreline: canonicalJson(plan.shoreline ?? []),
    },
  });
  await transaction.countWindow.createMany({
    data: plan.windows.map((window) => ({ countId, ...window })),
  });
  await transaction.section.createMany({
    data: plan.sections.map(({ id, name: called, polygon }) => ({
      countId,
      id,
      name: called,
      polygon: canonicalJson(polygon),
    })),
  });
  await transaction.vantage.createMany({
    data: plan.vantages.map(({ id, name: called, position: [lon, lat] }) => ({
      countId,
      id,
      name: called,
      lon,
      lat,
    })),
  });
  await transaction.view.createMany({
    data: plan.views.map(({ vantage, polygon }, position) => ({
      countId,
      position,
      vantageId: vantage,
      polygon: canonicalJson(polygon),
    })),
  });
  await transaction.participant.createMany({
    data: plan.people.map(({ id, roles }) => ({
      countId,
      personId: id,
      roles: canonicalJson(roles),
    })),
  });
}

/** What an assignment's content hash is taken of. */
export function assignmentContent(
  countId: string,
  assignment: Omit<Assignment, 'contentHash'>,
): object {
  const { id, person, sections, window, vantage } = assignment;
  return { countId, id, person, sections, window, vantage };
}

export async function storeAssignments(
  transaction: Transaction,
  countId: string,
  assignments: readonly Assignment[],
  assignedBy: string,
): Promise<void> {
  const assignedAt = new Date().toISOString();
  await transaction.assignment.createMany({
    data: assignments.map(({ id, person, sections, window, vantage, contentHash: hash }) => ({
      id,
      countId,
      personId: person,
      windowId: window,
      vantageId: vantage,
      sections: canonicalJson(sections),
      assignedBy,
      assignedAt,
      contentHash: hash,
    })),
  });
}
