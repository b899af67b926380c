import type { Link, LinkEvidence } from '../model/result.js';
import { say, together } from '../model/saying.js';
import type { Kinds } from './kinds.js';
import {
  sizeRatio,
  totalRatio,
  totalsRatio,
  type SizeChange,
  type SizeRatio,
  type SizeSpread,
} from './flock-size.js';
import { moved } from './moved.js';
import type { Route, Setting } from './route.js';
import type { Seen } from './seen.js';
import type { FlockSighting } from './sightings.js';
import { sexesLogRatio } from './sexes.js';
import { mostFromShares, sharesLogRatio } from './shares.js';
import { SAME_OBSERVER } from './stated.js';
import { stayed } from './stayed.js';

/**
 * How often birds leave or join a flock between two sightings, by what factor (about 1.6), and how often
 * only a part of it moves on, or it joins a larger one (common practice, no source).
 */
const MAY_CHANGE: SizeChange = { chance: 0.25, spread: 0.5, part: 0.05 };

/** The same of one that lies where both observers see it, within the hour mostly: it changes less. */
const MAY_CHANGE_AT_REST: SizeChange = { chance: 0.1, spread: 0.5, part: 0.03 };

/** Two sightings that may be one flock, by the way that is likeliest. */
export interface ScoredPair {
  readonly kind: Link['kind'];
  readonly first: Seen;
  readonly second: Seen;
  readonly route: Route;
  /** Log odds of one flock against two, before other pairs compete for the same sightings. */
  readonly logOdds: number;
  /** Whether the smaller is more likely a part of the larger than the whole of it. */
  readonly isPart: boolean;
  /** Adds up to `logOdds`. */
  readonly evidence: () => readonly LinkEvidence[];
}

/**
 * Scores every admissible pair of sightings of one window in different sections.
 *
 * # The model
 *
 * A pair's score is the logarithm of the odds that both sightings are one flock, against their being
 * two. It is a sum of log-likelihood ratios, each shown to the compiler:
 *
 * 1. **Travel and alternatives.** *Movement*: if the flock first seen at x was in the second section when
 *    that was counted, it was near y with density k(y | x, time) per km², a sum over swimming and flying;
 *    other flocks lie there with density n / area, n being the sightings of that section. The ratio
 *    k · area / n is split into "ln(k · area)" and "− ln n". This is the form of the track-to-target ratio
 *    in data association (Blackman & Popoli 1999, *Modern Tracking Systems*, chapter 6). *Overlap*: flocks
 *    lie n / area to the km², and of one at a place it is known how likely just these observers are to
 *    have it in their tallies: `stayed.ts`. Whereabouts not stated are averaged over what the observer
 *    could see, times not noted over the tally's span, so that less knowledge gives weaker evidence.
 * 2. **Number.** Both numbers as counts of one flock, each with its counting error, birds lost or
 *    joined one time in four, or as a part of the larger, against two flocks drawn from the sizes of this
 *    count's flocks of the kind: `flock-size.ts`. A big raft that returns weighs more than thirty birds.
 *    The undivided total of a section may be one flock, or hold the other as one of several.
 * 3. **Kind.** How readily the one record follows from the other (`composition.ts`), against how
 *    readily a flock of this count taken at random would fit. Pairs of which less than half could be
 *    the same kinds are inadmissible. In mixed flocks the shares of the kinds, in flocks whose sexes were
 *    told apart the males.
 * 4. **Heading**: von Mises about the bearing. **Stated section**, and **birds seen flying over
 *    between**: `stated.ts`, `flown.ts`. These speak about a movement only.
 * 5. **Who saw it** of several observers: a flock that came or went is missed by some.
 * 6. **The same observer** counted both and stated no move: −0.7, as it would mostly be noticed.
 *
 * A pair can be one flock in up to three ways (moved either way round, stayed in view of both); the
 * likeliest is taken, and its direction says which sighting is the second. Pairs are inadmissible in
 * one cell, in successive counts of one section, or where no way has any chance. How many flocks move, and
 * how many are in two tallies, is then learned from the count: `rates.ts`.
 *
 * # What it leaves out
 *
 * Land between sections (a swimming flock is taken to go straight), wind, wariness, birds coming in
 * from outside the waterbody, age. Observers' misses enter only by how often observers of one section
 * miss what the others have. Constants marked common practice have no source; some were tried on simulated
 * counts of seeds from 1001 on, none on those that `tests/bench/double-counts.ts` prints, from seed 1 on.
 *
 * @param sightings by index, as in `kinds`
 * @param least pairs below these log odds are left out
 */
export function scorePairs(
  sightings: readonly Seen[],
  kinds: Kinds,
  least: number,
  setting: Setting,
): ScoredPair[] {
  const pairs: ScoredPair[] = [];
  sightings.forEach((a, row) => {
    for (let column = row + 1; column < sightings.length; column += 1) {
      const fit = kinds.fit(row, column);
      const b = sightings[column];
      if (fit === 0 || b === undefined || !mayBeLinked(a, b)) continue;
      const pair = scorePair(a, b, fit, kinds, least, setting);
      if (pair !== null) pairs.push(pair);
    }
  });
  return pairs;
}

function mayBeLinked({ sighting: a }: Seen, { sighting: b }: Seen): boolean {
  if (a.cell === b.cell) return false;
  return !a.flocks.some((one) =>
    b.flocks.some((other) => one.tally.sections.some((id) => other.tally.sections.includes(id))),
  );
}

function scorePair(
  a: Seen,
  b: Seen,
  fit: number,
  kinds: Kinds,
  least: number,
  setting: Setting,
): ScoredPair | null {
  const common = kinds.common(a.index, b.index);
  const kindWeight = Math.log(fit / common);
  const spread = kinds.spread(a.index, b.index);
  const moving = sizesRatio(a.sighting, b.sighting, spread, MAY_CHANGE);
  const resting = sizesRatio(a.sighting, b.sighting, spread, MAY_CHANGE_AT_REST);
  // Only pairs that could come to something are followed.
  const enough = least - kindWeight - mostFromMixture(a, b);
  const toMove = enough - moving.weight;
  const way = likelier(moved(a, b, toMove, setting), moved(b, a, toMove, setting), 0);
  const route = likelier(stayed(a, b, setting), way, resting.weight - moving.weight);
  if (route === null) return null;
  const size = route.kind === 'movement' ? moving : resting;
  const bySize = route.logOdds + size.weight;
  if (bySize < enough) return null;
  const inside = [...mixtureEvidence(a, b), ...sexesEvidence(a, b), ...sameObserver(route)];
  const logOdds = inside.reduce((sum, { weight }) => sum + weight, kindWeight + bySize);
  if (logOdds < least) return null;
  const { kind, first, second } = route;
  return {
    kind,
    first,
    second,
    route,
    logOdds,
    isPart: size.isPart,
    evidence: () => [
      kindEvidence(a, b, fit, common),
      sizeEvidence(a, b, size),
      ...inside,
      ...route.evidence(),
    ],
  };
}

function sizesRatio(
  a: FlockSighting,
  b: FlockSighting,
  spread: SizeSpread,
  change: SizeChange,
): SizeRatio {
  if (a.isTotal && b.isTotal) {
    return totalsRatio(a.size, b.size, [a.holds, b.holds], spread, change);
  }
  if (a.isTotal) return totalRatio(a.size, b.size, a.holds, spread, change);
  if (b.isTotal) return totalRatio(b.size, a.size, b.holds, spread, change);
  return sizeRatio(a.size, b.size, spread, change);
}

/** Of two ways the one with better odds; ties go to staying, then to the earlier key first. */
function likelier(one: Route | null, other: Route | null, oneGains: number): Route | null {
  if (one === null || other === null) return one ?? other;
  const by = one.logOdds + oneGains - other.logOdds;
  if (by !== 0) return by > 0 ? one : other;
  if (one.kind !== other.kind) return one.kind === 'overlap' ? one : other;
  return one.first.sighting.key < one.second.sighting.key ? one : other;
}

/** Who counted both and stated the move has said that it is one flock. */
function sameObserver(route: Route): LinkEvidence[] {
  const [first, second] = [route.first.sighting.sighting, route.second.sighting.sighting];
  const both = first.observers.some((one) => second.observers.includes(one));
  if (!both || route.isStated) return [];
  const text = say('the same observer counted both and did not say that it was one flock');
  return [{ name: 'observer', text, weight: SAME_OBSERVER }];
}

function kindEvidence(a: Seen, b: Seen, fit: number, common: number): LinkEvidence {
  const [one, other] = [a.sighting.sighting.taxon, b.sighting.sighting.taxon];
  const share = String(Math.round(common * 100));
  const text =
    one === other
      ? say('both {one}; {share} in 100 flocks would fit as well', { one, share })
      : say('{one} and {other} can be the same birds; {share} in 100 flocks would fit as well', {
          ...{ one, other, share },
        });
  return { name: 'kind', text, weight: Math.log(fit / common) };
}

/** What the shares of the kinds, and the sexes, can add at most. */
function mostFromMixture(a: Seen, b: Seen): number {
  const kinds = Math.min(a.sighting.parts.length, b.sighting.parts.length);
  const shares =
    a.shareError === null || b.shareError === null
      ? 0
      : mostFromShares(kinds, a.shareError + b.shareError);
  const sexes =
    a.mostFromSexes === null || b.mostFromSexes === null
      ? 0
      : Math.max(a.mostFromSexes, b.mostFromSexes);
  return shares + sexes;
}

/** How alike the shares of the kinds are in mixed flocks, over every two observers' records. */
function mixtureEvidence(one: Seen, other: Seen): LinkEvidence[] {
  if (one.shareError === null || other.shareError === null) return [];
  const [a, b] = [one.sighting, other.sighting];
  const ratios = a.flocks.flatMap((one) => b.flocks.map((other) => sharesLogRatio(one, other)));
  if (ratios.every((ratio) => ratio === 0)) return [];
  const weight = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
  const text = weight > 0 ? say('its kinds are mixed alike') : say('its kinds are not mixed alike');
  return [{ name: 'mixture', text, weight }];
}

/** The same for males and females, where they were told apart. */
function sexesEvidence(one: Seen, other: Seen): LinkEvidence[] {
  if (one.mostFromSexes === null || other.mostFromSexes === null) return [];
  const [a, b] = [one.sighting, other.sighting];
  const ratios = a.flocks
    .flatMap((one) => b.flocks.map((other) => sexesLogRatio(one, other)))
    .filter((ratio) => ratio !== null);
  if (ratios.length === 0) return [];
  const weight = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
  const text = weight > 0 ? say('as many males in both') : say('not as many males in both');
  return [{ name: 'sexes', text, weight }];
}

function sizeEvidence({ sighting: a }: Seen, { sighting: b }: Seen, size: SizeRatio): LinkEvidence {
  const numbers = together([a.sighting.number, b.sighting.number].toSorted((x, y) => y - x));
  const total = [a, b].find(({ isTotal }) => isTotal);
  if (total !== undefined && size.isPart) {
    const text = say(
      '{numbers} birds: the one is all of its section, the other may be a flock of these',
      { numbers },
    );
    return { name: 'size', text, weight: size.weight };
  }
  const text = size.isPart
    ? say('{numbers} birds: the smaller may be a part of the larger', { numbers })
    : size.weight > 0
      ? say('{numbers} birds: alike within counting error', { numbers })
      : say('{numbers} birds: not much alike', { numbers });
  return { name: 'size', text, weight: size.weight };
}
