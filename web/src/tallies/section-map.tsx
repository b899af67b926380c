import { memo, useMemo, type MouseEvent, type ReactNode } from 'react';
import type { Position } from '../../../server/core/model/snapshot.js';
import { fitProjection, linePath, polygonPath, type Projection } from '../plans/projection.js';
import { useWidth } from '../ui/use-width.js';
import type { Place } from './place.js';

/** As much of a phone's screen as leaves room for what is said about the map. */
const MOST_HEIGHT = 340;

/**
 * The sections of an assignment, north up, to tap on. Whoever cannot point has fields beside it that
 * say the same.
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
  const projection = useMemo(() => {
    const positions = [
      ...place.sections.flatMap(({ polygon }) => polygon.flat()),
      ...(place.vantage === null ? [] : [place.vantage.position]),
    ];
    return fitProjection(positions, width, MOST_HEIGHT, { margin: 22 });
  }, [place, width]);

  function tap(event: MouseEvent<SVGSVGElement>): void {
    const { left, top } = event.currentTarget.getBoundingClientRect();
    onTap(projection.unproject([event.clientX - left, event.clientY - top]));
  }

  const at = mark === null ? null : projection.project(mark);
  const vantage = place.vantage === null ? null : projection.project(place.vantage.position);
  return (
    <div ref={box} className="map-box section-map">
      <svg
        className="map"
        width={projection.width}
        height={projection.height}
        viewBox={`0 0 ${projection.width} ${projection.height}`}
        role="img"
        aria-label={props.label}
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
              you
            </text>
          </>
        )}
        {at === null ? null : (
          <path
            d={`M${at[0] - 12} ${at[1]}h24M${at[0]} ${at[1] - 12}v24`}
            className="section-map-mark"
          />
        )}
        <text x={projection.width - 14} y={18} textAnchor="middle" className="map-text">
          N ↑
        </text>
      </svg>
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
