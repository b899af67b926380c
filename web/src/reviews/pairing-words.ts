import { birds, countOf } from '../ui/words.js';
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
      return 'agreed';
    case 'compatible':
      return 'agree at a coarser level';
    case 'differently':
      return 'identified differently';
    case 'only-a':
      return `counted by ${letterA} only`;
    case 'only-b':
      return `counted by ${letterB} only`;
  }
}

/**
 * The pairing in one sentence: "Of 440 and 400 birds: 310 agreed, 90 agree at a coarser level, none
 * identified differently, 40 counted by B only."
 */
export function pairingSentence(totals: PairingTotals, letterA: string, letterB: string): string {
  const paired = totals.agreed + totals.compatible + totals.differently;
  const parts = [
    `${birds(totals.agreed)} agreed`,
    `${birds(totals.compatible)} agree at a coarser level`,
    `${totals.differently === 0 ? 'none' : birds(totals.differently)} identified differently`,
    ...(totals.onlyA > 0 ? [`${birds(totals.onlyA)} counted by ${letterA} only`] : []),
    ...(totals.onlyB > 0 ? [`${birds(totals.onlyB)} counted by ${letterB} only`] : []),
  ];
  const head = `Of ${letterA}’s ${birds(paired + totals.onlyA)} and ${letterB}’s ${countOf(paired + totals.onlyB, 'bird')}`;
  return `${head}: ${parts.join(', ')}.`;
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
