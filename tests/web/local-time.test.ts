import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clockTimeOf, instantNear, offsetMinutes } from '../../web/src/tallies/local-time.js';

const toronto = 'America/Toronto';
const morning = { start: '2027-01-16T08:00:00-05:00', end: '2027-01-16T11:00:00-05:00' };

// Offsets and clock changes: IANA time zone database, zone America/Toronto (−05:00 in winter, −04:00
// in summer; clocks go forward on the second Sunday of March at 02:00, back on the first of November).
describe('clock times at the waterbody', () => {
  test('get the offset of their zone and season', () => {
    expect(instantNear('08:15', morning, toronto)).toBe('2027-01-16T08:15:00-05:00');
    const july = { start: '2027-07-16T08:00:00-04:00', end: '2027-07-16T11:00:00-04:00' };
    expect(instantNear('08:15', july, toronto)).toBe('2027-07-16T08:15:00-04:00');
    // Newfoundland's clocks stand three and a half hours behind UTC in winter (same source).
    expect(instantNear('08:15', morning, 'America/St_Johns')).toBe('2027-01-16T08:15:00-03:30');
  });

  test('a window over midnight puts each time on its own day', () => {
    const night = { start: '2027-01-16T22:00:00-05:00', end: '2027-01-17T02:00:00-05:00' };
    expect(instantNear('23:30', night, toronto)).toBe('2027-01-16T23:30:00-05:00');
    expect(instantNear('00:30', night, toronto)).toBe('2027-01-17T00:30:00-05:00');
  });

  test('a window over the change of clocks has both offsets', () => {
    // 14 March 2027 is the second Sunday of March.
    const change = { start: '2027-03-14T01:00:00-05:00', end: '2027-03-14T05:00:00-04:00' };
    expect(instantNear('01:30', change, toronto)).toBe('2027-03-14T01:30:00-05:00');
    expect(instantNear('03:30', change, toronto)).toBe('2027-03-14T03:30:00-04:00');
  });

  test('what is not a clock time is not guessed at', () => {
    for (const text of ['', '8:15', '24:00', '08:60', 'morning']) {
      expect(instantNear(text, morning, toronto)).toBeNull();
    }
  });

  test('written and read back, a clock time is the same', () => {
    const minutes = fc.integer({ min: 0, max: 24 * 60 - 1 });
    const zone = fc.constantFrom(
      toronto,
      'America/St_Johns',
      'UTC',
      'Europe/Berlin',
      'Asia/Kathmandu',
    );
    fc.assert(
      fc.property(minutes, zone, (minute, timeZone) => {
        const two = (value: number): string => String(value).padStart(2, '0');
        const text = `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
        const instant = instantNear(text, morning, timeZone);
        expect(instant).not.toBeNull();
        expect(clockTimeOf(instant ?? '', timeZone)).toBe(text);
        // Half a day from the middle of the window at most.
        const middle = (Date.parse(morning.start) + Date.parse(morning.end)) / 2;
        expect(Math.abs(Date.parse(instant ?? '') - middle)).toBeLessThanOrEqual(12 * 3_600_000);
      }),
    );
  });

  test('offsets of less usual zones', () => {
    // Nepal: +05:45 all year (same source).
    expect(offsetMinutes(Date.UTC(2027, 0, 16), 'Asia/Kathmandu')).toBe(345);
  });
});
