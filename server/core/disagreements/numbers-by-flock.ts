import type { CellGroup } from '../compare/compare-cell.js';
import { pairingBalance, type BalanceFlow } from '../compare/pairing-balance.js';
import { wholeLines, type SettledLine } from '../consensus/settle-group.js';
import { totalIn } from '../consensus/units.js';
import type { Flock } from '../link/flock.js';
import type { Protocol } from '../model/protocol.js';
import { intersection, lookAlikesFrom, union, type CandidateSet } from '../taxa/candidate-set.js';
import { isIn, type GroupInQuestion } from './about-group.js';
import type { PairedFlocks } from './cell-flocks.js';
import type { PairByFlock } from './flock-by-flock.js';
import { stocksOf } from './flocks-apart.js';

/**
 * The group's drafted number shared out by what observers called the birds flock by flock, as
 * `consensus/composition.ts` shares it out by the pairing balance of the whole cell.
 *
 * @param taken a record whose names stand for its flock, whoever else recorded it; `null` for none
 */
export function numbersByFlock(
  question: GroupInQuestion,
  taken: Flock | null,
): readonly SettledLine[] {
  const { draft } = question;
  const portions = pairsThatSaw(question).flatMap(({ lines }, _, pairs) => {
    const named = namedByFlock(lines, question, taken);
    const total = named.reduce((sum, { number }) => sum + number, 0);
    return named.map((each) => ({
      ...each,
      share: each.number / total / pairs.length,
      kind: 'single' as const,
      sides: [],
    }));
  });
  return portions.length === 0 ? draft.lines : wholeLines(draft.consensus.number, portions);
}

/** Pairs of looks that both have such birds: of full and independent ones if there are any. */
function pairsThatSaw({ flocks, group }: GroupInQuestion): readonly PairedFlocks[] {
  const saw = flocks.pairs.filter(
    ({ pair: { a, b } }) => totalIn(a, group) > 0 && totalIn(b, group) > 0,
  );
  const full = saw.filter(({ pair: { a, b } }) => a.full && b.full);
  const best = full.length > 0 ? full : saw;
  const independent = best.filter(({ pair }) => pair.independent);
  return independent.length > 0 ? independent : best;
}

interface NamedBirds {
  readonly candidates: CandidateSet;
  readonly number: number;
}

function namedByFlock(
  { shared, restA, restB, alone }: PairByFlock,
  { group, protocol }: GroupInQuestion,
  taken: Flock | null,
): NamedBirds[] {
  const lookAlikes = lookAlikesFrom(protocol.lookAlikes);
  const rest = pairingBalance(stocksOf(restA, protocol), stocksOf(restB, protocol), lookAlikes);
  return [
    ...shared.flatMap(({ flocks, flows }) => {
      const named = inGroup(flows, group, protocol);
      return taken !== null && flocks.includes(taken) ? asNamedBy(taken, named, group) : named;
    }),
    ...inGroup(rest.flows, group, protocol),
    ...stocksOf(alone, protocol).filter(
      ({ candidates, number }) => number > 0 && isIn(group, candidates),
    ),
  ];
}

/** Paired birds as the protocol settles them; of a pair that leads out of the group, this side. */
function inGroup(
  flows: readonly BalanceFlow[],
  group: CellGroup,
  { resolution }: Protocol,
): NamedBirds[] {
  return flows.flatMap(({ a, b, number }) => {
    const [one, other] = [a, b].filter((set) => set !== null).filter((set) => isIn(group, set));
    if (one === undefined) return [];
    if (other === undefined) return [{ candidates: one, number }];
    const both = intersection(one, other);
    const finer = both.length > 0 && resolution === 'finer';
    return [{ candidates: finer ? both : union(one, other), number }];
  });
}

/** So many birds by the shares of one record. */
function asNamedBy(flock: Flock, named: readonly NamedBirds[], group: CellGroup): NamedBirds[] {
  const parts = flock.parts.filter(({ candidates }) => isIn(group, candidates));
  const whole = parts.reduce((sum, { number }) => sum + number, 0);
  if (whole === 0) return [...named];
  const birds = named.reduce((sum, { number }) => sum + number, 0);
  return parts.map(({ candidates, number }) => ({ candidates, number: (birds * number) / whole }));
}
