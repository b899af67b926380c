/**
 * A number in French: a decimal comma, digits in threes.
 *
 * @example frenchNumber(-12345.5) === '-12\u202f345,5'
 */
export function frenchNumber(value: number): string {
  return frenchDigits(String(value));
}

/** The same of a number in digits with a point: `1234.0` keeps its 0. */
export function frenchDigits(digits: string): string {
  const [whole = '', fraction] = digits.split('.');
  const inThrees = whole.replace(/\B(?=(?:\d{3})+$)/gu, '\u202f');
  return fraction === undefined ? inThrees : `${inThrees},${fraction}`;
}
