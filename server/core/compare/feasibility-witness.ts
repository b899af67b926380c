import type { Look, LookLine } from '../align/looks.js';
import type { Protocol } from '../model/protocol.js';
import {
  areLookAlikes,
  lookAlikesFrom,
  type CandidateSet,
  type LookAlikes,
} from '../taxa/candidate-set.js';
import { pairConflict } from './feasibility-pair.js';
import { feasibilityOf, type CellFeasibility } from './feasibility-problem.js';
import { severalConflict } from './feasibility-several.js';

/** So many birds of some species, as one observer's tally has it at least or at most. */
export interface Claim {
  readonly look: Look;
  /** Sorted. */
  readonly species: CandidateSet;
  /** At least: lines that can only be of these species. At most: all lines that could be. */
  readonly lines: readonly LookLine[];
  /** Whole birds, with counting error taken to the end that fits best. */
  readonly birds: number;
}

/**
 * Why no single truth fits all tallies. Between two observers: one has more birds of some species
 * at least than the other has at most. Between more, each of whom is needed: all that some have at
 * least is together more than all that others have at most of the same species; both lists are
 * empty where the conflict is not so simple.
 */
export interface ConflictWitness {
  /** Those who cannot all be right; any of them but one can. */
  readonly looks: readonly Look[];
  readonly atLeast: readonly Claim[];
  readonly atMost: readonly Claim[];
  /** Between two: the other's largest line of look-alikes that cannot be these species. */
  readonly instead: LookLine | null;
}

/**
 * The plainest reason why the tallies of a cell do not fit one truth (method section 3.2): the pair
 * of observers whose tallies are most birds apart on some set of species, or where every two fit,
 * those who do not all fit together. `null` where one truth fits all.
 */
export function conflictWitness(
  looks: readonly Look[],
  protocol: Protocol,
): ConflictWitness | null {
  const problem = feasibilityOf(looks, protocol);
  const lookAlikes = lookAlikesFrom(protocol.lookAlikes);
  return witnessOfPair(problem, lookAlikes) ?? witnessOfSeveral(problem);
}

function witnessOfPair(problem: CellFeasibility, lookAlikes: LookAlikes): ConflictWitness | null {
  let worst: ConflictWitness | null = null;
  let furthest = 0;
  problem.looks.forEach((one, i) => {
    problem.looks.forEach((other, j) => {
      const conflict = i === j ? null : pairConflict(problem, i, j);
      if (conflict === null || conflict.atLeast - conflict.atMost <= furthest) return;
      furthest = conflict.atLeast - conflict.atMost;
      const lines = written(problem, conflict.lines);
      const species = speciesOf(lines.flatMap((line) => line.candidates));
      const room = written(problem, conflict.room);
      worst = {
        looks: [one, other],
        atLeast: [{ look: one, species, lines, birds: conflict.atLeast }],
        atMost: [{ look: other, species, lines: room, birds: conflict.atMost }],
        instead: largestLookAlike(other, species, room, lookAlikes),
      };
    });
  });
  return worst;
}

function witnessOfSeveral(problem: CellFeasibility): ConflictWitness | null {
  const conflict = severalConflict(problem);
  if (conflict === null) return null;
  const claims = (side: 'atLeast' | 'atMost'): Claim[] =>
    conflict[side].flatMap(({ observer, kinds, birds }) => {
      const look = problem.looks[observer];
      if (look === undefined) return [];
      const species = speciesOf(kinds.flatMap((kind) => problem.species[kind] ?? []));
      const isIn = (each: string): boolean => species.includes(each);
      const lines = look.lines.filter(({ candidates }) =>
        side === 'atLeast' ? candidates.every(isIn) : candidates.some(isIn),
      );
      return [{ look, species, lines, birds }];
    });
  return {
    looks: conflict.observers.flatMap((observer) => problem.looks[observer] ?? []),
    atLeast: claims('atLeast'),
    atMost: claims('atMost'),
    instead: null,
  };
}

function largestLookAlike(
  look: Look,
  species: CandidateSet,
  except: readonly LookLine[],
  lookAlikes: LookAlikes,
): LookLine | null {
  let largest: LookLine | null = null;
  for (const line of look.lines) {
    if (line.number <= (largest?.number ?? 0) || except.includes(line)) continue;
    if (areLookAlikes(line.candidates, species, lookAlikes)) largest = line;
  }
  return largest;
}

function written(problem: CellFeasibility, lines: readonly number[]): LookLine[] {
  return lines.flatMap((line) => problem.written[line] ?? []);
}

function speciesOf(names: readonly string[]): CandidateSet {
  return [...new Set(names)].sort();
}
