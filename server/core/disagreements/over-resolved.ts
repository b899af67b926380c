import { linesInGroup } from '../compare/compare-cell.js';
import { weighMarks, type SeenMark, type WeighedMarks } from '../marks/weigh-marks.js';
import { numberOf } from '../model/quantity.js';
import type { Disagreement, Proposal, Severity } from '../model/result.js';
import type { Ruling } from '../model/ruling.js';
import { listed, say, setApart, term, type Saying } from '../model/saying.js';
import type { NotedMark, Snapshot, Tally, TallyLine } from '../model/snapshot.js';
import { basisOfLines } from '../rulings/basis.js';
import { keyOf, union, type CandidateSet } from '../taxa/candidate-set.js';
import type { GroupInQuestion } from './about-group.js';
import { severityOfBirds } from './severity.js';
import type { Words } from './words.js';

/** Tally lines that field marks were noted for, and the rulings on them. */
export interface MarkedLines {
  readonly tallyOf: ReadonlyMap<string, Tally>;
  readonly marksOf: ReadonlyMap<string, readonly NotedMark[]>;
  /** Ids of the rulings on single lines that are applied, by line. */
  readonly ruledBy: ReadonlyMap<string, string>;
}

/** @param rulings those that are applied, or not about a line. */
export function markedLines(snapshot: Snapshot, rulings: readonly Ruling[]): MarkedLines {
  const marksOf = new Map<string, NotedMark[]>();
  for (const noted of snapshot.marks ?? []) {
    marksOf.set(noted.line, [...(marksOf.get(noted.line) ?? []), noted]);
  }
  return {
    marksOf,
    tallyOf: new Map(
      snapshot.tallies.flatMap((tally) => tally.lines.map((line) => [line.id, tally] as const)),
    ),
    ruledBy: new Map(
      rulings.flatMap(({ id, target }) => (target.kind === 'line' ? [[target.line, id]] : [])),
    ),
  };
}

/**
 * Lines of a group whose field marks do not bear out their identification (method sections 3.4 and
 * 9): species that it leaves out fit them as well, or none that it could be does. A line without a
 * dependable mark is not documented, which is not wrong. Noting too few marks is no conflict, so it
 * is never more than questioned.
 *
 * A ruling on the line settles it, and so does one on the group, whose numbers then stand.
 */
export function overResolvedOf(question: GroupInQuestion, marked: MarkedLines): Disagreement[] {
  const { compared, group, words } = question;
  const sources = compared.cell.looks.flatMap((look) =>
    linesInGroup(look, group).flatMap((line) => line.sources),
  );
  // Several looks may be made of the same lines.
  const lines = [...new Map(sources.map((line) => [line.id, line])).values()];
  return lines.flatMap((line) => {
    const tally = marked.tallyOf.get(line.id);
    const noted = marked.marksOf.get(line.id) ?? [];
    const birds = numberOf(line.quantity);
    if (tally === undefined || noted.length === 0 || birds === 0) return [];
    const weighed = weighMarks(line, noted);
    const { outcome } = weighed;
    if (outcome !== 'coarser' && outcome !== 'contradicted') return [];
    const bySize = severityOfBirds(birds ?? 0, question.protocol);
    const severity: Severity =
      outcome === 'coarser' && bySize === 'serious' ? 'questioned' : bySize;
    return [
      {
        id: `over-resolved:${line.id}`,
        kind: 'over-resolved',
        severity,
        birds: birds ?? 0,
        cell: compared.cell.id,
        group: group.taxa,
        link: null,
        observers: [tally.observer],
        lines: [line.id],
        text: sentence(line, tally, weighed, words),
        proposals: proposalsFor(line, weighed, words),
        basis: basisOfLines([line]),
        ruledBy: marked.ruledBy.get(line.id) ?? null,
      },
    ];
  });
}

function sentence(line: TallyLine, tally: Tally, weighed: WeighedMarks, words: Words): Saying {
  const { supported, dependable, undependable, group } = weighed;
  const number = numberOf(line.quantity);
  const { candidates } = line;
  const whose = say("{observer}'s {birds} {where}", {
    observer: words.observer(tally),
    birds: number === null ? words.taxon(candidates) : words.birdsOf({ candidates, number }),
    where:
      line.activity === 'flying-through'
        ? words.throughPlace(tally.sections)
        : words.inPlace(tally.sections),
  });
  const marks = setApart(dependable.map(markWords));
  const left = supported.filter((species) => !candidates.includes(species));
  const finding =
    supported.length === 0
      ? say(
          'Of {whose} the marks noted ({marks}) contradict one another: no {group} has them all',
          { whose, marks, group: words.taxon(group) },
        )
      : weighed.outcome === 'contradicted'
        ? say('Of {whose} the marks noted ({marks}) fit {taxon} instead', {
            whose,
            marks,
            taxon: words.taxon(supported),
          })
        : say('Of {whose} the marks noted ({marks}) fit {taxon} as well', {
            whose,
            marks,
            taxon: words.taxon(left),
          });
  const weak = [...new Set(undependable.map(({ mark }) => mark.name))];
  const names = listed(weak.map(term));
  switch (weak.length) {
    case 0:
      return say('{finding}.', { finding });
    case 1:
      return say('{finding} ({names} is too undependable to decide).', { finding, names });
    default:
      return say('{finding} ({names} are too undependable to decide).', { finding, names });
  }
}

/** "bill: all black". */
function markWords({ mark, state }: SeenMark): Saying {
  return say('{mark}: {state}', { mark: term(mark.name), state: term(state.name) });
}

/** Lowered to what the marks support first; kept as it stands, for evidence beside them; left out. */
function proposalsFor(
  line: TallyLine,
  { supported, group }: WeighedMarks,
  words: Words,
): readonly Proposal[] {
  const target = { kind: 'line', line: line.id } as const;
  const readAs = (to: CandidateSet, text: Saying): Proposal => ({
    text,
    target,
    decision: { kind: 'identify-line', to },
  });
  const either = supported.length === 0 ? group : union(line.candidates, supported);
  const fits = (to: CandidateSet): Proposal =>
    readAs(to, say('Read the line as {taxon}, which the marks fit', { taxon: words.taxon(to) }));
  const open = (to: CandidateSet): Proposal =>
    readAs(to, say('Read the line as {taxon}, which leaves it open', { taxon: words.taxon(to) }));
  return [
    ...(supported.length === 0 ? [] : [fits(supported)]),
    ...(supported.length > 0 && keyOf(supported) === keyOf(either) ? [] : [open(either)]),
    readAs(
      line.candidates,
      say('Keep {taxon}: something beside these marks shows it', {
        taxon: words.taxon(line.candidates),
      }),
    ),
    { text: say('Leave the line out'), target, decision: { kind: 'exclude' } },
  ];
}
