/** One posting, as far as the sum needs it. */
export interface PostingView {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly number: number;
}

export interface SumTerm<Posting extends PostingView> {
  readonly posting: Posting;
  /** Above 0 into the compiled count, below 0 out of it. */
  readonly birds: number;
}

export interface LedgerSum<Posting extends PostingView> {
  /** What goes straight into or out of the reported compiled count; these add up to the line. */
  readonly terms: readonly SumTerm<Posting>[];
  /** What links took off before: birds that are counted elsewhere, and in none of `terms`. */
  readonly foundTwice: readonly Posting[];
  /** What happened before, between tallies and consensus. */
  readonly before: readonly Posting[];
  readonly total: number;
}

/**
 * A line's sum as an accountant would check it: the postings into the reported account, less those
 * out of it. All other postings say how the parts came about.
 */
export function ledgerSum<Posting extends PostingView>(
  postings: readonly Posting[],
  reported: string,
): LedgerSum<Posting> {
  const account = `compiled/${reported}`;
  const terms: SumTerm<Posting>[] = [];
  const before: Posting[] = [];
  const foundTwice: Posting[] = [];
  for (const posting of postings) {
    const sign = (posting.to === account ? 1 : 0) - (posting.from === account ? 1 : 0);
    if (sign === 0 && posting.to.startsWith('double-count/')) foundTwice.push(posting);
    else if (sign === 0) before.push(posting);
    else terms.push({ posting, birds: sign * posting.number });
  }
  return { terms, foundTwice, before, total: terms.reduce((sum, { birds }) => sum + birds, 0) };
}
