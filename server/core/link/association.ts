/** Two sightings, by number, that may be one flock seen first as `first` and then as `second`. */
export interface Candidate {
  readonly first: number;
  readonly second: number;
  readonly logOdds: number;
  /** Birds that would be the same in both: all of the smaller sighting. */
  readonly birds: number;
  /** Whether these are rather a part of the larger sighting: others may then share it. */
  readonly isPart: boolean;
  /**
   * Of an overlap, the cells of both: neither has more than one partner in the other's. A movement has none:
   * a flock comes from one sighting at most, and goes on to one.
   */
  readonly cells: readonly [first: string, second: string] | null;
}

/** Rounds after which messages no longer change; each round costs little. */
const MOST_ROUNDS = 200;
const NO_LONGER_CHANGES = 1e-7;

/** Parts as unlikely as this are not put together with others. */
const WORTH_JOINING = 1e-3;

/**
 * The probability of every candidate when all compete: each sighting moves on to one other or to none and
 * comes from one or none, and is the same as one or none in each other cell; or there are two parts that
 * it has birds enough for. A set of links is as likely as the product of its odds. By belief propagation
 * (Williams & Lau 2014, IEEE Trans. Aerospace and Electronic Systems 50:2942, there without parts), exact
 * where candidates form no loop and close to it elsewhere. All messages of a round are made of those of
 * the round before, so that no order matters.
 *
 * @param room birds that a sighting has at most, its counting error allowed for; without it no parts
 * @param isTotal sightings that stand for any number of flocks: their candidates do not compete
 * @param until messages that change by less are taken for settled
 */
export function probabilitiesOf(
  candidates: readonly Candidate[],
  room: readonly number[] = [],
  isTotal: readonly boolean[] = [],
  until = NO_LONGER_CHANGES,
): number[] {
  const odds = candidates.map(({ logOdds }) => Math.exp(Math.min(logOdds, 500)));
  const sides = sidesOf(candidates, room, isTotal);
  // How free either end of a candidate is, as the sighting there tells.
  let free = [candidates.map(() => 1), candidates.map(() => 1)] as const;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const next = freedom(sides, odds, free);
    let change = 0;
    next.forEach((values, end) => {
      values.forEach((value, index) => {
        const before = free[end]?.[index] ?? 1;
        change = Math.max(change, Math.abs(value - before));
        // Halfway, as messages that overshoot would swing for ever.
        values[index] = (value + before) / 2;
      });
    });
    free = next;
    if (change < until) break;
  }
  return odds.map((each, index) => {
    const weight = each * (free[0][index] ?? 0) * (free[1][index] ?? 0);
    return weight / (1 + weight);
  });
}

/** One end of a candidate. */
interface End {
  readonly index: number;
  readonly end: 0 | 1;
}

/** Ends that compete, at one sighting, and those pairs of them that may hold together, by place. */
interface Side {
  readonly ends: readonly End[];
  readonly together: readonly (readonly [one: number, other: number])[];
}

function sidesOf(
  candidates: readonly Candidate[],
  room: readonly number[],
  isTotal: readonly boolean[],
): Side[] {
  const bySide = new Map<string, { readonly sighting: number; readonly ends: End[] }>();
  candidates.forEach(({ first, second, cells }, index) => {
    const add = (sighting: number, end: 0 | 1, side: string): void => {
      if (isTotal[sighting] === true) return;
      const key = `${sighting} ${side}`;
      const known = bySide.get(key) ?? { sighting, ends: [] };
      known.ends.push({ index, end });
      bySide.set(key, known);
    };
    add(first, 0, cells === null ? 'out' : `in ${cells[1]}`);
    add(second, 1, cells === null ? 'came' : `in ${cells[0]}`);
  });
  return [...bySide.values()].map(({ sighting, ends }) => {
    const parts = [...ends.keys()].filter((place) => {
      const candidate = candidates[ends[place]?.index ?? -1];
      return candidate?.isPart === true && Math.exp(candidate.logOdds) > WORTH_JOINING;
    });
    const birdsOf = (place: number): number => candidates[ends[place]?.index ?? -1]?.birds ?? 0;
    const together = parts.flatMap((one, rank) =>
      parts
        .slice(rank + 1)
        .flatMap((other): [number, number][] =>
          birdsOf(one) + birdsOf(other) <= (room[sighting] ?? 0) ? [[one, other]] : [],
        ),
    );
    return { ends, together };
  });
}

/**
 * How free a sighting is for each of its candidates, as the other ends tell: the weight of all that goes
 * together with the candidate over the weight of all that does not need it.
 */
function freedom(
  sides: readonly Side[],
  odds: readonly number[],
  told: readonly [readonly number[], readonly number[]],
): [number[], number[]] {
  const free: [number[], number[]] = [odds.map(() => 1), odds.map(() => 1)];
  for (const { ends, together } of sides) {
    const weights = ends.map(
      ({ index, end }) => (odds[index] ?? 0) * (told[1 - end]?.[index] ?? 0),
    );
    const sum = weights.reduce((total, weight) => total + weight, 0);
    if (together.length === 0) {
      ends.forEach(({ index, end }, place) => {
        free[end][index] = 1 / (1 + Math.max(0, sum - (weights[place] ?? 0)));
      });
      continue;
    }
    const withIt = ends.map(() => 0);
    let pairs = 0;
    for (const [one, other] of together) {
      const [a, b] = [weights[one] ?? 0, weights[other] ?? 0];
      withIt[one] = (withIt[one] ?? 0) + b;
      withIt[other] = (withIt[other] ?? 0) + a;
      pairs += a * b;
    }
    ends.forEach(({ index, end }, place) => {
      const [own, shared] = [weights[place] ?? 0, withIt[place] ?? 0];
      const without = 1 + Math.max(0, sum - own) + Math.max(0, pairs - own * shared);
      free[end][index] = (1 + shared) / without;
    });
  }
  return free;
}
