import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import {
  memo,
  useId,
  useMemo,
  useRef,
  useState,
  type KeyboardEvent,
  type MouseEvent,
  type ReactNode,
} from 'react';
import type { Position } from '../../../server/core/model/snapshot.js';
import {
  fitProjection,
  linePath,
  polygonPath,
  type Point,
  type Projection,
} from '../plans/projection.js';
import { useQuietAnnounce } from '../ui/use-quiet-announce.js';
import { useWidth } from '../ui/use-width.js';
import { MapKeys } from './map-keys.js';
import { enlarged, pushedToShow, viewedThrough, wholeMap } from './map-view.js';
import type { Place } from './place.js';
import { crossHairWords } from './place-words.js';
import { useMapView } from './use-map-view.js';

/** As much of a phone's screen as leaves room for what is said about the map. */
const MOST_HEIGHT = 340;
/** Pixels that an arrow key moves the cross-hair by; with the shift key five times that. */
const STEP = 10;

const arrows: Readonly<Record<string, Point>> = {
  ArrowLeft: [-STEP, 0],
  ArrowRight: [STEP, 0],
  ArrowUp: [0, -STEP],
  ArrowDown: [0, STEP],
};

/**
 * The sections of an assignment, north up, to tap on; by keyboard a cross-hair is moved about and set,
 * and where it is gets said. The map can be enlarged by keys, buttons and two fingers.
 */
export function SectionMap(props: {
  /** One sentence: what the map shows and what a tap does. */
  readonly label: string;
  readonly place: Place;
  readonly mark?: Position | null;
  /** Corners of an outline. */
  readonly outline?: readonly Position[];
  readonly onTap: (position: Position) => void;
}): ReactNode {
  const { place, mark = null, outline = [], onTap } = props;
  const [box, width] = useWidth(360);
  const svg = useRef<SVGSVGElement>(null);
  const helpId = useId();
  const whole = useMemo(() => {
    const positions = [
      ...place.sections.flatMap(({ polygon }) => polygon.flat()),
      ...(place.vantage === null ? [] : [place.vantage.position]),
    ];
    return fitProjection(positions, width, MOST_HEIGHT, { margin: 22 });
  }, [place, width]);
  const { view, change, wasPushed } = useMapView(svg, whole);
  const projection = useMemo(() => viewedThrough(whole, view), [whole, view]);
  /** Where the cross-hair is, once somebody came to the map by keyboard. */
  const [cross, setCross] = useState<Position | null>(null);
  const [isByKeyboard, setByKeyboard] = useState(false);
  const words = cross === null || !isByKeyboard ? null : crossHairWords(cross, place);
  useQuietAnnounce(words);
  const middle: Point = [whole.width / 2, whole.height / 2];

  function tap(event: MouseEvent<SVGSVGElement>): void {
    if (wasPushed()) return;
    const { left, top } = event.currentTarget.getBoundingClientRect();
    const position = projection.unproject([event.clientX - left, event.clientY - top]);
    setByKeyboard(false);
    setCross(position);
    onTap(position);
  }

  function press(event: KeyboardEvent): void {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const at = cross ?? mark ?? projection.unproject(middle);
    const arrow = arrows[event.key];
    if (arrow !== undefined) {
      const far = event.shiftKey ? 5 : 1;
      const [x, y] = projection.project(at);
      const to: Point = [x + arrow[0] * far, y + arrow[1] * far];
      const moved = projection.unproject(to);
      setCross(moved);
      change((now) => pushedToShow(now, viewedThrough(whole, now).project(moved), whole));
    } else if (event.key === 'Enter' || event.key === ' ') {
      setCross(at);
      onTap(at);
    } else if (event.key === '+' || event.key === '=' || event.key === '-') {
      const factor = event.key === '-' ? 0.5 : 2;
      change((now) => enlarged(now, factor, viewedThrough(whole, now).project(at), whole));
    } else if (event.key === '0') change(() => wholeMap);
    else return;
    setByKeyboard(true);
    event.preventDefault();
  }

  const at = mark === null ? null : projection.project(mark);
  const vantage = place.vantage === null ? null : projection.project(place.vantage.position);
  const hair = cross === null || !isByKeyboard ? null : projection.project(cross);
  return (
    <div ref={box} className="section-map stack-tight">
      <div
        className="map-box"
        role="application"
        aria-roledescription={t`map`}
        tabIndex={0}
        aria-label={props.label}
        aria-describedby={helpId}
        onKeyDown={press}
        onFocus={(event) => {
          if (!event.currentTarget.matches(':focus-visible')) return;
          setCross(cross ?? mark ?? projection.unproject(middle));
          setByKeyboard(true);
        }}
      >
        <svg
          ref={svg}
          className="map"
          data-enlarged={view.scale > 1}
          width={projection.width}
          height={projection.height}
          viewBox={`0 0 ${projection.width} ${projection.height}`}
          aria-hidden="true"
          onClick={tap}
        >
          <Ground place={place} projection={projection} />
          {outline.length < 3 ? null : (
            <path d={polygonPath([outline], projection)} className="section-map-seen" />
          )}
          {outline.length === 0 ? null : (
            <path d={linePath([outline], projection)} className="section-map-outline" />
          )}
          {outline.map((corner, index) => {
            const [x, y] = projection.project(corner);
            return <circle key={index} cx={x} cy={y} r={5} className="section-map-corner" />;
          })}
          {vantage === null ? null : (
            <>
              <path d={`M${vantage[0]} ${vantage[1] - 8}l8 14h-16Z`} className="map-vantage" />
              <text x={vantage[0]} y={vantage[1] + 20} textAnchor="middle" className="map-text">
                <Trans>you</Trans>
              </text>
            </>
          )}
          {at === null ? null : (
            <path
              d={`M${at[0] - 12} ${at[1]}h24M${at[0]} ${at[1] - 12}v24`}
              className="section-map-mark"
            />
          )}
          {hair === null ? null : (
            <>
              <circle cx={hair[0]} cy={hair[1]} r={9} className="section-map-cross" />
              <path
                d={`M0 ${hair[1]}H${hair[0] - 9}M${hair[0] + 9} ${hair[1]}H${projection.width}M${hair[0]} 0V${hair[1] - 9}M${hair[0]} ${hair[1] + 9}V${projection.height}`}
                className="section-map-cross"
              />
            </>
          )}
          <text x={projection.width - 14} y={18} textAnchor="middle" className="map-text">
            <Trans>N ↑</Trans>
          </text>
        </svg>
      </div>
      <MapKeys view={view} frame={whole} change={change} />
      <p className="hint" id={helpId}>
        {words === null
          ? t`By keyboard: arrow keys move a cross-hair, with the shift key farther; Enter sets it; plus and minus enlarge.`
          : t`Cross-hair: ${words}. Enter sets it.`}
      </p>
    </div>
  );
}

/** What stays as it is, whatever is marked on it: not drawn again with every tap on the count. */
const Ground = memo(function Ground(props: {
  readonly place: Place;
  readonly projection: Projection;
}): ReactNode {
  const { place, projection } = props;
  return (
    <>
      {place.sections.map(({ id, polygon }) => (
        <path
          key={id}
          d={polygonPath(polygon, projection)}
          fillRule="evenodd"
          className="map-section section-map-water"
        />
      ))}
      {place.vantage?.views.map((view, index) => (
        <path
          key={index}
          d={polygonPath(view, projection)}
          fillRule="evenodd"
          className="map-view"
        />
      ))}
    </>
  );
});
