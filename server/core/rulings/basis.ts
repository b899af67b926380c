import type { Look } from '../align/looks.js';
import { linesInGroup, seeksGroup, type CellGroup } from '../compare/compare-cell.js';
import type { Quantity, TallyLine } from '../model/snapshot.js';
import { taxonName } from '../taxa/taxon-name.js';

/**
 * What the tallies say of a group, as a ruling records it: each look's total with the lines behind
 * it. A ruling made on another basis is stale: what it decided about has changed.
 */
export function basisOfGroup(looks: readonly Look[], group: CellGroup): string[] {
  return looks
    .filter((look) => seeksGroup(look, group))
    .flatMap((look) => {
      const lines = linesInGroup(look, group).flatMap((line) => line.sources);
      return lines.length === 0
        ? [`${look.observer}: none`]
        : basisOfLines(lines).map((line) => `${look.observer}: ${line}`);
    })
    .sort();
}

/** What some tally lines say: `id: taxon, number`. */
export function basisOfLines(lines: readonly TallyLine[]): string[] {
  return lines
    .map((line) => `${line.id}: ${taxonName(line.candidates)}, ${quantityText(line.quantity)}`)
    .sort();
}

/** True if both say the same. */
export function sameBasis(one: readonly string[], other: readonly string[]): boolean {
  return one.length === other.length && one.every((entry, index) => entry === other[index]);
}

function quantityText(quantity: Quantity): string {
  switch (quantity.kind) {
    case 'exact':
      return `${quantity.number}`;
    case 'range':
      return `${quantity.low} to ${quantity.high}`;
    case 'exact-with-range':
      return `${quantity.number} (${quantity.low} to ${quantity.high})`;
    case 'present':
      return 'present, not counted';
  }
}
