import { toInside } from '@pullbook/core/quantity';
import { describe, expect, test } from 'vitest';
import type { ViewOptions } from './model.ts';
import { answerSentence, comparisonSentence, plainText } from './sentence.ts';
import { type InventedCombination, inventedAnswer } from './test-answer.ts';
import type { InventedBand } from './test-band.ts';
import { trialInView } from './trial-in-view.ts';

const US: ViewOptions = { units: 'us', decimalMark: '.' };
const SI: ViewOptions = { units: 'si', decimalMark: ',' };
const base: InventedCombination = { shortName: 'base cam', pulls: 3, power: (rpm) => 0.07 * rpm };
const plus = (hp: number): InventedCombination => ({
  ...base,
  shortName: 'longer cam',
  pulls: 2,
  power: (rpm) => base.power(rpm) + hp,
});
const blown = { supercharged: true, boost: () => 10.4 };

/** The sentence with ordinary spaces, so that a person can read the expectation. */
function said(
  combinations: InventedCombination[],
  options = US,
  more: Parameters<typeof inventedAnswer>[1] = {},
): string {
  const sentence = answerSentence(trialInView(inventedAnswer(combinations, more), options));
  return plainText(sentence).replace(/[\u00a0\u202f]/g, ' ');
}

describe('an answered comparison', () => {
  test('adds', () =>
    expect(said([base, plus(15)])).toBe(
      'It adds 15 hp on average from 3,000 to 6,500 rpm: SAE J1349, 3 pulls against 2.',
    ));

  test('costs', () =>
    expect(said([base, plus(-4)])).toBe(
      'It costs 4 hp on average from 3,000 to 6,500 rpm: SAE J1349, 3 pulls against 2.',
    ));

  test('says the window of the averages, not the common one', () =>
    expect(said([base, plus(15)], US, { window: [4000, 6500] })).toBe(
      'It adds 15 hp on average from 4,000 to 6,500 rpm: SAE J1349, 3 pulls against 2.',
    ));

  test('less than a whole unit is not given a sign', () => {
    const quiet = [
      { ...base, repeatSpread: null },
      { ...plus(0.3), repeatSpread: null },
    ];
    expect(said(quiet)).toBe(
      'It changes power by less than 1 hp on average from 3,000 to 6,500 rpm: SAE J1349, 3 pulls against 2.',
    );
    expect(said([quiet[0]!, { ...plus(-0.3), repeatSpread: null }])).toBe(said(quiet));
  });

  test('a big change tells both figures at the top: 455 and 155 by the curves above', () =>
    expect(said([base, plus(-300)])).toBe(
      'It costs 300 hp on average from 3,000 to 6,500 rpm and 300 hp at 6,500 rpm (155 against 455): SAE J1349, 3 pulls against 2.',
    ));

  test('boost that falls or rises is told on two supercharged combinations only', () => {
    const before = { ...base, ...blown };
    const changed = (psi: number, hp: number): InventedCombination => ({
      ...plus(hp),
      ...blown,
      boost: () => 10.4 + psi,
    });
    expect(said([before, changed(-1.1, 15)])).toBe(
      'It adds 15 hp on average from 3,000 to 6,500 rpm, and takes 1.1 psi off the boost at the top: SAE J1349, 3 pulls against 2.',
    );
    expect(said([before, changed(1.1, 15)])).toBe(
      'It adds 15 hp on average from 3,000 to 6,500 rpm, with 1.1 psi more boost at the top: SAE J1349, 3 pulls against 2.',
    );
    expect(said([before, changed(1.1, -15)])).toBe(
      'It costs 15 hp on average from 3,000 to 6,500 rpm, and raises the boost by 1.1 psi at the top: SAE J1349, 3 pulls against 2.',
    );
    expect(said([before, changed(-0.1, 15)])).toBe(
      'It adds 15 hp on average from 3,000 to 6,500 rpm: SAE J1349, 3 pulls against 2.',
    );
    expect(said([base, changed(0, 15)])).toBe(
      'It adds 15 hp on average from 3,000 to 6,500 rpm: SAE J1349, 3 pulls against 2.',
    );
  });

  test('several changes are all told against A', () => {
    expect(said([base, plus(15), { ...plus(-4), shortName: 'short runners' }])).toBe(
      'Against A, on average from 3,000 to 6,500 rpm: B, longer cam, adds 15 hp and C, short runners, costs 4 hp – SAE J1349, A 3 pulls, B 2 and C 2.',
    );
  });

  test('in SI with a decimal comma: 20 hp are 15 kW, 1.1 psi are 7.6 kPa (1 psi = 6.894757 kPa)', () => {
    const before = { ...base, ...blown };
    expect(said([before, { ...plus(20), ...blown, boost: () => 9.3 }], SI)).toBe(
      'It adds 15 kW on average from 3 000 to 6 500 rpm, and takes 7,6 kPa off the boost at the top: SAE J1349, 3 pulls against 2.',
    );
  });

  test('the figure is set apart', () => {
    const parts = answerSentence(trialInView(inventedAnswer([base, plus(15)]), US));
    expect(parts.filter((part) => part.strong).map((part) => part.text)).toEqual(['15\u00a0hp on average']);
  });

  test('without a band no verdict is claimed', () => {
    for (const hp of [-300, -4, 0, 1, 15, 300])
      expect(said([base, plus(hp)])).not.toMatch(/clear|likely|signific|proven|noise/i);
  });
});

describe('with a band, as strongly as its verdict allows', () => {
  const over = 'on average from 3,000 to 6,500 rpm';
  const sure = (hp: number, sureOf: InventedBand): InventedCombination => ({ ...plus(hp), sure: sureOf });
  const above = { fromRpm: 5000, toRpm: 6500, sign: 1 as const };

  test('clear: the band, and from where on', () => {
    expect(said([base, sure(15, { word: 'clear', mean: [11.2, 18.6], clear: [above] })])).toBe(
      'It adds 15 hp on average (11 to 19) from 3,000 to 6,500 rpm, clear above 5,000 rpm: SAE J1349, 3 pulls against 2, 2 set-ups.',
    );
    expect(
      said([base, sure(15, { word: 'clear', mean: [11, 19], clear: [{ ...above, fromRpm: 3000 }] })]),
    ).toBe(
      'It adds 15 hp on average (11 to 19) from 3,000 to 6,500 rpm, clear throughout: SAE J1349, 3 pulls against 2, 2 set-ups.',
    );
    expect(said([base, sure(15, { word: 'clear', mean: [11, 19] })])).toBe(
      'It adds 15 hp on average (11 to 19) from 3,000 to 6,500 rpm, clear on average only: SAE J1349, 3 pulls against 2, 2 set-ups.',
    );
  });

  test('more than two stretches, or narrow ones, are no list: only in places between the first and the last', () => {
    const gain = (fromRpm: number, toRpm: number) => ({ fromRpm, toRpm, sign: 1 as const });
    const where = (...clear: ReturnType<typeof gain>[]) =>
      said([base, sure(15, { word: 'clear', mean: [11, 19], clear })]).replace(
        /^.*6,500 rpm, |: SAE.*$/g,
        '',
      );
    expect(where(gain(4850, 4900), gain(5800, 5850), gain(6150, 6150))).toBe(
      'clear only in places between 4,850 and 6,150 rpm',
    );
    expect(where(gain(3500, 3900), gain(4300, 4700), gain(5200, 5600))).toBe(
      'clear only in places between 3,500 and 5,600 rpm',
    );
    expect(where(gain(3500, 3900), gain(4300, 4700))).toBe(
      'clear from 3,500 to 3,900 rpm and from 4,300 to 4,700 rpm',
    );
    expect(where(gain(4850, 4900), above)).toBe('clear above 5,000 rpm');
    expect(where(gain(6150, 6150))).toBe('clear only at 6,150 rpm');
  });

  test('a big change that turns at the top says so: 30 % less on average, 45 hp more at 6,500 r/min', () => {
    const turning = {
      ...sure(0, { word: 'clear', mean: [-110, -90] }),
      power: (rpm: number) => (rpm < 6500 ? 0.045 * rpm : 500),
    };
    expect(said([base, turning])).toContain('but adds 45 hp at 6,500 rpm (500 against 455)');
  });

  test('what it rests on is held back, and only that', () => {
    const parts = answerSentence(
      trialInView(inventedAnswer([base, sure(15, { word: 'clear', mean: [11, 19], clear: [above] })]), US),
    );
    expect(parts.filter(({ quiet }) => quiet).map(({ text }) => text)).toEqual([
      'SAE J1349, 3 pulls against 2, 2 set-ups.',
    ]);
    const kept = sure(15, { word: 'clear', mean: [11, 19], clear: [above], parts: { setUp: 0 } });
    expect(
      said([
        { ...base, pulls: 1 },
        { ...kept, pulls: 1 },
      ]),
    ).toMatch(/: SAE J1349, one pull against one, one set-up\.$/);
  });

  test('a clear loss tells its size', () => {
    const below = { fromRpm: 3000, toRpm: 4200, sign: -1 as const };
    expect(said([base, sure(-4, { word: 'clear', mean: [-6.2, -1.4], clear: [below] })])).toBe(
      'It costs 4 hp on average (1 to 7) from 3,000 to 6,500 rpm, clear below 4,200 rpm: SAE J1349, 3 pulls against 2, 2 set-ups.',
    );
  });

  test('ends are rounded outward, and a decimal comes where they would contradict the verdict', () => {
    expect(said([base, sure(2, { word: 'clear', mean: [0.3, 3.64], clear: [above] })])).toContain(
      'It adds 2.0 hp on average (0.3 to 3.7) ',
    );
    expect(said([base, sure(2, { word: 'clear', mean: [0.04, 3.961], clear: [above] })])).toContain(
      '(0.04 to 3.97)',
    );
    expect(said([base, sure(0.3, { word: 'clear', mean: [0.11, 0.49], clear: [above] })])).toContain(
      'It adds 0.3 hp on average (0.1 to 0.5) ',
    );
  });

  test('likely: the band holds zero, with signs', () => {
    expect(said([base, sure(4, { word: 'likely', mean: [-0.4, 8.6] })])).toBe(
      'It likely adds 4 hp on average (−1 to +9) from 3,000 to 6,500 rpm: SAE J1349, 3 pulls against 2, 2 set-ups.',
    );
    expect(said([base, sure(-4, { word: 'likely', mean: [-8.6, 0.4] })])).toBe(
      'It likely costs 4 hp on average (−9 to +1) from 3,000 to 6,500 rpm: SAE J1349, 3 pulls against 2, 2 set-ups.',
    );
  });

  test('no difference larger than: rounded up, and never beyond what it was held against', () => {
    const most = (noDifferenceLargerThan: number, worthwhileRatio = 0.01) =>
      said([
        base,
        sure(1, { word: 'no-difference', mean: [-2, 3], noDifferenceLargerThan, worthwhileRatio }),
      ]);
    expect(most(0.0086)).toBe(
      `No difference larger than 0.9 % ${over}: SAE J1349, 3 pulls against 2, 2 set-ups.`,
    );
    expect(most(0.00944, 0.0095)).toBe(
      `No difference larger than 0.95 % ${over}: SAE J1349, 3 pulls against 2, 2 set-ups.`,
    );
  });

  test('within the noise: what fits, and what would settle it only where something would', () => {
    const text = said([base, sure(2, { word: 'within-noise', mean: [-4.3, 8.4] })]);
    expect(text).toBe(
      `Within the noise from 3,000 to 6,500 rpm (+2 hp on average, −5 to +9): SAE J1349, 3 pulls against 2, 2 set-ups.`,
    );
    // The set-ups' share of the variance is far above the gain: no more pulls in these set-ups can help.
    const hidden = sure(0.5, { word: 'within-noise', mean: [-40, 41], parts: { pull: 1e-9, setUp: 1e-2 } });
    expect(said([base, hidden])).not.toMatch(/settle/);
    // A gain of 1.2 % hidden by the scatter of the pulls alone, 0.45 % each way: a few more pulls show it.
    const near = sure(4, { word: 'within-noise', mean: [-1, 9], parts: { pull: 3e-5, setUp: 0 } });
    expect(said([base, near])).toMatch(
      /; (one|two|three|four|five|six) more pulls? of each would likely settle it: SAE J1349, 3 pulls/,
    );
  });

  test('a mean that hides a gain and a loss says both', () => {
    const clear = [{ fromRpm: 3000, toRpm: 4000, sign: -1 as const }, above];
    expect(
      said([base, sure(0.5, { word: 'no-difference', mean: [-2, 3], noDifferenceLargerThan: 0.009, clear })]),
    ).toBe(
      `No difference larger than 0.9 % ${over}, yet a gain is clear above 5,000 rpm and a loss below 4,000 rpm: SAE J1349, 3 pulls against 2, 2 set-ups.`,
    );
  });

  test('a big change keeps its figures at the top, a boost step its clause', () => {
    expect(
      said([base, sure(-300, { word: 'clear', mean: [-305, -295], clear: [{ ...above, sign: -1 }] })]),
    ).toBe(
      'It costs 300 hp on average (295 to 305) from 3,000 to 6,500 rpm and 300 hp at 6,500 rpm (155 against 455), clear above 5,000 rpm: SAE J1349, 3 pulls against 2, 2 set-ups.',
    );
    const boosted = { ...sure(15, { word: 'clear', mean: [11, 19], clear: [above] }), ...blown };
    expect(
      said([
        { ...base, ...blown },
        { ...boosted, boost: () => 9.3 },
      ]),
    ).toBe(
      'It adds 15 hp on average (11 to 19) from 3,000 to 6,500 rpm, clear above 5,000 rpm, and takes 1.1 psi off the boost at the top: SAE J1349, 3 pulls against 2, 2 set-ups.',
    );
  });

  test('several changes carry their verdicts', () => {
    expect(
      said([
        base,
        sure(15, { word: 'clear', mean: [11, 19] }),
        { ...sure(-4, { word: 'likely', mean: [-8.6, 0.4] }), shortName: 'short runners' },
        { ...sure(2, { word: 'within-noise', mean: [-4.3, 8.4] }), shortName: 'taller filter' },
      ]),
    ).toBe(
      'Against A, on average from 3,000 to 6,500 rpm: B, longer cam, clearly adds 15 hp (11 to 19); C, short runners, likely costs 4 hp (−9 to +1) and D, taller filter, is within the noise (−5 to +9 hp) – SAE J1349, A 3 pulls, B 2, C 2 and D 2, 2 set-ups.',
    );
  });

  test('a comparison without a trial says the same sentence', () => {
    const answer = inventedAnswer([base, sure(15, { word: 'clear', mean: [11.2, 18.6], clear: [above] })]);
    const ofTrial = plainText(answerSentence(trialInView(answer, US)));
    expect(plainText(comparisonSentence(answer.comparison!, 'B', {}, US))).toBe(ofTrial);
    expect(ofTrial).toMatch(/^It adds/);
  });

  test('highest figures alone are said as such', () => {
    const hp = (value: number) => toInside(value, 'hp');
    const answer = inventedAnswer([base, plus(15)], {
      state: 'no common window',
      peakGains: [
        { baselineKey: 'A', changedKey: 'B', gain: hp(12), low: hp(-8.4), high: hp(32.2), why: 'printed' },
      ],
    });
    const text = plainText(answerSentence(trialInView(answer, US))).replace(/\u00a0/g, ' ');
    expect(text).toBe(
      'Only the highest figures can be compared: B, longer cam, reads 12 hp more than A (−9 to +33) – SAE J1349, A 3 pulls and B 2.',
    );
    expect(
      plainText(
        comparisonSentence({ ...answer.comparison!, averagesWindowRpm: null }, 'B', { B: 'longer cam' }, US),
      ).replace(/\u00a0/g, ' '),
    ).toBe(text);
  });
});

describe('what was not measured', () => {
  test('no baseline names it', () => {
    expect(said([{ ...base, pulls: 0, shortName: 'longer cam without supercharger' }, plus(15)])).toBe(
      'Not measured: no pull of longer cam without supercharger yet.',
    );
  });

  test('one combination, no pulls, no common speed', () => {
    expect(said([base], US, { state: 'one combination' })).toMatch(
      /^Nothing to compare yet: A\b.* is the only combination\.$/,
    );
    expect(said([base, { ...plus(15), pulls: 0 }], US, { state: 'one combination' })).toBe(
      'Not measured: no pull of longer cam yet.',
    );
    expect(
      said(
        [
          { ...base, pulls: 0 },
          { ...plus(15), pulls: 0 },
        ],
        US,
        { state: 'no pulls' },
      ),
    ).toBe('Not measured: no pull is counted yet.');
    expect(said([base, plus(15)], US, { state: 'no common window' })).toBe(
      'Not comparable: A was pulled from 3,000 to 6,500 rpm and B was pulled from 3,000 to 6,500 rpm.',
    );
  });

  test('a survey sets figures side by side and claims no gain', () => {
    const text = said([base, plus(15)], US, { state: 'survey', window: [6400, 6500] });
    expect(text).toBe(
      'Side by side, on average from 6,400 to 6,500 rpm: A, base cam, 452 hp; B, longer cam, 467 hp – SAE J1349, A 3 pulls and B 2.',
    );
    expect(text).not.toMatch(/adds|gain|costs/);
    const answer = inventedAnswer([base, plus(15)], { state: 'survey', window: [6400, 6500] });
    const strong = answerSentence(trialInView(answer, US)).filter((part) => part.strong);
    expect(strong.map((part) => part.text)).toEqual(['452\u00a0hp', '467\u00a0hp']);
  });
});
