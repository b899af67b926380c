import type { FieldMarkKey } from './field-mark-key.js';

const MUTE = 'Cygnus olor';
const TRUMPETER = 'Cygnus buccinator';
const TUNDRA = 'Cygnus columbianus';

/** Swans (common practice, no source; from memory). */
export const SWANS: FieldMarkKey = {
  group: 'swans',
  source: 'common practice, no source; from memory',
  species: [TRUMPETER, TUNDRA, MUTE],
  marks: [
    {
      name: 'bill',
      plumage: 'either',
      dependability: 'dependable',
      fails:
        'distance; mud; birds in their first winter; a very few Trumpeters with a yellowish spot',
      states: [
        { name: 'orange with a black base', fits: [MUTE] },
        { name: 'all black', fits: [TRUMPETER, TUNDRA] },
        { name: 'black with a yellow spot before the eye', fits: [TUNDRA] },
        { name: 'pinkish or grey', fits: [MUTE, TRUMPETER, TUNDRA] },
      ],
    },
    {
      name: 'eye and bill',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'any distance; birds in their first winter',
      states: [
        { name: 'black joins the eye in a broad band', fits: [TRUMPETER] },
        { name: 'black narrows to a point at the eye', fits: [TUNDRA, MUTE] },
      ],
    },
    {
      name: 'forehead border',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'any distance; seen otherwise than head on',
      states: [
        { name: 'v-shaped', fits: [TRUMPETER] },
        { name: 'rounded or straight', fits: [TUNDRA] },
        { name: 'knob', fits: [MUTE] },
        { name: 'between v-shaped and rounded', fits: [TRUMPETER, TUNDRA] },
      ],
    },
    {
      name: 'voice',
      plumage: 'either',
      dependability: 'dependable',
      fails: 'mixed flocks, in which it is not known who calls',
      states: [
        { name: 'deep and horn-like', fits: [TRUMPETER] },
        { name: 'high and whooping', fits: [TUNDRA] },
        { name: 'hiss or snort', fits: [MUTE] },
      ],
    },
    {
      name: 'neck',
      plumage: 'either',
      dependability: 'undependable',
      fails: 'depends on what the bird does',
      states: [
        { name: 'curved', fits: [MUTE, TRUMPETER, TUNDRA] },
        { name: 'straight', fits: [TRUMPETER, TUNDRA, { species: MUTE, when: 'alert' }] },
      ],
    },
  ],
};
