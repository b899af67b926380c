import type { Posting } from '../model/result.js';

/** Collects postings in order and numbers them: `p1`, `p2` … */
export class Book {
  readonly #postings: Posting[] = [];

  /** Moves whole birds of a compiled taxon from one account to another; nothing for no birds. */
  post(from: string, to: string, taxon: string, number: number, because: Posting['because']): void {
    if (number === 0) return;
    if (!Number.isInteger(number) || number < 0) {
      throw new RangeError(`A posting needs whole birds above zero, not ${number} ${taxon}`);
    }
    this.#postings.push({ id: `p${this.#postings.length + 1}`, from, to, taxon, number, because });
  }

  postings(): readonly Posting[] {
    return this.#postings;
  }
}

/** Names of accounts, in one place. */
export const account = {
  tallied: (cell: string, observer: string): string => `tallied/${cell}/${observer}`,
  consensus: (cell: string, group: string): string => `consensus/${cell}/${group}`,
  rounding: (cell: string, group: string): string => `rounding/${cell}/${group}`,
  ruling: (id: string): string => `ruling/${id}`,
  doubleCount: (link: string): string => `double-count/${link}`,
  compiled: (reported: string): string => `compiled/${reported}`,
  flyingThrough: (window: string): string => `flying-through/${window}`,
};
