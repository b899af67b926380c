import { LINK_EVIDENCE } from '../../../server/core/model/result.js';
import type { LinkPartsFragment } from '../graphql/generated/graphql.js';
import { readTaxon } from '../ui/taxon.js';
import { birds, chance, clock, countOf, listed, sentenceCase } from '../ui/words.js';

type Sighting = LinkPartsFragment['first'];

export function isRuled(link: Pick<LinkPartsFragment, 'ruling'>): boolean {
  return link.ruling === 'confirmed' || link.ruling === 'rejected';
}

/** When a sighting was made: one time, or from the earliest to the latest. */
export function timesOf(sighting: Pick<Sighting, 'start' | 'end'>, timeZone: string): string {
  if (!sighting.start) return 'not stated';
  const start = clock(sighting.start, timeZone);
  const end = sighting.end ? clock(sighting.end, timeZone) : start;
  return start === end ? start : `${start} to ${end}`;
}

/** The whole link in one sentence. */
export function linkSentence(link: LinkPartsFragment, timeZone: string): string {
  const { first, second } = link;
  const one = `${birds(first.number)} ${readTaxon(first.taxon).common} in ${first.section.name} (${timesOf(first, timeZone)})`;
  const other = `${birds(second.number)} ${readTaxon(second.taxon).common} in ${second.section.name} (${timesOf(second, timeZone)})`;
  return `${one} may be the ${other}: ${chance(link.probability)} likely.`;
}

/** Birds that a link takes off, or would. */
function birdsTaken({ deduction }: Pick<LinkPartsFragment, 'deduction'>): number {
  return deduction.reduce((sum, { number }) => sum + number, 0);
}

/** Where a link stands, and what that does to the draft. */
export function stateOf(link: LinkPartsFragment, waitsForSecond: boolean): string {
  const taken = birdsTaken(link);
  if (link.ruling === 'confirmed') {
    return taken === 0
      ? '✓ Ruled one flock: no birds are left to take off.'
      : `✓ Ruled one flock: ${countOf(taken, 'bird')} taken off ${link.second.section.name}.`;
  }
  if (link.ruling === 'rejected') return '✓ Ruled two flocks: both are counted.';
  const would = link.deducted ? 'are' : 'would be';
  const deduction =
    taken === 0
      ? `no birds ${would} taken off`
      : `${countOf(taken, 'bird')} ${would} taken off ${link.second.section.name}${link.deducted ? ' in the draft' : ''}`;
  if (waitsForSecond) return `◐ A ruling waits for a second person; ${deduction}.`;
  return `${link.proposed ? '■ Proposed' : '□ Below the threshold'}; ${deduction}.`;
}

/** Which compiled lines a link takes birds off, or would. */
export function deductionSentence(link: LinkPartsFragment): string {
  if (link.deduction.length === 0) {
    return 'It takes no birds off: other links or a ruling leave none, or one of the two counts is not compiled.';
  }
  const lines = listed(
    link.deduction.map(({ taxon, number }) => `${birds(number)} ${readTaxon(taxon).common}`),
  );
  const place = link.second.section.name;
  return link.deducted
    ? `Taken off ${place}: ${lines}.`
    : `Confirmed, it would take off ${place}: ${lines}.`;
}

/** Whether only a part of both sightings is taken for one flock. */
function isPart({ birds: number, first, second }: LinkPartsFragment): boolean {
  return number < Math.min(first.number, second.number);
}

const isOne = (one: Sighting, other: Sighting): boolean =>
  one.cell === other.cell && one.lines.join('+') === other.lines.join('+');

/** Other links out of the same first sighting (it may have split), and into the same second one. */
function besides(
  link: LinkPartsFragment,
  links: readonly LinkPartsFragment[],
): Readonly<Record<'split' | 'joined', readonly LinkPartsFragment[]>> {
  const others = links.filter(({ id, ruling }) => id !== link.id && ruling !== 'rejected');
  return {
    split: others.filter(({ first }) => isOne(first, link.first)),
    joined: others.filter(({ second }) => isOne(second, link.second)),
  };
}

/** That a part of a flock moved, that it split or that others joined it; nothing for most links. */
export function partSentences(
  link: LinkPartsFragment,
  links: readonly LinkPartsFragment[],
): readonly string[] {
  const { first, second } = link;
  const { split, joined } = besides(link, links);
  const said: string[] = [];
  if (isPart(link)) {
    said.push(
      `About ${birds(link.birds)} of the ${birds(first.number)} moved, and are among the ${birds(second.number)}.`,
    );
  }
  const each = (
    others: readonly LinkPartsFragment[],
    placeOf: (one: LinkPartsFragment) => string,
  ) =>
    listed(
      others.map(
        (one) => `${placeOf(one)} (${countOf(one.birds, 'bird')}, ${chance(one.probability)})`,
      ),
    );
  if (split.length > 0) {
    const places = each(split, (one) => one.second.section.name);
    said.push(`It may have split: others of it may have gone to ${places}.`);
  }
  if (joined.length > 0) {
    const places = each(joined, (one) => one.first.section.name);
    said.push(`It may have been joined there by birds from ${places}.`);
  }
  return said;
}

/** What stands beside a link's arrow: how many birds too, where they are not the whole flock. */
export function arrowWords(link: LinkPartsFragment, links: readonly LinkPartsFragment[]): string {
  const { split, joined } = besides(link, links);
  const isShared = isPart(link) || split.length > 0 || joined.length > 0;
  return isShared
    ? `${chance(link.probability)}, ${countOf(link.birds, 'bird')}`
    : chance(link.probability);
}

/**
 * How much a log-likelihood ratio says, in words: the scale for Bayes factors of Kass & Raftery
 * (1995, J. Am. Stat. Assoc. 90:773), whose steps of 2 ln B are 2, 6 and 10; from memory.
 */
export function strengthOf(weight: number): string {
  const size = Math.abs(weight);
  if (size < 1) return 'hardly matters';
  const side = weight > 0 ? 'for one flock' : 'for two flocks';
  if (size < 3) return side;
  return size < 5 ? `strongly ${side}` : `very strongly ${side}`;
}

type TermName = (typeof LINK_EVIDENCE)[number];

const termNames: Readonly<Record<TermName, string>> = {
  size: 'Number of birds',
  kind: 'What they were called',
  mixture: 'Shares of the kinds',
  sexes: 'Males and females',
  travel: 'Way and time',
  heading: 'Heading',
  stated: 'Where they came from or went',
  'seen-flying': 'Seen flying',
  'seen-by': 'Seen by both, or not',
  observer: 'The observer',
  alternatives: 'Other flocks',
  learned: 'How frequent it is in this count',
};

/** What a term of the score is about, in words. */
export function termName(name: string): string {
  const known: Readonly<Record<string, string>> = termNames;
  return known[name] ?? sentenceCase(name);
}

interface Term {
  readonly name: string;
  readonly text: string;
  readonly weight: number;
}

/** The terms of a link's score as people read them, strongest first: birds by their English names. */
export function termsOf(link: LinkPartsFragment): readonly Term[] {
  // The longer name first: a species' name may begin that of its pair.
  const taxa = [...new Set([link.first.taxon, link.second.taxon])].sort(
    (one, other) => other.length - one.length,
  );
  return link.evidence.map(({ name, text, weight }) => ({
    name,
    text: taxa.reduce((said, taxon) => said.replaceAll(taxon, readTaxon(taxon).common), text),
    weight,
  }));
}

/** The same in the order in which one would ask, which is alike for all links. */
export function termsInOrder(link: LinkPartsFragment): readonly Term[] {
  const order: readonly string[] = LINK_EVIDENCE;
  const rank = ({ name }: Term): number => (order.includes(name) ? order.indexOf(name) : Infinity);
  return termsOf(link).toSorted((one, other) => rank(one) - rank(other) || 0);
}

/** What speaks for and against, as far as it matters, strongest first. */
export function scoreSentences(link: LinkPartsFragment): readonly string[] {
  const terms = termsOf(link).filter(({ weight }) => strengthOf(weight) !== 'hardly matters');
  const side = (isFor: boolean): string =>
    terms
      .filter(({ weight }) => weight > 0 === isFor)
      .map(({ text }) => text)
      .join('; ');
  const [ones, others] = [side(true), side(false)];
  return [
    `Taken together: ${chance(link.probability)} likely one flock.`,
    ones === '' ? 'Nothing speaks clearly for one flock.' : `For one flock: ${ones}.`,
    others === '' ? 'Nothing speaks clearly for two.' : `For two: ${others}.`,
  ].map(sentenceCase);
}
