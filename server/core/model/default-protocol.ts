import { DEFAULT_LOOK_ALIKES } from '../taxa/look-alikes.js';
import type { CountingErrorTable, Protocol } from './protocol.js';

/**
 * Coefficient of variation of one line. One by one and guess: common practice, no source. Block
 * counts: 20 % for a flock at rest (Kersten, Rappoldt & Smit 1981, Limosa 54:37; Rappoldt et al.
 * 1985, Ardea 73:13, use 37 %, so a protocol may say otherwise). A proportion sample has at least
 * the block error of its total; what the samples themselves add needs the samples.
 */
const DEFAULT_COUNTING_ERROR: CountingErrorTable = {
  'one-by-one': [
    { upTo: 19, cv: 0 },
    { upTo: 500, cv: 0.05 },
    { upTo: null, cv: 0.1 },
  ],
  block: [{ upTo: null, cv: 0.2 }],
  sample: [{ upTo: null, cv: 0.2 }],
  guess: [{ upTo: null, cv: 0.5 }],
};

/** What a count is reconciled by where its protocol says nothing. */
export const defaultProtocol: Protocol = {
  rule: 'mean',
  designated: {},
  questionedAt: 2,
  seriousAt: 3,
  questionedBirds: 20,
  seriousBirds: 100,
  zeros: 'missed',
  resolution: 'finer',
  windows: 'highest',
  lookAlikes: DEFAULT_LOOK_ALIKES,
  linkThreshold: 0.6,
  deductLinks: 'confirmed',
  countingError: DEFAULT_COUNTING_ERROR,
  // Common practice, no source: about one flock in seven moves in three hours.
  movingPerHour: 0.05,
  swimmingMaxKmh: 3,
  flyingMinKmh: 40,
  flyingMaxKmh: 100,
  // Common practice, no source: with fewer years an interval says little.
  minimumYears: 5,
  minimumUnits: 5,
  signOffs: ['compiler'],
};
