import { inventedChart } from './invented-chart.test-support.ts';
import type { ChartDescription, ClipDescription, PictureBody, StillDescription } from './model.ts';

const still = (headline: string, body: PictureBody): StillDescription => ({
  headline,
  subline: '±4 hp (95 %) · 3 pulls against 2, same day · SAE J1349',
  body,
  footer: ['3.8 L straight six, gasoline · intake air 84 °F, factor 1.021', 'Invented data'],
  warning: null,
  signature: null,
  alternative: 'Invented curves.',
});

const REACH: Record<string, [number, number]> = { power: [200, 560], torque: [320, 480], gain: [-15, 25] };
const whole = inventedChart({ pullsEach: 1, supercharged: false });

/** Some panels with the lines of some combinations, at the scale of all. */
function part(panels: string[], combinations: number[]): ChartDescription {
  const isShown = ({ style }: { style: 'ink' | { combination: number } }) =>
    style === 'ink' || combinations.includes(style.combination);
  const chosen = whole.panels.filter(({ id }) => panels.includes(id));
  return {
    ...whole,
    panels: chosen.map((panel) => ({
      ...panel,
      reach: REACH[panel.id]!,
      lines: panel.lines.filter(isShown),
      marks: panel.marks.filter(isShown),
    })),
  };
}

/** A clip as the views make it, of invented curves: baseline, changed beside it, gain, table. */
export const inventedClip: ClipDescription = {
  steps: [
    {
      id: 'baseline',
      still: still('The baseline: base cam', {
        kind: 'stack',
        chart: part(['power', 'torque'], [0]),
      }),
      seconds: 1,
      drawingShare: 0.6,
      drawn: 'all',
    },
    {
      id: 'changed',
      still: still('12° longer cam, same pulley', {
        kind: 'stack',
        chart: part(['power', 'torque'], [0, 1]),
      }),
      seconds: 1,
      drawingShare: 0.6,
      drawn: ['power 1', 'power 1 0', 'torque 1', 'torque 1 0'],
    },
    {
      id: 'gain',
      still: still('Longer cam: +15 hp on average', {
        kind: 'stack',
        chart: part(['power', 'gain'], [0, 1]),
      }),
      seconds: 1,
      drawingShare: 0.6,
      drawn: ['gain'],
    },
    {
      id: 'table',
      still: still('Speed by speed', {
        kind: 'table',
        columns: [
          { text: 'Engine speed', unit: 'rpm', style: 'ink' },
          { text: 'A', unit: 'hp', style: { combination: 0 } },
          { text: 'B', unit: 'hp', style: { combination: 1 } },
        ],
        rows: [3000, 4000, 5000, 6000].map((speed) => [
          { text: String(speed), style: 'ink' },
          { text: String(speed / 12), style: { combination: 0 } },
          { text: String(speed / 12 + 9), style: { combination: 1 }, strong: true },
        ]),
      }),
      seconds: 1,
      drawingShare: 0.8,
      drawn: 'all',
    },
  ],
};
