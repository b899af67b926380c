import { alignCells } from '../align/cells.js';
import { compareCell, type CellGroup } from '../compare/compare-cell.js';
import { plainIntervalOf } from '../consensus/interval.js';
import { settleGroup, tau2OfCompared, type SettledGroup } from '../consensus/settle-group.js';
import { UnionFind } from '../math/union-find.js';
import type { Protocol, Rule } from '../model/protocol.js';
import type { Consensus } from '../model/result.js';
import type { Snapshot, Species } from '../model/snapshot.js';
import { lookAlikesFrom } from '../taxa/candidate-set.js';
import type { Truth } from './truth.js';

/** Levels at which intervals are judged. */
export const LEVELS = [0.5, 0.8, 0.95] as const;

/**
 * What a group's number rests on: `several` independent counts with known counting error, `exact`
 * for several that are all taken to be without error (small numbers, counted one by one), or the
 * consensus' own basis.
 */
export type Ground = 'several' | 'exact' | Exclude<Consensus['basis'], 'several'>;

/** One group of a cell against the truth, or several that share a species. */
export interface GroupScore {
  readonly cell: string;
  readonly taxa: readonly string[];
  readonly ground: Ground;
  readonly truth: number;
  readonly number: number;
  /** What each rule would give. */
  readonly byRule: Readonly<Partial<Record<Rule, number>>>;
  /** At each of `LEVELS`: the interval before rounding to whole birds. */
  readonly intervals: readonly { readonly low: number; readonly high: number }[];
  /** At each of `LEVELS`, whether the true number lies in it. */
  readonly covered: readonly boolean[];
  /** The same with the interval rounded outward to whole birds, as results show it. */
  readonly coveredRounded: readonly boolean[];
  /** Totals of the observers that entered, lowest first. */
  readonly counts: readonly number[];
}

interface Draft {
  readonly group: CellGroup;
  readonly settled: SettledGroup;
  readonly species: readonly Species[];
}

/**
 * Every group of birds using the water against the birds that were there to be seen. Groups of a
 * cell that share a species are judged together, as the truth does not say in which of them a bird
 * belongs: their numbers add up, and so do the squares of their reaches. A group whose birds belong
 * to no group because nobody found any is not here; `compiled` counts it.
 */
export function scoreGroups(snapshot: Snapshot, protocol: Protocol, truth: Truth): GroupScore[] {
  const lookAlikes = lookAlikesFrom(protocol.lookAlikes);
  return alignCells(snapshot)
    .filter((cell) => cell.layer === 'using')
    .flatMap((cell) => {
      const compared = compareCell(cell, lookAlikes);
      const tau2OfCell = tau2OfCompared(compared, protocol);
      const drafts = compared.groups.map((group): Draft => ({
        group,
        settled: settleGroup(compared, group, protocol, tau2OfCell),
        species: [...new Set(group.identifications.flat())].sort(),
      }));
      const there = birdsIn(cell.place, truth);
      return togetherBySpecies(drafts)
        .filter((together) => together.some(({ settled }) => settled.consensus.basis !== 'none'))
        .map((together) => scoreTogether(cell.id, together, there));
    });
}

/** Birds of the sections, added up by species. */
function birdsIn(place: readonly string[], truth: Truth): ReadonlyMap<Species, number> {
  const bySection = truth.toBeSeen ?? truth.sections;
  const birds = new Map<Species, number>();
  for (const section of place) {
    for (const [species, number] of Object.entries(bySection[section] ?? {})) {
      birds.set(species, (birds.get(species) ?? 0) + number);
    }
  }
  return birds;
}

function togetherBySpecies(drafts: readonly Draft[]): Draft[][] {
  const clusters = new UnionFind(drafts.length);
  drafts.forEach((one, i) => {
    drafts.forEach((other, j) => {
      if (i < j && one.species.some((name) => other.species.includes(name))) clusters.join(i, j);
    });
  });
  return clusters.sets().map((members) => members.flatMap((index) => drafts[index] ?? []));
}

function scoreTogether(
  cell: string,
  together: readonly Draft[],
  there: ReadonlyMap<Species, number>,
): GroupScore {
  const species = new Set(together.flatMap((draft) => draft.species));
  const truth = [...species].reduce((sum, name) => sum + (there.get(name) ?? 0), 0);
  const number = sumOf(together, ({ settled }) => settled.consensus.number);
  const intervals = LEVELS.map((level) => {
    const each = together.map(({ settled }) => {
      const own = settled.consensus.number;
      const { low, high } = plainIntervalOf(own, settled.units, settled.tau2OfCell, level);
      return { below: (own - low) ** 2, above: (high - own) ** 2 };
    });
    return {
      low: number - Math.sqrt(each.reduce((sum, { below }) => sum + below, 0)),
      high: number + Math.sqrt(each.reduce((sum, { above }) => sum + above, 0)),
    };
  });
  return {
    cell,
    taxa: together.flatMap(({ group }) => group.taxa).sort(),
    ground: groundOf(together),
    truth,
    number,
    byRule: rulesOf(together),
    intervals,
    covered: intervals.map(({ low, high }) => truth >= low - 1e-9 && truth <= high + 1e-9),
    coveredRounded: intervals.map(
      ({ low, high }) => truth >= Math.floor(low + 1e-9) && truth <= Math.ceil(high - 1e-9),
    ),
    counts: together
      .flatMap(({ settled }) => settled.units.map((unit) => unit.total))
      .sort((one, other) => one - other),
  };
}

/** Several only where all of them rest on several. */
function groundOf(together: readonly Draft[]): Ground {
  const bases = together.map(({ settled }) => settled.consensus.basis);
  const weakest = (['none', 'partial', 'single', 'ruling'] as const).find((basis) =>
    bases.includes(basis),
  );
  if (weakest !== undefined) return weakest;
  const exact = together.every(({ settled }) =>
    settled.units.every((unit) => unit.logVariance === 0),
  );
  return exact ? 'exact' : 'several';
}

function rulesOf(together: readonly Draft[]): Partial<Record<Rule, number>> {
  const rules = [
    'highest',
    'mean',
    'median',
    'random-effects',
    'weighted-mean',
    'robust-mean',
  ] as const;
  return Object.fromEntries(
    rules.map((rule) => [
      rule,
      sumOf(together, ({ settled: { consensus } }) => consensus.byRule[rule] ?? consensus.number),
    ]),
  );
}

function sumOf(together: readonly Draft[], value: (draft: Draft) => number): number {
  return together.reduce((sum, draft) => sum + value(draft), 0);
}

/** How often the true number lay in the interval, for groups that rest on the same. */
export interface Coverage {
  readonly ground: Ground;
  readonly groups: number;
  /** At each of `LEVELS`, groups covered before rounding, and rounded outward to whole birds. */
  readonly covered: readonly number[];
  readonly coveredRounded: readonly number[];
  /** Mean of number − truth, in birds, and root of the mean square. */
  readonly bias: number;
  readonly rmse: number;
}

const GROUNDS: readonly Ground[] = ['several', 'exact', 'single', 'partial', 'ruling', 'none'];

export function coverageOf(groups: readonly GroupScore[]): Coverage[] {
  return GROUNDS.flatMap((ground) => {
    const own = groups.filter((group) => group.ground === ground);
    if (own.length === 0) return [];
    const differences = own.map((group) => group.number - group.truth);
    const countOf = (covered: (group: GroupScore) => readonly boolean[]): number[] =>
      LEVELS.map((_, level) => own.filter((group) => covered(group)[level] === true).length);
    return [
      {
        ground,
        groups: own.length,
        covered: countOf((group) => group.covered),
        coveredRounded: countOf((group) => group.coveredRounded),
        bias: differences.reduce((sum, each) => sum + each, 0) / own.length,
        rmse: Math.sqrt(differences.reduce((sum, each) => sum + each ** 2, 0) / own.length),
      },
    ];
  });
}
