import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type StillDescription, THEMES } from '@pullbook/charts';
import { afterAll, expect, test } from 'vitest';
import { inventedChart } from '../../../charts/src/invented-chart.test-support.ts';
import { readPublished } from '../numbers/read-published.ts';
import { stillPdf } from './still-pdf.ts';

const folder = mkdtempSync(join(tmpdir(), 'pullbook-still-pdf-'));
afterAll(() => rmSync(folder, { recursive: true }));

const still: StillDescription = {
  headline: 'Longer cam & same pulley',
  subline: 'SAE J1349',
  body: { kind: 'stack', chart: inventedChart() },
  footer: ['Invented data'],
  warning: null,
  signature: null,
  alternative: 'Power over engine speed.',
};
const SIZE = { width: 1080, height: 1080, theme: 'dark', ground: true } as const;
const PAPER = [1, 3, 5].map((at) => Number.parseInt(THEMES.dark.paper.slice(at, at + 2), 16));
const hasReader = spawnSync('pdftoppm', ['-v']).error === undefined;

/** The picture as a reader that is not ours draws it, as binary PPM: width, height, then the pixels. */
async function drawn(description: StillDescription, ground: boolean) {
  const path = join(folder, 'still.pdf');
  writeFileSync(path, await stillPdf(description, { ...SIZE, ground }));
  const { stdout } = spawnSync('pdftoppm', ['-r', '72', path], { maxBuffer: 1e8 });
  const head = /^P6\n(\d+) (\d+)\n255\n/u.exec(stdout.toString('latin1', 0, 40))!;
  const pixels = stdout.subarray(head[0].length);
  return { width: Number(head[1]), height: Number(head[2]), corner: [...pixels.subarray(0, 3)] };
}

test.skipIf(!hasReader)('is a page of its size with its ground, or bare', async () => {
  expect(await drawn(still, true)).toEqual({ width: 1080, height: 1080, corner: PAPER });
  expect(await drawn(still, false)).toEqual({ width: 1080, height: 1080, corner: [255, 255, 255] });
});

test('names of 200 signs in any script, and signs that steer, leave a file that is read', async () => {
  for (const headline of [
    '長いカム'.repeat(50),
    'كامة أطول '.repeat(20),
    `a\u0000b\u001b\n${'x'.repeat(200)}`,
    '',
  ]) {
    const read = readPublished(await stillPdf({ ...still, headline }, SIZE, { numbers: { headline } }));
    expect(read).toMatchObject({ ok: true, value: { numbers: { headline } } });
    // Held together by a space that does not break.
    expect(read.ok && read.value.texts).toContain('Invented\u00a0data');
  }
});
