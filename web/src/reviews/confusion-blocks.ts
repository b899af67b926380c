import { overlaps } from '../../../server/core/taxa/candidate-set.js';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import type { ConfusionPartsFragment } from '../graphql/generated/graphql.js';

/** How two names of one bird stand to each other; the words of the pairing balance. */
export type NamedKind = 'agreed' | 'compatible' | 'differently' | 'only';

export interface NamedBirds {
  readonly a: string | null;
  readonly b: string | null;
  readonly kind: NamedKind;
  readonly number: number;
}

/** Names that some bird joins: given by one observer where the other gave another of them. */
export interface ConfusionBlock {
  /** Rows and columns, sorted. */
  readonly taxa: readonly string[];
  readonly named: readonly NamedBirds[];
  /** Birds that both saw and named differently: at a coarser level, or as something else. */
  readonly apart: number;
}

/**
 * The entries of a confusion table with what kind each is.
 *
 * @param table of one pair of observers, or of all: then it is symmetric, half of the birds each way
 * @param isSymmetric true: each two names stand once, with all of their birds, the first name as a
 */
export function namedBirds(
  { entries }: ConfusionPartsFragment,
  isSymmetric: boolean,
): readonly NamedBirds[] {
  return entries.flatMap(({ a, b, number }) => {
    const kind = kindOf(a, b);
    if (!isSymmetric || a === b) return [{ a, b, kind, number }];
    const isFirst = a !== null && (b === null || a < b);
    return isFirst ? [{ a, b, kind, number: 2 * number }] : [];
  });
}

/** The blocks of names that are joined by birds named differently, most such birds first. */
export function confusionBlocks(named: readonly NamedBirds[]): readonly ConfusionBlock[] {
  const blockOf = new Map<string, Set<string>>();
  for (const { a, b } of named) {
    if (a === null || b === null || a === b) continue;
    const joined = new Set([a, ...(blockOf.get(a) ?? []), b, ...(blockOf.get(b) ?? [])]);
    for (const taxon of joined) blockOf.set(taxon, joined);
  }
  return [...new Set(blockOf.values())]
    .map((taxa): ConfusionBlock => {
      const inBlock = named.filter(({ a, b }) => taxa.has(a ?? b ?? ''));
      return { taxa: [...taxa].sort(), named: inBlock, apart: birdsApart(inBlock) };
    })
    .sort((one, other) => other.apart - one.apart || compareFirst(one, other));
}

/** Birds of each kind. */
export function totalsByKind(named: readonly NamedBirds[]): Readonly<Record<NamedKind, number>> {
  const totals = { agreed: 0, compatible: 0, differently: 0, only: 0 };
  for (const { kind, number } of named) totals[kind] += number;
  return totals;
}

function birdsApart(named: readonly NamedBirds[]): number {
  const { compatible, differently } = totalsByKind(named);
  return compatible + differently;
}

function compareFirst(one: ConfusionBlock, other: ConfusionBlock): number {
  return (one.taxa[0] ?? '') < (other.taxa[0] ?? '') ? -1 : 1;
}

function kindOf(a: string | null, b: string | null): NamedKind {
  if (a === null || b === null) return 'only';
  if (a === b) return 'agreed';
  const [one, other] = [parseTaxon(a), parseTaxon(b)];
  return one.ok && other.ok && overlaps(one.candidates, other.candidates)
    ? 'compatible'
    : 'differently';
}
