import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg, plural, t } from '@lingui/core/macro';
import { LINK_EVIDENCE } from '../../../server/core/model/result.js';
import type { LinkPartsFragment } from '../graphql/generated/graphql.js';
import { readTaxon } from '../ui/taxon.js';
import { birds, chance, clock, listed, sentenceCase } from '../ui/words.js';
import { clauses } from './clauses.js';

type Sighting = LinkPartsFragment['first'];

export function isRuled(link: Pick<LinkPartsFragment, 'ruling'>): boolean {
  return link.ruling === 'confirmed' || link.ruling === 'rejected';
}

/** When a sighting was made: one time, or from the earliest to the latest. */
export function timesOf(sighting: Pick<Sighting, 'start' | 'end'>, timeZone: string): string {
  if (!sighting.start) return t({ message: 'not stated', context: 'time' });
  const start = clock(sighting.start, timeZone);
  const end = sighting.end ? clock(sighting.end, timeZone) : start;
  return start === end ? start : t`${start} to ${end}`;
}

/** The whole link in one sentence. */
export function linkSentence(link: LinkPartsFragment, timeZone: string): string {
  const { first, second } = link;
  const [one, other] = [birds(first.number), birds(second.number)];
  const [oneTaxon, otherTaxon] = [readTaxon(first.taxon).common, readTaxon(second.taxon).common];
  const [onePlace, otherPlace] = [first.section.name, second.section.name];
  const [oneTime, otherTime] = [timesOf(first, timeZone), timesOf(second, timeZone)];
  const likely = chance(link.probability);
  return t`${one} ${oneTaxon} in ${onePlace} (${oneTime}) may be the ${other} ${otherTaxon} in ${otherPlace} (${otherTime}): ${likely} likely.`;
}

/** Birds that a link takes off, or would. */
function birdsTaken({ deduction }: Pick<LinkPartsFragment, 'deduction'>): number {
  return deduction.reduce((sum, { number }) => sum + number, 0);
}

/** Where a link stands, and what that does to the draft. */
export function stateOf(link: LinkPartsFragment, waitsForSecond: boolean): string {
  const taken = birdsTaken(link);
  const place = link.second.section.name;
  if (link.ruling === 'confirmed') {
    return taken === 0
      ? t`✓ Ruled one flock: no birds are left to take off.`
      : t`✓ Ruled one flock: ${plural(taken, { one: '# bird', other: '# birds' })} taken off ${place}.`;
  }
  if (link.ruling === 'rejected') return t`✓ Ruled two flocks: both are counted.`;
  const state = waitsForSecond
    ? t`◐ A ruling waits for a second person`
    : link.proposed
      ? t`■ Proposed`
      : t`□ Below the threshold`;
  return `${clauses([state, takenClause(taken, place, link.deducted)])}.`;
}

/** How many birds a link takes off a place, or would, as a part of a sentence. */
function takenClause(taken: number, place: string, isDeducted: boolean): string {
  if (taken === 0) return isDeducted ? t`no birds are taken off` : t`no birds would be taken off`;
  return isDeducted
    ? plural(taken, {
        one: `# bird is taken off ${place} in the draft`,
        other: `# birds are taken off ${place} in the draft`,
      })
    : plural(taken, {
        one: `# bird would be taken off ${place}`,
        other: `# birds would be taken off ${place}`,
      });
}

/** Which compiled lines a link takes birds off, or would. */
export function deductionSentence(link: LinkPartsFragment): string {
  if (link.deduction.length === 0) {
    return t`It takes no birds off: other links or a ruling leave none, or one of the two counts is not compiled.`;
  }
  const lines = listed(
    link.deduction.map(({ taxon, number }) => `${birds(number)} ${readTaxon(taxon).common}`),
  );
  const place = link.second.section.name;
  return link.deducted
    ? t`Taken off ${place}: ${lines}.`
    : t`Confirmed, it would take off ${place}: ${lines}.`;
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
    const [moved, left, arrived] = [birds(link.birds), birds(first.number), birds(second.number)];
    said.push(t`About ${moved} of the ${left} moved, and are among the ${arrived}.`);
  }
  if (split.length > 0) {
    const places = listed(split.map((one) => placeWords(one.second.section.name, one)));
    said.push(t`It may have split: others of it may have gone to ${places}.`);
  }
  if (joined.length > 0) {
    const places = listed(joined.map((one) => placeWords(one.first.section.name, one)));
    said.push(t`It may have been joined there by birds from ${places}.`);
  }
  return said;
}

/** `South Bay (14 birds, 12 %)`. */
function placeWords(place: string, { birds: number, probability }: LinkPartsFragment): string {
  const likely = chance(probability);
  return plural(number, {
    one: `${place} (# bird, ${likely})`,
    other: `${place} (# birds, ${likely})`,
  });
}

/** What stands beside a link's arrow: how many birds too, where they are not the whole flock. */
export function arrowWords(link: LinkPartsFragment, links: readonly LinkPartsFragment[]): string {
  const { split, joined } = besides(link, links);
  const isShared = isPart(link) || split.length > 0 || joined.length > 0;
  const likely = chance(link.probability);
  const { birds: number } = link;
  return isShared ? t`${likely}, ${plural(number, { one: '# bird', other: '# birds' })}` : likely;
}

/** Below this a log-likelihood ratio is not worth more than a bare mention. */
const BARE_MENTION = 1;

/**
 * How much a log-likelihood ratio says, in words: the scale for Bayes factors of Kass & Raftery
 * (1995, J. Am. Stat. Assoc. 90:773), whose steps of 2 ln B are 2, 6 and 10; from memory.
 */
export function strengthOf(weight: number): string {
  const size = Math.abs(weight);
  if (size < BARE_MENTION) return t`hardly matters`;
  if (size < 3) return weight > 0 ? t`for one flock` : t`for two flocks`;
  if (size < 5) return weight > 0 ? t`strongly for one flock` : t`strongly for two flocks`;
  return weight > 0 ? t`very strongly for one flock` : t`very strongly for two flocks`;
}

type TermName = (typeof LINK_EVIDENCE)[number];

const termNames: Readonly<Record<TermName, MessageDescriptor>> = {
  size: msg`Number of birds`,
  kind: msg`What they were called`,
  mixture: msg`Shares of the kinds`,
  sexes: msg`Males and females`,
  travel: msg`Way and time`,
  heading: msg`Heading`,
  stated: msg`Where they came from or went`,
  'seen-flying': msg`Seen flying`,
  'seen-by': msg`Seen by both, or not`,
  observer: msg`The observer`,
  alternatives: msg`Other flocks`,
  learned: msg`How frequent it is in this count`,
};

/** What a term of the score is about, in words. */
export function termName(name: string): string {
  const names: Readonly<Record<string, MessageDescriptor | undefined>> = termNames;
  const known = names[name];
  return known === undefined ? sentenceCase(name) : i18n._(known);
}

interface Term {
  readonly name: string;
  readonly text: string;
  readonly weight: number;
}

/** The terms of a link's score as people read them, strongest first: birds by their common names. */
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
  const terms = termsOf(link).filter(({ weight }) => Math.abs(weight) >= BARE_MENTION);
  const side = (isFor: boolean): readonly string[] =>
    terms.filter(({ weight }) => weight > 0 === isFor).map(({ text }) => text);
  const [forOne, forTwo] = [side(true), side(false)];
  const likely = chance(link.probability);
  const said = [t`Taken together: ${likely} likely one flock.`];
  if (forOne.length === 0) said.push(t`Nothing speaks clearly for one flock.`);
  else {
    const reasons = clauses(forOne);
    said.push(t`For one flock: ${reasons}.`);
  }
  if (forTwo.length === 0) said.push(t`Nothing speaks clearly for two.`);
  else {
    const reasons = clauses(forTwo);
    said.push(t`For two: ${reasons}.`);
  }
  return said;
}
