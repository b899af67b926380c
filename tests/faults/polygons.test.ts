import { describe, expect, it } from 'vitest';
import { faultSentence } from '../../server/core/model/fault.js';
import type { Snapshot } from '../../server/core/model/snapshot.js';
import { Waterbody } from '../../server/core/link/whereabouts.js';
import { checkFolder } from '../../server/exchange/check-folder.js';
import { filesOf, smallFolder, square } from '../support/small-folder.js';

const feature = (properties: object, type: string, coordinates: unknown) => ({
  type: 'Feature',
  properties,
  geometry: { type, coordinates },
});

async function check(...features: object[]) {
  const folder = smallFolder();
  folder.places.features.push(...features);
  return checkFolder(filesOf(folder));
}

/** The faults of the small folder with some more places, a sentence a line. */
async function faultsWith(...features: object[]): Promise<string> {
  const checked = await check(...features);
  return checked.ok ? '' : checked.faults.map(faultSentence).join('\n');
}

const section = (rings: unknown) => feature({ kind: 'section', id: 's3' }, 'Polygon', rings);

async function snapshotWith(...features: object[]): Promise<Snapshot> {
  const checked = await check(...features);
  if (!checked.ok) throw new Error(checked.faults.map(faultSentence).join('\n'));
  return checked.snapshot;
}

describe('a polygon that is no outline is refused with the ring, the place, and what to do', () => {
  const bowTie = [
    [-79, 45],
    [-78, 46],
    [-78, 45],
    [-79, 46],
    [-79, 45],
  ];
  it.each([
    [
      'the outline crosses itself',
      [bowTie],
      'the outline crosses or touches itself at -78.5 45.5 (lon lat)',
    ],
    [
      'a hole crosses itself',
      [square(-79, 45), bowTie],
      'hole 1 crosses or touches itself at -78.5 45.5 (lon lat)',
    ],
    [
      'two corners in one place',
      [
        [
          [0, 0],
          [2, 0],
          [1, 1],
          [2, 2],
          [0, 2],
          [1, 1],
          [0, 0],
        ],
      ],
      'touches itself at 1 1',
    ],
    [
      'a spike',
      [
        [
          [0, 0],
          [2, 0],
          [2, 2],
          [2, 5],
          [2, 2],
          [0, 2],
          [0, 0],
        ],
      ],
      'touches itself at 2',
    ],
    ['not closed', [square(-79, 45).slice(0, 4)], 'the outline is not closed'],
    [
      'three positions',
      [
        [
          [0, 0],
          [1, 1],
          [0, 0],
        ],
      ],
      'the outline has 3 positions',
    ],
    [
      'all on one line',
      [
        [
          [0, 0],
          [1, 1],
          [3, 3],
          [0, 0],
        ],
      ],
      'the outline encloses nothing',
    ],
    [
      'all in one place',
      [
        [
          [1, 1],
          [1, 1],
          [1, 1],
          [1, 1],
        ],
      ],
      'the outline encloses nothing',
    ],
    [
      'at a pole',
      [
        [
          [0, 89.5],
          [1, 89.5],
          [1, 89.9],
          [0, 89.5],
        ],
      ],
      'from -89 to 89 (no poles)',
    ],
  ])('%s', async (_, rings, words) => {
    const faults = await faultsWith(section(rings));
    const ring = words.startsWith('hole')
      ? 'coordinates[1]'
      : 'features[4].geometry.coordinates[0]';
    expect(faults).toContain(ring);
    expect(faults).toContain(words);
    expect(faults).toContain('Expected');
  });

  it('a crossing on the antimeridian too, and several polygons in one section', async () => {
    const across = [
      [
        [179, 1],
        [-179, 2],
        [-179, 1],
        [179, 2],
        [179, 1],
      ],
    ];
    expect(await faultsWith(section(across))).toContain('touches itself at 180 1.5');
    const several = feature({ kind: 'section', id: 's3' }, 'MultiPolygon', [[square(0, 0)]]);
    expect(await faultsWith(several)).toContain('longitudes that run on past 180');
  });
});

describe('places that touch', () => {
  const view = (vantage: string, west: number, south: number) =>
    feature({ kind: 'view', vantage }, 'Polygon', [square(west, south)]);
  const stand = feature({ kind: 'vantage', id: 'v2' }, 'Point', [-79, 44]);
  // The first view is that of the small folder, 0.02 degrees from 79.02 W 44 N.
  it.each([
    ['along a side', -79, 44, 0],
    ['in a corner', -79, 44.02, 0],
    ['not at all', -78.9, 44, 0],
    ['over half of it', -79.01, 44, 0.5],
    ['wholly', -79.02, 44, 1],
  ])('views that meet %s have that much in common', async (_, west, south, share) => {
    const snapshot = await snapshotWith(stand, view('v2', west, south));
    const water = new Waterbody(snapshot);
    const whole = water.overlapOf('v1', 'v1') ?? NaN;
    expect(whole).toBeGreaterThan(3);
    // A long side along a parallel and its half are not quite the same line on the map.
    const within = share === 0 ? 1e-9 : 1e-5 * whole;
    expect(Math.abs((water.overlapOf('v1', 'v2') ?? NaN) - share * whole)).toBeLessThan(within);
  });
});
