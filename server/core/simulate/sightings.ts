import type { Protocol } from '../model/protocol.js';
import type { Species } from '../model/snapshot.js';
import { keyOf, type CandidateSet } from '../taxa/candidate-set.js';
import type { Chance } from './chance.js';
import { countBirds, isSampled, sampleRaft, type Written } from './count-birds.js';
import { identify, type Named } from './identify.js';
import { sectionId, type Lake, type Place } from './lake.js';
import { chanceToFind, seemingPlace, type Observer } from './observer.js';
import type { SimulationOptions } from './options.js';
import { looksAt, type Look } from './looks.js';
import { placeOf, type Flock, type Part, type PassingFlock } from './population.js';
import type { Turn } from './turn.js';

/** One line about one flock, with the true birds that it stands for. */
export interface SightedLine {
  readonly candidates: CandidateSet;
  readonly written: Written;
  readonly named: readonly Named[];
  /** Birds that a slip of the pen added (or took, below 0). */
  readonly slip: number;
}

/** One flock that came in sight during one turn, whether it was found or not. */
export interface Sighting {
  readonly flock: Flock;
  /** What it truly was: the flock alone, or several true flocks that lay together. */
  readonly members: readonly Flock[];
  /** Hours from the start of the window. */
  readonly hour: number;
  /** The section it truly was in at that moment. */
  readonly section: string;
  /** Where it seemed to be. */
  readonly seeming: Place;
  /**
   * Parts that were before the observer's eyes and were not found, or seemed to lie elsewhere. Not
   * those in a part of the section that could not be seen.
   */
  readonly overlooked: readonly Part[];
  readonly lines: readonly SightedLine[];
}

/** A passing flock as one observer wrote it down. */
export interface PassingSighting {
  readonly flock: PassingFlock;
  readonly written: Written;
}

/** What is the same for every observer and turn. */
export interface Setting {
  readonly lake: Lake;
  readonly options: SimulationOptions;
  readonly protocol: Protocol;
}

/** Every flock that comes in sight in one turn, found or not, in order of time. */
export function sightingsOf(
  turn: Turn,
  observer: Observer,
  flocks: readonly Flock[],
  setting: Setting,
  chance: Chance,
): Sighting[] {
  return looksAt(flocks, turn, chance)
    .flatMap((look) => sightingOf(look, turn, observer, setting))
    .sort((one, other) => one.hour - other.hour);
}

/** The same flocks by the same names, with the numbers of the one who writes along. */
export function writtenAlong(
  sightings: readonly Sighting[],
  observer: Observer,
  setting: Setting,
  chance: Chance,
): Sighting[] {
  return sightings.map((sighting) => {
    const named = sighting.lines.map((line) => line.named);
    return { ...sighting, lines: writtenLines(named, observer, setting, chance.split()) };
  });
}

function sightingOf(
  { flock, members, hour, chance }: Look,
  turn: Turn,
  observer: Observer,
  setting: Setting,
): Sighting[] {
  const { lake, options } = setting;
  const place = placeOf(flock, hour);
  if (place === null || !lake.isInView(place, turn.sections)) return [];
  const vantage = lake.vantageOf(turn.sections);
  const seeming = lake.onWater(seemingPlace(place, vantage, options.placing, chance));
  const section = sectionId(lake.sectionAt(place));
  if (turn.part !== null && !lake.isInPart(place, turn.sections, turn.part)) {
    return [{ flock, members, hour, section, seeming, overlooked: [], lines: [] }];
  }
  const inside = observer.pastTheLine || turn.sections.includes(lake.sectionAt(seeming));
  const kilometres = Math.hypot(place.east - vantage.east, place.north - vantage.north);
  const found = flock.parts.filter(
    ({ birds }) => chance.happens(chanceToFind(birds, kilometres, options.detection)) && inside,
  );
  return [
    {
      flock,
      members,
      hour,
      section,
      seeming,
      overlooked: flock.parts.filter((part) => !found.includes(part)),
      lines: linesFor(found, observer, setting, chance),
    },
  ];
}

function linesFor(
  found: readonly Part[],
  observer: Observer,
  { options, protocol }: Setting,
  chance: Chance,
): SightedLine[] {
  const byKey = new Map<string, Named[]>();
  for (const { species, birds } of found) {
    const all = identify(species, birds, options.misidentified, observer.leavesCoarse, chance);
    for (const named of all) {
      const key = keyOf(named.candidates);
      byKey.set(key, [...(byKey.get(key) ?? []), named]);
    }
  }
  return writtenLines([...byKey.values()], observer, { options, protocol }, chance);
}

/** Counts the birds of each name, and writes them down. */
function writtenLines(
  lines: readonly (readonly Named[])[],
  observer: Observer,
  { options, protocol }: Pick<Setting, 'options' | 'protocol'>,
  chance: Chance,
): SightedLine[] {
  const numbers = lines.map((named) => named.reduce((sum, { birds }) => sum + birds, 0));
  const written = isSampled(numbers, observer.habit)
    ? sampleRaft(numbers, observer, options.error, protocol, chance)
    : numbers.map((birds) => countBirds(birds, observer, options.error, protocol, chance));
  return lines.flatMap((named, index) => {
    const counted = written[index];
    const candidates = named[0]?.candidates;
    if (counted === undefined || candidates === undefined || counted.number === 0) return [];
    const slip = slipOf(counted.number, options.slips, chance);
    const number = counted.number + slip;
    return [{ candidates, named, slip, written: { ...counted, number } }];
  });
}

/** A row misread: half as many (rounded up), or twice as many. */
function slipOf(number: number, slips: number, chance: Chance): number {
  if (!chance.happens(slips)) return 0;
  return chance.happens(0.5) ? number : -Math.floor(number / 2);
}

/** True birds by species that a sighting's lines stand for. */
export function birdsBehind(lines: readonly SightedLine[]): Map<Species, number> {
  const birds = new Map<Species, number>();
  for (const { species, birds: more } of lines.flatMap(({ named }) => named)) {
    birds.set(species, (birds.get(species) ?? 0) + more);
  }
  return birds;
}
