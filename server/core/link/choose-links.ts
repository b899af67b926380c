import { minCostFlow } from '../math/min-cost-flow.js';
import { UnionFind } from '../math/union-find.js';
import type { Candidate } from './association.js';

/** Costs are whole: log odds of one bird in millionths. */
const SCALE = 1_000_000;

/** A link is taken if at least this share of its birds is. */
const MOST_OF_ITS_BIRDS = 0.7;

/** What the choice is among. */
export interface Choice {
  readonly candidates: readonly Candidate[];
  /** Birds that each sighting has at most, its counting error allowed for: whole numbers. */
  readonly room: readonly number[];
  /** Whether two sightings are certainly different flocks, as one tally holds both. */
  readonly apart: (one: number, other: number) => boolean;
}

/**
 * Which candidates are taken for one flock: birds flow from sightings to later ones, no more than either
 * has, so that the log odds add up to the most, each bird bringing its share (minimum-cost flow over
 * sightings in order of time: Zhang, Li & Nevatia 2008, CVPR). So a flock may split and several may
 * join, and birds are conserved within counting error. A link that gets only some of its birds, closes a
 * ring, or makes one flock of two that one tally tells apart is taken out and the flow solved again; the
 * last flow is the cheapest there is without those.
 *
 * Those above 0 are settled first; what they leave is then given to candidates down to `least`, which a
 * compiler should still see.
 *
 * @returns indexes of the chosen candidates, ascending
 */
export function chooseLinks(choice: Choice, least: number): number[] {
  const left: readonly [number[], number[]] = [[...choice.room], [...choice.room]];
  const chosen: number[] = [];
  for (const floor of [0, least]) {
    const taken = new Set(chosen);
    const open = choice.candidates.flatMap(({ logOdds }, index) =>
      logOdds > floor && !taken.has(index) ? [index] : [],
    );
    for (const component of componentsOf(open, choice)) {
      for (const index of settle(component, floor, chosen, left, choice)) {
        const { first, second, birds } = choice.candidates[index] ?? NOTHING;
        left[0][first] = Math.max(0, (left[0][first] ?? 0) - birds);
        left[1][second] = Math.max(0, (left[1][second] ?? 0) - birds);
        chosen.push(index);
      }
    }
  }
  return chosen.toSorted((a, b) => a - b);
}

const NOTHING: Candidate = {
  first: 0,
  second: 0,
  logOdds: 0,
  birds: 0,
  isPart: false,
  cells: null,
};

type Left = readonly [first: readonly number[], second: readonly number[]];

/** Candidates that share sightings, at any remove: each such set is solved by itself. */
function componentsOf(open: readonly number[], { candidates, room }: Choice): number[][] {
  const ends = new UnionFind(2 * room.length);
  for (const index of open) {
    const { first, second } = candidates[index] ?? NOTHING;
    ends.join(first, room.length + second);
  }
  const byRoot = new Map<number, number[]>();
  for (const index of open) {
    const root = ends.rootOf(candidates[index]?.first ?? 0);
    byRoot.set(root, [...(byRoot.get(root) ?? []), index]);
  }
  return [...byRoot.values()];
}

function settle(
  component: readonly number[],
  floor: number,
  chosen: readonly number[],
  left: Left,
  choice: Choice,
): number[] {
  let open = component.filter((index) => share(index, left, choice) >= MOST_OF_ITS_BIRDS);
  // Each round takes at least one link out, or is the last.
  for (;;) {
    const flow = solve(open, floor, left, choice);
    const taken = open.filter((_, place) => (flow[place] ?? 0) > 0);
    const flowOf = new Map(open.map((index, place) => [index, flow[place] ?? 0]));
    const shareOf = (index: number): number =>
      (flowOf.get(index) ?? 0) / (choice.candidates[index]?.birds ?? 1);
    const partly = taken.filter((index) => shareOf(index) < MOST_OF_ITS_BIRDS);
    const wrong = new Set(partly.length > 0 ? partly : contradictions(taken, chosen, choice));
    if (wrong.size === 0) return taken;
    open = open.filter((index) => !wrong.has(index));
  }
}

/** How many of a candidate's birds both ends still have. */
function share(index: number, left: Left, { candidates }: Choice): number {
  const { first, second, birds } = candidates[index] ?? NOTHING;
  return Math.min(left[0][first] ?? 0, left[1][second] ?? 0) / birds;
}

function solve(
  open: readonly number[],
  floor: number,
  left: Left,
  { candidates }: Choice,
): readonly number[] {
  const nodes = new Map<string, number>();
  const nodeOf = (side: 0 | 1, sighting: number): number => {
    const key = `${side} ${sighting}`;
    const node = nodes.get(key) ?? 2 + nodes.size;
    nodes.set(key, node);
    return node;
  };
  const links = open.map((index) => {
    const { first, second, birds, logOdds } = candidates[index] ?? NOTHING;
    const cost = 0 - Math.max(1, Math.round(((logOdds - floor) * SCALE) / birds));
    return { from: nodeOf(0, first), to: nodeOf(1, second), capacity: birds, cost };
  });
  const ends = [...nodes.entries()].map(([key, node]) => {
    const [side, sighting] = key.split(' ').map(Number);
    const capacity = left[side === 0 ? 0 : 1][sighting ?? 0] ?? 0;
    return side === 0
      ? { from: 0, to: node, capacity, cost: 0 }
      : { from: node, to: 1, capacity, cost: 0 };
  });
  return minCostFlow({
    nodes: 2 + nodes.size,
    edges: [...links, ...ends],
    source: 0,
    sink: 1,
    stop: 'while-negative',
  }).flow;
}

/**
 * Of the links taken, those that close a ring or join what one tally tells apart, once the stronger ones
 * hold. Links chosen before are facts by now: they are never among them.
 */
function contradictions(
  taken: readonly number[],
  chosen: readonly number[],
  { candidates, room, apart }: Choice,
): number[] {
  const flocks = new UnionFind(room.length);
  const members = room.map((_, sighting) => [sighting]);
  const byOdds = taken.toSorted(
    (a, b) => (candidates[b]?.logOdds ?? 0) - (candidates[a]?.logOdds ?? 0) || a - b,
  );
  const facts = new Set(chosen);
  return [...chosen, ...byOdds].filter((index) => {
    const { first, second, isPart } = candidates[index] ?? NOTHING;
    const [a, b] = [flocks.rootOf(first), flocks.rootOf(second)];
    const [inA, inB] = [members[a] ?? [], members[b] ?? []];
    const toldApart = !isPart && inA.some((one) => inB.some((other) => apart(one, other)));
    if (!facts.has(index) && (a === b || toldApart)) return true;
    flocks.join(a, b);
    // Parts of one flock are different birds: what holds for the one says nothing of the other.
    members[flocks.rootOf(a)] = isPart ? inA : [...inA, ...inB];
    return false;
  });
}
