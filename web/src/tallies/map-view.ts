import type { Point, Projection } from '../plans/projection.js';

/** Which part of a map is in its frame: enlarged `scale` times, its corner in pixels of the whole map. */
export interface MapView {
  readonly scale: number;
  readonly left: number;
  readonly top: number;
}

export const wholeMap: MapView = { scale: 1, left: 0, top: 0 };

/** A lake of ten kilometres is a few metres a pixel then, which is as near as anybody can tell. */
const MOST_ENLARGED = 16;

/** The projection of what is in the frame, in pixels of the frame. */
export function viewedThrough(whole: Projection, { scale, left, top }: MapView): Projection {
  return {
    ...whole,
    project: (position) => {
      const [x, y] = whole.project(position);
      return [(x - left) * scale, (y - top) * scale];
    },
    unproject: ([x, y]) => whole.unproject([x / scale + left, y / scale + top]),
    pixelsPerKilometre: whole.pixelsPerKilometre * scale,
  };
}

/** Enlarged by a factor, or made smaller; a point of the frame stays where it is. */
export function enlarged(
  view: MapView,
  factor: number,
  [x, y]: Point,
  frame: Pick<Projection, 'width' | 'height'>,
): MapView {
  const scale = Math.min(MOST_ENLARGED, Math.max(1, view.scale * factor));
  return within(
    {
      scale,
      left: view.left + x / view.scale - x / scale,
      top: view.top + y / view.scale - y / scale,
    },
    frame,
  );
}

/** The map pushed by so many pixels of the frame. */
export function pushed(
  view: MapView,
  [x, y]: Point,
  frame: Pick<Projection, 'width' | 'height'>,
): MapView {
  return within(
    { ...view, left: view.left - x / view.scale, top: view.top - y / view.scale },
    frame,
  );
}

/** Pushed as little as need be for a point of the frame to lie inside it, a finger's width from its edge. */
export function pushedToShow(
  view: MapView,
  [x, y]: Point,
  frame: Pick<Projection, 'width' | 'height'>,
): MapView {
  const edge = 22;
  const lacking = (at: number, most: number): number =>
    at < edge ? edge - at : at > most - edge ? most - edge - at : 0;
  return pushed(view, [lacking(x, frame.width), lacking(y, frame.height)], frame);
}

/** Nothing beyond the edge of the whole map comes into the frame. */
function within(
  { scale, left, top }: MapView,
  { width, height }: Pick<Projection, 'width' | 'height'>,
): MapView {
  const inside = (at: number, size: number): number =>
    Math.min(size - size / scale, Math.max(0, at));
  return { scale, left: inside(left, width), top: inside(top, height) };
}
