import type { Point } from '../core/math/local-plane.js';
import type { SectionMap } from './section-map.js';
import { BOLD, HAIRLINE, SheetPages } from './sheet-pages.js';

/** Room below the drawing for the scale bar and the vantage point's name. */
const LEGEND = 30;
const PADDING = 8;
const SECTION_LINE = 1.2;

/** The map of an assignment in a square: outlines, where to stand, a scale bar; north is up. */
export function drawSectionMap(
  pages: SheetPages,
  map: SectionMap,
  left: number,
  top: number,
  size: number,
): void {
  const [width, height] = [size - 2 * PADDING, size - LEGEND - 2 * PADDING];
  const span = [map.to[0] - map.from[0], map.to[1] - map.from[1]] as const;
  const pointsPerKm = Math.min(width / Math.max(span[0], 1e-6), height / Math.max(span[1], 1e-6));
  const west = left + PADDING + (width - span[0] * pointsPerKm) / 2;
  const north = top + PADDING + (height - span[1] * pointsPerKm) / 2;
  const at = ([x, y]: Point): readonly [number, number] => [
    west + (x - map.from[0]) * pointsPerKm,
    north + (map.to[1] - y) * pointsPerKm,
  ];
  pages.frame(left, top, size, size, HAIRLINE);
  for (const { figure } of map.sections) {
    for (const ring of figure) pages.outline(ring.slice(0, -1).map(at), SECTION_LINE);
  }
  const legendTop = top + size - LEGEND;
  if (map.vantage !== null) {
    const [x, y] = at(map.vantage.point);
    pages.triangle(x, y, 3.5);
    pages.triangle(left + PADDING + 4, legendTop + 6, 3.5);
    const labelWidth = size - 2 * PADDING - 14;
    pages.text(map.vantage.name, left + PADDING + 12, legendTop + 2, {
      size: 9,
      width: labelWidth,
    });
  }
  const barTop = legendTop + 22;
  const bar = map.scaleBar * pointsPerKm;
  pages.line(left + PADDING, barTop, left + PADDING + bar, barTop, SECTION_LINE);
  pages.line(left + PADDING, barTop - 3, left + PADDING, barTop + 3, HAIRLINE);
  pages.line(left + PADDING + bar, barTop - 3, left + PADDING + bar, barTop + 3, HAIRLINE);
  pages.text(lengthWords(map.scaleBar), left + PADDING + bar + 4, barTop - 5, { size: 9 });
  const arrow = left + size - PADDING - 5;
  pages.text('N', arrow - 3, legendTop + 16, { size: 9, font: BOLD });
  pages.triangle(arrow, legendTop + 11, 3);
}

/** `500 m`, `2 km`. */
function lengthWords(kilometres: number): string {
  return kilometres < 1 ? `${Math.round(kilometres * 1000)} m` : `${kilometres} km`;
}
