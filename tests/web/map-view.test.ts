import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitProjection } from '../../web/src/plans/projection.js';
import {
  enlarged,
  pushed,
  pushedToShow,
  viewedThrough,
  wholeMap,
  type MapView,
} from '../../web/src/tallies/map-view.js';

const frame = fitProjection(
  [
    [-79.6, 44.2],
    [-79.4, 44.35],
  ],
  360,
  340,
);
const anyPoint = fc.tuple(
  fc.double({ min: 0, max: frame.width, noNaN: true }),
  fc.double({ min: 0, max: frame.height, noNaN: true }),
);
/** Any number of times enlarged, made smaller and pushed. */
const anyView = fc
  .array(fc.tuple(fc.double({ min: 0.3, max: 4, noNaN: true }), anyPoint, anyPoint), {
    maxLength: 6,
  })
  .map((steps) =>
    steps.reduce<MapView>(
      (view, [factor, at, by]) => pushed(enlarged(view, factor, at, frame), by, frame),
      wholeMap,
    ),
  );

test('nothing beyond the edge of the map comes into its frame, and a point is where it is', () => {
  fc.assert(
    fc.property(anyView, anyPoint, (view, point) => {
      expect(view.scale).toBeGreaterThanOrEqual(1);
      expect(view.left).toBeGreaterThanOrEqual(0);
      expect(view.top).toBeGreaterThanOrEqual(0);
      expect(view.left + frame.width / view.scale).toBeLessThanOrEqual(frame.width + 1e-9);
      expect(view.top + frame.height / view.scale).toBeLessThanOrEqual(frame.height + 1e-9);
      const seen = viewedThrough(frame, view);
      const [x, y] = seen.project(seen.unproject(point));
      expect(x).toBeCloseTo(point[0], 6);
      expect(y).toBeCloseTo(point[1], 6);
    }),
  );
});

test('enlarging keeps what is under the fingers in place', () => {
  const view = enlarged(wholeMap, 3, [200, 120], frame);
  const under = frame.unproject([200, 120]);
  const [x, y] = viewedThrough(frame, view).project(under);
  expect(x).toBeCloseTo(200, 6);
  expect(y).toBeCloseTo(120, 6);
});

test('a cross-hair that leaves the frame takes the map along', () => {
  const view = enlarged(wholeMap, 4, [180, 150], frame);
  const beyond = viewedThrough(frame, view).unproject([frame.width + 30, 100]);
  const [x, y] = viewedThrough(frame, pushedToShow(view, [frame.width + 30, 100], frame)).project(
    beyond,
  );
  expect(x).toBeCloseTo(frame.width - 22, 6);
  expect(y).toBeCloseTo(100, 6);
});
