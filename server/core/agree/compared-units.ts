import type { Cell, Pairing, PairingFlow } from '../model/result.js';
import type { Species } from '../model/snapshot.js';
import { taxonName } from '../taxa/taxon-name.js';

/**
 * One group of a cell (or one taxon of it) as two independent observers compared it: the unit that
 * all agreement statistics rest on.
 */
export interface ComparedUnit {
  /** The birds it is about, whoever counted them; units of one cluster are about the same birds. */
  readonly cluster: string;
  readonly cell: string;
  /** The group's id; of one taxon of it, the taxon. */
  readonly group: string;
  /** Observers, a < b. */
  readonly a: string;
  readonly b: string;
  /** Birds of each that the other set out to count too. */
  readonly totalA: number;
  readonly totalB: number;
  /** Pairs of birds with the same candidate set. */
  readonly agreed: number;
  /** Pairs of birds and birds seen by one only, together. */
  readonly compared: number;
  /** The taxa that the two gave to birds that both saw. */
  readonly named: readonly { readonly a: string; readonly b: string; readonly number: number }[];
  /** Candidate sets of the cell's taxa by name. */
  readonly candidates: Candidates;
}

type Candidates = ReadonlyMap<string, readonly Species[]>;

/**
 * The groups of all cells as each two observers compared them: birds using the waterbody, and only
 * observers who are counted and independent of each other. A group that neither saw is no unit.
 *
 * @throws Error where a pairing names a taxon that is in no group of its cell
 */
export function comparedUnits(cells: readonly Cell[]): ComparedUnit[] {
  return cells.flatMap((cell) => {
    const groupOf = new Map(
      cell.groups.flatMap((group) => group.taxa.map((taxon) => [taxon, group.id] as const)),
    );
    const candidates = candidatesIn(cell);
    return usablePairings(cell).flatMap((pairing) => {
      const byGroup = new Map<string, PairingFlow[]>();
      for (const flow of pairing.flows) {
        const taxon = flow.a ?? flow.b ?? '';
        const group = groupOf.get(taxon);
        if (group === undefined) {
          throw new Error(`Cell ${cell.id} pairs birds named "${taxon}", which no group of it has`);
        }
        byGroup.set(group, [...(byGroup.get(group) ?? []), flow]);
      }
      return [...byGroup].map(([group, flows]) =>
        unitOf(
          { cluster: `${cell.id}\n${group}`, cell: cell.id, group, candidates },
          pairing,
          flows,
          () => true,
        ),
      );
    });
  });
}

/**
 * The same taxon by taxon: what each two observers of a cell called this taxon. A cluster is a cell.
 * Pairs of birds of which one observer gave the taxon and the other another are compared under both.
 */
export function comparedTaxa(cells: readonly Cell[]): Map<string, ComparedUnit[]> {
  const units = new Map<string, ComparedUnit[]>();
  for (const cell of cells) {
    const candidates = candidatesIn(cell);
    for (const pairing of usablePairings(cell)) {
      const taxa = pairing.flows.flatMap(({ a, b }) => [a, b]).filter((taxon) => taxon !== null);
      for (const taxon of new Set(taxa)) {
        const flows = pairing.flows.filter(({ a, b }) => a === taxon || b === taxon);
        const about = { cluster: cell.id, cell: cell.id, group: taxon, candidates };
        const unit = unitOf(about, pairing, flows, (name) => name === taxon);
        units.set(taxon, [...(units.get(taxon) ?? []), unit]);
      }
    }
  }
  return units;
}

function candidatesIn(cell: Cell): Candidates {
  return new Map(
    cell.groups.flatMap((group) =>
      group.identifications.map((set) => [taxonName(set), set] as const),
    ),
  );
}

/** Pairings of observers who counted the cell in full and independently; none of birds flying through. */
export function usablePairings(cell: Cell): Pairing[] {
  if (cell.layer !== 'using') return [];
  const counted = new Set(
    cell.tallies.filter((tally) => tally.counted).map((tally) => tally.observer),
  );
  return cell.pairings.filter(
    ({ a, b, independent, complete }) =>
      independent && complete && counted.has(a) && counted.has(b),
  );
}

function unitOf(
  about: Pick<ComparedUnit, 'cluster' | 'cell' | 'group' | 'candidates'>,
  { a, b }: Pairing,
  flows: readonly PairingFlow[],
  isOwn: (taxon: string) => boolean,
): ComparedUnit {
  const birds = (own: (flow: PairingFlow) => boolean): number =>
    whole(flows.filter(own).reduce((total, flow) => total + flow.number, 0));
  return {
    ...about,
    a,
    b,
    totalA: birds((flow) => flow.a !== null && isOwn(flow.a)),
    totalB: birds((flow) => flow.b !== null && isOwn(flow.b)),
    agreed: birds((flow) => flow.kind === 'agreed'),
    compared: birds(() => true),
    named: flows.flatMap((flow) =>
      flow.a === null || flow.b === null ? [] : [{ a: flow.a, b: flow.b, number: flow.number }],
    ),
  };
}

/** Takes the rounding of fractional flows out of totals that are whole birds. */
function whole(total: number): number {
  const nearest = Math.round(total);
  return Math.abs(total - nearest) < 1e-6 ? nearest : total;
}
