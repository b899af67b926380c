/** What Windows-1252 has beyond Latin-1: the built-in fonts of PDF have these letters and signs. */
const BEYOND_LATIN_1 = '€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ';

/** Letters that are not a base letter with a mark, as they are usually written without it. */
const PLAIN: Readonly<Record<string, string>> = {
  ł: 'l',
  Ł: 'L',
  đ: 'd',
  Đ: 'D',
  ı: 'i',
  '−': '-',
  // The narrow no-break space that Intl writes into French numbers.
  '\u202f': '\u00a0',
};

/**
 * Text with no letter that the built-in fonts of PDF lack: such a letter loses its marks, and what has
 * no plain form becomes a question mark. Embedding a font would save them, at the cost of shipping one.
 *
 * @example printable('Wałęsa, 山') // 'Walesa, ?'
 */
export function printable(text: string): string {
  return text.normalize('NFC').replace(/./gsu, (letter) => {
    if (isThere(letter)) return letter;
    const plain = PLAIN[letter] ?? letter.normalize('NFD').replace(/\p{M}/gu, '');
    return plain !== '' && isThere(plain) ? plain : '?';
  });
}

function isThere(letter: string): boolean {
  const code = letter.codePointAt(0) ?? 0;
  return (
    (code >= 0x20 && code < 0x7f) ||
    (code >= 0xa0 && code <= 0xff) ||
    BEYOND_LATIN_1.includes(letter)
  );
}
