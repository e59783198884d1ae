import { describe, expect, test } from 'vitest';
import { inventedChart } from './invented-chart.test-support.ts';
import type { ChartDescription, ChartRule, DrawSize, SceneNode } from './model.ts';
import { drawStack } from './stack.ts';
import { textBoxes } from './text-boxes.test-support.ts';
import { zoomed } from './zoom.ts';

const SIZE: DrawSize = { width: 860, height: 740, text: 13, theme: 'light', ground: true };
const all = (nodes: SceneNode[]): SceneNode[] => nodes.flatMap((node) => [node, ...all(node.children)]);

function withRules(rules: ChartRule[]): ChartDescription {
  const chart = inventedChart();
  return {
    ...chart,
    panels: chart.panels.map((panel) => (panel.id === 'gain' ? { ...panel, rules } : panel)),
  };
}

/** Upright lines through the whole height of the gain panel. */
function ruledAt(chart: ChartDescription): { xs: number[]; left: number; right: number; texts: string[] } {
  const { scene, geometry } = drawStack(chart, SIZE);
  const { top, bottom } = geometry.panels.find(({ id }) => id === 'gain')!;
  const near = (value: unknown, wanted: number) => Math.abs(Number(value) - wanted) < 0.02;
  const xs = all(scene.nodes)
    .filter(({ tag, attributes: { x1, x2, y1, y2, stroke } }) => {
      return tag === 'line' && x1 === x2 && near(y1, top) && near(y2, bottom) && stroke === '#14202b';
    })
    .map(({ attributes }) => Number(attributes.x1));
  return { xs, left: geometry.left, right: geometry.right, texts: textBoxes(scene).map(({ text }) => text) };
}

describe('rules through one panel', () => {
  test('stand at their speed, 5,000 of 3,000 to 6,500 being four sevenths across, with their words', () => {
    const { xs, left, right, texts } = ruledAt(withRules([{ x: 5000, text: 'clear above', side: 'right' }]));
    expect(xs).toHaveLength(1);
    expect(xs[0]).toBeCloseTo(left + (4 / 7) * (right - left), 1);
    expect(texts).toContain('clear above');
  });

  test('outside the shown range they are not drawn, nor their words', () => {
    const chart = zoomed(withRules([{ x: 5000, text: 'clear above', side: 'right' }]), [5500, 6500]);
    expect(ruledAt(chart).xs).toEqual([]);
    expect(ruledAt(chart).texts).not.toContain('clear above');
  });

  test('words go to the other side where their own has no room, and are left out where neither has', () => {
    const near = { x: 6450, text: 'clear above 6,450', side: 'right' } as const;
    const { scene, geometry } = drawStack(withRules([near]), SIZE);
    const box = textBoxes(scene).find(({ text }) => text === near.text)!;
    expect(box.right).toBeLessThan(geometry.right);
    const long = {
      ...near,
      x: 4700,
      text: 'words that are much too long for any side of this rule'.repeat(2),
    };
    const drawn = ruledAt(withRules([long]));
    expect(drawn.xs).toHaveLength(1);
    expect(drawn.texts).not.toContain(long.text);
  });
});
