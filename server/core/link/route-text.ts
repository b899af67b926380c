import type { Protocol } from '../model/protocol.js';
import { isSwum } from './routes.js';
import type { Leg } from './whereabouts.js';

/** "1.5 km", or "about 1.2 to 3.4 km" where it is not known better. */
export function kilometresText(lengths: readonly number[]): string {
  const [least, most] = [Math.min(...lengths).toFixed(1), Math.max(...lengths).toFixed(1)];
  return least === most ? `${least} km` : `about ${least} to ${most} km`;
}

/** "1.5 km in 30 minutes (3.0 km/h), which a swimming flock covers". */
export function legText(
  legs: readonly Leg[],
  hours: readonly number[],
  error: number,
  protocol: Protocol,
): string {
  const [hour] = hours;
  const [leg] = legs;
  const length = kilometresText(legs.map(({ kilometres }) => kilometres));
  if (legs.length > 1 || hours.length > 1 || leg === undefined || hour === undefined) {
    const lacking = [
      ...(leg === undefined || legs.length > 1 ? ['position'] : []),
      ...(hour === undefined || hours.length > 1 ? ['time'] : []),
    ];
    return `${length} apart, ${lacking.join(' and ')} not noted: a flock could get there`;
  }
  const minutes = Math.round(hour * 60);
  if (minutes === 0) return `${length} apart at the same time`;
  const speed = leg.kilometres / hour;
  const means = isSwum(leg, hour, error, protocol)
    ? 'which a swimming flock covers'
    : speed < protocol.flyingMinKmh
      ? 'too far to swim, but it may have flown and rested'
      : 'in flight without a rest';
  return `${length} in ${minutes} minutes (${speed.toFixed(1)} km/h), ${means}`;
}
