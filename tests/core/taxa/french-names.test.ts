import { describe, expect, it } from 'vitest';
import { FRENCH_NAMES } from '../../../server/core/taxa/french-names.js';
import { LEAVES } from '../../../server/core/taxa/leaf.js';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { tradeSets } from '../../../server/core/taxa/named-sets.js';
import { searchTaxa } from '../../../server/core/taxa/search-taxa.js';
import { commonName } from '../../../server/core/taxa/taxon-name.js';

const speciesOf = (text: string) => {
  const parsed = parseTaxon(text);
  return parsed.ok ? parsed.candidates : null;
};

describe('French names', () => {
  it('every species has one, and no two share it', () => {
    const species = LEAVES.filter(({ kind }) => kind === 'species');
    expect(species.filter(({ french }) => french === null)).toEqual([]);
    expect(new Set(species.map(({ french }) => french)).size).toBe(species.length);
    expect(Object.keys(FRENCH_NAMES).length).toBe(species.length);
  });

  it('are read as they are written, with or without accents', () => {
    for (const [species, french] of Object.entries(FRENCH_NAMES)) {
      expect(speciesOf(french)).toEqual([species]);
    }
    // Names from memory.
    expect(speciesOf('Fuligule a collier')).toEqual(['Aythya collaris']);
    expect(speciesOf("garrot à oeil d'or")).toEqual(['Bucephala clangula']);
    expect(speciesOf('Petit fuligule/Fuligule milouinan')).toEqual([
      'Aythya affinis',
      'Aythya marila',
    ]);
  });

  it('are found by a few letters of any word', () => {
    expect(searchTaxa('harel')[0]?.name).toBe('Clangula hyemalis');
    expect(searchTaxa('fulig col')[0]?.name).toBe('Aythya collaris');
    expect(searchTaxa('grebe esc')[0]?.name).toBe('Podiceps auritus');
    expect(searchTaxa('macreuse').map(({ name }) => name)).toContain('Melanitta perspicillata');
  });

  it('of pairs say once what they share, groups have those of the trade, and all are read back', () => {
    // Names from memory.
    for (const [name, french] of [
      ['Aythya affinis/marila', 'Fuligule milouinan/Petit Fuligule'],
      ['Aythya collaris/marila', 'Fuligule à collier/milouinan'],
      ['scoter sp.', 'macreuse sp.'],
      ['diving duck sp.', 'canard plongeur sp.'],
      ['Aythya sp.', 'Aythya sp.'],
      ['Anas platyrhynchos x rubripes', 'Hybride Canard colvert x noir'],
      ['Anser anser (domestic type)', 'Oie cendrée (type domestique)'],
    ] as const) {
      expect(commonName(speciesOf(name) ?? [], 'fr')).toBe(french);
    }
    for (const { french, candidates } of tradeSets())
      expect(speciesOf(french ?? '')).toEqual(candidates);
  });
});
