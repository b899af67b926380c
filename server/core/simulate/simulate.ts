import type { Protocol } from '../model/protocol.js';
import type { Person, ScanSample, Snapshot } from '../model/snapshot.js';
import type { Truth } from '../score/truth.js';
import { keyOf, lookAlikesFrom, type LookAlikes } from '../taxa/candidate-set.js';
import { arranged } from './arrangements.js';
import { chanceFrom, type Chance } from './chance.js';
import { countBirds } from './count-birds.js';
import { Lake, WINDOW, sectionId } from './lake.js';
import { DETECTION_AT_KM } from './model.js';
import { chanceToFind, observersFor, type Observer } from './observer.js';
import type { SimulationOptions } from './options.js';
import { plantedErrors } from './planted.js';
import { flocksFor, passingFlocks, placeOf, type Flock, type PassingFlock } from './population.js';
import { turnsFor } from './schedule.js';
import type { Turn } from './turn.js';
import {
  birdsBehind,
  sightingsOf,
  writtenAlong,
  type Setting,
  type PassingSighting,
} from './sightings.js';
import { withSplits } from './splits.js';
import { samplesOf, tallyOf } from './tally-of.js';
import { BirdsByPlace } from './true-birds.js';
import { totalsOf, withoutSlips } from './totals.js';
import { trueFlocks } from './true-flocks.js';
import { trueLinks } from './true-links.js';
import type { TurnRecord } from './turn-record.js';

/** A made-up count and what was truly there. */
export interface SimulatedCount {
  readonly snapshot: Snapshot;
  readonly truth: Truth;
}

/**
 * Makes up a count with its truth, by the model described in `model.ts`. Pure: the same options and
 * protocol give the same count. Birds are drawn before observers, so that other observers, habits
 * or errors with the same seed meet the same birds.
 *
 * @param options without problems, as `problemsOf` finds them
 * @param protocol for its counting error by method, and for what look-alikes are
 */
export function simulate(options: SimulationOptions, protocol: Protocol): SimulatedCount {
  const chance = chanceFrom(options.seed);
  const [forBirds, forPassing, forPeople, forTurns, forSightings] = [
    chance.split(),
    chance.split(),
    chance.split(),
    chance.split(),
    chance.split(),
  ];
  // What came later is drawn later, so that counts without it stay as they were.
  const [forArrangements, forLines, forSplits, forTotals] = [
    chance.split(),
    chance.split(),
    chance.split(),
    chance.split(),
  ];
  const lake = new Lake(options.sections);
  const drawn = flocksFor(options.birds, options.moving, lake, forBirds);
  const flocks = withSplits(drawn, options.splitting, forSplits);
  const passing = passingFlocks(drawn.length, options.sections, forPassing);
  const observers = observersFor(options, forPeople, forLines);
  const setting: Setting = { lake, options, protocol };
  const planned = turnsFor(options.sections, options.observers, options.perSection, forTurns);
  const records: TurnRecord[] = [];
  for (const turn of arranged(planned, options, forArrangements)) {
    const observer = observers[turn.observer];
    if (observer === undefined) continue;
    const first = records.find((record) => isFirstOf(record, turn));
    const own = [forSightings.split(), forTotals.split()] as const;
    records.push(recordOf(turn, observer, first, flocks, passing, setting, ...own));
  }
  records.sort((one, other) => (one.tally.id < other.tally.id ? -1 : 1));
  return {
    snapshot: snapshotOf(options, lake, observers, records),
    truth: truthOf(flocks, passing, records, lake, lookAlikesFrom(protocol.lookAlikes)),
  };
}

function recordOf(
  turn: Turn,
  observer: Observer,
  first: TurnRecord | undefined,
  flocks: readonly Flock[],
  passing: readonly PassingFlock[],
  setting: Setting,
  chance: Chance,
  forTotals: Chance,
): TurnRecord {
  const { options, protocol } = setting;
  const sections = turn.sections.map(sectionId).sort();
  const seen =
    first === undefined
      ? sightingsOf(turn, observer, flocks, setting, chance)
      : writtenAlong(first.sightings, observer, setting, chance);
  const flying = passing
    .filter(({ section }) => sections.includes(section))
    .filter(({ hour }) => hour * 60 >= turn.start && hour * 60 <= turn.end)
    .filter(({ birds }) => chance.happens(chanceToFind(birds, DETECTION_AT_KM, options.detection)))
    .map((flock): PassingSighting => {
      const written = countBirds(flock.birds, observer, options.error, protocol, chance);
      return { flock, written };
    });
  const lumped = forTotals.happens(options.lumping);
  const sightings = lumped ? withoutSlips(seen) : seen;
  const totals = lumped ? totalsOf(sightings, observer, setting, forTotals) : null;
  return {
    turn,
    sections,
    sightings,
    totals,
    passing: flying,
    tally: tallyOf(turn, observer, sightings, totals, flying, setting, chance),
  };
}

/** Whether a record is by the one who finds and names for this turn's observer. */
function isFirstOf({ turn, sections }: TurnRecord, { party, observer, ...own }: Turn): boolean {
  return (
    party !== null &&
    party.second === observer &&
    turn.observer === party.first &&
    own.sections.some((section) => sections.includes(sectionId(section)))
  );
}

function snapshotOf(
  options: SimulationOptions,
  lake: Lake,
  observers: readonly Observer[],
  records: readonly TurnRecord[],
): Snapshot {
  const people: Person[] = [
    { id: 'k1', name: 'Compiler', roles: ['compiler'] },
    { id: 'l1', name: 'Leader', roles: ['leader'] },
    ...observers.map(({ id }): Person => ({
      id,
      name: `Observer ${id.slice(1)}`,
      roles: ['observer'],
    })),
  ];
  const merged = records.map(({ turn }) => turn.sections).filter((sections) => sections.length > 1);
  return {
    id: `simulated-${options.seed}`,
    name: `Simulated count, seed ${options.seed}`,
    waterbody: 'Simulated lake',
    date: '2027-01-16',
    timeZone: 'America/Toronto',
    windows: [WINDOW],
    people: people.sort((one, other) => (one.id < other.id ? -1 : 1)),
    sections: lake.sections(),
    vantages: lake.vantages(merged),
    views: lake.views(merged),
    tallies: records.map(({ tally }) => tally),
    history: [],
    samples: records
      .flatMap(samplesOf)
      .sort((one, other) => (orderOf(one) < orderOf(other) ? -1 : 1)),
  };
}

/** By raft, sample, then candidate set, as a checked count has them. */
function orderOf({ raft, sample, candidates }: ScanSample): string {
  return [raft, sample, keyOf(candidates)].join('\n');
}

function truthOf(
  flocks: readonly Flock[],
  passing: readonly PassingFlock[],
  records: readonly TurnRecord[],
  lake: Lake,
  lookAlikes: LookAlikes,
): Truth {
  const ids = lake.sections().map(({ id }) => id);
  const first = new BirdsByPlace(ids);
  for (const flock of flocks) {
    const section = sectionId(lake.sectionAt(placeOf(flock, 0) ?? flock.start));
    for (const { species, birds } of flock.parts) first.add(section, species, birds);
  }
  const flying = new BirdsByPlace();
  for (const { section, species, birds } of passing) flying.add(section, species, birds);
  return {
    total: first.total(),
    sections: first.byPlace(),
    flyingThrough: flying.byPlace(),
    links: trueLinks(records),
    flocks: trueFlocks(flocks, records),
    toBeSeen: toBeSeen(records, ids),
    planted: plantedErrors(records, lookAlikes),
    found: foundBy(records),
  };
}

/**
 * Flocks that were in a section when at least one of its own observers looked, each once; in
 * sections that somebody tallied as one, once in all of them.
 */
function toBeSeen(records: readonly TurnRecord[], ids: readonly string[]): Truth['toBeSeen'] {
  const birds = new BirdsByPlace(ids);
  const added = new Set<string>();
  const merged = records.map((record) => record.sections).filter(({ length }) => length > 1);
  for (const { sections, sightings } of records) {
    for (const sighting of sightings.filter((each) => sections.includes(each.section))) {
      const place = merged.find((each) => each.includes(sighting.section)) ?? [sighting.section];
      for (const { number, parts } of sighting.members) {
        const key = `${place.join('+')} ${number}`;
        if (added.has(key)) continue;
        added.add(key);
        for (const part of parts) birds.add(sighting.section, part.species, part.birds);
      }
    }
  }
  return birds.byPlace();
}

function foundBy(records: readonly TurnRecord[]): Truth['found'] {
  const birds = new BirdsByPlace(records.map(({ tally }) => tally.id));
  for (const { tally, sightings } of records) {
    for (const { lines } of sightings) {
      for (const [species, more] of birdsBehind(lines)) birds.add(tally.id, species, more);
    }
  }
  return birds.byPlace();
}
