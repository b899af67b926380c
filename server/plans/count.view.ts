import type * as Api from '../api/generated/schema.js';
import { expectedTaxa } from '../core/taxa/expected-taxa.js';
import { permissions, ACTS } from '../people/policy.js';
import { currentTallies, isFulfilled, type Piece } from '../tallies/blindness.js';
import { tallyView } from '../tallies/tally.view.js';
import type { Assignment } from '../database/count-record.js';
import type { TallyVersion } from '../database/tally-rows.js';
import { maySeeTally, type CountAccess } from './count-access.js';
import {
  personView,
  protocolView,
  sectionView,
  sectionViews,
  shorelineView,
  vantageView,
  vantageViewOf,
  windowView,
} from './plan.view.js';

/** The fields that cost nothing; the resolver adds the others when they are asked for. */
export interface CountView extends Pick<
  Api.Count,
  | 'id'
  | 'name'
  | 'waterbody'
  | 'date'
  | 'timeZone'
  | 'state'
  | 'myRoles'
  | 'windows'
  | 'sections'
  | 'vantages'
  | 'shoreline'
  | 'people'
  | 'expectedTaxa'
  | 'protocol'
  | 'may'
> {
  readonly access: CountAccess;
}

export function countView(access: CountAccess): CountView {
  const { record, roles, state } = access;
  return {
    access,
    id: record.id,
    name: record.name,
    waterbody: record.waterbody,
    date: record.date,
    timeZone: record.timeZone,
    state,
    myRoles: [...roles],
    windows: record.windows.map(({ id }) => windowView(record, id)),
    sections: record.sections.map(sectionView),
    vantages: record.vantages.map((vantage) => vantageView(record, vantage)),
    shoreline: shorelineView(record),
    people: record.participants.map(({ person, roles: theirs, hasJoined }) => ({
      person,
      roles: theirs.map((role) => role.toUpperCase() as Api.Role),
      hasJoined,
    })),
    expectedTaxa: expectedTaxa(record.history).map((expected) => ({ ...expected })),
    protocol: protocolView(record),
    may: ACTS.filter((act) => permissions(act, roles, state).size > 0),
  };
}

/** @param current the current tallies with their lines, for those that may be shown */
export function assignmentView(
  access: CountAccess,
  assignment: Assignment,
  current: readonly TallyVersion[],
): Api.Assignment {
  const { record } = access;
  const tally = tallyFor(assignment, current);
  return {
    id: assignment.id,
    person: personView(record, assignment.person),
    sections: sectionViews(record, assignment.sections),
    window: windowView(record, assignment.window),
    vantage: vantageViewOf(record, assignment.vantage),
    tally: tally !== undefined && maySeeTally(access, tally) ? tallyView(record, tally) : null,
    submitted: isFulfilled(assignment, record),
  };
}

/** The person's tally of the very sections, else the first of some of them. */
function tallyFor(
  { person, sections, window }: Assignment,
  current: readonly TallyVersion[],
): TallyVersion | undefined {
  const candidates = current.filter(
    (tally) =>
      tally.window === window &&
      tally.party.includes(person) &&
      tally.sections.some((section) => sections.includes(section)),
  );
  const key = sections.join('+');
  return candidates.find((tally) => tally.sections.join('+') === key) ?? candidates[0];
}

/** Who has counted what, for each section and window: names, never numbers. */
export function coverageViews({ record }: CountAccess): Api.Coverage[] {
  const current = currentTallies(record.tallies);
  return record.windows.flatMap(({ id: window }) =>
    record.sections.map((section) => {
      const isHere = (piece: Piece): boolean =>
        piece.window === window && piece.sections.includes(section.id);
      const tallies = current.filter(isHere);
      const people = (ids: readonly string[]): Api.Person[] =>
        [...new Set(ids)].sort().map((id) => personView(record, id));
      return {
        section: sectionView(section),
        window: windowView(record, window),
        assigned: people(record.assignments.filter(isHere).map(({ person }) => person)),
        submitted: people(tallies.flatMap(({ party }) => party)),
        partial: people(
          tallies.filter(({ coverage }) => coverage < 1).flatMap(({ party }) => party),
        ),
        independentTallies: independent(
          tallies.filter(({ coverage }) => coverage >= 1).map(({ party }) => party),
        ),
      };
    }),
  );
}

/** How many of the parties are left when those that share a member are taken as one. */
function independent(parties: readonly (readonly string[])[]): number {
  const joined: Set<string>[] = [];
  for (const party of parties) {
    const touching = joined.filter((group) => party.some((member) => group.has(member)));
    for (const group of touching) joined.splice(joined.indexOf(group), 1);
    joined.push(new Set([...party, ...touching.flatMap((group) => [...group])]));
  }
  return joined.length;
}
