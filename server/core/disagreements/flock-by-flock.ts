import type { Look } from '../align/looks.js';
import { setOutToCount, type ComparedPair } from '../compare/compare-cell.js';
import type { BalanceFlow } from '../compare/pairing-balance.js';
import type { Flock } from '../link/flock.js';
import type { TallyLine } from '../model/snapshot.js';
import { isTotal, pairKey, type MatchedFlocks } from './flocks-apart.js';

/** The lines that two looks can be compared on, by the flocks that both recorded. */
export interface PairByFlock {
  readonly shared: readonly SharedFlock[];
  /** Lines of no flock that both recorded, as far as they may be of the same birds. */
  readonly restA: readonly TallyLine[];
  readonly restB: readonly TallyLine[];
  /** Lines of flocks that only one recorded, where no line of the other may be of the same birds. */
  readonly alone: readonly TallyLine[];
  /** True where neither kept flocks: all lines are in the rest. */
  readonly withoutFlocks: boolean;
}

interface SharedFlock {
  /** Every record of it, also by observers who are not of the pair. */
  readonly flocks: readonly Flock[];
  /** The pairing that names fewest of its birds apart; which side is whose does not matter here. */
  readonly flows: readonly BalanceFlow[];
}

/**
 * Takes a pair of looks apart by the flocks that both recorded whole. A labelled flock that only one
 * recorded is not held against other labelled flocks of the other: that they are not one flock is
 * what matching found. It may be among the birds of a line without a label, though.
 */
export function byFlock(
  { a, b }: ComparedPair,
  { rafts, byThemselves }: MatchedFlocks,
): PairByFlock {
  const linesA = new Set(comparable(a, b));
  const linesB = new Set(comparable(b, a));
  const shared: SharedFlock[] = [];
  const kept = new Set<TallyLine>();
  const unmatched = new Set<TallyLine>();
  for (const flocks of rafts) {
    const ofA = flocks.filter(({ tally }) => a.tallies.includes(tally));
    const ofB = flocks.filter(({ tally }) => b.tallies.includes(tally));
    const lines = [...ofA, ...ofB].flatMap((flock) => flock.lines);
    const [one, other] = [ofA[0], ofB[0]];
    if (one === undefined || other === undefined) {
      for (const line of lines) if (!isTotal(line)) unmatched.add(line);
      continue;
    }
    const flows = byThemselves.get(pairKey(one, other));
    if (flows === undefined || ofA.length > 1 || ofB.length > 1) continue;
    shared.push({ flocks, flows });
    for (const line of lines) kept.add(line);
  }
  const rest = (own: ReadonlySet<TallyLine>, others: ReadonlySet<TallyLine>): TallyLine[] => {
    const hasTotal = [...others].some((line) => !kept.has(line) && isTotal(line));
    return [...own].filter((line) => !kept.has(line) && (hasTotal || !unmatched.has(line)));
  };
  const [restA, restB] = [rest(linesA, linesB), rest(linesB, linesA)];
  const inRest = new Set([...restA, ...restB]);
  return {
    shared,
    restA,
    restB,
    alone: [...unmatched].filter(
      (line) => (linesA.has(line) || linesB.has(line)) && !inRest.has(line),
    ),
    withoutFlocks: kept.size === 0 && unmatched.size === 0,
  };
}

function comparable(look: Look, other: Look): TallyLine[] {
  return look.lines
    .filter(({ candidates }) => setOutToCount(other, candidates))
    .flatMap(({ sources }) => sources);
}
