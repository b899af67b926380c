import type { Cell } from '../model/result.js';
import { usablePairings } from './compared-units.js';

/** One observer's total of one group of a cell, which this observer counted in full. */
export interface FullTotal {
  /** Cell and group. */
  readonly group: string;
  readonly cell: string;
  readonly observer: string;
  readonly number: number;
}

/**
 * Observers of a cell who counted it in full and are each independent of all the others. Where two
 * share a member neither enters: which of them to leave out would depend on their names.
 *
 * @returns sorted; empty where under two are left
 */
export function independentObservers(cell: Cell): string[] {
  const usable = new Map<string, number>();
  for (const { a, b } of usablePairings(cell)) {
    for (const observer of [a, b]) usable.set(observer, (usable.get(observer) ?? 0) + 1);
  }
  const all = usable.size;
  const kept = [...usable.keys()].filter((observer) => usable.get(observer) === all - 1);
  return kept.length < 2 ? [] : kept.sort();
}

/** Totals of all groups by the observers of `independentObservers`, zeros included. */
export function fullTotals(cells: readonly Cell[]): FullTotal[] {
  return cells.flatMap((cell) => {
    const observers = new Set(independentObservers(cell));
    return cell.groups.flatMap((group) =>
      group.totals
        .filter(({ observer }) => observers.has(observer))
        .map(({ observer, number }) => ({
          group: `${cell.id}\n${group.id}`,
          cell: cell.id,
          observer,
          number,
        })),
    );
  });
}
