/** WGS 84 (EPSG:7030): equatorial radius in metres, flattening. */
export const EQUATOR = 6_378_137;
export const FLATTENING = 1 / 298.257223563;

/** First eccentricity, and its square. */
export const ECCENTRICITY2 = FLATTENING * (2 - FLATTENING);
export const ECCENTRICITY = Math.sqrt(ECCENTRICITY2);
