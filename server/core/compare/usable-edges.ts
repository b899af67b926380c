/** A minimum-cost flow and the network it runs in. */
export interface BestFlow {
  readonly nodes: number;
  readonly edges: readonly {
    readonly from: number;
    readonly to: number;
    readonly capacity: number;
    readonly cost: number;
  }[];
  /** Flow per edge, best for these costs without a fixed total. */
  readonly flow: readonly number[];
  readonly source: number;
  readonly sink: number;
}

export interface UsableEdges {
  /** True if some best flow uses the edge. */
  has(edge: number): boolean;
  /** True if some best flow leaves part of the node's birds unpaired. */
  canBeSpared(node: number): boolean;
}

/**
 * Finds which edges some minimum-cost flow uses, given one of them. Two best flows differ by
 * cycles of cost zero in the residual network, so an unused edge can be used exactly when the
 * cheapest way back from its head to its tail costs as much as the edge saves (Ahuja, Magnanti &
 * Orlin 1993, Network Flows, theorem 9.1). All distances by Floyd & Warshall: the networks hold
 * identifications, not birds, and have some tens of nodes.
 */
export function usableEdges(best: BestFlow): UsableEdges {
  const { nodes, edges, flow, source, sink } = best;
  const distance = Array.from({ length: nodes }, (_, from) =>
    Array.from({ length: nodes }, (__, to) => (from === to ? 0 : Infinity)),
  );
  const offer = (from: number, to: number, cost: number): void => {
    const row = distance[from];
    if (row !== undefined && cost < (row[to] ?? Infinity)) row[to] = cost;
  };
  edges.forEach((edge, index) => {
    const used = flow[index] ?? 0;
    if (used < edge.capacity) offer(edge.from, edge.to, edge.cost);
    if (used > 0) offer(edge.to, edge.from, -edge.cost);
  });
  // The total is free, so birds may be taken from the sink back to the source and the other way.
  offer(sink, source, 0);
  offer(source, sink, 0);
  for (let via = 0; via < nodes; via += 1) {
    const onward = distance[via] ?? [];
    for (let from = 0; from < nodes; from += 1) {
      const row = distance[from] ?? [];
      const first = row[via] ?? Infinity;
      if (first === Infinity) continue;
      for (let to = 0; to < nodes; to += 1) {
        const through = first + (onward[to] ?? Infinity);
        if (through < (row[to] ?? Infinity)) row[to] = through;
      }
    }
  }
  const between = (from: number, to: number): number => distance[from]?.[to] ?? Infinity;
  const isUsable = (index: number): boolean => {
    const edge = edges[index];
    if (edge === undefined) return false;
    if ((flow[index] ?? 0) > 0) return true;
    return edge.capacity > 0 && between(edge.to, edge.from) + edge.cost <= 0;
  };
  return {
    has: isUsable,
    canBeSpared(node) {
      const index = edges.findIndex(
        (edge) =>
          (edge.from === source && edge.to === node) || (edge.to === sink && edge.from === node),
      );
      const edge = edges[index];
      if (edge === undefined) return false;
      if ((flow[index] ?? 0) < edge.capacity) return true;
      return between(edge.from, edge.to) - edge.cost <= 0;
    },
  };
}
