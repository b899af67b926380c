import type { TrueLink } from '../score/truth.js';
import { linesOf, shareSection, type RecordedLine, type TurnRecord } from './turn-record.js';

/**
 * Every two lines of tallies of different sections that are about one flock, or about flocks that
 * some birds were in both of: `movement` where these had moved from one section to the other,
 * `overlap` where they lay in one place and both tallied them.
 */
export function trueLinks(records: readonly TurnRecord[]): TrueLink[] {
  const byFlock = new Map<number, RecordedLine[]>();
  for (const line of records.flatMap(linesOf)) {
    for (const { number, parts } of line.sighting.members) {
      const own = new Set(parts.map(({ species }) => species));
      if (!line.line.named.some(({ species }) => own.has(species))) continue;
      byFlock.set(number, [...(byFlock.get(number) ?? []), line]);
    }
  }
  const links = new Map<string, TrueLink>();
  for (const [, lines] of byFlock) {
    const sorted = [...lines].sort((one, other) => (one.id < other.id ? -1 : 1));
    sorted.forEach((one, index) => {
      for (const other of sorted.slice(index + 1)) {
        if (shareSection(one.record, other.record)) continue;
        const key = `${one.id} ${other.id}`;
        const kind = one.sighting.section === other.sighting.section ? 'overlap' : 'movement';
        // Totals may hold both, and then some birds at least were never anywhere else.
        if (links.get(key)?.kind !== 'overlap') links.set(key, { kind, lines: [one.id, other.id] });
      }
    });
  }
  return [...links.values()];
}
