import { useEffect, useRef, useState, type RefObject } from 'react';
import type { Point, Projection } from '../plans/projection.js';
import { enlarged, pushed, wholeMap, type MapView } from './map-view.js';

/** A finger that moved less than this has tapped. */
const TAP = 6;

/**
 * What part of a map is shown, changed by two fingers, or by one finger or the mouse where the map is
 * enlarged; otherwise a finger scrolls the page.
 *
 * @returns the view, how to change it, and whether the last touch or press pushed the map: then it was
 *   no tap
 */
export function useMapView(
  svg: RefObject<SVGSVGElement | null>,
  frame: Pick<Projection, 'width' | 'height'>,
): {
  readonly view: MapView;
  readonly change: (next: (view: MapView) => MapView) => void;
  readonly wasPushed: () => boolean;
} {
  const [view, change] = useState(wholeMap);
  const isEnlarged = view.scale > 1;
  const wasPushed = useRef(false);
  const { width, height } = frame;

  useEffect(() => {
    const element = svg.current;
    if (element === null) return undefined;
    let last: readonly Point[] = [];
    let travelled = 0;

    const begin = (points: readonly Point[]): void => {
      if (last.length === 0) {
        travelled = 0;
        wasPushed.current = false;
      }
      last = points;
    };

    const move = (points: readonly Point[]): void => {
      const [from, to] = [middleOf(last), middleOf(points)];
      const by: Point = [to[0] - from[0], to[1] - from[1]];
      const factor =
        points.length < 2 || last.length < 2 ? 1 : spreadOf(points) / Math.max(1, spreadOf(last));
      travelled += Math.hypot(...by) + (points.length > 1 ? TAP : 0);
      last = points;
      if (travelled < TAP) return;
      wasPushed.current = true;
      change((now) => enlarged(pushed(now, by, { width, height }), factor, to, { width, height }));
    };

    const pointsOf = (touches: TouchList): readonly Point[] => {
      const { left, top } = element.getBoundingClientRect();
      return [...touches].map(({ clientX, clientY }) => [clientX - left, clientY - top]);
    };
    const onTouchStart = (event: TouchEvent): void => {
      if (event.targetTouches.length > 1) event.preventDefault();
      begin(pointsOf(event.targetTouches));
    };
    const onTouchMove = (event: TouchEvent): void => {
      const { targetTouches } = event;
      if (targetTouches.length < 2 && !isEnlarged) return;
      event.preventDefault();
      move(pointsOf(targetTouches));
    };
    const onTouchEnd = (event: TouchEvent): void => {
      last = pointsOf(event.targetTouches);
    };
    const onMouseDown = (event: MouseEvent): void => {
      last = [];
      begin([[event.clientX, event.clientY]]);
    };
    const onMouseMove = (event: MouseEvent): void => {
      if (event.buttons !== 1 || !isEnlarged || last.length === 0) return;
      move([[event.clientX, event.clientY]]);
    };
    const onMouseUp = (): void => {
      last = [];
    };
    // The browser may scroll before React hears of a touch, so these are its own listeners.
    const heard = new AbortController();
    const { signal } = heard;
    element.addEventListener('touchstart', onTouchStart, { passive: false, signal });
    element.addEventListener('touchmove', onTouchMove, { passive: false, signal });
    element.addEventListener('touchend', onTouchEnd, { signal });
    element.addEventListener('touchcancel', onTouchEnd, { signal });
    element.addEventListener('mousedown', onMouseDown, { signal });
    element.addEventListener('mousemove', onMouseMove, { signal });
    window.addEventListener('mouseup', onMouseUp, { signal });
    return () => heard.abort();
  }, [svg, isEnlarged, width, height]);

  return { view, change, wasPushed: () => wasPushed.current };
}

function middleOf(points: readonly Point[]): Point {
  const count = Math.max(1, points.length);
  return [
    points.reduce((sum, [x]) => sum + x, 0) / count,
    points.reduce((sum, [, y]) => sum + y, 0) / count,
  ];
}

/** How far two fingers are apart, in pixels. */
function spreadOf([one = [0, 0], other = one]: readonly Point[]): number {
  return Math.hypot(other[0] - one[0], other[1] - one[1]);
}
