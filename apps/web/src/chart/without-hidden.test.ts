import type { ChartDescription, ChartLine } from '@pullbook/charts';
import { expect, test } from 'vitest';
import { withoutHidden } from './without-hidden.ts';

const line = (id: string, style: ChartLine['style'], weight: ChartLine['weight']): ChartLine => ({
  id,
  style,
  weight,
  x: [1, 2],
  y: [1, 2],
  label: null,
});
const chart: ChartDescription = {
  xTitle: 'Engine speed',
  xUnit: 'rpm',
  xRange: [1, 2],
  xWindow: null,
  panels: [
    {
      id: 'power',
      title: 'Power',
      unit: 'hp',
      note: '',
      decimals: 0,
      share: 1,
      zeroLine: false,
      lines: [
        line('p1', { combination: 0 }, 'pull'),
        line('p2', { combination: 0 }, 'pull'),
        line('A', { combination: 0 }, 'mean'),
        line('B', { combination: 1 }, 'mean'),
        line('gain', 'ink', 'mean'),
      ],
      bands: [],
      marks: [
        { style: { combination: 0 }, x: 2, y: 2, text: 'a', stillClimbing: false },
        { style: { combination: 1 }, x: 2, y: 2, text: 'b', stillClimbing: false },
      ],
    },
  ],
  decimalMark: '.',
  alternative: '',
};
const left = (combinations: number[], pulls: string[]) =>
  withoutHidden(chart, { combinations: new Set(combinations), pulls: new Set(pulls) });

test('a hidden pull takes its line and nothing else', () => {
  expect(left([], ['p1']).panels[0]!.lines.map(({ id }) => id)).toEqual(['p2', 'A', 'B', 'gain']);
  expect(left([], ['A']).panels[0]!.lines).toHaveLength(5);
});

test('a hidden combination takes all that is its own; the gain stays', () => {
  const [panel] = left([0], []).panels;
  expect(panel!.lines.map(({ id }) => id)).toEqual(['B', 'gain']);
  expect(panel!.marks.map(({ text }) => text)).toEqual(['b']);
});

test('nothing hidden is the chart itself', () => expect(left([], [])).toBe(chart));
