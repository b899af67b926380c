import type { Chance } from './chance.js';
import { WINDOW_HOURS } from './lake.js';
import type { Turn } from './turn.js';

/** Minutes to get from one section to the next. Common practice, no source. */
const CHANGE = 5;
/** Observers of a section start this many minutes apart at most. Common practice, no source. */
const LATE = 3;

interface PlannedSection {
  readonly section: number;
  readonly team: readonly number[];
  /** Which stretch of the window, from 0. */
  readonly slot: number;
}

/** Observers take their turns in rotation; all of a section count in the same slot. */
function planOf(sections: number, observers: number, perSection: number): PlannedSection[] {
  const busy = Array.from({ length: observers }, () => 0);
  return Array.from({ length: sections }, (_, section) => {
    const team = Array.from(
      { length: perSection },
      (_each, place) => (section * perSection + place) % observers,
    );
    const slot = Math.max(...team.map((observer) => busy[observer] ?? 0));
    for (const observer of team) busy[observer] = slot + 1;
    return { section, team, slot };
  });
}

/** How many stretches the window must be cut into so that every section is counted. */
export function slotsNeeded(sections: number, observers: number, perSection: number): number {
  return Math.max(...planOf(sections, observers, perSection).map(({ slot }) => slot + 1));
}

/** Who counts what when: the tallies of a section are simultaneous. */
export function turnsFor(
  sections: number,
  observers: number,
  perSection: number,
  chance: Chance,
): Turn[] {
  const length = (60 * WINDOW_HOURS) / slotsNeeded(sections, observers, perSection);
  return planOf(sections, observers, perSection).flatMap(({ section, team, slot }) =>
    team.map((observer) => ({
      sections: [section],
      observer,
      part: null,
      party: null,
      start: Math.ceil(slot * length + chance.between(0, LATE)),
      end: Math.floor((slot + 1) * length - CHANGE),
    })),
  );
}
