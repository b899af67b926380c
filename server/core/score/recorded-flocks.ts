import { UnionFind } from '../math/union-find.js';
import { numberOf } from '../model/quantity.js';
import type { Snapshot, TallyLine } from '../model/snapshot.js';
import type { TrueLink, Truth } from './truth.js';

/** A line with the tally it is in. */
export interface KnownLine {
  readonly line: TallyLine;
  readonly tally: string;
  readonly sections: readonly string[];
}
export type KnownLines = ReadonlyMap<string, KnownLine>;

export function linesById({ tallies }: Snapshot): KnownLines {
  return new Map(
    tallies.flatMap((tally) =>
      tally.lines.map(
        (line) => [line.id, { line, tally: tally.id, sections: tally.sections }] as const,
      ),
    ),
  );
}

/** Birds of one species, with the places (numbers) of the flock that they were written down in. */
export interface RecordedPart {
  readonly birds: number;
  readonly lines: ReadonlySet<string>;
  readonly places: ReadonlySet<number>;
}

/**
 * True birds as the tallies have them: those that stand in the same records throughout are one
 * flock, as nothing tells them apart. Its places are the sets of sections that its tallies share.
 */
export interface RecordedFlock {
  readonly parts: readonly RecordedPart[];
  readonly placeOf: ReadonlyMap<string, number>;
  readonly places: number;
}

/** Every flock that some tally has. */
export function recordedFlocks(
  truth: Pick<Truth, 'flocks' | 'links'>,
  known: KnownLines,
): RecordedFlock[] {
  const bunches =
    truth.flocks === null
      ? bunchesFromLinks(truth.links, known)
      : truth.flocks.map(({ parts }) => parts.filter(({ lines }) => lines.length > 0));
  const byRecords = new Map<string, Bunch>();
  for (const bunch of bunches.filter(({ length }) => length > 0)) {
    const lines = bunch.flatMap((part) => part.lines);
    const key = [...new Set(lines.map((id) => recordOf(id, known)))].sort().join('\n');
    byRecords.set(key, [...(byRecords.get(key) ?? []), ...bunch]);
  }
  return [...byRecords.values()].map((bunch) => recordedFlock(bunch, known));
}

type Bunch = readonly { readonly birds: number; readonly lines: readonly string[] }[];

/** Lines of one tally with one flock label are one record; others are each one by itself. */
function recordOf(id: string, known: KnownLines): string {
  const found = known.get(id);
  return found === undefined || found.line.flock === null
    ? id
    : `${found.tally}\t${found.line.flock}`;
}

function recordedFlock(bunch: Bunch, known: KnownLines): RecordedFlock {
  const lines = [...new Set(bunch.flatMap((part) => part.lines))].sort();
  const placeOf = placesOf(lines, known);
  return {
    parts: bunch.map((part) => ({
      birds: part.birds,
      lines: new Set(part.lines),
      places: new Set(part.lines.map((id) => placeOf.get(id) ?? 0)),
    })),
    placeOf,
    places: new Set(placeOf.values()).size,
  };
}

/** The place of each line, numbered from 0: tallies that share a section are of one place. */
function placesOf(lines: readonly string[], known: KnownLines): Map<string, number> {
  const sections = [...new Set(lines.flatMap((id) => known.get(id)?.sections ?? []))].sort();
  const joined = new UnionFind(sections.length);
  const firstOf = (id: string): number => sections.indexOf(known.get(id)?.sections[0] ?? '');
  for (const id of lines) {
    for (const section of known.get(id)?.sections ?? []) {
      joined.join(firstOf(id), sections.indexOf(section));
    }
  }
  const roots = [...new Set(lines.map((id) => joined.rootOf(firstOf(id))))];
  return new Map(lines.map((id) => [id, roots.indexOf(joined.rootOf(firstOf(id)))]));
}

/** Where only links are known: lines that they join are a flock, of as many birds as a tally says. */
function bunchesFromLinks(links: readonly TrueLink[], known: KnownLines): Bunch[] {
  const ids = [...new Set(links.flatMap(({ lines }) => lines))].sort();
  const flocks = new UnionFind(ids.length);
  for (const { lines } of links) flocks.join(ids.indexOf(lines[0]), ids.indexOf(lines[1]));
  return flocks.sets().map((members) => {
    const lines = members.flatMap((index) => ids[index] ?? []);
    const written = (id: string): number => {
      const line = known.get(id)?.line;
      return line === undefined ? 0 : (numberOf(line.quantity) ?? 0);
    };
    const tallies = new Set(lines.map((id) => known.get(id)?.tally));
    const all = lines.reduce((sum, id) => sum + written(id), 0);
    return [{ birds: Math.round(all / tallies.size), lines }];
  });
}
