import { intersection } from '../taxa/candidate-set.js';
import { minCostFlow } from '../math/min-cost-flow.js';
import { UnionFind } from '../math/union-find.js';
import { kindFit, type SetFits } from './composition.js';
import type { Flock } from './flock.js';
import { sizeRatio, sizeSpreadOf, type SizeChange, type SizeSpread } from './flock-size.js';
import { sameSpotDensity } from './routes.js';
import { sexesLogRatio } from './sexes.js';
import { sharesLogRatio } from './shares.js';
import type { Waterbody } from './whereabouts.js';

/**
 * Odds that a flock one observer of a section recorded was recorded by another who looked over the
 * same section (common practice, no source: about four in five; a half where either saw only part).
 */
const SEEN_BY_BOTH = Math.log(0.8 / 0.2);
const SEEN_BY_BOTH_IF_PARTIAL = 0;

/** Observers draw the bounds of a flock differently: three in ten, by a factor of about two. */
const DRAWN_DIFFERENTLY: SizeChange = { chance: 0.3, spread: 0.7, part: 0 };

/** Both wrote the same flock label: a weak hint, as labels are each observer's own. */
const SAME_LABEL = 1;

/**
 * One flock in twenty is put down far from where the other observer has it, or moved about in the
 * section meanwhile: distance alone never rules a match out (common practice, no source).
 */
const MISPLACED = 0.05;

/** Costs are whole: log-likelihood ratios in thousandths. */
const SCALE = 1000;

/**
 * Matches the flocks that several tallies of one cell recorded: flocks that can be the same kinds,
 * scored by number, kind, position, time and label against "two different flocks", assigned one to
 * one for every two tallies so that the scores add up to the most; then matches are joined strongest
 * first, never two flocks of one tally.
 *
 * @param byTally the flocks of each tally
 * @returns the flocks of each raft; every flock is in exactly one
 */
export function matchObservers(
  byTally: readonly (readonly Flock[])[],
  waterbody: Waterbody,
  setFits: SetFits,
): Flock[][] {
  const flocks = byTally.flat();
  const spread = spreadOf(flocks);
  const indexOf = new Map(flocks.map((flock, index) => [flock.key, index]));
  const matches = byTally.flatMap((ours, one) =>
    byTally.slice(one + 1).flatMap((theirs) => assign(ours, theirs, spread, waterbody, setFits)),
  );
  matches.sort((a, b) => b.score - a.score || (`${a.a}~${a.b}` < `${b.a}~${b.b}` ? -1 : 1));
  const rafts = new UnionFind(flocks.length);
  const talliesOf = flocks.map((flock) => [flock.tally.id]);
  for (const match of matches) {
    const a = rafts.rootOf(indexOf.get(match.a) ?? 0);
    const b = rafts.rootOf(indexOf.get(match.b) ?? 0);
    const [inA, inB] = [talliesOf[a] ?? [], talliesOf[b] ?? []];
    if (a === b || inA.some((tally) => inB.includes(tally))) continue;
    rafts.join(a, b);
    talliesOf[rafts.rootOf(a)] = [...inA, ...inB];
  }
  return rafts.sets().map((members) => members.flatMap((index) => flocks[index] ?? []));
}

function spreadOf(flocks: readonly Flock[]): SizeSpread {
  const logs = flocks.map((flock) => Math.log(flock.number)).toSorted((a, b) => a - b);
  const overall = logs.reduce((sum, value) => sum + value, 0) / Math.max(1, logs.length);
  return sizeSpreadOf(logs, overall);
}

interface Match {
  readonly a: string;
  readonly b: string;
  readonly score: number;
}

/**
 * Matches of two tallies' flocks. What the first round leaves is matched again: with the other flocks
 * of the kind gone, those that are left meet less by chance, whatever they were called.
 */
function assign(
  ours: readonly Flock[],
  theirs: readonly Flock[],
  spread: SizeSpread,
  waterbody: Waterbody,
  setFits: SetFits,
): Match[] {
  const matches = assignOnce(ours, theirs, spread, waterbody, setFits);
  const taken = new Set(matches.flatMap(({ a, b }) => [a, b]));
  const left = (flocks: readonly Flock[]): Flock[] => flocks.filter(({ key }) => !taken.has(key));
  if (matches.length === 0) return [];
  return [...matches, ...assign(left(ours), left(theirs), spread, waterbody, setFits)];
}

function assignOnce(
  ours: readonly Flock[],
  theirs: readonly Flock[],
  spread: SizeSpread,
  waterbody: Waterbody,
  setFits: SetFits,
): Match[] {
  const fits = ours.map((a) => theirs.map((b) => kindFit(a.parts, b.parts, setFits)));
  const sink = 1 + ours.length + theirs.length;
  const matches: Match[] = [];
  const edges = ours.flatMap((a, row) =>
    theirs.flatMap((b, column) => {
      const score = scoreMatch(a, b, row, column, fits, spread, waterbody);
      if (score === null || score <= 0) return [];
      matches.push({ a: a.key, b: b.key, score });
      const cost = 0 - Math.round(score * SCALE);
      return [{ from: 1 + row, to: 1 + ours.length + column, capacity: 1, cost }];
    }),
  );
  const ends = [
    ...ours.map((_, row) => ({ from: 0, to: 1 + row, capacity: 1, cost: 0 })),
    ...theirs.map((_, column) => ({
      from: 1 + ours.length + column,
      to: sink,
      capacity: 1,
      cost: 0,
    })),
  ];
  const { flow } = minCostFlow({
    nodes: sink + 1,
    edges: [...edges, ...ends],
    source: 0,
    sink,
    stop: 'while-negative',
  });
  return matches.filter((_, index) => flow[index] === 1);
}

/** Log odds that two observers' records are of one flock; `null` if they cannot be. */
function scoreMatch(
  a: Flock,
  b: Flock,
  row: number,
  column: number,
  fits: readonly (readonly (number | null)[])[],
  spread: SizeSpread,
  waterbody: Waterbody,
): number | null {
  const fit = fits[row]?.[column] ?? null;
  if (fit === null || intersection(a.tally.sections, b.tally.sections).length === 0) return null;
  // How many flocks of the kind each recorded: the fewer, the less likely they meet by chance.
  const inRow = (fits[row] ?? []).reduce<number>((sum, value) => sum + (value ?? 0), 0);
  const inColumn = fits.reduce((sum, values) => sum + (values[column] ?? 0), 0);
  const partial = a.tally.coverage < 1 || b.tally.coverage < 1;
  const size = sizeRatio(
    { mean: Math.log(a.number), variance: a.logVariance },
    { mean: Math.log(b.number), variance: b.logVariance },
    spread,
    DRAWN_DIFFERENTLY,
  );
  return (
    (partial ? SEEN_BY_BOTH_IF_PARTIAL : SEEN_BY_BOTH) +
    Math.log(fit / Math.max(inRow, inColumn)) +
    size.weight +
    (sexesLogRatio(a, b) ?? 0) +
    sharesLogRatio(a, b) +
    nearness(a, b, waterbody) +
    (a.label !== null && a.label === b.label ? SAME_LABEL : 0)
  );
}

/** Log-likelihood ratio of two positions in a section: a flock that drifts, against any two. */
function nearness(a: Flock, b: Flock, waterbody: Waterbody): number {
  if (a.position === null || b.position === null) return 0;
  const [from, to] = [a, b].map(({ position, tally }) => {
    const { points, variance } = waterbody.whereabouts(position, tally);
    return points[0] === undefined ? null : { point: points[0], variance };
  });
  if (!from || !to) return 0;
  const gap = Math.max(0, a.moment.start - b.moment.end, b.moment.start - a.moment.end) / 3_600_000;
  const spot = sameSpotDensity(from, to, gap) * waterbody.areaOf(a.tally.sections);
  return Math.log(MISPLACED + (1 - MISPLACED) * spot);
}
