import { plural, t } from '@lingui/core/macro';
import { birds } from '../ui/words.js';
import type { FlowKind } from './pairing-layout.js';

export interface PairingTotals {
  readonly agreed: number;
  readonly compatible: number;
  readonly differently: number;
  readonly onlyA: number;
  readonly onlyB: number;
}

/** What a kind of pair says, with the letters of the two observers. */
export function kindWords(kind: FlowKind, letterA: string, letterB: string): string {
  switch (kind) {
    case 'agreed':
      return t({ message: 'agreed', context: 'of birds' });
    case 'compatible':
      return t`agree at a coarser level`;
    case 'differently':
      return t`identified differently`;
    case 'only-a':
      return only(letterA);
    case 'only-b':
      return only(letterB);
  }
}

/**
 * The pairing in one sentence: "Of 440 and 400 birds: 310 agreed, 90 agree at a coarser level, none
 * identified differently, 40 counted by B only."
 */
export function pairingSentence(totals: PairingTotals, letterA: string, letterB: string): string {
  const { agreed, compatible, differently, onlyA, onlyB } = totals;
  const paired = agreed + compatible + differently;
  const ofB = paired + onlyB;
  const parts = [
    agreedWords(agreed),
    coarserWords(compatible),
    differently === 0 ? t`none identified differently` : differentlyWords(differently),
    ...(onlyA > 0 ? [onlyWords(onlyA, letterA)] : []),
    ...(onlyB > 0 ? [onlyWords(onlyB, letterB)] : []),
  ].join(', ');
  const [numberA, numberB] = [birds(paired + onlyA), birds(ofB)];
  return plural(ofB, {
    one: `Of ${letterA}’s ${numberA} and ${letterB}’s ${numberB} bird: ${parts}.`,
    other: `Of ${letterA}’s ${numberA} and ${letterB}’s ${numberB} birds: ${parts}.`,
  });
}

function only(letter: string): string {
  return t`counted by ${letter} only`;
}

// The same in English for one bird and for more, but not in every language.

function agreedWords(number: number): string {
  const written = birds(number);
  return plural(number, { one: `${written} agreed`, other: `${written} agreed` });
}

function coarserWords(number: number): string {
  const written = birds(number);
  return plural(number, {
    one: `${written} agree at a coarser level`,
    other: `${written} agree at a coarser level`,
  });
}

function differentlyWords(number: number): string {
  const written = birds(number);
  return plural(number, {
    one: `${written} identified differently`,
    other: `${written} identified differently`,
  });
}

function onlyWords(number: number, letter: string): string {
  const written = birds(number);
  return plural(number, {
    one: `${written} counted by ${letter} only`,
    other: `${written} counted by ${letter} only`,
  });
}

/** The five totals of a part of the flows, as for one group of the cell. */
export function totalsOf(
  flows: readonly { readonly kind: string; readonly number: number }[],
): PairingTotals {
  const sum = (kind: FlowKind): number =>
    flows.reduce((total, flow) => (flow.kind === kind ? total + flow.number : total), 0);
  return {
    agreed: sum('agreed'),
    compatible: sum('compatible'),
    differently: sum('differently'),
    onlyA: sum('only-a'),
    onlyB: sum('only-b'),
  };
}
