import type { Look } from '../align/looks.js';
import { wholeProgram } from '../math/linear-program-whole.js';
import type { Protocol } from '../model/protocol.js';
import { feasibilityOf, reduced, type FeasibilityProblem } from './feasibility-problem.js';
import { feasibilityProgram } from './feasibility-program.js';

/**
 * The fewest birds that must have been missed, added or misnamed in the tallies of a cell, whatever
 * the truth was, when every line may be wrong by its counting error (method section 3.2).
 *
 * A truth is a whole number of birds of each species in each part of the place. Held against it, an
 * observer's bird on a line that cannot hold it is one wrong record (misnamed), a true bird on no
 * line is one (missed; none where the tally is partial or did not seek the species), a bird on a
 * line that was not there is one (added). The answer is the least sum over all observers that any
 * truth leaves: 0 exactly when one truth fits all tallies. A bird that two observers got wrong
 * counts twice.
 *
 * For two observers that is the cheapest matching of their birds in which a pair of disjoint
 * candidate sets or a bird left over costs one: the birds of a matching make a truth of that cost,
 * and through any truth the two tallies are matched at no more than its cost.
 */
export function birdsInConflict(looks: readonly Look[], protocol: Protocol): number {
  return fewestWrong(feasibilityOf(looks, protocol));
}

/**
 * The least number of wrong records, as a linear programme whose true numbers must be whole. With
 * two observers it is a network, and whole by itself; with more it need not be (three observers who
 * cut four species into pairs in the three possible ways, one bird a pair, fit half a bird of each
 * species, but no whole birds). Should the search for whole numbers be given up, which takes
 * hundreds of such knots at once, the answer is still a bound from below: at least so many.
 */
export function fewestWrong(problem: FeasibilityProblem): number {
  const small = reduced(problem);
  if (problem.observers < 2 || small.lines.length === 0) return 0;
  const truth = small.kinds.map((_, index) => index);
  return wholeProgram(feasibilityProgram(small).program, truth).cost;
}
