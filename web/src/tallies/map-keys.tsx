import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { Point, Projection } from '../plans/projection.js';
import { enlarged, pushed, wholeMap, type MapView } from './map-view.js';

/** Which way the map is looked at, and how far it is pushed for that, as a share of the frame. */
const ways: readonly {
  readonly sign: string;
  readonly name: MessageDescriptor;
  readonly by: Point;
}[] = [
  { sign: '←', name: msg`Look farther west`, by: [1 / 3, 0] },
  { sign: '↑', name: msg`Look farther north`, by: [0, 1 / 3] },
  { sign: '↓', name: msg`Look farther south`, by: [0, -1 / 3] },
  { sign: '→', name: msg`Look farther east`, by: [-1 / 3, 0] },
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
    <div className="map-keys" role="group" aria-label={t`What the map shows`}>
      <MapKey
        sign="+"
        name={t`Enlarge the map`}
        act={() => change((now) => enlarged(now, 2, middle, frame))}
      />
      <MapKey
        sign="−"
        name={t`Make the map smaller`}
        isOff={isWhole}
        act={() => change((now) => enlarged(now, 0.5, middle, frame))}
      />
      {ways.map(({ sign, name, by }) => (
        <MapKey
          key={sign}
          sign={sign}
          name={i18n._(name)}
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
        <Trans>Whole</Trans>
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
