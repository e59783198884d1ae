/**
 * What a reading must lie in to be air at an engine's inlet at all. Wide on purpose: outside, a wrong unit or a slipped point is
 * certain. Bounds are common practice, no source: the highest roads have about 50 kPa, the lowest valleys 108 kPa.
 */
export const READING_LIMITS = {
  /** Pa */
  pressure: { low: 40_000, high: 120_000 },
  /** K: -60 °C to 80 °C */
  temperature: { low: 213.15, high: 353.15 },
  /** 1: beyond saturation is flagged, far beyond is a percentage without its sign */
  relativeHumidity: { low: 0, high: 1.5 },
  /** m */
  altitude: { low: -500, high: 9000 },
} as const;
