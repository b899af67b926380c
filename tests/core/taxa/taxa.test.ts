import fc from 'fast-check';
import { distance } from 'fastest-levenshtein';
import { describe, expect, it } from 'vitest';

import { editDistance, nearestOf } from '../../../server/core/model/nearest.js';
import { inEnglish } from '../../../server/core/model/saying.js';
import { hybridOf, leafOf, LEAVES } from '../../../server/core/taxa/leaf.js';
import { DEFAULT_LOOK_ALIKES } from '../../../server/core/taxa/look-alikes.js';
import { tradeSets } from '../../../server/core/taxa/named-sets.js';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { inScope } from '../../../server/core/taxa/scope.js';
import { searchTaxa } from '../../../server/core/taxa/search-taxa.js';
import { englishName, taxonName } from '../../../server/core/taxa/taxon-name.js';

function candidatesOf(text: string): readonly string[] {
  const parsed = parseTaxon(text);
  if (!parsed.ok) throw new Error(`${text}: ${inEnglish(parsed.problem)}`);
  return parsed.candidates;
}

const SCAUP = ['Aythya affinis', 'Aythya marila'];
const POCHARDS = [
  'Aythya affinis',
  'Aythya americana',
  'Aythya collaris',
  'Aythya marila',
  'Aythya valisineria',
];

describe('the code list (IBP–AOS four-letter codes, 2025)', () => {
  // Rows as the published list prints them, those where its conflict rule applies among them.
  it.each([
    ['CANG', 'Canada Goose', 'Branta canadensis'],
    ['CACG', 'Cackling Goose', 'Branta hutchinsii'],
    ['BARG', 'Barnacle Goose', 'Branta leucopsis'],
    ['BRAN', 'Brant', 'Branta bernicla'],
    ['TRUS', 'Trumpeter Swan', 'Cygnus buccinator'],
    ['NSHO', 'Northern Shoveler', 'Spatula clypeata'],
    ['GRSC', 'Greater Scaup', 'Aythya marila'],
    ['LESC', 'Lesser Scaup', 'Aythya affinis'],
    ['COMP', 'Common Pochard', 'Aythya ferina'],
    ['COME', 'Common Merganser', 'Mergus merganser'],
    ['WWSC', 'White-winged Scoter', 'Melanitta deglandi'],
    ['DCCO', 'Double-crested Cormorant', 'Nannopterum auritum'],
    ['BRAC', "Brandt's Cormorant", 'Urile penicillatus'],
    ['COLO', 'Common Loon', 'Gavia immer'],
    ['AMCO', 'American Coot', 'Fulica americana'],
  ])('%s is %s, %s', (code, english, scientific) => {
    expect(candidatesOf(code)).toEqual([scientific]);
    expect(candidatesOf(english)).toEqual([scientific]);
    expect(candidatesOf(scientific)).toEqual([scientific]);
    expect(englishName([scientific])).toBe(english);
  });

  it.each([
    ['SRGO', ['Anser caerulescens', 'Anser rossii']],
    ['CCGO', ['Branta canadensis', 'Branta hutchinsii']],
    ['BCTE', ['Spatula cyanoptera', 'Spatula discors']],
    ['WCGR', ['Aechmophorus clarkii', 'Aechmophorus occidentalis']],
    ['SRGH', ['Anser caerulescens x rossii']],
    ['MBDH', ['Anas platyrhynchos x rubripes']],
  ])('%s stands for a pair or a hybrid', (code, candidates) => {
    expect(candidatesOf(code)).toEqual(candidates);
  });

  it('holds 91 species and no code twice', () => {
    const species = LEAVES.filter((leaf) => leaf.kind === 'species');
    expect(species).toHaveLength(91);
    const codes = LEAVES.flatMap((leaf) => leaf.code ?? []);
    expect(new Set(codes).size).toBe(codes.length);
    expect(new Set(LEAVES.map((leaf) => leaf.species)).size).toBe(LEAVES.length);
  });

  it('has no code for the scaup pair, and coins none', () => {
    expect(LEAVES.some((leaf) => leaf.code === taxonName(SCAUP))).toBe(false);
    expect(parseTaxon('SCAU').ok).toBe(false);
  });

  it('does not guess what the old code CAGO meant', () => {
    const parsed = parseTaxon('CAGO');
    expect(parsed.ok ? '' : inEnglish(parsed.expected)).toBe(
      'CANG for Canada Goose, CACG for Cackling Goose, or CCGO for either',
    );
  });
});

describe('parseTaxon', () => {
  it.each([
    'Aythya marila/Aythya affinis',
    'Aythya marila/affinis',
    'Aythya marila / A. affinis',
    'Greater/Lesser Scaup',
    'greater scaup/LESSER SCAUP',
    'Lesser Scaup/Aythya marila',
    'GRSC/LESC',
    'scaup sp.',
    'Scaup spp.',
    'unidentified scaup',
    'scaup',
  ])('reads "%s" as the scaup pair', (text) => {
    expect(candidatesOf(text)).toEqual(SCAUP);
  });

  it.each([
    ['Cackling/Canada Goose', ['Branta canadensis', 'Branta hutchinsii']],
    ["Snow/Ross's Goose", ['Anser caerulescens', 'Anser rossii']],
    ['Common/Red-breasted Merganser', ['Mergus merganser', 'Mergus serrator']],
    [
      'Surf/Black/White-winged Scoter',
      ['Melanitta americana', 'Melanitta deglandi', 'Melanitta perspicillata'],
    ],
    ['Mallard/American Black Duck', ['Anas platyrhynchos', 'Anas rubripes']],
    ['Mallard/Gadwall', ['Anas platyrhynchos', 'Mareca strepera']],
    ['Redhead/scaup sp.', ['Aythya affinis', 'Aythya americana', 'Aythya marila']],
  ])('reads "%s"', (text, candidates) => {
    expect(candidatesOf(text)).toEqual(candidates);
  });

  it.each([
    ['barrows goldeneye', 'Bucephala islandica'],
    ['Barrow’s Goldeneye', 'Bucephala islandica'],
    ['RED BREASTED MERGANSER', 'Mergus serrator'],
    ['grsc', 'Aythya marila'],
    ['  Aythya   marila ', 'Aythya marila'],
    ['Phalacrocorax auritus', 'Nannopterum auritum'],
    ['Anas strepera', 'Mareca strepera'],
    ['Chen rossii', 'Anser rossii'],
    ['Mergus cucullatus', 'Lophodytes cucullatus'],
    ['Greylag Goose', 'Anser anser'],
    ['domestic goose', 'Anser anser (domestic type)'],
    ['Domestic-type Mallard', 'Anas platyrhynchos (domestic type)'],
  ])('reads "%s" as %s', (text, species) => {
    expect(candidatesOf(text)).toEqual([species]);
  });

  it('means the regular members by "Genus sp.", not vagrants (common practice, no source)', () => {
    expect(candidatesOf('Aythya sp.')).toEqual(POCHARDS);
    expect(candidatesOf('merganser sp.')).toHaveLength(3);
    expect(candidatesOf('Mergus sp.')).toEqual(['Mergus merganser', 'Mergus serrator']);
    expect(candidatesOf('white-cheeked goose sp.')).toEqual(candidatesOf('CCGO'));
    expect(candidatesOf('UNGO')).toEqual(candidatesOf('goose sp.'));
    expect(candidatesOf('Unidentified Duck')).toEqual(candidatesOf('duck sp.'));
  });

  it('nests the groups as the trade does (common practice, no source)', () => {
    const within = (narrow: string, wide: string): boolean => {
      const set = new Set(candidatesOf(wide));
      return candidatesOf(narrow).every((name) => set.has(name));
    };
    expect(within('Aythya sp.', 'diving duck sp.')).toBe(true);
    expect(within('sea duck sp.', 'diving duck sp.')).toBe(true);
    expect(within('diving duck sp.', 'duck sp.')).toBe(true);
    expect(within('dabbling duck sp.', 'duck sp.')).toBe(true);
    expect(within('teal sp.', 'dabbling duck sp.')).toBe(true);
    expect(within('duck sp.', 'waterfowl sp.')).toBe(true);
    expect(within('goose sp.', 'duck sp.')).toBe(false);
    expect(within('waterfowl sp.', 'waterbird sp.')).toBe(true);
  });

  it('has a hybrid as a leaf of its own, not as its parents', () => {
    expect(candidatesOf('Mallard x American Black Duck')).toEqual([
      'Anas platyrhynchos x rubripes',
    ]);
    expect(candidatesOf('Anas rubripes × Anas platyrhynchos')).toEqual([
      'Anas platyrhynchos x rubripes',
    ]);
    expect(candidatesOf('Common Goldeneye x Hooded Merganser hybrid')).toEqual([
      'Bucephala clangula x Lophodytes cucullatus',
    ]);
    expect(englishName(['Anser caerulescens x rossii'])).toBe("Snow x Ross's Goose hybrid");
  });

  it.each([
    ['Aythya marilla', 'Aythya marila'],
    ['Bufflehaed', 'Bufflehead'],
    ['Aythya marila/Aythya afinis', 'Aythya marila/Aythya affinis'],
    ['Long-tailed Dukc', 'Long-tailed Duck'],
    ['GRSX', 'GRSC'],
  ])('names the nearest of "%s": %s', (text, nearest) => {
    const parsed = parseTaxon(text);
    expect(parsed.ok ? null : parsed.nearest).toBe(nearest);
  });

  it.each(['', '   ', '/', 'Aythya marila/', 'xyzzy plugh', 'constructor', '__proto__', 'x x x'])(
    'refuses "%s" and says what it expects',
    (text) => {
      const parsed = parseTaxon(text);
      expect(parsed.ok).toBe(false);
      if (!parsed.ok)
        expect(inEnglish(parsed.expected)).toContain('scientific, English or French name');
    },
  );

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const parsed = parseTaxon(text);
        return parsed.ok ? parsed.candidates.length > 0 : inEnglish(parsed.problem) !== '';
      }),
    );
  });
});

describe('taxonName and englishName', () => {
  it.each([
    [['Aythya marila'], 'Aythya marila', 'Greater Scaup'],
    [SCAUP, 'Aythya affinis/marila', 'Greater/Lesser Scaup'],
    [POCHARDS, 'Aythya sp.', 'Aythya sp.'],
    [
      ['Mareca strepera', 'Anas platyrhynchos'],
      'Anas platyrhynchos/Mareca strepera',
      'Gadwall/Mallard',
    ],
    [candidatesOf('scoter sp.'), 'Melanitta sp.', 'scoter sp.'],
    [candidatesOf('diving duck sp.'), 'diving duck sp.', 'diving duck sp.'],
    [candidatesOf('duck sp.'), 'duck sp.', 'duck sp.'],
    [candidatesOf('CCGO'), 'Branta canadensis/hutchinsii', 'Cackling/Canada Goose'],
    [[...POCHARDS, 'Anas platyrhynchos'], 'Aythya sp./Anas platyrhynchos', 'Aythya sp./Mallard'],
  ])('%j is %s', (candidates, name, english) => {
    expect(taxonName(candidates)).toBe(name);
    expect(englishName(candidates)).toBe(english);
  });

  const plain = LEAVES.map((leaf) => leaf.species);
  const species = LEAVES.filter((leaf) => leaf.kind === 'species');
  const domestic = plain.filter((name) => name.endsWith('(domestic type)'));
  const anyLeaf = fc.oneof(
    { weight: 8, arbitrary: fc.constantFrom(...plain) },
    fc.constantFrom(...domestic),
    fc
      .tuple(fc.constantFrom(...species), fc.constantFrom(...species))
      .filter(([one, other]) => one !== other)
      .map(([one, other]) => hybridOf(one, other).species),
  );
  const anySet = fc.oneof(
    fc.uniqueArray(anyLeaf, { minLength: 1, maxLength: 12 }),
    fc
      .uniqueArray(fc.constantFrom(...tradeSets()), { minLength: 1, maxLength: 3 })
      .chain((sets) =>
        fc
          .uniqueArray(anyLeaf, { maxLength: 3 })
          .map((more) => [...new Set([...sets.flatMap((set) => set.candidates), ...more])]),
      ),
  );

  it('are read back to the same candidates', () => {
    fc.assert(
      fc.property(anySet, (set) => {
        const sorted = [...set].sort();
        expect(candidatesOf(taxonName(set))).toEqual(sorted);
        expect(candidatesOf(englishName(set))).toEqual(sorted);
      }),
      { numRuns: 2000 },
    );
  });

  it('do not depend on order', () => {
    fc.assert(
      fc.property(anySet, (set) => {
        expect(taxonName([...set].reverse())).toBe(taxonName(set));
        expect(englishName([...set].reverse())).toBe(englishName(set));
      }),
    );
  });

  it('know every leaf that they name', () => {
    fc.assert(fc.property(anyLeaf, (name) => leafOf(name)?.species === name));
  });
});

describe('DEFAULT_LOOK_ALIKES', () => {
  const pairs = new Set(DEFAULT_LOOK_ALIKES.map((pair) => pair.join('/')));

  it('has every pair of pochards but canvasback with scaup and with ring-necked duck', () => {
    const expected = POCHARDS.flatMap((one, index) =>
      POCHARDS.slice(index + 1).map((other) => `${one}/${other}`),
    ).filter((pair) => !pair.includes('valisineria') || pair.includes('americana'));
    expect(expected).toHaveLength(7);
    expect([...pairs].filter((pair) => pair.startsWith('Aythya')).sort()).toEqual(expected);
  });

  it('is sorted, pairs too, with known species only', () => {
    const keys = DEFAULT_LOOK_ALIKES.map((pair) => pair.join('/'));
    expect(keys).toEqual([...keys].sort());
    expect(pairs.size).toBe(keys.length);
    for (const [one, other] of DEFAULT_LOOK_ALIKES) {
      expect(one < other).toBe(true);
      expect(leafOf(one)).not.toBeNull();
      expect(leafOf(other)).not.toBeNull();
    }
  });
});

describe('inScope', () => {
  it('counts Anatidae as waterfowl (AOS check-list: family)', () => {
    expect(inScope({ kind: 'waterfowl' }, ['Aythya marila'])).toBe(true);
    expect(inScope({ kind: 'waterfowl' }, ['Anas platyrhynchos x rubripes'])).toBe(true);
    expect(inScope({ kind: 'waterfowl' }, ['Gavia immer'])).toBe(false);
    expect(inScope({ kind: 'waterfowl' }, ['Fulica americana'])).toBe(false);
    expect(inScope({ kind: 'all-waterbirds' }, ['Gavia immer'])).toBe(true);
  });

  it('holds a pair to be sought where one of the two is', () => {
    const scope = { kind: 'taxa', species: ['Aythya marila'] } as const;
    expect(inScope(scope, SCAUP)).toBe(true);
    expect(inScope(scope, ['Aythya americana'])).toBe(false);
  });
});

describe('searchTaxa', () => {
  const names = (text: string): string[] =>
    searchTaxa(text).map((found) => englishName(found.candidates));

  it.each([
    ['gr sc', 'Greater Scaup'],
    ['LESC', 'Lesser Scaup'],
    ['les', 'Lesser Scaup'],
    ['buff', 'Bufflehead'],
    ['aythya mar', 'Greater Scaup'],
    ['scaup sp', 'Greater/Lesser Scaup'],
    ['GRSC/LESC', 'Greater/Lesser Scaup'],
    ['diving', 'diving duck sp.'],
    ['golden', 'Common Goldeneye'],
  ])('"%s" offers %s first or among the first', (text, english) => {
    expect(names(text).slice(0, 3)).toContain(english);
  });

  it('offers the pair when only "scaup" is typed, and vagrants last', () => {
    expect(names('scaup')).toEqual(
      expect.arrayContaining(['Greater/Lesser Scaup', 'Greater Scaup', 'Lesser Scaup']),
    );
    const scoters = names('scoter');
    expect(scoters.indexOf('Velvet Scoter')).toBeGreaterThan(scoters.indexOf('Surf Scoter'));
  });

  it('offers nothing for nothing, and only what can be read back', () => {
    expect(searchTaxa('  ')).toEqual([]);
    for (const found of searchTaxa('d', 500)) {
      expect(candidatesOf(found.name)).toEqual(found.candidates);
    }
  });
});

describe('nearestOf', () => {
  it('measures as a general library does (fastest-levenshtein)', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), (one, other) => {
        expect(editDistance(one, other)).toBe(distance(one, other));
      }),
    );
  });

  it('suggests only what is near', () => {
    expect(nearestOf('one by one', ['one-by-one', 'block'])).toBe('one-by-one');
    expect(nearestOf('flying', ['water', 'flying-through', 'flushed'])).toBe('flying-through');
    expect(nearestOf('o9', ['o1', 'o2'])).toBeNull();
    expect(nearestOf('', ['o1'])).toBeNull();
  });
});
