import { minCostFlow } from '../math/min-cost-flow.js';
import { proportionalFit } from '../math/proportional-fit.js';
import {
  areLookAlikes,
  coarseness,
  keyOf,
  overlaps,
  type CandidateSet,
  type LookAlikes,
} from '../taxa/candidate-set.js';
import { usableEdges } from './usable-edges.js';

/** So many birds of one identification; an observer's stock has each candidate set once. */
export interface Stock {
  readonly candidates: CandidateSet;
  /** Whole birds, 0 or more. */
  readonly number: number;
}

export type FlowKind = 'agreed' | 'compatible' | 'differently' | 'only-a' | 'only-b';

/** Birds of `a` taken for birds of `b`; the side that has none is `null`. */
export interface BalanceFlow {
  readonly kind: FlowKind;
  readonly a: CandidateSet | null;
  readonly b: CandidateSet | null;
  /** Over 0; fractional where several pairings are equally good. */
  readonly number: number;
}

export interface Balance {
  readonly agreed: number;
  readonly compatible: number;
  readonly differently: number;
  readonly onlyA: number;
  readonly onlyB: number;
  readonly flows: readonly BalanceFlow[];
}

/**
 * Pairs one observer's birds with another's, as method section 3.1 says: most of the same
 * candidate set; then most that share a species; then most look-alikes; then least coarseness; and
 * among all pairings that are as good, the proportional one. The five totals are whole and unique.
 *
 * The first step is a minimum per candidate set. The next three are one minimum-cost flow over
 * aggregated identifications with costs in lexicographic order; the last is iterative proportional
 * fitting on the edges that some best pairing uses. The split into agreement of quantity and of
 * category follows Pontius & Millones 2011 (Int. J. Remote Sensing 32:4407).
 *
 * @example
 * pairingBalance(
 *   [{ candidates: ['Aythya affinis'], number: 30 }],
 *   [{ candidates: ['Aythya affinis', 'Aythya marila'], number: 20 }],
 *   new Map(),
 * ) // compatible 20, onlyA 10
 */
export function pairingBalance(
  stockA: readonly Stock[],
  stockB: readonly Stock[],
  lookAlikes: LookAlikes,
): Balance {
  const a = sorted(stockA);
  const b = sorted(stockB);
  const numberOfB = new Map(b.map((stock) => [keyOf(stock.candidates), stock.number]));
  const numberOfA = new Map(a.map((stock) => [keyOf(stock.candidates), stock.number]));
  const sameAs = (stock: Stock, other: ReadonlyMap<string, number>): number =>
    Math.min(stock.number, other.get(keyOf(stock.candidates)) ?? 0);

  const agreedFlows = a
    .map((stock) => flow('agreed', stock.candidates, stock.candidates, sameAs(stock, numberOfB)))
    .filter((each) => each.number > 0);
  const restA = a.map((stock) => ({ ...stock, number: stock.number - sameAs(stock, numberOfB) }));
  const restB = b.map((stock) => ({ ...stock, number: stock.number - sameAs(stock, numberOfA) }));
  const rest = pairTheRest(
    restA.filter((stock) => stock.number > 0),
    restB.filter((stock) => stock.number > 0),
    lookAlikes,
  );
  return {
    agreed: agreedFlows.reduce((sum, each) => sum + each.number, 0),
    ...rest,
    flows: [...agreedFlows, ...rest.flows],
  };
}

type Rest = Omit<Balance, 'agreed'>;

/**
 * Pairs the records that two observers made of one flock so that fewest birds stand under different
 * names: as the balance does, but that birds of the same set have no precedence over birds whose sets
 * share a species. So `Greater 54, pair 40` and `pair 53, Lesser 39` fit without a bird named
 * otherwise, where the balance pairs the pair with the pair first. Its `differently` is the number of
 * birds that were named apart however the birds are paired.
 */
export function leastApart(
  stockA: readonly Stock[],
  stockB: readonly Stock[],
  lookAlikes: LookAlikes,
): Rest {
  return pairTheRest(sorted(stockA), sorted(stockB), lookAlikes);
}

function pairTheRest(a: readonly Stock[], b: readonly Stock[], lookAlikes: LookAlikes): Rest {
  const edges: { i: number; j: number; kind: 'compatible' | 'differently'; apart: number }[] = [];
  a.forEach((one, i) => {
    b.forEach((other, j) => {
      if (overlaps(one.candidates, other.candidates)) {
        edges.push({
          i,
          j,
          kind: 'compatible',
          apart: coarseness(one.candidates, other.candidates),
        });
      } else if (areLookAlikes(one.candidates, other.candidates, lookAlikes)) {
        edges.push({ i, j, kind: 'differently', apart: 0 });
      }
    });
  });
  // A pairing is best exactly when no cycle of changes improves it, and a cycle changes each edge
  // by one unit of flow. So a lexicographic order holds as soon as one step of a level outweighs
  // all that a whole cycle can change in the levels below it; bird numbers do not enter.
  const nodes = a.length + b.length + 2;
  const mostApart = edges.reduce((most, edge) => Math.max(most, edge.apart), 0);
  const differentlyWorth = nodes * mostApart + 1;
  const compatibleWorth = nodes * (differentlyWorth + mostApart) + 1;
  const cost = (edge: (typeof edges)[number]): number =>
    edge.kind === 'compatible' ? edge.apart - compatibleWorth : -differentlyWorth;

  const source = a.length + b.length;
  const sink = source + 1;
  const sum = (stocks: readonly Stock[]): number =>
    stocks.reduce((running, stock) => running + stock.number, 0);
  const network = [
    ...a.map((stock, i) => ({ from: source, to: i, capacity: stock.number, cost: 0 })),
    ...b.map((stock, j) => ({ from: a.length + j, to: sink, capacity: stock.number, cost: 0 })),
    ...edges.map((edge) => ({
      from: edge.i,
      to: a.length + edge.j,
      capacity: Math.min(a[edge.i]?.number ?? 0, b[edge.j]?.number ?? 0),
      cost: cost(edge),
    })),
  ];
  const best = minCostFlow({ nodes, edges: network, source, sink, stop: 'while-negative' });
  const flowOn = (index: number): number => best.flow[index] ?? 0;
  const totalOf = (kind: 'compatible' | 'differently'): number =>
    edges.reduce(
      (running, edge, index) =>
        edge.kind === kind ? running + flowOn(a.length + b.length + index) : running,
      0,
    );
  const compatible = totalOf('compatible');
  const differently = totalOf('differently');
  const onlyA = sum(a) - compatible - differently;
  const onlyB = sum(b) - compatible - differently;

  // Any table on the usable cells with these sums is as good a pairing; the last row and column
  // hold the birds that are left over.
  const usable = usableEdges({ nodes, edges: network, flow: best.flow, source, sink });
  const cells: [number, number][] = [];
  edges.forEach((edge, index) => {
    if (usable.has(a.length + b.length + index)) cells.push([edge.i, edge.j]);
  });
  const paired = cells.length;
  a.forEach((_, i) => {
    if (onlyA > 0 && usable.canBeSpared(i)) cells.push([i, b.length]);
  });
  const pairedOrOnlyA = cells.length;
  b.forEach((_, j) => {
    if (onlyB > 0 && usable.canBeSpared(a.length + j)) cells.push([a.length, j]);
  });
  const values = proportionalFit(
    [...a.map((stock) => stock.number), onlyB],
    [...b.map((stock) => stock.number), onlyA],
    cells,
  );
  const flows = cells.map(([i, j], index): BalanceFlow => {
    const one = a[i]?.candidates ?? null;
    const other = b[j]?.candidates ?? null;
    const number = tidy(values[index] ?? 0);
    if (index >= pairedOrOnlyA) return flow('only-b', null, other, number);
    if (index >= paired) return flow('only-a', one, null, number);
    const kind =
      one !== null && other !== null && overlaps(one, other) ? 'compatible' : 'differently';
    return flow(kind, one, other, number);
  });
  return { compatible, differently, onlyA, onlyB, flows: flows.filter((each) => each.number > 0) };
}

function flow(
  kind: FlowKind,
  a: CandidateSet | null,
  b: CandidateSet | null,
  number: number,
): BalanceFlow {
  return { kind, a, b, number };
}

function sorted(stock: readonly Stock[]): Stock[] {
  return stock
    .filter((each) => each.number > 0)
    .sort((one, other) => (keyOf(one.candidates) < keyOf(other.candidates) ? -1 : 1));
}

/** Fitting leaves 19.999999999998: a millionth of a bird is no bird. */
function tidy(number: number): number {
  return Math.round(number * 1e6) / 1e6;
}
