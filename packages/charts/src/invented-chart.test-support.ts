import type { ChartDescription, ChartLine, ChartMark, ChartPanel } from './model.ts';

/** Invented curves for tests of drawing: no engine made them. */
export interface Invention {
  combinations: number;
  pullsEach: number;
  names: string[];
  supercharged: boolean;
  nodes: number;
}

const SPEEDS: [low: number, high: number] = [3000, 6500];

const share = (x: number) => (x - SPEEDS[0]) / (SPEEDS[1] - SPEEDS[0]);
const torqueOf = (combination: number, x: number) =>
  365 +
  95 * Math.sin(share(x) * (2.4 - 0.25 * combination)) -
  40 * share(x) ** 2 +
  4 * combination * share(x) -
  6 * combination;
const wobble = (x: number, pull: number) =>
  1 + 0.004 * Math.sin(x / (90 + 11 * pull) + 2 * pull) + 0.002 * (pull % 3) - 0.002;

/** A trial's chart as the views make it: power, torque, boost and gain of a few combinations. */
export function inventedChart(invention: Partial<Invention> = {}): ChartDescription {
  const { combinations = 2, pullsEach = 3, nodes = 71, supercharged = true } = invention;
  const names = invention.names ?? [
    'base cam',
    '12° longer cam',
    '12° longer cam, single plane intake',
    'taller filter',
  ];
  const x = Array.from(
    { length: nodes },
    (_, index) => SPEEDS[0] + (index / (nodes - 1)) * (SPEEDS[1] - SPEEDS[0]),
  );
  const every = Array.from({ length: combinations }, (_, index) => index);
  const key = (combination: number) => String.fromCharCode(65 + combination);

  const panel = (
    id: string,
    title: string,
    unit: string,
    note: string,
    of: (combination: number, x: number) => number,
  ): ChartPanel => {
    const lines = every.flatMap((combination): ChartLine[] => {
      const style = { combination };
      const pulls = Array.from(
        { length: pullsEach },
        (_, pull): ChartLine => ({
          id: `${id} ${combination} ${pull}`,
          style,
          weight: 'pull',
          x,
          y: x.map((speed) => of(combination, speed) * wobble(speed, pull + 3 * combination)),
          label: null,
        }),
      );
      const mean = x.map((speed) => of(combination, speed) * wobble(speed, combination));
      const value = `${(mean.at(-1) ?? 0).toFixed(unit === 'psi' ? 1 : 0)} ${unit}`;
      const label = { key: key(combination), name: names[combination] ?? '', value };
      return [...pulls, { id: `${id} ${combination}`, style, weight: 'mean', x, y: mean, label }];
    });
    return {
      id,
      title,
      unit,
      note,
      decimals: 0,
      share: 1,
      zeroLine: false,
      lines,
      bands: [],
      marks: [],
    };
  };

  const peaks = ({ lines }: ChartPanel, unit: string): ChartMark[] =>
    lines
      .filter(({ weight }) => weight === 'mean')
      .map(({ style, y }) => {
        const best = y.reduce<number>(
          (top, height, index) => ((height ?? 0) > (y[top] ?? 0) ? index : top),
          0,
        );
        const stillClimbing = best === y.length - 1;
        const figure = `${(y[best] ?? 0).toFixed(0)} ${unit}`;
        const speed = Math.round(x[best] ?? 0).toLocaleString('en-US');
        return {
          style,
          x: x[best] ?? 0,
          y: y[best] ?? 0,
          text: stillClimbing ? `${figure}, still climbing` : `${figure} at ${speed}`,
          stillClimbing,
        };
      });

  const power = {
    ...panel('power', 'Power', 'hp', 'SAE J1349', (one, speed) => (torqueOf(one, speed) * speed) / 5252),
    share: 1.6,
  };
  const torque = panel('torque', 'Torque', 'lb-ft', 'SAE J1349', torqueOf);
  const boost = {
    ...panel('boost', 'Boost', 'psi', 'manifold', (one, speed) => 2.2 + (8.2 - one) * share(speed) ** 1.2),
    share: 0.8,
  };
  const difference = x.map((speed) => ((torqueOf(1, speed) - torqueOf(0, speed)) * speed) / 5252);
  const gain: ChartPanel = {
    id: 'gain',
    title: 'Gain, B − A',
    unit: 'hp',
    note: 'band 95 % over the whole window',
    decimals: 0,
    share: 1,
    zeroLine: true,
    lines: [
      {
        id: 'gain',
        style: 'ink',
        weight: 'mean',
        x,
        y: difference,
        label: { key: 'B − A', name: '', value: null },
      },
    ],
    bands: [
      {
        style: 'ink',
        x,
        low: difference.map((value) => value - 4),
        high: difference.map((value) => value + 4),
      },
    ],
    marks: [],
    rules: [{ x: 4600, text: 'clear above 4,600', side: 'right' }],
  };
  return {
    xTitle: 'Engine speed',
    xUnit: 'rpm',
    xRange: SPEEDS,
    xWindow: { range: [4000, 6500], text: 'averages from 4,000 to 6,500 rpm' },
    panels: [
      { ...power, marks: peaks(power, 'hp') },
      { ...torque, marks: peaks(torque, 'lb-ft') },
      ...(supercharged ? [boost] : []),
      ...(combinations > 1 ? [gain] : []),
    ],
    decimalMark: '.',
    alternative: 'Power, torque, boost and gain over engine speed. B & A cross below 4,000 rpm.',
  };
}
