import { heightAt } from './clip.ts';
import { endMark } from './end-mark.ts';
import { drawMapLink } from './map-link.ts';
import type { DrawSize, MapDescription, MapGeometry, SceneNode } from './model.ts';
import { drawnStyle } from './palette.ts';
import { proportionsFor } from './proportions.ts';
import { straight } from './scene-node.ts';
import { THEMES } from './theme.ts';

/**
 * The cursor of a stack, laid over a drawn map: at this engine speed each combination's own mark on its operating line, with
 * short hairs to it, and a link from the first to the second: where the change moved it to. A combination that has no point there
 * has no mark.
 */
export function drawMapCursor(
  map: MapDescription,
  geometry: MapGeometry,
  engineSpeed: number,
  size: DrawSize,
): SceneNode[] {
  const { hairline, cursorMark, text } = proportionsFor(size);
  const theme = THEMES[size.theme];
  const across = (value: number) => placed(value, geometry.xRange, geometry.left, geometry.right);
  const up = (value: number) => placed(value, geometry.yRange, geometry.bottom, geometry.top);
  const places = map.operating.flatMap((line) => {
    const flow = heightAt(line.engineSpeed, line.x, engineSpeed);
    const ratio = heightAt(line.engineSpeed, line.y, engineSpeed);
    if (flow === null || ratio === null) return [];
    const [x, y] = [across(flow), up(ratio)];
    if (x < geometry.left || x > geometry.right || y < geometry.top || y > geometry.bottom) return [];
    return [{ line, x, y }];
  });
  const [first, second] = map.operating.map((line) => places.find((one) => one.line === line));
  const link =
    first && second
      ? drawMapLink(
          first,
          second,
          { colour: theme.ink, widthPx: 0.1 * text, markPx: cursorMark, opacity: 1 },
          0.45 * text,
        )
      : [];
  const marks = places.flatMap(({ line, x, y }) => {
    const { colour, mark: shape } = drawnStyle(line.style, size.theme);
    const hair = { colour: theme.ink, widthPx: hairline, opacity: 0.55 };
    return [
      straight(Math.max(geometry.left, x - text), y, Math.min(geometry.right, x + text), y, hair),
      straight(x, Math.max(geometry.top, y - text), x, Math.min(geometry.bottom, y + text), hair),
      endMark(shape, x, y, { colour, ground: theme.card, radiusPx: cursorMark }),
    ];
  });
  return [...link, ...marks];
}

const placed = (value: number, [low, high]: [number, number], from: number, to: number): number =>
  from + ((value - low) / (high - low)) * (to - from);
