import type { FittedMap, SpeedLine } from '@pullbook/core/airpath';

/** Stands in for the program's speed lines: the compressor of `reference.py`. Its steepness comes in the map's shape. */
export const analyticSpeedLine = (map: FittedMap, speedRpm: number): SpeedLine => ({
  speedRpm,
  tipMach: Number.NaN,
  surgeFlow: 0,
  peakFlow: 0,
  // Beyond any flow asked for: this compressor does not choke.
  chokeFlow: (4 * speedRpm) / 44_000,
  highestPressureRatio: Number.NaN,
  highestEfficiency: 0.77,
  measuredFlow: null,
  shape: [speedRpm / 44_000, map.shape.numbers.steepness![0]!],
});

export const analyticPressureRatio = ({ shape }: SpeedLine, flow: number): number => {
  const [speed, steepness] = shape as [number, number];
  return 1 + 0.9 * speed * speed * (1 - steepness * ((flow / speed - 0.35) / 0.35) ** 2);
};

/** From its efficiency, with the gas of `reference.py`. */
export const analyticWorkRise = (line: SpeedLine, flow: number): number => {
  const efficiency = 0.77 - 1.2 * (flow / line.shape[0]! - 0.45) ** 2;
  return (analyticPressureRatio(line, flow) ** (287.05 / 1005) - 1) / efficiency;
};

export const analyticMap = (steepness: number): FittedMap => ({
  mapId: null,
  name: 'analytic',
  form: 'points',
  leftEnd: 'not known',
  reference: { pressure: 100_000, temperature: 298 },
  wheelExitDiameter: 0.15,
  isDiameterAssumed: false,
  measuredSpeedRpm: null,
  quality: null,
  spread: { head: 0, efficiency: 0, flow: 0 },
  shape: { kind: 'lines', numbers: { steepness: [steepness] } },
});

/** What stands in the place of the program's `speed-line.ts` in a check of all that comes after it. */
export const IN_PLACE_OF_SPEED_LINES = {
  speedLineAt: analyticSpeedLine,
  pressureRatioOn: analyticPressureRatio,
  workRiseOn: analyticWorkRise,
};
