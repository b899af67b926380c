import type { FieldMarkKey } from './field-mark-key.js';

const HOODED = 'Lophodytes cucullatus';
const COMMON = 'Mergus merganser';
const RED_BREASTED = 'Mergus serrator';

/** Mergansers (common practice, no source; from memory). */
export const MERGANSERS: FieldMarkKey = {
  group: 'mergansers',
  source: 'common practice, no source; from memory',
  species: [HOODED, COMMON, RED_BREASTED],
  marks: [
    {
      name: 'bill',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'distance; birds turned away',
      states: [
        { name: 'short and dark, or yellowish below', fits: [HOODED] },
        { name: 'long, red and deep at the base', fits: [COMMON] },
        { name: 'long, red and thin at the base', fits: [RED_BREASTED] },
      ],
    },
    {
      name: 'crest',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'wet birds, whose crest lies flat',
      states: [
        { name: 'large fan or mop', fits: [HOODED] },
        {
          name: 'ragged',
          fits: [
            RED_BREASTED,
            { species: COMMON, plumage: 'female' },
            { species: HOODED, when: 'wet' },
          ],
        },
        {
          name: 'none or smooth',
          fits: [
            COMMON,
            { species: HOODED, when: 'laid flat' },
            { species: RED_BREASTED, when: 'wet' },
          ],
        },
      ],
    },
    {
      name: 'male breast',
      plumage: 'male',
      dependability: 'dependable',
      fails: 'distance; dull light, in which brown passes for grey',
      states: [
        { name: 'white with two black bars at its side', fits: [HOODED] },
        { name: 'white or pinkish and plain', fits: [COMMON] },
        { name: 'streaked brown below a white collar', fits: [RED_BREASTED] },
      ],
    },
    {
      name: 'male flanks',
      plumage: 'male',
      dependability: 'dependable',
      fails: 'strong light, in which grey passes for white',
      states: [
        { name: 'rusty', fits: [HOODED] },
        { name: 'white', fits: [COMMON, { species: RED_BREASTED, when: 'in strong light' }] },
        { name: 'grey', fits: [RED_BREASTED] },
      ],
    },
    {
      name: 'female throat and neck',
      plumage: 'female',
      dependability: 'dependable',
      fails: 'distance; birds hunched or asleep',
      states: [
        { name: 'white chin, rusty neck cut off sharply from a pale breast', fits: [COMMON] },
        { name: 'pale throat blending into a dull rusty neck', fits: [RED_BREASTED] },
        { name: 'grey-brown', fits: [HOODED] },
      ],
    },
  ],
};
