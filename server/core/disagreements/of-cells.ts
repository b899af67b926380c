import { spanOf } from '../align/cells.js';
import { UnionFind } from '../math/union-find.js';
import type { Protocol } from '../model/protocol.js';
import type { Disagreement, Link } from '../model/result.js';
import { listed, say, type Said, type Saying } from '../model/saying.js';
import type { CountWindow, Snapshot } from '../model/snapshot.js';
import { basisOfLines } from '../rulings/basis.js';
import { birdsIn, sharesMember, type ComparedCell } from '../compare/compare-cell.js';
import { severityOfBirds } from './severity.js';
import type { Words } from './words.js';

/** Cells that rest on one independent full tally, or on partial tallies only. */
export function withoutSecondCount(compared: ComparedCell, words: Words): Disagreement | null {
  const { cell } = compared;
  if (cell.layer !== 'using') return null;
  const full = cell.looks.filter((look) => look.full);
  const clusters = new UnionFind(full.length);
  full.forEach((one, i) => {
    full.forEach((other, j) => {
      if (i < j && sharesMember(one, other)) clusters.join(i, j);
    });
  });
  const independent = clusters.sets().length;
  if (independent >= 2) return null;
  const birds = Math.max(...cell.looks.map((look) => birdsIn(look.lines)));
  const place = words.place(cell.place);
  const text =
    independent === 1
      ? say('{place} has no second count: its {birds} stand as {observers} tallied them.', {
          place,
          birds: words.birds(birds),
          observers: words.observers(full),
        })
      : say('Nobody saw all of {place}: its {birds} are a lower bound from {observers}.', {
          place,
          birds: words.birds(birds),
          observers: words.observers(cell.looks),
        });
  return {
    id: `coverage-gap:${cell.id}`,
    kind: 'coverage-gap',
    severity: independent === 1 ? 'note' : 'questioned',
    birds,
    cell: cell.id,
    group: null,
    link: null,
    observers: cell.looks.flatMap((look) => look.observer.split('+')).sort(),
    lines: cell.looks
      .flatMap((look) => look.lines.flatMap((line) => line.sources.map((each) => each.id)))
      .sort(),
    text,
    proposals: [],
    basis: [],
    ruledBy: null,
  };
}

/** Sections that nobody counted in a window: an unknown, never a zero. */
export function uncountedSections(
  snapshot: Snapshot,
  words: Words,
  window: CountWindow,
): Disagreement[] {
  const counted = new Set(
    snapshot.tallies
      .filter((tally) => tally.window === window.id)
      .flatMap((tally) => tally.sections),
  );
  return snapshot.sections
    .filter((section) => !counted.has(section.id))
    .map((section) => ({
      id: `coverage-gap:${section.id}:${window.id}`,
      kind: 'coverage-gap',
      severity: 'questioned',
      birds: 0,
      cell: null,
      group: null,
      link: null,
      observers: [],
      lines: [],
      text: say(
        'Nobody counted {place} in window {window}: its birds are missing from the compiled count.',
        { place: words.place([section.id]), window: window.id },
      ),
      proposals: [],
      basis: [],
      ruledBy: null,
    }));
}

/** Counts of the same section in one window that were not made at the same time. */
export function timeMismatches(
  cells: readonly ComparedCell[],
  snapshot: Snapshot,
  words: Words,
): Disagreement[] {
  return cells
    .filter(({ cell }) => cell.layer === 'using' && cell.successiveTo.length > 0)
    .flatMap((compared): Disagreement[] => {
      const { cell } = compared;
      const others = cells.filter((other) => cell.successiveTo.includes(other.cell.id));
      // Told once, from the first of them.
      if (others.some((other) => other.cell.id < cell.id)) return [];
      const all = [compared, ...others];
      const totals = all.map((each) =>
        Math.max(...each.cell.looks.map((look) => birdsIn(look.lines))),
      );
      const said = all.map((each, index) =>
        say('{number} by {observers} ({hours})', {
          number: words.number(totals[index] ?? 0),
          observers: words.observers(each.cell.looks),
          hours: hours(each, snapshot),
        }),
      );
      return [
        {
          id: `time-mismatch:${cell.id}`,
          kind: 'time-mismatch',
          severity: 'questioned',
          birds: Math.max(...totals) - Math.min(...totals),
          cell: cell.id,
          group: null,
          link: null,
          observers: all
            .flatMap((each) => each.cell.looks.flatMap((look) => look.observer.split('+')))
            .sort(),
          lines: [],
          text: say(
            '{place} was counted at different times: {counts}. They are successive counts, so they are not compared; the higher one is compiled.',
            { place: words.place(cell.place), counts: listed(said) },
          ),
          proposals: all.flatMap((each) =>
            each.cell.looks.flatMap((look) =>
              look.tallies.map((tally) => ({
                text: say("Leave out {observer}'s tally ({hours})", {
                  observer: words.observer(look),
                  hours: hours(each, snapshot),
                }),
                target: { kind: 'tally' as const, tally: tally.id },
                decision: { kind: 'exclude' as const },
              })),
            ),
          ),
          basis: [],
          ruledBy: null,
        },
      ];
    });
}

/** Links that are more likely one flock than two. */
export function possibleDoubleCounts(
  links: readonly Link[],
  snapshot: Snapshot,
  words: Words,
  protocol: Protocol,
): Disagreement[] {
  const lines = new Map(
    snapshot.tallies.flatMap((tally) => tally.lines.map((line) => [line.id, line] as const)),
  );
  return links
    .filter((link) => link.probability >= 0.5 || link.ruling !== null)
    .map((link) => {
      const where = (side: Link['first']): Saying =>
        say('{birds} {where}', {
          birds: words.birdsOf(side),
          where: words.inPlace([side.section]),
        });
      const values = {
        first: where(link.first),
        second: where(link.second),
        chance:
          link.probability > 0.99 ? say('over 99') : String(Math.round(link.probability * 100)),
      };
      return {
        id: `possible-double-count:${link.id}`,
        kind: 'possible-double-count',
        severity: severityOfBirds(link.birds, protocol),
        birds: link.birds,
        cell: link.second.cell,
        group: null,
        link: link.id,
        observers: [...new Set([...link.first.observers, ...link.second.observers])].sort(),
        lines: link.lines,
        text:
          link.kind === 'overlap'
            ? say(
                '{first} and {second} may be one flock seen from both sides ({chance} in 100).',
                values,
              )
            : say('{first} and {second} may be one flock that moved ({chance} in 100).', values),
        proposals: [
          {
            text: say('One flock: take {birds} off {place}', {
              birds: words.birds(link.birds),
              place: words.place([link.second.section]),
            }),
            target: { kind: 'link' as const, link: link.id },
            decision: { kind: 'confirm-link' as const },
          },
          {
            text: say('Two flocks: both stand'),
            target: { kind: 'link' as const, link: link.id },
            decision: { kind: 'reject-link' as const },
          },
        ],
        basis: basisOfLines(link.lines.flatMap((id) => lines.get(id) ?? [])),
        ruledBy: null,
      };
    });
}

/** When a cell's tallies were made, in clock times as written: "08:15 to 10:30". */
function hours(compared: ComparedCell, snapshot: Snapshot): Said {
  const { cell } = compared;
  const window = snapshot.windows.find((each) => each.id === cell.window);
  const tallies = cell.looks.flatMap((look) => look.tallies);
  const [first] = tallies;
  if (window === undefined || first === undefined) return cell.window;
  const by = (edge: 'start' | 'end', best: (a: number, b: number) => boolean): string => {
    const chosen = tallies.reduce((one, other) =>
      best(spanOf(other, window)[edge], spanOf(one, window)[edge]) ? other : one,
    );
    return (chosen[edge] ?? window[edge]).slice(11, 16);
  };
  return say('{start} to {end}', {
    start: by('start', (a, b) => a < b),
    end: by('end', (a, b) => a > b),
  });
}
