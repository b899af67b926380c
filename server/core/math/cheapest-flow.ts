import type { FlowAnswer, FlowProblem } from './min-cost-flow.js';

/**
 * Whether a flow is legal and surely the cheapest, by complementary slackness (Ahuja, Magnanti &
 * Orlin 1993, *Network Flows*, theorem 9.4): with these potentials every edge with room left has a
 * reduced cost (cost + potential at its start − potential at its end) of at least 0 and every edge
 * with units on it one of at most 0, so no other flow of this size costs less. That the size is right
 * too: with `while-negative`, one more unit would cost at least 0 and the last saved at least 0, as if
 * an edge without cost led back from the sink; with `max-flow`, no way with room leads to the sink.
 *
 * It looks at each edge once or twice, and shares no step with the search that found the flow.
 */
export function isCheapestFlow(
  problem: FlowProblem,
  { flow, total, cost, potentials }: FlowAnswer,
): boolean {
  const { edges, source, sink, stop } = problem;
  if (flow.length !== edges.length || potentials.length !== problem.nodes) return false;
  if (!isLegal(problem, flow, total)) return false;
  const spent = edges.reduce((sum, edge, index) => sum + edge.cost * (flow[index] ?? 0), 0);
  if (spent !== cost) return false;
  const price = (node: number): number => potentials[node] ?? NaN;
  const isTight = edges.every((edge, index) => {
    const units = flow[index] ?? 0;
    const reduced = edge.cost + price(edge.from) - price(edge.to);
    return (reduced >= 0 || units === edge.capacity) && (reduced <= 0 || units === 0);
  });
  if (!isTight) return false;
  if (stop === 'max-flow') return !hasWay(problem, flow);
  const nextUnit = price(sink) - price(source);
  return nextUnit >= 0 && (nextUnit <= 0 || total === 0);
}

/** Whole units within capacity; what comes into a node leaves it, but for source and sink. */
function isLegal(
  { nodes, edges, source, sink }: FlowProblem,
  flow: readonly number[],
  total: number,
): boolean {
  const surplus = Array.from({ length: nodes }, () => 0);
  surplus[source] = total;
  surplus[sink] = 0 - total;
  const within = edges.every((edge, index) => {
    const units = flow[index] ?? NaN;
    surplus[edge.from] = (surplus[edge.from] ?? 0) - units;
    surplus[edge.to] = (surplus[edge.to] ?? 0) + units;
    return Number.isSafeInteger(units) && units >= 0 && units <= edge.capacity;
  });
  return within && total >= 0 && surplus.every((units) => units === 0);
}

/** Whether one more unit can get from the source to the sink, whatever it costs. */
function hasWay({ nodes, edges, source, sink }: FlowProblem, flow: readonly number[]): boolean {
  const onward: number[][] = Array.from({ length: nodes }, () => []);
  edges.forEach(({ from, to, capacity }, index) => {
    const units = flow[index] ?? 0;
    if (units < capacity) onward[from]?.push(to);
    if (units > 0) onward[to]?.push(from);
  });
  const reached = new Set([source]);
  // The set grows while it is read.
  for (const node of reached) for (const next of onward[node] ?? []) reached.add(next);
  return reached.has(sink);
}
