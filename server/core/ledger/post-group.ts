import { keyOf, type CandidateSet } from '../taxa/candidate-set.js';
import type { SettledLine } from '../consensus/settle-group.js';
import type { ReconciledGroup } from '../rulings/reconciled-cell.js';
import { taxonName } from '../taxa/taxon-name.js';
import { account, type Book } from './book.js';
import type { Deduction } from './deductions.js';
import { wholePortions } from './whole-portions.js';

/**
 * Posts one group from its tallies to an account of the compiled count: what each tally gave, what
 * the rule took or added, what a ruling changed, what was counted twice. The consensus account ends
 * empty: what comes in goes out.
 */
export function postGroup(
  book: Book,
  cell: string,
  reconciled: ReconciledGroup,
  deductions: readonly Deduction[],
  into: string,
): void {
  const { group, draft, ruling, lines } = reconciled;
  const here = account.consensus(cell, group.id);
  const postedFromTallies: SettledLine[] = [];
  for (const { portion, number } of wholePortions(draft.portions)) {
    book.post(
      account.tallied(cell, portion.sides.map((side) => side.observer).join('+')),
      here,
      taxonName(portion.candidates),
      number,
      { kind: portion.kind, ref: portion.sides.map((side) => side.lines.join('+')).join('=') },
    );
    postedFromTallies.push({ candidates: portion.candidates, number });
  }
  postDifference(book, postedFromTallies, draft.lines, here, account.rounding(cell, group.id), {
    kind: 'rule',
    ref: draft.consensus.rule,
  });
  if (ruling !== null) {
    postDifference(book, draft.lines, lines, here, account.ruling(ruling.id), {
      kind: 'ruling',
      ref: ruling.id,
    });
  }
  for (const { link, candidates, number } of deductions) {
    book.post(here, account.doubleCount(link), taxonName(candidates), number, {
      kind: 'link',
      ref: link,
    });
  }
  const because =
    ruling === null
      ? { kind: 'rule' as const, ref: draft.consensus.rule }
      : { kind: 'ruling' as const, ref: ruling.id };
  for (const { candidates, number } of afterDeductions(lines, deductions)) {
    book.post(here, into, taxonName(candidates), number, because);
  }
}

/** A group's lines less what links take off them. */
export function afterDeductions(
  lines: readonly SettledLine[],
  deductions: readonly Deduction[],
): SettledLine[] {
  return lines.map((line) => ({
    candidates: line.candidates,
    number: deductions
      .filter((each) => keyOf(each.candidates) === keyOf(line.candidates))
      .reduce((left, each) => left - each.number, line.number),
  }));
}

/** Posts what turns `before` into `after`, through another account. */
function postDifference(
  book: Book,
  before: readonly SettledLine[],
  after: readonly SettledLine[],
  here: string,
  through: string,
  because: { kind: 'rule' | 'ruling'; ref: string },
): void {
  const change = new Map<string, { candidates: CandidateSet; number: number }>();
  const add = (lines: readonly SettledLine[], sign: 1 | -1): void => {
    for (const { candidates, number } of lines) {
      const key = keyOf(candidates);
      change.set(key, {
        candidates,
        number: (change.get(key)?.number ?? 0) + sign * number,
      });
    }
  };
  add(before, -1);
  add(after, 1);
  for (const [, { candidates, number }] of [...change.entries()].sort(([one], [other]) =>
    one < other ? -1 : 1,
  )) {
    const taxon = taxonName(candidates);
    if (number < 0) book.post(here, through, taxon, -number, because);
    else book.post(through, here, taxon, number, because);
  }
}
