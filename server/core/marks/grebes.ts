import type { FieldMarkKey } from './field-mark-key.js';

const PIED_BILLED = 'Podilymbus podiceps';
const HORNED = 'Podiceps auritus';
const EARED = 'Podiceps nigricollis';
const RED_NECKED = 'Podiceps grisegena';
const WESTERN = 'Aechmophorus occidentalis';
const CLARKS = 'Aechmophorus clarkii';

/** Grebes in winter plumage (common practice, no source; from memory). */
export const GREBES: FieldMarkKey = {
  group: 'grebes',
  source: 'common practice, no source; from memory',
  species: [CLARKS, WESTERN, HORNED, RED_NECKED, EARED, PIED_BILLED],
  marks: [
    {
      name: 'bill',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'distance; glare',
      states: [
        { name: 'short, thick and blunt', fits: [PIED_BILLED] },
        { name: 'short and straight', fits: [HORNED, { species: EARED, when: 'from afar' }] },
        { name: 'short, thin and turned up', fits: [EARED] },
        { name: 'rather long with a yellow base', fits: [RED_NECKED] },
        {
          name: 'long, thin and greenish yellow',
          fits: [WESTERN, { species: CLARKS, when: 'in dull light' }],
        },
        {
          name: 'long, thin and bright orange-yellow',
          fits: [CLARKS, { species: WESTERN, when: 'in strong light' }],
        },
      ],
    },
    {
      name: 'cheek',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'birds moulting in late winter; distance',
      states: [
        { name: 'clean white cut off sharply from a dark cap', fits: [HORNED, WESTERN, CLARKS] },
        { name: 'dusky with a pale patch behind the ear', fits: [EARED, RED_NECKED] },
        { name: 'brown without a pattern', fits: [PIED_BILLED] },
        {
          name: 'dusky without a clear pattern',
          fits: [
            EARED,
            RED_NECKED,
            PIED_BILLED,
            { species: HORNED, when: 'moulting, or a dusky young bird' },
          ],
        },
      ],
    },
    {
      name: 'neck',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'birds asleep or drawn in',
      states: [
        { name: 'very long, white in front', fits: [WESTERN, CLARKS] },
        { name: 'rather long and dusky', fits: [RED_NECKED] },
        { name: 'short', fits: [PIED_BILLED, HORNED, EARED] },
      ],
    },
    {
      name: 'eye and cap',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'distance; winter birds are often between the two',
      among: [WESTERN, CLARKS],
      states: [
        { name: 'eye in the dark cap', fits: [WESTERN] },
        { name: 'eye in the white face', fits: [CLARKS] },
        { name: 'eye on the border', fits: [WESTERN, CLARKS] },
      ],
    },
    {
      name: 'crown',
      plumage: 'either',
      dependability: 'undependable',
      fails: 'birds wet or just up from a dive',
      among: [HORNED, EARED],
      states: [
        { name: 'flat', fits: [HORNED, { species: EARED, when: 'wet' }] },
        { name: 'peaked above the eye', fits: [EARED, { species: HORNED, when: 'wet' }] },
      ],
    },
    {
      name: 'rear end',
      plumage: 'either',
      dependability: 'undependable',
      fails: 'birds that dive or are wet',
      among: [HORNED, EARED],
      states: [
        { name: 'fluffed up', fits: [EARED, { species: HORNED, when: 'at rest' }] },
        { name: 'low', fits: [HORNED, { species: EARED, when: 'swimming fast' }] },
      ],
    },
  ],
};
