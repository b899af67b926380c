/** A flock as a set of observers saw it. */
export interface ObservedFlock {
  readonly cell: string;
  /** Line ids, sorted and joined: the same whatever observers are called. */
  readonly key: string;
  /** Per observer of the set. */
  readonly seenBy: readonly boolean[];
  /** Birds: the mean of those who recorded it. */
  readonly number: number;
  /** Kilometres from where each observer stood; `null` where position or vantage point is not known. */
  readonly distances: readonly (number | null)[];
}
