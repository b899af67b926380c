import { UnionFind } from '../math/union-find.js';
import type { Link, Sighting } from '../model/result.js';
import type { Snapshot } from '../model/snapshot.js';
import {
  linesById,
  recordedFlocks,
  type KnownLines,
  type RecordedFlock,
  type RecordedPart,
} from './recorded-flocks.js';
import type { TrueLink, Truth } from './truth.js';

export type JudgedKind = TrueLink['kind'];

/** A link that was found, and what the truth says of it. */
export interface JudgedLink {
  readonly id: string;
  /** As the engine says. */
  readonly kind: JudgedKind;
  readonly probability: number;
  readonly proposed: boolean;
  readonly birds: number;
  /**
   * `right` if most records (one a tally) of either sighting are about birds that they share; `partly`
   * if only some are, as where observers were wrongly matched; otherwise `wrong`.
   */
  readonly verdict: 'right' | 'partly' | 'wrong';
  /** Of `birds`, those that were counted in both places and that no likelier link takes off. */
  readonly birdsRight: number;
}

/** A link that should be found. A flock in k places makes k − 1. */
export interface JudgedTrueLink {
  readonly kind: JudgedKind;
  /** The flock's lines in either place, sorted. */
  readonly lines: readonly [readonly string[], readonly string[]];
  /** True birds that were counted in both places. */
  readonly birds: number;
  /** Of the right link that found it, the likeliest; `null` if none did. */
  readonly probability: number | null;
  readonly proposed: boolean;
}

export interface JudgedLinks {
  readonly links: readonly JudgedLink[];
  readonly trueLinks: readonly JudgedTrueLink[];
}

type FoundLink = Omit<Link, 'ruling' | 'deducted' | 'deduction'>;

/**
 * Holds the links of a count against the truth. A true link is found once: a second right link
 * between the same two places finds nothing, and takes birds off wrongly.
 */
export function judgeLinks(
  links: readonly FoundLink[],
  truth: Pick<Truth, 'flocks' | 'links'>,
  snapshot: Snapshot,
): JudgedLinks {
  const known = linesById(snapshot);
  const flocks = recordedFlocks(truth, known).map(followed);
  const flocksOf = new Map<string, Followed[]>();
  for (const flock of flocks) {
    for (const id of flock.placeOf.keys()) flocksOf.set(id, [...(flocksOf.get(id) ?? []), flock]);
  }
  const likeliestFirst = [...links].sort(
    (one, other) => other.probability - one.probability || (one.id < other.id ? -1 : 1),
  );
  const judged = likeliestFirst.map((link) => judge(link, flocksOf, known));
  const kinds = new Map(
    truth.links.flatMap(({ kind, lines: [one, other] }) => [
      [`${one} ${other}`, kind] as const,
      [`${other} ${one}`, kind] as const,
    ]),
  );
  return { links: judged, trueLinks: flocks.flatMap((flock) => trueLinksOf(flock, kinds)) };
}

/** A flock, with the right links that have found it in two places so far. */
interface Followed extends RecordedFlock {
  readonly joined: UnionFind;
  readonly found: {
    readonly places: readonly [number, number];
    readonly birds: number;
    readonly link: FoundLink;
  }[];
}

function followed(flock: RecordedFlock): Followed {
  return { ...flock, joined: new UnionFind(flock.places), found: [] };
}

function judge(
  link: FoundLink,
  flocksOf: ReadonlyMap<string, readonly Followed[]>,
  known: KnownLines,
): JudgedLink {
  const { id, kind, probability, proposed, birds, first, second } = link;
  const [inFirst, inSecond] = [first, second].map((sighting) =>
    flocksOfRecords(sighting, flocksOf, known),
  );
  const about = [...new Set(first.lines.flatMap((id) => flocksOf.get(id) ?? []))];
  const shared = about.filter((flock) => partsIn(flock, first, second).length > 0);
  const right = shared.filter((flock) =>
    [inFirst ?? [], inSecond ?? []].every((records) => isInMost(flock, records)),
  );
  const base = { id, kind, probability, proposed, birds };
  if (shared.length === 0) return { ...base, verdict: 'wrong', birdsRight: 0 };
  let doubled = 0;
  for (const flock of shared) {
    const places = [placeIn(flock, first), placeIn(flock, second)] as const;
    if (flock.joined.rootOf(places[0]) === flock.joined.rootOf(places[1])) continue;
    const counted = birdsOf(partsIn(flock, first, second));
    doubled += counted;
    if (!right.includes(flock)) continue;
    flock.joined.join(places[0], places[1]);
    flock.found.push({ places, birds: counted, link });
  }
  const most = Math.max(
    ...[first, second].map((sighting) => {
      const behind = birdsBehind(sighting, flocksOf, known);
      return behind === 0 ? 0 : sighting.number * Math.min(1, doubled / behind);
    }),
  );
  return {
    ...base,
    verdict: right.length > 0 ? 'right' : 'partly',
    birdsRight: Math.min(birds, Math.round(most)),
  };
}

/** For each tally in a sighting, the true flocks that its lines are about. */
function flocksOfRecords(
  { lines }: Sighting,
  flocksOf: ReadonlyMap<string, readonly Followed[]>,
  known: KnownLines,
): ReadonlySet<Followed>[] {
  const records = new Map<string, Set<Followed>>();
  for (const id of lines) {
    const tally = known.get(id)?.tally ?? '';
    const record = records.get(tally) ?? new Set();
    for (const flock of flocksOf.get(id) ?? []) record.add(flock);
    records.set(tally, record);
  }
  return [...records.values()];
}

/** Whether over half of the records are about the flock, or share another with one that is. */
function isInMost(flock: Followed, records: readonly ReadonlySet<Followed>[]): boolean {
  const same = new UnionFind(records.length);
  records.forEach((one, i) => {
    records.forEach((other, j) => {
      if (i < j && [...one].some((each) => other.has(each))) same.join(i, j);
    });
  });
  const own = records.findIndex((record) => record.has(flock));
  const together = records.filter((_, index) => same.rootOf(index) === same.rootOf(own));
  return own >= 0 && 2 * together.length > records.length;
}

function partsIn({ parts }: Followed, ...sightings: readonly Sighting[]): RecordedPart[] {
  return parts.filter((part) =>
    sightings.every(({ lines }) => lines.some((id) => part.lines.has(id))),
  );
}

function placeIn({ placeOf }: Followed, { lines }: Sighting): number {
  return placeOf.get(lines.find((id) => placeOf.has(id)) ?? '') ?? 0;
}

function birdsOf(parts: readonly RecordedPart[]): number {
  return parts.reduce((sum, part) => sum + part.birds, 0);
}

/** True birds that a sighting stands for, on average over its tallies. */
function birdsBehind(
  { lines }: Sighting,
  flocksOf: ReadonlyMap<string, readonly Followed[]>,
  known: KnownLines,
): number {
  const flocks = new Set(lines.flatMap((id) => flocksOf.get(id) ?? []));
  const tallies = new Set(lines.map((id) => known.get(id)?.tally ?? ''));
  const all = [...flocks].flatMap(({ parts }) =>
    parts.map((part) => {
      const own = lines.filter((id) => part.lines.has(id)).map((id) => known.get(id)?.tally);
      return part.birds * new Set(own).size;
    }),
  );
  return all.reduce((sum, birds) => sum + birds, 0) / tallies.size;
}

/** The links that join a flock's places: those found, then overlaps, then movements. */
function trueLinksOf(
  flock: Followed,
  kinds: ReadonlyMap<string, JudgedKind>,
): readonly JudgedTrueLink[] {
  if (flock.places < 2) return [];
  const found = flock.found.map(({ places, birds, link: { probability, proposed } }) => ({
    kind: kindBetween(flock, places, kinds),
    lines: linesIn(flock, places),
    birds,
    probability,
    proposed,
  }));
  const missed: JudgedTrueLink[] = [];
  const pairs = pairsOf(flock).map((places) => ({
    places,
    kind: kindBetween(flock, places, kinds),
  }));
  for (const wanted of ['overlap', 'movement'] as const) {
    for (const { places, kind } of pairs.filter((each) => each.kind === wanted)) {
      const birds = birdsOf(
        flock.parts.filter((part) => places.every((place) => part.places.has(place))),
      );
      if (birds === 0 || flock.joined.rootOf(places[0]) === flock.joined.rootOf(places[1]))
        continue;
      flock.joined.join(places[0], places[1]);
      const lines = linesIn(flock, places);
      missed.push({ kind, lines, birds, probability: null, proposed: false });
    }
  }
  return [...found, ...missed];
}

function pairsOf({ places }: Followed): (readonly [number, number])[] {
  const all = Array.from({ length: places }, (_, place) => place);
  return all.flatMap((one) => all.slice(one + 1).map((other) => [one, other] as const));
}

function linesIn(
  { placeOf }: Followed,
  [one, other]: readonly [number, number],
): readonly [readonly string[], readonly string[]] {
  const own = (place: number): string[] =>
    [...placeOf].filter(([, each]) => each === place).map(([id]) => id);
  return [own(one), own(other)];
}

/** Overlap where any two of its lines in the places say so. */
function kindBetween(
  flock: Followed,
  places: readonly [number, number],
  kinds: ReadonlyMap<string, JudgedKind>,
): JudgedKind {
  const [ones, others] = linesIn(flock, places);
  const overlap = ones.some((one) =>
    others.some((other) => kinds.get(`${one} ${other}`) === 'overlap'),
  );
  return overlap ? 'overlap' : 'movement';
}
