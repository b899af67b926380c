import type { Cell, Group, Pairing, PairingFlow } from '../../../server/core/model/result.js';

/** What one observer counted: taxon → birds. */
export type Counted = Readonly<Record<string, number>>;

/**
 * A cell with the given counts, compared two by two: equal taxa are paired as agreed, then the first
 * left-over birds of a group as identified differently, the rest as seen by one only.
 */
export function aCell(
  id: string,
  counts: Readonly<Record<string, Counted>>,
  groups: readonly (readonly string[])[],
  changes: Partial<Cell> = {},
): Cell {
  const observers = Object.keys(counts).sort();
  return {
    id,
    place: [id],
    window: 'w1',
    layer: 'using',
    tallies: observers.map((observer) => ({
      tally: `t-${observer}`,
      observer,
      total: Object.values(counts[observer] ?? {}).reduce((total, birds) => total + birds, 0),
      coverage: 1,
      counted: true,
      lines: [],
    })),
    pairings: observers.flatMap((a, index) =>
      observers
        .slice(index + 1)
        .map((b) => pairingOf(a, b, counts[a] ?? {}, counts[b] ?? {}, groups)),
    ),
    bounds: [],
    feasible: true,
    birdsInConflict: 0,
    witness: null,
    groups: groups.map((taxa, index) => aGroup(`g${index + 1}`, taxa, counts)),
    ...changes,
  };
}

/** `Genus a/b` is either of two species; any other name is one. */
function candidatesOf(taxon: string): string[] {
  const [genus = '', species = ''] = taxon.split(' ');
  return species.includes('/') ? species.split('/').map((each) => `${genus} ${each}`) : [taxon];
}

function aGroup(
  id: string,
  taxa: readonly string[],
  counts: Readonly<Record<string, Counted>>,
): Group {
  const none = {
    number: 0,
    low: 0,
    high: 0,
    q: null,
    tau2: null,
    tau2PauleMandel: null,
    i2: null,
    predicted: null,
  };
  return {
    id,
    identifications: taxa.map(candidatesOf),
    taxa: [...taxa].sort(),
    totals: Object.keys(counts)
      .sort()
      .map((observer) => ({
        observer,
        number: taxa.reduce((total, taxon) => total + (counts[observer]?.[taxon] ?? 0), 0),
        stated: true,
      })),
    consensus: { rule: 'mean', basis: 'none', ...none, byRule: {}, observers: [] },
    basis: [],
    lines: [],
  };
}

function pairingOf(
  a: string,
  b: string,
  byA: Counted,
  byB: Counted,
  groups: readonly (readonly string[])[],
): Pairing {
  const flows = groups.flatMap((taxa) => flowsOf(taxa, byA, byB));
  const birds = (kind: PairingFlow['kind']): number =>
    flows.filter((flow) => flow.kind === kind).reduce((total, { number }) => total + number, 0);
  return {
    a,
    b,
    agreed: birds('agreed'),
    compatible: birds('compatible'),
    differently: birds('differently'),
    onlyA: birds('only-a'),
    onlyB: birds('only-b'),
    outsideScopeA: 0,
    outsideScopeB: 0,
    independent: true,
    complete: true,
    flows,
  };
}

function flowsOf(taxa: readonly string[], byA: Counted, byB: Counted): PairingFlow[] {
  const flows: PairingFlow[] = [];
  const add = (kind: PairingFlow['kind'], a: string | null, b: string | null, n: number): void => {
    if (n > 0) flows.push({ kind, a, b, number: n });
  };
  const left = taxa.map((taxon) => {
    const agreed = Math.min(byA[taxon] ?? 0, byB[taxon] ?? 0);
    add('agreed', taxon, taxon, agreed);
    return { taxon, a: (byA[taxon] ?? 0) - agreed, b: (byB[taxon] ?? 0) - agreed };
  });
  for (const one of left) {
    for (const other of left) {
      const paired = Math.min(one.a, other.b);
      add('differently', one.taxon, other.taxon, paired);
      one.a -= paired;
      other.b -= paired;
    }
  }
  for (const { taxon, a, b } of left) {
    add('only-a', taxon, null, a);
    add('only-b', null, taxon, b);
  }
  return flows;
}
