import { plural, t } from '@lingui/core/macro';
import { readTaxon } from '../ui/taxon.js';
import { birds, listed } from '../ui/words.js';

/** A group as a ruling would merge it or take it apart. */
export interface ChangedGroup {
  readonly id: string;
  readonly taxa: readonly string[];
  readonly totals: readonly {
    readonly observer: string;
    readonly observerName: string;
    readonly number: number;
  }[];
  readonly consensus: { readonly number: number };
}

/** What is known of the place that the group is of. */
export interface CellOfGroup {
  readonly groups: readonly ChangedGroup[];
  readonly tallies: readonly {
    readonly observer: string;
    readonly lines: readonly { readonly taxon: string; readonly number: number }[];
  }[];
  readonly pairings: readonly {
    readonly aName: string;
    readonly bName: string;
    readonly flows: readonly {
      readonly a?: string | null | undefined;
      readonly b?: string | null | undefined;
      readonly number: number;
    }[];
  }[];
}

/** `Greater Scaup, Lesser Scaup and Redhead`. */
export function commonTaxa(taxa: readonly string[]): string {
  return listed(taxa.map((taxon) => readTaxon(taxon).common));
}

/** What settling two groups together does, a sentence each. */
export function mergeSentences(one: ChangedGroup, other: ChangedGroup): readonly string[] {
  const observers = [...one.totals, ...other.totals].filter(
    ({ observer }, index, all) => all.findIndex((each) => each.observer === observer) === index,
  );
  const numberIn = ({ totals }: ChangedGroup, observer: string): number =>
    totals.find((total) => total.observer === observer)?.number ?? 0;
  const sums = listed(
    observers.map(
      ({ observer, observerName }) =>
        `${observerName} ${birds(numberIn(one, observer) + numberIn(other, observer))}`,
    ),
  );
  const soughtOneOnly = observers.filter(({ observer }) =>
    [one, other].some(({ totals }) => totals.every((total) => total.observer !== observer)),
  );
  const taxa = commonTaxa([...one.taxa, ...other.taxa]);
  const names = listed(soughtOneOnly.map(({ observerName }) => observerName));
  const [first, second] = [birds(one.consensus.number), birds(other.consensus.number)];
  return [
    t`${taxa} are then compared and settled as one group.`,
    t`Each observer’s birds are added up first: ${sums}. The protocol’s rule then gives one number for all of them, where there are now ${first} and ${second}.`,
    ...(soughtOneOnly.length === 0
      ? []
      : [t`${names} set out to count only one of the two; of the other, none are added.`]),
    t`A ruling on either of the two groups no longer applies; rule on the new group where it needs one.`,
  ];
}

/** One part of a group with what each observer counted of it: `Redhead: Ingrid Vale 40, Otto Brandt 38`. */
export function partSentence(
  part: readonly string[],
  group: ChangedGroup,
  cell: CellOfGroup,
): string {
  const numbers = listed(
    group.totals.map(({ observer, observerName }) => {
      const lines = cell.tallies.find((tally) => tally.observer === observer)?.lines ?? [];
      const number = lines
        .filter(({ taxon }) => part.includes(taxon))
        .reduce((sum, line) => sum + line.number, 0);
      return `${observerName} ${birds(number)}`;
    }),
  );
  const taxa = commonTaxa(part);
  return t`${taxa}: ${numbers}`;
}

/** What taking a group apart does, a sentence each; empty while all of it is in one part. */
export function splitSentences(
  group: ChangedGroup,
  parts: readonly (readonly string[])[],
  cell: CellOfGroup,
): readonly string[] {
  if (parts.length < 2) return [];
  const number = birds(group.consensus.number);
  const count = parts.length;
  return [
    t`Each part is then compared and settled by itself, with a number of its own; now there is one for all of them, ${number}.`,
    ...cell.pairings.flatMap(({ aName, bName, flows }) => {
      const across = pairedAcross(flows, parts);
      return across === 0 ? [] : [acrossSentence(aName, bName, across)];
    }),
    t`A ruling on the group as it is now no longer applies; rule on the ${plural(count, { one: '# part', other: '# parts' })} where they need one.`,
  ];
}

/** What becomes of birds of two observers that were paired across the parts. */
function acrossSentence(one: string, other: string, across: number): string {
  // Birds that were paired in proportion are not whole; adding up leaves crumbs besides.
  const whole = Math.max(Math.round(across), 1);
  return Math.abs(across - whole) < 1e-6
    ? t`Between ${one} and ${other}, ${plural(whole, { one: '# bird of each is paired', other: '# birds of each are paired' })} across the parts. They are paired anew within their part, or else counted by one of the two only.`
    : t`Between ${one} and ${other}, about ${plural(whole, { one: '# bird of each is paired', other: '# birds of each are paired' })} across the parts. They are paired anew within their part, or else counted by one of the two only.`;
}

/** Birds of two observers that are taken for the same and would stand in different parts. */
function pairedAcross(
  flows: CellOfGroup['pairings'][number]['flows'],
  parts: readonly (readonly string[])[],
): number {
  const partWith = (taxon: string | null | undefined): number =>
    parts.findIndex((part) => part.some((one) => one === taxon));
  return flows.reduce((sum, { a, b, number }) => {
    const [from, to] = [partWith(a), partWith(b)];
    return from === -1 || to === -1 || from === to ? sum : sum + number;
  }, 0);
}
