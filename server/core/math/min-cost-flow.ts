import { NearestFirst } from './nearest-first.js';

/** One directed edge. Capacity is a whole number of units; cost is per unit, whole, may be negative. */
export interface FlowEdge {
  readonly from: number;
  readonly to: number;
  readonly capacity: number;
  readonly cost: number;
}

export interface FlowProblem {
  /** Nodes are 0 to `nodes` − 1. */
  readonly nodes: number;
  readonly edges: readonly FlowEdge[];
  readonly source: number;
  readonly sink: number;
  /**
   * `max-flow`: the cheapest among the greatest flows. `while-negative`: the cheapest of all flows,
   * however small: units are sent only while the next one lowers the cost.
   */
  readonly stop: 'max-flow' | 'while-negative';
}

export interface FlowAnswer {
  /** Units on each edge, in the order of the problem's edges. */
  readonly flow: readonly number[];
  /** Units that reach the sink. */
  readonly total: number;
  readonly cost: number;
  /**
   * A price of each node, 0 at the source, that proves the flow the cheapest: no edge with room left
   * is worth more than it costs, none with units on it less (`isCheapestFlow` checks it).
   */
  readonly potentials: readonly number[];
}

/**
 * Minimum-cost flow in whole units, by successive shortest paths: node potentials that leave no edge
 * a negative reduced cost, then Dijkstra with a heap, each path filled to its bottleneck (Ahuja,
 * Magnanti & Orlin 1993, *Network Flows*, sections 9.7 and 9.8). A search ends at the sink; nodes
 * farther off keep their potentials.
 *
 * With `while-negative` it stops at the first path that no longer lowers the cost; path costs never
 * fall from one path to the next, so that is the cheapest flow of any size. The number of paths
 * depends on the costs and the shape of the graph, not on the size of the capacities alone.
 * Ties go to the lowest node, then to the edge listed first, so that the answer is always the same.
 *
 * @throws RangeError where a node, capacity or cost is not usable, or where a cycle with capacity
 * has negative cost (the method needs there to be none).
 */
export function minCostFlow(problem: FlowProblem): FlowAnswer {
  check(problem);
  const network = residualNetwork(problem);
  const potential = firstPotentials(network);
  const search = searchOver(network, potential, problem);
  let total = 0;
  while (findPath(search)) total += fillPath(search);
  // Arc 2i is edge i, arc 2i + 1 its way back: what can be sent back is what was sent.
  const flow = problem.edges.map((_, edge) => network.room[2 * edge + 1] ?? 0);
  const cost = problem.edges.reduce((sum, edge, index) => sum + edge.cost * (flow[index] ?? 0), 0);
  const atSource = potential[problem.source] ?? 0;
  return { flow, total, cost, potentials: Array.from(potential, (value) => value - atSource) };
}

/** Two arcs an edge: forward with its capacity, back with what has been sent. */
interface ResidualNetwork {
  readonly nodes: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly cost: Float64Array;
  readonly room: Float64Array;
  /** Arcs that leave node n, in the order of the edges: `leaving[first[n]]` to before `first[n + 1]`. */
  readonly leaving: Int32Array;
  readonly first: Int32Array;
}

function check({ nodes, edges, source, sink }: FlowProblem): void {
  const isNode = (node: number) => Number.isInteger(node) && node >= 0 && node < nodes;
  if (!isNode(source) || !isNode(sink) || source === sink) {
    throw new RangeError('minCostFlow needs a source and a sink that are two of its nodes');
  }
  edges.forEach((edge, index) => {
    if (!isNode(edge.from) || !isNode(edge.to)) {
      throw new RangeError(`minCostFlow: edge ${index} needs ends from 0 to ${nodes - 1}`);
    }
    if (!Number.isSafeInteger(edge.capacity) || edge.capacity < 0) {
      throw new RangeError(`minCostFlow: edge ${index} needs a whole capacity of at least 0`);
    }
    if (!Number.isSafeInteger(edge.cost)) {
      throw new RangeError(`minCostFlow: edge ${index} needs a whole cost`);
    }
  });
}

function residualNetwork({ nodes, edges }: FlowProblem): ResidualNetwork {
  const arcs = 2 * edges.length;
  const [from, to] = [new Int32Array(arcs), new Int32Array(arcs)];
  const [cost, room] = [new Float64Array(arcs), new Float64Array(arcs)];
  const first = new Int32Array(nodes + 1);
  edges.forEach((edge, index) => {
    const [out, back] = [2 * index, 2 * index + 1];
    from[out] = to[back] = edge.from;
    to[out] = from[back] = edge.to;
    cost[out] = edge.cost;
    cost[back] = 0 - edge.cost;
    room[out] = edge.capacity;
  });
  for (const node of from) first[node + 1] = (first[node + 1] ?? 0) + 1;
  for (let node = 0; node < nodes; node += 1) {
    first[node + 1] = (first[node + 1] ?? 0) + (first[node] ?? 0);
  }
  const leaving = new Int32Array(arcs);
  const next = first.slice();
  from.forEach((node, arc) => {
    const place = next[node] ?? 0;
    leaving[place] = arc;
    next[node] = place + 1;
  });
  return { nodes, from, to, cost, room, leaving, first };
}

/**
 * What the way on from each node costs at least, 0 where it saves nothing: Bellman–Ford backwards from
 * an extra node that every node reaches at cost 0. Its negative is a potential under which no arc with
 * room has negative reduced cost, and under which a search sees at the source which ways are worth
 * most, so that it looks at few others. Nodes come in the order of the edges between them as far as
 * there is one, so that a graph without cycles, such as one ordered in time, takes one round.
 */
function firstPotentials(network: ResidualNetwork): Float64Array {
  const { nodes, to, cost, room, leaving, first } = network;
  const onward = new Float64Array(nodes);
  const order = forwardOrder(network).reverse();
  for (let round = 0; round <= nodes; round += 1) {
    let changed = false;
    for (const node of order) {
      let least = onward[node] ?? 0;
      for (let place = first[node] ?? 0; place < (first[node + 1] ?? 0); place += 1) {
        const arc = leaving[place] ?? 0;
        if (room[arc] === 0) continue;
        least = Math.min(least, (cost[arc] ?? 0) + (onward[to[arc] ?? 0] ?? 0));
      }
      if (least < (onward[node] ?? 0)) {
        onward[node] = least;
        changed = true;
      }
    }
    if (!changed) return onward.map((value) => 0 - value);
  }
  throw new RangeError('minCostFlow needs edges without a cycle of negative cost');
}

/** Nodes so that arcs with room lead onward, and after those the ones on or behind a cycle. */
function forwardOrder({ nodes, to, room, leaving, first }: ResidualNetwork): number[] {
  const before = new Int32Array(nodes);
  to.forEach((node, arc) => {
    if (room[arc] !== 0) before[node] = (before[node] ?? 0) + 1;
  });
  const order: number[] = [];
  before.forEach((arcs, node) => {
    if (arcs === 0) order.push(node);
  });
  // The list grows while it is read.
  for (const node of order) {
    for (let place = first[node] ?? 0; place < (first[node + 1] ?? 0); place += 1) {
      const arc = leaving[place] ?? 0;
      if (room[arc] === 0) continue;
      const next = to[arc] ?? 0;
      before[next] = (before[next] ?? 0) - 1;
      if (before[next] === 0) order.push(next);
    }
  }
  before.forEach((arcs, node) => {
    if (arcs > 0) order.push(node);
  });
  return order;
}

/** What the search for one path leaves to the next: its arrays, all distances infinite between two. */
interface PathSearch {
  readonly network: ResidualNetwork;
  readonly potential: Float64Array;
  readonly problem: FlowProblem;
  readonly distance: Float64Array;
  readonly arrivedBy: Int32Array;
  readonly waiting: NearestFirst;
}

function searchOver(
  network: ResidualNetwork,
  potential: Float64Array,
  problem: FlowProblem,
): PathSearch {
  const distance = new Float64Array(network.nodes).fill(Infinity);
  const arrivedBy = new Int32Array(network.nodes).fill(-1);
  const waiting = new NearestFirst(distance);
  return { network, potential, problem, distance, arrivedBy, waiting };
}

/**
 * Dijkstra on reduced costs over arcs with room, as far as the sink or as the path is still worth
 * having; then moves the potentials so that the path found has reduced costs of 0.
 *
 * @returns whether there is a path to send units along; `arrivedBy` has its arcs
 */
function findPath({ network, potential, problem, distance, arrivedBy, waiting }: PathSearch) {
  const { to, cost, room, leaving, first } = network;
  const { source, sink, stop } = problem;
  // A path this long by reduced cost costs nothing in all.
  const free = (potential[source] ?? 0) - (potential[sink] ?? 0);
  let limit = stop === 'while-negative' ? free : Infinity;
  const touched = [source];
  const settled: number[] = [];
  let found = false;
  distance[source] = 0;
  if (limit > 0) waiting.moveUp(source);
  for (let node = waiting.take(); node !== -1; node = waiting.take()) {
    if (node === sink) {
      found = true;
      break;
    }
    settled.push(node);
    const [far, price] = [distance[node] ?? 0, potential[node] ?? 0];
    for (let place = first[node] ?? 0; place < (first[node + 1] ?? 0); place += 1) {
      const arc = leaving[place] ?? 0;
      if (room[arc] === 0) continue;
      const next = to[arc] ?? 0;
      const through = far + (cost[arc] ?? 0) + price - (potential[next] ?? 0);
      const known = distance[next] ?? 0;
      if (through >= known || through >= limit) continue;
      if (known === Infinity) touched.push(next);
      distance[next] = through;
      arrivedBy[next] = arc;
      waiting.moveUp(next);
      if (next === sink) limit = through;
    }
  }
  waiting.clear();
  // Nodes nearer than the limit come down by what they lack to it: all reduced costs stay at least 0.
  if (limit > 0 && limit < Infinity) {
    for (const node of settled) {
      potential[node] = (potential[node] ?? 0) + (distance[node] ?? 0) - limit;
    }
  }
  for (const node of touched) distance[node] = Infinity;
  return found;
}

/** Sends as much as the path to the sink has room for; returns how much. */
function fillPath({ network, arrivedBy, problem }: PathSearch): number {
  const { from, room } = network;
  const path: number[] = [];
  for (let node = problem.sink; node !== problem.source;) {
    const arc = arrivedBy[node] ?? 0;
    path.push(arc);
    node = from[arc] ?? 0;
  }
  const units = path.reduce((least, arc) => Math.min(least, room[arc] ?? 0), Infinity);
  for (const arc of path) {
    room[arc] = (room[arc] ?? 0) - units;
    // Arcs come in pairs, 2i and 2i + 1: the partner differs in the last bit.
    room[arc ^ 1] = (room[arc ^ 1] ?? 0) + units;
  }
  return units;
}
