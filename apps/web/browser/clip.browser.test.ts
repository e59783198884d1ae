import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import type { Scene, StillDescription } from '@pullbook/charts';
import { build } from 'esbuild';
import { unzipSync } from 'fflate';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readPng } from '../../../packages/publish/src/png.test-support.ts';
import { launch } from './launch.ts';
import { type RunningPullbook, startPullbook } from './start.ts';
import { open, watchedPage } from './watched-page.ts';

let pullbook: RunningPullbook;
let browser: Browser;
let painter: string;
let stills: StillDescription[];
let trial: string;

const MARK =
  'data:image/svg+xml;base64,PHN2ZyB4bWxucz0iaHR0cDovL3d3dy53My5vcmcvMjAwMC9zdmciIHZpZXdCb3g9IjAgMCA0MCAyMCIgd2lkdGg9IjQwIiBoZWlnaHQ9IjIwIj48cmVjdCB3aWR0aD0iNDAiIGhlaWdodD0iMjAiIGZpbGw9IiM4YTUiLz48L3N2Zz4=';

/** What the demo's trials have not: a card of each other kind, with a mark. */
const round = (body: StillDescription['body']): StillDescription => ({
  headline: 'An invented card',
  subline: 'Nothing of it was measured',
  body,
  footer: ['invented data'],
  warning: 'Not for publication',
  signature: { name: 'Invented workshop', mark: { address: MARK, width: 40, height: 20 } },
  alternative: '',
});
const OTHERS = [
  round({
    kind: 'table',
    columns: [
      { text: 'Speed', unit: 'rpm', style: 'ink' },
      { text: 'A', unit: 'hp', style: { combination: 0 } },
      { text: 'B', unit: 'hp', style: { combination: 1 } },
    ],
    rows: [
      [
        { text: '5,000', style: 'ink' },
        { text: '301', style: { combination: 0 } },
        { text: '352', style: { combination: 1 }, strong: true },
      ],
    ],
  }),
  round({
    kind: 'badges',
    badges: [
      { label: 'Repeats', earned: true, why: 'Three pulls each.' },
      { label: 'Same day', earned: false, why: 'Two days.' },
    ],
  }),
  round({ kind: 'number', number: '+51', unit: 'hp', band: '46 to 56', what: 'average gain', chart: null }),
];

beforeAll(async () => {
  [pullbook, browser] = await Promise.all([startPullbook('demo'), launch()]);
  const { outputFiles } = await build({
    stdin: {
      contents: `
        export { drawStill, sceneToSvg } from '@pullbook/charts';
        export { facesReady } from '../src/canvas/faces.ts';
        export { markPictures } from '../src/canvas/marks.ts';
        export { paintScene } from '../src/canvas/paint-scene.ts';`,
      resolveDir: import.meta.dirname,
    },
    bundle: true,
    write: false,
    format: 'iife',
    globalName: 'painting',
    // Its address is needed only by a worker, which is not tried here.
    define: { 'import.meta.url': '"http://127.0.0.1/"' },
    logLevel: 'error',
  });
  painter = `${outputFiles[0]!.text}; globalThis.painting = painting;`;
  const ask = async (path: string) => (await fetch(`${pullbook.address}/api/trials${path}`)).json();
  const { rows } = (await ask('')) as { rows: { id: string; question: string }[] };
  const { id } = rows.find(({ question }) => /longer cam add/i.test(question))!;
  trial = id;
  const { steps } = (await ask(`/${id}/presentation`)) as {
    steps: { id: string; still: StillDescription }[];
  };
  const told = ['combination', 'gain', 'caveat'];
  stills = [...steps.flatMap(({ id, still }) => (told.includes(id) ? [still] : [])), ...OTHERS];
});
afterAll(async () => {
  await browser?.close();
  await pullbook?.stop();
});

/** What the bundle above puts on the page. */
interface Painting {
  drawStill: (still: StillDescription, size: object) => Scene;
  sceneToSvg: (scene: Scene) => string;
  facesReady: (fonts: FontFaceSet, areDeclared: boolean) => Promise<void>;
  markPictures: (stills: StillDescription[]) => Promise<Map<string, ImageBitmap>>;
  paintScene: (pen: CanvasRenderingContext2D, scene: Scene, size: object, pictures: object) => void;
}

/** Shows a still by one of the two ways and takes a picture of it; the ground under it is the same. */
async function shown(
  page: Page,
  way: 'canvas' | 'svg',
  still: StillDescription,
  size: object,
): Promise<string> {
  await page.evaluate(
    async ({ way, still, size }) => {
      const { painting } = globalThis as unknown as { painting: Painting };
      await painting.facesReady(document.fonts, true);
      const scene = painting.drawStill(still, size);
      const place = document.createElement('div');
      place.id = 'shown';
      document.getElementById('shown')?.remove();
      place.style.cssText = `position:fixed;inset:0;z-index:99;background:#567;font-feature-settings:normal;width:${scene.width}px;height:${scene.height}px`;
      if (way === 'svg') place.innerHTML = painting.sceneToSvg(scene);
      else {
        const canvas = document.createElement('canvas');
        canvas.width = scene.width;
        canvas.height = scene.height;
        painting.paintScene(canvas.getContext('2d')!, scene, scene, await painting.markPictures([still]));
        place.append(canvas);
      }
      document.body.append(place);
    },
    { way, still, size },
  );
  return (await page.locator('#shown').screenshot()).toString('base64');
}

/** Share of the pixels that differ by more than letters drawn by another way do. */
const unlike = (page: Page, pictures: [string, string]) =>
  page.evaluate(async (both) => {
    const [one, other] = await Promise.all(
      both.map(async (text) => {
        const image = new Image();
        image.src = `data:image/png;base64,${text}`;
        await image.decode();
        const canvas = new OffscreenCanvas(image.width, image.height);
        const pen = canvas.getContext('2d')!;
        pen.drawImage(image, 0, 0);
        return pen.getImageData(0, 0, image.width, image.height).data;
      }),
    );
    let count = 0;
    for (let at = 0; at < one!.length; at += 4) {
      const far = [0, 1, 2].some((channel) => Math.abs(one![at + channel]! - other![at + channel]!) > 80);
      if (far) count += 1;
    }
    return count / (one!.length / 4);
  }, pictures);

test('the canvas shows what the SVG of the same drawing shows, on its ground and over a film', async () => {
  const { page, close } = await watchedPage(browser, pullbook.address, {
    viewport: { width: 1280, height: 800 },
  });
  await open(page, '/');
  await page.evaluate(painter);
  const shares: [string, number][] = [];
  for (const [index, still] of stills.entries()) {
    const isOnGround = index % 2 === 0;
    const size = { width: 1280, height: 730, theme: isOnGround ? 'light' : 'dark', ground: isOnGround };
    const both: [string, string] = [
      await shown(page, 'canvas', still, size),
      await shown(page, 'svg', still, size),
    ];
    shares.push([`${still.body.kind} ${still.headline}`, await unlike(page, both)]);
  }
  expect(shares.filter(([, share]) => share > 0.002)).toEqual([]);
  // That the measure sees anything: two stills are not alike by it.
  const size = { width: 1280, height: 730, theme: 'light', ground: true };
  const two: [string, string] = [
    await shown(page, 'svg', stills[0]!, size),
    await shown(page, 'svg', stills[1]!, size),
  ];
  expect(await unlike(page, two)).toBeGreaterThan(0.01);
  await close();
});

describe('a clip made in the page', () => {
  /** The shortest that the running order takes: one step of half a second. */
  const FRAMES = 15;
  let page: Page;
  let close: () => Promise<void>;

  beforeAll(async () => {
    const steps = ['asked', 'combination', 'baseline', 'changed', 'gain', 'boost', 'why', 'caveat'].map(
      (id) => ({
        id,
        isShown: id === 'baseline',
        title: null,
        seconds: id === 'baseline' ? 0.5 : null,
      }),
    );
    const answer = await fetch(`${pullbook.address}/api/trials/${trial}`, {
      method: 'PATCH',
      headers: { 'content-type': 'application/json', origin: pullbook.address },
      body: JSON.stringify({ runningOrder: { steps, speed: 1 }, reason: 'a short clip' }),
    });
    expect(answer.status).toBe(200);
    ({ page, close } = await watchedPage(browser, pullbook.address));
    await open(page, `/trials/${trial}/publish`);
  });
  afterAll(() => close());

  /** The maker of the publish page, with its choices. */
  async function maker(choices: Record<string, string>) {
    const group = page.getByRole('group', { name: 'By this page' });
    for (const [label, value] of Object.entries(choices)) await group.getByLabel(label).selectOption(value);
    return { group, press: page.getByRole('button', { name: 'Make the clip' }) };
  }

  async function made(choices: Record<string, string>, isTransparent: boolean) {
    const { group, press } = await maker({ Size: 'square', 'Frames a second': '30', ...choices });
    if (isTransparent) await group.getByLabel('Transparent').check();
    const [download] = await Promise.all([page.waitForEvent('download'), press.click()]);
    const name = download.suggestedFilename();
    await page.getByText(new RegExp(`Made and saved: ${name}, .* ${FRAMES} frames`)).waitFor();
    return { path: await download.path(), name };
  }

  /** What an independent reader finds in a film. */
  const probed = (path: string) => {
    const asked = 'stream=width,height,nb_read_frames,codec_name,avg_frame_rate:stream_tags=alpha_mode';
    const said = execFileSync(
      'ffprobe',
      ['-v', 'error', '-count_frames', '-show_entries', asked, '-of', 'json', path],
      { encoding: 'utf8' },
    );
    return (JSON.parse(said) as { streams: object[] }).streams;
  };

  test('MP4: so many frames at that size; it is noted with its hash as published', async () => {
    const { path, name } = await made({ Format: 'mp4' }, false);
    expect(probed(path)).toMatchObject([
      { codec_name: 'h264', width: 1080, height: 1080, avg_frame_rate: '30/1', nb_read_frames: `${FRAMES}` },
    ]);
    const sha256 = createHash('sha256')
      .update(await readFile(path))
      .digest('hex');
    const noted = async () => (await fetch(`${pullbook.address}/api/publications?trial=${trial}`)).text();
    await expect.poll(noted).toContain(name);
    expect(await noted()).toContain(sha256);
  });

  test('WebM: transparent where nothing is drawn, as another decoder reads it', async () => {
    const { path } = await made({ Format: 'webm' }, true);
    expect(probed(path)).toMatchObject([
      { codec_name: 'vp9', nb_read_frames: `${FRAMES}`, tags: { alpha_mode: '1' } },
    ]);
    const decoded = execFileSync(
      'ffmpeg',
      // Its own decoder of VP9 drops the transparency; this one reads it.
      ['-v', 'error', '-c:v', 'libvpx-vp9', '-i', path, '-f', 'rawvideo', '-pix_fmt', 'rgba', '-'],
      { maxBuffer: 2 ** 28 },
    );
    const frame = 1080 * 1080 * 4;
    expect(decoded.length).toBe(FRAMES * frame);
    const alphas = decoded.subarray(decoded.length - frame).filter((_, at) => at % 4 === 3);
    const share = (is: (alpha: number) => boolean) => alphas.filter(is).length / alphas.length;
    expect(share((alpha) => alpha < 8)).toBeGreaterThan(0.5);
    expect(share((alpha) => alpha > 247)).toBeGreaterThan(0.02);
    expect(alphas[0]).toBeLessThan(8);
  });

  test('numbered pictures: each of them there, transparent, the last one what the step stands as', async () => {
    const { path } = await made({ Format: 'png' }, true);
    const files = unzipSync(new Uint8Array(await readFile(path)));
    const names = Array.from(
      { length: FRAMES },
      (_, index) => `frame-${String(index + 1).padStart(5, '0')}.png`,
    );
    expect(Object.keys(files)).toEqual(names);
    const [first, last] = [readPng(files[names[0]!]!), readPng(files[names.at(-1)!]!)];
    expect([first.width, first.height, first.rgba[3], last.rgba[3]]).toEqual([1080, 1080, 0, 0]);
    const drawn = ({ rgba }: { rgba: Uint8Array }) =>
      rgba.filter((alpha, at) => at % 4 === 3 && alpha > 0).length;
    expect(drawn(last)).toBeGreaterThan(drawn(first));
  });

  test('cancelled: said at once, and nothing of it is kept', async () => {
    const kept = () =>
      page.evaluate(async () => {
        const place = await (await navigator.storage.getDirectory()).getDirectoryHandle('clips', {
          create: true,
        });
        const names: string[] = [];
        for await (const name of place.keys()) names.push(name);
        return names;
      });
    // The clips that this window made are still there, to be saved once more.
    const before = await kept();
    const { press } = await maker({ Format: 'png', Size: '4k', 'Frames a second': '60' });
    await press.click();
    await page.getByRole('button', { name: 'Cancel the clip' }).click();
    await page.getByText('Cancelled. Nothing was kept.').waitFor();
    expect(await kept()).toEqual(before);
  });
});
