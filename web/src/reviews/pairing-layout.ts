/** What was paired with what, as the pairing balance gives it. */
export interface Flow {
  readonly kind: string;
  readonly a?: string | null | undefined;
  readonly b?: string | null | undefined;
  readonly number: number;
}

export const FLOW_KINDS = ['agreed', 'compatible', 'differently', 'only-a', 'only-b'] as const;
export type FlowKind = (typeof FLOW_KINDS)[number];

/** One taxon of one observer: a piece of the bar. */
export interface Node {
  readonly taxon: string;
  readonly number: number;
  /** Upper edge and height in pixels. */
  readonly top: number;
  readonly height: number;
}

/** Birds that run from a piece of the left bar to a piece of the right one. */
export interface Ribbon {
  readonly kind: FlowKind;
  readonly a: string | null;
  readonly b: string | null;
  readonly number: number;
  readonly leftTop: number | null;
  readonly rightTop: number | null;
  readonly height: number;
}

export interface PairingLayout {
  readonly left: readonly Node[];
  readonly right: readonly Node[];
  readonly ribbons: readonly Ribbon[];
  readonly height: number;
}

const barHeight = 260;
const slotGap = 8;

function kindOf(text: string): FlowKind | null {
  return FLOW_KINDS.find((kind) => kind === text) ?? null;
}

/**
 * Where everything of a pairing stands. Both bars have one scale, so that equal birds are equal
 * lengths; each piece has at least the room of its label. Taxa come in the same order on both
 * sides, most birds first, so that agreed birds run straight across.
 *
 * @param labelHeight room for one label, in pixels.
 */
export function layOutPairing(flows: readonly Flow[], labelHeight: number): PairingLayout {
  const known = flows.flatMap((flow) => {
    const kind = kindOf(flow.kind);
    return kind === null || flow.number <= 0
      ? []
      : [{ kind, a: flow.a ?? null, b: flow.b ?? null, number: flow.number }];
  });
  const totals = { a: sumBy(known, 'a'), b: sumBy(known, 'b') };
  const taxa = [...new Set([...totals.a.keys(), ...totals.b.keys()])].sort((one, other) => {
    const most = (taxon: string): number =>
      Math.max(totals.a.get(taxon) ?? 0, totals.b.get(taxon) ?? 0);
    return most(other) - most(one) || (one < other ? -1 : 1);
  });
  const largest = Math.max(total(totals.a), total(totals.b), 1);
  const scale = barHeight / largest;
  const left = stack(taxa, totals.a, scale, labelHeight);
  const right = stack(taxa, totals.b, scale, labelHeight);

  const ordered = [...known].sort(
    (one, other) =>
      taxa.indexOf(one.a ?? one.b ?? '') - taxa.indexOf(other.a ?? other.b ?? '') ||
      FLOW_KINDS.indexOf(one.kind) - FLOW_KINDS.indexOf(other.kind) ||
      taxa.indexOf(one.b ?? '') - taxa.indexOf(other.b ?? ''),
  );
  const used = { a: new Map<string, number>(), b: new Map<string, number>() };
  const take = (
    side: 'a' | 'b',
    nodes: readonly Node[],
    taxon: string | null,
    height: number,
  ): number | null => {
    const node = nodes.find((one) => one.taxon === taxon);
    if (node === undefined) return null;
    const before = used[side].get(node.taxon) ?? 0;
    used[side].set(node.taxon, before + height);
    return node.top + before;
  };
  const ribbons = ordered.map((flow) => {
    const height = flow.number * scale;
    return {
      ...flow,
      leftTop: take('a', left, flow.a, height),
      rightTop: take('b', right, flow.b, height),
      height,
    };
  });
  const bottom = (nodes: readonly Node[]): number => {
    const last = nodes.at(-1);
    return last === undefined ? 0 : last.top + Math.max(last.height, labelHeight);
  };
  return { left, right, ribbons, height: Math.max(bottom(left), bottom(right)) + slotGap };
}

function sumBy(
  flows: readonly {
    readonly a: string | null;
    readonly b: string | null;
    readonly number: number;
  }[],
  side: 'a' | 'b',
): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  for (const flow of flows) {
    const taxon = flow[side];
    if (taxon !== null) sums.set(taxon, (sums.get(taxon) ?? 0) + flow.number);
  }
  return sums;
}

function total(sums: ReadonlyMap<string, number>): number {
  return [...sums.values()].reduce((sum, number) => sum + number, 0);
}

function stack(
  taxa: readonly string[],
  sums: ReadonlyMap<string, number>,
  scale: number,
  labelHeight: number,
): readonly Node[] {
  const nodes: Node[] = [];
  let top = 0;
  for (const taxon of taxa) {
    const number = sums.get(taxon);
    if (number === undefined) continue;
    const height = Math.max(number * scale, 1.5);
    nodes.push({ taxon, number, top, height });
    top += Math.max(height, labelHeight) + slotGap;
  }
  return nodes;
}
