/** Columns of `tallies.csv`, in the order in which they are written. */
export const TALLY_COLUMNS = [
  'tally',
  'observer',
  'section',
  'window',
  'vantage',
  'start',
  'end',
  'taxon',
  'number',
  'low',
  'high',
  'method',
  'block',
  'male',
  'female',
  'adult',
  'immature',
  'activity',
  'time',
  'lon',
  'lat',
  'flock',
  'heading',
  'from',
  'to',
  'coverage',
  'scope',
  'certainty',
  'party',
  'note',
  'line',
  'visibility',
  'beaufort',
  'sea-state',
  'ice-cover',
  'glare',
  'disturbance',
  'optics',
  'total-method',
] as const;
export type TallyColumn = (typeof TALLY_COLUMNS)[number];

/** Columns of what it was like to count; they are written where some tally noted any of it. */
export const CONDITION_COLUMNS = [
  'visibility',
  'beaufort',
  'sea-state',
  'ice-cover',
  'glare',
  'disturbance',
  'optics',
] as const satisfies readonly TallyColumn[];

export const REQUIRED_COLUMNS = [
  'tally',
  'observer',
  'section',
  'window',
  'taxon',
  'number',
  'method',
] as const satisfies readonly TallyColumn[];

/** Columns that say something about the whole tally: all its rows say the same. */
export const HEAD_COLUMNS = [
  'observer',
  'section',
  'window',
  'vantage',
  'start',
  'end',
  'coverage',
  'scope',
  'party',
  ...CONDITION_COLUMNS,
] as const satisfies readonly TallyColumn[];
