/** Ids and hashes: random digits in them say nothing. */
const IDS = /[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}|(?<![0-9a-f])[0-9a-f]{32,}(?![0-9a-f])/gi;

/**
 * Whether a number stands in a text, plain or with commas between thousands, by itself or as the whole
 * part of a longer one: not as digits of an id, of a hash, of another number or behind a decimal point.
 */
export function showsNumber(text: string, number: number): boolean {
  const plain = String(number);
  const grouped = plain.replace(/\B(?=(?:\d{3})+$)/g, ',');
  return new RegExp(`(?<![\\d.])(?:${plain}|${grouped})(?!\\d)`).test(text.replace(IDS, ''));
}
