import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isCheapestFlow } from '../../../server/core/math/cheapest-flow.js';
import {
  minCostFlow,
  type FlowEdge,
  type FlowProblem,
} from '../../../server/core/math/min-cost-flow.js';
import { randomFromState } from '../../../server/core/math/seeded-random.js';

/** Every whole flow on a tiny graph, tried one by one. */
function cheapestByTrying({ nodes, edges, source, sink, stop }: FlowProblem) {
  let best = { total: 0, cost: 0 };
  const flow = edges.map(() => 0);
  const visit = (edge: number): void => {
    const current = edges[edge];
    if (current === undefined) {
      const surplus = Array.from({ length: nodes }, () => 0);
      edges.forEach(({ from, to }, index) => {
        surplus[from] = (surplus[from] ?? 0) - (flow[index] ?? 0);
        surplus[to] = (surplus[to] ?? 0) + (flow[index] ?? 0);
      });
      if (surplus.some((value, node) => value !== 0 && node !== source && node !== sink)) return;
      const total = surplus[sink] ?? 0;
      if (total < 0) return;
      const cost = edges.reduce((sum, { cost }, index) => sum + cost * (flow[index] ?? 0), 0);
      const better =
        stop === 'max-flow'
          ? total > best.total || (total === best.total && cost < best.cost)
          : cost < best.cost;
      if (better) best = { total, cost };
      return;
    }
    for (let units = 0; units <= current.capacity; units += 1) {
      flow[edge] = units;
      visit(edge + 1);
    }
  };
  visit(0);
  return best;
}

/** Graphs whose edges run from lower to higher nodes: costs of either sign, never a cycle. */
const forwardGraph = fc.integer({ min: 2, max: 5 }).chain((nodes) =>
  fc.record({
    nodes: fc.constant(nodes),
    edges: fc.array(
      fc
        .record({
          ends: fc.uniqueArray(fc.nat(nodes - 1), { minLength: 2, maxLength: 2 }),
          capacity: fc.nat(3),
          cost: fc.integer({ min: -5, max: 5 }),
        })
        .map(({ ends, capacity, cost }) => ({
          from: Math.min(...ends),
          to: Math.max(...ends),
          capacity,
          cost,
        })),
      { maxLength: 6 },
    ),
    source: fc.constant(0),
    sink: fc.constant(nodes - 1),
    stop: fc.constantFrom('max-flow' as const, 'while-negative' as const),
  }),
);

/** Graphs with cycles in any direction, costs not negative. */
const anyGraph = fc.record({
  nodes: fc.constant(4),
  edges: fc.array(
    fc
      .record({
        ends: fc.uniqueArray(fc.nat(3), { minLength: 2, maxLength: 2 }),
        capacity: fc.nat(2),
        cost: fc.nat(5),
      })
      .map(({ ends, capacity, cost }) => ({
        from: ends[0] ?? 0,
        to: ends[1] ?? 1,
        capacity,
        cost,
      })),
    { maxLength: 7 },
  ),
  source: fc.constant(0),
  sink: fc.constant(3),
  stop: fc.constant('max-flow' as const),
});

function expectLegalFlow(problem: FlowProblem, flow: readonly number[], total: number) {
  const surplus = Array.from({ length: problem.nodes }, () => 0);
  problem.edges.forEach(({ from, to, capacity }, index) => {
    const units = flow[index] ?? NaN;
    expect(Number.isInteger(units) && units >= 0 && units <= capacity).toBe(true);
    surplus[from] = (surplus[from] ?? 0) - units;
    surplus[to] = (surplus[to] ?? 0) + units;
  });
  surplus.forEach((value, node) => {
    const due = node === problem.sink ? total : node === problem.source ? 0 - total : 0;
    expect(value - due).toBe(0);
  });
}

describe('minCostFlow', () => {
  it('finds what trying every flow finds, with costs of either sign', () => {
    fc.assert(
      fc.property(forwardGraph, (problem) => {
        const answer = minCostFlow(problem);
        const best = cheapestByTrying(problem);
        expectLegalFlow(problem, answer.flow, answer.total);
        expect(answer.cost).toBe(best.cost);
        if (problem.stop === 'max-flow') expect(answer.total).toBe(best.total);
        expect(isCheapestFlow(problem, answer)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('finds what trying every flow finds, in graphs with cycles', () => {
    fc.assert(
      fc.property(anyGraph, (problem) => {
        const answer = minCostFlow(problem);
        expectLegalFlow(problem, answer.flow, answer.total);
        expect({ total: answer.total, cost: answer.cost }).toEqual(cheapestByTrying(problem));
        expect(isCheapestFlow(problem, answer)).toBe(true);
      }),
      { numRuns: 200 },
    );
  });

  it('takes back an earlier choice when a later path needs it', () => {
    const edges: FlowEdge[] = [
      { from: 0, to: 1, capacity: 1, cost: 1 },
      { from: 0, to: 2, capacity: 1, cost: 5 },
      { from: 1, to: 2, capacity: 1, cost: 1 },
      { from: 1, to: 3, capacity: 1, cost: 5 },
      { from: 2, to: 3, capacity: 1, cost: 1 },
    ];
    const answer = minCostFlow({ nodes: 4, edges, source: 0, sink: 3, stop: 'max-flow' });
    expect(answer).toMatchObject({ flow: [1, 1, 0, 1, 1], total: 2, cost: 12 });
  });

  it('stops before a path that costs something', () => {
    const edges: FlowEdge[] = [
      { from: 0, to: 1, capacity: 4, cost: -3 },
      { from: 0, to: 1, capacity: 4, cost: 0 },
      { from: 0, to: 1, capacity: 4, cost: 2 },
    ];
    const answer = minCostFlow({ nodes: 2, edges, source: 0, sink: 1, stop: 'while-negative' });
    expect(answer).toMatchObject({ flow: [4, 0, 0], total: 4, cost: -12 });
  });

  it('fills paths, not single units: a million birds take no longer than one', () => {
    const sides = 60;
    const edges: FlowEdge[] = [];
    for (let left = 0; left < sides; left += 1) {
      edges.push({ from: 0, to: 1 + left, capacity: 1_000_000, cost: 0 });
      edges.push({ from: 1 + sides + left, to: 2 * sides + 1, capacity: 1_000_000, cost: 0 });
      for (let right = 0; right < sides; right += 1) {
        const cost = 0 - ((left * 31 + right * 17) % 97);
        edges.push({ from: 1 + left, to: 1 + sides + right, capacity: 1_000_000, cost });
      }
    }
    const started = performance.now();
    const answer = minCostFlow({
      nodes: 2 * sides + 2,
      edges,
      source: 0,
      sink: 2 * sides + 1,
      stop: 'max-flow',
    });
    expect(answer.total).toBe(60_000_000);
    expect(performance.now() - started).toBeLessThan(5_000);
  });

  it('has a proof for a network of 4,000 nodes and 60,000 edges', () => {
    const random = randomFromState([1, 2, 3, 4]);
    const upTo = (most: number) => random.integer(most);
    const problem: FlowProblem = {
      nodes: 4_000,
      edges: Array.from({ length: 60_000 }, () => ({
        from: upTo(4_000),
        to: upTo(4_000),
        capacity: 1 + upTo(100),
        cost: upTo(1_000),
      })),
      source: 0,
      sink: 3_999,
      stop: 'max-flow',
    };
    const answer = minCostFlow(problem);
    expect(answer.total).toBeGreaterThan(100);
    expect(isCheapestFlow(problem, answer)).toBe(true);
  });

  it('says what it needs', () => {
    const problem = { nodes: 2, source: 0, sink: 1, stop: 'max-flow' as const };
    const edge = (change: Partial<FlowEdge>) => ({
      ...problem,
      edges: [{ from: 0, to: 1, capacity: 1, cost: 1, ...change }],
    });
    expect(() => minCostFlow(edge({ to: 2 }))).toThrow('edge 0 needs ends from 0 to 1');
    expect(() => minCostFlow(edge({ capacity: 0.5 }))).toThrow('edge 0 needs a whole capacity');
    expect(() => minCostFlow(edge({ cost: NaN }))).toThrow('edge 0 needs a whole cost');
    expect(() => minCostFlow({ ...edge({}), sink: 0 })).toThrow('source and a sink');
    const cycle = [
      { from: 0, to: 1, capacity: 1, cost: -1 },
      { from: 1, to: 0, capacity: 1, cost: -1 },
    ];
    expect(() => minCostFlow({ ...problem, edges: cycle })).toThrow('cycle of negative cost');
  });
});

describe('isCheapestFlow', () => {
  const edges: FlowEdge[] = [
    { from: 0, to: 1, capacity: 2, cost: -3 },
    { from: 0, to: 1, capacity: 2, cost: 1 },
  ];
  const problem = { nodes: 2, edges, source: 0, sink: 1 };
  const cheapest = { ...problem, stop: 'while-negative' as const };
  const greatest = { ...problem, stop: 'max-flow' as const };

  it('takes no flow that is dearer, too small or too great, whatever the potentials', () => {
    for (const price of [-4, -3, -1, 0, 1, 2]) {
      const potentials = [0, price];
      const is = (asked: FlowProblem, flow: number[]) => {
        const [total, cost] = [(flow[0] ?? 0) + (flow[1] ?? 0), 0];
        const spent = flow.reduce((sum, units, i) => sum + units * (edges[i]?.cost ?? 0), cost);
        return isCheapestFlow(asked, { flow, total, cost: spent, potentials });
      };
      expect(is(cheapest, [1, 0])).toBe(false);
      expect(is(cheapest, [1, 1])).toBe(false);
      expect(is(cheapest, [2, 1])).toBe(false);
      expect(is(cheapest, [2, 0])).toBe(price === 0);
      expect(is(greatest, [2, 0])).toBe(false);
      expect(is(greatest, [2, 2])).toBe(price >= 1);
    }
  });

  it('takes no flow that breaks a capacity, loses units or has another cost than it says', () => {
    const right = minCostFlow(greatest);
    expect(isCheapestFlow(greatest, right)).toBe(true);
    expect(isCheapestFlow(greatest, { ...right, flow: [3, 2], total: 5, cost: -7 })).toBe(false);
    expect(isCheapestFlow(greatest, { ...right, total: 3 })).toBe(false);
    expect(isCheapestFlow(greatest, { ...right, cost: right.cost - 1 })).toBe(false);
    expect(isCheapestFlow(greatest, { ...right, potentials: [0] })).toBe(false);
  });

  it('takes a dearer flow for none of the cheapest, on any graph with cycles', () => {
    fc.assert(
      fc.property(anyGraph, fc.array(fc.nat(2), { minLength: 7, maxLength: 7 }), (problem, any) => {
        const best = minCostFlow(problem);
        const flow = problem.edges.map((_, index) => any[index] ?? 0);
        const cost = problem.edges.reduce((sum, edge, i) => sum + edge.cost * (flow[i] ?? 0), 0);
        const { total } = best;
        if (cost === best.cost) return;
        expect(isCheapestFlow(problem, { ...best, flow, total, cost })).toBe(false);
      }),
    );
  });
});
