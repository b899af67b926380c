import type { ReactNode } from 'react';
import type { Point, Projection } from '../plans/projection.js';
import { enlarged, pushed, wholeMap, type MapView } from './map-view.js';

/** Which way the map is looked at, and how far it is pushed for that, as a share of the frame. */
const ways: readonly { readonly sign: string; readonly name: string; readonly by: Point }[] = [
  { sign: '←', name: 'Look farther west', by: [1 / 3, 0] },
  { sign: '↑', name: 'Look farther north', by: [0, 1 / 3] },
  { sign: '↓', name: 'Look farther south', by: [0, -1 / 3] },
  { sign: '→', name: 'Look farther east', by: [-1 / 3, 0] },
];

/** A map enlarged and pushed by buttons: whoever cannot pinch or drag needs neither. */
export function MapKeys(props: {
  readonly view: MapView;
  readonly frame: Pick<Projection, 'width' | 'height'>;
  readonly change: (next: (view: MapView) => MapView) => void;
}): ReactNode {
  const { view, frame, change } = props;
  const middle: Point = [frame.width / 2, frame.height / 2];
  const isWhole = view.scale === 1;
  return (
    <div className="map-keys" role="group" aria-label="What the map shows">
      <MapKey
        sign="+"
        name="Enlarge the map"
        act={() => change((now) => enlarged(now, 2, middle, frame))}
      />
      <MapKey
        sign="−"
        name="Make the map smaller"
        isOff={isWhole}
        act={() => change((now) => enlarged(now, 0.5, middle, frame))}
      />
      {ways.map(({ sign, name, by }) => (
        <MapKey
          key={name}
          sign={sign}
          name={name}
          isOff={isWhole}
          act={() =>
            change((now) => pushed(now, [by[0] * frame.width, by[1] * frame.height], frame))
          }
        />
      ))}
      <button
        type="button"
        className="button"
        aria-disabled={isWhole}
        onClick={() => change(() => wholeMap)}
      >
        Whole
      </button>
    </div>
  );
}

function MapKey(props: {
  readonly sign: string;
  readonly name: string;
  readonly isOff?: boolean;
  readonly act: () => void;
}): ReactNode {
  const { sign, name, isOff = false, act } = props;
  return (
    <button
      type="button"
      className="button"
      aria-label={name}
      // It keeps the focus where it has done all it can.
      aria-disabled={isOff}
      onClick={isOff ? undefined : act}
    >
      {sign}
    </button>
  );
}
