import { lookAlikesFrom } from '../taxa/candidate-set.js';
import type { Protocol } from '../model/protocol.js';
import type { Link, LinkEvidence } from '../model/result.js';
import { inEnglish, say } from '../model/saying.js';
import type { Snapshot, Tally } from '../model/snapshot.js';
import { probabilitiesOf, type Candidate } from './association.js';
import { chooseLinks } from './choose-links.js';
import { SetFits } from './composition.js';
import { flightsOf } from './flown.js';
import { Journeys } from './journeys.js';
import { Kinds } from './kinds.js';
import { Looks } from './looks.js';
import { named } from './moved.js';
import { learnedGains } from './rates.js';
import type { Setting } from './route.js';
import { scorePairs, type ScoredPair } from './score.js';
import { seenFrom } from './seen.js';
import { SharedWater } from './shared-water.js';
import { sightingsOf, type FlockSighting, type RaftsByCell } from './sightings.js';
import { Waterbody } from './whereabouts.js';

/** A link less likely than this is not worth a compiler's time (common practice, no source). */
const WORTH_SHOWING = 0.05;
const LEAST_LOG_ODDS = Math.log(WORTH_SHOWING / (1 - WORTH_SHOWING));

/** Pairs below this neither become links nor compete with any. */
const NEGLIGIBLE_LOG_ODDS = -6;

/** Digits of probabilities and weights in results: enough to read, and alike on every machine. */
const DIGITS = 4;

/** A link as found; rulings and deductions are added by `reconcile`. */
export type FoundLink = Omit<Link, 'ruling' | 'deducted' | 'deduction'>;

/**
 * Sightings in different sections that may be one flock (method section 5), most birds first. The whole
 * waterbody is solved at once: pairs are scored ({@link scorePairs}), how many flocks move and how many
 * are in two tallies is learned from the count (`rates.ts`), pairs compete for sightings
 * (`association.ts`), and birds flow along the links that explain the most (`choose-links.ts`), so
 * that a flock seen in three sections is a chain of two links and its birds are counted once if both
 * are confirmed.
 *
 * @param cellOf the id of the cell that a tally's birds on the water belong to
 * @param rafts flocks matched between observers, by cell, as far as they are known already
 */
export function findLinks(
  snapshot: Snapshot,
  cellOf: (tally: Tally) => string,
  protocol: Protocol,
  rafts: RaftsByCell = new Map(),
): readonly FoundLink[] {
  const sightings = sightingsOf(snapshot, cellOf, protocol, rafts);
  const waterbody = new Waterbody(snapshot);
  const setting = {
    waterbody,
    journeys: new Journeys(waterbody, protocol),
    shared: new SharedWater(waterbody),
    protocol,
    setFits: new SetFits(lookAlikesFrom(protocol.lookAlikes)),
    flights: flightsOf(snapshot),
    looks: new Looks(snapshot.tallies, cellOf, sightings),
    flocksIn: flocksByCell(sightings),
  };
  const windows = [...new Set(sightings.map((sighting) => sighting.window))].toSorted();
  return windows
    .flatMap((window) =>
      linksAmong(
        sightings.filter((sighting) => sighting.window === window),
        setting,
      ),
    )
    .toSorted((a, b) => b.birds - a.birds || (a.id < b.id ? -1 : 1));
}

function flocksByCell(sightings: readonly FlockSighting[]): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  for (const { cell, holds } of sightings) numbers.set(cell, (numbers.get(cell) ?? 0) + holds);
  return numbers;
}

/** Links of one window. */
function linksAmong(sightings: readonly FlockSighting[], setting: Setting): FoundLink[] {
  const seen = sightings.map((sighting, index) =>
    seenFrom(sighting, index, setting.waterbody, setting.looks),
  );
  const kinds = new Kinds(sightings, setting.setFits);
  const pairs = scorePairs(seen, kinds, NEGLIGIBLE_LOG_ODDS, setting);
  const room = sightings.map(roomOf);
  const isTotal = sightings.map((sighting) => sighting.isTotal);
  const scored = pairs.map(({ kind, first, second, logOdds, isPart }): Candidate => ({
    first: first.index,
    second: second.index,
    logOdds,
    birds: Math.min(first.sighting.sighting.number, second.sighting.sighting.number),
    isPart,
    cells: kind === 'movement' ? null : [first.sighting.cell, second.sighting.cell],
  }));
  const gains = learnedGains(pairs, scored, seen, room, setting);
  const candidates = scored.map((candidate, index) => ({
    ...candidate,
    logOdds: candidate.logOdds + (gains[index] ?? 0),
  }));
  const probabilities = probabilitiesOf(candidates, room, isTotal);
  const tallies = sightings.map((sighting) => sighting.flocks.map((flock) => flock.tally.id));
  // Two flocks in one tally are two flocks: its observer saw both.
  const apart = (one: number, other: number): boolean =>
    (tallies[one] ?? []).some((tally) => (tallies[other] ?? []).includes(tally));
  const worth = candidates.flatMap((_, index) =>
    (probabilities[index] ?? 0) >= WORTH_SHOWING ? [index] : [],
  );
  const choice = { candidates: worth.flatMap((index) => candidates[index] ?? []), room, apart };
  return chooseLinks(choice, LEAST_LOG_ODDS).flatMap((place) => {
    const index = worth[place] ?? -1;
    const [pair, candidate] = [pairs[index], candidates[index]];
    if (pair === undefined || candidate === undefined) return [];
    const probability = round(Math.min(1, probabilities[index] ?? 0));
    return [linkFrom(pair, candidate.birds, probability, gains[index] ?? 0, setting)];
  });
}

/** Birds that a sighting has at most: its number and twice its counting error. */
function roomOf({ size }: FlockSighting): number {
  return Math.ceil(Math.exp(size.mean + 2 * Math.sqrt(size.variance)));
}

function linkFrom(
  pair: ScoredPair,
  birds: number,
  probability: number,
  gain: number,
  { protocol, waterbody }: Setting,
): FoundLink {
  const [first, second] = [pair.first.sighting, pair.second.sighting];
  return {
    id: [first.key, second.key].toSorted().join('~'),
    kind: pair.kind,
    lines: [...first.sighting.lines, ...second.sighting.lines].toSorted(),
    first: first.sighting,
    second: second.sighting,
    probability,
    birds,
    proposed: probability >= protocol.linkThreshold,
    evidence: [...pair.evidence(), ...learned(pair, gain, waterbody)]
      .map(({ name, text, weight }) => ({ name, text, weight: round(weight) }))
      .toSorted(
        (one, other) =>
          Math.abs(other.weight) - Math.abs(one.weight) ||
          (inEnglish(one.text) < inEnglish(other.text) ? -1 : 1),
      ),
  };
}

function learned(
  { kind, first, second }: ScoredPair,
  gain: number,
  waterbody: Waterbody,
): LinkEvidence[] {
  if (gain === 0) return [];
  const [one, other] = [named(first.sighting, waterbody), named(second.sighting, waterbody)];
  const movements =
    gain < 0
      ? say('movements are rarer in this count than expected beforehand')
      : say('movements are more frequent in this count than expected beforehand');
  const overlaps =
    gain < 0
      ? say('flocks in both tallies of {one} and {other} are rarer than expected beforehand', {
          ...{ one, other },
        })
      : say(
          'flocks in both tallies of {one} and {other} are more frequent than expected beforehand',
          { one, other },
        );
  const text = kind === 'movement' ? movements : overlaps;
  return [{ name: 'learned', text, weight: gain }];
}

function round(value: number): number {
  // Adding 0 turns −0 into 0, which JSON would not tell apart anyway.
  return Number(value.toFixed(DIGITS)) + 0;
}
