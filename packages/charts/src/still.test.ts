import { describe, expect, test } from 'vitest';
import { inventedChart } from './invented-chart.test-support.ts';
import { INVENTED_BODIES, LONG_WORDS, PICTURE_SIZES, SHORT_WORDS } from './invented-still.test-support.ts';
import type { PictureBody, Scene, SceneNode, StillDescription } from './model.ts';
import { drawStill, stillStack } from './still.ts';
import { overlappingTexts, textBoxes, textsOutside } from './text-boxes.test-support.ts';

const BODIES = Object.entries(INVENTED_BODIES);
/** 3840 × 2160 is the same picture: that is asked once below. */
const SIZES = Object.entries(PICTURE_SIZES).filter(([name]) => name !== '4k');
const DARK = { ...PICTURE_SIZES['1080p'], theme: 'dark', ground: true } as const;
const SHORT: StillDescription = { ...SHORT_WORDS, body: INVENTED_BODIES.stack! };
const LONG: StillDescription = { ...LONG_WORDS, body: INVENTED_BODIES['four panels']! };

const all = (nodes: SceneNode[]): SceneNode[] => nodes.flatMap((node) => [node, ...all(node.children)]);
const saidIn = (scene: Scene): string =>
  textBoxes(scene)
    .map(({ text }) => text)
    .join(' ');
const withoutSpaces = (text: string) => text.replaceAll(/\s/gu, '');

describe.each(SIZES)('%s', (_, { width, height, least }) => {
  const size = { width, height, theme: 'light', ground: true } as const;

  test.each(BODIES)(
    '%s: every text is in the frame, apart, large enough, and the data are called invented',
    (_name, body) => {
      for (const words of [SHORT_WORDS, LONG_WORDS]) {
        const scene = drawStill({ ...words, body }, size);
        const boxes = textBoxes(scene);
        expect(textsOutside(boxes, scene)).toEqual([]);
        expect(overlappingTexts(boxes)).toEqual([]);
        for (const { text, sizePx } of boxes) expect(sizePx, text).toBeGreaterThanOrEqual(least);
        expect(boxes.filter(({ text }) => text === '')).toEqual([]);
        // However little room there is.
        expect(withoutSpaces(saidIn(scene))).toContain('inventeddata');
      }
    },
  );

  test('nothing depends on the theme or the ground but colours', () => {
    const boxes = (more: object) =>
      textBoxes(drawStill(SHORT, { ...size, ...more })).map(({ text, left, top }) => [text, left, top]);
    expect(boxes({ theme: 'dark' })).toEqual(boxes({}));
    expect(boxes({ ground: false })).toEqual(boxes({}));
  });

  test('no line of a drawing leaves its frame', () => {
    for (const [name, body] of BODIES) {
      for (const { tag, attributes } of all(drawStill({ ...SHORT_WORDS, body }, size).nodes)) {
        if (tag !== 'line') continue;
        for (const x of [attributes.x1, attributes.x2]) {
          expect(Number(x), name).toBeGreaterThanOrEqual(0);
          expect(Number(x), name).toBeLessThanOrEqual(width);
        }
        for (const y of [attributes.y1, attributes.y2]) {
          expect(Number(y), name).toBeGreaterThanOrEqual(0);
          expect(Number(y), name).toBeLessThanOrEqual(height);
        }
      }
    }
  });
});

test('a wide headline has at most two lines, none smaller than 4.5 % of the height', () => {
  for (const still of [SHORT, LONG]) {
    const headline = drawStill(still, DARK).nodes.filter(({ attributes }) =>
      String(attributes['font-family']).includes('Serif'),
    );
    expect(headline.length).toBeLessThanOrEqual(2);
    for (const { attributes } of headline)
      expect(Number(attributes['font-size'])).toBeGreaterThanOrEqual(0.045 * 1080 - 0.01);
  }
});

test('a still without a ground has none and every word has an edge, with one it covers the frame', () => {
  const [first] = drawStill(SHORT, DARK).nodes;
  expect(first).toMatchObject({ tag: 'rect', attributes: { width: 1920, height: 1080 } });
  const clear = all(drawStill(SHORT, { ...DARK, ground: false }).nodes);
  expect(clear.filter(({ tag }) => tag === 'rect')).toEqual([]);
  const words = clear.filter(({ tag }) => tag === 'text');
  expect(words.length).toBeGreaterThan(10);
  for (const { attributes } of words)
    expect(attributes).toMatchObject({ stroke: '#10171d', 'paint-order': 'stroke' });
});

test('both wide sizes are one picture', () => {
  for (const body of [INVENTED_BODIES.stack!, INVENTED_BODIES.table!, INVENTED_BODIES.facts!]) {
    const small = textBoxes(drawStill({ ...SHORT_WORDS, body }, DARK));
    const large = textBoxes(drawStill({ ...SHORT_WORDS, body }, { ...DARK, width: 3840, height: 2160 }));
    expect(large.map(({ text }) => text)).toEqual(small.map(({ text }) => text));
    large.forEach(({ left, top }, index) => {
      expect(left / 2).toBeCloseTo(small[index]?.left ?? 0, 0);
      expect(top / 2).toBeCloseTo(small[index]?.top ?? 0, 0);
    });
  }
});

test('a mark stands at the right end of the footer, in its own proportions, and no word runs into it', () => {
  const mark = { address: 'data:image/png;base64,', width: 300, height: 100 };
  for (const { width, height } of Object.values(PICTURE_SIZES)) {
    const signed = { ...LONG, signature: { name: 'Invented workshop', mark } };
    const scene = drawStill(signed, { width, height, theme: 'dark', ground: true });
    const image = scene.nodes.find(({ tag }) => tag === 'image')!.attributes;
    const [x, y, across, down] = [image.x, image.y, image.width, image.height].map(Number) as [
      number,
      number,
      number,
      number,
    ];
    expect(across / down).toBeCloseTo(3, 1);
    expect(x + across).toBeLessThanOrEqual(0.98 * width);
    expect(y + down).toBeLessThanOrEqual(height);
    expect(saidIn(scene)).toContain('Inven');
    for (const { text, left, right, top, bottom } of textBoxes(scene))
      expect(right <= x || left >= x + across || bottom <= y || top >= y + down, text).toBe(true);
  }
});

test('what is not for everyone says so to eye and ear', () => {
  const scene = drawStill({ ...SHORT, warning: 'Not for publication' }, DARK);
  expect(saidIn(scene)).toContain('Not for publication');
  expect(scene.alternative).toMatch(/Not for publication\.$/);
});

describe('cards', () => {
  const drawn = (body: PictureBody, size: { width: number; height: number } = DARK) =>
    drawStill({ ...SHORT_WORDS, body }, { ...DARK, ...size });

  test('a table that fits shows every figure, its units, and a sample of each combination in its dash', () => {
    const body = INVENTED_BODIES['one row'] as Extract<PictureBody, { kind: 'table' }>;
    const scene = drawn(body);
    for (const { text } of body.rows[0]!) expect(textBoxes(scene).map((box) => box.text)).toContain(text);
    expect(saidIn(scene)).toContain('rpm');
    const samples = all(scene.nodes).filter(({ attributes }) => attributes.stroke === '#ffa263');
    expect(samples.some(({ attributes }) => attributes['stroke-dasharray'] !== undefined)).toBe(true);
  });

  test('a table that does not fit keeps its last row and says what was left out', () => {
    for (const { width, height } of Object.values(PICTURE_SIZES)) {
      const said = saidIn(drawn(INVENTED_BODIES['forty rows']!, { width, height }));
      expect(said).toContain('12,750');
      expect(said).toMatch(/Every (second|third|fourth|fifth|sixth|\d+th) row/);
    }
    const wide = saidIn(drawn(INVENTED_BODIES['ten columns of combinations']!));
    expect(wide).toMatch(/\d+ of 29 columns/);
    expect(wide).toContain('Gain');
  });

  test('what changed is told by words, by strong letters and by a bar, and is there when others leave', () => {
    const scene = drawn(INVENTED_BODIES['many facts']!, PICTURE_SIZES.square);
    expect(saidIn(scene)).toContain('was another as it was');
    expect(saidIn(scene)).toMatch(/and \d+ more/);
    const bars = all(scene.nodes).filter(
      ({ tag, attributes }) => tag === 'rect' && Number(attributes.width) < 20,
    );
    expect(bars.length).toBeGreaterThan(0);
  });

  test('badges differ by more than colour: a tick, or an empty ring', () => {
    const nodes = all(drawn(INVENTED_BODIES.badges!).nodes);
    expect(nodes.filter(({ tag }) => tag === 'circle')).toHaveLength(6);
    expect(nodes.filter(({ tag, attributes }) => tag === 'path' && attributes.fill === 'none')).toHaveLength(
      4,
    );
  });

  test('a number is by far the largest thing in its picture, and its band stands under it', () => {
    for (const { width, height } of Object.values(PICTURE_SIZES)) {
      const boxes = textBoxes(drawn(INVENTED_BODIES.number!, { width, height }));
      const [largest, next] = boxes.toSorted((one, other) => other.sizePx - one.sizePx);
      const band = boxes.find(({ text }) => text === '\u00b14\u00a0hp (95\u00a0%)')!;
      expect(largest!.text).toBe('+15');
      expect(largest!.sizePx).toBeGreaterThan(2 * next!.sizePx);
      expect(band.top).toBeGreaterThan(largest!.bottom - 0.25 * largest!.sizePx);
    }
  });
});

describe('a set at one scale', () => {
  const set = (ids: number[], reach: [number, number]): StillDescription => {
    const chart = inventedChart({ combinations: 3, pullsEach: 0 });
    const [power] = chart.panels;
    const lines = power!.lines.filter(({ style }) => style !== 'ink' && ids.includes(style.combination));
    return {
      ...SHORT_WORDS,
      body: { kind: 'stack', chart: { ...chart, panels: [{ ...power!, reach, lines, marks: [] }] } },
    };
  };
  const rangesOf = (still: StillDescription, size: { width: number; height: number }) => {
    const { geometry } = stillStack(still, { ...size, theme: 'light', ground: true })!;
    return [geometry.xRange, ...geometry.panels.map(({ yRange }) => yRange)];
  };

  test.each(SIZES)('%s: has the same axes whichever of its lines a picture has', (_, size) => {
    const every = rangesOf(set([0, 1, 2], [205, 512]), size);
    expect(every).toEqual([
      [3000, 6500],
      [200, 550],
    ]);
    for (const ids of [[0], [1], [2], [0, 2], []])
      expect(rangesOf(set(ids, [205, 512]), size)).toEqual(every);
    // What is drawn is never cut off, whatever reach was asked for.
    const [, narrow] = rangesOf(set([0], [300, 310]), size);
    expect(narrow![0]).toBeLessThan(215);
  });

  test('a wide picture has its axes at the same place too', () => {
    const ticksOf = (ids: number[]) =>
      textBoxes(drawStill(set(ids, [205, 512]), DARK))
        .filter(({ text }) => /^[\d,]+$/u.test(text))
        .map(({ text, left, top }) => [text, left, top]);
    expect(ticksOf([0]).length).toBeGreaterThan(8);
    for (const ids of [[1], [2], [0, 1], []]) expect(ticksOf(ids)).toEqual(ticksOf([0]));
  });
});
