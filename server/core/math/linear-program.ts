import type { LinearProgram, LinearRow } from './linear-program-form.js';
import { Tableau } from './linear-program-tableau.js';

export type LinearAnswer =
  | {
      readonly kind: 'optimal';
      readonly cost: number;
      readonly values: readonly number[];
      /**
       * Shadow price of each row: by how much the least cost rises per unit by which the side of the
       * row that holds it is raised; 0 where neither side holds it.
       */
      readonly prices: readonly number[];
    }
  | { readonly kind: 'infeasible' }
  | { readonly kind: 'unbounded' };

/** A bound may be passed by so much, or by so much for every unit of the largest bound. */
const TOLERANCE = 1e-9;
const RELATIVE_TOLERANCE = 1e-12;
/** A reduced cost below this is none, for every unit of the largest cost. */
const NO_GAIN = 1e-9;
/** So many steps without gain before Bland's rule takes over. */
const PATIENCE = 12;

/**
 * A small linear programme, solved by the bounded simplex method in two phases on a dense tableau
 * (Chvátal 1983, *Linear Programming*, chapters 2, 3 and 8). Phase one lowers the sum by which
 * basic variables pass their bounds; phase two lowers the cost. The steepest reduced cost enters;
 * after some steps without gain the lowest-numbered candidate does, in and out, until there is gain
 * again, which cannot cycle (Bland 1977, Math. Oper. Res. 2:103). Ties go to the lowest number, so
 * that the same programme always has the same answer.
 *
 * Meant for some hundreds of rows and variables whose factors are of one order of magnitude. A bound
 * counts as held when it is passed by no more than 1e-9, or 1e-12 of the largest bound.
 *
 * @throws RangeError where a row names a variable that is not there, a bound is the wrong way round
 *   or a number is not one; Error where rounding has spoilt the answer (bounds passed by more than
 *   a thousand times the tolerance).
 *
 * @example linearProgram({ costs: [-3, -2], bounds: [{ least: 0, most: 4 }, { least: 0, most: 9 }], rows: [{ terms: [[0, 1], [1, 1]], least: -Infinity, most: 6 }] }).cost // -16
 */
export function linearProgram(program: LinearProgram): LinearAnswer {
  check(program);
  const tableau = new Tableau(program);
  const margin = Math.max(TOLERANCE, RELATIVE_TOLERANCE * largestBound(program));
  if (!descend(tableau, 'bounds', margin, NO_GAIN)) return { kind: 'infeasible' };
  const gain = NO_GAIN * Math.max(1, ...program.costs.map(Math.abs));
  if (!descend(tableau, 'cost', margin, gain)) return { kind: 'unbounded' };
  const values = tableau.values();
  confirm(program, values, 1000 * margin);
  const cost = program.costs.reduce((sum, each, index) => sum + each * (values[index] ?? 0), 0);
  return { kind: 'optimal', cost, values, prices: tableau.prices() };
}

/**
 * Steps while a step helps. Returns whether the phase has reached its end: nothing passes its
 * bounds, or no step lowers the cost any more.
 */
function descend(
  tableau: Tableau,
  phase: 'bounds' | 'cost',
  margin: number,
  gain: number,
): boolean {
  let stalled = 0;
  for (;;) {
    const slopes = phase === 'cost' ? tableau.reducedCosts : tableau.slopesOfViolation(margin);
    if (slopes === null) return true;
    const careful = stalled >= PATIENCE;
    const entering = tableau.enteringColumn(slopes, gain, careful);
    if (entering === null) return phase === 'cost';
    const step = tableau.longestStep(entering, margin, careful);
    if (step === null) return false;
    tableau.take(entering, step);
    stalled = step.length > margin ? 0 : stalled + 1;
  }
}

function check({ costs, bounds, rows }: LinearProgram): void {
  if (bounds.length !== costs.length) {
    throw new RangeError('linearProgram needs bounds for each variable that has a cost');
  }
  if (!costs.every(Number.isFinite)) throw new RangeError('linearProgram needs finite costs');
  for (const { least, most } of [...bounds, ...rows]) {
    if (!(least <= most) || least === Infinity || most === -Infinity) {
      throw new RangeError(`linearProgram needs bounds in order, not ${least} to ${most}`);
    }
  }
  for (const { terms } of rows) {
    for (const [variable, factor] of terms) {
      if (costs[variable] === undefined || !Number.isFinite(factor)) {
        throw new RangeError('linearProgram needs rows of known variables with finite factors');
      }
    }
  }
}

function largestBound({ bounds, rows }: LinearProgram): number {
  let largest = 0;
  for (const { least, most } of [...bounds, ...rows]) {
    for (const bound of [least, most]) {
      if (Number.isFinite(bound)) largest = Math.max(largest, Math.abs(bound));
    }
  }
  return largest;
}

/** Checks the answer against the programme itself, not against the tableau that gave it. */
function confirm({ bounds, rows }: LinearProgram, values: readonly number[], margin: number): void {
  const within = (value: number, { least, most }: { least: number; most: number }): boolean =>
    value >= least - margin && value <= most + margin;
  const sumOf = (row: LinearRow): number =>
    row.terms.reduce((sum, [variable, factor]) => sum + factor * (values[variable] ?? 0), 0);
  const good =
    bounds.every((bound, index) => within(values[index] ?? 0, bound)) &&
    rows.every((row) => within(sumOf(row), row));
  if (!good) throw new Error('linearProgram lost its answer to rounding');
}
