import type { ComparedCell, ComparedPair } from '../compare/compare-cell.js';
import { beyondError } from '../compare/named-apart.js';
import { pairingBalance, type BalanceFlow } from '../compare/pairing-balance.js';
import type { Protocol } from '../model/protocol.js';
import type { Snapshot } from '../model/snapshot.js';
import type { LookAlikes } from '../taxa/candidate-set.js';
import { byFlock, type PairByFlock } from './flock-by-flock.js';
import { matchedFlocksOf, stocksOf, type MatchedFlocks } from './flocks-apart.js';

/** A pair of looks by the flocks that both recorded, and by what is left. */
export interface PairedFlocks {
  readonly pair: ComparedPair;
  readonly lines: PairByFlock;
  /** Birds of no shared flock that were named differently, beyond counting error. */
  readonly besideFlocks: readonly BalanceFlow[];
}

/** The flocks of a cell, as far as disagreements need them. */
export interface CellFlocks extends MatchedFlocks {
  /** In the order of the cell's pairs. */
  readonly pairs: readonly PairedFlocks[];
}

/** Matches the flocks of a cell between its observers and takes its pairs apart by them. */
export function flocksOfCell(
  { cell, pairs }: ComparedCell,
  snapshot: Snapshot,
  lookAlikes: LookAlikes,
  protocol: Protocol,
): CellFlocks {
  const matched = matchedFlocksOf(cell, snapshot, lookAlikes, protocol);
  return {
    ...matched,
    pairs: pairs.map((pair) => {
      const lines = byFlock(pair, matched);
      const [a, b] = [stocksOf(lines.restA, protocol), stocksOf(lines.restB, protocol)];
      const { flows } = lines.withoutFlocks ? pair.balance : pairingBalance(a, b, lookAlikes);
      return { pair, lines, besideFlocks: beyondError(flows, a, b, protocol.questionedAt) };
    }),
  };
}
