import type { Posting, Result } from '../core/model/result.js';
import { nameOf } from '../plans/count-access.js';
import type { LoadedReview } from '../reviews/loaded-review.js';

/** @returns a function that says in one plain sentence what a posting of this result does */
export function postingText(
  { access, rulings }: Pick<LoadedReview, 'access' | 'rulings'>,
  result: Result,
): (posting: Posting) => string {
  const { record } = access;
  const people = (ids: string): string =>
    ids
      .split('+')
      .map((id) => nameOf(record, id))
      .join(' and ');
  const sectionNames = (ids: readonly string[]): string =>
    ids.map((id) => record.sections.find((one) => one.id === id)?.name ?? id).join(' and ');
  const placeOf = (cellId: string): string => {
    const cell = result.cells.find(({ id }) => id === cellId);
    return cell === undefined ? cellId : sectionNames(cell.place);
  };

  return ({ from, to, taxon, number, because }) => {
    const birds = `${number.toLocaleString('en')} ${taxon}`;
    const [kind = '', cell = '', who = ''] = from.split('/');
    const place = kind === 'tallied' || kind === 'consensus' ? ` in ${placeOf(cell)}` : '';
    switch (because.kind) {
      case 'agreed':
        return `${birds}${place}: ${people(who)} agree on them.`;
      case 'compatible':
        return `${birds}${place}: ${people(who)} agree on them at different resolution.`;
      case 'differently':
        return `${birds}${place}: seen by ${people(who)}, who identified them differently.`;
      case 'only-one':
        return `${birds}${place}: only ${people(who)} has them.`;
      case 'single':
        return `${birds}${place}: ${people(who)} is the only one whose count enters here.`;
      case 'rule':
        return ruleText(birds, because.ref, { from, to, place });
      case 'ruling': {
        const given = rulings.find(({ ruling }) => ruling.id === because.ref);
        const author = given === undefined ? '' : ` of ${nameOf(record, given.ruling.by)}`;
        const reason = given === undefined ? '' : `: ${given.ruling.reason}`;
        return `${birds} by the ruling${author}${reason}`;
      }
      case 'link': {
        const link = result.links.find(({ id }) => id === because.ref);
        const first = link === undefined ? 'another section' : sectionNames([link.first.section]);
        return `Found twice: ${birds}${place} are taken off; the same flock is counted in ${first}.`;
      }
      case 'window':
        return `${birds} from window ${because.ref}, its share of the mean over windows.`;
    }
  };
}

function ruleText(
  birds: string,
  rule: string,
  { from, to, place }: { readonly from: string; readonly to: string; readonly place: string },
): string {
  if (from.startsWith('rounding/'))
    return `${birds} are added to reach the number of the rule "${rule}".`;
  if (to.startsWith('rounding/')) {
    return `${birds}${place} are taken off to reach the number of the rule "${rule}".`;
  }
  return `${birds}${place} go into the compiled count by the rule "${rule}".`;
}
