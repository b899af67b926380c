import type { AlignedCell } from '../align/cells.js';
import type { Look, LookLine } from '../align/looks.js';
import { UnionFind } from '../math/union-find.js';
import { inScope } from '../taxa/scope.js';
import { taxonName } from '../taxa/taxon-name.js';
import { isWithin, keyOf, type CandidateSet, type LookAlikes } from '../taxa/candidate-set.js';
import { pairingBalance, type Balance } from './pairing-balance.js';

/** Two looks of a cell held against each other; `a` sorts before `b`. */
export interface ComparedPair {
  readonly a: Look;
  readonly b: Look;
  readonly balance: Balance;
  /** Birds of the one that the other did not set out to count. */
  readonly outsideScopeA: number;
  readonly outsideScopeB: number;
  /** Share no member: may be used as two. */
  readonly independent: boolean;
  /** Both saw the same sections in full, so that what one does not have it missed. */
  readonly complete: boolean;
}

/** The finest set of identifications whose numbers can be compared and settled together. */
export interface CellGroup {
  readonly id: string;
  /** Sorted by key. */
  readonly identifications: readonly CandidateSet[];
  /** Their names, sorted: how rulings and people name the group. */
  readonly taxa: readonly string[];
}

export interface ComparedCell {
  readonly cell: AlignedCell;
  readonly pairs: readonly ComparedPair[];
  readonly groups: readonly CellGroup[];
}

/** Compares every two looks of a cell and finds its groups (method sections 3.1 and 1). */
export function compareCell(cell: AlignedCell, lookAlikes: LookAlikes): ComparedCell {
  const pairs = cell.looks.flatMap((a, index) =>
    cell.looks
      .slice(index + 1)
      .filter((b) => sawTheSame(a, b))
      .map((b) => comparePair(a, b, lookAlikes)),
  );
  return { cell, pairs, groups: groupsOf(cell, pairs) };
}

/**
 * Looks of parts are compared with looks of the same part, or of a whole that they are not joined
 * into; two ways of joining the same parts are not compared with each other.
 */
function sawTheSame(a: Look, b: Look): boolean {
  if (a.tallies.some((tally) => b.tallies.includes(tally))) return false;
  return isWithin(a.sections, b.sections) || isWithin(b.sections, a.sections);
}

function comparePair(a: Look, b: Look, lookAlikes: LookAlikes): ComparedPair {
  const sought = (line: LookLine, other: Look): boolean => setOutToCount(other, line.candidates);
  const comparableA = a.lines.filter((line) => sought(line, b));
  const comparableB = b.lines.filter((line) => sought(line, a));
  return {
    a,
    b,
    balance: pairingBalance(comparableA, comparableB, lookAlikes),
    outsideScopeA: birdsIn(a.lines) - birdsIn(comparableA),
    outsideScopeB: birdsIn(b.lines) - birdsIn(comparableB),
    independent: !sharesMember(a, b),
    complete: a.coverage >= 1 && b.coverage >= 1 && a.sections.join('+') === b.sections.join('+'),
  };
}

/** Whether a look's silence about these birds is a zero: any of its tallies sought them. */
export function setOutToCount(look: Look, candidates: CandidateSet): boolean {
  return look.scopes.some((scope) => inScope(scope, candidates));
}

export function sharesMember(a: Look, b: Look): boolean {
  return a.party.some((person) => b.party.includes(person));
}

export function birdsIn(lines: readonly LookLine[]): number {
  return lines.reduce((sum, line) => sum + line.number, 0);
}

/** Connected components of identifications under the edges that some best pairing uses. */
function groupsOf(cell: AlignedCell, pairs: readonly ComparedPair[]): CellGroup[] {
  const byKey = new Map<string, CandidateSet>();
  for (const look of cell.looks) {
    for (const line of look.lines) byKey.set(keyOf(line.candidates), line.candidates);
  }
  const keys = [...byKey.keys()].sort();
  const indexOf = new Map(keys.map((key, index) => [key, index]));
  const components = new UnionFind(keys.length);
  for (const { balance } of pairs) {
    for (const flow of balance.flows) {
      if (flow.a === null || flow.b === null) continue;
      const one = indexOf.get(keyOf(flow.a));
      const other = indexOf.get(keyOf(flow.b));
      if (one !== undefined && other !== undefined) components.join(one, other);
    }
  }
  return components.sets().map((members, index) => {
    const identifications = members.flatMap((member) => {
      const set = byKey.get(keys[member] ?? '');
      return set === undefined ? [] : [set];
    });
    return groupFrom(identifications, index);
  });
}

/** A group of these identifications, sorted by key, as the `index`th of its cell. */
export function groupFrom(identifications: readonly CandidateSet[], index: number): CellGroup {
  return {
    id: `g${index + 1}`,
    identifications,
    taxa: identifications.map(taxonName).sort(),
  };
}

/** The lines of a look that belong to a group. */
export function linesInGroup(look: Look, group: CellGroup): LookLine[] {
  const keys = new Set(group.identifications.map(keyOf));
  return look.lines.filter((line) => keys.has(keyOf(line.candidates)));
}

/** True where the look set out to count some identification of the group. */
export function seeksGroup(look: Look, group: CellGroup): boolean {
  return group.identifications.some((candidates) => setOutToCount(look, candidates));
}

/**
 * True where the look saw all of the place and has a number for all birds of the group: birds that
 * were seen but not counted make it a lower bound.
 */
export function countsAllOf(look: Look, group: CellGroup): boolean {
  return look.full && !linesInGroup(look, group).some((line) => line.presentNotCounted);
}
