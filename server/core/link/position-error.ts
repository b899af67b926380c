import type { Point } from '../math/local-plane.js';

/** Variances of a place in km²: east, north, and of the two together. */
export interface Variance {
  readonly ee: number;
  readonly en: number;
  readonly nn: number;
}

/**
 * How well a place can be judged from the shore, with landmarks and a map: standard deviations of the
 * distance, as a share of it, and of the bearing; no place is known better than `LEAST`. Where it is
 * not said where the observer stood, `UNKNOWN_STAND` holds either way. Common practice, no source.
 */
const DISTANCE_ERROR = 0.07;
const BEARING_ERROR = (3 * Math.PI) / 180;
const LEAST = 0.03;
const UNKNOWN_STAND = 0.15;

/** Error of a place stated by an observer at `stand`: an ellipse whose long axis mostly points there. */
export function positionError(place: Point, stand: Point | null): Variance {
  if (stand === null) return roundError(UNKNOWN_STAND);
  const [east, north] = [place[0] - stand[0], place[1] - stand[1]];
  const along2 = DISTANCE_ERROR ** 2 + (LEAST / Math.max(LEAST, Math.hypot(east, north))) ** 2;
  const across2 = BEARING_ERROR ** 2 + (LEAST / Math.max(LEAST, Math.hypot(east, north))) ** 2;
  return {
    ee: along2 * east ** 2 + across2 * north ** 2 + least2(east, north),
    en: (along2 - across2) * east * north,
    nn: along2 * north ** 2 + across2 * east ** 2 + least2(east, north),
  };
}

/** Who stands beside the birds still does not know their place better than `LEAST`. */
function least2(east: number, north: number): number {
  return Math.max(0, LEAST ** 2 - east ** 2 - north ** 2);
}

/** The same error in every direction; km. */
export function roundError(kilometres: number): Variance {
  return { ee: kilometres ** 2, en: 0, nn: kilometres ** 2 };
}

export function addVariance(a: Variance, b: Variance): Variance {
  return { ee: a.ee + b.ee, en: a.en + b.en, nn: a.nn + b.nn };
}

/** Standard deviation in any one direction, all directions taken together; km. */
export function meanError({ ee, nn }: Variance): number {
  return Math.sqrt((ee + nn) / 2);
}

/** One place in ten is put down three times as badly (common practice, no source). */
const BADLY = 0.1;
const BADLY_BY = 3;

/** Density per km² of an error of so many kilometres east and north. */
export function densityOfError([east, north]: Point, variance: Variance): number {
  return (
    (1 - BADLY) * normalDensity(east, north, variance, 1) +
    BADLY * normalDensity(east, north, variance, BADLY_BY ** 2)
  );
}

function normalDensity(east: number, north: number, v: Variance, times: number): number {
  const determinant = v.ee * v.nn - v.en ** 2;
  const squared = (v.nn * east ** 2 - 2 * v.en * east * north + v.ee * north ** 2) / determinant;
  return Math.exp(-squared / (2 * times)) / (2 * Math.PI * Math.sqrt(determinant) * times);
}

/** Several observers' places of one flock taken together, each by how well it is known. */
export function combinePlaces(
  places: readonly { readonly point: Point; readonly variance: Variance }[],
): { readonly point: Point; readonly variance: Variance } | null {
  const [first, ...others] = places;
  if (first === undefined) return null;
  return others.reduce((known, { point, variance }) => {
    // Gain of a Kalman update: known variance over the sum of both.
    const sum = addVariance(known.variance, variance);
    const determinant = sum.ee * sum.nn - sum.en ** 2;
    const { ee, en, nn } = known.variance;
    const gain = {
      ee: (ee * sum.nn - en * sum.en) / determinant,
      en: (en * sum.ee - ee * sum.en) / determinant,
      ne: (en * sum.nn - nn * sum.en) / determinant,
      nn: (nn * sum.ee - en * sum.en) / determinant,
    };
    const [east, north] = [point[0] - known.point[0], point[1] - known.point[1]];
    return {
      point: [
        known.point[0] + gain.ee * east + gain.en * north,
        known.point[1] + gain.ne * east + gain.nn * north,
      ],
      variance: {
        ee: ee - gain.ee * ee - gain.en * en,
        en: en - gain.ee * en - gain.en * nn,
        nn: nn - gain.ne * en - gain.nn * nn,
      },
    };
  }, first);
}
