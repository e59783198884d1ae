import { drawStill, PALETTE, type SceneNode, THEMES } from '@pullbook/charts';
import { describe, expect, test } from 'vitest';
import { INVENTED_BODIES, SHORT_WORDS } from '../../packages/charts/src/invented-still.test-support.ts';
import { textBoxes } from '../../packages/charts/src/text-boxes.test-support.ts';
import { stillPng } from '../../packages/publish/src/index.ts';
import { readPng } from '../../packages/publish/src/png.test-support.ts';
import { contrast, linear, over } from './colour.ts';

/** WCAG 2.2, 1.4.3: texts; 1.4.3 large texts and 1.4.11 graphics. */
const TEXT = 4.5;
const GRAPHIC = 3;

const ratio = (one: string, other: string) => contrast(linear(one), linear(other));
const all = (nodes: SceneNode[]): SceneNode[] => nodes.flatMap((node) => [node, ...all(node.children)]);

test('the measure of contrast gives the published ratios', () => {
  // WCAG 2.2, glossary: 21 for black on white, 1 for a colour on itself; #767676 on white is the usual last grey that passes (4.54).
  expect(ratio('#000000', '#ffffff')).toBeCloseTo(21, 6);
  expect(ratio('#123456', '#123456')).toBe(1);
  expect(ratio('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  expect(ratio('#777777', '#ffffff')).toBeLessThan(TEXT);
});

describe.each(['light', 'dark'] as const)('%s', (name) => {
  const theme = THEMES[name];
  const size = { width: 1920, height: 1080, theme: name };

  test('every word of every kind of picture reads on what it stands on', () => {
    for (const body of Object.values(INVENTED_BODIES)) {
      const nodes = all(
        drawStill({ ...SHORT_WORDS, warning: 'Not for publication', body }, { ...size, ground: true }).nodes,
      );
      const colours = new Set(
        nodes.filter(({ tag }) => tag === 'text').map(({ attributes }) => String(attributes.fill)),
      );
      for (const colour of colours) expect(ratio(colour, theme.paper), colour).toBeGreaterThanOrEqual(TEXT);
      // A word that is seen through would read worse than its colour says.
      const opacities = nodes
        .filter(({ tag }) => tag === 'text' || tag === 'g')
        .flatMap(({ attributes }) => [attributes.opacity, attributes['fill-opacity']])
        .filter((one) => one !== undefined);
      expect(opacities).toEqual([]);
    }
    for (const colour of [theme.ink, theme.softInk])
      expect(ratio(colour, theme.quietChip), `${colour} on what changed`).toBeGreaterThanOrEqual(TEXT);
  });

  test('lines stand out from the ground, and from the tint of a band round them', () => {
    for (const combination of PALETTE) {
      const colour = combination[name];
      expect(ratio(colour, theme.paper), colour).toBeGreaterThanOrEqual(GRAPHIC);
      expect(ratio(colour, over(colour, 0.15, theme.paper)), colour).toBeGreaterThanOrEqual(GRAPHIC);
      expect(ratio(colour, over(theme.ink, 0.15, theme.paper)), colour).toBeGreaterThanOrEqual(GRAPHIC);
    }
    expect(ratio(theme.ink, over(theme.ink, 0.15, theme.paper))).toBeGreaterThanOrEqual(TEXT);
  });

  test('laid over a film, each word is drawn with an edge in the ground that its contrast holds against', () => {
    const still = { ...SHORT_WORDS, body: INVENTED_BODIES.table! };
    const clear = { ...size, ground: false };
    const { width, rgba } = readPng(stillPng(still, clear));
    const scene = drawStill(still, clear);
    const fills = all(scene.nodes)
      .filter(({ tag }) => tag === 'text')
      .map(({ attributes }) => String(attributes.fill));
    const colourOf = (hex: string) => Number.parseInt(hex.slice(1), 16);
    for (const [index, { text, left, right, top, bottom }] of textBoxes(scene).entries()) {
      const fill = fills[index]!;
      expect(ratio(fill, theme.paper), text).toBeGreaterThanOrEqual(TEXT);
      const [ink, ground] = [colourOf(fill), colourOf(theme.paper)];
      const count = { word: 0, edge: 0, clear: 0 };
      for (let y = Math.round(top); y < bottom; y += 1) {
        for (let x = Math.round(left); x < right; x += 1) {
          const at = 4 * (y * width + x);
          const colour = (rgba[at]! << 16) | (rgba[at + 1]! << 8) | rgba[at + 2]!;
          if (rgba[at + 3] === 0) count.clear += 1;
          else if (rgba[at + 3] === 255 && colour === ink) count.word += 1;
          else if (rgba[at + 3] === 255 && colour === ground) count.edge += 1;
        }
      }
      const area = (right - left) * (bottom - top);
      // Its own ink, the edge round it, and the film between: none hides another.
      expect(count.word / area, text).toBeGreaterThan(0.01);
      expect(count.edge / area, text).toBeGreaterThan(0.01);
      expect(count.clear / area, text).toBeGreaterThan(0.01);
    }
  });
});
