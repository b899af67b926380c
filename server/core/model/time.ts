const RFC_3339 =
  /^(\d{4})-(\d{2})-(\d{2})[Tt](\d{2}):(\d{2}):(\d{2})(?:\.(\d{1,9}))?(?:[Zz]|([+-])(\d{2}):(\d{2}))$/;

/** Days in a month of the Gregorian calendar; `month` from 1. */
function daysInMonth(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}

/**
 * Milliseconds since 1970-01-01T00:00:00Z of an RFC 3339 date-time with offset, or `null` if the
 * text is not one. Leap seconds (":60") are not taken. Reads no clock.
 *
 * @example instant('2027-01-16T08:00:00-05:00') === Date.UTC(2027, 0, 16, 13)
 */
export function instant(text: string): number | null {
  const match = RFC_3339.exec(text);
  if (match === null) return null;
  const part = (index: number): number => Number(match[index] ?? '0');
  const [year, month, day] = [part(1), part(2), part(3)];
  const [hour, minute, second] = [part(4), part(5), part(6)];
  const [offsetHour, offsetMinute] = [part(9), part(10)];
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return null;
  if (hour > 23 || minute > 59 || second > 59 || offsetHour > 23 || offsetMinute > 59) return null;
  const milliseconds = Math.floor(Number(`0.${match[7] ?? '0'}`) * 1000);
  // Date.UTC reads years 0 to 99 as 1900 to 1999.
  if (year < 100) return null;
  const local = Date.UTC(year, month - 1, day, hour, minute, second, milliseconds);
  const offset = (offsetHour * 60 + offsetMinute) * 60_000;
  return match[8] === '-' ? local + offset : local - offset;
}

/** True for an ISO 8601 calendar date such as 2027-01-16. */
export function isCalendarDate(text: string): boolean {
  return /^\d{4}-\d{2}-\d{2}$/.test(text) && instant(`${text}T00:00:00Z`) !== null;
}
