/**
 * One thing wrong with what came in from outside, said to the person who can mend it.
 * The same fault is shown on the command line, in GraphQL errors and on the page.
 */
export interface Fault {
  /** Stable, kebab-case: what programs branch on. */
  readonly code: string;
  /** File, or the input's name for a submitted tally. */
  readonly file: string;
  /** 1-based row as a spreadsheet shows it (the header is row 1); `null` where rows do not apply. */
  readonly row: number | null;
  /** Column or key. */
  readonly column: string | null;
  /** As it was written. */
  readonly value: string | null;
  /** What is wrong, a sentence without a full stop. */
  readonly problem: string;
  /** What was expected, a sentence without a full stop. */
  readonly expected: string;
  /** The nearest valid value, if one is near. */
  readonly nearest: string | null;
}

/** `tallies.csv, row 7, column taxon: "Aythya marilla" is not a known taxon. Expected …. Did you mean Aythya marila?` */
export function faultSentence(fault: Fault): string {
  const where = [
    fault.file,
    fault.row === null ? null : `row ${fault.row}`,
    fault.column === null
      ? null
      : `${fault.file.endsWith('json') ? 'key' : 'column'} ${fault.column}`,
  ]
    .filter((part) => part !== null)
    .join(', ');
  const nearest = fault.nearest === null ? '' : ` Did you mean ${fault.nearest}?`;
  return `${where}: ${fault.problem}. Expected ${fault.expected}.${nearest}`;
}
