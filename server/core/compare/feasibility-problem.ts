import type { Look, LookLine } from '../align/looks.js';
import type { Protocol } from '../model/protocol.js';
import type { Species } from '../model/snapshot.js';
import { setOutToCount } from './compare-cell.js';
import { logDeviation, varianceOf } from './counting-error.js';

/** A line of one observer with the whole numbers that it may stand for. */
export interface SpannedLine {
  /** Index of the observer. */
  readonly observer: number;
  readonly low: number;
  /** Infinity where birds were seen but not counted. */
  readonly high: number;
}

/** Birds that every observer would write in the same way, so that no tally tells them apart. */
export interface BirdKind {
  /** Lines that could hold such a bird, by index, rising. */
  readonly lines: readonly number[];
  /** Observers who miss it if they have no line for it, by index, rising. */
  readonly dueTo: readonly number[];
}

/** Whether one truth can stand behind all tallies: unknown whole numbers of each kind of bird. */
export interface FeasibilityProblem {
  readonly observers: number;
  readonly lines: readonly SpannedLine[];
  readonly kinds: readonly BirdKind[];
}

/** The demands of a cell's tallies, with what their lines and kinds of bird stand for. */
export interface CellFeasibility extends FeasibilityProblem {
  /** One for each observer of the problem. */
  readonly looks: readonly Look[];
  /** One for each line of the problem. */
  readonly written: readonly LookLine[];
  /** One for each kind of the problem. */
  readonly species: readonly Species[];
}

/**
 * What the tallies of a cell demand of a truth. A true bird has a species and is in one part of the
 * place (sections that the same looks saw). A look that saw the part can hold it on any of its lines
 * for the species; it has missed the bird only if it saw its sections in full and set out to count
 * the species.
 *
 * Looks of several observers joined are left out: each observer answers for the parts that they
 * saw, so that joining them adds nothing.
 */
export function feasibilityOf(all: readonly Look[], protocol: Protocol): CellFeasibility {
  const looks = all.filter(
    (look) => new Set(look.tallies.map((tally) => tally.observer)).size === 1,
  );
  const lines = looks.flatMap((look, observer) =>
    look.lines.map((line) => ({ observer, line, ...errorSpan(line, protocol) })),
  );
  const parts = partsSeen(looks);
  const kinds = [...new Set(lines.flatMap(({ line }) => line.candidates))]
    .sort()
    .flatMap((species) => {
      const holding = lines.flatMap(({ observer, line }, index) =>
        line.candidates.includes(species) ? [{ observer, index }] : [],
      );
      const seeking = looks.map((look) => look.coverage >= 1 && setOutToCount(look, [species]));
      return parts.map((seenBy) => ({
        species,
        lines: holding.filter(({ observer }) => seenBy.has(observer)).map(({ index }) => index),
        dueTo: looks.flatMap((_, index) => (seenBy.has(index) && seeking[index] ? [index] : [])),
      }));
    });
  return {
    observers: looks.length,
    lines: lines.map(({ observer, low, high }) => ({ observer, low, high })),
    kinds: kinds.map(({ lines: holding, dueTo }) => ({ lines: holding, dueTo })),
    looks,
    written: lines.map(({ line }) => line),
    species: kinds.map(({ species }) => species),
  };
}

/** For each part of the place that some looks have in common: who saw it. */
function partsSeen(looks: readonly Look[]): ReadonlySet<number>[] {
  const parts = new Map<string, Set<number>>();
  for (const section of new Set(looks.flatMap((look) => look.sections))) {
    const seenBy = looks.flatMap((look, index) => (look.sections.includes(section) ? [index] : []));
    parts.set(seenBy.join('+'), new Set(seenBy));
  }
  return [...parts.keys()].sort().map((key) => parts.get(key) ?? new Set());
}

/**
 * The whole numbers that a line may stand for: its number times e^(± questionedAt · σ of ln). Birds
 * that were seen but not counted are one or more.
 */
function errorSpan(line: LookLine, protocol: Protocol): { low: number; high: number } {
  const { low, high } = countedSpan(line, protocol);
  return line.presentNotCounted ? { low: Math.max(1, low), high: Infinity } : { low, high };
}

function countedSpan(line: LookLine, protocol: Protocol): { low: number; high: number } {
  const variance = line.sources.reduce((sum, source) => sum + varianceOf(source, protocol), 0);
  if (line.number === 0 || variance === 0) return { low: line.number, high: line.number };
  const factor = Math.exp(protocol.questionedAt * logDeviation(Math.sqrt(variance) / line.number));
  return { low: Math.ceil(line.number / factor), high: Math.floor(line.number * factor) };
}

/**
 * The same problem with fewer kinds, and without what cannot conflict. Kinds of the same lines and
 * the same observers are one; a kind that another does as well as, for every observer, is never
 * needed; what is on no line is not there. Where a single kind shares its lines with no other and
 * some number of it suits everybody, taking that number is best whatever else is true.
 */
export function reduced({ observers, lines, kinds }: FeasibilityProblem): FeasibilityProblem {
  const unlike = new Map<string, BirdKind>();
  for (const kind of kinds) {
    if (kind.lines.length > 0) unlike.set(`${kind.lines.join()};${kind.dueTo.join()}`, kind);
  }
  const different = [...unlike.keys()].sort().flatMap((key) => unlike.get(key) ?? []);
  const needed = different.filter(
    (kind) => !different.some((other) => other !== kind && doesAsWell(other, kind)),
  );
  const contested = needed.filter((kind) => !suitsAll(kind, needed, lines, observers));
  const settled = new Set(
    needed.filter((kind) => !contested.includes(kind)).flatMap((kind) => kind.lines),
  );
  const kept = lines.flatMap((_, index) => (settled.has(index) ? [] : [index]));
  const newIndex = new Map(kept.map((index, position) => [index, position]));
  return {
    observers,
    // A line without a kind stays: its birds are not there.
    lines: kept.flatMap((index) => lines[index] ?? []),
    kinds: contested.map((kind) => ({
      ...kind,
      lines: kind.lines.flatMap((index) => newIndex.get(index) ?? []),
    })),
  };
}

function doesAsWell(other: BirdKind, kind: BirdKind): boolean {
  return (
    kind.lines.every((line) => other.lines.includes(line)) &&
    other.dueTo.every((observer) => kind.dueTo.includes(observer))
  );
}

/** True for a kind alone on its lines when some number of it lies within everybody's. */
function suitsAll(
  kind: BirdKind,
  all: readonly BirdKind[],
  lines: readonly SpannedLine[],
  observers: number,
): boolean {
  const alone = !all.some(
    (other) => other !== kind && other.lines.some((line) => kind.lines.includes(line)),
  );
  if (!alone) return false;
  const own = kind.lines.flatMap((index) => lines[index] ?? []);
  let atLeast = 0;
  let atMost = Infinity;
  for (let observer = 0; observer < observers; observer += 1) {
    const written = own.filter((line) => line.observer === observer);
    atLeast = Math.max(
      atLeast,
      written.reduce((sum, line) => sum + line.low, 0),
    );
    if (!kind.dueTo.includes(observer)) continue;
    atMost = Math.min(
      atMost,
      written.reduce((sum, line) => sum + line.high, 0),
    );
  }
  return atLeast <= atMost;
}
