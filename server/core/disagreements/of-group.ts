import type { Look } from '../align/looks.js';
import { countsAllOf, linesInGroup, seeksGroup } from '../compare/compare-cell.js';
import { countSpread } from '../compare/count-spread.js';
import { varianceOf } from '../compare/counting-error.js';
import { totalIn } from '../consensus/units.js';
import type { Disagreement, Severity } from '../model/result.js';
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
import { listed } from './words.js';

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
  const verdict =
    severity === 'note'
      ? 'within their counting error'
      : severity === 'questioned'
        ? 'more than counting error usually explains'
        : 'far more than counting error explains';
  return describe(question, 'count-spread', severity, high - low, saw, {
    text:
      `${words.observer(highest)} counted ${words.number(high)} ${taxa(question)} ` +
      `${where(question)} and ${words.observer(lowest)} ${words.number(low)}: ` +
      `${words.number(high - low)} apart, ${verdict}.`,
    proposals: [
      letStand(question),
      ...saw.map((look) => accept(question, look)),
      ...(protocol.rule === 'highest'
        ? []
        : [
            ruleProposal(
              question,
              { kind: 'take-rule', rule: 'highest' },
              `Take the highest, ${words.number(high)}`,
            ),
          ]),
    ],
  });
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
    ...(wroteZero.length > 0 ? [`${words.observers(wroteZero)} wrote down a zero`] : []),
    ...(silent.length > 0 ? [`${words.observers(silent)} listed none`] : []),
  ].join(', ');
  return describe(question, 'seen-by-one', severity, birds, full, {
    text:
      `${words.observers(saw)} counted ${listed(saw.map((look) => words.number(totalIn(look, group))))} ` +
      `${taxa(question)} ${where(question)}; ${silence}.`,
    proposals: [
      letStand(question),
      ...none.slice(0, 1).map((look) => accept(question, look, 'Count none: they were not there')),
      ...(saw.length > 1 ? saw.map((look) => accept(question, look)) : []),
    ],
  });
}

function resolutionGap(question: GroupInQuestion): Disagreement | null {
  const worst = worstPair(question, 'compatible');
  if (worst === null) return null;
  const { pair, flows, birds } = worst;
  const { protocol, words } = question;
  const said = flows.map(
    (flow) =>
      `${words.birds(flow.number)} as ${words.taxon(flow.a ?? [])} that ` +
      `${words.observer(pair.b)} has as ${words.taxon(flow.b ?? [])}`,
  );
  const coarser = moved(
    question,
    (portion) =>
      portion.kind === 'compatible'
        ? portion.sides.map((side) => side.candidates).reduce(union)
        : undefined,
    'Leave these birds at the coarser level',
  );
  // Different resolution is not a conflict; it is never more than questioned.
  const severity = severityOfBirds(birds, protocol) === 'note' ? 'note' : 'questioned';
  return describe(question, 'resolution-gap', severity, birds, [pair.a, pair.b], {
    text: `${inPlace(question)} ${words.observer(pair.a)} has ${mostOf(said, flows, words)}.`,
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
    text:
      `Only ${words.observers(partial)}, who did not count all of ${words.place(compared.cell.place)}, ` +
      `counted ${taxa(question)} there: ${words.number(birds)} is a lower bound.`,
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
    text:
      `${words.observer(first)} counted only part of ${words.place(compared.cell.place)} but has ` +
      `${words.number(totalIn(first, group))} ${taxa(question)}, more than the ` +
      `${words.number(draft.consensus.number)} drafted from full tallies.`,
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
  const instead =
    draft.consensus.number === 0
      ? 'nobody else has a number, so the compiled count has none'
      : `the draft of ${words.number(draft.consensus.number)} rests on the others`;
  return describe(question, 'not-counted', severity, draft.consensus.number === 0 ? 1 : 0, looks, {
    text:
      `${words.observers(looks)} saw ${taxa(question)} ${where(question)} ` +
      `but did not count them; ${instead}.`,
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
