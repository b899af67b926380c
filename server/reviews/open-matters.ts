import { targetSaying } from '../core/rulings/check-contradictions.js';
import { nameOf } from '../plans/count-access.js';
import type { LoadedReview } from './loaded-review.js';
import { awaitsSecond, standingRulings } from './rulings-in-force.js';
import { type Saying, say } from '../core/model/saying.js';

/** What stands between a count and its sign-off, one sentence each; empty when nothing does. */
export function openMatters(review: LoadedReview): Saying[] {
  const { access, result, rulings, queries } = review;
  const { record } = access;
  const name = (person: string): string => nameOf(record, person);
  const standing = standingRulings(rulings);
  const openWindows = record.windows.filter(({ id }) => !record.closedWindows.has(id));
  const unruled = result.disagreements.filter(
    ({ severity, ruledBy }) => severity === 'serious' && ruledBy === null,
  );
  const withoutEffect = result.rulings.filter(({ state }) => state !== 'applied');
  return [
    ...openWindows.map(({ id }) => say('Window {id} is still open: the leader closes it.', { id })),
    ...unruled.map(({ text }) => say('No ruling settles a serious disagreement: {text}', { text })),
    ...withoutEffect.map(({ id, text }) => {
      const by = rulings.find(({ ruling }) => ruling.id === id)?.ruling.by;
      return by === undefined
        ? say('Ruling {id} is not applied: {text}. Take it back, or rule again in its place.', {
            id,
            text,
          })
        : say(
            'The ruling of {name} is not applied: {text}. Take it back, or rule again in its place.',
            { name: name(by), text },
          );
    }),
    ...standing.filter(awaitsSecond).map(({ ruling }) =>
      say('The ruling of {name} on {target} waits for a second person.', {
        name: name(ruling.by),
        target: targetSaying(ruling.target),
      }),
    ),
    ...queries
      .filter(({ answer }) => answer === null)
      .map(({ askedBy, to }) =>
        say('{asked} has not answered a query of {asker}.', {
          asked: name(to),
          asker: name(askedBy),
        }),
      ),
  ];
}
