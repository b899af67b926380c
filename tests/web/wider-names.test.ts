import { describe, expect, test } from 'vitest';
import { parseTaxon } from '../../server/core/taxa/parse-taxon.js';
import { DEFAULT_LOOK_ALIKES } from '../../server/core/taxa/look-alikes.js';
import { COMMON_TAXA } from '../../server/core/taxa/common-taxa.js';
import { widerNames } from '../../web/src/tallies/wider-names.js';

const offered = (species: readonly string[]): readonly string[] =>
  widerNames(species).map(({ common }) => common);

// Which birds observers leave as a pair or group: common practice, no source.
describe('quick ways to say less', () => {
  test('a scaup can be left as the pair, then as the genus', () => {
    expect(offered(['Aythya marila']).slice(0, 2)).toEqual(['Greater/Lesser Scaup', 'Aythya sp.']);
    expect(offered(['Aythya affinis']).slice(0, 2)).toEqual(['Greater/Lesser Scaup', 'Aythya sp.']);
  });

  test('a pair can be left as the genus, never as a narrower name', () => {
    expect(offered(['Aythya affinis', 'Aythya marila'])[0]).toBe('Aythya sp.');
  });

  test('every offer holds the bird, is wider, and is understood by the server’s reader', () => {
    for (const species of new Set(DEFAULT_LOOK_ALIKES.flat())) {
      const offers = widerNames([species]);
      expect(offers.length).toBeGreaterThan(0);
      for (const offer of offers) {
        expect(offer.candidates).toContain(species);
        expect(offer.candidates.length).toBeGreaterThan(1);
        expect(parseTaxon(offer.name)).toEqual({ ok: true, candidates: offer.candidates });
      }
    }
  });

  test('the buttons for common taxa are all known names', () => {
    for (const taxon of COMMON_TAXA) expect(parseTaxon(taxon)).toMatchObject({ ok: true });
  });
});
