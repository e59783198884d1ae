import { spawnSync } from 'node:child_process';
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { makeDemoBook } from '@pullbook/workshop';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { captured, capturedJson, sheet, stepTest } from './testing/captured.ts';

const CAM = 'What does the longer cam add at the same pulley?';
/** W to an hp and Pa to a psi, as NIST SP 811 has them. */
const KW_OF_HP = 0.745_699_9;
const OTHER_SEED = 11;

let folder = '';
const at = (...parts: string[]): string => join(folder, ...parts);
const demo = (): string[] => ['--book', at('demo')];
const small = (): string[] => ['--book', at('small')];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-publish-'));
  await makeDemoBook(at('demo'));
  for (const name of ['Base cam', 'Longer cam']) {
    await writeFile(at('sheet.yaml'), sheet(name));
    await captured(['combination', 'add', at('sheet.yaml'), '--engine', 'Six', ...small()]);
    for (const repeat of [0, 1]) {
      await writeFile(at('run.csv'), stepTest((name === 'Base cam' ? 1 : 1.05) + repeat / 300));
      await captured(['import', at('run.csv'), '--combination', name, ...small()]);
    }
  }
}, 120_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

/** A trial of the small book. */
async function trialAsked(question: string, combinations: string[], ...more: string[]): Promise<string> {
  const named = combinations.flatMap((one) => ['--combination', one]);
  const { json } = await capturedJson(['trial', 'start', question, ...named, ...more, ...small()]);
  return json.id;
}
const publish = (...argv: string[]) => capturedJson(['publish', ...argv]);

describe('what a file carries', () => {
  test.each([
    ['the demo', null, 'svg,png,pdf,html'],
    ['a book of another seed', OTHER_SEED, 'svg,html'],
  ])(
    '%s: numbers read back are those of the command line',
    async (_, seed, formats) => {
      const book = seed === null ? at('demo') : at('other');
      if (seed !== null) await makeDemoBook(book, seed);
      const { json: shown } = await capturedJson(['show', CAM, '--book', book]);
      const kinds = ['--kind', 'still,report', '--picture', 'answer', '--format', formats, '--draft'];
      const made = await publish(CAM, ...kinds, '--book', book, '--out', at('carried', String(seed)));
      expect(made.json.files).toHaveLength(seed === null ? 5 : 2);
      const [expected] = shown.comparisons;
      for (const { path } of made.json.files) {
        const { json } = await publish('--numbers', path);
        const { key, ...comparison } = json.numbers.comparisons[0];
        expect(key).toBe('B');
        for (const [name, value] of Object.entries(comparison)) expect(value, name).toEqual(expected[name]);
        const [a, b] = json.numbers.combinations;
        expect(a.peakPowerKw).toBe(expected.baselinePeak.peakPowerKw);
        expect(b.peakPowerLowKw).toBe(expected.changedPeak.peakPowerLowKw);
      }
      // What is drawn, held against what is carried: the highest power at the end of B's curve.
      const svg = made.json.files.find(({ path }: { path: string }) => path.endsWith('.svg'));
      const { json } = await publish('--numbers', svg.path);
      const drawn = json.texts.flatMap((text: string) => /^(\d+)\shp/u.exec(text)?.[1] ?? []).map(Number);
      for (const { peakPowerKw } of json.numbers.combinations)
        expect(drawn.some((hp: number) => Math.abs(hp - peakPowerKw / KW_OF_HP) <= 0.5)).toBe(true);
    },
    60_000,
  );

  test('for a person, and a file that carries none', async () => {
    const made = await publish(CAM, '--kind', 'report', '--draft', '--out', at('told'), ...demo());
    const told = await captured(['publish', '--numbers', made.json.files[0].path]);
    expect(told.out).toContain('kW on average (95 % band');
    expect(told.out).toContain(CAM);
    for (const [name, content] of [
      ['plain.svg', '<svg xmlns="http://www.w3.org/2000/svg"><text>500 hp</text></svg>'],
      ['notes.txt', 'no picture'],
      ['empty.png', ''],
    ]) {
      await writeFile(at(name!), content!);
      const { code, json } = await publish('--numbers', at(name!));
      expect(code).toBe(1);
      expect(json.error.message).toMatch(/carries no numbers|neither SVG, PNG, PDF nor HTML/);
    }
    expect((await publish('--numbers', at('nowhere.png'))).json.error.message).toContain('no file');
    expect((await publish('--numbers', at())).json.error.message).toContain('a folder');
  });
});

describe('what is made', () => {
  test('a set, a report, tables and a bundle from one command; noted with its figures', async () => {
    const kinds = ['--kind', 'still,report,table,bundle', '--picture', 'power,thumbnail'];
    const { code, json } = await publish(CAM, ...kinds, '--out', at('all', 'deep'), ...demo());
    expect(code).toBe(0);
    expect(json.remarks).toEqual([]);
    const row = ({ kind, width, height, seconds }: Record<string, unknown>) => [kind, width, height, seconds];
    expect(json.files.map(row)).toEqual([
      ['still', 1920, 1080, null],
      ['still', 1280, 720, null],
      ['report', null, null, null],
      ['table', null, null, null],
      ['bundle', null, null, null],
    ]);
    for (const { path, bytes } of json.files) expect((await readFile(path)).length).toBe(bytes);
    expect(await readdir(at('all', 'deep'))).toHaveLength(5);
    const bundle = ['open', json.files[4].path, '--book', at('elsewhere')];
    const opened = await capturedJson(bundle);
    expect(opened.json).toMatchObject({ question: CAM, isNew: true });
    const there = await capturedJson(['show', opened.json.trialId, '--book', at('elsewhere')]);
    const here = await capturedJson(['show', CAM, ...demo()]);
    expect(there.json.comparisons[0].changedPeak.peakPowerKw).toBe(
      here.json.comparisons[0].changedPeak.peakPowerKw,
    );
    expect((await captured(bundle)).out).toContain('in this book already');
    expect((await captured(['open', json.files[0].path, ...small()])).code).toBe(1);
    const { json: listed } = await capturedJson(['publications', CAM, ...demo()]);
    const noted = listed.publications.find(({ id }: { id: string }) => id === json.publicationId);
    expect(noted).toMatchObject({ question: CAM, stale: [], privateToo: false, links: [] });
    expect(noted.files.map(({ kind }: { kind: string }) => kind)).toEqual(
      json.files.map(({ kind }: { kind: string }) => kind),
    );
  }, 60_000);

  test('a short clip as a film, or as numbered pictures where there is no encoder', async () => {
    const more = ['--kind', 'clip', '--size', 'square', '--fps', '30', '--seconds', '2', '--draft'];
    const { code, json } = await publish(CAM, ...more, '--out', at('clip'), ...demo());
    expect(code).toBe(0);
    expect(json.files).toMatchObject([{ kind: 'clip', width: 1080, height: 1080, seconds: 2 }]);
    const names = await readdir(at('clip'), { recursive: true });
    const hasEncoder = spawnSync('ffmpeg', ['-version']).status === 0;
    expect(names).toHaveLength(hasEncoder ? 1 : 61);
    expect(json.remarks).toHaveLength(hasEncoder ? 0 : 1);
  }, 120_000);

  test('an earlier one of this book gives way; what is somebody else’s is put aside', async () => {
    const still = [CAM, '--kind', 'still', '--picture', 'power', '--format', 'svg', '--out', at('twice')];
    const first = await publish(...still, ...demo());
    const { path } = first.json.files[0];
    const again = await publish(...still, '--decimal', ',', ...demo());
    expect(again.json.remarks).toMatchObject([{ level: 'note', code: 'replaced' }]);
    await writeFile(path, 'drawn over by hand');
    const third = await publish(...still, ...demo());
    expect(third.json.remarks).toMatchObject([{ level: 'caution', code: 'put-aside' }]);
    const names = (await readdir(at('twice'))).sort();
    expect(names).toHaveLength(2);
    expect(await readFile(at('twice', names[0]!), 'utf8')).toBe('drawn over by hand');
  }, 60_000);
});

describe('what cannot be made', () => {
  test.each([
    [['--kind', 'film'], 'unknown-kind', 'still, clip, report, table, bundle'],
    [['--kind', 'still', '--format', 'mp4'], 'format-of-kind', 'png, svg, pdf'],
    [['--picture', 'powr'], 'unknown-picture', 'power'],
    [['--size', '8k'], 'unknown-size', '1080p'],
    [['--transparent', '--format', 'mp4'], 'no-alpha-in-mp4', 'webm, mov or png'],
    [['--speed', '9'], 'clip-timing', '0.25 to 4'],
    [['--speed', '2', '--seconds', '9'], 'clip-timing', 'not both'],
    [['--seconds', '1'], 'clip-timing', '2 to 600 s'],
    [['--correction', 'sae'], 'unknown-correction', 'sae-j1349'],
  ])('%j is refused with what is accepted', async (argv, code, words) => {
    const { code: exit, json } = await publish(CAM, ...argv, '--out', at('refused'), ...demo());
    expect([exit, json.error.code]).toEqual([1, code]);
    expect(json.error.message).toContain(words);
  });

  test('no trial, no folder, a file where the folder should be, no picture of that name', async () => {
    expect((await publish(...demo())).json.error.code).toBe('no-trial');
    expect((await publish(CAM, '--out', ' ', ...demo())).json.error.code).toBe('no-folder');
    const none = await publish(CAM, '--kind', 'still', '--picture', 'alone:Z', '--out', at('z'), ...demo());
    expect([none.code, none.json.files, none.json.publicationId]).toEqual([1, [], null]);
    expect(none.json.remarks).toMatchObject([{ code: 'no-such-picture' }]);
    await writeFile(at('a-file'), 'mine');
    for (const out of [at('a-file'), at('a-file', 'deeper')]) {
      const { code, json } = await publish(CAM, '--kind', 'still', '--out', out, ...demo());
      expect([code, json.error.code]).toEqual([1, 'not-a-folder']);
    }
    expect(await readFile(at('a-file'), 'utf8')).toBe('mine');
  });

  test('a trial without pulls says so; one of one pull gives pictures; gains of nought too', async () => {
    for (const name of ['Never pulled', 'Not either']) {
      await writeFile(at('sheet.yaml'), sheet(name));
      await captured(['combination', 'add', at('sheet.yaml'), '--engine', 'Six', ...small()]);
    }
    const none = await trialAsked('No pull?', ['Never pulled', 'Not either']);
    const refused = await publish(none, '--out', at('none'), ...small());
    expect(refused.json.error).toMatchObject({ code: 'nothing-to-publish' });
    const { json: listed } = await capturedJson(['list', 'pulls', ...small()]);
    const base = listed.pulls.filter(
      (pull: { combinationName: string }) => pull.combinationName === 'Base cam',
    );
    const one = await trialAsked('One pull?', ['Base cam', 'Longer cam'], '--pull', base[0].id);
    const kinds = ['--kind', 'still,report', '--format', 'svg,html', '--draft'];
    const made = await publish(one, ...kinds, '--out', at('one'), ...small());
    expect(made.json.files.length).toBeGreaterThan(1);
  }, 60_000);

  test('as many combinations as a trial takes, with names of 200 signs in several scripts, curves that lie on each other', async () => {
    const longest = '凸輪軸 профіль भ्रमण שמן 🏁 '.repeat(20).slice(0, 199);
    const names = Array.from({ length: 8 }, (_, index) => `${index}${longest}`.trim());
    for (const name of names) {
      await writeFile(at('sheet.yaml'), sheet(JSON.stringify(name)));
      await captured(['combination', 'add', at('sheet.yaml'), '--engine', 'Six', ...small()]);
      // Alike but for the file's name and one sign of its last row, so that the curves lie on each other.
      await writeFile(at('like.csv'), `${stepTest(1)}6700,${390 + names.indexOf(name) / 1000}\n`);
      await captured(['import', at('like.csv'), '--combination', name, ...small()]);
    }
    const trial = await trialAsked(`${longest} ${longest}`.slice(0, 200), names);
    const kinds = [
      '--kind',
      'still',
      '--picture',
      'answer,power,table,thumbnail',
      '--format',
      'svg',
      '--draft',
    ];
    const { code, json } = await publish(
      trial,
      ...kinds,
      '--size',
      '1080p,tall',
      '--out',
      at('most'),
      ...small(),
    );
    expect(code).toBe(0);
    expect(json.files.length).toBeGreaterThan(4);
    for (const { path } of json.files) {
      expect(path).toMatch(/\/[a-z0-9][a-z0-9.-]+\.svg$/u);
      expect(await readFile(path, 'utf8')).not.toMatch(/NaN|undefined|Infinity/);
    }
  }, 120_000);

  test('a private pull that does not count: only a bundle is refused for it; elsewhere its name stays', async () => {
    const audience = (who: string) => captured(['audience', 'Pull 6', '--who', who, ...demo()]);
    await audience('shop');
    const out = ['--out', at('private'), ...demo()];
    const bundle = ['--kind', 'bundle', ...out];
    const refused = await publish(CAM, ...bundle);
    expect([refused.code, refused.json.error.code]).toEqual([1, 'not-for-everyone']);
    expect(refused.json.error.message).toContain('“Pull 6” may be seen by the shop alone');
    const report = await publish(CAM, '--kind', 'report', '--private-too', ...out);
    expect(await readFile(report.json.files[0].path, 'utf8')).not.toContain('Pull 6');
    const asked = await publish(CAM, ...bundle, '--private-too');
    const { json } = await capturedJson(['publications', CAM, ...demo()]);
    const noted = (id: string) => json.publications.find((one: { id: string }) => one.id === id).privateToo;
    expect([noted(report.json.publicationId), noted(asked.json.publicationId)]).toEqual([false, true]);
    await audience('everyone');
  }, 60_000);

  test('cancelled half way: what is whole stays and is listed, nothing half-written is left', async () => {
    const abort = new AbortController();
    const kinds = ['--kind', 'still,clip', '--picture', 'power', '--fps', '30', '--draft', '--json'];
    const running = captured(['publish', CAM, ...kinds, '--out', at('cancelled'), ...demo()], {
      watched: true,
      interrupted: () => abort.signal,
      err: (text) => {
        if (/clip .* [1-9]\d* %/.test(text)) abort.abort();
      },
    });
    const { code, out } = await running;
    expect(code).toBe(130);
    const { files, remarks } = JSON.parse(out);
    expect(files.map(({ kind }: { kind: string }) => kind)).toEqual(['still']);
    expect(remarks.map((one: { code: string }) => one.code)).toEqual(['cancelled']);
    expect(await readdir(at('cancelled'))).toEqual([files[0].path.split('/').at(-1)]);
  }, 120_000);

  test('a full disk: whole files stay, the sentence says what to do', async ({ skip }) => {
    const disk = at('small-disk');
    await mkdir(disk);
    const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=500k', 'tmpfs', disk]).status === 0;
    if (!mounted) return skip('only an administrator can make a small disk here');
    try {
      const kinds = ['--kind', 'still', '--picture', 'power,torque,gain,boost', '--draft'];
      const { code, json } = await publish(CAM, ...kinds, '--out', disk, ...demo());
      expect(code).toBe(1);
      expect(json.remarks).toMatchObject([{ level: 'refusal', code: 'disk-enospc' }]);
      expect(json.remarks[0].message).toContain('Make room');
      expect(json.files.length).toBeGreaterThan(0);
      expect(json.files.length).toBeLessThan(4);
      for (const { path, bytes } of json.files) expect((await readFile(path)).length).toBe(bytes);
      expect(await readdir(disk)).toHaveLength(json.files.length);
    } finally {
      spawnSync('umount', [disk]);
    }
  }, 60_000);
});

describe('afterwards', () => {
  test('an amendment lists what carries an old figure; its link is told with it', async () => {
    const trial = await trialAsked('What does it add?', ['Base cam', 'Longer cam']);
    const made = await publish(
      trial,
      '--kind',
      'still',
      '--picture',
      'power',
      '--out',
      at('old'),
      ...small(),
    );
    const link = ['publications', 'link', made.json.publicationId, '--where', 'club magazine, page 12'];
    expect((await captured([...link, '--day', '2026-05-01', ...small()])).code).toBe(0);
    expect((await capturedJson([...link, '--day', 'May', ...small()])).json.error.code).toBe('day-not-read');
    const before = await capturedJson(['publications', trial, '--stale', ...small()]);
    expect(before.json.publications).toEqual([]);
    const { json: shown } = await capturedJson(['show', trial, ...small()]);
    const pull = shown.page.evidence.find(({ key }: { key: string }) => key === 'B').pullId;
    const cut = ['amend', pull, '--window', '2000-5000', '--reason', 'the clutch slipped above'];
    const amended = await capturedJson([...cut, ...small()]);
    const [erratum] = amended.json.errata;
    expect(erratum).toMatchObject({
      id: made.json.publicationId,
      links: [{ where: 'club magazine, page 12' }],
    });
    const labels = erratum.stale.map(({ label }: { label: string }) => label);
    expect(labels).toContain('B, highest power');
    expect(labels).not.toContain('A, highest power');
    const undone = await captured(['undo', ...small()]);
    expect(undone.out).not.toContain('carry an old figure');
    expect((await captured(['publications', trial, ...small()])).out).toContain('club magazine');
    const elsewhere = [...link.slice(0, -1), 'club magazine', '--take-out', ...small()];
    expect((await capturedJson(elsewhere)).json.error.message).toContain('"club magazine, page 12"');
    expect((await captured([...link, '--take-out', ...small()])).code).toBe(0);
    expect((await captured(['publications', trial, ...small()])).out).not.toContain('club magazine');
  }, 60_000);

  test('how it is told: steps hidden, named, timed, and as worked out again', async () => {
    const order = (...argv: string[]) => capturedJson(['trial', 'order', CAM, ...argv, ...demo()]);
    const own = (await order()).json;
    const change = ['--hide', 'why', '--title', 'gain=What it gave', '--seconds', 'gain=6', '--speed', '2'];
    const changed = (await order(...change)).json;
    const step = (id: string) => changed.steps.find((one: { id: string }) => one.id === id);
    expect(changed.steps.map(({ id }: { id: string }) => id)).toEqual(
      own.steps.map(({ id }: { id: string }) => id),
    );
    expect(step('why').isShown).toBe(false);
    expect(step('gain')).toMatchObject({ title: 'What it gave', seconds: 6 });
    expect(changed.seconds).toBeLessThan(own.seconds);
    expect((await order('--first', 'gain')).json.steps[0].id).toBe('gain');
    expect((await order('--hide', 'coda')).json.error.message).toContain('baseline');
    expect((await order('--seconds', 'gain=soon')).json.error.code).toBe('seconds-not-read');
    expect((await order('--seconds', 'gain=900')).json.error.message).toContain('60');
    expect((await order('--afresh')).json).toEqual(own);
  });
});
