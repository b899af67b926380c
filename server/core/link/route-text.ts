import type { Protocol } from '../model/protocol.js';
import { say, type Said, type Saying } from '../model/saying.js';
import { isSwum } from './routes.js';
import type { Leg } from './whereabouts.js';

/** "1.5 km", or "about 1.2 to 3.4 km" where it is not known better. */
export function kilometresText(lengths: readonly number[]): Saying {
  const [least, most] = [Math.min(...lengths), Math.max(...lengths)];
  return least.toFixed(1) === most.toFixed(1)
    ? say('{length} km', { length: tenths(least) })
    : say('about {least} to {most} km', { least: tenths(least), most: tenths(most) });
}

/** With one decimal, also where that is 0. */
function tenths(value: number): Said {
  return { tenths: Number(value.toFixed(1)) };
}

/** "1.5 km in 30 minutes (3.0 km/h), which a swimming flock covers". */
export function legText(
  legs: readonly Leg[],
  hours: readonly number[],
  error: number,
  protocol: Protocol,
): Saying {
  const [hour] = hours;
  const [leg] = legs;
  const length = kilometresText(legs.map(({ kilometres }) => kilometres));
  if (legs.length > 1 || hours.length > 1 || leg === undefined || hour === undefined) {
    const noPosition = leg === undefined || legs.length > 1;
    const noTime = hour === undefined || hours.length > 1;
    if (noPosition && noTime) {
      return say('{length} apart, position and time not noted: a flock could get there', {
        length,
      });
    }
    return noPosition
      ? say('{length} apart, position not noted: a flock could get there', { length })
      : say('{length} apart, time not noted: a flock could get there', { length });
  }
  const minutes = Math.round(hour * 60);
  if (minutes === 0) return say('{length} apart at the same time', { length });
  const speed = leg.kilometres / hour;
  const means = isSwum(leg, hour, error, protocol)
    ? say('which a swimming flock covers')
    : speed < protocol.flyingMinKmh
      ? say('too far to swim, but it may have flown and rested')
      : say('in flight without a rest');
  return say('{length} in {minutes} minutes ({speed} km/h), {means}', {
    ...{ length, minutes, means },
    speed: tenths(speed),
  });
}
