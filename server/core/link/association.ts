/** Two sightings, by number, that may be one flock seen first as `first` and then as `second`. */
export interface Candidate {
  readonly first: number;
  readonly second: number;
  readonly logOdds: number;
  /** Birds that would be the same in both: all of the smaller sighting. */
  readonly birds: number;
  /** Whether these are rather a part of the larger sighting: others may then share it. */
  readonly isPart: boolean;
}

/** Rounds after which messages no longer change; each round costs little. */
const MOST_ROUNDS = 200;
const NO_LONGER_CHANGES = 1e-7;

/** Parts as unlikely as this are not put together with others. */
const WORTH_JOINING = 1e-3;

/**
 * The probability of every candidate when all compete: each sighting is followed by one other or by
 * none and preceded by one or none, or by two parts that it has birds enough for; and a set of links is as
 * likely as the product of its odds. By belief propagation (Williams & Lau 2014, IEEE Trans. Aerospace and
 * Electronic Systems 50:2942, there without parts), exact where candidates form no loop and close to it
 * elsewhere.
 *
 * @param room birds that a sighting has at most, its counting error allowed for; without it no parts
 */
export function probabilitiesOf(
  candidates: readonly Candidate[],
  sightings: number,
  room: readonly number[] = [],
): number[] {
  const odds = candidates.map(({ logOdds }) => Math.exp(Math.min(logOdds, 500)));
  const firsts = sidesOf(candidates, sightings, 'first', room);
  const seconds = sidesOf(candidates, sightings, 'second', room);
  let offered = candidates.map(() => 1);
  let asked = candidates.map(() => 1);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const before = offered;
    asked = freedom(firsts, odds, offered);
    offered = freedom(seconds, odds, asked);
    let change = 0;
    offered.forEach((value, index) => {
      change = Math.max(change, Math.abs(value - (before[index] ?? 0)));
    });
    if (change < NO_LONGER_CHANGES) break;
  }
  return odds.map((each, index) => {
    const weight = each * (asked[index] ?? 0) * (offered[index] ?? 0);
    return weight / (1 + weight);
  });
}

/** One sighting's candidates on one side, with those pairs of them that may hold together. */
interface Side {
  readonly candidates: readonly number[];
  readonly together: readonly (readonly [one: number, other: number])[];
}

function sidesOf(
  candidates: readonly Candidate[],
  sightings: number,
  side: 'first' | 'second',
  room: readonly number[],
): Side[] {
  const bySighting: number[][] = Array.from({ length: sightings }, () => []);
  candidates.forEach((candidate, index) => bySighting[candidate[side]]?.push(index));
  return bySighting.flatMap((members, sighting) => {
    if (members.length === 0) return [];
    const parts = members.filter(
      (index) =>
        candidates[index]?.isPart === true && Math.exp(candidates[index].logOdds) > WORTH_JOINING,
    );
    const together = parts.flatMap((one, place) =>
      parts.slice(place + 1).flatMap((other): [number, number][] => {
        const birds = (candidates[one]?.birds ?? 0) + (candidates[other]?.birds ?? 0);
        return birds <= (room[sighting] ?? 0) ? [[one, other]] : [];
      }),
    );
    return [{ candidates: members, together }];
  });
}

/**
 * How free a sighting is for each of its candidates, as the other ends tell: the weight of all that goes
 * together with the candidate over the weight of all that does not need it.
 */
function freedom(
  sides: readonly Side[],
  odds: readonly number[],
  told: readonly number[],
): number[] {
  const free = odds.map(() => 1);
  const weight = (index: number): number => (odds[index] ?? 0) * (told[index] ?? 0);
  for (const { candidates, together } of sides) {
    const sum = candidates.reduce((total, index) => total + weight(index), 0);
    const pairs = together.reduce((total, [a, b]) => total + weight(a) * weight(b), 0);
    if (together.length === 0) {
      for (const index of candidates) free[index] = 1 / (1 + Math.max(0, sum - weight(index)));
      continue;
    }
    const withIt = new Map<number, number>();
    for (const [a, b] of together) {
      withIt.set(a, (withIt.get(a) ?? 0) + weight(b));
      withIt.set(b, (withIt.get(b) ?? 0) + weight(a));
    }
    for (const index of candidates) {
      const own = weight(index);
      const shared = withIt.get(index) ?? 0;
      const without = 1 + Math.max(0, sum - own) + Math.max(0, pairs - own * shared);
      free[index] = (1 + shared) / without;
    }
  }
  return free;
}
