import type { Look } from '../align/looks.js';
import { countsAllOf, linesInGroup, seeksGroup } from '../compare/compare-cell.js';
import { countSpread } from '../compare/count-spread.js';
import { varianceOf } from '../compare/counting-error.js';
import { totalIn } from '../consensus/units.js';
import type { Disagreement, Severity } from '../model/result.js';
import { joined, listed, say, type Saying } from '../model/saying.js';
import { union } from '../taxa/candidate-set.js';
import {
  accept,
  describe,
  inPlace,
  letStand,
  mostOf,
  moved,
  ruleProposal,
  taxa,
  where,
  worstPair,
  type GroupInQuestion,
} from './about-group.js';
import { identifiedDifferently } from './identified-differently.js';
import { severityOfBirds, severityOfSpread } from './severity.js';

/** Everything that observers disagree on about one group (method section 3.4). */
export function disagreementsOfGroup(question: GroupInQuestion): Disagreement[] {
  return [
    countSpreadOf(question),
    seenByOne(question),
    ...identifiedDifferently(question),
    resolutionGap(question),
    partialOnly(question),
    moreSeenInPart(question),
    notCounted(question),
  ].filter((each) => each !== null);
}

function countSpreadOf(question: GroupInQuestion): Disagreement | null {
  const { group, protocol, words } = question;
  const saw = fullLooks(question).filter((look) => totalIn(look, group) > 0);
  const ordered = [...saw].sort((one, other) => totalIn(one, group) - totalIn(other, group));
  const lowest = ordered[0];
  const highest = ordered.at(-1);
  if (lowest === undefined || highest === undefined) return null;
  const low = totalIn(lowest, group);
  const high = totalIn(highest, group);
  if (low === high) return null;
  const z = countSpread(high, low, errorOf(highest, question), errorOf(lowest, question));
  const severity = severityOfSpread(z, protocol);
  return describe(question, 'count-spread', severity, high - low, saw, {
    text: say(
      '{highest} counted {high} {taxa} {where} and {lowest} {low}: {apart} apart, {verdict}.',
      {
        highest: words.observer(highest),
        high: words.number(high),
        taxa: taxa(question),
        where: where(question),
        lowest: words.observer(lowest),
        low: words.number(low),
        apart: words.number(high - low),
        verdict: verdictOf(severity),
      },
    ),
    proposals: [
      letStand(question),
      ...saw.map((look) => accept(question, look)),
      ...(protocol.rule === 'highest'
        ? []
        : [
            ruleProposal(
              question,
              { kind: 'take-rule', rule: 'highest' },
              say('Take the highest, {number}', { number: words.number(high) }),
            ),
          ]),
    ],
  });
}

function verdictOf(severity: Severity): Saying {
  switch (severity) {
    case 'note':
      return say('within their counting error');
    case 'questioned':
      return say('more than counting error usually explains');
    case 'serious':
      return say('far more than counting error explains');
  }
}

function seenByOne(question: GroupInQuestion): Disagreement | null {
  const { group, draft, protocol, words } = question;
  const full = fullLooks(question);
  const saw = full.filter((look) => totalIn(look, group) > 0);
  const none = full.filter((look) => totalIn(look, group) === 0);
  if (saw.length === 0 || none.length === 0) return null;
  const birds = Math.max(draft.consensus.number, ...saw.map((look) => totalIn(look, group)));
  const wroteZero = none.filter((look) => linesInGroup(look, group).length > 0);
  const bySize = severityOfBirds(birds, protocol);
  // A zero that was written down was looked for: it weighs more than silence.
  const severity = wroteZero.length > 0 && bySize === 'note' ? 'questioned' : bySize;
  const silent = none.filter((look) => !wroteZero.includes(look));
  const silence = [
    ...(wroteZero.length > 0
      ? [say('{observers} wrote down a zero', { observers: words.observers(wroteZero) })]
      : []),
    ...(silent.length > 0
      ? [say('{observers} listed none', { observers: words.observers(silent) })]
      : []),
  ];
  return describe(question, 'seen-by-one', severity, birds, full, {
    text: say('{observers} counted {numbers} {taxa} {where}; {silence}.', {
      observers: words.observers(saw),
      numbers: listed(saw.map((look) => words.number(totalIn(look, group)))),
      taxa: taxa(question),
      where: where(question),
      silence: joined(silence, ', '),
    }),
    proposals: [
      letStand(question),
      ...none
        .slice(0, 1)
        .map((look) => accept(question, look, say('Count none: they were not there'))),
      ...(saw.length > 1 ? saw.map((look) => accept(question, look)) : []),
    ],
  });
}

function resolutionGap(question: GroupInQuestion): Disagreement | null {
  const worst = worstPair(question, 'compatible');
  if (worst === null) return null;
  const { pair, flows, birds } = worst;
  const { protocol, words } = question;
  const said = flows.map((flow) =>
    say('{birds} as {taxon} that {other} has as {otherTaxon}', {
      birds: words.birds(flow.number),
      taxon: words.taxon(flow.a ?? []),
      other: words.observer(pair.b),
      otherTaxon: words.taxon(flow.b ?? []),
    }),
  );
  const coarser = moved(
    question,
    (portion) =>
      portion.kind === 'compatible'
        ? portion.sides.map((side) => side.candidates).reduce(union)
        : undefined,
    say('Leave these birds at the coarser level'),
  );
  // Different resolution is not a conflict; it is never more than questioned.
  const severity = severityOfBirds(birds, protocol) === 'note' ? 'note' : 'questioned';
  return describe(question, 'resolution-gap', severity, birds, [pair.a, pair.b], {
    text: say('{where} {observer} has {birds}.', {
      where: inPlace(question),
      observer: words.observer(pair.a),
      birds: mostOf(said, flows, words),
    }),
    proposals: [letStand(question), ...(protocol.resolution === 'finer' ? [coarser] : [])],
  });
}

function partialOnly(question: GroupInQuestion): Disagreement | null {
  const { compared, group, draft, protocol, words } = question;
  if (draft.consensus.basis !== 'partial') return null;
  const partial = compared.cell.looks.filter(
    (look) => !countsAllOf(look, group) && totalIn(look, group) > 0,
  );
  const birds = draft.consensus.number;
  return describe(question, 'coverage-gap', severityOfBirds(birds, protocol), birds, partial, {
    text: say(
      'Only {observers}, who did not count all of {place}, counted {taxa} there: {number} is a lower bound.',
      {
        observers: words.observers(partial),
        place: words.place(compared.cell.place),
        taxa: taxa(question),
        number: words.number(birds),
      },
    ),
    proposals: [letStand(question)],
  });
}

function moreSeenInPart(question: GroupInQuestion): Disagreement | null {
  const { compared, group, draft, protocol, words } = question;
  if (draft.consensus.basis === 'partial' || draft.consensus.basis === 'none') return null;
  const more = compared.cell.looks.filter(
    (look) => !countsAllOf(look, group) && totalIn(look, group) > draft.consensus.number,
  );
  const [first] = more;
  if (first === undefined) return null;
  const birds = totalIn(first, group) - draft.consensus.number;
  return describe(question, 'coverage-gap', severityOfBirds(birds, protocol), birds, more, {
    text: say(
      '{observer} counted only part of {place} but has {number} {taxa}, more than the {drafted} drafted from full tallies.',
      {
        observer: words.observer(first),
        place: words.place(compared.cell.place),
        number: words.number(totalIn(first, group)),
        taxa: taxa(question),
        drafted: words.number(draft.consensus.number),
      },
    ),
    proposals: [letStand(question), ...more.map((look) => accept(question, look))],
  });
}

function notCounted(question: GroupInQuestion): Disagreement | null {
  const { compared, group, draft, words } = question;
  const looks = compared.cell.looks.filter((look) =>
    linesInGroup(look, group).some((line) => line.presentNotCounted),
  );
  if (looks.length === 0) return null;
  const severity: Severity = draft.consensus.number === 0 ? 'questioned' : 'note';
  const seen = { observers: words.observers(looks), taxa: taxa(question), where: where(question) };
  return describe(question, 'not-counted', severity, draft.consensus.number === 0 ? 1 : 0, looks, {
    text:
      draft.consensus.number === 0
        ? say(
            '{observers} saw {taxa} {where} but did not count them; nobody else has a number, so the compiled count has none.',
            seen,
          )
        : say(
            '{observers} saw {taxa} {where} but did not count them; the draft of {number} rests on the others.',
            { ...seen, number: words.number(draft.consensus.number) },
          ),
    proposals: [letStand(question)],
  });
}

function fullLooks({ compared, group }: GroupInQuestion): Look[] {
  return compared.cell.looks.filter((look) => countsAllOf(look, group) && seeksGroup(look, group));
}

function errorOf(look: Look, { group, protocol }: GroupInQuestion): number {
  const total = totalIn(look, group);
  const variance = linesInGroup(look, group)
    .flatMap((line) => line.sources)
    .reduce((sum, source) => sum + varianceOf(source, protocol), 0);
  return Math.sqrt(variance) / total;
}
