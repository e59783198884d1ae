import type { ChartDescription } from '@pullbook/charts';

/** A chart of four panels with many long lines, for timing the drawing. */
export function busyChart(lines: number, points: number): ChartDescription {
  const x = Array.from({ length: points }, (_, point) => 2500 + (4000 * point) / points);
  const panel = (id: string, height: number) => ({
    id,
    title: id,
    unit: 'hp',
    note: '',
    decimals: 1,
    share: 1,
    zeroLine: false,
    bands: [],
    marks: [],
    lines: Array.from({ length: lines }, (_, line) => ({
      id: `${id}-${line}`,
      style: { combination: line % 8 },
      weight: 'pull' as const,
      x,
      y: x.map((speed, point) => height + line + speed / 50 + Math.sin(point / 9 + line)),
      label: null,
    })),
  });
  return {
    xTitle: 'Engine speed',
    xUnit: 'rpm',
    xRange: [2500, 6500],
    xWindow: null,
    panels: [panel('power', 200), panel('torque', 400), panel('boost', 5), panel('gain', 0)],
    decimalMark: '.',
    alternative: 'Many lines, for timing.',
  };
}
