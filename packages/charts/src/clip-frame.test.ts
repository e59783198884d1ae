import { describe, expect, test } from 'vitest';
import { heightAt } from './clip.ts';
import { drawClipFrame } from './clip-frame.ts';
import { clipFrameKey, clipSeconds } from './clip-moment.ts';
import { leaves } from './fade.ts';
import { inventedClip as clip } from './invented-clip.test-support.ts';
import type { ChartLine, Scene } from './model.ts';
import { drawnStyle } from './palette.ts';
import { drawStill } from './still.ts';
import { sceneToSvg } from './svg.ts';
import { overlappingTexts, textBoxes, textsOutside } from './text-boxes.test-support.ts';

const SIZE = { width: 1920, height: 1080, theme: 'dark', ground: true } as const;
const frameAt = (seconds: number): Scene => drawClipFrame(clip, seconds, SIZE);
const textsOf = (scene: Scene) => textBoxes(scene).map(({ text }) => text);
const times = Array.from({ length: 4 * 15 + 1 }, (_, frame) => frame / 15);
const lineOf = (step: number, id: string): ChartLine => {
  const { body } = clip.steps[step]!.still;
  if (body.kind !== 'stack') throw new Error('not a stack');
  return body.chart.panels.flatMap(({ lines }) => lines).find((line) => line.id === id)!;
};
/** Right ends of the paths in the colour of a combination. */
const reachOf = (scene: Scene, combination: number): number[] =>
  leaves(scene.nodes)
    .filter(
      ({ tag, attributes }) =>
        tag === 'path' &&
        attributes.fill === 'none' &&
        attributes.stroke === drawnStyle({ combination }, 'dark').colour,
    )
    .map(({ attributes }) => Number(/([\d.]+),[\d.]+$/u.exec(String(attributes.d))?.[1] ?? 0));

describe('a clip in time', () => {
  test('is as long as its steps, and equal keys are equal frames, in any order', () => {
    expect(clipSeconds(clip)).toBe(4);
    const seen = new Map<string, string>();
    for (const at of [...times, ...times.toReversed()]) {
      const key = clipFrameKey(clip, at);
      const svg = sceneToSvg(frameAt(at));
      expect(svg, key).toBe(seen.get(key) ?? svg);
      seen.set(key, svg);
    }
    // Frames that move have keys of their own; those that stand share one a step.
    expect(seen.size).toBeGreaterThan(25);
    expect(seen.size).toBeLessThan(times.length - 8);
  });

  test.each([0, 1, 2, 3])(
    'step %i ends with its still, and stands as it for the rest of its time',
    (step) => {
      const still = sceneToSvg(drawStill(clip.steps[step]!.still, SIZE));
      for (const at of [0.9, 0.99]) expect(sceneToSvg(frameAt(step + at))).toBe(still);
    },
  );

  test('before its begin and after its end it has its first and its last picture', () => {
    expect(clipFrameKey(clip, -1)).toBe(clipFrameKey(clip, 0));
    expect(sceneToSvg(frameAt(99))).toBe(sceneToSvg(drawStill(clip.steps[3]!.still, SIZE)));
  });

  test('a step that is there at once does not move, and one without time is passed over', () => {
    const steps = clip.steps.map((step, index) => ({
      ...step,
      drawingShare: 0,
      seconds: index === 1 ? 0 : 1,
    }));
    const keys = new Set(
      times.filter((at) => at % 1 > 0.45).map((at) => clipFrameKey({ steps }, Math.min(at, 2.9))),
    );
    expect([...keys]).toEqual(['0 1 whole', '2 1 whole', '3 1 whole']);
    expect(() => clipFrameKey({ steps: [] }, 0)).toThrow('without a step');
  });
});

describe('lines that draw themselves', () => {
  const titles = (scene: Scene, step: number) => {
    const still = textBoxes(drawStill(clip.steps[step]!.still, SIZE));
    const axis = still.filter(({ text }) => /^[+−]?[\d,]+$|^(Power|Torque|Gain)/u.test(text));
    const drawn = textBoxes(scene);
    const pill = drawn.find(({ text }) => /^[\d,]+ rpm$/u.test(text));
    // A figure of the axis that the running engine speed stands over is not drawn: half a figure is worse than none.
    const isCovered = ({ left, right, top }: (typeof axis)[number]) =>
      pill !== undefined &&
      Math.abs(top - pill.top) < pill.sizePx &&
      left < pill.right + 0.6 * pill.sizePx &&
      right > pill.left - 0.6 * pill.sizePx;
    return {
      axis: axis.filter((one) => !isCovered(one)),
      drawn: axis
        .filter((one) => !isCovered(one))
        .map((one) => drawn.find((other) => other.text === one.text && other.top === one.top)),
    };
  };

  test.each([0, 1, 2])('step %i has its axes from its first frame on, where its still has them', (step) => {
    for (const at of [0.3, 0.45, 0.6]) {
      const { axis, drawn } = titles(frameAt(step + at), step);
      expect(axis.length).toBeGreaterThan(8);
      expect(drawn).toEqual(axis);
    }
  });

  test('what draws itself grows to the right; what is there already does not move', () => {
    const reaches = [1.3, 1.4, 1.5, 1.6].map((at) => Math.max(...reachOf(frameAt(at), 1)));
    expect(reaches).toEqual(reaches.toSorted((one, other) => one - other));
    expect(new Set(reaches).size).toBe(4);
    expect(reachOf(frameAt(1.3), 0)).toEqual(reachOf(frameAt(1.95), 0));
  });

  test('the running figure is what its curve has at the engine speed that runs with it', () => {
    let read = 0;
    for (const at of times.filter((time) => time < 2)) {
      const texts = textsOf(frameAt(at));
      const speeds = texts.filter((text) => /^[\d,]+ rpm$/u.test(text));
      const said = texts.indexOf(at < 1 ? 'A' : 'B');
      if (speeds.length === 0) continue;
      const figure = Number(/^([\d.]+) hp$/u.exec(texts[said + 1] ?? '')?.[1]);
      const { x, y } = lineOf(at < 1 ? 0 : 1, at < 1 ? 'power 0' : 'power 1');
      const speed = Number(speeds[0]!.replace(/,| rpm/gu, ''));
      expect(figure).toBe(Math.round(heightAt(x, y, speed)!));
      read += 1;
    }
    expect(read).toBeGreaterThan(10);
  });

  test('name and figure at the end come when the line has come there, a peak when it is passed', () => {
    const early = textsOf(frameAt(0.3));
    const late = textsOf(frameAt(0.9));
    expect(early).not.toContain('base cam');
    expect(early.filter((text) => text.includes(' at '))).toEqual([]);
    expect(late).toContain('base cam');
    expect(late.filter((text) => text.includes(' at '))).toHaveLength(2);
    const passed = textsOf(frameAt(0.5));
    expect(passed).not.toContain('base cam');
    expect(passed.filter((text) => text.includes('lb-ft at'))).toHaveLength(1);
  });

  test('a band comes with its line, and a rule when the lines it speaks of are there', () => {
    const bands = (scene: Scene) =>
      leaves(scene.nodes)
        .filter(({ attributes }) => attributes['fill-opacity'] === 0.15)
        .map(({ attributes }) =>
          Math.max(
            ...String(attributes.d)
              .match(/[\d.]+(?=,)/gu)!
              .map(Number),
          ),
        );
    const [half, whole] = [frameAt(2.5), frameAt(2.9)];
    expect(bands(half)[0]).toBeLessThan(bands(whole)[0]! - 200);
    expect(textsOf(half)).not.toContain('clear above 4,600');
    expect(textsOf(whole)).toContain('clear above 4,600');
  });

  test('no running figure leaves the picture or lies on a name or an axis figure but that under the running speed', () => {
    for (const size of [SIZE, { ...SIZE, width: 1080 }, { ...SIZE, width: 1080, height: 1920 }]) {
      for (const at of [0.2, 0.4, 0.5, 0.57, 0.59, 1.4, 1.55, 1.65, 1.69, 2.5, 2.68]) {
        const scene = drawClipFrame(clip, at, size);
        const boxes = textBoxes(scene);
        expect(textsOutside(boxes, scene)).toEqual([]);
        const speed = boxes.findLast(({ text }) => /^[\d,]+ rpm$/u.test(text))?.text ?? 'none';
        const other = boxes.filter(({ text }) => text !== speed);
        expect(
          overlappingTexts(other).filter((pair) => /base cam|longer cam \//u.test(pair)),
          `${at}`,
        ).toEqual([]);
      }
    }
  });
});

test('rows of a table come one after the other', () => {
  const counts = [3.3, 3.5, 3.65, 3.85, 3.95].map(
    (at) => textsOf(frameAt(at)).filter((text) => /^[3-6]000$/u.test(text)).length,
  );
  expect(counts).toEqual(counts.toSorted((one, other) => one - other));
  expect(counts[0]).toBeLessThan(3);
  expect(counts.at(-1)).toBe(4);
});

test('from step to step, what both have stands and nothing is drawn through a layer', () => {
  const [before, after] = [0.95, 1.95].map(
    (at) => new Set(leaves(frameAt(at).nodes).map((node) => JSON.stringify(node))),
  );
  for (const at of [1.05, 1.1, 1.15, 1.2]) {
    const nodes = leaves(frameAt(at).nodes);
    const stands = nodes.filter(
      (node) => before!.has(JSON.stringify(node)) && after!.has(JSON.stringify(node)),
    );
    expect(stands.length).toBeGreaterThan(20);
    expect(nodes.filter(({ attributes }) => attributes.opacity !== undefined)).toEqual([]);
  }
  // First goes what was, then comes what is new: at no time are both headlines there.
  const heads = times.map(
    (at) => textsOf(frameAt(at)).filter((text) => /baseline|same pulley/u.test(text)).length,
  );
  expect(Math.max(...heads)).toBe(1);
});
