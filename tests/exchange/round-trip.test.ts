import fc from 'fast-check';
import { expect, it } from 'vitest';

import { defaultProtocol } from '../../server/core/model/default-protocol.js';
import { checkFolder } from '../../server/exchange/check-folder.js';
import { writeFolder } from '../../server/exchange/write-folder.js';
import { anyProtocol, anySnapshot } from '../support/any-count.js';

it('a count that is written as a folder and read again is the same count', async () => {
  await fc.assert(
    fc.asyncProperty(anySnapshot, anyProtocol, async (snapshot, protocol) => {
      const files = writeFolder(snapshot, protocol).map(({ name, text }) => ({
        name,
        content: new TextEncoder().encode(text),
      }));
      const checked = await checkFolder(files);
      expect(checked).toEqual({ ok: true, snapshot, protocol, notes: [] });
    }),
    { numRuns: 200 },
  );
});

it('whatever stands in a folder, checking it gives a count or faults and never throws', async () => {
  const anyField = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc.constantFrom('t1', 'o0', 's0', 'w1', 'Mallard', '3', '-1', '1e999', 'block', '+', '/', '"'),
  );
  const anyRow = fc.array(anyField, { minLength: 7, maxLength: 9 }).map((row) => row.join(','));
  const header = 'tally,observer,section,window,taxon,number,method,party,scope';
  await fc.assert(
    fc.asyncProperty(
      fc.json(),
      fc.json(),
      fc.array(anyRow),
      anySnapshot,
      fc.boolean(),
      async (count, places, rows, snapshot, plausible) => {
        const [good, goodPlaces] = writeFolder(snapshot, defaultProtocol);
        const checked = await checkFolder([
          { name: 'count.json', content: plausible ? (good?.text ?? '') : count },
          { name: 'places.geojson', content: plausible ? (goodPlaces?.text ?? '') : places },
          { name: 'tallies.csv', content: [header, ...rows].join('\n') },
        ]);
        if (checked.ok) expect(checked.snapshot.sections.length).toBeGreaterThan(0);
        else expect(checked.faults.length).toBeGreaterThan(0);
      },
    ),
  );
});
