import type { TrialAnswer } from '@pullbook/core/trial';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ViewOptions } from '../model.ts';
import { type InventedCombination, inventedAnswer } from '../test-answer.ts';
import type { InventedBand } from '../test-band.ts';
import { leavesOf } from '../test-leaves.ts';
import { trialPage } from '../trial-page.ts';
import { type NamedStill, PICTURES } from './model.ts';
import { oddTrials, trialsWith } from './odd-trials.test-support.ts';
import { stillNamed, stillSet } from './still-set.ts';

const US: ViewOptions = { units: 'us', decimalMark: '.' };
const SI: ViewOptions = { units: 'si', decimalMark: ',' };
const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');
const before: InventedCombination = {
  shortName: 'base cam',
  pulls: 3,
  power: (rpm) => 0.07 * rpm,
  supercharged: true,
  boost: (rpm) => rpm / 650,
  stillClimbing: true,
};
const after: InventedCombination = {
  ...before,
  shortName: 'longer cam',
  pulls: 1,
  power: (rpm) => 0.073 * rpm,
  boost: (rpm) => rpm / 700,
};
const base: InventedCombination = { shortName: 'base cam', pulls: 3, power: (rpm) => 0.07 * rpm };
const changed = (hp: number, sure?: InventedBand): InventedCombination => ({
  ...base,
  shortName: 'longer cam',
  pulls: 2,
  power: (rpm) => base.power(rpm) + hp,
  ...(sure ? { sure } : {}),
});
const clear: InventedBand = {
  word: 'clear',
  mean: [11.2, 18.6],
  clear: [{ fromRpm: 5000, toRpm: 6500, sign: 1 }],
};
const likely: InventedBand = { word: 'likely', mean: [-0.4, 8.6], likely: [1.2, 6.9] };
const none: InventedBand = { word: 'no-difference', mean: [-2, 3], noDifferenceLargerThan: 0.009 };
const noise: InventedBand = { word: 'within-noise', mean: [-4.3, 8.4] };

const answerStillOf = (answer: TrialAnswer, options: ViewOptions) =>
  stillNamed(answer, options, null, 'answer')!.still;
const panelsOf = ({ still: { body } }: Pick<NamedStill, 'still'>) =>
  body.kind === 'stack' || body.kind === 'number' ? (body.chart?.panels ?? []) : [];
const named = (answer: TrialAnswer, name: NamedStill['name'], key: string | null = null, options = US) =>
  stillNamed(answer, options, null, name, key)!;
const numberOf = (answer: TrialAnswer) => {
  const { body } = named(answer, 'thumbnail').still;
  if (body.kind !== 'number') throw new Error('a thumbnail shows a number');
  return body;
};

describe('the answer as a still', () => {
  test('headline, subline and footer', () => {
    const still = answerStillOf(inventedAnswer([before, after], { window: [4000, 6500] }), US);
    expect(plain(still.headline)).toBe('B, longer cam, adds 16 hp on average');
    expect(plain(still.subline)).toBe(
      'from 4,000 to 6,500 rpm, and takes 0.7 psi off the boost at the top: SAE J1349, 3 pulls against 1.',
    );
    expect(plain(still.footer.join(' | '))).toBe(
      '3.8 L straight six · gasoline · centrifugal supercharger · boost at the end A 10.0, B 9.3 psi | SAE J1349, factor 1.021 · A 3 pulls and B 1 · inlet air 77 °F · 14 March 2026',
    );
    expect(panelsOf({ still }).map((panel) => panel.id)).toEqual(['power', 'gain', 'boost']);
  });

  test('a naturally aspirated comparison shows torque and gain instead of boost', () => {
    const bare = { ...before, supercharged: false };
    const still = answerStillOf(inventedAnswer([bare, { ...bare, power: (rpm) => 0.074 * rpm }]), US);
    expect(panelsOf({ still }).map((panel) => panel.id)).toEqual(['power', 'torque', 'gain']);
    expect(still.footer[0]).toContain('naturally aspirated');
  });

  test('a big change has both figures at the top under the headline: 650 less 455', () => {
    const still = answerStillOf(inventedAnswer([before, { ...after, power: (rpm) => 0.1 * rpm }]), US);
    expect(plain(still.subline)).toContain('and 195 hp at 6,500 rpm (650 against 455)');
  });

  test('says the words of the page in two sizes, the combination by its name', () => {
    const answer = inventedAnswer([base, changed(15, clear)]);
    const { headline, subline } = answerStillOf(answer, US);
    expect(`${headline} ${subline}`.replace('B, longer cam, ', 'It ')).toBe(
      trialPage(answer, US)
        .sentence.map(({ text }) => text)
        .join(''),
    );
    expect(plain(headline)).toBe('B, longer cam, adds 15 hp on average (11 to 19)');
    expect(plain(subline)).toBe(
      'from 3,000 to 6,500 rpm, clear above 5,000 rpm: SAE J1349, 3 pulls against 2, 2 set-ups.',
    );
    const within = answerStillOf(inventedAnswer([base, changed(2, noise)]), US);
    expect(plain(within.headline)).toBe('B, longer cam, is within the noise');
    expect(plain(within.subline)).toMatch(/^from 3,000 to 6,500 rpm \(\+2 hp on average, −5 to \+9\)/);
    expect(plain(answerStillOf(inventedAnswer([base, changed(1, none)]), US).headline)).toBe(
      'B, longer cam, makes no difference larger than 0.9 % on average',
    );
    const gain = panelsOf({ still: answerStillOf(answer, US) }).find(({ id }) => id === 'gain');
    expect(gain!.bands).toHaveLength(1);
  });

  test('a big change has the top of the window in smaller letters', () => {
    const throughout: InventedBand['clear'] = [{ fromRpm: 3000, toRpm: 6500, sign: 1 }];
    const big = answerStillOf(
      inventedAnswer([base, changed(160, { word: 'clear', mean: [150, 170], clear: throughout })]),
      US,
    );
    expect(plain(big.headline)).toBe('B, longer cam, adds 160 hp on average (150 to 170)');
    expect(plain(big.subline)).toMatch(
      /^from 3,000 to 6,500 rpm and 160 hp at 6,500 rpm \(615 against 455\), clear throughout: /,
    );
  });
});

test('a trial of two with boost has every picture that it has something for, in the order in which they are told', () => {
  const set = stillSet(inventedAnswer([before, after]), US, null);
  expect(set.map(({ name, key }) => `${name} ${key ?? ''}`.trim())).toEqual([
    'answer',
    'alone A',
    'alone B',
    'power',
    'torque',
    'gain',
    'boost',
    'table',
    'combination A',
    'combination B',
    'reply',
    'thumbnail',
  ]);
});

describe('a thumbnail shows no more than the verdict lets be said', () => {
  const shown = (hp: number, sure?: InventedBand) => {
    const { number, unit, band, what } = numberOf(inventedAnswer([base, changed(hp, sure)]));
    return plain([number, unit, '|', band, '|', what].join(' '));
  };
  test.each([
    ['clear', shown(15, clear), '+15 hp | 11 to 19 hp | on average: longer cam'],
    ['likely', shown(4, likely), '+4 hp | likely, −1 to +9 hp | on average: longer cam'],
    ['no difference', shown(1, none), '±0.9 % | no larger difference, if any | on average: longer cam'],
    ['within the noise', shown(2, noise), '−5 to +9 hp | within the noise | on average: longer cam'],
    ['no band', shown(15), '+15 hp | how sure: not known | on average: longer cam'],
  ])('%s', (_, is, wanted) => {
    expect(is).toBe(wanted);
  });

  test('of several changes the surest, a survey none, a lone combination its own highest figure', () => {
    const three = inventedAnswer([base, changed(40, noise), changed(15, clear)]);
    expect(plain(numberOf(three).what)).toBe('on average: longer cam, of 2 changes');
    expect(numberOf(three).number).toBe('+15');
    expect(numberOf(inventedAnswer([base, changed(15)], { state: 'survey' }))).toMatchObject({
      number: '2',
      unit: 'engines',
      band: 'no gain claimed',
      what: 'Side by side: base cam and longer cam',
    });
    const alone = numberOf(inventedAnswer([base], { state: 'one combination' }));
    expect(alone).toMatchObject({ number: '455', unit: 'hp', what: 'A, base cam' });
    // The figure of one side would be taken for the answer.
    const lacking = inventedAnswer([base, { ...changed(15), pulls: 0 }], { state: 'one combination' });
    expect(stillNamed(lacking, US, null, 'thumbnail')).toBeNull();
  });
});

test('the table of speeds has the figures of the page, and its shares are those of its own figures', () => {
  for (const options of [US, SI]) {
    const answer = inventedAnswer([base, changed(15, clear)], { window: [4000, 6500] });
    const page = trialPage(answer, options);
    const { body } = named(answer, 'table', null, options).still;
    if (body.kind !== 'table') throw new Error('a table shows a table');
    const cells = body.rows.map((row) => row.map(({ text }) => text));
    const atSpeeds = new Map(page.atSpeeds!.rows.map(({ name, cells: of }) => [name, of.slice(0, 3)]));
    expect(cells.slice(0, -1).map(([name]) => name)).toEqual([...atSpeeds.keys()]);
    for (const [name, ...figures] of cells.slice(0, -1))
      expect(figures.slice(0, 3)).toEqual(atSpeeds.get(name!));
    const power = page.averages!.rows.find(({ name }) => name === 'Power')!;
    expect(cells.at(-1)!.slice(1, 4)).toEqual(power.cells.slice(0, 3));
    const value = (text: string) =>
      Number(
        text
          .replace('−', '-')
          .replace(/[^\d.,-]/g, '')
          .replace(',', '.'),
      );
    for (const [, from, to, , ratio] of cells) {
      const own = 100 * (value(to!) / value(from!) - 1);
      // Figures to a tenth on some 200 of them: a share is known to 0.05 + 100 × 0.1 / 200.
      expect(Math.abs(value(ratio!) - own)).toBeLessThan(0.1);
    }
    const strong = body.rows.map((row) => row[3]!.strong === true);
    expect(strong).toEqual([false, false, false, false, true, true, true, true, true]);
  }
});

test('ten changes stand in one table, none without its band and verdict', () => {
  const ten = [base, ...Array.from({ length: 9 }, (_, place) => changed(place, place > 4 ? clear : noise))];
  const { body, headline } = named(inventedAnswer(ten), 'table').still;
  if (body.kind !== 'table') throw new Error('a table shows a table');
  expect(headline).toBe('9 changes against A, base cam');
  expect(body.rows).toHaveLength(9);
  for (const row of body.rows) {
    expect(plain(row[3]!.text)).toMatch(/^[−+]?\d.* to [−+]?\d/);
    expect(['clear', 'within the noise']).toContain(row[4]!.text);
    expect(row[2]!.strong === true).toBe(row[4]!.text === 'clear');
  }
});

describe('of any trial', () => {
  const trials = fc.sample(fc.tuple(oddTrials, fc.constantFrom(US, SI)), { seed: 6, numRuns: 24 });
  const sets = trials.map(([answer, options]) => ({ answer, set: stillSet(answer, options, null) }));
  /** Texts without the names that people gave, which may be anything. */
  const madeHere = ({ trial }: TrialAnswer, of: unknown) => {
    const own = trial.combinations
      .flatMap(({ shortName }) => [shortName, cutAsShown(shortName)])
      .filter(Boolean);
    return leavesOf(of).texts.map((text) => own.reduce((left, name) => left.replaceAll(name, ''), text));
  };
  const cutAsShown = (name: string) => [...name.trim()].slice(0, 43).join('').trimEnd();

  test('the pictures share one range of engine speeds, one reach a panel, and nothing drawn lies outside of it', () => {
    let stacks = 0;
    for (const { set } of sets) {
      const charts = set.flatMap(({ still: { body } }) =>
        body.kind === 'stack' || body.kind === 'number' ? (body.chart ?? []) : [],
      );
      stacks += charts.length;
      expect(new Set(charts.map(({ xRange }) => `${xRange}`)).size).toBeLessThanOrEqual(1);
      const reaches = new Map<string, string>();
      for (const { panels, xRange } of charts) {
        for (const { id, reach, lines, bands } of panels) {
          expect(`${reach}`).toBe(reaches.get(id) ?? `${reach}`);
          reaches.set(id, `${reach}`);
          const drawn = [
            ...lines.flatMap(({ y }) => y),
            ...bands.flatMap(({ low, high }) => [...low, ...high]),
          ];
          const values = drawn.filter((one) => one !== null);
          expect(Math.min(...values)).toBeGreaterThanOrEqual(reach![0]);
          expect(Math.max(...values)).toBeLessThanOrEqual(reach![1]);
          const speeds = lines.flatMap((line) => line.x);
          expect(Math.min(...speeds)).toBeGreaterThanOrEqual(xRange[0]);
          expect(Math.max(...speeds)).toBeLessThanOrEqual(xRange[1]);
        }
      }
    }
    expect(stacks).toBeGreaterThan(100);
  });

  test('no word or number is broken, each picture is named once and says how many pulls and by which standard', () => {
    for (const { answer, set } of sets) {
      expect(madeHere(answer, set).filter((text) => /undefined|NaN|Infinity|\bnull\b/.test(text))).toEqual(
        [],
      );
      expect(leavesOf(set).numbers.filter((value) => !Number.isFinite(value))).toEqual([]);
      const names = set.map(({ name, key }) => `${name} ${key}`);
      expect(new Set(names).size).toBe(names.length);
      expect(names).toContain('reply null');
      for (const { name, key, title, still } of set) {
        expect(PICTURES).toContain(name);
        for (const text of [still.headline, title, still.alternative]) expect(text).not.toBe('');
        const footer = still.footer.join(' ');
        const isOfOne = name === 'alone' || name === 'combination';
        const pulled = answer.trial.pulls.some((one) => !isOfOne || one.key === key);
        expect(footer).toMatch(pulled ? /SAE J1349.*\d pull/ : /no counted pull/i);
        expect(footer).toMatch(/3[.,]8\u00a0L/);
      }
    }
  });

  test('what is within the noise, or claims no gain, is never said to add or cost power', () => {
    let held = 0;
    const quiet = [
      ...fc.sample(trialsWith(['within-noise']), { seed: 8, numRuns: 8 }),
      ...fc.sample(trialsWith(['no-difference', 'within-noise']), { seed: 9, numRuns: 6 }),
    ];
    for (const answer of quiet) {
      const set = stillSet(answer, US, null);
      const gains = answer.state === 'answered' ? (answer.comparison?.gains ?? []) : [];
      held += gains.length;
      for (const { name, still } of set) {
        const said = [still.headline, still.subline, still.alternative, name === 'reply' ? still.body : ''];
        const made = madeHere(answer, said);
        expect(made.filter((text) => /\b(adds|costs|takes|raises)\b/.test(text))).toEqual([]);
        if (still.body.kind === 'number' && gains.length > 0)
          expect(still.body.number).toMatch(/^±|^−.* to \+/);
        // The first column names the row.
        const figures = still.body.kind === 'table' ? still.body.rows.flatMap((row) => row.slice(1)) : [];
        expect(figures.filter(({ text, strong }) => strong === true || text === 'clear')).toEqual([]);
      }
    }
    expect(held).toBeGreaterThan(10);
  });
});
