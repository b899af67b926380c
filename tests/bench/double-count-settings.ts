import { defaultProtocol } from '../../server/core/model/default-protocol.js';
import type { Protocol } from '../../server/core/model/protocol.js';
import { DEFAULT_OPTIONS, type SimulationOptions } from '../../server/core/simulate/options.js';

/** A kind of count to find double counts in. */
export interface Setting {
  readonly name: string;
  /** Settings that differ only in density are told together as well, by this; `null` for one alone. */
  readonly together: string | null;
  readonly options: Partial<SimulationOptions>;
}

/** Nothing is deducted before a compiler rules, but here what the proposals would come to is asked. */
export const protocol: Protocol = { ...defaultProtocol, deductLinks: 'proposed' };

/**
 * Share of observers who tally past the line of their section: so that the raw total lies about 8 %
 * over the birds that somebody recorded, on median over the densities. With none it lies 1 % over.
 */
export const PAST_THE_LINE = 0.2;

/**
 * Six sections with two observers each, in two turns: neighbours are counted one after the other or
 * at one time. Every tally of a whole section by one observer alone, as in `accuracy.ts`.
 */
const usual: Partial<SimulationOptions> = {
  sections: 6,
  observers: 6,
  perSection: 2,
  partial: 0,
  merged: 0,
  parties: 0,
  pastTheLine: PAST_THE_LINE,
};

/** Birds for about 4, 10 and 25 flocks a section: the kinds of flock average some 62 birds. */
const DENSITIES = [
  ['sparse', 1200],
  ['usual', 3200],
  ['crowded', 9000],
] as const;

const NOTES: readonly (readonly [string, Partial<SimulationOptions>])[] = [
  ['times and positions', { timesNoted: 1, positionsNoted: 1 }],
  ['as people do', {}],
  [
    'section and time only',
    { timesNoted: 1, positionsNoted: 0, headingsNoted: 0, destinationsNoted: 0 },
  ],
];

/** The settings that the goals are for, and four that ask more: they are not in any goal. */
export const SETTINGS: readonly Setting[] = [
  ...DENSITIES.flatMap(([density, birds]) =>
    NOTES.map(([notes, options]) => ({
      name: `${density}, ${notes}`,
      together: `all densities, ${notes}`,
      options: { ...usual, birds, ...options },
    })),
  ),
  ...Object.entries({
    'nobody past the line': { pastTheLine: 0, timesNoted: 1, positionsNoted: 1 },
    'half of the movers split or join': { splitting: 0.5, timesNoted: 1, positionsNoted: 1 },
    'totals in 3 tallies of 10': { lumping: 0.3 },
    'partial, merged, in parties': {
      partial: DEFAULT_OPTIONS.partial,
      merged: DEFAULT_OPTIONS.merged,
      parties: DEFAULT_OPTIONS.parties,
    },
  }).map(([name, options]) => ({
    name: `more: ${name}`,
    together: null,
    options: { ...usual, birds: 3200, ...options },
  })),
];

/** Share of flocks that move; the seeds take turns. */
const MOVING = [0.05, 0.1, 0.15] as const;

export function optionsFor({ options }: Setting, seed: number): SimulationOptions {
  const moving = MOVING[(seed - 1) % MOVING.length] ?? 0.1;
  return { ...DEFAULT_OPTIONS, moving, ...options, seed };
}
