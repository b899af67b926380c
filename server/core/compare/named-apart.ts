import {
  areLookAlikes,
  keyOf,
  overlaps,
  type CandidateSet,
  type LookAlikes,
} from '../taxa/candidate-set.js';
import type { BalanceFlow, Stock } from './pairing-balance.js';

/** Birds of one identification with the variance of their number, in birds squared. */
export interface CountedStock extends Stock {
  readonly variance: number;
}

/** One observer's record of one flock. */
export interface FlockRecord {
  readonly stocks: readonly CountedStock[];
  /** Whether it is of the whole flock, so that what it lacks stands on no other line. */
  readonly whole: boolean;
}

/** How many standard deviations are more than counting error (`questionedAt`), and far more. */
export interface Limits {
  readonly beyond: number;
  readonly farBeyond: number;
}

/**
 * Birds of one flock that two observers named differently, beyond what counting error explains.
 *
 * However the birds are paired, so many at least stand under names without a shared species
 * (`leastApart`). Counts err, so that alone says little in a large flock: 420 and 380 of two species
 * against 385 and 410 leave 30 birds apart and are honest counts of one flock. A flow counts if, on
 * one of its two sides, the observer has more birds than the other's record has room for by `beyond`
 * standard deviations of both numbers. One side is enough if the other's record is of the whole
 * flock: where a hundred birds have no place in it, a few more or fewer of a thousand beside them
 * say nothing about it. Against a record that may be of a part of the flock, such as a line without a
 * flock's label, both sides are needed: what it lacks may stand on another line.
 *
 * Counting error also hides birds. Of 33 birds that one has too many by far, the other may have 10
 * too many among 350 look-alikes, which do not speak against 33. So a set far beyond its room stands
 * apart as a whole if the other's look-alikes may hold it within `beyond` standard deviations, unless
 * the other has none of the set and no look-alike too many: then it was as likely overlooked.
 *
 * @param flows of the pairing that names fewest birds apart, from `leastApart`
 * @returns flows of kind `differently`, birds over 0
 */
export function namedApart(
  flows: readonly BalanceFlow[],
  a: FlockRecord,
  b: FlockRecord,
  lookAlikes: LookAlikes,
  limits: Limits,
): BalanceFlow[] {
  const roomOfA = new Room(a.stocks, b.stocks, pairedSets(flows, 'a'));
  const roomOfB = new Room(b.stocks, a.stocks, pairedSets(flows, 'b'));
  const beyond = flows.filter((flow) => {
    if (flow.kind !== 'differently') return false;
    const tooManyA = roomOfA.excess(flow.a ?? []) >= limits.beyond;
    const tooManyB = roomOfB.excess(flow.b ?? []) >= limits.beyond;
    return (tooManyA && tooManyB) || (tooManyA && b.whole) || (tooManyB && a.whole);
  });
  if (!a.whole || !b.whole) return beyond;
  return [
    ...beyond,
    ...hidden(roomOfA, roomOfB, birdsBySet(beyond, 'a'), lookAlikes, limits).map(
      ([own, other, number]) => differently(own, other, number),
    ),
    ...hidden(roomOfB, roomOfA, birdsBySet(beyond, 'b'), lookAlikes, limits).map(
      ([own, other, number]) => differently(other, own, number),
    ),
  ];
}

/**
 * The flows named differently of a pairing of these birds of which one side or the other has more
 * than counting error explains.
 */
export function beyondError(
  flows: readonly BalanceFlow[],
  a: readonly CountedStock[],
  b: readonly CountedStock[],
  beyond: number,
): BalanceFlow[] {
  const roomOfA = new Room(a, b, pairedSets(flows, 'a'));
  const roomOfB = new Room(b, a, pairedSets(flows, 'b'));
  return flows.filter(
    (flow) =>
      flow.kind === 'differently' &&
      Math.max(roomOfA.excess(flow.a ?? []), roomOfB.excess(flow.b ?? [])) >= beyond,
  );
}

/** Birds far beyond their room that the other's look-alikes may hold, as far as no flow has them. */
function hidden(
  own: Room,
  other: Room,
  found: ReadonlyMap<string, number>,
  lookAlikes: LookAlikes,
  { beyond, farBeyond }: Limits,
): [own: CandidateSet, other: CandidateSet, birds: number][] {
  return own.birds.flatMap(({ candidates }) => {
    const { birds, deviation, silent } = own.alone(candidates);
    const known = found.get(keyOf(candidates)) ?? 0;
    const missing = birds - known;
    if (missing <= 0 || birds < farBeyond * deviation || (silent && known === 0)) return [];
    const holding = other.birds
      .filter((stock) => !overlaps(stock.candidates, candidates))
      .filter((stock) => areLookAlikes(stock.candidates, candidates, lookAlikes))
      .map((stock) => {
        const room = other.alone(stock.candidates);
        const most = Math.min(stock.number, room.birds + beyond * room.deviation);
        return { stock, most: Math.max(0, most) };
      });
    const most = holding.reduce((sum, each) => sum + each.most, 0);
    if (most < birds) return [];
    return holding
      .filter((each) => each.most > 0)
      .map((each): [CandidateSet, CandidateSet, number] => [
        candidates,
        each.stock.candidates,
        (missing * each.most) / most,
      ]);
  });
}

function differently(a: CandidateSet, b: CandidateSet, number: number): BalanceFlow {
  return { kind: 'differently', a, b, number };
}

function birdsBySet(flows: readonly BalanceFlow[], side: 'a' | 'b'): ReadonlyMap<string, number> {
  const birds = new Map<string, number>();
  for (const flow of flows) {
    const key = keyOf(flow[side] ?? []);
    birds.set(key, (birds.get(key) ?? 0) + flow.number);
  }
  return birds;
}

type PairedSets = readonly [own: CandidateSet | null, other: CandidateSet | null];

function pairedSets(flows: readonly BalanceFlow[], side: 'a' | 'b'): PairedSets[] {
  return flows
    .filter(({ kind }) => kind === 'agreed' || kind === 'compatible')
    .map(({ a, b }) => (side === 'a' ? [a, b] : [b, a]));
}

/** One observer's birds against the room that the other's record has for them. */
class Room {
  constructor(
    readonly birds: readonly CountedStock[],
    private readonly other: readonly CountedStock[],
    private readonly paired: readonly PairedSets[],
  ) {}

  /**
   * By how many standard deviations birds of a set exceed their room: of the set by itself, or
   * together with the sets that compete with it for the room, whichever says more.
   */
  excess(set: CandidateSet): number {
    const inDeviations = ({ birds, deviation }: Excess): number =>
      birds <= 0 ? 0 : birds / deviation;
    return Math.max(
      inDeviations(this.alone(set)),
      inDeviations(this.excessOf(this.competing(keyOf(set)))),
    );
  }

  /** The set by itself. */
  alone(set: CandidateSet): Excess {
    return this.excessOf(new Set([keyOf(set)]));
  }

  private excessOf(keys: ReadonlySet<string>): Excess {
    const own = this.birds.filter(({ candidates }) => keys.has(keyOf(candidates)));
    const room = this.other.filter(
      ({ candidates, number }) =>
        number > 0 && own.some((stock) => overlaps(stock.candidates, candidates)),
    );
    return {
      birds: sumOf(own, ({ number }) => number) - sumOf(room, ({ number }) => number),
      deviation: Math.sqrt(sumOf([...own, ...room], ({ variance }) => variance)),
      silent: room.length === 0,
    };
  }

  /** The set and all whose birds were paired into room that it or they could have had (Hall's sets). */
  private competing(key: string): Set<string> {
    const keys = new Set([key]);
    for (const each of keys) {
      const own = this.birds.find(({ candidates }) => keyOf(candidates) === each);
      const room = this.other.filter(({ candidates }) =>
        overlaps(own?.candidates ?? [], candidates),
      );
      const filled = new Set(room.map(({ candidates }) => keyOf(candidates)));
      for (const [one, other] of this.paired) {
        if (filled.has(keyOf(other ?? []))) keys.add(keyOf(one ?? []));
      }
    }
    return keys;
  }
}

/** Birds beyond their room, below 0 if there is room to spare, with the error of both numbers. */
interface Excess {
  readonly birds: number;
  readonly deviation: number;
  /** True where the other's record has no such birds at all. */
  readonly silent: boolean;
}

function sumOf(stocks: readonly CountedStock[], value: (stock: CountedStock) => number): number {
  return stocks.reduce((sum, stock) => sum + value(stock), 0);
}
