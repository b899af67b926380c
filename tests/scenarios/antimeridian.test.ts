import { describe, expect, it } from 'vitest';
import { Waterbody } from '../../server/core/link/whereabouts.js';
import type { Snapshot } from '../../server/core/model/snapshot.js';
import { reconcile } from '../../server/core/reconcile.js';
import { checkFolder } from '../../server/exchange/check-folder.js';
import { writeFolder } from '../../server/exchange/write-folder.js';
import { readLakeEmberlow } from './read-lake-emberlow.js';

/** Every longitude of the folder changed, as if the lake lay elsewhere. */
function moved(snapshot: Snapshot, to: (lon: number) => number): Snapshot {
  const at = ([lon, lat]: readonly [number, number]) => [to(lon), lat] as const;
  const rings = (polygon: Snapshot['sections'][number]['polygon']) =>
    polygon.map((ring) => ring.map(at));
  return {
    ...snapshot,
    sections: snapshot.sections.map((one) => ({ ...one, polygon: rings(one.polygon) })),
    views: snapshot.views.map((one) => ({ ...one, polygon: rings(one.polygon) })),
    vantages: snapshot.vantages.map((one) => ({ ...one, position: at(one.position) })),
    tallies: snapshot.tallies.map((tally) => ({
      ...tally,
      lines: tally.lines.map((line) => ({
        ...line,
        position: line.position && at([wrapped(line.position[0]), line.position[1]]),
      })),
    })),
  };
}

const wrapped = (lon: number) => (lon > 180 ? lon - 360 : lon < -180 ? lon + 360 : lon);

/** Written as a count folder and read back, as a user's would be. */
async function asFolder({ snapshot, protocol }: Awaited<ReturnType<typeof readLakeEmberlow>>) {
  const files = writeFolder(snapshot, protocol).map(({ name, text }) => ({ name, content: text }));
  const checked = await checkFolder(files);
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults));
  return checked;
}

describe('Lake Emberlow if it lay on the antimeridian', async () => {
  const home = await readLakeEmberlow();
  const lons = home.snapshot.sections.flatMap(({ polygon }) => polygon.flat().map(([lon]) => lon));
  const middle = (Math.min(...lons) + Math.max(...lons)) / 2;
  const there = reconcile(home.snapshot, [], home.protocol);

  it.each([
    ['with longitudes that run on past 180', (lon: number) => lon - middle + 180],
    ['with longitudes that run on past -180', (lon: number) => lon - middle - 180],
    ['with longitudes from -180 to 180', (lon: number) => wrapped(lon - middle + 180)],
  ])('has the same areas, overlaps, links and numbers, written %s', async (_, to) => {
    const shifted = moved(home.snapshot, to);
    // Tally lines keep to -180 to 180.
    const tallies = shifted.tallies.map((tally) => ({
      ...tally,
      lines: tally.lines.map((line) => ({
        ...line,
        position: line.position && ([wrapped(line.position[0]), line.position[1]] as const),
      })),
    }));
    const elsewhere = await asFolder({ ...home, snapshot: { ...shifted, tallies } });
    const xs = elsewhere.snapshot.sections.flatMap(({ polygon }) => polygon.flat());
    expect(xs.some(([lon]) => wrapped(lon) > 0) && xs.some(([lon]) => wrapped(lon) < 0)).toBe(true);

    const [water, before] = [new Waterbody(elsewhere.snapshot), new Waterbody(home.snapshot)];
    for (const { id } of home.snapshot.sections) {
      expect(water.areaOf([id])).toBeCloseTo(before.areaOf([id]), 6);
    }
    const stands = home.snapshot.vantages.map(({ id }) => id);
    for (const one of stands) {
      for (const other of stands) {
        const overlap = before.overlapOf(one, other);
        if (overlap === null) expect(water.overlapOf(one, other)).toBeNull();
        else expect(water.overlapOf(one, other)).toBeCloseTo(overlap, 6);
      }
    }
    const result = reconcile(elsewhere.snapshot, [], elsewhere.protocol);
    expect(result.compiled).toEqual(there.compiled);
    expect(there.links.length).toBeGreaterThan(0);
    expect(result.links.map(({ lines, kind, birds }) => ({ lines, kind, birds }))).toEqual(
      there.links.map(({ lines, kind, birds }) => ({ lines, kind, birds })),
    );
    result.links.forEach(({ probability }, index) => {
      expect(probability).toBeCloseTo(there.links[index]?.probability ?? NaN, 4);
    });
  });
});
