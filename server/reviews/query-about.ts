import { asWritten, inEnglish, joined, say, type Saying } from '../core/model/saying.js';

/** What a query without a disagreement is about. */
export const ALL_TALLIES = say('The tallies as a whole.');

const OWN_TALLIES = say('Your tallies as a whole.');
const NO_OWN_LINES = say('Birds of which your tally says nothing.');

/** What a query is about for the person asked, who may not see the review: their own lines of it. */
export function aboutOwn(lines: readonly string[], isOfDisagreement: boolean): Saying {
  if (!isOfDisagreement) return OWN_TALLIES;
  return lines.length === 0 ? NO_OWN_LINES : ofLines(joined(lines, '; '));
}

function ofLines(lines: Saying): Saying {
  return say('These lines of yours: {lines}.', { lines });
}

/**
 * What is on record of it, in English and hashed, as the saying that it was made from. What cannot be
 * told again, such as the sentence of a disagreement that says something else by now, is shown as it
 * was recorded.
 *
 * @param disagreement the sentence that it may be
 */
export function aboutAgain(recorded: string, disagreement: Saying | null): Saying {
  const [, lines] = /^These lines of yours: (.*)\.$/su.exec(recorded) ?? [];
  if (lines !== undefined) return ofLines(asWritten(lines));
  const known = [ALL_TALLIES, OWN_TALLIES, NO_OWN_LINES, ...(disagreement ? [disagreement] : [])];
  return known.find((saying) => inEnglish(saying) === recorded) ?? asWritten(recorded);
}
