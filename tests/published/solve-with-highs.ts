import loadHighs, { type Highs } from 'highs';
import type { LinearProgram } from '../../server/core/math/linear-program-form.js';

export type OutsideAnswer =
  | { readonly kind: 'optimal'; readonly cost: number }
  | { readonly kind: 'infeasible' }
  | { readonly kind: 'unbounded' };

/** The HiGHS solver (University of Edinburgh), compiled to WebAssembly: the npm package `highs`. */
export function startHighs(): Promise<Highs> {
  return loadHighs();
}

/**
 * The least cost of a programme as HiGHS finds it. Without its presolve, which in 1.15.3 calls some
 * unbounded programmes infeasible: minimise −x − z with x, y, z ≥ 0, v ≤ 0, −1 ≤ x − y − z ≤ 0.
 *
 * @param whole variables that must be whole.
 */
export function solveWithHighs(
  highs: Highs,
  program: LinearProgram,
  whole: readonly number[] = [],
): OutsideAnswer {
  const solution = highs.solve(asText(program, whole), { presolve: 'off', mip_rel_gap: 0 });
  switch (solution.Status) {
    case 'Optimal':
      return { kind: 'optimal', cost: solution.ObjectiveValue };
    case 'Infeasible':
      return { kind: 'infeasible' };
    case 'Unbounded':
      return { kind: 'unbounded' };
    default:
      throw new Error(`HiGHS says ${solution.Status}`);
  }
}

/** The LP text format (CPLEX): objective, rows, bounds, whole variables. */
function asText({ costs, bounds, rows }: LinearProgram, whole: readonly number[]): string {
  const sum = (terms: readonly (readonly [number, number])[]): string =>
    terms
      .map(([variable, factor]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} x${variable}`)
      .join(' ');
  const sides = rows.flatMap(({ terms, least, most }) => {
    const text = sum(terms.length === 0 ? [[0, 0]] : terms);
    if (least === most) return [`${text} = ${least}`];
    return [
      ...(least > -Infinity ? [`${text} >= ${least}`] : []),
      ...(most < Infinity ? [`${text} <= ${most}`] : []),
    ];
  });
  return [
    'Minimize',
    ` cost: ${sum(costs.map((cost, variable) => [variable, cost]))}`,
    'Subject To',
    ...sides.map((text, index) => ` row${index}: ${text}`),
    'Bounds',
    ...bounds.map(
      ({ least, most }, variable) => ` ${limit(least)} <= x${variable} <= ${limit(most)}`,
    ),
    ...(whole.length > 0
      ? ['General', ` ${whole.map((variable) => `x${variable}`).join(' ')}`]
      : []),
    'End',
  ].join('\n');
}

function limit(bound: number): string {
  if (bound === -Infinity) return '-inf';
  return bound === Infinity ? 'inf' : String(bound);
}
