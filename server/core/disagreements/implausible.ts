import { linesInGroup } from '../compare/compare-cell.js';
import type { Protocol } from '../model/protocol.js';
import type { CompiledLine, Disagreement, Proposal, Severity } from '../model/result.js';
import { say, type Saying } from '../model/saying.js';
import type { EarlierNumber, Snapshot } from '../model/snapshot.js';
import { basisOfGroup } from '../rulings/basis.js';
import type { ReconciledCell } from '../rulings/reconciled-cell.js';
import { isWithin, keyOf, overlaps, type CandidateSet } from '../taxa/candidate-set.js';
import { taxonName } from '../taxa/taxon-name.js';
import { expectedSpan } from './expected-span.js';
import type { Words } from './words.js';

/** What was compiled, and the cells that it was compiled from. */
export interface CompiledCells {
  /** A window id, or the count id where windows are averaged. */
  readonly reported: string;
  readonly lines: readonly CompiledLine[];
  readonly cells: readonly ReconciledCell[];
}

/** Levels of the prediction interval outside which a number is questioned, and serious. */
const QUESTIONED = 0.95;
const SERIOUS = 0.999;

/**
 * Compiled numbers that earlier years of the same count make implausible (method section 3.4): above
 * or below the prediction interval of a negative binomial fit, or of a taxon never recorded before.
 * With fewer earlier years than the protocol's minimum nothing is said.
 *
 * How finely birds are identified differs between years. So a number is called too high only if the
 * birds that are surely of the taxon are more than years lead to expect of those that may have been,
 * and too low only if those that may be are fewer than were surely so. Too low is not said where a
 * section was not counted, or only in part. A taxon with no number in a year that has others had
 * none then. What an earlier year had as well is never implausible.
 *
 * Each stands in the group that gives the taxon most birds; the ruling on that group settles it.
 */
export function implausibleNumbers(
  snapshot: Snapshot,
  compiled: CompiledCells,
  protocol: Protocol,
  words: Words,
): Disagreement[] {
  const years = [...new Set(snapshot.history.map(({ year }) => year))].sort((a, b) => a - b);
  if (years.length < protocol.minimumYears) return [];
  const cells = compiledFrom(compiled);
  const complete = isComplete(snapshot, cells, compiled.reported);
  const sets = new Map(
    [...compiled.lines.filter(({ number }) => number > 0), ...snapshot.history].map(
      ({ candidates }) => [keyOf(candidates), candidates],
    ),
  );
  const found: Finding[] = [];
  // Finer sets first: of two that say the same, the finer one is told.
  const ordered = [...sets.entries()]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([, candidates]) => candidates)
    .sort((one, other) => one.length - other.length);
  for (const candidates of ordered) {
    const finding = judge(candidates, compiled.lines, snapshot.history, years, complete);
    if (finding === null) continue;
    const told = found.some(
      (other) => other.way === finding.way && overlaps(other.candidates, candidates),
    );
    if (!told) found.push(finding);
  }
  return found.map((finding) => describe(finding, cells, years, words));
}

interface Finding {
  readonly candidates: CandidateSet;
  readonly way: 'above' | 'below' | 'never';
  readonly severity: Severity;
  /** Birds compiled that are surely of the taxon, and that may be. */
  readonly surely: number;
  readonly maybe: number;
  /** What years lead one to expect. */
  readonly span: { readonly low: number; readonly high: number };
}

function judge(
  candidates: CandidateSet,
  lines: readonly CompiledLine[],
  history: readonly EarlierNumber[],
  years: readonly number[],
  complete: boolean,
): Finding | null {
  const isSurely = (other: { candidates: CandidateSet }): boolean =>
    isWithin(other.candidates, candidates);
  const isMaybe = (other: { candidates: CandidateSet }): boolean =>
    overlaps(other.candidates, candidates);
  const surely = birdsOf(lines.filter(isSurely));
  const maybe = birdsOf(lines.filter(isMaybe));
  const inYears = (rows: readonly EarlierNumber[]): number[] =>
    years.map((year) => birdsOf(rows.filter((row) => row.year === year)));
  const most = inYears(history.filter(isMaybe));
  const least = inYears(history.filter(isSurely));
  const base = { candidates, surely, maybe };
  if (surely > 0 && most.every((number) => number === 0)) {
    return { ...base, way: 'never', severity: 'questioned', span: { low: 0, high: 0 } };
  }
  if (surely > Math.max(...most)) {
    const span = expectedSpan(most, QUESTIONED);
    if (surely <= span.high) return null;
    const severity = surely > expectedSpan(most, SERIOUS).high ? 'serious' : 'questioned';
    return { ...base, way: 'above', severity, span };
  }
  const uncounted = lines.some((line) => line.presentNotCounted && isMaybe(line));
  if (!complete || uncounted || maybe >= Math.min(...least)) return null;
  const span = expectedSpan(least, QUESTIONED);
  if (maybe >= span.low) return null;
  const severity = maybe < expectedSpan(least, SERIOUS).low ? 'serious' : 'questioned';
  return { ...base, way: 'below', severity, span };
}

function birdsOf(rows: readonly { readonly number: number }[]): number {
  return rows.reduce((sum, { number }) => sum + number, 0);
}

function compiledFrom({ cells, reported }: CompiledCells): ReconciledCell[] {
  const using = cells.filter(({ compared }) => compared.cell.layer === 'using');
  const ofWindow = using.filter(({ compared }) => compared.cell.window === reported);
  return ofWindow.length > 0 ? ofWindow : using;
}

/** Every section was seen in full by someone, in the window that is reported or in every window. */
function isComplete(
  snapshot: Snapshot,
  cells: readonly ReconciledCell[],
  reported: string,
): boolean {
  const named = snapshot.windows.filter(({ id }) => id === reported);
  const windows = named.length > 0 ? named : snapshot.windows;
  return windows.every(({ id }) => {
    const seen = new Set(
      cells
        .filter(({ compared }) => compared.cell.window === id)
        .filter(({ compared }) => compared.cell.looks.some((look) => look.full))
        .flatMap(({ compared }) => compared.cell.place),
    );
    return snapshot.sections.every((section) => seen.has(section.id));
  });
}

function describe(
  finding: Finding,
  cells: readonly ReconciledCell[],
  years: readonly number[],
  words: Words,
): Disagreement {
  const { candidates, way, severity, surely, maybe, span } = finding;
  const taxon = taxonName(candidates);
  const birds = way === 'above' ? surely - span.high : way === 'below' ? span.low - maybe : surely;
  const place = groupOf(finding, cells);
  const proposals: Proposal[] =
    place === null
      ? []
      : [
          {
            text: say('Let the number stand: it was checked'),
            target: { kind: 'group', cell: place.cell, group: place.group },
            decision: { kind: 'let-stand' },
          },
        ];
  return {
    id: `implausible:${taxon}`,
    kind: 'implausible',
    // What no ruling can settle must not stand in the way of a sign-off.
    severity: place === null && severity === 'serious' ? 'questioned' : severity,
    birds,
    cell: place?.cell ?? null,
    group: place?.group ?? null,
    link: null,
    observers: place?.observers ?? [],
    lines: place?.lines ?? [],
    text: sentence(finding, years, words),
    proposals,
    basis: place?.basis ?? [],
    ruledBy: place?.ruledBy ?? null,
  };
}

function sentence(
  { candidates, way, surely, maybe, span }: Finding,
  years: readonly number[],
  words: Words,
): Saying {
  const birds = words.birdsOf({ candidates, number: way === 'below' ? maybe : surely });
  const since = say('{years} earlier years ({first} to {last})', {
    years: years.length,
    first: String(years[0] ?? ''),
    last: String(years.at(-1) ?? ''),
  });
  const expected = say('the {low} to {high} that {since} lead one to expect', {
    low: words.number(span.low),
    high: words.number(span.high),
    since,
  });
  switch (way) {
    case 'never':
      return surely === 1
        ? say('{birds} is compiled; none was recorded in {since}.', { birds, since })
        : say('{birds} are compiled; none was recorded in {since}.', { birds, since });
    case 'above':
      return surely === 1
        ? say('{birds} is compiled, more than {expected}.', { birds, expected })
        : say('{birds} are compiled, more than {expected}.', { birds, expected });
    case 'below': {
      const counted =
        maybe > surely
          ? say('{birds}, pairs and groups that may be so among them,', { birds })
          : birds;
      return maybe === 1
        ? say('{birds} is compiled, fewer than {expected}.', { birds: counted, expected })
        : say('{birds} are compiled, fewer than {expected}.', { birds: counted, expected });
    }
  }
}

interface GroupInCell {
  readonly cell: string;
  readonly group: readonly string[];
  readonly observers: readonly string[];
  readonly lines: readonly string[];
  readonly basis: readonly string[];
  readonly ruledBy: string | null;
}

/** The group that gives the taxon most birds, the first of equals; `null` where none is about it. */
function groupOf(
  { candidates, way }: Finding,
  cells: readonly ReconciledCell[],
): GroupInCell | null {
  const counts = way === 'below' ? overlaps : isWithin;
  let best: { readonly place: GroupInCell; readonly birds: number } | null = null;
  for (const { compared, groups } of cells) {
    const { looks, id } = compared.cell;
    for (const { group, lines, ruling } of groups) {
      if (!group.identifications.some((set) => overlaps(set, candidates))) continue;
      const birds = birdsOf(lines.filter((line) => counts(line.candidates, candidates)));
      if (best !== null && birds <= best.birds) continue;
      const own = looks.map((look) => ({ look, lines: linesInGroup(look, group) }));
      const saw = own.filter((each) => each.lines.length > 0);
      best = {
        birds,
        place: {
          cell: id,
          group: group.taxa,
          observers: [...new Set(saw.flatMap(({ look }) => look.observer.split('+')))].sort(),
          lines: [
            ...new Set(
              saw.flatMap((each) =>
                each.lines.flatMap(({ sources }) => sources.map((line) => line.id)),
              ),
            ),
          ].sort(),
          basis: basisOfGroup(looks, group),
          ruledBy: ruling?.id ?? null,
        },
      };
    }
  }
  return best?.place ?? null;
}
