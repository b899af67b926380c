import { linesInGroup } from '../compare/compare-cell.js';
import { weighMarks, type SeenMark, type WeighedMarks } from '../marks/weigh-marks.js';
import { numberOf } from '../model/quantity.js';
import type { Disagreement, Proposal, Severity } from '../model/result.js';
import type { Ruling } from '../model/ruling.js';
import type { NotedMark, Snapshot, Tally, TallyLine } from '../model/snapshot.js';
import { basisOfLines } from '../rulings/basis.js';
import { keyOf, union, type CandidateSet } from '../taxa/candidate-set.js';
import type { GroupInQuestion } from './about-group.js';
import { severityOfBirds } from './severity.js';
import { listed, type Words } from './words.js';

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

function sentence(line: TallyLine, tally: Tally, weighed: WeighedMarks, words: Words): string {
  const { supported, dependable, undependable, group } = weighed;
  const number = numberOf(line.quantity);
  const taxon = words.taxon(line.candidates);
  const birds = number === null ? taxon : `${words.number(number)} ${taxon}`;
  const where = line.activity === 'flying-through' ? 'flying through' : 'in';
  const whose = `${words.observer(tally)}'s ${birds} ${where} ${words.place(tally.sections)}`;
  const marks = `the marks noted (${dependable.map(markWords).join('; ')})`;
  const left = supported.filter((species) => !line.candidates.includes(species));
  const said =
    supported.length === 0
      ? `of ${whose} ${marks} contradict one another: no ${words.taxon(group)} has them all`
      : weighed.outcome === 'contradicted'
        ? `of ${whose} ${marks} fit ${words.taxon(supported)} instead`
        : `of ${whose} ${marks} fit ${words.taxon(left)} as well`;
  const names = [...new Set(undependable.map(({ mark }) => mark.name))];
  const weak =
    names.length === 0
      ? ''
      : ` (${listed(names)} ${names.length === 1 ? 'is' : 'are'} too undependable to decide)`;
  return `O${said.slice(1)}${weak}.`;
}

/** "bill: all black". */
function markWords({ mark, state }: SeenMark): string {
  return `${mark.name}: ${state.name}`;
}

/** Lowered to what the marks support first; kept as it stands, for evidence beside them; left out. */
function proposalsFor(
  line: TallyLine,
  { supported, group }: WeighedMarks,
  words: Words,
): readonly Proposal[] {
  const target = { kind: 'line', line: line.id } as const;
  const readAs = (to: CandidateSet, text: string): Proposal => ({
    text,
    target,
    decision: { kind: 'identify-line', to },
  });
  const written = words.taxon(line.candidates);
  const either = supported.length === 0 ? group : union(line.candidates, supported);
  const lowered = [
    ...(supported.length === 0 ? [] : [{ to: supported, why: 'which the marks fit' }]),
    { to: either, why: 'which leaves it open' },
  ].filter(
    ({ to }, index, all) => all.findIndex((other) => keyOf(other.to) === keyOf(to)) === index,
  );
  return [
    ...lowered.map(({ to, why }) => readAs(to, `Read the line as ${words.taxon(to)}, ${why}`)),
    readAs(line.candidates, `Keep ${written}: something beside these marks shows it`),
    { text: 'Leave the line out', target, decision: { kind: 'exclude' } },
  ];
}
