import type { FieldMarkKey } from './field-mark-key.js';

const CANVASBACK = 'Aythya valisineria';
const REDHEAD = 'Aythya americana';
const RING_NECKED = 'Aythya collaris';
const GREATER = 'Aythya marila';
const LESSER = 'Aythya affinis';

/**
 * The five pochards (common practice, no source). Order of work for a female: canvasback or not;
 * then scaup or not, by the white bill base and the little black on the bill; then the crown's
 * highest point. Wing stripe, black at the nail and gloss are from memory.
 */
export const POCHARDS: FieldMarkKey = {
  group: 'pochards',
  source: 'common practice, no source',
  species: [LESSER, REDHEAD, RING_NECKED, GREATER, CANVASBACK],
  marks: [
    {
      name: 'profile and crown',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'birds that dive, are wet, alert or asleep; wind on the crown',
      states: [
        { name: 'wedge with the forehead straight into the bill', fits: [CANVASBACK] },
        { name: 'rounded and highest ahead of the eye', fits: [REDHEAD, GREATER] },
        { name: 'tall and highest behind the eye', fits: [RING_NECKED, LESSER] },
      ],
    },
    {
      name: 'bill',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'distance, glare; bill under the wing',
      states: [
        { name: 'all black', fits: [CANVASBACK] },
        {
          name: 'blue-grey with a broad black tip',
          fits: [REDHEAD, { species: RING_NECKED, plumage: 'female', when: 'the band is faint' }],
        },
        {
          name: 'grey with a white band behind a broad black tip',
          fits: [RING_NECKED, { species: REDHEAD, plumage: 'female', when: 'in some' }],
        },
        { name: 'blue-grey with black only at the nail', fits: [GREATER, LESSER] },
      ],
    },
    {
      name: 'male body',
      plumage: 'male',
      dependability: 'dependable',
      fails: 'strong light, in which grey passes for white; males that have not finished moulting',
      states: [
        { name: 'white', fits: [CANVASBACK, { species: REDHEAD, when: 'in strong light' }] },
        { name: 'grey', fits: [REDHEAD] },
        { name: 'black back and white wedge at the shoulder', fits: [RING_NECKED] },
        { name: 'pale back and even pale flanks', fits: [GREATER, LESSER] },
      ],
    },
    {
      name: 'female face',
      plumage: 'female',
      dependability: 'dependable',
      fails: 'distance; birds turned away',
      states: [
        {
          name: 'no pale patch',
          fits: [
            CANVASBACK,
            { species: GREATER, when: 'first winter, hardly any white yet' },
            { species: LESSER, when: 'first winter, hardly any white yet' },
          ],
        },
        { name: 'diffuse pale lores', fits: [REDHEAD, RING_NECKED] },
        { name: 'clean white bill base on a dark head', fits: [GREATER, LESSER] },
      ],
    },
    {
      name: 'female body',
      plumage: 'female',
      dependability: 'dependable',
      fails: 'strong light, in which brown passes for pale',
      states: [
        { name: 'pale greyish behind a browner breast', fits: [CANVASBACK] },
        { name: 'brown', fits: [REDHEAD, RING_NECKED, GREATER, LESSER] },
      ],
    },
    {
      name: 'wing stripe',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'a glimpse; over-exposed photographs',
      states: [
        // How far out the white goes is too variable to tell the two scaup apart by itself.
        {
          name: 'white well out along the wing',
          fits: [GREATER, { species: LESSER, when: 'the innermost primaries are pale' }],
        },
        {
          name: 'white on the inner wing only',
          fits: [LESSER, { species: GREATER, when: 'in some females' }],
        },
        { name: 'grey all along', fits: [CANVASBACK, REDHEAD, RING_NECKED] },
      ],
    },
    {
      name: 'black at the nail',
      plumage: 'either',
      dependability: 'undependable',
      fails: 'always too subtle to decide alone; any angle but straight from the front',
      among: [GREATER, LESSER],
      states: [
        { name: 'wide', fits: [GREATER, { species: LESSER, when: 'seen at an angle' }] },
        { name: 'narrow', fits: [LESSER, { species: GREATER, when: 'seen at an angle' }] },
      ],
    },
    {
      name: 'male head gloss',
      plumage: 'male',
      dependability: 'undependable',
      fails: 'changes with the angle of the light',
      among: [GREATER, LESSER, RING_NECKED],
      states: [
        { name: 'green', fits: [GREATER, { species: LESSER, when: 'light from another side' }] },
        {
          name: 'purple',
          fits: [LESSER, RING_NECKED, { species: GREATER, when: 'light from another side' }],
        },
      ],
    },
  ],
};
