import type { Result } from '../model/result.js';
import type { TrueFlock, Truth } from './truth.js';

/** Totals over all species and sections, birds using the water. The compiled ones of no ruling. */
export interface TotalScore {
  /** True birds that were in some section when one of its observers looked, each once. */
  readonly inSight: number | null;
  /** True birds that at least one tally has, each once: what compiling could come to at best. */
  readonly recorded: number | null;
  /** The compiled total with every link left alone. */
  readonly raw: number;
  /** The compiled total if every proposed link is taken off. */
  readonly afterProposals: number;
}

/** Both truths, and the total before and after the proposals of a result that deducts them. */
export function scoreTotals(
  proposalsDeducted: Pick<Result, 'compiled' | 'ledger'>,
  { flocks }: Pick<Truth, 'flocks'>,
): TotalScore {
  const afterProposals = proposalsDeducted.compiled.reduce((sum, { number }) => sum + number, 0);
  const raw = afterProposals + deductedBy(proposalsDeducted);
  const unknown = { inSight: null, recorded: null };
  return { ...(flocks === null ? unknown : trueTotals(flocks)), raw, afterProposals };
}

/** The two truths that a total can be held against. */
export function trueTotals(flocks: readonly TrueFlock[]): { inSight: number; recorded: number } {
  let [inSight, recorded] = [0, 0];
  for (const flock of flocks) {
    for (const { birds, lines } of flock.parts) {
      if (flock.inSight) inSight += birds;
      if (lines.length > 0) recorded += birds;
    }
  }
  return { inSight, recorded };
}

/** Birds that links took off. */
function deductedBy({ ledger }: Pick<Result, 'ledger'>): number {
  return ledger
    .filter(({ to }) => to.startsWith('double-count/'))
    .reduce((sum, { number }) => sum + number, 0);
}
