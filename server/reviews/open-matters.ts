import { describeTarget } from '../core/rulings/check-contradictions.js';
import { nameOf } from '../plans/count-access.js';
import type { LoadedReview } from './loaded-review.js';
import { awaitsSecond, standingRulings } from './rulings-in-force.js';

/** What stands between a count and its sign-off, one sentence each; empty when nothing does. */
export function openMatters(review: LoadedReview): string[] {
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
    ...openWindows.map(({ id }) => `Window ${id} is still open: the leader closes it.`),
    ...unruled.map(({ text }) => `No ruling settles a serious disagreement: ${text}`),
    ...withoutEffect.map(({ id, text }) => {
      const by = rulings.find(({ ruling }) => ruling.id === id)?.ruling.by;
      const whose = by === undefined ? `Ruling ${id}` : `The ruling of ${name(by)}`;
      return `${whose} is not applied: ${text}. Take it back, or rule again in its place.`;
    }),
    ...standing
      .filter(awaitsSecond)
      .map(
        ({ ruling }) =>
          `The ruling of ${name(ruling.by)} on ${describeTarget(ruling.target)} waits for a second person.`,
      ),
    ...queries
      .filter(({ answer }) => answer === null)
      .map(({ askedBy, to }) => `${name(to)} has not answered a query of ${name(askedBy)}.`),
  ];
}
