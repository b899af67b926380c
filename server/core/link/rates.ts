import { probabilitiesOf, type Candidate } from './association.js';
import { chanceOf } from './looks.js';
import type { Setting } from './route.js';
import type { ScoredPair } from './score.js';
import type { Seen } from './seen.js';
import { PAST_THE_LINE } from './shared-water.js';

/**
 * What was expected beforehand is worth so many links: of movements, and of flocks near the line between two
 * sections, in the whole count (common practice, no source). Of flocks past the line, by tally: one observer in
 * five tallies five times as many as expected and the others none, which has the spread of a gamma
 * distribution of this shape.
 */
const WORTH_IN_COUNT = 3;
const WORTH_IN_TALLY = PAST_THE_LINE / (1 - PAST_THE_LINE);

/** Rounds of learning; each changes less than the one before. */
const ROUNDS = 25;
const NO_LONGER_CHANGES = 1e-2;

/** One sort of link: how many were expected beforehand, and which pairs may be of it. */
interface Rate {
  expected: number;
  readonly worth: number;
  /** With the share by which each is of this sort. */
  readonly pairs: { readonly index: number; readonly share: number }[];
  scale: number;
}

/**
 * How much likelier or less likely links are in this count than was expected beforehand: movements,
 * flocks on the line between sections, and flocks past it, these for every tally and neighbouring section by
 * themselves, as it is an observer's habit. By expectation–maximisation: with the scales as they are, how many links
 * are there; with so many links, what are the scales; drawn towards 1 by what was expected.
 *
 * @returns for every pair what its log odds gain
 */
export function learnedGains(
  pairs: readonly ScoredPair[],
  candidates: readonly Candidate[],
  sightings: readonly Seen[],
  room: readonly number[],
  setting: Setting,
): number[] {
  const isTotal = sightings.map(({ sighting }) => sighting.isTotal);
  const rates = ratesOf(pairs, sightings, setting);
  const gains = pairs.map(() => 0);
  for (let round = 0; round < ROUNDS; round += 1) {
    const scaled = candidates.map((candidate, index) => ({
      ...candidate,
      logOdds: candidate.logOdds + (gains[index] ?? 0),
    }));
    const probabilities = probabilitiesOf(scaled, room, isTotal, NO_LONGER_CHANGES);
    const sums = pairs.map(() => 0);
    for (const { pairs: members, scale } of rates) {
      for (const { index, share } of members) sums[index] = (sums[index] ?? 0) + share * scale;
    }
    let change = 0;
    for (const rate of rates) {
      const found = rate.pairs.reduce(
        (sum, { index, share }) =>
          sum + ((probabilities[index] ?? 0) * share * rate.scale) / (sums[index] || 1),
        0,
      );
      const scale = (rate.worth + found) / (rate.worth + rate.expected);
      change = Math.max(change, Math.abs(scale - rate.scale) / rate.scale);
      rate.scale = scale;
    }
    gains.fill(0);
    for (const { pairs: members, scale } of rates) {
      for (const { index, share } of members) gains[index] = (gains[index] ?? 0) + share * scale;
    }
    // Where both places are known it does not matter how often observers look past the line.
    pairs.forEach(({ route }, index) => {
      gains[index] = route.isPlaced ? 0 : Math.log(gains[index] || 1);
    });
    if (change < NO_LONGER_CHANGES) break;
  }
  return gains;
}

function ratesOf(
  pairs: readonly ScoredPair[],
  sightings: readonly Seen[],
  setting: Setting,
): readonly Rate[] {
  const cells = oneOfEachCell(sightings);
  const movements = rateOf(movementsExpected(sightings, cells, setting), WORTH_IN_COUNT);
  const onTheLine = rateOf(0, WORTH_IN_COUNT);
  const pastTheLine = new Map<string, Rate>();
  cells.forEach((a, place) => {
    for (const b of cells.slice(place + 1)) {
      const near = overlapsExpected(a, b, 0, setting);
      const all = overlapsExpected(a, b, PAST_THE_LINE, setting);
      onTheLine.expected += near;
      if (all > 0) {
        const looking = [a, b].flatMap((from) => {
          const into = from === a ? b : a;
          return talliesIn(from, sightings).map((tally) => pastKey(tally, into));
        });
        const expected = Math.max(0, all - near) / Math.max(1, looking.length);
        for (const key of looking) pastTheLine.set(key, rateOf(expected, WORTH_IN_TALLY));
      }
    }
  });
  pairs.forEach(({ first, second, route }, index) => {
    if (route.kind === 'movement') {
      movements.pairs.push({ index, share: 1 });
      return;
    }
    onTheLine.pairs.push({ index, share: 1 - route.pastTheLine });
    for (const { key, share } of whoLookedPast(first, second)) {
      pastTheLine.get(key)?.pairs.push({ index, share: route.pastTheLine * share });
    }
  });
  return [movements, onTheLine, ...pastTheLine.values()];
}

function rateOf(expected: number, worth: number): Rate {
  return { expected, worth, pairs: [], scale: 1 };
}

function pastKey(tally: string, into: Seen): string {
  return `${tally}\n${into.sighting.cell}`;
}

function talliesIn({ sighting: { cell } }: Seen, sightings: readonly Seen[]): string[] {
  const own = sightings.filter(({ sighting }) => sighting.cell === cell);
  return [...new Set(own.flatMap(talliesOf))].toSorted();
}

function talliesOf({ sighting: { flocks } }: Seen): string[] {
  return flocks.map(({ tally }) => tally.id);
}

/**
 * Of a flock in two tallies past the line, whose habit it was, as shares: that of one side's observers, as far
 * as just these would have it then.
 */
function whoLookedPast(first: Seen, second: Seen): { key: string; share: number }[] {
  const chances = [first, second].map((past) => {
    const other = past === first ? second : first;
    const chance = chanceOf(past.seenBy, past.found * PAST_THE_LINE);
    return { past, other, chance: chance * chanceOf(other.seenBy, other.found) };
  });
  const all = chances.reduce((sum, { chance }) => sum + chance, 0);
  return chances.flatMap(({ past, other, chance }) => {
    const tallies = talliesOf(past);
    const share = chance / all / tallies.length;
    return tallies.map((tally) => ({ key: pastKey(tally, other), share }));
  });
}

function oneOfEachCell(sightings: readonly Seen[]): Seen[] {
  const cells = new Map<string, Seen>();
  for (const seen of sightings) {
    if (!cells.has(seen.sighting.cell)) cells.set(seen.sighting.cell, seen);
  }
  return [...cells.values()];
}

/** Flocks of two sections that are in both tallies, by where the sections meet. */
function overlapsExpected(
  a: Seen,
  b: Seen,
  past: number,
  { shared, flocksIn, looks }: Setting,
): number {
  const [cellA, cellB] = [a.sighting.cell, b.sighting.cell];
  const flocks = (flocksIn.get(cellA) ?? 0) + (flocksIn.get(cellB) ?? 0);
  const area = a.area + b.area;
  const looked = [looks.lookedOver(cellA), looks.lookedOver(cellB)] as const;
  const found = (a.found + b.found) / 2;
  return (flocks / area) * shared.inBoth(a, b, looked, found, past);
}

/** Flocks that moved from the one section to another between the times when these were counted. */
function movementsExpected(
  sightings: readonly Seen[],
  cells: readonly Seen[],
  { waterbody, journeys }: Setting,
): number {
  let expected = 0;
  for (const seen of sightings) {
    const from = waterbody.whereabouts(null, seen.ground);
    for (const other of cells) {
      if (other.sighting.cell === seen.sighting.cell) continue;
      const to = waterbody.whereabouts(null, other.ground);
      const density = journeys.density(from, to, [seen.middle], other.span, seen.doing);
      expected += seen.sighting.holds * density * other.area * other.found;
    }
  }
  return expected;
}
