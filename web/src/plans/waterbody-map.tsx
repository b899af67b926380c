import { t } from '@lingui/core/macro';
import { useId, useMemo, type ReactNode } from 'react';
import { useWidth } from '../ui/use-width.js';
import { innerPoint, type Box } from './inner-point.js';
import { LINE_HEIGHT, placeLabels, type Label } from './label-places.js';
import {
  ArrowMark,
  boxesOfArrow,
  boxOfFlock,
  FlockMark,
  type MapArrow,
  type MapFlock,
} from './map-marks.js';
import {
  fitProjection,
  linePath,
  polygonPath,
  type LonLat,
  type Projection,
} from './projection.js';

export interface MapSection {
  readonly id: string;
  readonly name: string;
  readonly polygon: readonly (readonly LonLat[])[];
}

export interface MapVantage {
  readonly id: string;
  readonly name: string;
  readonly position: LonLat;
  readonly views: readonly (readonly (readonly LonLat[])[])[];
}

export interface MapShorePart {
  readonly isArea: boolean;
  readonly lines: readonly (readonly LonLat[])[];
}

/** What an observer drew on the map; the line's style and the words tell one from another. */
export interface MapOutline {
  readonly id: string;
  readonly words: string;
  /** 0 to 3, as `ObserverLetter` has it. */
  readonly lineStyle: number;
  readonly rings: readonly (readonly LonLat[])[];
}

/** How a section is filled; the words beside it say the same. */
export type Fill = 'empty' | 'assigned' | 'partial' | 'one' | 'two';

interface Drawn {
  /** One sentence: what the map shows. */
  readonly label: string;
  readonly sections: readonly MapSection[];
  readonly vantages: readonly MapVantage[];
  /** Drawn under the sections. What lies outside the picture is cut off. */
  readonly shoreline?: readonly MapShorePart[];
  readonly fillOf?: (sectionId: string) => Fill;
  readonly wordsOf?: (sectionId: string) => string;
  readonly outlines?: readonly MapOutline[];
  readonly flocks?: readonly MapFlock[];
  readonly arrows?: readonly MapArrow[];
  /** A pointer's short way; the list beside the map does the same for the keyboard. */
  readonly onArrow?: (id: string) => void;
  /** Positions that fill the picture; by default all sections and vantage points. */
  readonly fit?: readonly LonLat[];
  readonly leastKilometres?: number;
  readonly margin?: number;
  readonly mostHeight?: number;
}

/**
 * The waterbody drawn from its own polygons: sections, vantage points and what is seen from them,
 * and on it flocks and links. North is up; a bar shows the scale.
 */
export function WaterbodyMap(props: Drawn): ReactNode {
  const [box, width] = useWidth(640);
  const id = useId();
  const { sections, vantages, fit, mostHeight = 680, leastKilometres = 0, margin = 16 } = props;
  const projection = useMemo(() => {
    const positions = fit ?? [
      ...sections.flatMap(({ polygon }) => polygon.flat()),
      ...vantages.map(({ position }) => position),
    ];
    return fitProjection(positions, width, mostHeight, { leastKilometres, margin });
  }, [sections, vantages, fit, mostHeight, leastKilometres, margin, width]);
  const { flocks = [], arrows = [], onArrow } = props;
  return (
    <div ref={box} className="map-box">
      <svg
        className="map"
        width={projection.width}
        height={projection.height}
        viewBox={`0 0 ${projection.width} ${projection.height}`}
        role="img"
        aria-label={props.label}
      >
        <Patterns id={id} />
        {props.shoreline?.map(({ isArea, lines }, index) => (
          <path
            key={`shore-${index}`}
            d={isArea ? polygonPath(lines, projection) : linePath(lines, projection)}
            className="map-shore"
          />
        ))}
        {sections.map((section) => (
          <path
            key={section.id}
            d={polygonPath(section.polygon, projection)}
            fillRule="evenodd"
            fill={fillFor(props.fillOf?.(section.id) ?? 'empty', id)}
            className="map-section"
          />
        ))}
        {props.outlines?.map(({ id: key, lineStyle, rings }) => (
          <path
            key={`outline-${key}`}
            d={polygonPath(rings, projection)}
            fillRule="evenodd"
            className="map-outline"
            data-line={lineStyle}
          />
        ))}
        {vantages.flatMap((vantage) =>
          vantage.views.map((view, index) => (
            <path
              key={`${vantage.id}-${index}`}
              d={polygonPath(view, projection)}
              className="map-view"
              fillRule="evenodd"
            />
          )),
        )}
        {vantages.map((vantage) => {
          const [x, y] = projection.project(vantage.position);
          return <path key={vantage.id} d={`M${x} ${y - 6}l6 11h-12Z`} className="map-vantage" />;
        })}
        {flocks
          .filter(({ mark }) => mark === 'other')
          .map((flock) => (
            <FlockMark key={flock.id} flock={flock} projection={projection} />
          ))}
        {arrows.map((arrow) => (
          <ArrowMark
            key={arrow.id}
            arrow={arrow}
            projection={projection}
            onChoose={onArrow && (() => onArrow(arrow.id))}
          />
        ))}
        {flocks
          .filter(({ mark }) => mark !== 'other')
          .map((flock) => (
            <FlockMark key={flock.id} flock={flock} projection={projection} />
          ))}
        <Labels drawn={props} projection={projection} />
        <ScaleBar projection={projection} />
      </svg>
    </div>
  );
}

/** Every text of the map, the more important first, so that none covers another. */
function Labels(props: { readonly drawn: Drawn; readonly projection: Projection }): ReactNode {
  const { drawn, projection } = props;
  const frame = frameOf(projection);
  const { flocks = [], arrows = [] } = drawn;
  const obstacles = [
    ...drawn.vantages.map(({ position }) => {
      const [x, y] = projection.project(position);
      return { left: x - 7, right: x + 7, top: y - 7, bottom: y + 6 };
    }),
    ...flocks.map((flock) => boxOfFlock(flock, projection)),
    ...arrows.filter(({ isChosen }) => isChosen).flatMap((one) => boxesOfArrow(one, projection)),
  ];
  const { width, height } = projection;
  const scale = { left: 0, right: width / 5 + 16, top: height - 30, bottom: height };
  const placed = placeLabels(labelsOf(drawn, projection, frame), frame, obstacles, [scale]);
  return placed.map(({ key, lines, x, y }) => {
    const kind = key.slice(0, key.indexOf(' '));
    return (
      <text key={key} textAnchor="middle" className={`map-text map-text-${kind}`}>
        {lines.map((line, index) => (
          <tspan
            key={line}
            x={x}
            y={y + index * LINE_HEIGHT}
            className={index === 0 && kind === 'section' ? 'map-text-name' : undefined}
          >
            {line}
          </tspan>
        ))}
      </text>
    );
  });
}

function labelsOf(drawn: Drawn, projection: Projection, frame: Box): Label[] {
  const { flocks = [], arrows = [], outlines = [] } = drawn;
  const isInFrame = ([x, y]: readonly [number, number]): boolean =>
    x >= frame.left && x <= frame.right && y >= frame.top && y <= frame.bottom;
  const flockLabels = flocks
    .filter(({ words }) => words.length > 0)
    .map((flock) => ({
      key: `${flock.mark === 'other' ? 'flock' : 'sighting'} ${flock.id}`,
      lines: flock.words,
      at: projection.project(flock.at),
      clear: 4 + (boxOfFlock(flock, projection).right - projection.project(flock.at)[0]),
      isOptional: flock.mark === 'other',
    }));
  const arrowLabels = arrows.map((arrow) => {
    const [x1, y1] = projection.project(arrow.from);
    const [x2, y2] = projection.project(arrow.to);
    return {
      key: `link ${arrow.id}`,
      lines: [arrow.words],
      at: [(x1 + x2) / 2, (y1 + y2) / 2] as const,
      clear: 8,
      isOptional: !arrow.isChosen,
    };
  });
  const outlineLabels = outlines.flatMap(({ id, words, rings }) => {
    const at = innerPoint(
      rings.map((ring) => ring.map(projection.project)),
      frame,
    );
    return at === null ? [] : [{ key: `outline ${id}`, lines: [words], at, clear: 0 }];
  });
  const sectionLabels = drawn.sections.flatMap((section) => {
    const rings = section.polygon.map((ring) => ring.map(projection.project));
    const at = innerPoint(rings, frame);
    const words = drawn.wordsOf?.(section.id);
    if (at === null) return [];
    const lines = words === undefined ? [section.name] : [section.name, words];
    return [{ key: `section ${section.id}`, lines, at, clear: 0 }];
  });
  const vantageLabels = drawn.vantages.map(({ id, name, position }) => ({
    key: `vantage ${id}`,
    lines: [name],
    at: projection.project(position),
    clear: 9,
    // On the outer side, clear of the water.
    isLeftFirst: projection.project(position)[0] < projection.width / 2,
  }));
  return [
    ...flockLabels.filter(({ isOptional }) => !isOptional),
    ...arrowLabels.filter(({ isOptional }) => !isOptional),
    ...outlineLabels,
    ...vantageLabels,
    ...sectionLabels,
    ...arrowLabels.filter(({ isOptional }) => isOptional),
    ...flockLabels.filter(({ isOptional }) => isOptional),
  ].filter(({ at }) => isInFrame(at));
}

function frameOf({ width, height }: Projection): Box {
  return { left: 4, top: 4, right: width - 4, bottom: height - 4 };
}

/** A round length that takes about a fifth of the picture. */
function ScaleBar(props: { readonly projection: Projection }): ReactNode {
  const { width, height, pixelsPerKilometre } = props.projection;
  const lengths = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50];
  const kilometres = lengths.findLast((length) => length * pixelsPerKilometre <= width / 5);
  if (kilometres === undefined) return null;
  const length = kilometres * pixelsPerKilometre;
  const metres = kilometres * 1000;
  const words = kilometres < 1 ? t`${metres} m` : t`${kilometres} km`;
  return (
    <g>
      <path d={`M8 ${height - 12}v4h${length}v-4`} className="map-scale" />
      <text x={8 + length / 2} y={height - 13} textAnchor="middle" className="map-text">
        {words}
      </text>
    </g>
  );
}

function fillFor(fill: Fill, id: string): string {
  if (fill === 'empty') return 'var(--sheet)';
  return fill === 'two' ? 'var(--water)' : `url(#${id}-${fill})`;
}

/** Hatches, so that the fill can be told apart without colour. */
function Patterns(props: { readonly id: string }): ReactNode {
  const { id } = props;
  return (
    <defs>
      <pattern id={`${id}-assigned`} width="8" height="8" patternUnits="userSpaceOnUse">
        <rect width="8" height="8" fill="var(--sheet)" />
        <circle cx="4" cy="4" r="0.9" fill="var(--line)" />
      </pattern>
      <pattern
        id={`${id}-partial`}
        width="8"
        height="8"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <rect width="8" height="8" fill="var(--sheet)" />
        <line
          x1="0"
          x2="0"
          y1="0"
          y2="8"
          stroke="var(--data-only)"
          strokeWidth="2.5"
          strokeDasharray="4 4"
        />
      </pattern>
      <pattern
        id={`${id}-one`}
        width="8"
        height="8"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <rect width="8" height="8" fill="var(--sheet)" />
        <line x1="0" x2="0" y1="0" y2="8" stroke="var(--data-compatible)" strokeWidth="2.5" />
      </pattern>
    </defs>
  );
}
