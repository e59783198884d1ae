import type { StillDescription, StillSize } from '@pullbook/charts';
import { Resvg } from '@resvg/resvg-js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inventedChart } from '../../../charts/src/invented-chart.test-support.ts';
import { stillPdf } from '../pdf/still-pdf.ts';
import { readPng } from '../png.test-support.ts';
import { stillPng, stillSvg } from '../still-image.ts';
import { readPublished } from './read-published.ts';

const still: StillDescription = {
  headline: 'Longer cam & same pulley: +15 hp <on average>',
  subline: '±4 hp (95 %) · SAE J1349',
  body: { kind: 'stack', chart: inventedChart() },
  footer: ['λ 0.79 · η Δ ρ'],
  warning: null,
  signature: null,
  alternative: 'Power over engine speed.',
};
const SIZE: StillSize = { width: 640, height: 360, theme: 'light', ground: true };
const utf8 = (text: string) => new TextEncoder().encode(text);
const numbers = fc.jsonValue({ depthSize: 'small' });

describe('what is laid in is read back', () => {
  test.each([
    ['svg', 12, async (more: { numbers: unknown }) => utf8(stillSvg(still, SIZE, more))],
    ['png', 3, async (more: { numbers: unknown }) => stillPng(still, SIZE, more)],
    ['pdf', 2, async (more: { numbers: unknown }) => stillPdf(still, SIZE, more)],
  ] as const)('%s', async (kind, numRuns, make) => {
    await fc.assert(
      fc.asyncProperty(numbers, async (wanted) => {
        const read = readPublished(await make({ numbers: wanted }));
        expect(read).toMatchObject({ ok: true, value: { kind } });
        expect(read.ok && JSON.stringify(read.value.numbers)).toBe(JSON.stringify(wanted));
      }),
      { seed: 5, numRuns },
    );
  });

  test('without numbers none are told', async () => {
    for (const bytes of [utf8(stillSvg(still, SIZE)), stillPng(still, SIZE), await stillPdf(still, SIZE)])
      expect(readPublished(bytes)).toMatchObject({ ok: true, value: { numbers: null } });
  });
});

test('SVG and PDF draw the same words', async () => {
  const texts = (bytes: Uint8Array) => {
    const read = readPublished(bytes);
    return read.ok ? read.value.texts : [];
  };
  const svg = texts(utf8(stillSvg(still, SIZE)));
  expect(svg.join(' ')).toContain('Longer cam & same pulley: +15 hp <on average>');
  expect(svg.length).toBeGreaterThan(20);
  expect(texts(await stillPdf(still, SIZE))).toEqual(svg);
});

test('a PNG with numbers is the same picture, and an SVG too', () => {
  const bare = readPng(stillPng(still, SIZE));
  expect(Buffer.compare(readPng(stillPng(still, SIZE, { numbers: [1] })).rgba, bare.rgba)).toBe(0);
  const svg = stillSvg(still, SIZE, { numbers: { a: '<&">' } });
  expect(new Resvg(svg, { font: { loadSystemFonts: false } }).width).toBe(640);
});

test.each([
  ['empty', ''],
  ['words', 'rpm,torque\n1,2\n'],
  ['a PNG that breaks off', '\x89PNG'],
])('%s is refused with what to do', (_, text) => {
  const read = readPublished(utf8(text));
  expect(read.ok).toBe(false);
  expect(read.remarks[0]?.message).toContain('published');
});

test('a damaged block is told, not thrown', () => {
  const svg = stillSvg(still, SIZE, { numbers: { a: 1 } }).replace('{&quot;a&quot;:1}', '{&quot;a&quot;:');
  expect(readPublished(utf8(svg))).toMatchObject({
    ok: false,
    remarks: [{ code: 'published-file-damaged' }],
  });
  const bytes = stillPng(still, SIZE, { numbers: { a: 1 } });
  expect(readPublished(bytes.subarray(0, 60))).toMatchObject({ ok: true, value: { numbers: null } });
});
