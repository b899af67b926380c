import type { Polygon } from '../model/snapshot.js';
import { areaOfFigure, overlapArea } from './figure-overlap.js';
import { LocalPlane, middleOf } from './local-plane.js';

/**
 * Share of the area of some polygons that an outline covers, 0 to 1. The polygons must not overlap
 * one another; what of the outline lies beyond them counts nothing. Areas are taken on an equal-area
 * map about the middle of the polygons. An outline of fewer than three corners covers nothing, one
 * that crosses itself is read by the even–odd rule. Polygons without an area have the share 0.
 */
export function shareCovered(polygons: readonly Polygon[], outline: Polygon): number {
  const plane = new LocalPlane(middleOf(polygons.flat(2)));
  const cover = plane.figureOf(outline);
  let [area, covered] = [0, 0];
  for (const polygon of polygons) {
    const figure = plane.figureOf(polygon);
    area += areaOfFigure(figure);
    covered += overlapArea(figure, cover);
  }
  return area === 0 ? 0 : Math.min(1, Math.max(0, covered / area));
}
