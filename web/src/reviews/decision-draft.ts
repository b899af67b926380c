import type { MessageDescriptor } from '@lingui/core';
import { msg, t } from '@lingui/core/macro';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { taxonName } from '../../../server/core/taxa/taxon-name.js';
import type { DecisionInput, RulingTargetInput } from '../graphql/generated/graphql.js';
import { wholeNumber } from '../tallies/draft.js';
import type { Target } from './ruling-target.js';

/** A ruling while it is being written: whatever the proposals filled in, open to change. */
export interface DecisionDraft {
  readonly kind: string;
  /** A tally line, for the decisions that are about one. */
  readonly lineId: string;
  readonly observer: string;
  readonly rule: string;
  readonly from: string;
  readonly to: string;
  readonly numbers: readonly { readonly taxon: string; readonly number: string }[];
  /** The taxa of the other group that this one is settled together with. */
  readonly with: readonly string[];
  /** For each taxon of the group the part that it goes to, from 1. */
  readonly partOf: Readonly<Record<string, number>>;
}

/** What a draft begins with: the group as it now stands. */
export interface GroupAtHand {
  readonly taxa: readonly string[];
  readonly lines: readonly { readonly taxon: string; readonly number: number }[];
}

export interface ProposedDecision {
  readonly kind: string;
  readonly observer?: string | null | undefined;
  readonly rule?: string | null | undefined;
  readonly from?: readonly string[] | null | undefined;
  readonly to?: readonly string[] | null | undefined;
  readonly numbers?:
    readonly { readonly taxon: string; readonly number: number }[] | null | undefined;
}

/** What can be decided, in words; by what the ruling is about. */
export const decisionKinds: Readonly<
  Record<
    'group' | 'link' | 'line' | 'tally',
    readonly { readonly kind: string; readonly words: MessageDescriptor }[]
  >
> = {
  group: [
    { kind: 'let-stand', words: msg`The draft stands` },
    { kind: 'accept-observer', words: msg`One observer’s lines stand` },
    { kind: 'take-rule', words: msg`Another rule sets the total` },
    { kind: 'set-numbers', words: msg`These numbers stand` },
    { kind: 'identify-as', words: msg`These birds are compiled as` },
    { kind: 'merge-groups', words: msg`Settled together with another group` },
    { kind: 'split-group', words: msg`The group is taken apart` },
  ],
  link: [
    { kind: 'confirm-link', words: msg`One flock: count it once` },
    { kind: 'reject-link', words: msg`Two flocks: count both` },
  ],
  line: [
    { kind: 'identify-line', words: msg`One line is read as` },
    { kind: 'exclude', words: msg`One line is left out` },
  ],
  tally: [{ kind: 'exclude', words: msg`The tally is left out` }],
};

/** Merging or splitting: the group as it stands is no longer there afterwards. */
export function changesGroup(kind: string): boolean {
  return kind === 'merge-groups' || kind === 'split-group';
}

export function isAboutLine(kind: string): boolean {
  return decisionKinds.line.some((one) => one.kind === kind);
}

/** Candidate sets of a decision as the text that tallies use. */
function setText(candidates: readonly string[] | null | undefined): string {
  return candidates === null || candidates === undefined || candidates.length === 0
    ? ''
    : taxonName(candidates);
}

export function draftOf(
  decision: ProposedDecision,
  target: Target | null,
  group: GroupAtHand | null,
): DecisionDraft {
  return {
    kind: decision.kind,
    lineId: target?.line ?? '',
    observer: decision.observer ?? '',
    rule: decision.rule ?? '',
    from: setText(decision.from),
    to: setText(decision.to),
    numbers: (decision.numbers ?? group?.lines ?? []).map(({ taxon, number }) => ({
      taxon,
      number: String(number),
    })),
    with: [],
    partOf: Object.fromEntries((group?.taxa ?? []).map((taxon) => [taxon, 1])),
  };
}

/** The parts that a group is taken apart into, those without a taxon left out. */
export function partsOf(draft: Pick<DecisionDraft, 'partOf'>): readonly (readonly string[])[] {
  const taxa = Object.keys(draft.partOf).sort();
  const numbers = [...new Set(Object.values(draft.partOf))].sort((one, other) => one - other);
  return numbers.map((number) => taxa.filter((taxon) => draft.partOf[taxon] === number));
}

/** What is missing before the ruling can be given, by field. */
export function decisionFaults(draft: DecisionDraft, reason: string): ReadonlyMap<string, string> {
  const faults = new Map<string, string>();
  const taxonFault = (field: string, text: string): void => {
    const parsed = parseTaxon(text);
    if (parsed.ok) return;
    const { nearest } = parsed;
    if (text.trim() === '') faults.set(field, t`Name a taxon.`);
    else if (nearest === null) faults.set(field, t`“${text}” is not a known taxon.`);
    else faults.set(field, t`“${text}” is not a known taxon. Did you mean ${nearest}?`);
  };
  if (reason.trim() === '') faults.set('reason', t`Say why, so that anyone can follow the ruling.`);
  if (isAboutLine(draft.kind) && draft.lineId === '') faults.set('line', t`Choose the tally line.`);
  if (draft.kind === 'accept-observer' && draft.observer === '')
    faults.set('observer', t`Choose an observer.`);
  if (draft.kind === 'take-rule' && draft.rule === '') faults.set('rule', t`Choose a rule.`);
  if (draft.kind === 'identify-as') taxonFault('from', draft.from);
  if (draft.kind === 'identify-as' || draft.kind === 'identify-line') taxonFault('to', draft.to);
  if (draft.kind === 'merge-groups' && draft.with.length === 0)
    faults.set('with', t`Choose the other group.`);
  if (draft.kind === 'split-group' && partsOf(draft).length < 2)
    faults.set('parts', t`Put at least one taxon into another part.`);
  if (draft.kind === 'set-numbers') {
    if (draft.numbers.length === 0)
      faults.set('numbers', t`Give at least one taxon with its number.`);
    draft.numbers.forEach(({ taxon, number }, index) => {
      taxonFault(`taxon-${index}`, taxon);
      if (wholeNumber(number) === null) faults.set(`number-${index}`, t`Give whole birds.`);
    });
  }
  return faults;
}

/** The decision as it is sent; only the fields that its kind uses. */
export function decisionInput(draft: DecisionDraft): DecisionInput {
  switch (draft.kind) {
    case 'accept-observer':
      return { kind: draft.kind, observer: draft.observer };
    case 'take-rule':
      return { kind: draft.kind, rule: draft.rule };
    case 'identify-as':
      return { kind: draft.kind, from: draft.from, to: draft.to };
    case 'identify-line':
      return { kind: draft.kind, to: draft.to };
    case 'set-numbers':
      return {
        kind: draft.kind,
        numbers: draft.numbers.map(({ taxon, number }) => ({
          taxon,
          number: wholeNumber(number) ?? 0,
        })),
      };
    case 'merge-groups':
      return { kind: draft.kind, with: [...draft.with] };
    case 'split-group':
      return { kind: draft.kind, parts: partsOf(draft).map((part) => [...part]) };
    default:
      return { kind: draft.kind };
  }
}

/** What the ruling is about: a chosen line, else the proposal's own target. */
export function targetInput(draft: DecisionDraft, target: Target | null): RulingTargetInput | null {
  if (isAboutLine(draft.kind) && draft.lineId !== '') return { kind: 'line', line: draft.lineId };
  if (target === null) return null;
  return {
    kind: target.kind,
    cell: target.cell ?? null,
    group: target.group ? [...target.group] : null,
    link: target.link ?? null,
    tally: target.tally ?? null,
    line: target.line ?? null,
  };
}
