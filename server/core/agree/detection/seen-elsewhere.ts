import type { Flock } from '../../link/flock.js';
import type { Cell, PairingFlow } from '../../model/result.js';
import { taxonName } from '../../taxa/taxon-name.js';
import { usablePairings } from '../compared-units.js';
import type { ObservedFlock } from './observed-flock.js';

/** A flock of a cell with its records, per observer. */
export interface Recorded {
  readonly flock: ObservedFlock;
  readonly by: readonly (readonly Flock[])[];
}

export interface TwoObservers {
  readonly one: string;
  readonly other: string;
  /** Their places among the observers of the set. */
  readonly place: number;
  readonly otherPlace: number;
}

/** So large a share of a flock's birds says that the flock is among them. */
const SHARE = 0.5;
/** Two numbers further apart than this many standard errors are questioned (ISO 13528). */
const QUESTIONED = 2;

/**
 * Flocks recorded by `one` that `other` has no record of and saw all the same, by key: its birds are paired
 * with birds of the other (pairing balance), and these are
 * - in lines that are followed as no flock, as a total of the section, and more than one's own such lines
 *   account for; or
 * - in the record of another flock, whose bounds the other drew wider: the two records of that flock
 *   differ beyond counting error, and no longer do with this flock's birds added.
 *
 * That the other has as many birds of the kind is not enough: where each of the two missed one flock of
 * a kind, the balance pairs the one with the other. Largest flocks first; no bird serves two flocks.
 */
export function seenElsewhere(
  cell: Cell,
  recorded: readonly Recorded[],
  { one, other, place, otherPlace }: TwoObservers,
): Set<string> {
  const flows = flowsBetween(cell, one, other);
  const [own, others] = [place, otherPlace].map((each) =>
    recorded.flatMap(({ by }) => by[each] ?? []),
  );
  const left = leftAlone(flows);
  const loose = looseBeyond(
    looseBirds(cell, other, others ?? []),
    looseBirds(cell, one, own ?? []),
    flows,
  );
  const shared = recorded.flatMap(({ by }): Shared[] => {
    const [mine, theirs] = [measured(by[place] ?? []), measured(by[otherPlace] ?? [])];
    return mine === null || theirs === null ? [] : [{ mine, theirs }];
  });
  const seen = new Set<string>();
  const unmatched = recorded
    .filter(({ flock }) => flock.seenBy[place] === true && flock.seenBy[otherPlace] === false)
    .sort((a, b) => b.flock.number - a.flock.number || (a.flock.key < b.flock.key ? -1 : 1));
  for (const { flock, by } of unmatched) {
    const record = measured(by[place] ?? []);
    if (record === null) continue;
    if (takeBirds(left, record, (taxon) => [taxon])) continue;
    const pairedWith = (taxon: string): string[] =>
      flows.flatMap((flow) => (flow.a === taxon && flow.b !== null ? [flow.b] : []));
    if (takeBirds(loose, record, pairedWith) || takeIntoWider(shared, record, pairedWith)) {
      seen.add(flock.key);
    }
  }
  return seen;
}

/** Flows of the pairing balance of two, `a` being the one and `b` the other. */
function flowsBetween(cell: Cell, one: string, other: string): PairingFlow[] {
  return usablePairings(cell).flatMap(({ a, b, flows }) => {
    if (a === one && b === other) return flows;
    if (a === other && b === one) return flows.map((flow) => ({ ...flow, a: flow.b, b: flow.a }));
    return [];
  });
}

/** Birds that the one alone counted, by taxon. */
function leftAlone(flows: readonly PairingFlow[]): Map<string, number> {
  const left = new Map<string, number>();
  for (const { a, b, number } of flows) {
    if (a !== null && b === null) left.set(a, (left.get(a) ?? 0) + number);
  }
  return left;
}

/** Birds of an observer's tally, by taxon, that are in no flock that is followed. */
function looseBirds(cell: Cell, observer: string, flocks: readonly Flock[]): Map<string, number> {
  const loose = new Map<string, number>();
  for (const tally of cell.tallies.filter((each) => each.observer === observer)) {
    for (const { taxon, number } of tally.lines) {
      loose.set(taxon, (loose.get(taxon) ?? 0) + number);
    }
  }
  for (const { candidates, number } of flocks.flatMap(({ parts }) => parts)) {
    const taxon = taxonName(candidates);
    loose.set(taxon, Math.max(0, (loose.get(taxon) ?? 0) - number));
  }
  return loose;
}

/** The other's loose birds less the one's own of taxa that they are paired with. */
function looseBeyond(
  others: Map<string, number>,
  own: Map<string, number>,
  flows: readonly PairingFlow[],
): Map<string, number> {
  for (const { a, b } of flows) {
    if (a === null || b === null) continue;
    const both = Math.min(own.get(a) ?? 0, others.get(b) ?? 0);
    own.set(a, (own.get(a) ?? 0) - both);
    others.set(b, (others.get(b) ?? 0) - both);
  }
  return others;
}

/** One observer's record of a flock; where an observer has several, they are added up. */
interface Measured {
  number: number;
  /** Variance of the number. */
  variance: number;
  readonly parts: readonly { readonly taxon: string; readonly number: number }[];
}

interface Shared {
  readonly mine: Measured;
  readonly theirs: Measured;
}

function measured(records: readonly Flock[]): Measured | null {
  if (records.length === 0) return null;
  return {
    number: records.reduce((total, { number }) => total + number, 0),
    variance: records.reduce(
      (total, { number, logVariance }) => total + number ** 2 * logVariance,
      0,
    ),
    parts: records.flatMap(({ parts }) =>
      parts.map(({ candidates, number }) => ({ taxon: taxonName(candidates), number })),
    ),
  };
}

/** Takes a flock's birds out of a stock if at least half of them are there. */
function takeBirds(
  stock: Map<string, number>,
  { number, parts }: Measured,
  fromTaxa: (taxon: string) => readonly string[],
): boolean {
  const takings: { taxon: string; number: number }[] = [];
  const rest = new Map(stock);
  for (const part of parts) {
    let wanted = part.number;
    for (const taxon of fromTaxa(part.taxon)) {
      const taken = Math.min(wanted, rest.get(taxon) ?? 0);
      wanted -= taken;
      rest.set(taxon, (rest.get(taxon) ?? 0) - taken);
      takings.push({ taxon, number: taken });
    }
  }
  if (takings.reduce((total, each) => total + each.number, 0) < SHARE * number) return false;
  for (const each of takings) stock.set(each.taxon, (stock.get(each.taxon) ?? 0) - each.number);
  return true;
}

/** Adds a flock to one that the other drew wider, if there is one that it makes good. */
function takeIntoWider(
  shared: readonly Shared[],
  record: Measured,
  pairedWith: (taxon: string) => readonly string[],
): boolean {
  const kinds = new Set(record.parts.flatMap(({ taxon }) => pairedWith(taxon)));
  const wider = shared.find(({ mine, theirs }) => {
    const together = {
      number: mine.number + record.number,
      variance: mine.variance + record.variance,
    };
    return (
      theirs.parts.some(({ taxon }) => kinds.has(taxon)) &&
      apart(theirs, mine) >= QUESTIONED &&
      Math.abs(apart(theirs, together)) < QUESTIONED
    );
  });
  if (wider === undefined) return false;
  wider.mine.number += record.number;
  wider.mine.variance += record.variance;
  return true;
}

/** How many standard errors the ln of a number lies above that of another. */
function apart(
  one: Pick<Measured, 'number' | 'variance'>,
  other: Pick<Measured, 'number' | 'variance'>,
): number {
  const variance = one.variance / one.number ** 2 + other.variance / other.number ** 2;
  return Math.log(one.number / other.number) / Math.sqrt(variance);
}
