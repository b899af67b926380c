import { describe, expect, it } from 'vitest';

import { instant, isCalendarDate } from '../../../server/core/model/time.js';

describe('instant', () => {
  // RFC 3339, section 5.8: the document's own examples.
  it.each([
    ['1985-04-12T23:20:50.52Z', Date.UTC(1985, 3, 12, 23, 20, 50, 520)],
    ['1996-12-19T16:39:57-08:00', Date.UTC(1996, 11, 20, 0, 39, 57)],
    ['1937-01-01T12:00:27.87+00:20', Date.UTC(1937, 0, 1, 11, 40, 27, 870)],
  ])('%s', (text, milliseconds) => {
    expect(instant(text)).toBe(milliseconds);
  });

  it('takes the last day of February only in leap years', () => {
    expect(instant('2028-02-29T00:00:00Z')).not.toBeNull();
    expect(instant('2027-02-29T00:00:00Z')).toBeNull();
  });

  it.each([
    '',
    '2027-01-16',
    '2027-01-16T08:00:00',
    '2027-01-16 08:00',
    '2027-01-16T24:00:00Z',
    '2027-13-16T08:00:00Z',
    '2027-01-32T08:00:00Z',
    '2027-01-16T08:60:00Z',
    '2027-01-16T08:00:00-5:00',
    '16.01.2027 08:00:00+01:00',
  ])('refuses "%s"', (text) => {
    expect(instant(text)).toBeNull();
  });
});

describe('isCalendarDate', () => {
  it('knows the calendar', () => {
    expect(isCalendarDate('2027-01-16')).toBe(true);
    expect(isCalendarDate('2027-02-30')).toBe(false);
    expect(isCalendarDate('16/01/2027')).toBe(false);
  });
});
