import { listed, type Words } from './words.js';
import type { Cell, Pairing, Result } from '../../core/model/result.js';
import { wrap } from './layout.js';

/** Per cell and pair of observers, how their birds pair up: a sentence each. */
export function balanceLines(result: Result<string>, words: Words): readonly string[] {
  return result.cells
    .filter(({ pairings }) => pairings.length > 0)
    .flatMap((cell) => [
      cellTitle(cell, words),
      ...cell.pairings.flatMap((pairing) => wrap(balanceSentence(cell, pairing, words), '  ')),
      ...(cell.feasible ? [] : wrap(conflictSentence(cell, words), '  ')),
    ]);
}

function cellTitle(cell: Cell<string>, words: Words): string {
  const layer = cell.layer === 'flying-through' ? ', flying through' : '';
  return `${words.place(cell.place)}, window ${cell.window}${layer}`;
}

function balanceSentence(cell: Cell<string>, pairing: Pairing, words: Words): string {
  const name = (observer: string): string => words.observer({ observer });
  const total = (observer: string): string =>
    words.number(cell.tallies.find((tally) => tally.observer === observer)?.total ?? 0);
  const { a, b } = pairing;
  const parts = [
    `${words.number(pairing.agreed)} agreed`,
    `${words.number(pairing.compatible)} agree at a coarser level`,
    `${words.number(pairing.differently)} identified differently`,
    ...(pairing.onlyA > 0 ? [`${words.number(pairing.onlyA)} counted by ${name(a)} only`] : []),
    ...(pairing.onlyB > 0 ? [`${words.number(pairing.onlyB)} counted by ${name(b)} only`] : []),
  ];
  const outside = [
    [a, pairing.outsideScopeA],
    [b, pairing.outsideScopeB],
  ] as const;
  const beyond = outside
    .filter(([, birds]) => birds > 0)
    .map(
      ([observer, birds]) =>
        ` ${words.number(birds)} of ${name(observer)} are outside what the other set out to count.`,
    );
  const together = pairing.independent ? '' : ' The two share a member: not independent.';
  const partial = pairing.complete ? '' : ' One of them saw only a part.';
  return `Of ${total(a)} birds of ${name(a)} and ${total(b)} of ${name(b)}: ${listed(parts)}.${beyond.join('')}${together}${partial}`;
}

function conflictSentence(cell: Cell<string>, words: Words): string {
  const birds =
    cell.birdsInConflict === 1 ? '1 bird was' : `${words.number(cell.birdsInConflict)} birds were`;
  const each = cell.tallies.length > 2 ? ', counted once for each observer who was wrong' : '';
  const why = cell.witness === null ? '' : ` ${cell.witness}`;
  return `No single truth fits all tallies here, even within their counting error: at least ${birds} missed, added or misnamed by someone${each}.${why}`;
}
