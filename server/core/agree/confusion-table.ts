import type { ConfusionTable } from '../model/agreement.js';
import type { Cell } from '../model/result.js';
import { usablePairings } from './compared-units.js';

/**
 * What one of two observers called the birds that the other called something, added up from the
 * pairing balances: the rows and columns of a shaded grid. Birds that only one counted have no name by
 * the other.
 */
export function confusionOfPair(cells: readonly Cell[], a: string, b: string): ConfusionTable {
  const book = new ConfusionBook();
  for (const cell of cells) {
    for (const pairing of usablePairings(cell)) {
      if (pairing.a !== a || pairing.b !== b) continue;
      for (const flow of pairing.flows) book.add(flow.a, flow.b, flow.number);
    }
  }
  return book.table();
}

/**
 * The same over all pairs of observers. Who is a and who b then means nothing: each bird counts half
 * each way round, so that the table is symmetric and adds up to the pairs of birds.
 */
export function confusionOfAll(cells: readonly Cell[]): ConfusionTable {
  const book = new ConfusionBook();
  for (const cell of cells) {
    for (const { flows } of usablePairings(cell)) {
      for (const { a, b, number } of flows) {
        book.add(a, b, number / 2);
        book.add(b, a, number / 2);
      }
    }
  }
  return book.table();
}

class ConfusionBook {
  private readonly numbers = new Map<
    string,
    { a: string | null; b: string | null; parts: number[] }
  >();

  add(a: string | null, b: string | null, number: number): void {
    const key = `${a ?? ''}\n${b ?? ''}`;
    const entry = this.numbers.get(key) ?? { a, b, parts: [] };
    entry.parts.push(number);
    this.numbers.set(key, entry);
  }

  table(): ConfusionTable {
    const entries = [...this.numbers.keys()].sort().flatMap((key) => {
      const entry = this.numbers.get(key);
      if (entry === undefined) return [];
      const { a, b, parts } = entry;
      const number = Math.round(parts.reduce((total, part) => total + part, 0) * 1e6) / 1e6;
      return number > 0 ? [{ a, b, number }] : [];
    });
    const taxa = entries.flatMap(({ a, b }) => [a, b]).filter((taxon) => taxon !== null);
    return { taxa: [...new Set(taxa)].sort(), entries };
  }
}
