import { birds, inWords } from '../ui/words.js';
import { wholeNumber, type DraftLine } from './draft.js';

/** The number of a line as it reads in a list: `1,200`, `40–60`, `present`, or a dash while it is missing. */
export function quantityWords(line: DraftLine): string {
  if (line.quantity === 'present') return 'present';
  if (line.quantity === 'range') {
    const low = wholeNumber(line.low);
    const high = wholeNumber(line.high);
    return low === null || high === null ? '–' : `${birds(low)}–${birds(high)}`;
  }
  const number = wholeNumber(line.number);
  return number === null ? '–' : birds(number);
}

/** What else the line says, briefly: `in blocks of 50, flying through, 3 males, likely`. */
export function detailWords(line: DraftLine): string {
  const parts: string[] = [];
  if (line.method === 'block') {
    const block = wholeNumber(line.block);
    parts.push(block === null ? 'in blocks' : `in blocks of ${birds(block)}`);
  } else if (line.method !== 'one-by-one')
    parts.push(line.method === 'sample' ? 'by a sample' : 'guess');
  if (line.activity !== 'water') parts.push(inWords(line.activity));
  for (const [count, word] of [
    [line.male, 'male'],
    [line.female, 'female-type'],
    [line.adult, 'adult'],
    [line.immature, 'immature'],
  ] as const) {
    if (count.trim() !== '') parts.push(`${count.trim()} ${word}`);
  }
  if (line.flock.trim() !== '') parts.push(`flock ${line.flock.trim()}`);
  if (line.time !== '') parts.push(line.time);
  if (line.lat.trim() !== '') parts.push('position noted');
  if (line.certainty === 'likely') parts.push('likely');
  if (line.note.trim() !== '') parts.push(`“${line.note.trim()}”`);
  return parts.join(', ');
}
