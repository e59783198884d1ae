import { type Box, type CoveredColumns, overlaps, shareCrossed } from './columns.ts';
import type { ChartRule, SceneNode } from './model.ts';
import type { Proportions } from './proportions.ts';
import { straight, textAt } from './scene-node.ts';
import { textWidth } from './text-width.ts';
import type { Theme } from './theme.ts';

/** A text that lies on curves over more than this share of its width would not be read. */
const MOST_CROSSED = 0.35;
const FOOT = 0.35;

/**
 * Speeds ruled through one panel, each with its words beside it on its side, at the top or the bottom, wherever the
 * curves and the band leave more room. Words that find no room are left out: the page says them too.
 */
export function drawPanelRules(
  rules: readonly ChartRule[],
  place: {
    plot: Box;
    xAt: (x: number) => number;
    xRange: readonly [number, number];
    curves: CoveredColumns[];
    edges: CoveredColumns[];
  },
  { text, hairline }: Proportions,
  theme: Theme,
): SceneNode[] {
  const taken: Box[] = [];
  return rules
    .filter(({ x }) => x >= place.xRange[0] && x <= place.xRange[1])
    .flatMap((rule) => {
      const x = place.xAt(rule.x);
      const { top, bottom } = place.plot;
      const box = rule.text === '' ? null : boxFor(rule, x, place, taken, text);
      if (box) taken.push(box);
      const foot = rule.side === 'right' ? FOOT * text : -FOOT * text;
      const look = { colour: theme.ink, widthPx: 1.5 * hairline };
      return [
        straight(x, top, x, bottom, look),
        straight(x, top, x + foot, top, look),
        straight(x, bottom, x + foot, bottom, look),
        ...(box
          ? [
              textAt(box.left, (box.top + box.bottom) / 2 + 0.36 * text, rule.text, {
                sizePx: text,
                face: 'sansStrong',
                colour: theme.ink,
              }),
            ]
          : []),
      ];
    });
}

function boxFor(
  { text: words, side }: ChartRule,
  x: number,
  { plot, curves, edges }: { plot: Box; curves: CoveredColumns[]; edges: CoveredColumns[] },
  taken: readonly Box[],
  text: number,
): Box | null {
  const width = textWidth(words, text, 'sansStrong');
  const lefts =
    side === 'right' ? [x + 0.5 * text, x - 0.5 * text - width] : [x - 0.5 * text - width, x + 0.5 * text];
  const tops = [plot.top + 0.15 * text, plot.bottom - 1.35 * text];
  let best: { box: Box; cost: number } | null = null;
  for (const [beside, left] of lefts.entries()) {
    for (const top of tops) {
      const box = { left, right: left + width, top, bottom: top + 1.2 * text };
      if (left < plot.left || box.right > plot.right || taken.some((other) => overlaps(box, other))) continue;
      const crossed = (covered: CoveredColumns[]) =>
        covered.reduce((sum, one) => sum + shareCrossed(box, one), 0);
      const onCurves = crossed(curves);
      if (onCurves > MOST_CROSSED) continue;
      const cost = 10 * onCurves + 2 * crossed(edges) + beside;
      if (best === null || cost < best.cost) best = { box, cost };
    }
  }
  return best?.box ?? null;
}
