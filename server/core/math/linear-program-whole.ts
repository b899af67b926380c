import type { LinearProgram } from './linear-program-form.js';
import { linearProgram } from './linear-program.js';

export interface WholeAnswer {
  /** The least cost; where `proven` is false a bound from below. */
  readonly cost: number;
  readonly proven: boolean;
  /** A best solution, `null` if none was found. */
  readonly values: readonly number[] | null;
}

/** A value this near to a whole number is one, and a cost may be so much less than it looks. */
const WHOLE = 1e-6;
/** So many programmes are solved before the answer is given as a bound only. */
const MOST_PROGRAMS = 400;

interface Branch {
  readonly bounds: LinearProgram['bounds'];
  /** No solution of it is cheaper. */
  readonly atLeast: number;
}

/**
 * The least cost of a linear programme when some variables must be whole, by branch and bound on the
 * programme without that demand (Land & Doig 1960, Econometrica 28:497). The cost of every whole
 * solution must itself be a whole number: then a bound of 2.5 proves 3, and a solution that costs
 * what the bound says ends the search.
 *
 * The most fractional variable is split, the lower-numbered of two alike, the nearer side first.
 *
 * @param whole the variables that must be whole.
 * @throws as `linearProgram`, and RangeError where the cost has no lower bound or nothing satisfies
 *   the programme.
 */
export function wholeProgram(program: LinearProgram, whole: readonly number[]): WholeAnswer {
  let best: { cost: number; values: readonly number[] } | null = null;
  const open: Branch[] = [{ bounds: program.bounds, atLeast: -Infinity }];
  for (let solved = 0; solved < MOST_PROGRAMS; solved += 1) {
    const branch = open.pop();
    if (branch === undefined) {
      if (best === null) throw new RangeError('wholeProgram needs a programme with a solution');
      return { ...best, proven: true };
    }
    if (best !== null && branch.atLeast >= best.cost) continue;
    const answer = linearProgram({ ...program, bounds: branch.bounds });
    if (answer.kind === 'unbounded') throw new RangeError('wholeProgram needs a least cost');
    if (answer.kind === 'infeasible') continue;
    const atLeast = Math.ceil(answer.cost - WHOLE);
    if (best !== null && atLeast >= best.cost) continue;
    const variable = mostFractional(answer.values, whole);
    if (variable === null) {
      best = { cost: Math.round(answer.cost), values: answer.values };
      continue;
    }
    const value = answer.values[variable] ?? 0;
    const bound = branch.bounds[variable] ?? { least: 0, most: Infinity };
    const below = split(branch.bounds, variable, { ...bound, most: Math.floor(value) }, atLeast);
    const above = split(branch.bounds, variable, { ...bound, least: Math.ceil(value) }, atLeast);
    // The last one in is taken first.
    if (value - Math.floor(value) < 0.5) open.push(above, below);
    else open.push(below, above);
  }
  const bounds = open.map((branch) => branch.atLeast);
  const cost = Math.min(...bounds, best?.cost ?? Infinity);
  return { cost, proven: cost === best?.cost, values: best?.values ?? null };
}

function split(
  bounds: LinearProgram['bounds'],
  variable: number,
  bound: LinearProgram['bounds'][number],
  atLeast: number,
): Branch {
  return { bounds: bounds.map((each, index) => (index === variable ? bound : each)), atLeast };
}

function mostFractional(values: readonly number[], whole: readonly number[]): number | null {
  let most: number | null = null;
  let largest = WHOLE;
  for (const variable of whole) {
    const value = values[variable] ?? 0;
    const apart = Math.abs(value - Math.round(value));
    if (apart > largest) {
      most = variable;
      largest = apart;
    }
  }
  return most;
}
