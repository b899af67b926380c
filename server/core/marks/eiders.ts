import type { FieldMarkKey } from './field-mark-key.js';

const COMMON = 'Somateria mollissima';
const KING = 'Somateria spectabilis';

/** Eiders (common practice, no source; from memory). */
export const EIDERS: FieldMarkKey = {
  group: 'eiders',
  source: 'common practice, no source; from memory',
  species: [COMMON, KING],
  marks: [
    {
      name: 'male head',
      plumage: 'male',
      dependability: 'dependable',
      fails: 'distance; first-winter males, which are dark',
      states: [
        { name: 'black cap over a white face', fits: [COMMON] },
        { name: 'pale blue crown and orange shield', fits: [KING] },
        { name: 'dark', fits: [COMMON, KING] },
      ],
    },
    {
      name: 'male back',
      plumage: 'male',
      dependability: 'dependable',
      fails: 'first-winter males, whose back is dark',
      states: [
        { name: 'white', fits: [COMMON] },
        { name: 'black', fits: [KING, { species: COMMON, when: 'first winter' }] },
      ],
    },
    {
      name: 'head profile',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'distance; birds asleep or head on',
      states: [
        { name: 'long wedge', fits: [COMMON] },
        { name: 'rounded with a short bill', fits: [KING] },
      ],
    },
    {
      name: 'feathering on the bill',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'any distance',
      states: [
        { name: 'reaches to below the nostril at the side', fits: [COMMON] },
        { name: 'ends well short of the nostril at the side', fits: [KING] },
      ],
    },
    {
      name: 'female flank marks',
      plumage: 'female',
      dependability: 'dependable',
      fails: 'any distance; worn plumage',
      states: [
        { name: 'straight bars', fits: [COMMON] },
        { name: 'crescents or chevrons', fits: [KING] },
        { name: 'plain', fits: [COMMON, KING] },
      ],
    },
    {
      name: 'female mouth line',
      plumage: 'female',
      dependability: 'undependable',
      fails: 'depends on how the head is held',
      states: [
        { name: 'straight', fits: [COMMON, { species: KING, when: 'head held down' }] },
        { name: 'turned up', fits: [KING, { species: COMMON, when: 'head held up' }] },
      ],
    },
  ],
};
