/** One observer's turn; whole minutes from the start of the window. */
export interface Turn {
  /** Sections that are tallied as one, from the west: one or two neighbours. */
  readonly sections: readonly number[];
  /** Observer number, from 0. */
  readonly observer: number;
  readonly start: number;
  readonly end: number;
  /** What was seen of the sections; `null` for all. */
  readonly part: SeenPart | null;
  /** Who counts with this observer: they share one look, see `model.ts`. */
  readonly party: Party | null;
}

/** A share of the sections' width, over 0 and under 1, from one end. */
export interface SeenPart {
  readonly share: number;
  readonly from: 'west' | 'east';
}

interface Party {
  /** The observer who finds and names, and the one who writes along. */
  readonly first: number;
  readonly second: number;
}
