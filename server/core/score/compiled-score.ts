import { UnionFind } from '../math/union-find.js';
import { mean } from '../math/sum.js';
import type { CompiledLine, Result } from '../model/result.js';
import type { Species } from '../model/snapshot.js';
import { taxonName } from '../taxa/taxon-name.js';
import type { Truth } from './truth.js';

/** Species that the compiled count names together somewhere, so that only their sum can be judged. */
export interface TaxonScore {
  readonly taxon: string;
  readonly species: readonly Species[];
  readonly truth: number;
  readonly compiled: number;
}

/** One species by itself. */
export interface SpeciesScore {
  readonly species: Species;
  readonly truth: number;
  readonly atLeast: number;
  readonly atMost: number;
}

export interface CompiledScore {
  readonly truth: number;
  readonly compiled: number;
  readonly taxa: readonly TaxonScore[];
  readonly species: readonly SpeciesScore[];
  /** Mean of compiled − truth over taxa, in birds. */
  readonly bias: number;
  /** Root of the mean squared difference over taxa, in birds. */
  readonly rmse: number;
}

/**
 * The compiled count against the truth, birds using the water. A compiled pair or group may be any
 * of its species, so taxa that share one are put together; each species by itself is held against
 * its at least (compiled as just that) and at most (with all that may have been it).
 */
export function scoreCompiled(result: Result, truth: Truth): CompiledScore {
  const { compiled } = result;
  const species = [
    ...new Set([...compiled.flatMap((line) => line.candidates), ...Object.keys(truth.total)]),
  ].sort();
  const taxa = clustersOf(species, compiled).map((members): TaxonScore => {
    const inTaxon = new Set(members);
    return {
      taxon: taxonName(members),
      species: members,
      truth: members.reduce((sum, name) => sum + (truth.total[name] ?? 0), 0),
      compiled: compiled
        .filter((line) => line.candidates.some((name) => inTaxon.has(name)))
        .reduce((sum, line) => sum + line.number, 0),
    };
  });
  const differences = taxa.map((taxon) => taxon.compiled - taxon.truth);
  return {
    truth: taxa.reduce((sum, taxon) => sum + taxon.truth, 0),
    compiled: taxa.reduce((sum, taxon) => sum + taxon.compiled, 0),
    taxa,
    species: species.map((name) => ({
      species: name,
      truth: truth.total[name] ?? 0,
      atLeast: birdsIn(compiled.filter(({ candidates }) => candidates.join('|') === name)),
      atMost: birdsIn(compiled.filter(({ candidates }) => candidates.includes(name))),
    })),
    bias: taxa.length === 0 ? 0 : mean(differences),
    rmse: taxa.length === 0 ? 0 : Math.sqrt(mean(differences.map((each) => each ** 2))),
  };
}

function birdsIn(lines: readonly CompiledLine[]): number {
  return lines.reduce((sum, line) => sum + line.number, 0);
}

function clustersOf(species: readonly Species[], lines: readonly CompiledLine[]): Species[][] {
  const clusters = new UnionFind(species.length);
  const indexOf = new Map(species.map((name, index) => [name, index]));
  for (const { candidates, number } of lines) {
    if (number === 0) continue;
    const [first = 0, ...others] = candidates.map((name) => indexOf.get(name) ?? 0);
    for (const other of others) clusters.join(first, other);
  }
  return clusters
    .sets()
    .map((members) => members.flatMap((index) => species[index] ?? []).sort())
    .sort(([one = ''], [other = '']) => (one < other ? -1 : 1));
}
