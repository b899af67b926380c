import type { AlignedCell } from '../align/cells.js';
import { varianceOf } from '../compare/counting-error.js';
import { namedApart, type CountedStock } from '../compare/named-apart.js';
import { leastApart, type BalanceFlow } from '../compare/pairing-balance.js';
import { canBeFollowed, FLOCK_AT_LEAST, labelOf, type Flock } from '../link/flock.js';
import { raftsOf, type Rafts } from '../link/sightings.js';
import { Waterbody } from '../link/whereabouts.js';
import type { Protocol } from '../model/protocol.js';
import { numberOf } from '../model/quantity.js';
import type { Snapshot, TallyLine } from '../model/snapshot.js';
import { areLookAlikes, keyOf, overlaps, type LookAlikes } from '../taxa/candidate-set.js';
import { inScope } from '../taxa/scope.js';

/** Two observers' records of one flock whose names are apart, with the birds that stand apart. */
export interface RecordsApart {
  readonly a: Flock;
  readonly b: Flock;
  /** Of kind `differently`. */
  readonly flows: readonly BalanceFlow[];
  readonly birds: number;
}

/** The flocks of a cell, matched between its observers, and which of them were named differently. */
export interface MatchedFlocks {
  readonly rafts: Rafts;
  /**
   * Two records of a raft, as `pairKey`, that are held against each other and no other lines, with
   * the pairing that names fewest of their birds apart.
   */
  readonly byThemselves: ReadonlyMap<string, readonly BalanceFlow[]>;
  /** By raft, most birds first; rafts whose records agree are left out. */
  readonly apart: readonly (readonly RecordsApart[])[];
}

/**
 * Holds the observers of a cell against each other flock by flock. What the pairing balance of the
 * whole cell cannot see, since birds of one flock make up for those of another, shows here: a flock
 * that one calls 66 Greater and the other 66 Lesser Scaup, beside another that was left at the pair.
 */
export function matchedFlocksOf(
  cell: AlignedCell,
  snapshot: Snapshot,
  lookAlikes: LookAlikes,
  protocol: Protocol,
): MatchedFlocks {
  const window = snapshot.windows.find(({ id }) => id === cell.window);
  if (cell.layer !== 'using' || window === undefined) {
    return { rafts: [], byThemselves: new Map(), apart: [] };
  }
  const tallies = [...new Set(cell.looks.flatMap((look) => look.tallies))];
  const rafts = raftsOf(tallies, window, new Waterbody(snapshot), lookAlikes, protocol);
  const compared = rafts.map((flocks) =>
    pairsOf(flocks).map(([a, b]) => compareRecords(a, b, lookAlikes, protocol)),
  );
  const byThemselves = compared
    .flat()
    .filter(
      ({ a, b, birds }) => birds > 0 || (isClosed(a, b, lookAlikes) && isClosed(b, a, lookAlikes)),
    )
    .map(({ a, b, all }) => [pairKey(a, b), all] as const);
  const apart = compared
    .map((records) => records.filter(({ birds }) => birds > 0))
    .filter((records) => records.length > 0)
    .map((records) => records.toSorted((one, other) => other.birds - one.birds));
  return { rafts, byThemselves: new Map(byThemselves), apart };
}

/** The same whichever of the two comes first. */
export function pairKey(a: Flock, b: Flock): string {
  return [a.key, b.key].sort().join('~');
}

/** Every two records of a raft by different observers, sorted by key. */
function pairsOf(flocks: readonly Flock[]): (readonly [Flock, Flock])[] {
  const sorted = flocks.toSorted((one, other) => (one.key < other.key ? -1 : 1));
  return sorted
    .flatMap((a, index) => sorted.slice(index + 1).map((b) => [a, b] as const))
    .filter(([a, b]) => a.tally.observer !== b.tally.observer);
}

/**
 * Whether a flock's birds are surely on its own lines: it has a label, so that all lines of the flock
 * are known, and no other line of its tally without one may be of what the other recorded there.
 */
function isClosed(own: Flock, other: Flock, lookAlikes: LookAlikes): boolean {
  return (
    own.label !== null &&
    !own.tally.lines.some(
      (line) =>
        isTotal(line) &&
        other.parts.some(
          ({ candidates }) =>
            overlaps(candidates, line.candidates) ||
            areLookAlikes(candidates, line.candidates, lookAlikes),
        ),
    )
  );
}

/** A line without a flock's label that is large enough to hold a flock's birds. */
export function isTotal(line: TallyLine): boolean {
  return labelOf(line) === null && (numberOf(line.quantity) ?? 0) >= FLOCK_AT_LEAST;
}

function compareRecords(
  a: Flock,
  b: Flock,
  lookAlikes: LookAlikes,
  protocol: Protocol,
): RecordsApart & { readonly all: readonly BalanceFlow[] } {
  const ofA = { stocks: stocksOf(soughtBy(b, a.lines), protocol), whole: a.label !== null };
  const ofB = { stocks: stocksOf(soughtBy(a, b.lines), protocol), whole: b.label !== null };
  const all = leastApart(ofA.stocks, ofB.stocks, lookAlikes).flows;
  const limits = { beyond: protocol.questionedAt, farBeyond: protocol.seriousAt };
  const flows = namedApart(all, ofA, ofB, lookAlikes, limits).filter(
    (flow) => !hasElsewhere(b, flow.a, flow) && !hasElsewhere(a, flow.b, flow),
  );
  const birds = Math.round(flows.reduce((sum, { number }) => sum + number, 0));
  return { a, b, flows, birds, all };
}

/** Whether a plain total of the tally, of no flock, may hold most of the birds by the other's name. */
function hasElsewhere({ tally }: Flock, set: BalanceFlow['a'], { number }: BalanceFlow): boolean {
  const birds = tally.lines
    .filter((line) => !canBeFollowed(line) && overlaps(line.candidates, set ?? []))
    .reduce((sum, line) => sum + (numberOf(line.quantity) ?? 0), 0);
  return 2 * birds >= number;
}

/** Lines that the other observer set out to count: of others nothing is claimed. */
function soughtBy({ tally }: Flock, lines: readonly TallyLine[]): TallyLine[] {
  return lines.filter(({ candidates }) => inScope(tally.scope, candidates));
}

/** Birds by identification, with what counting error makes of them. */
export function stocksOf(lines: readonly TallyLine[], protocol: Protocol): CountedStock[] {
  const byKey = new Map<string, CountedStock>();
  for (const line of lines) {
    const key = keyOf(line.candidates);
    const known = byKey.get(key);
    byKey.set(key, {
      candidates: line.candidates,
      number: (known?.number ?? 0) + (numberOf(line.quantity) ?? 0),
      variance: (known?.variance ?? 0) + varianceOf(line, protocol),
    });
  }
  return [...byKey].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, stock]) => stock);
}
