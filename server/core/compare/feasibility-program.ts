import type { LinearProgram, LinearRow } from '../math/linear-program-form.js';
import type { FeasibilityProblem } from './feasibility-problem.js';

type Term = LinearRow['terms'][number];

export interface FeasibilityProgram {
  /** Its first variables are the true numbers, one for each kind. */
  readonly program: LinearProgram;
  /** Whose demand each row is. */
  readonly observerOfRow: readonly number[];
}

/**
 * The linear programme whose least cost is the fewest wrong bird-records of a feasibility problem.
 * Whole true numbers have whole costs, as what is left is a flow for each observer.
 *
 * Of one observer let M be the true birds due to them that are on no line of theirs that could hold
 * them, and W the birds by which their lines stay under their lows. Each bird of M needs a record
 * put right (missed), each of W too (added), and one of each may be one record: a bird on a wrong
 * line (misnamed). So their wrong records are the greater of M and W, and that is the variable that
 * the cost adds up. With `misnamed: 'twice'` it is M + W instead: missed here and added there, which
 * is 0 for the same truths and says more plainly what stands against what.
 */
export function feasibilityProgram(
  problem: FeasibilityProblem,
  misnamed: 'once' | 'twice' = 'once',
): FeasibilityProgram {
  const builder = new ProgramBuilder();
  const truth = problem.kinds.map(() => builder.variable(0, Infinity));
  for (let observer = 0; observer < problem.observers; observer += 1) {
    builder.observer = observer;
    addObserver(builder, problem, misnamed, truth);
  }
  return builder.finished();
}

/** Birds that one observer cannot tell apart. */
interface Class {
  readonly lines: readonly number[];
  readonly due: boolean;
  /** Variables of the true numbers that it adds up. */
  readonly truth: readonly number[];
}

function addObserver(
  builder: ProgramBuilder,
  problem: FeasibilityProblem,
  misnamed: 'once' | 'twice',
  truth: readonly number[],
): void {
  const { observer } = builder;
  const classes = classesOf(problem, observer, truth);
  const wrong = builder.variable(1, Infinity);
  const added = misnamed === 'once' ? wrong : builder.variable(1, Infinity);
  /** Due birds less those of them on lines. */
  const missed: Term[] = classes
    .filter((each) => each.due)
    .flatMap((each) => each.truth.map((variable): Term => [variable, 1]));
  /** Birds on lines that count towards their lows. */
  const filled: Term[] = [];
  const onLines = classes.map((): Term[] => []);
  let lows = 0;
  problem.lines.forEach((line, index) => {
    if (line.observer !== observer) return;
    lows += line.low;
    const holding = classes.flatMap((each, position) =>
      each.lines.includes(index) ? [position] : [],
    );
    if (holding.length === 0) return;
    const low = line.low > 0 ? builder.variable(0, line.low) : null;
    if (low !== null) filled.push([low, 1]);
    const [only] = holding;
    if (holding.length === 1 && only !== undefined) {
      // The one class that the line can hold fills its low, then what is over the low.
      const over = line.high > line.low ? builder.variable(0, line.high - line.low) : null;
      for (const variable of [low, over]) {
        if (variable !== null) onLines[only]?.push([variable, 1]);
      }
      return;
    }
    const shares = holding.map((position): Term => {
      const share: Term = [builder.variable(0, Infinity), 1];
      onLines[position]?.push(share);
      return share;
    });
    if (low !== null) builder.row([[low, 1], ...negated(shares)], -Infinity, 0);
    if (line.high < Infinity) builder.row(shares, -Infinity, line.high);
  });
  classes.forEach((each, position) => {
    const placed = onLines[position] ?? [];
    if (placed.length === 0) return;
    const there = each.truth.map((variable): Term => [variable, -1]);
    builder.row([...placed, ...there], -Infinity, 0);
    if (each.due) missed.push(...negated(placed));
  });
  if (missed.length > 0) builder.row([...missed, [wrong, -1]], -Infinity, 0);
  if (lows > 0) builder.row([...filled, [added, 1]], lows, Infinity);
}

function classesOf(
  { kinds, lines }: FeasibilityProblem,
  observer: number,
  truth: readonly number[],
): Class[] {
  const classes = new Map<string, Class>();
  kinds.forEach((kind, index) => {
    const own = kind.lines.filter((line) => lines[line]?.observer === observer);
    const due = kind.dueTo.includes(observer);
    if (own.length === 0 && !due) return;
    const key = `${own.join()};${due}`;
    const variable = truth[index] ?? 0;
    const known = classes.get(key)?.truth ?? [];
    classes.set(key, { lines: own, due, truth: [...known, variable] });
  });
  return [...classes.values()];
}

function negated(terms: readonly Term[]): Term[] {
  return terms.map(([variable, factor]): Term => [variable, -factor]);
}

class ProgramBuilder {
  /** Whose demands are being added. */
  observer = 0;
  private readonly observerOfRow: number[] = [];
  private readonly costs: number[] = [];
  private readonly bounds: { least: number; most: number }[] = [];
  private readonly rows: LinearRow[] = [];

  /** A variable from 0 to `most`. */
  variable(cost: number, most: number): number {
    this.bounds.push({ least: 0, most });
    return this.costs.push(cost) - 1;
  }

  row(terms: readonly Term[], least: number, most: number): void {
    this.rows.push({ terms, least, most });
    this.observerOfRow.push(this.observer);
  }

  finished(): FeasibilityProgram {
    const program = { costs: this.costs, bounds: this.bounds, rows: this.rows };
    return { program, observerOfRow: this.observerOfRow };
  }
}
