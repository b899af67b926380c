import type { Posting, Result } from '../core/model/result.js';
import { RULES } from '../core/model/protocol.js';
import { saidIn, say, together, type Said, type Saying } from '../core/model/saying.js';
import { nameOf } from '../plans/count-access.js';
import type { LoadedReview } from '../reviews/loaded-review.js';
import { RULE_WORDS } from '../reviews/rule-words.js';

/** @returns a function that says in one plain sentence what a posting of this result does */
export function postingText(
  { access, rulings }: Pick<LoadedReview, 'access' | 'rulings'>,
  result: Result<unknown>,
): (posting: Posting) => string {
  const { record, viewer } = access;
  const people = (ids: string): Said => together(ids.split('+').map((id) => nameOf(record, id)));
  const sectionNames = (ids: readonly string[]): Said =>
    together(ids.map((id) => record.sections.find((one) => one.id === id)?.name ?? id));

  /** So many birds, and where they were seen if that is where they come from. */
  const birdsOf = ({ from, taxon, number }: Posting): Saying => {
    const birds = say('{number} {taxon}', { number: { birds: number }, taxon });
    const [kind, cellId = ''] = from.split('/');
    if (kind !== 'tallied' && kind !== 'consensus') return birds;
    const cell = result.cells.find(({ id }) => id === cellId);
    const place = sectionNames(cell?.place ?? [cellId]);
    return cell === undefined || cell.place.length === 1
      ? say('{birds} in {place}', { birds, place })
      : say('{birds} in {places}', { birds, places: place });
  };

  const saying = (posting: Posting): Saying => {
    const { from, because } = posting;
    const birds = birdsOf(posting);
    const who = from.split('/')[2] ?? '';
    switch (because.kind) {
      case 'agreed':
        return say('{birds}: {people} agree on them.', { birds, people: people(who) });
      case 'compatible':
        return say('{birds}: {people} agree on them at different resolution.', {
          birds,
          people: people(who),
        });
      case 'differently':
        return say('{birds}: seen by {people}, who identified them differently.', {
          birds,
          people: people(who),
        });
      case 'only-one':
        return say('{birds}: only {person} has them.', { birds, person: people(who) });
      case 'single':
        return say('{birds}: {person} is the only one whose count enters here.', {
          birds,
          person: people(who),
        });
      case 'rule':
        return ofRule(posting, birds);
      case 'ruling': {
        const given = rulings.find(({ ruling }) => ruling.id === because.ref);
        return given === undefined
          ? say('{birds} by the ruling', { birds })
          : say('{birds} by the ruling of {person}: {reason}', {
              birds,
              person: nameOf(record, given.ruling.by),
              reason: given.ruling.reason,
            });
      }
      case 'link': {
        const link = result.links.find(({ id }) => id === because.ref);
        return link === undefined
          ? say(
              'Found twice: {birds} are taken off; the same flock is counted in another section.',
              { birds },
            )
          : say('Found twice: {birds} are taken off; the same flock is counted in {place}.', {
              birds,
              place: sectionNames([link.first.section]),
            });
      }
      case 'window':
        return say('{birds} from window {window}, its share of the mean over windows.', {
          birds,
          window: because.ref,
        });
    }
  };
  return (posting) => saidIn(saying(posting), viewer.wording);
}

function ofRule({ from, to, because }: Posting, birds: Saying): Saying {
  const named = RULES.find((each) => each === because.ref);
  const rule = named === undefined ? because.ref : RULE_WORDS[named];
  if (from.startsWith('rounding/')) {
    return say('{birds} are added to reach the number of the rule "{rule}".', { birds, rule });
  }
  if (to.startsWith('rounding/')) {
    return say('{birds} are taken off to reach the number of the rule "{rule}".', { birds, rule });
  }
  return say('{birds} go into the compiled count by the rule "{rule}".', { birds, rule });
}
