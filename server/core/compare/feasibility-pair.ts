import { minCostFlow, type FlowEdge } from '../math/min-cost-flow.js';
import { UnionFind } from '../math/union-find.js';
import type { FeasibilityProblem } from './feasibility-problem.js';

/** Birds of one observer for which another has too little room. */
export interface PairConflict {
  /** Lines of the one, and the least birds that they stand for. */
  readonly lines: readonly number[];
  readonly atLeast: number;
  /** All lines of the other that could hold such birds, and the most that they stand for. */
  readonly room: readonly number[];
  readonly atMost: number;
}

/**
 * The greatest conflict between what one observer has at least and what another has at most, or
 * `null` where the other has room for all of the one's birds. Only lines count whose birds the other
 * must have seen, whatever they were.
 *
 * By Hall's theorem with capacities: the lines on the source's side of the smallest minimum cut of
 * the flow from the one's lines to the other's. Where they fall into parts that share no room, the
 * part that is most birds short. Two tallies fit one truth exactly when neither is in such conflict
 * with the other (Mendelsohn & Dulmage 1958, Canad. J. Math. 10:517: what fits one way and what fits
 * the other way fit together).
 */
export function pairConflict(
  problem: FeasibilityProblem,
  one: number,
  other: number,
): PairConflict | null {
  const demands = problem.lines.flatMap((line, index) =>
    line.observer === one && line.low > 0 && mustBeSeenBy(problem, index, other) ? [index] : [],
  );
  const roomOf = (line: number): number[] => {
    const kinds = problem.kinds.filter((kind) => kind.lines.includes(line));
    return problem.lines.flatMap(({ observer }, index) =>
      observer === other && kinds.some((kind) => kind.lines.includes(index)) ? [index] : [],
    );
  };
  const rooms = new Map(demands.map((line) => [line, roomOf(line)]));
  const short = cutOff(problem, demands, rooms);
  let worst: PairConflict | null = null;
  for (const lines of partsOf(short, rooms)) {
    const room = [...new Set(lines.flatMap((line) => rooms.get(line) ?? []))].sort((a, b) => a - b);
    const atLeast = lines.reduce((sum, line) => sum + (problem.lines[line]?.low ?? 0), 0);
    const atMost = room.reduce((sum, line) => sum + (problem.lines[line]?.high ?? 0), 0);
    const missing = atLeast - atMost;
    if (missing > (worst === null ? 0 : worst.atLeast - worst.atMost)) {
      worst = { lines, atLeast, room, atMost };
    }
  }
  return worst;
}

function mustBeSeenBy({ kinds }: FeasibilityProblem, line: number, observer: number): boolean {
  return kinds.every((kind) => !kind.lines.includes(line) || kind.dueTo.includes(observer));
}

/** The demands that a greatest flow leaves short, and those whose room it fills to leave them short. */
function cutOff(
  { lines }: FeasibilityProblem,
  demands: readonly number[],
  rooms: ReadonlyMap<number, readonly number[]>,
): number[] {
  const all = demands.reduce((sum, line) => sum + (lines[line]?.low ?? 0), 0);
  const source = lines.length;
  const sink = source + 1;
  const edges: FlowEdge[] = [
    ...demands.map((line) => ({
      from: source,
      to: line,
      capacity: lines[line]?.low ?? 0,
      cost: 0,
    })),
    ...[...new Set([...rooms.values()].flat())].map((line) => ({
      from: line,
      to: sink,
      capacity: Math.min(all, lines[line]?.high ?? 0),
      cost: 0,
    })),
    ...demands.flatMap((line) =>
      (rooms.get(line) ?? []).map((room) => ({ from: line, to: room, capacity: all, cost: 0 })),
    ),
  ];
  const { flow } = minCostFlow({ nodes: sink + 1, edges, source, sink, stop: 'max-flow' });
  const reached = new Set([source]);
  for (const node of reached) {
    edges.forEach(({ from, to, capacity }, index) => {
      if (from === node && (flow[index] ?? 0) < capacity) reached.add(to);
      if (to === node && (flow[index] ?? 0) > 0) reached.add(from);
    });
  }
  return demands.filter((line) => reached.has(line));
}

/** Lines that share room, together. */
function partsOf(
  lines: readonly number[],
  rooms: ReadonlyMap<number, readonly number[]>,
): number[][] {
  const parts = new UnionFind(lines.length);
  lines.forEach((line, i) => {
    lines.slice(0, i).forEach((earlier, j) => {
      const shared = rooms.get(earlier) ?? [];
      if ((rooms.get(line) ?? []).some((room) => shared.includes(room))) parts.join(i, j);
    });
  });
  return parts.sets().map((members) => members.flatMap((member) => lines[member] ?? []));
}
