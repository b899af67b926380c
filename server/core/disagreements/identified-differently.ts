import type { Look } from '../align/looks.js';
import type { CellGroup, ComparedPair } from '../compare/compare-cell.js';
import type { BalanceFlow } from '../compare/pairing-balance.js';
import type { Flock } from '../link/flock.js';
import type { Disagreement, Proposal, Severity } from '../model/result.js';
import { joined, listed, say, setApart, type Said, type Saying } from '../model/saying.js';
import { basisOfGroup } from '../rulings/basis.js';
import { keyOf, type CandidateSet } from '../taxa/candidate-set.js';
import {
  describe,
  inPlace,
  isIn,
  letStand,
  mostOf,
  moved,
  ruleProposal,
  worstPair,
  type GroupInQuestion,
} from './about-group.js';
import type { RecordsApart } from './flocks-apart.js';
import { numbersByFlock } from './numbers-by-flock.js';
import { severityOfBirds } from './severity.js';
import type { Words } from './words.js';

/**
 * Birds of a group that observers named as different look-alikes, beyond counting error: flock by
 * flock where observers kept flocks apart, and for all birds together that belong to no such flock.
 *
 * Where the pairing balance of the whole cell has birds identified differently and neither says so,
 * it is noted and not held against anyone: the balance adds flocks up, so that what is missing in
 * one may be made up for by another, and counts err.
 */
export function identifiedDifferently(question: GroupInQuestion): Disagreement[] {
  const inFlocks = question.flocks.apart
    .filter((apart) => homeOf(apart, question.compared.groups) === question.group)
    .map((apart) => ofFlock(apart, question));
  const beside = besideFlocks(question);
  if (beside !== null) return [...inFlocks, beside];
  if (inFlocks.length > 0) return inFlocks;
  const within = withinError(question);
  return within === null ? [] : [within];
}

/** The group that most of the birds belong to, by the name of either side; ties by order of groups. */
function homeOf(apart: readonly RecordsApart[], groups: readonly CellGroup[]): CellGroup | null {
  const flows = apart.flatMap((records) => records.flows);
  const birdsIn = (group: CellGroup): number =>
    flows.reduce(
      (sum, { a, b, number }) =>
        sum + number * [a, b].filter((set) => set !== null && isIn(group, set)).length,
      0,
    );
  return (
    groups.reduce<{ group: CellGroup; birds: number } | null>((most, group) => {
      const birds = birdsIn(group);
      return birds > (most?.birds ?? 0) ? { group, birds } : most;
    }, null)?.group ?? null
  );
}

function ofFlock(apart: readonly RecordsApart[], question: GroupInQuestion): Disagreement {
  const { compared, group, protocol, words } = question;
  const birds = Math.max(...apart.map((records) => records.birds));
  const flocks = [...new Set(apart.flatMap(({ a, b }) => [a, b]))].sort((one, other) =>
    one.key < other.key ? -1 : 1,
  );
  const named = flocks.map((flock, index) =>
    ofObserver(flock, index === 0 ? words.birds(flock.number) : words.number(flock.number), words),
  );
  const lines = [
    ...new Set(
      apart.flatMap(({ a, b, flows }) => [
        ...linesNamed(
          a,
          flows.map((flow) => flow.a),
        ),
        ...linesNamed(
          b,
          flows.map((flow) => flow.b),
        ),
      ]),
    ),
  ].sort();
  return {
    id: `identified-differently:${compared.cell.id}:${group.taxa.join('+')}:${flocks[0]?.lines[0]?.id ?? ''}`,
    kind: 'identified-differently',
    severity: severityOfBirds(birds, protocol),
    birds,
    cell: compared.cell.id,
    group: group.taxa,
    link: null,
    observers: [...new Set(flocks.map(({ tally }) => tally.observer))].sort(),
    lines,
    text: say('{where} {flocks} are taken for one flock: {calls}.', {
      where: inPlace(question),
      flocks: listed(named),
      calls: setApart(apart.map((records) => callsOf(records, words))),
    }),
    proposals: [letStand(question), ...namings(apart, flocks, question)],
    basis: basisOfGroup(compared.cell.looks, group),
    ruledBy: null,
  };
}

/** `A. Name's “big raft” (85 birds)`, in quotes the observer's own label. */
function ofObserver({ tally, lines }: Flock, birds: Said, words: Words): Saying {
  const label = lines.map(({ flock }) => flock?.trim() ?? '').find((text) => text !== '');
  const person = words.person(tally.observer);
  return label === undefined
    ? say("{person}'s flock ({birds})", { person, birds })
    : say("{person}'s “{label}” ({birds})", { person, label, birds });
}

function linesNamed(flock: Flock, sets: readonly BalanceFlow['a'][]): string[] {
  const keys = new Set(sets.map((set) => keyOf(set ?? [])));
  return flock.lines.filter((line) => keys.has(keyOf(line.candidates))).map(({ id }) => id);
}

function callsOf({ a, b, flows }: RecordsApart, words: Words): Saying {
  return say('{person} called {birds}', {
    person: words.person(a.tally.observer),
    birds: calledOtherwise(flows, words.person(b.tally.observer), words),
  });
}

/** "60 birds Greater Scaup that B. Name called Lesser Scaup", most birds first. */
function calledOtherwise(flows: readonly BalanceFlow[], other: Said, words: Words): Said {
  const ordered = flows.toSorted((one, another) => another.number - one.number);
  const said = ordered.map((flow) =>
    say('{birds} {taxon} that {other} called {otherTaxon}', {
      birds: words.birds(flow.number),
      taxon: words.taxon(flow.a ?? []),
      other,
      otherTaxon: words.taxon(flow.b ?? []),
    }),
  );
  return mostOf(said, ordered, words);
}

/**
 * To take one observer's names for the flock, where all of them belong to the group; otherwise to
 * settle the groups together first, since a ruling is about one group.
 */
function namings(
  apart: readonly RecordsApart[],
  flocks: readonly Flock[],
  question: GroupInQuestion,
): Proposal[] {
  const { compared, group, draft, words } = question;
  const sets = apart.flatMap(({ flows }) => flows.flatMap(({ a, b }) => [a ?? [], b ?? []]));
  const others = compared.groups.filter(
    (each) => each !== group && sets.some((set) => isIn(each, set)),
  );
  if (others.length > 0) {
    return others.map((other) =>
      ruleProposal(
        question,
        { kind: 'merge-groups', with: other.taxa },
        say("Settle {taxa} together with this group, to name the flock's birds", {
          taxa: listed(other.identifications.map((set) => words.taxon(set))),
        }),
      ),
    );
  }
  if (draft.consensus.number === 0) return [];
  return flocks.map((flock) => {
    const lines = numbersByFlock(question, flock);
    return ruleProposal(
      question,
      { kind: 'set-numbers', lines },
      say("Take {person}'s names for this flock: {lines}", {
        person: words.person(flock.tally.observer),
        lines: words.lines(lines),
      }),
    );
  });
}

/** Birds that belong to no flock that both kept, held against each other together. */
function besideFlocks(question: GroupInQuestion): Disagreement | null {
  const { flocks, group, protocol } = question;
  const candidates = flocks.pairs.map(({ pair, besideFlocks: all }) => {
    const flows = inGroup(all, group);
    return { pair, flows, birds: birdsOf(flows) };
  });
  const worst = candidates.reduce<(typeof candidates)[number] | null>(
    (most, each) => (each.birds > (most?.birds ?? 0) ? each : most),
    null,
  );
  if (worst === null) return null;
  return ofPair(
    worst.pair,
    worst.flows,
    severityOfBirds(worst.birds, protocol),
    toldApart,
    question,
  );
}

/** What the balance of the whole cell has, where flocks and counting error leave nothing of it. */
function withinError(question: GroupInQuestion): Disagreement | null {
  const { flocks } = question;
  const worst = worstPair(question, 'differently');
  if (worst === null) return null;
  const withoutFlocks =
    flocks.pairs.find(({ pair }) => pair === worst.pair)?.lines.withoutFlocks ?? true;
  const told = withoutFlocks ? toldWithinError : toldWithinFlocks;
  const found = ofPair(worst.pair, worst.flows, 'note', told, question);
  if (withoutFlocks || question.draft.consensus.number === 0) return found;
  const lines = numbersByFlock(question, null);
  return {
    ...found,
    proposals: [
      ...found.proposals,
      ruleProposal(
        question,
        { kind: 'set-numbers', lines },
        say('Name the birds flock by flock: {lines}', { lines: question.words.lines(lines) }),
      ),
    ],
  };
}

/** All birds of a group that two looks named differently, flocks aside. */
function ofPair(
  pair: ComparedPair,
  flows: readonly BalanceFlow[],
  severity: Severity,
  told: (values: CallsOfPair) => Saying,
  question: GroupInQuestion,
): Disagreement {
  const { words } = question;
  const ordered = flows.toSorted((one, other) => other.number - one.number);
  const named = (look: Look, side: 'a' | 'b'): Proposal =>
    moved(
      question,
      (portion) =>
        portion.kind === 'differently'
          ? portion.sides.find((each) => each.observer === look.observer)?.candidates
          : undefined,
      say("Take {observer}'s identification: {taxa}", {
        observer: words.observer(look),
        taxa: joined(
          setsOf(ordered, side).map((set) => words.taxon(set)),
          ', ',
        ),
      }),
    );
  return describe(question, 'identified-differently', severity, birdsOf(flows), [pair.a, pair.b], {
    text: told({
      where: inPlace(question),
      observer: words.observer(pair.a),
      birds: calledOtherwise(flows, words.observer(pair.b), words),
    }),
    proposals: [letStand(question), named(pair.a, 'a'), named(pair.b, 'b')],
  });
}

type CallsOfPair = Readonly<Record<'where' | 'observer' | 'birds', Said>>;

function toldApart(values: CallsOfPair): Saying {
  return say('{where} {observer} called {birds}.', values);
}

function toldWithinError(values: CallsOfPair): Saying {
  return say('{where} {observer} called {birds}, no more than counting error explains.', values);
}

function toldWithinFlocks(values: CallsOfPair): Saying {
  return say(
    '{where} {observer} called {birds}; flock by flock their names agree within counting error.',
    values,
  );
}

/** What one side calls the birds, each name once. */
function setsOf(flows: readonly BalanceFlow[], side: 'a' | 'b'): CandidateSet[] {
  const sets = flows.map((flow) => flow[side] ?? []);
  return [...new Map(sets.map((set) => [keyOf(set), set])).values()];
}

function inGroup(flows: readonly BalanceFlow[], group: CellGroup): BalanceFlow[] {
  return flows.filter(({ a }) => a !== null && isIn(group, a));
}

function birdsOf(flows: readonly BalanceFlow[]): number {
  return Math.round(flows.reduce((sum, { number }) => sum + number, 0));
}
