import { existsSync } from 'node:fs';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { captured, capturedJson, sheet, stepTest } from './testing/captured.ts';

let folder = '';
const at = (name: string): string => join(folder, name);
const book = (): string[] => ['--book', at('book')];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-cli-'));
  await writeFile(at('base.csv'), stepTest(1));
  await writeFile(at('changed.csv'), stepTest(1.05));
  await writeFile(at('base.yaml'), sheet('Base cam'));
  await writeFile(at('changed.yaml'), sheet('Longer cam', 'bore: 97 mm'));
});

afterAll(() => rm(folder, { recursive: true, force: true }));

describe('the whole job on the command line', () => {
  const ids: Record<string, string> = {};

  test('two combinations of one engine', async () => {
    const base = await capturedJson([
      'combination',
      'add',
      at('base.yaml'),
      '--engine',
      'Hill-climb six',
      ...book(),
    ]);
    expect(base.code).toBe(0);
    const changed = await capturedJson([
      'combination',
      'add',
      at('changed.yaml'),
      '--made-from',
      'base cam',
      ...book(),
    ]);
    expect(changed.code).toBe(0);
    const { json } = await capturedJson(['combination', 'diff', 'Base cam', 'Longer cam', ...book()]);
    expect(json.changes).toMatchObject([
      { section: 'shortBlock', field: 'bore', before: '96 mm', after: '97 mm' },
    ]);
    const shown = await captured(['combination', 'show', 'Base cam', '--yaml', ...book()]);
    expect(shown.out).toContain('bore: 96 mm');
  });

  test('import gives the contract of the JSON', async () => {
    const weather = [
      '--pressure',
      '98.2kPa',
      '--temperature',
      '30C',
      '--humidity',
      '45%',
      '--corrected',
      'observed',
    ];
    const base = await capturedJson([
      'import',
      at('base.csv'),
      '--combination',
      'base',
      ...weather,
      ...book(),
    ]);
    expect(base.code).toBe(1);
    expect(base.json.error.code).toBe('unknown-id');
    const again = await capturedJson([
      'import',
      at('base.csv'),
      '--combination',
      'Base cam',
      ...weather,
      ...book(),
    ]);
    expect(again.code).toBe(0);
    const [pull] = again.json.pulls;
    expect(pull).toMatchObject({
      name: expect.any(String),
      channels: [
        { meaning: 'engineSpeed', unit: expect.any(String), count: 26 },
        { meaning: 'torque', unit: expect.any(String), count: 26 },
      ],
      windowRpm: [2000, 6500],
      // The parabola's vertex lies at 4,200 r/min: 400 N·m.
      stillClimbing: true,
    });
    expect(Math.abs(pull.peakTorqueRpm - 4200)).toBeLessThan(1);
    expect(pull.peakTorqueNm).toBeCloseTo(400, 2);
    // Still climbing: the last row, 400 - (2300/300)^2 N·m at 6,500 r/min.
    expect(pull.peakPowerKw).toBeCloseTo(((400 - (2300 / 300) ** 2) * 2 * Math.PI * 6500) / 60 / 1000, 3);
    for (const remark of again.json.remarks) {
      expect(Object.keys(remark).sort()).toEqual(['code', 'column', 'file', 'level', 'line', 'message']);
    }
    ids.base = pull.id;
    const changed = await capturedJson([
      'import',
      at('changed.csv'),
      '--combination',
      'Longer cam',
      ...weather,
      ...book(),
    ]);
    ids.changed = changed.json.pulls[0].id;
  });

  test('the same file twice is recognised and adds nothing', async () => {
    await writeFile(at('copy.csv'), stepTest(1));
    const { code, json } = await capturedJson(['import', at('copy.csv'), ...book()]);
    expect(code).toBe(0);
    expect(json.pulls.map((one: { id: string }) => one.id)).toEqual([ids.base]);
    expect(json.files).toEqual([{ file: 'copy.csv', stored: true, alreadyKnown: true }]);
    const list = await capturedJson(['list', ...book()]);
    expect(list.json.pulls).toHaveLength(2);
  });

  test('what was done is told, undone and had back; a list is narrowed', async () => {
    await captured([
      'amend',
      ids.base!,
      '--operator',
      'night',
      '--order',
      '3',
      '--reason',
      'seen',
      ...book(),
    ]);
    const told = await captured(['history', '--of', ids.base!, ...book()]);
    expect(told.out).toMatch(/Amended the pull.*seen/);
    expect(told.out).toMatch(/Operator: – → night/);
    const find = ['list', 'pulls', '--find', 'night', ...book()];
    expect((await capturedJson(find)).json.pulls.map((one: { id: string }) => one.id)).toEqual([ids.base]);
    const undone = await capturedJson(['undo', ...book()]);
    expect(undone.json.step.words).toMatch(/^Undone: amended the pull/);
    expect((await capturedJson(find)).json).toMatchObject({
      pulls: [],
      pages: { pulls: { total: 0, all: 2 } },
    });
    expect((await captured(find)).out).toContain('none fits');
    const number = undone.json.step.uid.split('/').at(-1);
    expect((await captured(['undo', number, ...book()])).out).toMatch(/^Done again: amended the pull/);
    expect((await captured(['undo', number, ...book()])).code).toBe(1);
    expect((await capturedJson(['undo', '99999', ...book()])).json.error.code).toBe('unknown-id');
    await captured(['undo', ...book()]);
  });

  test('an engine takes another build revision, with a reason', async () => {
    const { json } = await capturedJson(['list', 'engines', ...book()]);
    const [{ id }] = json.engines;
    const change = ['engine', 'change', id, '--build', '3', '--reason', 'new rings', ...book()];
    expect((await captured(change)).out).toContain('Changed engine');
    const after = await capturedJson(['list', 'engines', ...book()]);
    expect(after.json.engines[0].buildRevision).toBe('3');
  });

  test('comparing a curve with itself times 1.05 gains 5 % everywhere, in any standard', async () => {
    for (const correction of ['observed', 'sae-j1349', 'sae-j607', 'iso-1585', 'din-70020']) {
      const { code, json } = await capturedJson([
        'compare',
        '--baseline',
        ids.base!.slice(0, 8),
        '--changed',
        ids.changed!,
        '--correction',
        correction,
        ...book(),
      ]);
      expect(code).toBe(0);
      expect(json.meanGainPercent).toBeCloseTo(5, 3);
      expect(json.commonWindowRpm[0]).toBeGreaterThanOrEqual(2000);
      expect(json.commonWindowRpm[1]).toBeLessThanOrEqual(6500);
      expect(json.curve.length).toBeGreaterThan(20);
      for (const row of json.curve) expect(row.gainKw / row.baselineKw).toBeCloseTo(0.05, 4);
      expect(json.correction.standard).toBe(correction);
    }
    const people = await captured([
      'compare',
      '--baseline',
      ids.base!,
      '--changed',
      ids.changed!,
      '--units',
      'si',
      '--decimal',
      ',',
      ...book(),
    ]);
    expect(people.out).toMatch(/\+\d+,\d kW \(\+5,0 %\)/);
  });

  test('a trial is started, changed, shown and published', async () => {
    const started = await capturedJson([
      'trial',
      'start',
      'What does the longer cam add?',
      '--combination',
      'Base cam=base',
      '--combination',
      'Longer cam=longer',
      ...book(),
    ]);
    expect(started.code).toBe(0);
    ids.trial = started.json.id;
    const changed = await captured([
      'trial',
      'change',
      ids.trial!.slice(0, 8),
      '--window',
      '3000-6000',
      ...book(),
    ]);
    expect(changed.code).toBe(0);
    const shown = await capturedJson(['show', 'What does the longer cam add?', ...book()]);
    expect(shown.json.kind).toBe('trial');
    expect(shown.json.comparisons[0].averagesWindowRpm).toEqual([3000, 6000]);
    const people = await captured(['show', ids.trial!, ...book()]);
    expect(people.out).toContain('Evidence');
    expect(people.out).not.toMatch(/undefined|NaN|null/);
    const answer = ['publish', ids.trial!, '--kind', 'still', '--picture', 'answer', '--out', at('stills')];
    const still = await capturedJson([...answer, '--size', '4k', '--theme', 'dark', ...book()]);
    expect(still.json.files).toMatchObject([{ kind: 'still', width: 3840, height: 2160 }]);
    const png = await readFile(still.json.files[0].path);
    expect(png.subarray(16, 24).toString('hex')).toBe('00000f0000000870');
    const svg = await capturedJson([...answer, '--format', 'svg', '--transparent', ...book()]);
    expect(svg.code).toBe(0);
    expect(await readFile(svg.json.files[0].path, 'utf8')).toContain('</svg>');
  });

  test('a pull goes into a trial as it is imported; of another combination it stays outside, and says why', async () => {
    const shown = async () => (await capturedJson(['show', ids.trial!, ...book()])).json.page.evidence.length;
    const before = await shown();
    await writeFile(at('third.csv'), stepTest(1.051));
    const brought = (...more: string[]) =>
      capturedJson(['import', at('third.csv'), '--trial', ids.trial!, ...more, ...book()]);
    const strange = await capturedJson(['import', at('third.csv'), '--trial', 'no such', ...book()]);
    expect(strange.code).not.toBe(0);
    const outside = await brought();
    expect(outside.json.remarks.map((one: { code: string }) => one.code)).toContain(
      'pull-of-other-combination',
    );
    expect(await shown()).toBe(before);
    await writeFile(at('third.csv'), stepTest(1.052));
    const inside = await brought('--combination', 'Longer cam');
    expect(inside.code).toBe(0);
    expect(await shown()).toBe(before + 1);
    await captured(['trial', 'change', ids.trial!, '--leave-out', inside.json.pulls[0].id, ...book()]);
  });

  test('whether the engine was taken apart is said by the letter, kept, and decides what the band is made of', async () => {
    const setUpPart = async (answer: string) => {
      const argv = ['trial', 'change', ids.trial!, '--taken-apart', `B=${answer}`, ...book()];
      expect((await capturedJson(argv)).json).toEqual({ id: ids.trial, remarks: [], errata: [] });
      const { trial, comparisons } = (await capturedJson(['show', ids.trial!, ...book()])).json;
      return [trial.combinations[1].takenApart ?? null, comparisons[0].meanGainHighPercent];
    };
    const [yes, no, parts] = [await setUpPart('yes'), await setUpPart('no'), await setUpPart('parts')];
    expect([yes[0], no[0], parts[0]]).toEqual([true, false, null]);
    // A new set-up brings its own scatter into the band.
    expect(yes[1]).toBeGreaterThan(no[1] + 0.1);
    expect([no[1], yes[1]]).toContain(parts[1]);
    const baseline = ['trial', 'change', ids.trial!, '--taken-apart', 'A=yes', ...book()];
    expect((await capturedJson(baseline)).json.error.code).toBe('taken-apart-key');
    const wrong = await captured(['trial', 'change', ids.trial!, '--taken-apart', 'B=maybe', ...book()]);
    expect(wrong.err).toContain('such as B=no');
  });

  test('rejecting needs a reason; taking out and in again works', async () => {
    const bare = await capturedJson(['trial', 'change', ids.trial!, '--reject', ids.changed!, ...book()]);
    expect(bare.json.error.code).toBe('no-reason');
    const done = await captured([
      'trial',
      'change',
      ids.trial!,
      '--reject',
      `${ids.changed}=belt slipped`,
      ...book(),
    ]);
    expect(done.code).toBe(0);
    const shown = await capturedJson(['show', ids.trial!, ...book()]);
    expect(shown.json.page.evidence.map((one: { role: string }) => one.role).sort()).toEqual([
      'counted',
      'rejected',
    ]);
    expect(await captured(['trial', 'change', ids.trial!, '--count', ids.changed!, ...book()])).toMatchObject(
      { code: 0 },
    );
  });

  test('a remembered peak and an amendment', async () => {
    const peak = await capturedJson([
      'summary',
      '--peak-power',
      '328hp',
      '--peak-power-at',
      '6400rpm',
      '--name',
      'Before',
      ...book(),
    ]);
    expect(peak.json.pulls[0].peakPowerRpm).toBe(6400);
    const amended = await captured([
      'amend',
      'Before',
      '--combination',
      'Base cam',
      '--reason',
      'it was that one',
      ...book(),
    ]);
    expect(amended.code).toBe(0);
    const list = await capturedJson(['list', 'pulls', ...book()]);
    expect(list.json.pulls.find((one: { name: string }) => one.name === 'Before').combinationName).toBe(
      'Base cam',
    );
  });

  test('how a pull is read: set at the import, amended, shown, and gone back from', async () => {
    const rows = Array.from({ length: 201 }, (_, row) => row / 20);
    const lines = rows.map((time) =>
      [time.toFixed(2), 3000 + 300 * time, 300 + 5 * time, (0.9 - 0.01 * time).toFixed(4)].join(','),
    );
    await writeFile(at('swept.csv'), `Time (s),Speed (rpm),Torque (N·m),Lambda (λ)\n${lines.join('\n')}\n`);
    const options = ['--lag', 'lambda=0.3s', '--window', '4000-5500', '--bin', '100rpm'];
    const inertia = ['--inertia', '0.4 kg·m²', '--inertia-compensated', 'no', '--add-inertia'];
    const events = ['--event', '5000rpm: throttle lifted', '--event', 'belt squealed'];
    const imported = await capturedJson([
      'import',
      at('swept.csv'),
      ...options,
      ...inertia,
      ...events,
      ...book(),
    ]);
    expect(imported.code).toBe(0);
    const treatment = { lagsS: { lambda: 0.3 }, windowRpm: [4000, 5500], binWidthRpm: 100, addInertia: true };
    expect(imported.json.pulls[0]).toMatchObject({ treatment, windowRpm: [4005, 5490] });
    const shown = await captured(['show', 'swept', ...book()]);
    const words = shown.out.replace(/\u00a0/g, ' ');
    expect(words).toMatch(/Accepted window +set by hand, 4,000 to 5,500 rpm/);
    expect(words).toMatch(/Lags +Mixture, lambda read 0\.3 s earlier/);
    expect(words).toContain('5,000 rpm: throttle lifted');
    expect(words).toContain('belt squealed');
    const back = ['--lag', 'lambda=0s', '--window', 'found', '--bin', 'adapted', '--no-add-inertia'];
    expect((await captured(['amend', 'swept', ...back, '--reason', 'as it comes', ...book()])).code).toBe(0);
    const plain = await capturedJson(['show', 'swept', ...book()]);
    expect(plain.json.pull.treatment).toEqual({
      lagsS: {},
      windowRpm: null,
      binWidthRpm: null,
      addInertia: false,
    });
    expect(plain.json.pull.windowRpm[1]).toBeGreaterThan(5900);
  });

  test.each([
    [['--lag', 'lambda'], 2, /lambda=0\.3s/],
    [['--lag', 'lambda=9s'], 1, /-5 to 5 s/],
    [['--window', '6000-3000'], 2, /4000-6500/],
    [['--bin', '100'], 2, /100rpm/],
    [['--bin', '3rpm'], 1, /10 to 1000 rpm/],
    [['--event', '5000bar: x'], 1, /bar/],
  ])('%j is refused with what to do', async (options, code, message) => {
    const refused = await captured(['amend', 'swept', ...options, '--reason', 'x', ...book()]);
    expect(refused.code).toBe(code);
    expect(refused.err).toMatch(message);
  });

  test('export and restore give the same book; a full folder is not overwritten', async () => {
    expect((await captured(['export', '--to', at('out'), ...book()])).code).toBe(0);
    expect(await readdir(at('out'))).toContain('book.json');
    const second = await capturedJson(['export', '--to', at('out'), ...book()]);
    expect(second).toMatchObject({ code: 1, json: { error: { code: 'folder-not-empty' } } });
    expect((await captured(['export', '--to', at('out'), '--replace', ...book()])).code).toBe(0);
    const alien = await captured(['export', '--to', folder, '--replace', ...book()]);
    expect(alien.code).toBe(1);
    expect(existsSync(at('base.csv'))).toBe(true);
    expect((await captured(['restore', at('out'), '--book', at('restored')])).code).toBe(0);
    const before = await capturedJson(['list', ...book()]);
    const after = await capturedJson(['list', '--book', at('restored')]);
    expect(after.json).toEqual(before.json);
    expect((await captured(['restore', at('out'), '--book', at('restored')])).code).toBe(1);
  });

  test('an original comes back byte for byte, and never over another file', async () => {
    const out = ['original', 'base.csv', '--out', at('again.csv'), ...book()];
    expect((await captured(out)).code).toBe(0);
    expect(await readFile(at('again.csv'), 'utf8')).toBe(stepTest(1));
    expect((await captured(out)).code).toBe(1);
  });
});

describe('the air', () => {
  test('gives the contract of the JSON without a book', async () => {
    const { code, json } = await capturedJson([
      'air',
      '--pressure',
      '98.2kPa',
      '--temperature',
      '30C',
      '--humidity',
      '45%',
      '--altitude',
      '300m',
    ]);
    expect(code).toBe(0);
    expect(json.dryPressureKpa + json.vapourPressureKpa).toBeCloseTo(98.2, 9);
    // Saturation pressure at 30 °C is 4.2467 kPa (ASHRAE Fundamentals, thermodynamic properties of water; from memory).
    expect(json.vapourPressureKpa).toBeCloseTo(0.45 * 4.2467, 2);
    expect(json.corrections.map((one: { standard: string }) => one.standard)).toEqual([
      'sae-j1349',
      'sae-j607',
      'iso-1585',
      'din-70020',
    ]);
    for (const one of json.corrections) expect(typeof one.insideValidity).toBe('boolean');
    expect(json.densityAltitudeM).toBeGreaterThan(300);
  });

  test('decimal comma on entry and on show', async () => {
    const { out, code } = await captured([
      'air',
      '--pressure',
      '982,5 mbar',
      '--temperature',
      '30,5 C',
      '--decimal',
      ',',
      '--units',
      'si',
    ]);
    expect(code).toBe(0);
    expect(out).toContain('98,25 kPa');
  });

  test.each([
    [['--pressure', '98.2', '--temperature', '30C'], 'kPa'],
    [['--pressure', '98.2Pa', '--temperature', '30C'], 'Pa'],
    [['--pressure', '98.2kPa', '--temperature', '30kg'], 'kg'],
  ])('%j is refused with the value and what is allowed', async (options, said) => {
    const { code, json } = await capturedJson(['air', ...options]);
    expect(code).toBe(1);
    expect(json.error.message).toContain(said);
  });
});

describe('usage', () => {
  test.each([
    [['nonsense']],
    [['list', '--units', 'furlongs']],
    [['list', 'nonsense']],
    [['compare', '--baseline', 'x']],
    [['import']],
    [['serve', '--port', 'x']],
    [['compare', '--baseline', 'x', '--changed', 'y', '--window', '6000-4000']],
    [[]],
  ])('%j is wrong usage: 2', async (argv) => {
    const { code, err } = await captured(argv);
    expect(code).toBe(2);
    expect(err).not.toBe('');
    const { code: again, json } = await capturedJson(argv);
    expect(again).toBe(2);
    expect(json.error.code).toBe('wrong-usage');
  });

  test('every command has help with an example', async () => {
    const { out } = await captured(['--help']);
    const names = [...out.matchAll(/^ {2}([a-z]+)(?= |$)/gm)]
      .map(([, name]) => name!)
      .filter((name) => name !== 'help');
    expect(names).toEqual([
      'serve',
      'demo',
      'import',
      'summary',
      'list',
      'show',
      'amend',
      'history',
      'undo',
      'engine',
      'combination',
      'package',
      'layout',
      'trial',
      'predict',
      'figures',
      'plan',
      'match',
      'map',
      'reach',
      'parts',
      'enquiries',
      'enquiry',
      'audience',
      'cell',
      'settings',
      'compare',
      'check',
      'rules',
      'silence',
      'air',
      'fuel',
      'publish',
      'publications',
      'open',
      'export',
      'backup',
      'restore',
      'merge',
      'rescue',
      'original',
    ]);
    const groups: Record<string, string[]> = {
      engine: ['change'],
      combination: ['add', 'amend', 'check', 'show', 'diff', 'schema'],
      package: ['list', 'add'],
      layout: ['list', 'forget'],
      map: ['add', 'list', 'show', 'export', 'change'],
      backup: ['', 'check'],
      trial: ['start', 'change', 'order'],
      publications: ['', 'link'],
      enquiry: ['show', 'plan', 'card'],
      parts: ['show', 'export', 'import', 'reset'],
      cell: ['list', 'show', 'add', 'change', 'instrument', 'calibration'],
    };
    for (const name of names) {
      for (const argv of (groups[name] ?? ['']).map((sub) => [
        name,
        ...(sub === '' ? [] : [sub]),
        '--help',
      ])) {
        const help = await captured(argv);
        expect(help).toMatchObject({ code: 0, err: '' });
        expect(help.out).toMatch(/Examples:\n {2}\$ pullbook /);
      }
    }
    expect((await captured(['--version'])).out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  test('the book may be named before the command, or by PULLBOOK_BOOK', async () => {
    expect((await captured([...book(), 'list'])).code).toBe(0);
    const named = await captured(['list', '--json'], { env: { PULLBOOK_BOOK: at('book') } });
    expect(JSON.parse(named.out).book.name).toBe('book');
  });
});

describe('serving', () => {
  test('prints its address, answers, and stops', async () => {
    let release = (): void => undefined;
    const stop = new Promise<void>((resolve) => {
      release = resolve;
    });
    let seen = '';
    const running = captured(['serve', '--port', '0', ...book()], {
      out: (text) => {
        seen += text;
      },
      stopped: () => stop,
    });
    await expect.poll(() => seen, { timeout: 20_000 }).toMatch(/http:\/\/127\.0\.0\.1:\d+/);
    const [address] = /http:\/\/127\.0\.0\.1:\d+/.exec(seen)!;
    expect((await fetch(`${address}/api/book`)).status).toBe(200);
    // The command line works beside a running server.
    expect((await captured(['list', ...book()])).code).toBe(0);
    const port = address!.split(':').pop()!;
    const taken = await captured(['serve', '--port', port, ...book()]);
    expect(taken.code).toBe(1);
    expect(taken.err).toContain(port);
    release();
    expect((await running).code).toBe(0);
  });

  test('--demo does not take a book of the user for the demo', async () => {
    const { code, err } = await captured(['serve', '--demo', '--port', '0', ...book()]);
    expect(code).toBe(1);
    expect(err).toContain('your own');
  });
});
