import type { Look } from '../align/looks.js';
import { keyOf, type CandidateSet } from '../taxa/candidate-set.js';
import {
  countsAllOf,
  seeksGroup,
  type CellGroup,
  type ComparedCell,
} from '../compare/compare-cell.js';
import { largestRemainder } from '../math/largest-remainder.js';
import type { Protocol, Rule } from '../model/protocol.js';
import type { Consensus } from '../model/result.js';
import { tau2OfCell } from './between-observers.js';
import { compositionOfLook, compositionOfPairs, type Portion } from './composition.js';
import { intervalOf, spreadOf } from './interval.js';
import { numbersByRule } from './numbers-by-rule.js';
import { totalIn, unitsOf, type Unit } from './units.js';

/** So many whole birds of one identification. */
export interface SettledLine {
  readonly candidates: CandidateSet;
  readonly number: number;
}

/** A group's consensus, its whole-bird lines, and the portions that they were made from. */
export interface SettledGroup {
  readonly consensus: Consensus;
  /** Sorted by candidate set; add up to the consensus number. */
  readonly lines: readonly SettledLine[];
  readonly portions: readonly Portion[];
  /** The independent counts that the interval rests on; none where nobody saw any. */
  readonly units: readonly Unit[];
  /** What the observers of its cell differ beyond known counting error, on the ln scale. */
  readonly tau2OfCell: number;
}

/** What the observers of a cell differ beyond known counting error: `between-observers.ts`. */
export function tau2OfCompared(compared: ComparedCell, protocol: Protocol): number {
  return tau2OfCell(
    compared.groups.map((group) =>
      unitsOf(
        compared.cell.looks.filter((look) => seeksGroup(look, group) && countsAllOf(look, group)),
        group,
        protocol,
      ),
    ),
  );
}

/**
 * Settles one group of a cell by a rule: its total from the independent full counts, its
 * composition from their pairing balance (method section 6).
 *
 * Where only partial tallies saw the birds, the highest of them stands as a lower bound.
 * The designated observer's rule takes that observer's own lines; where the designated observer has
 * no such tally, the mean stands in and the consensus says so by its rule.
 *
 * @param ofCell τ² of the cell, from `tau2OfCompared`: the same for all of its groups.
 */
export function settleGroup(
  compared: ComparedCell,
  group: CellGroup,
  protocol: Protocol,
  ofCell: number,
  rule: Rule = protocol.rule,
): SettledGroup {
  const seeking = compared.cell.looks.filter((look) => seeksGroup(look, group));
  const full = seeking.filter((look) => countsAllOf(look, group));
  const saw = full.filter((look) => totalIn(look, group) > 0);
  const entering = protocol.zeros === 'absent' ? full : saw;
  if (saw.length === 0) {
    return settleWithoutFullCount(seeking, full, group, protocol, rule, ofCell);
  }

  const units = unitsOf(entering, group, protocol);
  const designatedLook = designatedIn(entering, compared, protocol);
  const designatedTotal = designatedLook === null ? null : totalIn(designatedLook, group);
  const byRule = numbersByRule(units, designatedTotal, ofCell);
  const applied: Rule = byRule[rule] === undefined ? 'mean' : rule;
  const number = Math.round(byRule[applied] ?? 0);
  const byDesignated = applied === 'designated' && designatedLook !== null;
  const portions = byDesignated
    ? compositionOfLook(designatedLook, group)
    : compositionOf(compared, saw, group, protocol);
  const intervalUnits = byDesignated ? unitsOf([designatedLook], group, protocol) : units;
  return {
    consensus: {
      rule: applied,
      basis: units.length === 1 || byDesignated ? 'single' : 'several',
      number,
      ...intervalOf(number, intervalUnits, ofCell),
      ...spreadOf(units),
      byRule: wholeBirds(byRule),
      observers: (byDesignated ? [designatedLook] : entering).map((look) => look.observer),
    },
    lines: wholeLines(number, portions),
    portions,
    units: intervalUnits,
    tau2OfCell: ofCell,
  };
}

/** Shares out a whole number of birds by the portions' shares, ties by sorted candidate set. */
export function wholeLines(number: number, portions: readonly Portion[]): SettledLine[] {
  const bySet = new Map<string, { candidates: CandidateSet; share: number }>();
  for (const portion of portions) {
    const key = keyOf(portion.candidates);
    const known = bySet.get(key)?.share ?? 0;
    bySet.set(key, { candidates: portion.candidates, share: known + portion.share });
  }
  const sets = [...bySet.entries()].sort(([one], [other]) => (one < other ? -1 : 1));
  const parts = largestRemainder(
    number,
    sets.map(([, { share }]) => share),
  );
  return sets
    .map(([, { candidates }], index) => ({ candidates, number: parts[index] ?? 0 }))
    .filter((line) => line.number > 0);
}

/** From pairs of independent looks; failing that of dependent ones; failing that the looks alone. */
function compositionOf(
  compared: ComparedCell,
  saw: readonly Look[],
  group: CellGroup,
  protocol: Protocol,
): Portion[] {
  const pairs = compared.pairs.filter((pair) => saw.includes(pair.a) && saw.includes(pair.b));
  const independent = pairs.filter((pair) => pair.independent);
  if (independent.length > 0) return compositionOfPairs(independent, group, protocol);
  if (pairs.length > 0) return compositionOfPairs(pairs, group, protocol);
  return averageOfLooks(saw, group);
}

/** The looks' own lines, each look with the same say. */
function averageOfLooks(looks: readonly Look[], group: CellGroup): Portion[] {
  return looks.flatMap((look) =>
    compositionOfLook(look, group).map((portion) => ({
      ...portion,
      number: portion.number / looks.length,
      share: portion.share / looks.length,
    })),
  );
}

/** Nobody who saw all of the place saw these birds: the highest partial tally, or none at all. */
function settleWithoutFullCount(
  seeking: readonly Look[],
  full: readonly Look[],
  group: CellGroup,
  protocol: Protocol,
  rule: Rule,
  ofCell: number,
): SettledGroup {
  const partial = seeking.filter((look) => !countsAllOf(look, group) && totalIn(look, group) > 0);
  const none: SettledGroup = {
    consensus: {
      rule,
      basis: 'none',
      number: 0,
      low: 0,
      high: 0,
      ...spreadOf([]),
      byRule: {},
      observers: full.map((look) => look.observer),
    },
    lines: [],
    portions: [],
    units: [],
    tau2OfCell: ofCell,
  };
  // Those who saw all of the place and listed none have claimed absence, where the protocol says so.
  if (partial.length === 0 || (protocol.zeros === 'absent' && full.length > 0)) return none;
  const highest = Math.max(...partial.map((look) => totalIn(look, group)));
  const best = partial.filter((look) => totalIn(look, group) === highest);
  const portions = averageOfLooks(best, group);
  const units: Unit[] = unitsOf(best, group, protocol);
  const seen = Math.min(...best.map((look) => look.coverage));
  const { low } = intervalOf(highest, units, ofCell);
  // Upward, the unseen part may hold birds at the same density: a guess, and wide on purpose.
  const { high } = intervalOf(Math.ceil(highest / seen), units, ofCell);
  return {
    consensus: {
      ...none.consensus,
      basis: 'partial',
      number: highest,
      low,
      high,
      observers: best.map((look) => look.observer),
    },
    lines: wholeLines(highest, portions),
    portions,
    units,
    tau2OfCell: ofCell,
  };
}

function designatedIn(
  looks: readonly Look[],
  compared: ComparedCell,
  protocol: Protocol,
): Look | null {
  const named = new Set(
    compared.cell.place.map((section) => protocol.designated[section] ?? protocol.designated['*']),
  );
  return looks.find((look) => named.size === 1 && named.has(look.observer)) ?? null;
}

function wholeBirds(byRule: Partial<Record<Rule, number>>): Partial<Record<Rule, number>> {
  return Object.fromEntries(
    Object.entries(byRule).map(([rule, number]) => [rule, Math.round(number)]),
  );
}
