import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useId, type KeyboardEvent, type PointerEvent, type ReactNode } from 'react';
import { compassPoint } from './compass-point.js';

/** Nobody reads a swimming flock's heading finer than this. */
const STEP = 5;
const EIGHTH = 45;
const SIZE = 176;
const MIDDLE = SIZE / 2;
const RADIUS = 66;

/**
 * A heading by turning a dial: drag or tap where the birds went, north up, or use the arrow keys.
 * Degrees clockwise from true north, 0 to 359; the text stays as it was typed elsewhere until turned.
 */
export function HeadingDial(props: {
  readonly value: string;
  readonly fault: string | undefined;
  readonly onChange: (value: string) => void;
}): ReactNode {
  const { value, onChange } = props;
  const labelId = useId();
  const heading = value.trim() === '' || Number.isNaN(Number(value)) ? null : Number(value);
  const shown = heading === null ? null : ((Math.round(heading) % 360) + 360) % 360;

  function turnTo(degrees: number): void {
    onChange(String(((degrees % 360) + 360) % 360));
  }

  function turnToPointer(event: PointerEvent<SVGSVGElement>): void {
    const box = event.currentTarget.getBoundingClientRect();
    const east = event.clientX - (box.left + box.width / 2);
    const south = event.clientY - (box.top + box.height / 2);
    if (Math.hypot(east, south) < box.width / 12) return;
    const degrees = (Math.atan2(east, -south) * 180) / Math.PI;
    turnTo(Math.round(degrees / STEP) * STEP);
  }

  function turnByKey(event: KeyboardEvent): void {
    const steps: Readonly<Record<string, number>> = {
      ArrowRight: STEP,
      ArrowUp: STEP,
      ArrowLeft: -STEP,
      ArrowDown: -STEP,
      PageUp: EIGHTH,
      PageDown: -EIGHTH,
    };
    const step = steps[event.key];
    if (step !== undefined) turnTo((shown ?? (step > 0 ? -step : 0)) + step);
    else if (event.key === 'Home') turnTo(0);
    else if (event.key === 'End') turnTo(360 - STEP);
    else if (event.key === 'Delete' || event.key === 'Backspace') onChange('');
    else return;
    event.preventDefault();
  }

  return (
    <div className="field heading-dial">
      <span className="label" id={labelId}>
        <Trans>Heading</Trans>
      </span>
      <div className="heading-dial-row">
        <svg
          width={SIZE}
          height={SIZE}
          viewBox={`0 0 ${SIZE} ${SIZE}`}
          className="dial"
          role="slider"
          tabIndex={0}
          aria-labelledby={labelId}
          aria-valuemin={0}
          aria-valuemax={359}
          aria-valuenow={shown ?? 0}
          aria-valuetext={
            shown === null ? t`not noted` : t`${shown} degrees, ${compassPoint(shown).long}`
          }
          onKeyDown={turnByKey}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId);
            turnToPointer(event);
          }}
          onPointerMove={(event) => {
            if (event.currentTarget.hasPointerCapture(event.pointerId)) turnToPointer(event);
          }}
        >
          <circle cx={MIDDLE} cy={MIDDLE} r={RADIUS} className="dial-face" />
          {Array.from({ length: 16 }, (_, index) => {
            const [x1, y1] = onCircle(index * 22.5, RADIUS);
            const [x2, y2] = onCircle(index * 22.5, RADIUS - (index % 2 === 0 ? 10 : 5));
            return <path key={index} d={`M${x1} ${y1}L${x2} ${y2}`} className="dial-mark" />;
          })}
          {[0, 90, 180, 270].map((degrees) => {
            const point = compassPoint(degrees).short;
            const [x, y] = onCircle(degrees, RADIUS + 13);
            return (
              <text key={point} x={x} y={y} className="dial-point">
                {point}
              </text>
            );
          })}
          {shown === null ? null : <Hand degrees={shown} />}
        </svg>
        <div className="stack-tight heading-dial-said">
          <output className="dial-words">
            {shown === null ? t`not noted` : `${shown}° ${compassPoint(shown).short}`}
          </output>
          <span className="hint">
            <Trans>from true north, where the birds went</Trans>
          </span>
          <button
            type="button"
            className="button"
            disabled={value === ''}
            onClick={() => onChange('')}
          >
            <Trans>No heading</Trans>
          </button>
        </div>
      </div>
      {props.fault === undefined ? null : <span className="field-fault">{props.fault}</span>}
    </div>
  );
}

function Hand(props: { readonly degrees: number }): ReactNode {
  const [x, y] = onCircle(props.degrees, RADIUS - 6);
  const [leftX, leftY] = onCircle(props.degrees - 12, RADIUS - 22);
  const [rightX, rightY] = onCircle(props.degrees + 12, RADIUS - 22);
  return (
    <>
      <path d={`M${MIDDLE} ${MIDDLE}L${x} ${y}`} className="dial-hand" />
      <path d={`M${x} ${y}L${leftX} ${leftY}L${rightX} ${rightY}Z`} className="dial-tip" />
      <circle cx={MIDDLE} cy={MIDDLE} r={5} className="dial-tip" />
    </>
  );
}

function onCircle(degrees: number, radius: number): readonly [number, number] {
  const angle = (degrees * Math.PI) / 180;
  const round = (value: number): number => Math.round(value * 100) / 100;
  return [round(MIDDLE + radius * Math.sin(angle)), round(MIDDLE - radius * Math.cos(angle))];
}
