/** One number by one observer: ln of a count, and what it is a count of. */
export interface Measured {
  readonly cell: string;
  readonly observer: string;
  readonly value: number;
}
