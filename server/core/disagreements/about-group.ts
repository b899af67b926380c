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
import { joined, listed, say, type Said, type Saying } from '../model/saying.js';
import { basisOfGroup } from '../rulings/basis.js';
import { keyOf, union, type CandidateSet } from '../taxa/candidate-set.js';
import type { CellFlocks } from './cell-flocks.js';
import type { Words } from './words.js';

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
  says: { text: Saying; proposals: readonly Proposal[] },
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
 * The group after a number: "Redhead"; for several identifications the coarsest name,
 * which says most with fewest words: "birds of the group Aythya sp.".
 */
export function taxa({ group, words }: GroupInQuestion): Said {
  const all = group.identifications.reduce<CandidateSet>((sum, set) => union(sum, set), []);
  const taxon = words.taxon(all);
  return group.identifications.length === 1 ? taxon : say('birds of the group {taxon}', { taxon });
}

/** "in North Arm", or "flying through North Arm". */
export function where({ compared, words }: GroupInQuestion): Saying {
  const { layer, place } = compared.cell;
  return layer === 'using' ? words.inPlace(place) : words.throughPlace(place);
}

/** The same at the beginning of a sentence. */
export function inPlace({ compared, words }: GroupInQuestion): Saying {
  const { layer, place: sections } = compared.cell;
  const place = words.place(sections);
  if (layer === 'flying-through') return say('Flying through {place}', { place });
  return sections.length === 1
    ? say('In {place}', { place })
    : say('In {places}', { places: place });
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
export function mostOf(said: readonly Saying[], flows: readonly BalanceFlow[], words: Words): Said {
  const shown = 3;
  const rest = flows.slice(shown).reduce((sum, flow) => sum + flow.number, 0);
  // Portions are shared out: a few of them together may be less than a bird.
  if (Math.round(rest) === 0) return listed(said.slice(0, shown));
  return say('{first}, and {rest} more otherwise', {
    first: joined(said.slice(0, shown), ', '),
    rest: words.birds(rest),
  });
}

export function letStand(question: GroupInQuestion): Proposal {
  const { draft, words } = question;
  const text =
    draft.lines.length === 0
      ? say('Let the draft stand: none')
      : say('Let the draft stand: {lines}', { lines: words.lines(draft.lines) });
  return ruleProposal(question, { kind: 'let-stand' }, text);
}

export function accept(question: GroupInQuestion, look: Look, text?: Saying): Proposal {
  const { group, words } = question;
  return ruleProposal(
    question,
    { kind: 'accept-observer', observer: look.observer },
    text ??
      say("Take {observer}'s own lines, {total} birds", {
        observer: words.observer(look),
        total: words.number(totalIn(look, group)),
      }),
  );
}

/** The draft with some of its birds under other names (`undefined` keeps one), the total unchanged. */
export function moved(
  question: GroupInQuestion,
  rename: (portion: Portion) => CandidateSet | undefined,
  text: Saying,
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
  text: Saying,
): Proposal {
  const { compared, group } = question;
  return { text, target: { kind: 'group', cell: compared.cell.id, group: group.taxa }, decision };
}

/** True if the set is one of the group's identifications. */
export function isIn(group: CellGroup, set: readonly string[]): boolean {
  const key = keyOf(set);
  return group.identifications.some((each) => keyOf(each) === key);
}
