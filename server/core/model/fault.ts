import { inEnglish, joined, saidIn, say, type Said, type Saying, type Wording } from './saying.js';

/**
 * One thing wrong with what came in from outside, said to the person who can mend it.
 * The same fault is shown on the command line, in GraphQL errors and on the page.
 *
 * @typeParam Words text where it was said already, in the language of whoever reads it
 */
export interface Fault<Words extends Said = Saying> {
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
  readonly problem: Words;
  /** What was expected, a sentence without a full stop. */
  readonly expected: Words;
  /** The nearest valid value, if one is near. */
  readonly nearest: string | null;
}

/** `tallies.csv, row 7, column taxon: "Aythya marilla" is not a known taxon. Expected …. Did you mean Aythya marila?` */
export function faultSaying(fault: Fault<Said>): Saying {
  const { file, row, column } = fault;
  const where: Said[] = [file];
  if (row !== null) where.push(say('row {row}', { row: String(row) }));
  if (column !== null) {
    const isKey = file.endsWith('json');
    where.push(isKey ? say('key {column}', { column }) : say('column {column}', { column }));
  }
  return say('{where}: {remedy}', { where: joined(where, ', '), remedy: remedySaying(fault) });
}

/** The same where the place is shown already. */
function remedySaying(fault: Pick<Fault<Said>, 'problem' | 'expected' | 'nearest'>): Saying {
  const { problem, expected, nearest } = fault;
  return nearest === null
    ? say('{problem}. Expected {expected}.', { problem, expected })
    : say('{problem}. Expected {expected}. Did you mean {nearest}?', {
        problem,
        expected,
        nearest,
      });
}

/** A fault on the command line. */
export function faultSentence(fault: Fault): string {
  return inEnglish(faultSaying(fault));
}

/** A fault on its way to a reader, in their language. */
export function saidFault(fault: Fault, wording: Wording): Fault<string> {
  const { problem, expected } = fault;
  return { ...fault, problem: saidIn(problem, wording), expected: saidIn(expected, wording) };
}
