import type { SceneNode } from './model.ts';
import type { Proportions } from './proportions.ts';
import { straight, textAt } from './scene-node.ts';
import { shortened, textWidth } from './text-width.ts';
import type { Theme } from './theme.ts';

/**
 * The window that counts, as a dimension line above the panels: its ends are ruled down through every panel. On a
 * narrow drawing its text has a row of its own above; else it stands in the line, or beside it if it is too wide.
 */
export function drawWindowLine(
  text: string,
  [from, to]: readonly [from: number, to: number],
  place: {
    left: number;
    right: number;
    windowMiddle: number;
    frame: { left: number; right: number };
    /** Whether the window goes on beyond the left and the right end of what is shown. */
    goesOn: [left: boolean, right: boolean];
  },
  { text: sizePx, hairline, narrow }: Proportions,
  theme: Theme,
): SceneNode[] {
  const look = { sizePx, face: 'sans', colour: theme.softInk } as const;
  const rule = { colour: theme.softInk, widthPx: hairline };
  const middle = place.windowMiddle;
  const baseline = middle + 0.36 * sizePx;
  const room = 0.5 * sizePx;
  const width = textWidth(text, sizePx, 'sans');
  const ends = [from, to].flatMap((x, side) =>
    place.goesOn[side] ? [] : [straight(x, middle - 0.3 * sizePx, x, middle + 0.3 * sizePx, rule)],
  );
  const whole = [...ends, straight(from, middle, to, middle, rule)];
  const centre = (from + to) / 2;

  if (text === '') return whole;
  if (narrow) {
    const { left, right } = place.frame;
    const shown = shortened(text, right - left, sizePx, 'sans');
    const half = textWidth(shown, sizePx, 'sans') / 2;
    const x = Math.max(left + half, Math.min(centre, right - half));
    return [...whole, textAt(x, middle - 0.65 * sizePx, shown, { ...look, anchor: 'middle' })];
  }
  if (width + 4 * room <= to - from) {
    return [
      ...ends,
      straight(from, middle, centre - width / 2 - room, middle, rule),
      straight(centre + width / 2 + room, middle, to, middle, rule),
      textAt(centre, baseline, text, { ...look, anchor: 'middle' }),
    ];
  }
  const [before, after] = [from - place.left - room, place.right - to - room];
  const beside = shortened(text, Math.max(before, after), sizePx, 'sans');
  if (beside === '') return whole;
  return after >= before
    ? [...whole, textAt(to + room, baseline, beside, look)]
    : [...whole, textAt(from - room, baseline, beside, { ...look, anchor: 'end' })];
}

/** Both ends of the window, ruled through one panel. */
export function drawWindowRules(
  xs: readonly number[],
  panel: { top: number; bottom: number },
  { hairline }: Proportions,
  theme: Theme,
): SceneNode[] {
  const rule = { colour: theme.softInk, widthPx: hairline, dash: [2, 3], opacity: 0.8 };
  return xs.map((x) => straight(x, panel.top, x, panel.bottom, rule));
}
