import type { LinearProgram } from './linear-program-form.js';

/** How far the entering variable moves, and which row's variable stops it (`null`: its own bound). */
export interface Step {
  readonly length: number;
  /** +1 where the entering variable rises, −1 where it falls. */
  readonly direction: 1 | -1;
  readonly row: number | null;
}

export interface Entering {
  readonly column: number;
  readonly direction: 1 | -1;
}

/** A factor this small has come from rounding. */
const NOTHING = 1e-11;
/** A factor below this is not divided by. */
const SMALLEST_PIVOT = 1e-9;

/**
 * The simplex method's tableau: each basic variable as a sum over the variables that are not basic,
 * which stand at a bound. Variables are the programme's own, then one for each row that equals the
 * row's sum and has the row's sides as bounds; at the start these are basic, so no artificial
 * variables are needed.
 */
export class Tableau {
  private readonly least: Float64Array;
  private readonly most: Float64Array;
  private readonly value: Float64Array;
  /** Variable in each row and in each column. */
  private readonly basic: Int32Array;
  private readonly free: Int32Array;
  private readonly factors: Float64Array[];
  /** What one unit of each column's variable adds to the cost. */
  readonly reducedCosts: Float64Array;
  private readonly variables: number;

  constructor({ costs, bounds, rows }: LinearProgram) {
    const variables = costs.length;
    this.variables = variables;
    this.least = Float64Array.from([...bounds, ...rows], (bound) => bound.least);
    this.most = Float64Array.from([...bounds, ...rows], (bound) => bound.most);
    this.value = new Float64Array(variables + rows.length);
    for (let each = 0; each < variables; each += 1) this.value[each] = this.startOf(each);
    this.free = Int32Array.from(costs, (_, index) => index);
    this.basic = Int32Array.from(rows, (_, index) => variables + index);
    this.reducedCosts = Float64Array.from(costs);
    this.factors = rows.map(({ terms }, index) => {
      const line = new Float64Array(variables);
      let sum = 0;
      for (const [variable, factor] of terms) {
        line[variable] = factor;
        sum += factor * at(this.value, variable);
      }
      this.value[variables + index] = sum;
      return line;
    });
  }

  /** A variable starts at the bound nearest to zero, or at zero where it has none. */
  private startOf(variable: number): number {
    const least = at(this.least, variable);
    const most = at(this.most, variable);
    if (least === -Infinity && most === Infinity) return 0;
    return Math.abs(least) <= Math.abs(most) ? least : most;
  }

  /** How the sum of all bounds passed changes with each column; `null` where none is passed. */
  slopesOfViolation(margin: number): Float64Array | null {
    let slopes: Float64Array | null = null;
    this.factors.forEach((line, row) => {
      const side = this.sidePassed(at32(this.basic, row), margin);
      if (side === 0) return;
      const sums = (slopes ??= new Float64Array(this.free.length));
      for (let column = 0; column < line.length; column += 1) {
        sums[column] = at(sums, column) + side * at(line, column);
      }
    });
    return slopes;
  }

  /** −1 below its least, +1 above its most, 0 within both. */
  private sidePassed(variable: number, margin: number): -1 | 0 | 1 {
    const value = at(this.value, variable);
    if (value < at(this.least, variable) - margin) return -1;
    return value > at(this.most, variable) + margin ? 1 : 0;
  }

  /**
   * The column whose variable lowers the sum most per unit, in the direction in which it has room;
   * if `lowest`, the lowest-numbered variable that lowers it at all (Bland). `null` where none does.
   */
  enteringColumn(slopes: Float64Array, gain: number, lowest: boolean): Entering | null {
    let best: Entering | null = null;
    let bestSlope = gain;
    let bestVariable = Infinity;
    for (let column = 0; column < slopes.length; column += 1) {
      const slope = at(slopes, column);
      const steepness = Math.abs(slope);
      if (steepness <= gain || (!lowest && steepness < bestSlope)) continue;
      const variable = at32(this.free, column);
      if ((lowest || steepness === bestSlope) && variable >= bestVariable) continue;
      const value = at(this.value, variable);
      const direction = slope < 0 ? 1 : -1;
      const room =
        direction > 0 ? at(this.most, variable) - value : value - at(this.least, variable);
      if (room <= 0) continue;
      best = { column, direction };
      bestSlope = steepness;
      bestVariable = variable;
    }
    return best;
  }

  /**
   * How far the entering variable can go before a basic one reaches a bound: one within its bounds
   * stops at the next, one that passes a bound stops where it comes back to it. `null` if nothing
   * ever stops it. Among several that stop it at once the one with the largest factor is taken, for
   * accuracy; if `lowest`, the lowest-numbered (Bland).
   */
  longestStep({ column, direction }: Entering, margin: number, lowest: boolean): Step | null {
    const own = at32(this.free, column);
    let length = at(this.most, own) - at(this.least, own);
    let stop: { row: number; steepness: number; variable: number } | null = null;
    for (let row = 0; row < this.factors.length; row += 1) {
      const rate = direction * at(this.factors[row], column);
      const steepness = Math.abs(rate);
      if (steepness < SMALLEST_PIVOT) continue;
      const variable = at32(this.basic, row);
      const reach = this.reach(variable, rate, margin);
      if (reach > length + margin) continue;
      const better =
        stop === null ||
        reach < length - margin ||
        (lowest ? variable < stop.variable : steepness > stop.steepness);
      if (better) stop = { row, steepness, variable };
      length = Math.min(length, reach);
    }
    if (length === Infinity) return null;
    if (stop === null) return { length, direction, row: null };
    const rate = direction * at(this.factors[stop.row], column);
    const exact = this.reach(stop.variable, rate, margin);
    return { length: exact, direction, row: stop.row };
  }

  /** How far a basic variable that changes at this rate is from the bound that stops it. */
  private reach(variable: number, rate: number, margin: number): number {
    const side = this.sidePassed(variable, margin);
    // Moving further out is not stopped: the sum of all violations still falls.
    if (side !== 0 && side === Math.sign(rate)) return Infinity;
    const towards =
      side === 0
        ? rate > 0
          ? at(this.most, variable)
          : at(this.least, variable)
        : side < 0
          ? at(this.least, variable)
          : at(this.most, variable);
    return Math.max(0, (towards - at(this.value, variable)) / rate);
  }

  /** Moves the entering variable; where a row stops it, that row's variable leaves in its place. */
  take({ column }: Entering, { length, direction, row }: Step): void {
    const entering = at32(this.free, column);
    for (let each = 0; each < this.factors.length; each += 1) {
      const factor = at(this.factors[each], column);
      if (factor === 0) continue;
      const variable = at32(this.basic, each);
      this.value[variable] = at(this.value, variable) + direction * length * factor;
    }
    this.value[entering] = at(this.value, entering) + direction * length;
    if (row === null) {
      this.value[entering] = direction > 0 ? at(this.most, entering) : at(this.least, entering);
      return;
    }
    this.settle(at32(this.basic, row));
    this.exchange(row, column);
  }

  /** Puts a leaving variable on the nearer of its bounds exactly. */
  private settle(variable: number): void {
    const value = at(this.value, variable);
    const least = at(this.least, variable);
    const most = at(this.most, variable);
    this.value[variable] = Math.abs(value - least) <= Math.abs(most - value) ? least : most;
  }

  /** The row's variable and the column's change places (one pivot). Only what is not 0 is touched. */
  private exchange(row: number, column: number): void {
    const line = this.factors[row] ?? new Float64Array(0);
    const pivot = at(line, column);
    const filled: number[] = [];
    for (let each = 0; each < line.length; each += 1) {
      if (each === column || line[each] === 0) continue;
      line[each] = -at(line, each) / pivot;
      filled.push(each);
    }
    line[column] = 1 / pivot;
    for (const other of [...this.factors, this.reducedCosts]) {
      if (other === line) continue;
      const factor = at(other, column);
      if (factor === 0) continue;
      for (const each of filled) {
        const sum = at(other, each) + factor * at(line, each);
        other[each] = Math.abs(sum) < NOTHING ? 0 : sum;
      }
      other[column] = factor / pivot;
    }
    const leaving = at32(this.basic, row);
    this.basic[row] = at32(this.free, column);
    this.free[column] = leaving;
  }

  /** The programme's own variables. */
  values(): number[] {
    return Array.from(this.value.subarray(0, this.variables));
  }

  /** What one unit of each row's sum adds to the cost: 0 where the row's variable is basic. */
  prices(): number[] {
    const prices = Array.from({ length: this.basic.length }, () => 0);
    this.free.forEach((variable, column) => {
      if (variable >= this.variables) {
        prices[variable - this.variables] = at(this.reducedCosts, column);
      }
    });
    return prices;
  }
}

function at(values: Float64Array | undefined, index: number): number {
  return values?.[index] ?? 0;
}

function at32(values: Int32Array, index: number): number {
  return values[index] ?? -1;
}
