import type { MapDescription } from './model.ts';

/** An invented map for tests of drawing: no compressor made it. */
export interface MapInvention {
  combinations: number;
  names: string[];
  /** Speeds of the impeller, thousands of r/min. */
  speeds: number[];
  hasPoints: boolean;
}

const topOf = (speed: number) => 1 + 0.95 * (speed / 50) ** 2;
const chokeOf = (speed: number) => 68 * (0.35 + 0.65 * (speed / 60));
const ratioOn = (speed: number, share: number) =>
  1 + (topOf(speed) - 1) * (1 - Math.max(0, share - 0.45) ** 2 / 0.34 - 0.06 * (0.45 - share) ** 2);
const steps = (count: number, from: number, to: number) =>
  Array.from({ length: count }, (_, index) => from + (index / (count - 1)) * (to - from));

/** A map with the lines of some combinations that rise through it and, above, fall apart. */
export function inventedMap(invention: Partial<MapInvention> = {}): MapDescription {
  const {
    combinations = 2,
    names = ['base cam', '12° longer cam', 'smaller pulley', 'smaller pulley, longer cam'],
    speeds = [25, 30, 35, 40, 45, 50, 55, 60],
    hasPoints = true,
  } = invention;
  const speedLines = speeds.map((speed, index) => {
    const shares = steps(40, 0.36, 1);
    return {
      label: index === speeds.length - 1 ? `${speed},000 rpm` : `${speed},000`,
      x: shares.map((share) => share * chokeOf(speed)),
      y: shares.map((share) => ratioOn(speed, share)),
      isMeasured: speed <= 50,
    };
  });
  const efficiency = [0.06, 0.12, 0.19].map((radius, index) => {
    const angles = steps(49, 0, 2 * Math.PI);
    const at = angles.map((angle) => ({
      share: 0.66 + radius * Math.cos(angle),
      speed: 43 + 90 * radius * Math.sin(angle),
    }));
    return {
      label: `${76 - 3 * index} %`,
      x: at.map(({ share, speed }) => share * chokeOf(speed)),
      y: at.map(({ share, speed }) => ratioOn(speed, share)),
    };
  });
  const edgeOf = (share: number) => ({
    x: steps(30, 20, 60).map((speed) => share * chokeOf(speed)),
    y: steps(30, 20, 60).map((speed) => ratioOn(speed, share)),
  });
  const engineSpeed = steps(71, 3000, 6500);
  const operating = Array.from({ length: combinations }, (_, index) => {
    const speedOf = (rpm: number) => ((7.07 + 0.35 * (index > 1 ? 1 : 0)) * rpm) / 1000;
    const shareOf = (rpm: number) => 0.62 + 0.05 * (index % 2) + (0.09 * (rpm - 4500)) / 2000;
    return {
      key: String.fromCharCode(65 + index),
      name: names[index] ?? '',
      style: { combination: index },
      engineSpeed,
      x: engineSpeed.map((rpm) => shareOf(rpm) * chokeOf(speedOf(rpm))),
      y: engineSpeed.map((rpm) => ratioOn(speedOf(rpm), shareOf(rpm))),
      named: [4000, 5000, 6000].map((rpm) => ({ engineSpeed: rpm, text: `${rpm / 1000},000` })),
    };
  });
  return {
    xTitle: 'Air flow',
    xUnit: 'lb/min, corrected to 77 °F and 29.53 inHg',
    yTitle: 'Pressure ratio',
    yNote: 'lines of equal impeller speed, thin ones of equal efficiency',
    xRange: [0, 75],
    yRange: [1, 2.5],
    speedLines,
    efficiency,
    edges: [
      { label: 'surge', ...edgeOf(0.36), isEstimated: false },
      { label: 'largest flow', ...edgeOf(0.98), isEstimated: true },
    ],
    points: hasPoints
      ? {
          x: speedLines.flatMap(({ x }) => x.filter((_, index) => index % 6 === 0)),
          y: speedLines.flatMap(({ y }) => y.filter((_, index) => index % 6 === 0)),
        }
      : null,
    operating,
    decimalMark: '.',
    alternative: 'A compressor map with two lines on which combinations run.',
  };
}
