import type { Look } from '../align/looks.js';
import {
  linesInGroup,
  type CellGroup,
  type ComparedCell,
  type ComparedPair,
} from '../compare/compare-cell.js';
import type { BalanceFlow } from '../compare/pairing-balance.js';
import type { Portion } from '../consensus/composition.js';
import { wholeLines, type SettledGroup, type SettledLine } from '../consensus/settle-group.js';
import { totalIn } from '../consensus/units.js';
import type { Protocol } from '../model/protocol.js';
import type { Disagreement, DisagreementKind, Proposal, Severity } from '../model/result.js';
import type { Decision } from '../model/ruling.js';
import { basisOfGroup } from '../rulings/basis.js';
import { keyOf, union, type CandidateSet } from '../taxa/candidate-set.js';
import type { CellFlocks } from './cell-flocks.js';
import { listed, type Words } from './words.js';

/** One group of one cell with its draft, and all that is needed to speak about it. */
export interface GroupInQuestion {
  readonly compared: ComparedCell;
  readonly group: CellGroup;
  readonly draft: SettledGroup;
  /** The flocks of the cell, matched between observers. */
  readonly flocks: CellFlocks;
  readonly protocol: Protocol;
  readonly words: Words;
}

export function describe(
  question: GroupInQuestion,
  kind: DisagreementKind,
  severity: Severity,
  birds: number,
  looks: readonly Look[],
  says: { text: string; proposals: readonly Proposal[] },
): Disagreement {
  const { compared, group } = question;
  return {
    id: `${kind}:${compared.cell.id}:${group.taxa.join('+')}`,
    kind,
    severity,
    birds: Math.round(birds),
    cell: compared.cell.id,
    group: group.taxa,
    link: null,
    observers: looks.flatMap((look) => look.observer.split('+')).sort(),
    lines: looks
      .flatMap((look) =>
        linesInGroup(look, group).flatMap((line) => line.sources.map((each) => each.id)),
      )
      .sort(),
    text: says.text,
    proposals: says.proposals,
    basis: basisOfGroup(compared.cell.looks, group),
    ruledBy: null,
  };
}

/**
 * The group in English after a number: "Redhead"; for several identifications the coarsest name,
 * which says most with fewest words: "birds of the group Aythya sp.".
 */
export function taxa({ group, words }: GroupInQuestion): string {
  const all = group.identifications.reduce<CandidateSet>((sum, set) => union(sum, set), []);
  const name = words.taxon(all);
  return group.identifications.length === 1 ? name : `birds of the group ${name}`;
}

/** "in North Arm", or "flying through North Arm". */
export function where({ compared, words }: GroupInQuestion): string {
  const { layer, place } = compared.cell;
  return `${layer === 'using' ? 'in' : 'flying through'} ${words.place(place)}`;
}

export function inPlace(question: GroupInQuestion): string {
  const text = where(question);
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The pair with most birds of a kind in this group, with those flows, most birds first. */
export function worstPair(
  { compared, group }: GroupInQuestion,
  kind: 'compatible' | 'differently',
): { pair: ComparedPair; flows: readonly BalanceFlow[]; birds: number } | null {
  const inGroup = new Set(group.identifications.map(keyOf));
  const candidates = compared.pairs.map((pair) => {
    const flows = pair.balance.flows
      .filter((flow) => flow.kind === kind && flow.a !== null && inGroup.has(keyOf(flow.a)))
      .sort((one, other) => other.number - one.number);
    return { pair, flows, birds: Math.round(flows.reduce((sum, flow) => sum + flow.number, 0)) };
  });
  return candidates.reduce<(typeof candidates)[number] | null>(
    (worst, each) => (each.birds > (worst?.birds ?? 0) ? each : worst),
    null,
  );
}

/** The first three in words, the rest as a number: a sentence stays a sentence. */
export function mostOf(
  said: readonly string[],
  flows: readonly BalanceFlow[],
  words: Words,
): string {
  const shown = 3;
  if (said.length <= shown) return listed(said);
  const rest = flows.slice(shown).reduce((sum, flow) => sum + flow.number, 0);
  return `${said.slice(0, shown).join(', ')}, and ${words.birds(rest)} more otherwise`;
}

export function letStand(question: GroupInQuestion): Proposal {
  const { draft, words } = question;
  const lines = draft.lines.map(
    (line) => `${words.number(line.number)} ${words.taxon(line.candidates)}`,
  );
  const kept = lines.length === 0 ? 'none' : listed(lines);
  return ruleProposal(question, { kind: 'let-stand' }, `Let the draft stand: ${kept}`);
}

export function accept(question: GroupInQuestion, look: Look, text?: string): Proposal {
  const { group, words } = question;
  const total = words.number(totalIn(look, group));
  return ruleProposal(
    question,
    { kind: 'accept-observer', observer: look.observer },
    text ?? `Take ${words.observer(look)}'s own lines, ${total} birds`,
  );
}

/** The draft with some of its birds under other names (`undefined` keeps one), the total unchanged. */
export function moved(
  question: GroupInQuestion,
  rename: (portion: Portion) => CandidateSet | undefined,
  text: string,
): Proposal {
  const { draft } = question;
  const lines: readonly SettledLine[] = wholeLines(
    draft.consensus.number,
    draft.portions.map((portion) => ({
      ...portion,
      candidates: rename(portion) ?? portion.candidates,
    })),
  );
  return ruleProposal(question, { kind: 'set-numbers', lines }, text);
}

export function ruleProposal(
  question: GroupInQuestion,
  decision: Decision,
  text: string,
): Proposal {
  const { compared, group } = question;
  return { text, target: { kind: 'group', cell: compared.cell.id, group: group.taxa }, decision };
}

/** True if the set is one of the group's identifications. */
export function isIn(group: CellGroup, set: readonly string[]): boolean {
  const key = keyOf(set);
  return group.identifications.some((each) => keyOf(each) === key);
}
