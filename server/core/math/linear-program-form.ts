/** Sum of factor × variable, held between `least` and `most` (equal for an equation). */
export interface LinearRow {
  /** Each variable at most once. */
  readonly terms: readonly (readonly [variable: number, factor: number])[];
  /** May be −Infinity. */
  readonly least: number;
  /** May be Infinity. */
  readonly most: number;
}

/** Minimise Σ cost × variable subject to rows and bounds. */
export interface LinearProgram {
  /** Per unit of each variable. */
  readonly costs: readonly number[];
  /** Of each variable; may be infinite. */
  readonly bounds: readonly { readonly least: number; readonly most: number }[];
  readonly rows: readonly LinearRow[];
}
