import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { captured, capturedJson, stepTest } from './testing/captured.ts';

let folder = '';
const book = (): string[] => ['--book', join(folder, 'book')];
/** Name of a pull and how much it makes, as a logarithm over the baseline; the same shape in all, so that only levels count. */
const LEVELS: Record<string, number> = {
  A1: 0.002,
  A2: -0.002,
  B1: 0.021,
  B2: 0.019,
  Same: 0.0021,
  South: 0.02,
};

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-cli-compare-'));
  for (const [name, level] of Object.entries(LEVELS)) {
    const file = join(folder, `${name}.csv`);
    await writeFile(file, stepTest(Math.exp(level)));
    const cell = name === 'South' ? 'south' : 'north';
    const { code } = await captured([
      'import',
      file,
      ...['--name', name, '--corrected', 'observed', '--cell', cell],
      ...book(),
    ]);
    expect(code).toBe(0);
  }
}, 60_000);

afterAll(() => rm(folder, { recursive: true, force: true }));

async function compared(baseline: string, changed: string, ...options: string[]) {
  const sides = ['--baseline', baseline, '--changed', changed, '--correction', 'observed'];
  const { code, json } = await capturedJson(['compare', ...sides, ...options, ...book()]);
  expect(code).toBe(0);
  return json;
}

/** Per cent at the ends of a band about a logarithm. */
const ends = (level: number, half: number) =>
  [-1, 1].map((sign) => 100 * Math.expm1(level + sign * half)) as [number, number];

describe('the band, worked by hand', () => {
  test('one pull against one with a known scatter: t x sigma x √2', async () => {
    const json = await compared('A1', 'B1', '--noise', '0.5%', '--noise-degrees-of-freedom', '200');
    // Student's t at 0.975 with 200 degrees of freedom, any table: 1.9719.
    const [low, high] = ends(0.019, 1.9719 * 0.005 * Math.SQRT2);
    expect(json.meanGainLowPercent).toBeCloseTo(low, 3);
    expect(json.meanGainHighPercent).toBeCloseTo(high, 3);
    expect(json.verdict).toBe('clear');
    expect(json.noise).toMatchObject({ setUpSigmaPercent: 0, degreesOfFreedom: 200, fromHistory: true });
    expect(json.noise.pullSigmaPercent).toBeCloseTo(0.5, 12);
  });

  test('two against two: repeats and what was said are put together', async () => {
    const json = await compared('A1,A2', 'B1,B2', '--noise', '0,5 %');
    // Squares of the repeats: 2 x 0.002² + 2 x 0.001² with 2 degrees of freedom, beside 0.005² with 20.
    const variance = (20 * 0.005 ** 2 + 2 * 0.002 ** 2 + 2 * 0.001 ** 2) / 22;
    expect(json.noise.pullSigmaPercent).toBeCloseTo(100 * Math.sqrt(variance), 4);
    expect(json.noise.degreesOfFreedom).toBe(22);
    // t at 0.975 and 0.9 with 22 degrees of freedom: 2.0739, 1.3212.
    const half = 2.0739 * Math.sqrt(variance);
    const kilowatts = (percent: number) => (percent * json.meanGainKw) / json.meanGainPercent;
    const [low, high] = ends(0.02, half);
    expect(json.meanGainLowPercent).toBeCloseTo(low, 2);
    expect(json.meanGainHighPercent).toBeCloseTo(high, 2);
    expect(json.meanGainLowKw).toBeCloseTo(kilowatts(json.meanGainLowPercent), 9);
    expect(json.likelyGainLowKw).toBeCloseTo(kilowatts(ends(0.02, 1.3212 * Math.sqrt(variance))[0]), 2);
  });

  test('set-ups that nobody noted count as two', async () => {
    const said = ['--noise', '0.4%', '--set-up-noise', '0.5%', '--noise-degrees-of-freedom', '1000000'];
    const json = await compared('A1', 'B1', ...said);
    const half = 1.96 * Math.SQRT2 * Math.hypot(0.004, 0.005);
    const [low, high] = ends(0.019, half);
    expect(json.meanGainLowPercent).toBeCloseTo(low, 2);
    expect(json.meanGainHighPercent).toBeCloseTo(high, 2);
    expect(json.noise.setUpSigmaPercent).toBeCloseTo(0.5, 12);
  });

  test('no difference and within the noise go by the gain that matters', async () => {
    const none = await compared('A1', 'Same', '--noise', '0.2%', '--worthwhile', '1%');
    // t at 0.95 with 20 degrees of freedom: 1.7247.
    const most = 100 * Math.expm1(0.0001 + 1.7247 * 0.002 * Math.SQRT2);
    expect(none).toMatchObject({ verdict: 'no-difference', worthwhilePercent: 1 });
    expect(none.noDifferenceLargerThanPercent).toBeCloseTo(most, 3);
    expect(none.sentence).toContain('No difference larger than');
    const noise = await compared('A1', 'Same', '--noise', '0.2%', '--worthwhile', '0.4%');
    expect(noise.verdict).toBe('within-noise');
  });

  test('at a speed chosen beforehand the band is narrower than for all speeds at once', async () => {
    const json = await compared('A1,A2', 'B1,B2', '--noise', '0.5%', '--at', '4000,4050', '--at', '9000');
    const [node, between, outside] = json.at;
    const row = json.curve.find((one: { engineSpeedRpm: number }) => one.engineSpeedRpm === 4000);
    expect(node.gainKw).toBeCloseTo(row.gainKw, 9);
    expect(node.gainLowKw).toBeGreaterThan(row.gainLowKw);
    expect(node.gainHighKw).toBeLessThan(row.gainHighKw);
    const next = json.curve.find((one: { engineSpeedRpm: number }) => one.engineSpeedRpm === 4100);
    expect(between.gainKw).toBeCloseTo((row.gainKw + next.gainKw) / 2, 9);
    expect(outside).toEqual({ engineSpeedRpm: 9000, gainKw: null, gainLowKw: null, gainHighKw: null });
    for (const { gainKw, gainLowKw, gainHighKw } of json.curve) {
      expect(gainLowKw).toBeLessThan(gainKw);
      expect(gainHighKw).toBeGreaterThan(gainKw);
    }
  });
});

describe('what is said of it', () => {
  test('without a word the scatter is the book’s, and one cell against another widens it', async () => {
    const near = await compared('A1', 'B1');
    const far = await compared('A1', 'South');
    const width = (json: typeof near) => json.meanGainHighPercent - json.meanGainLowPercent;
    expect(near.noise.setUpSigmaPercent).toBeGreaterThan(0);
    expect(width(far)).toBeGreaterThan(2 * width(near));
  });

  test('scatter said by hand names what it leaves out', async () => {
    const codes = (json: { remarks: { code: string }[] }) => json.remarks.map(({ code }) => code);
    const far = await compared('A1', 'South', '--noise', '0.5%');
    expect(codes(far)).toContain('left-out-of-stated-scatter');
    expect(JSON.stringify(far.remarks)).toContain('different cells');
    expect(codes(await compared('A1', 'B1', '--noise', '0.5%'))).not.toContain('left-out-of-stated-scatter');
  });

  test('a pull broken off in the cell and one entered twice are named where they count', async () => {
    const file = join(folder, 'again.csv');
    // The figures of A1 once more, as other bytes: the same ones are known to the book.
    await writeFile(file, `${stepTest(Math.exp(LEVELS.A1!))}\n`);
    const entered = ['import', file, '--name', 'Again', '--corrected', 'observed', '--aborted', ...book()];
    expect((await captured(entered)).code).toBe(0);
    const json = await compared('A1,Again', 'B1', '--noise', '0.5%');
    const codes = json.remarks.map(({ code }: { code: string }) => code);
    expect(codes).toEqual(expect.arrayContaining(['aborted-pull-counted', 'entered-twice']));
    expect((await compared('A1,A2', 'B1')).remarks.map(({ code }: { code: string }) => code)).not.toEqual(
      expect.arrayContaining(['aborted-pull-counted']),
    );
  });

  test('conditions have name and rule beside their older names', async () => {
    const { conditions } = await compared('A1', 'South');
    const cell = conditions.find((one: { id: string }) => one.id === 'cell');
    expect(cell).toMatchObject({ baseline: 'north', changed: 'south', state: 'differs' });
    for (const one of conditions) expect([one.name, one.rule]).toEqual([one.label, one.why]);
  });

  test('a person reads the sentence first, then the verdict and the band', async () => {
    const argv = ['compare', '--baseline', 'A1,A2', '--changed', 'B1,B2', '--noise', '0.5%', '--units', 'si'];
    const { code, out } = await captured([...argv, '--correction', 'observed', ...book()]);
    expect(code).toBe(0);
    const [sentence, verdict] = out.split('\n');
    expect(sentence).toMatch(/^It adds \d+(\.\d)? kW on average \(/);
    expect(verdict).toMatch(/^Clear · /);
    expect(out).toContain('Band: 95 %, +');
    expect(out).toContain('Band, all speeds');
    expect(out).not.toMatch(/undefined|NaN|null/);
  });
});

test.each([
  [['--noise', '0.5'], '0.5%'],
  [['--noise', '0%'], 'above 0%'],
  [['--noise', '-1%'], '0% to 20%'],
  [['--noise', '45%'], '0% to 20%'],
  [['--noise', 'much'], '0.5%'],
  [['--set-up-noise', '0.5'], '0.5%'],
  [['--drift-noise', '1 hp/h'], '0.5%'],
  [['--noise', '0.5%', '--noise-degrees-of-freedom', '0'], 'from 1 to 1000000'],
  [['--noise-degrees-of-freedom', '20'], '--noise'],
  [['--worthwhile', '0%'], 'above 0%'],
  [['--at', '4000,fast'], '4000,5000'],
])('%j is wrong usage, and says what is accepted', async (options, said) => {
  const argv = ['compare', '--baseline', 'A1', '--changed', 'B1', ...options, ...book()];
  const { code, err } = await captured(argv);
  expect(code).toBe(2);
  expect(err).toContain(said);
});
