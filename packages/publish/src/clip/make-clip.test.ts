import { execFileSync, spawnSync } from 'node:child_process';
import { chmod, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type ClipDescription, drawClipFrame, drawStill, sceneToSvg } from '@pullbook/charts';
import { Resvg } from '@resvg/resvg-js';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { inventedClip } from '../../../charts/src/invented-clip.test-support.ts';
import { fontsFor } from '../fonts-for.ts';
import { makeClip } from './make-clip.ts';
import type { ClipToMake } from './model.ts';
import { straightAlpha } from './straight-alpha.ts';

/** Video files are made and read by programs that a user's machine may lack; `npm test` installs them. */
const hasFilmTools = ['ffmpeg', 'ffprobe'].every((name) => spawnSync(name, ['-version']).status === 0);

// Short and small: 12 frames, of which the last ones of each step stand.
const steps = inventedClip.steps.slice(0, 2).map((step) => ({ ...step, seconds: 0.2 }));
const clip: ClipDescription = { steps };
const SIZE = { width: 360, height: 320, theme: 'dark', ground: true } as const;
const FRAMES = 12;

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-clip-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function made(order: Partial<ClipToMake> & Pick<ClipToMake, 'format' | 'path'>) {
  const result = await makeClip({ clip, size: SIZE, fps: 30, ...order });
  if (!result.ok) throw new Error(result.remarks[0]!.message);
  return result.value;
}

/** What an independent program says of a file's only stream. */
function probed(path: string) {
  const wanted = ['-v', 'error', '-count_frames', '-show_streams', '-show_format', '-of', 'json', path];
  const { streams, format } = JSON.parse(execFileSync('ffprobe', wanted, { encoding: 'utf8' }));
  expect(streams).toHaveLength(1);
  return { ...streams[0], seconds: Number(format.duration), bytes: Number(format.size) };
}

/** All frames as RGBA, decoded by an independent program. */
function decoded(path: string, decoder: string[] = []): Uint8Array[] {
  const raw = execFileSync(
    'ffmpeg',
    [
      '-v',
      'error',
      ...decoder,
      '-i',
      path,
      '-vf',
      'scale=in_color_matrix=bt709',
      '-pix_fmt',
      'rgba',
      '-f',
      'rawvideo',
      '-',
    ],
    { maxBuffer: 1e9 },
  );
  const length = 4 * SIZE.width * SIZE.height;
  return Array.from({ length: raw.length / length }, (_, frame) =>
    raw.subarray(frame * length, (frame + 1) * length),
  );
}

function rasterised(scene: ReturnType<typeof drawStill>): Uint8Array {
  return new Resvg(sceneToSvg(scene), { font: fontsFor([]) }).render().pixels;
}

/** Mean difference of the channels chosen. */
function apart(one: Uint8Array, other: Uint8Array, channels: number[]): number {
  let sum = 0;
  let count = 0;
  for (let index = 0; index < one.length; index += 1) {
    if (!channels.includes(index % 4)) continue;
    sum += Math.abs(one[index]! - other[index]!);
    count += 1;
  }
  return sum / count;
}

describe.skipIf(!hasFilmTools)('a video file', () => {
  test.each([
    ['mp4', true, 'h264', 'yuv420p', []],
    ['webm', true, 'vp9', 'yuv420p', []],
    ['webm', false, 'vp9', 'yuv420p', ['-c:v', 'libvpx-vp9']],
    ['mov', true, 'prores', 'yuv422p10le', []],
    ['mov', false, 'prores', 'yuva444p12le', []],
  ] as const)(
    '%s with ground %s has its size, frames, time and pixels',
    async (format, ground, codec, pixels, decoder) => {
      const path = join(folder, `${format}-${ground}.${format}`);
      const size = { ...SIZE, ground };
      const shares: number[] = [];
      const file = await made({ format, path, size, onProgress: (share) => shares.push(share) });
      const seen = probed(path);
      expect(seen).toMatchObject({
        codec_name: codec,
        pix_fmt: pixels,
        width: 360,
        height: 320,
        r_frame_rate: '30/1',
        nb_read_frames: String(FRAMES),
        color_space: 'bt709',
      });
      expect(seen.seconds).toBeCloseTo(0.4, 2);
      expect(file).toEqual({
        path,
        width: 360,
        height: 320,
        seconds: 0.4,
        frames: FRAMES,
        bytes: seen.bytes,
      });
      expect(shares).toHaveLength(FRAMES);
      expect(shares.at(-1)).toBe(1);

      const frames = decoded(path, [...decoder]);
      expect(frames).toHaveLength(FRAMES);
      const first = rasterised(drawClipFrame(clip, 0, size));
      const last = rasterised(drawStill(clip.steps[1]!.still, size));
      const channels = ground ? [0, 1, 2] : [3];
      // Colour has half the resolution in most of them, which shows in letters as small as these.
      expect(apart(frames[0]!, first, channels)).toBeLessThan(3);
      expect(apart(frames.at(-1)!, last, channels)).toBeLessThan(3);
      expect(apart(frames[0]!, last, channels)).toBeGreaterThan(3 * apart(frames.at(-1)!, last, channels));
      const corner = frames.at(-1)!.subarray(0, 4);
      if (ground)
        for (const [at, value] of [16, 23, 29, 255].entries())
          expect(Math.abs(corner[at]! - value)).toBeLessThan(4);
      else expect(corner[3]).toBe(0);
    },
  );

  test('the same clip gives the same frames, one by one', async () => {
    const sums = await Promise.all(
      ['one.mp4', 'other.mp4'].map(async (name) => {
        const { path } = await made({ format: 'mp4', path: join(folder, name) });
        return execFileSync('ffmpeg', ['-v', 'error', '-i', path, '-f', 'framemd5', '-'], {
          encoding: 'utf8',
        });
      }),
    );
    expect(sums[0]!.match(/[0-9a-f]{32}/gu)).toHaveLength(FRAMES);
    expect(sums[0]).toBe(sums[1]);
  });

  test('a clip at 60 frames a second has so many', async () => {
    const path = join(folder, 'at-60.mp4');
    const shorter = { steps: steps.map((step) => ({ ...step, seconds: 0.1 })) };
    expect(await made({ format: 'mp4', path, fps: 60, clip: shorter })).toMatchObject({
      frames: FRAMES,
      seconds: 0.2,
    });
    expect(probed(path)).toMatchObject({ nb_read_frames: String(FRAMES), r_frame_rate: '60/1' });
  });

  test('cancelled, it ends with the reason and leaves nothing', async () => {
    const own = await mkdtemp(join(folder, 'cancel-'));
    const control = new AbortController();
    const making = makeClip({
      clip: inventedClip,
      size: SIZE,
      fps: 60,
      format: 'mp4',
      path: join(own, 'never.mp4'),
      signal: control.signal,
      onProgress: (share) => share > 0.1 && control.abort(new Error('no longer wanted')),
    });
    await expect(making).rejects.toThrow('no longer wanted');
    expect(await readdir(own)).toEqual([]);
  });
});

describe('numbered pictures', () => {
  test.each([true, false])('need no encoder and are the frames (ground: %s)', async (ground) => {
    const path = join(folder, `pictures-${ground}`);
    const size = { ...SIZE, ground };
    const { frames, bytes } = await withoutPrograms(() => made({ format: 'png', path, size }));
    const names = (await readdir(path)).toSorted();
    expect(names).toHaveLength(FRAMES);
    expect([frames, names[0], names.at(-1)]).toEqual([FRAMES, 'frame-00001.png', 'frame-00012.png']);
    expect(bytes).toBeGreaterThan(1000);
    // Read back by the rasteriser, which has a PNG reader of its own.
    const last = (await readFile(join(path, names.at(-1)!))).toString('base64');
    const image = `<image width="360" height="320" href="data:image/png;base64,${last}"/>`;
    const drawn = new Resvg(
      `<svg xmlns="http://www.w3.org/2000/svg" width="360" height="320">${image}</svg>`,
    );
    const read = drawn.render().pixels;
    const still = rasterised(drawStill(clip.steps[1]!.still, size));
    straightAlpha(read);
    straightAlpha(still);
    expect(apart(read, still, [0, 1, 2, 3])).toBeLessThan(0.1);
  });
});

describe('what cannot be made is said with what to do', () => {
  test.each([
    ['no-alpha-in-mp4', { format: 'mp4', size: { ...SIZE, ground: false } }, 'take webm, mov or png'],
    ['odd-size', { format: 'webm', size: { ...SIZE, width: 361 } }, '361 x 320'],
    ['nothing-to-show', { format: 'png', clip: { steps: [] } }, 'running order'],
  ] satisfies [string, Partial<ClipToMake> & Pick<ClipToMake, 'format'>, string][])(
    '%s',
    async (code, order, words) => {
      const own = await mkdtemp(join(folder, 'no-'));
      const result = await makeClip({
        clip,
        size: SIZE,
        fps: 30,
        path: join(own, 'x'),
        ...order,
      });
      expect(result).toMatchObject({ ok: false, remarks: [{ code, level: 'refusal' }] });
      expect(result.remarks[0]!.message).toContain(words);
      expect(await readdir(own)).toEqual([]);
    },
  );

  test('a machine without an encoder', async () => {
    const result = await withoutPrograms(() =>
      makeClip({ clip, size: SIZE, fps: 30, format: 'mp4', path: join(folder, 'none.mp4') }),
    );
    expect(result).toMatchObject({ ok: false, remarks: [{ code: 'encoder-missing' }] });
    expect(result.remarks[0]!.message).toMatch(/apt install ffmpeg.*--format png/u);
  });

  test.each([
    ['No space left on device', { code: 'ENOSPC' }],
    ['Error while opening encoder', { ok: false, remarks: [{ code: 'encoder-failed', level: 'refusal' }] }],
  ])('%s, while frames are coming, and nothing is left', async (said, told) => {
    const own = await mkdtemp(join(folder, 'fail-'));
    // An encoder that takes a little, writes a little, and fails as the real one does.
    const script = `#!/bin/sh
case "$*" in
*-version*) echo 'ffmpeg version 1.0' ;;
*-encoders*) echo ' V....D libx264 some' ;;
*) for last; do :; done; head -c 100000 > "$last"; echo 'av_interleaved_write_frame(): ${said}' >&2; exit 1 ;;
esac
`;
    const programs = await mkdtemp(join(folder, 'programs-'));
    await writeFile(join(programs, 'ffmpeg'), script);
    await chmod(join(programs, 'ffmpeg'), 0o755);
    const result = await withPrograms(`${programs}:${process.env.PATH}`, () =>
      makeClip({ clip, size: SIZE, fps: 30, format: 'mp4', path: join(own, 'x.mp4') }).catch(
        (trouble: unknown) => trouble,
      ),
    );
    expect(result).toMatchObject(told);
    if (result instanceof Error) expect(result.message).toContain(said);
    else expect((result as Awaited<ReturnType<typeof makeClip>>).remarks[0]!.message).toContain(said);
    expect(await readdir(own)).toEqual([]);
  });
});

async function withPrograms<T>(path: string, work: () => Promise<T>): Promise<T> {
  const before = process.env.PATH;
  process.env.PATH = path;
  onTestFinished(() => {
    process.env.PATH = before;
  });
  try {
    return await work();
  } finally {
    process.env.PATH = before;
  }
}

const withoutPrograms = <T>(work: () => Promise<T>): Promise<T> => withPrograms('/nowhere', work);
