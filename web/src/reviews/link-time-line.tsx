import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useId, type ReactNode } from 'react';
import type { FlockPartsFragment, LinkPartsFragment } from '../graphql/generated/graphql.js';
import { useWidth } from '../ui/use-width.js';
import { clock } from '../ui/words.js';
import { isSeen } from './link-marks.js';
import { timesOf } from './link-words.js';

const MINUTE = 60_000;
/** Half the width of the slider's handle, at which its way begins and ends. */
const HANDLE = 10;
const HEIGHT = 78;

/** A span of the day, in milliseconds since 1970, whole minutes. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** From the earliest to the latest of a window and what was seen for it. */
export function spanOf(
  window: { readonly start: string; readonly end: string },
  flocks: readonly Pick<FlockPartsFragment, 'start'>[],
): Span {
  const times = [window.start, window.end, ...flocks.map(({ start }) => start)].map((time) =>
    Date.parse(time),
  );
  return {
    start: Math.floor(Math.min(...times) / MINUTE) * MINUTE,
    end: Math.ceil(Math.max(...times) / MINUTE) * MINUTE,
  };
}

/** The count window as a line: when each flock and the two sightings were seen, and a slider. */
export function LinkTimeLine(props: {
  readonly link: LinkPartsFragment;
  readonly flocks: readonly FlockPartsFragment[];
  readonly span: Span;
  readonly moment: number;
  readonly timeZone: string;
  readonly onChange: (moment: number) => void;
}): ReactNode {
  const { link, flocks, span, moment, timeZone, onChange } = props;
  const [box, width] = useWidth(640);
  const id = useId();
  const xOf = (time: number): number =>
    HANDLE + ((time - span.start) / (span.end - span.start)) * (width - 2 * HANDLE);
  const time = (instant: number): string => clock(new Date(instant).toISOString(), timeZone);
  const seen = flocks.filter((flock) => isSeen(flock, moment)).length;
  const [start, end, now] = [time(span.start), time(span.end), time(moment)];
  const [first, second] = [timesOf(link.first, timeZone), timesOf(link.second, timeZone)];
  return (
    <div className="stack-tight" ref={box}>
      <svg
        width={width}
        height={HEIGHT}
        className="time-line"
        role="img"
        aria-label={t`Time line from ${start} to ${end}: the first sighting at ${first}, the second at ${second}.`}
      >
        {flocks.map((flock) => (
          <line
            key={flock.lines.join('+')}
            x1={xOf(Date.parse(flock.start))}
            x2={xOf(Date.parse(flock.start))}
            y1={46}
            y2={56}
            className="time-flock"
            data-seen={isSeen(flock, moment)}
          />
        ))}
        <line x1={xOf(moment)} x2={xOf(moment)} y1={0} y2={58} className="time-now" />
        <SightingBar mark="first" y={10} sighting={link.first} xOf={xOf} />
        <SightingBar mark="second" y={30} sighting={link.second} xOf={xOf} />
        <Clock span={span} xOf={xOf} time={time} isWide={width > 520} />
      </svg>
      <label htmlFor={id} className="label">
        <Trans>Show what was seen by {now}</Trans>
      </label>
      <input
        id={id}
        type="range"
        className="time-slider"
        min={0}
        max={(span.end - span.start) / MINUTE}
        step={1}
        value={(moment - span.start) / MINUTE}
        aria-valuetext={t`${now}, ${plural(seen, { one: '# flock', other: '# flocks' })} seen so far`}
        onChange={(event) => onChange(span.start + Number(event.target.value) * MINUTE)}
      />
      <div className="row time-jumps not-printed">
        {(['first', 'second'] as const).map((mark) => {
          const { start: sighted } = link[mark];
          if (!sighted) return null;
          // The first whole minute at which it has been seen.
          const at = Math.ceil(Date.parse(sighted) / MINUTE) * MINUTE;
          const minute = time(at);
          return (
            <button key={mark} type="button" className="button" onClick={() => onChange(at)}>
              {mark === 'first' ? t`First, ${minute}` : t`Second, ${minute}`}
            </button>
          );
        })}
        <button type="button" className="button" onClick={() => onChange(span.end)}>
          <Trans>All, {end}</Trans>
        </button>
      </div>
    </div>
  );
}

function SightingBar(props: {
  readonly mark: 'first' | 'second';
  readonly y: number;
  readonly sighting: Pick<LinkPartsFragment['first'], 'start' | 'end'>;
  readonly xOf: (time: number) => number;
}): ReactNode {
  const { mark, y, sighting, xOf } = props;
  if (!sighting.start) return null;
  const from = xOf(Date.parse(sighting.start));
  const to = xOf(Date.parse(sighting.end ?? sighting.start));
  const shape = { className: `map-flock map-flock-${mark}` };
  return (
    <g>
      <line x1={from} x2={to} y1={y} y2={y} className={`time-span time-span-${mark}`} />
      {mark === 'first' ? (
        <circle cx={from} cy={y} r="8" {...shape} />
      ) : (
        <rect x={from - 8} y={y - 8} width="16" height="16" rx="1.5" {...shape} />
      )}
      <text x={from} y={y + 4} textAnchor="middle" className={`map-letter map-letter-${mark}`}>
        {mark === 'first' ? '1' : '2'}
      </text>
    </g>
  );
}

/** Hours and half hours, as far as there is room. */
function Clock(props: {
  readonly span: Span;
  readonly xOf: (time: number) => number;
  readonly time: (instant: number) => string;
  readonly isWide: boolean;
}): ReactNode {
  const { span, xOf } = props;
  const hours = (span.end - span.start) / (60 * MINUTE);
  const step = (hours > 6 ? 120 : props.isWide && hours <= 4 ? 30 : 60) * MINUTE;
  const first = Math.ceil(span.start / step) * step;
  const marks = Array.from(
    { length: Math.floor((span.end - first) / step) + 1 },
    (_, index) => first + index * step,
  );
  return (
    <g>
      <line x1={xOf(span.start)} x2={xOf(span.end)} y1={58} y2={58} className="time-axis" />
      {marks.map((mark) => (
        <g key={mark}>
          <line x1={xOf(mark)} x2={xOf(mark)} y1={58} y2={62} className="time-axis" />
          <text
            x={xOf(mark)}
            y={75}
            // The outermost would be cut off if they stood in the middle of their marks.
            textAnchor={mark === span.start ? 'start' : mark === span.end ? 'end' : 'middle'}
            dx={mark === span.start ? -HANDLE : mark === span.end ? HANDLE : 0}
            className="map-text"
          >
            {props.time(mark)}
          </text>
        </g>
      ))}
    </g>
  );
}
