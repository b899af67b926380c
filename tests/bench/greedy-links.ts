import type { FlockSighting } from '../../server/core/link/sightings.js';
import { geodesicBetween } from '../../server/core/math/geodesy.js';
import type { Protocol } from '../../server/core/model/protocol.js';
import type { Link, Sighting } from '../../server/core/model/result.js';
import { instant } from '../../server/core/model/time.js';
import { overlaps } from '../../server/core/taxa/candidate-set.js';

type FoundLink = Omit<Link, 'ruling' | 'deducted' | 'deduction'>;

/** Two numbers of one flock differ by no more than this factor. */
const ALIKE = 1.5;
/** Kilometres that two observers may place one flock apart. */
const PLACED_APART = 0.3;

/** What of a sighting the greedy way looks at. */
export type Placed = Pick<FlockSighting, 'key' | 'cell' | 'window' | 'sections' | 'sighting'>;

interface Pair {
  readonly one: Placed;
  readonly other: Placed;
  /** Kilometres; `null` without both positions. */
  readonly far: number | null;
  /** Hours. */
  readonly gap: number;
}

/**
 * The simple way to find double counts, to compare with: sightings in different sections that may be
 * one kind, whose numbers lie within a factor of 1.5 and whose way could be swum or flown in the
 * time are taken for one flock, nearest first (in place, then those without positions in time), each
 * in one link only. It has no probabilities: every link is proposed.
 */
export function greedyLinks(
  sightings: readonly Placed[],
  protocol: Protocol,
): readonly FoundLink[] {
  const pairs = sightings.flatMap((one, index) =>
    sightings.slice(index + 1).flatMap((other) => pairOf(one, other, protocol)),
  );
  pairs.sort(
    (a, b) =>
      Number(a.far === null) - Number(b.far === null) ||
      (a.far ?? 0) - (b.far ?? 0) ||
      a.gap - b.gap ||
      (keyOf(a) < keyOf(b) ? -1 : 1),
  );
  const taken = new Set<Placed>();
  return pairs.flatMap((pair) => {
    if (taken.has(pair.one) || taken.has(pair.other)) return [];
    taken.add(pair.one).add(pair.other);
    return [linkFrom(pair)];
  });
}

function keyOf({ one, other }: Pair): string {
  return `${one.key}~${other.key}`;
}

function pairOf(one: Placed, other: Placed, protocol: Protocol): Pair[] {
  if (one.window !== other.window || one.cell === other.cell) return [];
  if (one.sections.some((section) => other.sections.includes(section))) return [];
  const [a, b] = [one.sighting, other.sighting];
  if (Math.max(a.number, b.number) > ALIKE * Math.min(a.number, b.number)) return [];
  if (!overlaps(a.candidates, b.candidates)) return [];
  const gap = Math.max(hoursFrom(a, b), hoursFrom(b, a), 0);
  const longest = Math.max(hoursFrom(a, b, 'longest'), hoursFrom(b, a, 'longest'));
  const far =
    a.position === null || b.position === null
      ? null
      : geodesicBetween(a.position, b.position).distance / 1000;
  if (far !== null && far > PLACED_APART + longest * protocol.flyingMaxKmh) return [];
  return [{ one, other, far, gap }];
}

/** From the end of the one to the start of the other, or from start to end. */
function hoursFrom(one: Sighting, other: Sighting, which: 'gap' | 'longest' = 'gap'): number {
  const [from, to] = which === 'gap' ? [one.end, other.start] : [one.start, other.end];
  return ((instant(to ?? '') ?? 0) - (instant(from ?? '') ?? 0)) / 3_600_000;
}

function linkFrom({ one, other, far, gap }: Pair): FoundLink {
  const [first, second] = [one, other].map((each) => each.sighting).sort(byTime);
  if (first === undefined || second === undefined) throw new Error('a pair has two sightings');
  const together = gap === 0 && (far ?? 0) <= PLACED_APART;
  return {
    id: [one.key, other.key].sort().join('~'),
    kind: together ? 'overlap' : 'movement',
    lines: [...first.lines, ...second.lines].sort(),
    first,
    second,
    probability: 1,
    birds: Math.min(first.number, second.number),
    proposed: true,
    evidence: [],
  };
}

function byTime(one: Sighting, other: Sighting): number {
  return (instant(one.start ?? '') ?? 0) - (instant(other.start ?? '') ?? 0);
}
