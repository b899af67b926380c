/**
 * What it was like to count: what an observer noted of light, weather, water and glass. Nothing is
 * worked out from it; it is there for whoever has to judge why two tallies differ.
 */
export interface Conditions {
  readonly visibility: Visibility | null;
  /** Beaufort force, 0 to 12. */
  readonly beaufort: number | null;
  /** State of the sea, 0 to 9. */
  readonly seaState: number | null;
  /** Share of the sections under ice, 0 to 1. */
  readonly iceCover: number | null;
  readonly glare: Glare | null;
  /** What disturbed the birds or the observer, in words. */
  readonly disturbance: string | null;
  /** What was looked through, in words. */
  readonly optics: string | null;
}

/**
 * Visibility in the words of marine forecasts (Met Office, glossary of marine forecasts): good is
 * over 5 nautical miles, moderate 2 to 5, poor 1,000 m to 2 nautical miles, very poor under 1,000 m.
 */
export const VISIBILITIES = ['good', 'moderate', 'poor', 'very-poor'] as const;
export type Visibility = (typeof VISIBILITIES)[number];

/** How much the sun on the water got in the way (common practice, no source). */
export const GLARES = ['none', 'some', 'strong'] as const;
export type Glare = (typeof GLARES)[number];

/**
 * A force of the Beaufort scale: the speed is the mean over ten minutes at 10 m above open flat
 * ground, in whole knots; `null` for the last, which has no upper end.
 */
export interface BeaufortForce {
  readonly name: string;
  readonly fromKnots: number;
  readonly toKnots: number | null;
}

/** The Beaufort scale (WMO-No. 306, Manual on Codes, volume I.1, section E), force 0 first. */
export const BEAUFORT: readonly BeaufortForce[] = [
  { name: 'calm', fromKnots: 0, toKnots: 0 },
  { name: 'light air', fromKnots: 1, toKnots: 3 },
  { name: 'light breeze', fromKnots: 4, toKnots: 6 },
  { name: 'gentle breeze', fromKnots: 7, toKnots: 10 },
  { name: 'moderate breeze', fromKnots: 11, toKnots: 16 },
  { name: 'fresh breeze', fromKnots: 17, toKnots: 21 },
  { name: 'strong breeze', fromKnots: 22, toKnots: 27 },
  { name: 'near gale', fromKnots: 28, toKnots: 33 },
  { name: 'gale', fromKnots: 34, toKnots: 40 },
  { name: 'strong gale', fromKnots: 41, toKnots: 47 },
  { name: 'storm', fromKnots: 48, toKnots: 55 },
  { name: 'violent storm', fromKnots: 56, toKnots: 63 },
  { name: 'hurricane', fromKnots: 64, toKnots: null },
];

export interface SeaState {
  readonly name: string;
  /** Height of the waves in metres up to which it is meant; `null` for the last. */
  readonly toMetres: number | null;
}

/** State of the sea (WMO-No. 306, Manual on Codes, volume I.1, code table 3700), 0 first. */
export const SEA_STATES: readonly SeaState[] = [
  { name: 'calm, glassy', toMetres: 0 },
  { name: 'calm, rippled', toMetres: 0.1 },
  { name: 'smooth', toMetres: 0.5 },
  { name: 'slight', toMetres: 1.25 },
  { name: 'moderate', toMetres: 2.5 },
  { name: 'rough', toMetres: 4 },
  { name: 'very rough', toMetres: 6 },
  { name: 'high', toMetres: 9 },
  { name: 'very high', toMetres: 14 },
  { name: 'phenomenal', toMetres: null },
];
