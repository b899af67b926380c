import type { FieldMarkKey } from './field-mark-key.js';

const COMMON = 'Bucephala clangula';
const BARROWS = 'Bucephala islandica';

/** Goldeneyes (common practice, no source; from memory). Many females stay a pair, and should. */
export const GOLDENEYES: FieldMarkKey = {
  group: 'goldeneyes',
  source: 'common practice, no source; from memory',
  species: [COMMON, BARROWS],
  marks: [
    {
      name: 'male face patch',
      plumage: 'male',
      dependability: 'dependable',
      fails: 'distance; first-winter males, whose patch is not complete',
      states: [
        { name: 'round white spot', fits: [COMMON] },
        { name: 'white crescent', fits: [BARROWS] },
        { name: 'incomplete', fits: [COMMON, BARROWS] },
      ],
    },
    {
      name: 'male shoulder',
      plumage: 'male',
      dependability: 'dependable',
      fails: 'distance; wet birds, whose scapulars stick together',
      states: [
        { name: 'white with thin black lines', fits: [COMMON] },
        { name: 'black with a row of white spots', fits: [BARROWS] },
      ],
    },
    {
      name: 'head shape',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'birds that dive, are wet, alert or asleep',
      states: [
        { name: 'peaked above the eye with a sloping forehead', fits: [COMMON] },
        { name: 'steep forehead, low crown and long nape', fits: [BARROWS] },
        { name: 'between the two', fits: [COMMON, BARROWS] },
      ],
    },
    {
      name: 'female bill',
      plumage: 'female',
      dependability: 'undependable',
      fails: 'differs with age, season and region; distance',
      states: [
        {
          name: 'dark with a yellow tip',
          fits: [COMMON, { species: BARROWS, when: 'young, and some others' }],
        },
        { name: 'mostly yellow', fits: [BARROWS, { species: COMMON, when: 'in a few' }] },
        { name: 'all dark', fits: [COMMON, BARROWS] },
      ],
    },
    {
      name: 'male head gloss',
      plumage: 'male',
      dependability: 'undependable',
      fails: 'changes with the angle of the light',
      states: [
        { name: 'green', fits: [COMMON, { species: BARROWS, when: 'light from another side' }] },
        { name: 'purple', fits: [BARROWS, { species: COMMON, when: 'light from another side' }] },
      ],
    },
  ],
};
