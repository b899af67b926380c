import { lastPerson } from './people/last-person.js';
import { keptAtStart, readKeptAtStart } from './tallies/kept-at-start.js';
import { beginUnpainted, untilPainted } from './ui/first-paint.js';
import { startLanguage, startWording } from './ui/language.js';

const person = lastPerson();

/**
 * What the first page is drawn with: its texts, and what the phone keeps. It is fetched as soon as this
 * module runs, which `main.tsx` lets be before all others, so that phone and browser work side by side.
 */
export const started = Promise.all([
  startLanguage(),
  person === null ? undefined : readKeptAtStart(person.id),
]).then(() => {
  // With nothing kept there is nothing to show before the server's answer.
  if (person !== null && keptAtStart(person.id)?.parts.length) beginUnpainted();
  void untilPainted().then(startWording);
});
