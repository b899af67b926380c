import type { FieldMarkKey } from './field-mark-key.js';

const SURF = 'Melanitta perspicillata';
const WHITE_WINGED = 'Melanitta deglandi';
const BLACK = 'Melanitta americana';

/** Scoters (common practice, no source; from memory). */
export const SCOTERS: FieldMarkKey = {
  group: 'scoters',
  source: 'common practice, no source; from memory',
  species: [BLACK, WHITE_WINGED, SURF],
  marks: [
    {
      name: 'wing',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'a closed wing hides the white; dark wings flash pale in strong light',
      states: [
        { name: 'white patch', fits: [WHITE_WINGED] },
        { name: 'no white on a spread wing', fits: [SURF, BLACK] },
        { name: 'no white on a closed wing', fits: [SURF, WHITE_WINGED, BLACK] },
      ],
    },
    {
      name: 'male head',
      plumage: 'male',
      dependability: 'dependable',
      fails: 'distance; first-winter males, which lack the white',
      states: [
        { name: 'white on the forehead or nape', fits: [SURF] },
        { name: 'white comma below the eye', fits: [WHITE_WINGED] },
        {
          name: 'all black',
          fits: [
            BLACK,
            { species: SURF, when: 'first winter' },
            { species: WHITE_WINGED, when: 'first winter' },
          ],
        },
      ],
    },
    {
      name: 'male bill',
      plumage: 'male',
      dependability: 'dependable',
      fails: 'distance; first-winter males',
      states: [
        { name: 'black with an orange-yellow knob at the base', fits: [BLACK] },
        { name: 'orange, white and black, very deep', fits: [SURF] },
        { name: 'orange-red tip and black knob at the base', fits: [WHITE_WINGED] },
        {
          name: 'dark',
          fits: [
            { species: SURF, when: 'first winter' },
            { species: WHITE_WINGED, when: 'first winter' },
            { species: BLACK, when: 'first winter' },
          ],
        },
      ],
    },
    {
      name: 'female face',
      plumage: 'female',
      dependability: 'dependable',
      fails: 'distance; glare, in which a pale cheek looks like two patches',
      states: [
        { name: 'two pale patches', fits: [SURF, WHITE_WINGED] },
        { name: 'all the cheek pale below a dark cap', fits: [BLACK] },
        { name: 'dark', fits: [SURF, WHITE_WINGED] },
      ],
    },
    {
      name: 'head profile',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'birds asleep, alert or wet',
      states: [
        { name: 'long slope from crown to bill', fits: [SURF, WHITE_WINGED] },
        { name: 'rounded with a small bill', fits: [BLACK] },
      ],
    },
    {
      name: 'female feathering on the bill',
      plumage: 'female',
      dependability: 'dependable',
      fails: 'any distance',
      states: [
        { name: 'runs forward along the side', fits: [WHITE_WINGED] },
        { name: 'ends upright at the side', fits: [SURF, BLACK] },
      ],
    },
  ],
};
