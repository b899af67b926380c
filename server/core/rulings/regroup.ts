import {
  groupFrom,
  setOutToCount,
  type CellGroup,
  type ComparedCell,
  type ComparedPair,
} from '../compare/compare-cell.js';
import { pairingBalance, type Balance, type Stock } from '../compare/pairing-balance.js';
import type { Look } from '../align/looks.js';
import type { RulingOutcome } from '../model/result.js';
import type { Ruling } from '../model/ruling.js';
import { Refusal } from '../refusal.js';
import { keyOf, type CandidateSet, type LookAlikes } from '../taxa/candidate-set.js';
import { taxonName } from '../taxa/taxon-name.js';
import { basisOfGroup, sameBasis } from './basis.js';
import { targetKey, targetSaying } from './check-contradictions.js';
import { joined, say } from '../model/saying.js';
import { applied, noGroup, talliesChanged } from './outcome-words.js';

/**
 * Merges and splits groups of a cell as its rulings say, before anything is settled. The parts of a
 * split group are paired anew, each by itself: birds of one part are no longer taken for birds of
 * another.
 */
export function regroup(
  compared: ComparedCell,
  rulings: readonly Ruling[],
  lookAlikes: LookAlikes,
): { compared: ComparedCell; outcomes: RulingOutcome[] } {
  let current = compared;
  const outcomes: RulingOutcome[] = [];
  for (const ruling of rulings) {
    const { target, decision } = ruling;
    if (target.kind !== 'group') continue;
    if (decision.kind !== 'merge-groups' && decision.kind !== 'split-group') continue;
    const group = current.groups.find((each) => isNamed(each, target.group));
    if (group === undefined) {
      const text = noGroup(target);
      outcomes.push({ id: ruling.id, state: 'without-target', text });
      continue;
    }
    if (
      ruling.basis !== null &&
      !sameBasis(ruling.basis, basisOfGroup(current.cell.looks, group))
    ) {
      outcomes.push({
        id: ruling.id,
        state: 'stale',
        text: talliesChanged(target),
      });
      continue;
    }
    if (decision.kind === 'split-group') {
      current = split(current, group, partsOf(group, ruling, decision.parts), lookAlikes);
      outcomes.push({ id: ruling.id, state: 'applied', text: applied(ruling) });
      continue;
    }
    const other = current.groups.find((each) => each !== group && isNamed(each, decision.with));
    if (other === undefined) {
      const text = say(
        '{other} is no other group of {cell}, so {target} cannot be merged with it',
        {
          other: joined([...decision.with].sort(), ', '),
          cell: target.cell,
          target: targetSaying(target),
        },
      );
      outcomes.push({ id: ruling.id, state: 'without-target', text });
      continue;
    }
    current = merge(current, group, other);
    outcomes.push({ id: ruling.id, state: 'applied', text: applied(ruling) });
  }
  return { compared: current, outcomes };
}

/** True for a ruling that merges or splits a group, of this cell if one is given. */
export function changesGroups({ target, decision }: Ruling, cell?: string): boolean {
  return (
    (decision.kind === 'merge-groups' || decision.kind === 'split-group') &&
    target.kind === 'group' &&
    (cell === undefined || target.cell === cell)
  );
}

/** Rulings that merge or split a group of a cell that is not there. */
export function withoutCell(rulings: readonly Ruling[], cells: readonly string[]): RulingOutcome[] {
  return rulings
    .filter((ruling) => changesGroups(ruling))
    .filter(({ target }) => target.kind === 'group' && !cells.includes(target.cell))
    .map(({ id, target }) => ({
      id,
      state: 'without-target',
      text: noGroup(target),
    }));
}

function isNamed(group: CellGroup, taxa: readonly string[]): boolean {
  return [...taxa].sort().join('+') === group.taxa.join('+');
}

function merge(compared: ComparedCell, one: CellGroup, other: CellGroup): ComparedCell {
  return withGroups(compared, [one, other], [[...one.identifications, ...other.identifications]]);
}

function split(
  compared: ComparedCell,
  group: CellGroup,
  parts: readonly (readonly CandidateSet[])[],
  lookAlikes: LookAlikes,
): ComparedCell {
  const inGroup = new Set(group.identifications.map(keyOf));
  const pairs = compared.pairs.map((pair): ComparedPair => {
    const stockOf = (look: Look, against: Look, part: readonly CandidateSet[]): Stock[] =>
      look.lines.filter(
        (line) =>
          part.some((set) => keyOf(set) === keyOf(line.candidates)) &&
          setOutToCount(against, line.candidates),
      );
    const apart = parts.map((part) =>
      pairingBalance(stockOf(pair.a, pair.b, part), stockOf(pair.b, pair.a, part), lookAlikes),
    );
    const others = pair.balance.flows.filter((flow) => !inGroup.has(keyOf(flow.a ?? flow.b ?? [])));
    return { ...pair, balance: balanceOf([...others, ...apart.flatMap((each) => each.flows)]) };
  });
  return withGroups({ ...compared, pairs }, [group], parts);
}

/** The five totals of some flows; whole, since the flows of a kind add up to whole birds. */
function balanceOf(flows: Balance['flows']): Balance {
  const total = (kind: Balance['flows'][number]['kind']): number =>
    Math.round(
      flows.filter((flow) => flow.kind === kind).reduce((sum, flow) => sum + flow.number, 0),
    );
  return {
    agreed: total('agreed'),
    compatible: total('compatible'),
    differently: total('differently'),
    onlyA: total('only-a'),
    onlyB: total('only-b'),
    flows,
  };
}

function withGroups(
  compared: ComparedCell,
  gone: readonly CellGroup[],
  come: readonly (readonly CandidateSet[])[],
): ComparedCell {
  const left = compared.groups.filter((group) => !gone.includes(group));
  const sets = [...left.map((group) => group.identifications), ...come].map((group) =>
    [...group].sort((one, other) => (keyOf(one) < keyOf(other) ? -1 : 1)),
  );
  const first = (group: readonly CandidateSet[]): string => keyOf(group[0] ?? []);
  return {
    ...compared,
    groups: sets
      .sort((one, other) => (first(one) < first(other) ? -1 : 1))
      .map((identifications, index) => groupFrom(identifications, index)),
  };
}

/** @throws Refusal BAD_INPUT where the parts are not all of the group's taxa, each once. */
function partsOf(
  group: CellGroup,
  ruling: Ruling,
  parts: readonly (readonly string[])[],
): CandidateSet[][] {
  const named = parts.flat().sort();
  if (named.join('+') !== group.taxa.join('+') || parts.length < 2) {
    throw new Refusal(
      'BAD_INPUT',
      say(
        "Ruling {id} takes {target} apart, but its parts are not the group's taxa, each once in two parts or more. They are: {taxa}.",
        { id: ruling.id, target: targetKey(ruling.target), taxa: joined(group.taxa, ', ') },
      ),
    );
  }
  return parts.map((part) => group.identifications.filter((set) => part.includes(taxonName(set))));
}
