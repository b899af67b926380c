import { describe, expect, it } from 'vitest';
import { faultSentence } from '../../server/core/model/fault.js';
import { reconcile } from '../../server/core/reconcile.js';
import { checkFolder } from '../../server/exchange/check-folder.js';
import { writeFolder } from '../../server/exchange/write-folder.js';
import { filesOf, smallFolder, square } from '../support/small-folder.js';

const shore = (type: string, coordinates: unknown) => ({
  type: 'Feature',
  properties: { kind: 'shoreline' },
  geometry: { type, coordinates },
});

async function check(...features: object[]) {
  const folder = smallFolder();
  folder.places.features.push(...features);
  return checkFolder(filesOf(folder));
}

async function read(...features: object[]) {
  const checked = await check(...features);
  if (!checked.ok) throw new Error(checked.faults.map(faultSentence).join('\n'));
  return checked;
}

const line = [
  [-79.1, 44],
  [-79, 44.1],
  [-79.05, 44.2],
];
const lake = [square(-79, 44), square(-78.995, 44.005).map(([x = 0, y = 0]) => [x, y])];

describe('a shoreline', () => {
  it.each([
    ['Polygon', lake, [{ form: 'area', lines: lake }]],
    [
      'MultiPolygon',
      [[square(-79, 44)], [square(-78, 44)]],
      [
        { form: 'area', lines: [square(-78, 44)] },
        { form: 'area', lines: [square(-79, 44)] },
      ],
    ],
    ['LineString', line, [{ form: 'line', lines: [line] }]],
    [
      'MultiLineString',
      [line, line.slice(0, 2)],
      [
        { form: 'line', lines: [line.slice(0, 2)] },
        { form: 'line', lines: [line] },
      ],
    ],
  ])('as a %s is read, written and read again', async (type, coordinates, parts) => {
    const { snapshot, protocol } = await read(shore(type, coordinates));
    const own = snapshot.shoreline ?? [];
    expect(own).toHaveLength(parts.length);
    expect(own).toEqual(expect.arrayContaining(parts));
    const files = writeFolder(snapshot, protocol);
    const again = await checkFolder(files.map(({ name, text }) => ({ name, content: text })));
    expect(again).toMatchObject({ ok: true, snapshot });
  });

  it('changes no number, and a count without one has no key for it', async () => {
    const [bare, drawn] = [await read(), await read(shore('LineString', line))];
    expect(bare.snapshot).not.toHaveProperty('shoreline');
    expect(JSON.stringify(reconcile(drawn.snapshot, [], drawn.protocol))).toBe(
      JSON.stringify(reconcile(bare.snapshot, [], bare.protocol)),
    );
  });

  it.each([
    ['Point', [-79, 44], 'Expected Polygon, MultiPolygon, LineString or MultiLineString'],
    ['LineString', [[-79, 44]], 'the line has 1 positions'],
    [
      'LineString',
      [
        [-79, 44],
        [-79, 95],
      ],
      'coordinates[1]',
    ],
    ['MultiLineString', [line, 'shore'], 'coordinates[1]'],
    ['MultiPolygon', [[square(-79, 44)], [square(-79, 44).slice(1)]], 'coordinates[1][0]'],
    ['MultiPolygon', [7], 'this is not a polygon'],
    ['Polygon', [], 'the shoreline is empty'],
  ])('that is a %s %j is refused', async (type, coordinates, words) => {
    const checked = await check(shore(type, coordinates));
    const sentences = checked.ok ? '' : checked.faults.map(faultSentence).join('\n');
    expect(sentences).toContain('places.geojson');
    expect(sentences).toContain(words);
  });
});
