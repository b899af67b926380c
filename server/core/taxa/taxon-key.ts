/**
 * What two writings of one name have in common: letter case, accents, hyphens, apostrophes, dots
 * and brackets aside; "spp." and "species" read as "sp.", "unidentified duck" as "duck sp.",
 * × as x.
 *
 * @example taxonKey('RED-BREASTED merganser') === 'red breasted merganser'
 */
export function taxonKey(text: string): string {
  const plain = text
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/gu, '')
    .toLowerCase()
    .replace(/œ/gu, 'oe')
    .replace(/['’‘ʼ`´]/gu, '')
    .replace(/×/gu, ' x ')
    .replace(/[-‐‑‒–_.,()]/gu, ' ')
    .replace(/\s+/gu, ' ')
    .trim()
    .replace(/ (?:spp|species)$/u, ' sp');
  return plain.replace(/^(?:unidentified|unknown) (.+?)(?: sp)?$/u, '$1 sp');
}
