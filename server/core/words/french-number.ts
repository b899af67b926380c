/**
 * A number in French: a decimal comma, digits in threes.
 *
 * @example frenchNumber(-12345.5) === '-12\u202f345,5'
 */
export function frenchNumber(value: number): string {
  const [whole = '', fraction] = String(value).split('.');
  const inThrees = whole.replace(/\B(?=(?:\d{3})+$)/gu, '\u202f');
  return fraction === undefined ? inThrees : `${inThrees},${fraction}`;
}
