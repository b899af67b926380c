/**
 * Clock times at the waterbody to instants and back. A form asks for `08:15`; the day and the
 * offset follow from the window and the count's time zone.
 */

const minute = 60_000;

/** Minutes that a time zone's clocks are ahead of UTC at an instant. */
export function offsetMinutes(instant: number, timeZone: string): number {
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  }).formatToParts(new Date(instant));
  const part = (type: string): number =>
    Number(parts.find((one) => one.type === type)?.value ?? '0');
  const asIfUtc = Date.UTC(
    part('year'),
    part('month') - 1,
    part('day'),
    part('hour'),
    part('minute'),
    part('second'),
  );
  return Math.round((asIfUtc - Math.floor(instant / 1000) * 1000) / minute);
}

/**
 * The instant nearest to the middle of the window at which clocks there show this time: a window
 * over midnight, or a tally begun a little before it, gets the right day.
 *
 * @param clockTime `HH:MM`.
 * @returns RFC 3339 with the waterbody's offset, or `null` if the text is not a clock time.
 */
export function instantNear(
  clockTime: string,
  window: { readonly start: string; readonly end: string },
  timeZone: string,
): string | null {
  const match = /^([01]\d|2[0-3]):([0-5]\d)(?::[0-5]\d)?$/u.exec(clockTime.trim());
  if (match === null) return null;
  const middle = (Date.parse(window.start) + Date.parse(window.end)) / 2;
  const local = new Date(middle + offsetMinutes(middle, timeZone) * minute);
  const atUtc = Date.UTC(
    local.getUTCFullYear(),
    local.getUTCMonth(),
    local.getUTCDate(),
    Number(match[1]),
    Number(match[2]),
  );
  const candidates = [-1, 0, 1].map((days) => {
    const shown = atUtc + days * 24 * 60 * minute;
    // The offset is asked for twice: the first answer may lie on the other side of a clock change.
    const guess = shown - offsetMinutes(shown, timeZone) * minute;
    const offset = offsetMinutes(guess, timeZone);
    return { shown, offset, instant: shown - offset * minute };
  });
  candidates.sort(
    (one, other) => Math.abs(one.instant - middle) - Math.abs(other.instant - middle),
  );
  const nearest = candidates[0];
  if (nearest === undefined) return null;
  const sign = nearest.offset < 0 ? '-' : '+';
  const size = Math.abs(nearest.offset);
  const two = (value: number): string => String(value).padStart(2, '0');
  const shownText = new Date(nearest.shown).toISOString().slice(0, 19);
  return `${shownText}${sign}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

/** `HH:MM` as clocks at the waterbody show the instant. */
export function clockTimeOf(instant: string, timeZone: string): string {
  const at = Date.parse(instant);
  return new Date(at + offsetMinutes(at, timeZone) * minute).toISOString().slice(11, 16);
}
