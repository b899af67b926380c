import type { FieldMarkKey } from './field-mark-key.js';

const CANADA = 'Branta canadensis';
const CACKLING = 'Branta hutchinsii';
const SNOW = 'Anser caerulescens';
const ROSSS = 'Anser rossii';

/**
 * Small and large white-cheeked geese (common practice, no source; from memory). The smallest
 * Canada and the largest Cackling Geese run into each other: most states between leave the pair.
 */
export const WHITE_CHEEKED_GEESE: FieldMarkKey = {
  group: 'white-cheeked geese',
  source: 'common practice, no source; from memory',
  species: [CANADA, CACKLING],
  marks: [
    {
      name: 'bill',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'distance; birds head on',
      states: [
        { name: 'very short and stubby', fits: [CACKLING] },
        { name: 'rather short', fits: [CACKLING, CANADA] },
        { name: 'long and sloping', fits: [CANADA] },
      ],
    },
    {
      name: 'size',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'judged without a bird of known size beside it',
      states: [
        { name: 'hardly larger than a Mallard', fits: [CACKLING] },
        { name: 'between a Mallard and a large goose', fits: [CACKLING, CANADA] },
        { name: 'twice a Mallard or more', fits: [CANADA] },
      ],
    },
    {
      name: 'forehead',
      plumage: 'either',
      dependability: 'undependable',
      fails: 'birds alert or asleep; wind',
      states: [
        { name: 'steep', fits: [CACKLING, { species: CANADA, when: 'a small form' }] },
        { name: 'sloping', fits: [CANADA, { species: CACKLING, when: 'a large form' }] },
      ],
    },
    {
      name: 'breast',
      plumage: 'either',
      dependability: 'undependable',
      fails: 'light; both species have dark and pale forms',
      states: [
        { name: 'dark', fits: [CACKLING, CANADA] },
        { name: 'pale', fits: [CACKLING, CANADA] },
      ],
    },
    {
      name: 'white neck ring',
      plumage: 'either',
      dependability: 'undependable',
      fails: 'many Cackling Geese have none, and some Canada Geese have one',
      states: [
        { name: 'present', fits: [CACKLING, { species: CANADA, when: 'in some' }] },
        { name: 'absent', fits: [CACKLING, CANADA] },
      ],
    },
  ],
};

/** White geese (common practice, no source; from memory). Hybrids between the two are no rarity. */
export const WHITE_GEESE: FieldMarkKey = {
  group: 'white geese',
  source: 'common practice, no source; from memory',
  species: [SNOW, ROSSS],
  marks: [
    {
      name: 'bill sides',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'distance',
      states: [
        { name: 'wide black gape', fits: [SNOW] },
        { name: 'no black gape', fits: [ROSSS] },
        { name: 'thin dark line', fits: [SNOW, ROSSS] },
      ],
    },
    {
      name: 'bill length',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'birds head on',
      states: [
        { name: 'long', fits: [SNOW] },
        { name: 'short and stubby', fits: [ROSSS] },
        { name: 'between long and stubby', fits: [SNOW, ROSSS] },
      ],
    },
    {
      name: 'feather border at the bill',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'any distance',
      states: [
        { name: 'curved forward', fits: [SNOW] },
        { name: 'straight', fits: [ROSSS] },
      ],
    },
    {
      name: 'size',
      plumage: 'either',
      dependability: 'undependable',
      fails: 'judged without a bird of known size beside it',
      states: [
        { name: 'hardly larger than a Mallard', fits: [ROSSS] },
        { name: 'much larger than a Mallard', fits: [SNOW] },
      ],
    },
  ],
};
