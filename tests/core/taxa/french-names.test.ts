import { describe, expect, it } from 'vitest';
import { FRENCH_NAMES } from '../../../server/core/taxa/french-names.js';
import { LEAVES } from '../../../server/core/taxa/leaf.js';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { searchTaxa } from '../../../server/core/taxa/search-taxa.js';

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
});
