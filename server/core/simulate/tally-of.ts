import { taxonName } from '../taxa/taxon-name.js';
import type { Position, ScanSample, Tally, TallyLine } from '../model/snapshot.js';
import type { Chance } from './chance.js';
import { MALE_SHARE } from './flock-kinds.js';
import { clockAt, positionOf, sectionId, vantageId } from './lake.js';
import { NOTES, SEXED_UP_TO } from './model.js';
import { observerId, type Observer } from './observer.js';
import type { PassingSighting, Setting, SightedLine, Sighting } from './sightings.js';
import type { Turn } from './turn.js';
import type { TurnRecord } from './turn-record.js';
import type { Written } from './count-birds.js';

function tallyId(sections: readonly string[], observer: Observer): string {
  return `${observer.id}-${sections.join('-')}`;
}

/** The id of a tally's n-th line, from 0. */
function lineId(tally: string, index: number): string {
  return `${tally}:${String(index + 1).padStart(3, '0')}`;
}

/**
 * What an observer hands in after a turn: totals, or lines of the flocks in order of time; passing
 * birds last.
 */
export function tallyOf(
  turn: Turn,
  observer: Observer,
  sightings: readonly Sighting[],
  totals: readonly SightedLine[] | null,
  passing: readonly PassingSighting[],
  setting: Setting,
  chance: Chance,
): Tally {
  const sections = turn.sections.map(sectionId).sort();
  const id = tallyId(sections, observer);
  const withLines = sightings.filter((sighting) => sighting.lines.length > 0);
  const flockByFlock = withLines.flatMap((sighting, index) => {
    const noted = notesOn(sighting, labelOf(sighting, index, id), turn, setting, chance);
    return sighting.lines.map((line) => ({
      ...lineOf(line.candidates, line.written),
      ...noted,
      ...sexesOf(line, sighting, chance),
    }));
  });
  const onWater = totals?.map((line) => lineOf(line.candidates, line.written)) ?? flockByFlock;
  const flying = passing.map(({ flock, written }) => ({
    ...lineOf([flock.species], written),
    activity: 'flying-through' as const,
    time: clockAt(Math.round(60 * flock.hour)),
  }));
  return {
    id,
    observer: observer.id,
    party: partyOf(turn, observer),
    sections,
    window: 'w1',
    vantage: vantageId(turn.sections),
    start: clockAt(turn.start),
    end: clockAt(turn.end),
    scope: { kind: 'all-waterbirds' },
    coverage: turn.part?.share ?? 1,
    lines: [...onWater, ...flying].map((line, index) => ({ ...line, id: lineId(id, index) })),
  };
}

/** Labels are each observer's own; that of a sampled raft is in no other tally, for its samples. */
function labelOf({ lines }: Sighting, index: number, tally: string): string {
  return lines.some(({ written }) => written.sampled !== null)
    ? `${tally} raft ${index + 1}`
    : `flock ${index + 1}`;
}

/** The birds of each proportion sample that a tally hands in, by identification. */
export function samplesOf({
  tally,
  sightings,
  totals,
}: Pick<TurnRecord, 'tally' | 'sightings' | 'totals'>): ScanSample[] {
  if (totals !== null) return [];
  return sightings
    .flatMap(({ lines }) => lines)
    .flatMap(({ candidates, written: { sampled } }, index) => {
      const raft = tally.lines[index]?.flock ?? null;
      if (sampled === null || raft === null) return [];
      return [{ raft, sample: '1', candidates, number: sampled }];
    });
}

function partyOf({ party }: Turn, observer: Observer): string[] {
  if (party === null) return [observer.id];
  return [observerId(party.first), observerId(party.second)].sort();
}

type Unnumbered = Omit<TallyLine, 'id'>;

function lineOf(candidates: TallyLine['candidates'], written: Written): Unnumbered {
  return {
    written: taxonName(candidates),
    candidates,
    quantity: { kind: 'exact', number: written.number },
    method: written.method,
    block: written.block,
    male: null,
    female: null,
    adult: null,
    immature: null,
    activity: 'water',
    time: null,
    position: null,
    flock: null,
    heading: null,
    from: null,
    to: null,
    certainty: 'sure',
    note: null,
  };
}

/** What is noted of a flock as a whole: its lines share it. */
function notesOn(
  { flock, hour, seeming }: Sighting,
  label: string,
  turn: Turn,
  { lake, options }: Setting,
  chance: Chance,
): Pick<TallyLine, 'time' | 'position' | 'flock' | 'heading' | 'to'> {
  const time = chance.happens(options.timesNoted) ? clockAt(Math.round(60 * hour)) : null;
  const position: Position | null = chance.happens(options.positionsNoted)
    ? positionOf(seeming)
    : null;
  const swimming = flock.moves === 'swims' && hour > flock.leaves && hour < flock.arrives;
  const [headingNoted, goalNoted] = [
    chance.happens(options.headingsNoted),
    chance.happens(options.destinationsNoted),
  ];
  const error = 20 * chance.normal();
  if (!swimming) return { time, position, flock: label, heading: null, to: null };
  const east = flock.end.east - seeming.east;
  const north = flock.end.north - seeming.north;
  const bearing = Math.round((Math.atan2(east, north) * 180) / Math.PI + error);
  const goal = lake.sectionAt(flock.end);
  return {
    time,
    position,
    flock: label,
    heading: headingNoted ? ((bearing % 360) + 360) % 360 : null,
    to: goalNoted && !turn.sections.includes(goal) ? sectionId(goal) : null,
  };
}

/** Small flocks that were named and counted right may have their sexes noted. */
function sexesOf(
  { named, written }: SightedLine,
  { flock }: Sighting,
  chance: Chance,
): Pick<TallyLine, 'male' | 'female'> {
  const [only, more] = named;
  const none = { male: null, female: null };
  if (only === undefined || more !== undefined || only.outcome !== 'right') return none;
  const part = flock.parts.find(({ species }) => species === only.species);
  const noted = chance.happens(NOTES.sexes);
  if (part?.birds !== written.number || part.males === null) return none;
  if (MALE_SHARE[part.species] === undefined || part.birds > SEXED_UP_TO || !noted) return none;
  return { male: part.males, female: part.birds - part.males };
}
