import { keyOf, overlaps, type CandidateSet } from '../taxa/candidate-set.js';
import { linesInGroup } from '../compare/compare-cell.js';
import { numberOf } from '../model/quantity.js';
import { largestRemainder } from '../math/largest-remainder.js';
import type { Link, LinkDeduction, Sighting } from '../model/result.js';
import { taxonName } from '../taxa/taxon-name.js';
import type { ReconciledCell, ReconciledGroup } from '../rulings/reconciled-cell.js';
import { changeByRulings } from '../rulings/sighting-as-ruled.js';
import { contributionOf } from './contribution.js';

/** Birds taken off one line of a group because a link says that they were counted elsewhere. */
export interface Deduction {
  readonly link: string;
  readonly cell: string;
  readonly group: string;
  readonly candidates: CandidateSet;
  readonly number: number;
}

type Linked = Pick<Link, 'id' | 'first' | 'second' | 'probability' | 'birds' | 'deducted'>;

/**
 * What every link takes off the compiled lines of the cell that holds its second sighting; for a
 * link that is not deducted, what it would take if it were. Birds are shared out over the lines in
 * proportion to what the sighting's own tally lines say, in whole birds by largest remainder.
 *
 * Birds are conserved: links out of one sighting (a flock that split) take together no more than it
 * had, links into one (flocks that joined) no more than it has, and no line gives more than it has.
 * What a sighting has is what it contributes to the compiled count: a flock that one of two observers
 * missed stands in their mean with half its birds, and no more can have been counted twice.
 * Likelier links come first, then by id, so that the answer depends on which links are deducted and
 * on nothing that happened before. A link from or to a cell that is not compiled (the lower of two
 * successive counts) takes nothing: its birds are in the compiled count once at most.
 *
 * @param compiled the cells that the compiled count is added up from
 * @returns deductions by link id
 */
export function deductionsOf(
  links: readonly Linked[],
  compiled: readonly ReconciledCell[],
): Map<string, readonly Deduction[]> {
  const cells = new Map(
    compiled
      .filter(({ compared }) => compared.cell.layer === 'using')
      .map((cell) => [cell.compared.cell.id, { cell, slots: slotsOf(cell) }] as const),
  );
  const room = new Map<string, number>();
  const roomOf = (side: 'first' | 'second', sighting: Sighting): number => {
    const key = keyOfSide(side, sighting);
    const known = room.get(key) ?? birdsCompiledOf(sighting, compiled);
    room.set(key, known);
    return known;
  };
  const byLink = new Map<string, readonly Deduction[]>();
  for (const link of links.toSorted(likelierFirst)) {
    const into = cells.get(link.second.cell);
    if (into === undefined || !cells.has(link.first.cell)) {
      byLink.set(link.id, []);
      continue;
    }
    const birds = Math.min(link.birds, roomOf('first', link.first), roomOf('second', link.second));
    const parts = shareWithin(
      birds,
      weightsOf(into.cell, into.slots, link.second.lines),
      into.slots.map(({ left }) => left),
    );
    byLink.set(
      link.id,
      into.slots.flatMap(({ reconciled, candidates }, index) => {
        const number = parts[index] ?? 0;
        if (number === 0) return [];
        const { id: group } = reconciled.group;
        return [{ link: link.id, cell: link.second.cell, group, candidates, number }];
      }),
    );
    if (!link.deducted) continue;
    into.slots.forEach((slot, index) => (slot.left -= parts[index] ?? 0));
    const taken = parts.reduce((sum, part) => sum + part, 0);
    for (const side of ['first', 'second'] as const) {
      room.set(keyOfSide(side, link[side]), roomOf(side, link[side]) - taken);
    }
  }
  return byLink;
}

/** A link with what it takes, added up by identification and sorted by it. */
export function withDeduction(
  link: Omit<Link, 'deduction'>,
  deductions: readonly Deduction[],
): Link {
  const numbers = new Map<string, LinkDeduction>();
  for (const { candidates, number } of deductions) {
    const taxon = taxonName(candidates);
    const known = numbers.get(keyOf(candidates))?.number ?? 0;
    numbers.set(keyOf(candidates), { taxon, candidates, number: known + number });
  }
  const deduction = [...numbers.keys()].sort().flatMap((key) => numbers.get(key) ?? []);
  return { ...link, deduction };
}

function likelierFirst(one: Linked, other: Linked): number {
  return other.probability - one.probability || (one.id < other.id ? -1 : 1);
}

/** Whole birds of a sighting that are in the compiled count; part of a bird is not taken off. */
function birdsCompiledOf(sighting: Sighting, compiled: readonly ReconciledCell[]): number {
  const had = Math.round(sighting.number * changeByRulings(sighting, compiled));
  // Sums of parts that make a whole bird may be a rounding error short of it.
  return Math.min(had, Math.floor(contributionOf(sighting, compiled) + 1e-9));
}

function keyOfSide(side: 'first' | 'second', { cell, lines }: Sighting): string {
  return JSON.stringify([side, cell, lines]);
}

/** One line of a cell as it stands, and its birds that no link has taken yet. */
interface Slot {
  readonly reconciled: ReconciledGroup;
  readonly candidates: CandidateSet;
  readonly number: number;
  left: number;
}

function slotsOf(cell: ReconciledCell): Slot[] {
  return cell.groups.flatMap((reconciled) =>
    reconciled.lines.map(({ candidates, number }) => ({
      reconciled,
      candidates,
      number,
      left: number,
    })),
  );
}

/**
 * For each line, birds of the sighting that are on it: each tally line's are shared with the lines of
 * its group that they may be; with all of them, where a ruling has named its birds otherwise.
 */
function weightsOf(
  cell: ReconciledCell,
  slots: readonly Slot[],
  lines: readonly string[],
): number[] {
  const weights = slots.map(() => 0);
  for (const reconciled of cell.groups) {
    const sources = cell.compared.cell.looks
      .flatMap((look) => linesInGroup(look, reconciled.group).flatMap((line) => line.sources))
      .filter(({ id }) => lines.includes(id));
    if (sources.length === 0) continue;
    const own = slots.flatMap((slot, index) =>
      slot.reconciled === reconciled && slot.number > 0 ? [{ slot, index }] : [],
    );
    for (const source of sources) {
      const named = own.filter(({ slot }) => overlaps(slot.candidates, source.candidates));
      const fitting = named.length > 0 ? named : own;
      const total = fitting.reduce((sum, { slot }) => sum + slot.number, 0);
      for (const { slot, index } of fitting) {
        const birds = ((numberOf(source.quantity) ?? 0) * slot.number) / total;
        weights[index] = (weights[index] ?? 0) + birds;
      }
    }
  }
  return weights;
}

/** Largest remainder with a cap on each part; what a cap turns away goes to the others that fit. */
function shareWithin(birds: number, weights: readonly number[], caps: readonly number[]): number[] {
  const parts = weights.map(() => 0);
  let open = weights.map((weight, index) => (weight > 0 && (caps[index] ?? 0) > 0 ? weight : 0));
  let remaining = birds;
  while (remaining > 0 && open.some((weight) => weight > 0)) {
    const offered = largestRemainder(remaining, open);
    let taken = 0;
    offered.forEach((offer, index) => {
      const room = (caps[index] ?? 0) - (parts[index] ?? 0);
      const part = Math.min(offer, room);
      parts[index] = (parts[index] ?? 0) + part;
      taken += part;
    });
    open = open.map((weight, index) => ((parts[index] ?? 0) < (caps[index] ?? 0) ? weight : 0));
    remaining -= taken;
    if (taken === 0) break;
  }
  return parts;
}
