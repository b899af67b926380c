import type { FieldMarkKey } from './field-mark-key.js';

const GREEN_WINGED = 'Anas crecca';
const BLUE_WINGED = 'Spatula discors';
const CINNAMON = 'Spatula cyanoptera';
const SHOVELER = 'Spatula clypeata';
const GADWALL = 'Mareca strepera';
const WIGEON = 'Mareca americana';
const MALLARD = 'Anas platyrhynchos';
const BLACK_DUCK = 'Anas rubripes';
const PINTAIL = 'Anas acuta';

/**
 * Teal and other dabblers, females above all (common practice, no source; from memory). Female
 * Blue-winged and Cinnamon Teal stay a pair by every mark here.
 */
export const DABBLERS: FieldMarkKey = {
  group: 'dabblers',
  source: 'common practice, no source; from memory',
  species: [
    PINTAIL,
    GREEN_WINGED,
    MALLARD,
    BLACK_DUCK,
    WIGEON,
    GADWALL,
    SHOVELER,
    CINNAMON,
    BLUE_WINGED,
  ],
  marks: [
    {
      name: 'bill shape',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'distance; bill under the wing or in the water',
      states: [
        { name: 'spoon, longer than the head', fits: [SHOVELER] },
        { name: 'rather large on a small duck', fits: [CINNAMON, BLUE_WINGED] },
        { name: 'small on a small duck', fits: [GREEN_WINGED, BLUE_WINGED, CINNAMON] },
        { name: 'short on a round head', fits: [WIGEON, GREEN_WINGED] },
        { name: 'ordinary', fits: [MALLARD, BLACK_DUCK, GADWALL, PINTAIL, WIGEON] },
      ],
    },
    {
      name: 'bill colour',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'distance; mud; dull light',
      states: [
        { name: 'blue-grey with a black tip', fits: [WIGEON, PINTAIL] },
        {
          name: 'dark grey or black',
          fits: [
            GREEN_WINGED,
            BLUE_WINGED,
            CINNAMON,
            PINTAIL,
            WIGEON,
            { species: GADWALL, plumage: 'male' },
            { species: SHOVELER, plumage: 'male' },
            { species: BLACK_DUCK, plumage: 'female', when: 'in dull light' },
          ],
        },
        {
          name: 'orange sides along a dark ridge',
          fits: [
            { species: GADWALL, plumage: 'female' },
            { species: MALLARD, plumage: 'female' },
            { species: SHOVELER, plumage: 'female' },
            { species: GREEN_WINGED, plumage: 'female', when: 'yellowish at the base' },
          ],
        },
        {
          name: 'orange with a dark saddle',
          fits: [{ species: MALLARD, plumage: 'female' }],
        },
        {
          name: 'olive',
          fits: [BLACK_DUCK, { species: MALLARD, plumage: 'male', when: 'first winter' }],
        },
        {
          name: 'yellow',
          fits: [
            { species: MALLARD, plumage: 'male' },
            { species: BLACK_DUCK, plumage: 'male' },
          ],
        },
      ],
    },
    {
      name: 'speculum',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'a closed wing that shows only a part; colour changes with the light',
      states: [
        { name: 'blue between two white borders', fits: [MALLARD] },
        { name: 'violet-blue with hardly any white', fits: [BLACK_DUCK] },
        { name: 'white square', fits: [GADWALL] },
        {
          name: 'green',
          fits: [
            GREEN_WINGED,
            BLUE_WINGED,
            CINNAMON,
            SHOVELER,
            WIGEON,
            { species: PINTAIL, plumage: 'male' },
          ],
        },
        {
          name: 'dull brown or blackish',
          fits: [
            PINTAIL,
            WIGEON,
            { species: BLUE_WINGED, plumage: 'female' },
            { species: CINNAMON, plumage: 'female' },
            { species: SHOVELER, plumage: 'female' },
            { species: GADWALL, plumage: 'female', when: 'hardly any white, in some' },
            { species: GREEN_WINGED, when: 'light from another side' },
            { species: BLACK_DUCK, when: 'light from another side' },
          ],
        },
      ],
    },
    {
      name: 'forewing',
      plumage: 'either',
      dependability: 'dependable',
      fails:
        'seen in flight or stretching only; pale grey passes for blue or white in strong light',
      states: [
        { name: 'pale blue', fits: [BLUE_WINGED, CINNAMON, SHOVELER] },
        { name: 'white', fits: [WIGEON] },
        {
          name: 'grey or brown',
          fits: [
            GREEN_WINGED,
            GADWALL,
            MALLARD,
            BLACK_DUCK,
            PINTAIL,
            { species: WIGEON, plumage: 'female' },
            { species: SHOVELER, plumage: 'female', when: 'first winter' },
          ],
        },
      ],
    },
    {
      name: 'female face',
      plumage: 'female',
      dependability: 'dependable',
      fails: 'distance; wet birds',
      states: [
        {
          name: 'strong eye line and pale spot at the bill',
          fits: [
            BLUE_WINGED,
            { species: CINNAMON, when: 'young' },
            { species: GREEN_WINGED, when: 'in a few' },
          ],
        },
        {
          name: 'eye line without a pale spot',
          fits: [GREEN_WINGED, MALLARD, BLACK_DUCK, GADWALL, SHOVELER, CINNAMON, BLUE_WINGED],
        },
        {
          name: 'plain',
          fits: [PINTAIL, CINNAMON, WIGEON, GADWALL, { species: BLUE_WINGED, when: 'worn' }],
        },
      ],
    },
    {
      name: 'female head against body',
      plumage: 'female',
      dependability: 'dependable',
      fails: 'strong light; single birds without others beside them',
      states: [
        { name: 'paler head on a very dark body', fits: [BLACK_DUCK] },
        { name: 'greyish head on a warm rusty body', fits: [WIGEON] },
        {
          name: 'much alike',
          fits: [
            PINTAIL,
            GREEN_WINGED,
            MALLARD,
            GADWALL,
            SHOVELER,
            CINNAMON,
            BLUE_WINGED,
            { species: WIGEON, when: 'in dull light' },
            { species: BLACK_DUCK, when: 'in dull light' },
          ],
        },
      ],
    },
    {
      name: 'female tail side',
      plumage: 'female',
      dependability: 'dependable',
      fails: 'any distance',
      states: [
        { name: 'cream stripe beside the tail', fits: [GREEN_WINGED] },
        {
          name: 'no cream stripe',
          fits: [
            PINTAIL,
            MALLARD,
            BLACK_DUCK,
            WIGEON,
            GADWALL,
            SHOVELER,
            CINNAMON,
            BLUE_WINGED,
            { species: GREEN_WINGED, when: 'hidden by the wing' },
          ],
        },
      ],
    },
    {
      name: 'male head',
      plumage: 'male',
      dependability: 'dependable',
      fails: 'distance; males that have not finished moulting; green looks black in dull light',
      states: [
        { name: 'chestnut with a green band', fits: [GREEN_WINGED] },
        { name: 'white crescent before the eye', fits: [BLUE_WINGED] },
        { name: 'cinnamon-red', fits: [CINNAMON] },
        { name: 'dark green', fits: [MALLARD, SHOVELER] },
        { name: 'pale crown and green band', fits: [WIGEON] },
        { name: 'brown with a white line up the neck', fits: [PINTAIL] },
        { name: 'grey-brown', fits: [GADWALL, BLACK_DUCK] },
      ],
    },
    {
      name: 'size',
      plumage: 'either',
      dependability: 'undependable',
      fails: 'judged without a bird of known size beside it',
      states: [
        { name: 'teal-sized', fits: [GREEN_WINGED, BLUE_WINGED, CINNAMON] },
        { name: 'Mallard-sized', fits: [MALLARD, BLACK_DUCK, PINTAIL] },
        { name: 'between teal and Mallard', fits: [GADWALL, WIGEON, SHOVELER] },
      ],
    },
  ],
};
