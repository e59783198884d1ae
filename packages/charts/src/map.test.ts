import { describe, expect, test } from 'vitest';
import { inventedMap, type MapInvention } from './invented-map.test-support.ts';
import { drawMap } from './map.ts';
import type { DrawSize, MapDescription, Scene, SceneNode } from './model.ts';
import { drawnStyle } from './palette.ts';
import { overlappingTexts, textBoxes, textsOutside } from './text-boxes.test-support.ts';
import { THEMES } from './theme.ts';

const WIDE: DrawSize = { width: 640, height: 560, text: 13, theme: 'light', ground: true };
const NARROW: DrawSize = { width: 358, height: 440, text: 13, theme: 'dark', ground: true };
const SIZES: [string, DrawSize][] = [
  ['wide', WIDE],
  ['large text', { ...WIDE, width: 1200, height: 900, text: 20 }],
  ['narrow', NARROW],
  ['telephone', { ...NARROW, width: 320, height: 420 }],
  ['compact', { ...WIDE, width: 240, height: 150 }],
];
const MAPS: [string, Partial<MapInvention>][] = [
  ['no combination', { combinations: 0 }],
  ['one combination', { combinations: 1 }],
  ['two', {}],
  ['four', { combinations: 4 }],
  [
    'four with long names',
    { combinations: 4, names: Array(4).fill('a name that is much too long for its line') },
  ],
  ['one line of speed', { speeds: [45], hasPoints: false }],
];

const all = (nodes: SceneNode[]): SceneNode[] => nodes.flatMap((node) => [node, ...all(node.children)]);
const texts = (scene: Pick<Scene, 'nodes'>): string[] => textBoxes(scene).map(({ text }) => text);
const colourOf = (combination: number, { theme }: DrawSize) => drawnStyle({ combination }, theme).colour;

/** Points of a combination's line. */
function linePoints(scene: Scene, colour: string): [number, number][] {
  const [path] = all(scene.nodes).filter(
    ({ tag, attributes }) => tag === 'path' && attributes.fill === 'none' && attributes.stroke === colour,
  );
  return [...String(path?.attributes.d).matchAll(/[ML](-?[\d.]+),(-?[\d.]+)/gu)].map((match) => [
    Number(match[1]),
    Number(match[2]),
  ]);
}

describe.each(SIZES)('drawMap, %s', (_, size) => {
  test.each(MAPS)('%s: no text leaves the drawing or lies on another', (_name, invention) => {
    const { scene } = drawMap(inventedMap(invention), size);
    const boxes = textBoxes(scene);
    expect(textsOutside(boxes, scene)).toEqual([]);
    expect(overlappingTexts(boxes)).toEqual([]);
  });

  test.each(MAPS)('%s: everything drawn stays in the plot', (_name, invention) => {
    const map = { ...inventedMap(invention), xRange: [20, 55], yRange: [1.2, 2] } as MapDescription;
    const { scene, geometry } = drawMap(map, size);
    const named = size.width < 560 ? map.operating.length : 0;
    const paths = all(scene.nodes).filter(({ attributes }) => attributes.fill === 'none' && attributes.d);
    for (const { attributes } of paths)
      for (const match of String(attributes.d).matchAll(/[ML](-?[\d.]+),(-?[\d.]+)/gu)) {
        expect(Number(match[1])).toBeGreaterThanOrEqual(geometry.left - 0.1);
        expect(Number(match[1])).toBeLessThanOrEqual(geometry.right + 0.1);
        expect(Number(match[2])).toBeGreaterThanOrEqual(geometry.top - 0.1);
        expect(Number(match[2])).toBeLessThanOrEqual(geometry.bottom + 0.1);
      }
    expect(paths.length).toBeGreaterThanOrEqual(named);
  });
});

describe('drawMap', () => {
  test('names every combination, its marked speeds, the edges, the lines of speed and of efficiency', () => {
    const said = texts(drawMap(inventedMap(), WIDE).scene);
    expect(said).toEqual(
      expect.arrayContaining([
        'A',
        'base cam',
        'B',
        '12° longer cam',
        'surge',
        'largest flow',
        '76 %',
        '60,000 rpm',
        '45,000',
      ]),
    );
    for (const speed of ['4,000', '5,000', '6,000'])
      expect(said.filter((text) => text === speed)).toHaveLength(2);
  });

  test('a low one names the combinations, the edges and the highest line of speed alone', () => {
    const said = texts(drawMap(inventedMap({ combinations: 0 }), { ...WIDE, width: 400, height: 240 }).scene);
    expect(said).toEqual(expect.arrayContaining(['surge', '60,000 rpm']));
    expect(
      said.filter((text) => text.endsWith('\u00a0%') || text.endsWith(' %') || text === '45,000'),
    ).toEqual([]);
  });

  test('a narrow one names the combinations in rows on top, and keeps their marked speeds', () => {
    const { scene, geometry } = drawMap(inventedMap(), NARROW);
    const boxes = textBoxes(scene);
    const name = boxes.find(({ text }) => text === '12° longer cam');
    expect(name?.bottom).toBeLessThan(geometry.top);
    expect(boxes.filter(({ text }) => text === '6,000')).toHaveLength(2);
  });

  test('no word lies on the line of a combination', () => {
    for (const [, size] of SIZES) {
      const map = inventedMap({ combinations: 2 });
      const { scene, geometry } = drawMap(map, size);
      const boxes = textBoxes(scene).filter(
        ({ top, bottom }) => top > geometry.top && bottom < geometry.bottom,
      );
      for (const combination of [0, 1]) {
        const inside = linePoints(scene, colourOf(combination, size)).flatMap(([x, y]) =>
          boxes.filter(({ left, right, top, bottom }) => x > left && x < right && y > top && y < bottom),
        );
        // A name may touch the end of its own line by a hair, no more.
        expect(inside.length, `${size.width} ${inside.map(({ text }) => text)}`).toBeLessThanOrEqual(1);
      }
    }
  });

  test('draws a point where the geometry says it is', () => {
    const map = inventedMap({ combinations: 1 });
    const { scene, geometry } = drawMap(map, WIDE);
    const { left, right, top, bottom, xRange, yRange } = geometry;
    const [first] = linePoints(scene, colourOf(0, WIDE));
    const [flow, ratio] = [map.operating[0]!.x[0]!, map.operating[0]!.y[0]!];
    const x = left + ((flow - xRange[0]) / (xRange[1] - xRange[0])) * (right - left);
    const y = bottom - ((ratio - yRange[0]) / (yRange[1] - yRange[0])) * (bottom - top);
    expect(first?.[0]).toBeCloseTo(x, 0);
    expect(first?.[1]).toBeCloseTo(y, 0);
  });

  test('one engine speed on two combinations is linked, from mark to mark', () => {
    const map = inventedMap();
    const [first, second] = map.operating;
    const apart = { ...second!, y: second!.y.map((ratio) => (ratio ?? 1) + 0.3) };
    const linked = drawMap({ ...map, operating: [first!, apart] }, WIDE).scene;
    const alone = drawMap({ ...map, operating: [first!] }, WIDE).scene;
    // In ink; hairs from words to their points are in the combination's colour.
    const links = ({ nodes }: Scene) =>
      all(nodes).filter(({ tag, attributes }) => tag === 'line' && attributes.stroke === THEMES.light.ink);
    // At 4,000, 5,000 and 6,000.
    expect(links(linked)).toHaveLength(3);
    expect(links(alone)).toHaveLength(0);
  });

  test('what was not measured is broken, what was is not', () => {
    const broken = all(drawMap(inventedMap({ combinations: 0 }), WIDE).scene.nodes).filter(
      ({ attributes }) => attributes['stroke-dasharray'] !== undefined,
    );
    // Two lines above the highest measured one, and the estimated edge.
    expect(broken).toHaveLength(3);
  });

  test('combinations are told apart without colour: by their dash and their marks', () => {
    const { nodes } = drawMap(inventedMap(), WIDE).scene;
    const dashOf = (combination: number) =>
      all(nodes).find(
        ({ attributes }) => attributes.fill === 'none' && attributes.stroke === colourOf(combination, WIDE),
      )?.attributes['stroke-dasharray'];
    expect(dashOf(0)).not.toBe(dashOf(1));
    expect(
      all(nodes).filter(({ tag, attributes }) => tag === 'circle' && attributes.fill === colourOf(0, WIDE)),
    ).toHaveLength(3);
  });

  test('writes decimal commas where they are asked for', () => {
    expect(texts(drawMap({ ...inventedMap(), decimalMark: ',' }, WIDE).scene)).toContain('1,5');
  });
});
