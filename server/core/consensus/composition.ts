import type { Look, LookLine } from '../align/looks.js';
import { intersection, keyOf, union, type CandidateSet } from '../taxa/candidate-set.js';
import { linesInGroup, type CellGroup, type ComparedPair } from '../compare/compare-cell.js';
import type { FlowKind } from '../compare/pairing-balance.js';
import type { Protocol } from '../model/protocol.js';

/** Birds taken to be one identification, and why. */
export interface Portion {
  readonly candidates: CandidateSet;
  /** Birds as counted; over several pairs, each pair's divided by their number. May be fractional. */
  readonly number: number;
  /** Share of the group; all portions of a group add up to 1. */
  readonly share: number;
  readonly kind: 'agreed' | 'compatible' | 'differently' | 'only-one' | 'single';
  /** Who counted these birds and as what: one look, or the two of a pair. */
  readonly sides: readonly Side[];
}

export interface Side {
  readonly observer: string;
  readonly candidates: CandidateSet;
  /** Tally line ids, sorted. */
  readonly lines: readonly string[];
  /** Birds on these lines: no more can come from them. */
  readonly birds: number;
}

/**
 * What a group is made of, from the pairing balance of each pair of observers (method section 6): a
 * paired bird takes the shared species (finer) or the union (coarser); identified differently, the
 * union; unpaired, its own set. Each pair gives shares and the shares are averaged, so a pair that
 * saw more birds has no more say in the mixture.
 */
export function compositionOfPairs(
  pairs: readonly ComparedPair[],
  group: CellGroup,
  protocol: Protocol,
): Portion[] {
  return pairs.flatMap((pair) =>
    withShares(portionsOfPair(pair, group, protocol)).map((portion) => ({
      ...portion,
      number: portion.number / pairs.length,
      share: portion.share / pairs.length,
    })),
  );
}

/** One look's own lines, as it wrote them. */
export function compositionOfLook(look: Look, group: CellGroup): Portion[] {
  return withShares(
    linesInGroup(look, group)
      .filter((line) => line.number > 0)
      .map((line) => ({
        candidates: line.candidates,
        number: line.number,
        kind: 'single' as const,
        sides: [sideOf(look, line)],
      })),
  );
}

function withShares(portions: readonly Omit<Portion, 'share'>[]): Portion[] {
  const total = portions.reduce((sum, portion) => sum + portion.number, 0);
  return portions.map((portion) => ({ ...portion, share: portion.number / total }));
}

function portionsOfPair(
  pair: ComparedPair,
  group: CellGroup,
  protocol: Protocol,
): Omit<Portion, 'share'>[] {
  const inGroup = new Set(group.identifications.map(keyOf));
  return pair.balance.flows.flatMap((flow) => {
    const named = flow.a ?? flow.b;
    if (named === null || !inGroup.has(keyOf(named))) return [];
    return [
      {
        candidates: settledSet(flow.kind, flow.a ?? named, flow.b ?? named, protocol),
        number: flow.number,
        kind: flow.kind === 'only-a' || flow.kind === 'only-b' ? ('only-one' as const) : flow.kind,
        sides: [...sidesOf(pair.a, flow.a), ...sidesOf(pair.b, flow.b)],
      },
    ];
  });
}

function sidesOf(look: Look, candidates: CandidateSet | null): Side[] {
  if (candidates === null) return [];
  const key = keyOf(candidates);
  return look.lines
    .filter((line) => keyOf(line.candidates) === key)
    .map((line) => sideOf(look, line));
}

function sideOf(look: Look, line: LookLine): Side {
  return {
    observer: look.observer,
    candidates: line.candidates,
    lines: line.sources.map((source) => source.id),
    birds: line.number,
  };
}

function settledSet(
  kind: FlowKind,
  a: CandidateSet,
  b: CandidateSet,
  protocol: Protocol,
): CandidateSet {
  if (kind === 'differently') return union(a, b);
  if (kind === 'compatible') {
    return protocol.resolution === 'finer' ? intersection(a, b) : union(a, b);
  }
  return a;
}
