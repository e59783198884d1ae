import { describe, expect, test } from 'vitest';
import type { ViewOptions } from './model.ts';
import { answerSentence, plainText } from './sentence.ts';
import { type InventedCombination, inventedAnswer } from './test-answer.ts';
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
    expect(said([base, plus(15)])).toBe('It adds 15 hp on average from 3,000 to 6,500 rpm.'));

  test('costs', () =>
    expect(said([base, plus(-4)])).toBe('It costs 4 hp on average from 3,000 to 6,500 rpm.'));

  test('says the window of the averages, not the common one', () =>
    expect(said([base, plus(15)], US, { window: [4000, 6500] })).toBe(
      'It adds 15 hp on average from 4,000 to 6,500 rpm.',
    ));

  test('less than a whole unit is not given a sign', () => {
    const quiet = [
      { ...base, repeatSpread: null },
      { ...plus(0.3), repeatSpread: null },
    ];
    expect(said(quiet)).toBe('It changes power by less than 1 hp on average from 3,000 to 6,500 rpm.');
    expect(said([quiet[0]!, { ...plus(-0.3), repeatSpread: null }])).toBe(said(quiet));
  });

  test('a gain smaller than the scatter of the repeats says so', () => {
    expect(said([{ ...base, repeatSpread: 0.01 }, plus(2)])).toBe(
      'It adds 2 hp on average from 3,000 to 6,500 rpm: smaller than the spread of the repeats.',
    );
  });

  test('a big change tells both figures at the top: 455 and 155 by the curves above', () =>
    expect(said([base, plus(-300)])).toBe(
      'It costs 300 hp on average from 3,000 to 6,500 rpm, and 300 hp at 6,500 rpm: 155 against 455.',
    ));

  test('boost that falls or rises is told on two supercharged combinations only', () => {
    const before = { ...base, ...blown };
    const changed = (psi: number, hp: number): InventedCombination => ({
      ...plus(hp),
      ...blown,
      boost: () => 10.4 + psi,
    });
    expect(said([before, changed(-1.1, 15)])).toBe(
      'It adds 15 hp on average from 3,000 to 6,500 rpm, and takes 1.1 psi off the boost at the top.',
    );
    expect(said([before, changed(1.1, 15)])).toBe(
      'It adds 15 hp on average from 3,000 to 6,500 rpm, with 1.1 psi more boost at the top.',
    );
    expect(said([before, changed(1.1, -15)])).toBe(
      'It costs 15 hp on average from 3,000 to 6,500 rpm, and raises the boost by 1.1 psi at the top.',
    );
    expect(said([before, changed(-0.1, 15)])).toBe('It adds 15 hp on average from 3,000 to 6,500 rpm.');
    expect(said([base, changed(0, 15)])).toBe('It adds 15 hp on average from 3,000 to 6,500 rpm.');
  });

  test('several changes are all told against A', () => {
    expect(said([base, plus(15), { ...plus(-4), shortName: 'short runners' }])).toBe(
      'Against A, on average from 3,000 to 6,500 rpm: B, longer cam, adds 15 hp and C, short runners, costs 4 hp.',
    );
  });

  test('in SI with a decimal comma: 20 hp are 15 kW, 1.1 psi are 7.6 kPa (1 psi = 6.894757 kPa)', () => {
    const before = { ...base, ...blown };
    expect(said([before, { ...plus(20), ...blown, boost: () => 9.3 }], SI)).toBe(
      'It adds 15 kW on average from 3 000 to 6 500 rpm, and takes 7,6 kPa off the boost at the top.',
    );
  });

  test('the figure is set apart', () => {
    const parts = answerSentence(trialInView(inventedAnswer([base, plus(15)]), US));
    expect(parts.filter((part) => part.strong).map((part) => part.text)).toEqual(['15\u00a0hp on average']);
  });

  test('no verdict is claimed', () => {
    for (const hp of [-300, -4, 0, 1, 15, 300])
      expect(said([base, plus(hp)])).not.toMatch(/clear|likely|signific|proven|noise/i);
  });
});

describe('what was not measured', () => {
  test('no baseline names it', () => {
    expect(said([{ ...base, pulls: 0, shortName: 'longer cam without supercharger' }, plus(15)])).toBe(
      'Not measured: no pull of longer cam without supercharger yet.',
    );
  });

  test('one combination, no pulls, no common speed', () => {
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
      'Side by side, on average from 6,400 to 6,500 rpm. A, base cam: 452 hp; B, longer cam: 467 hp.',
    );
    expect(text).not.toMatch(/adds|gain|costs/);
    const answer = inventedAnswer([base, plus(15)], { state: 'survey', window: [6400, 6500] });
    const strong = answerSentence(trialInView(answer, US)).filter((part) => part.strong);
    expect(strong.map((part) => part.text)).toEqual(['452\u00a0hp', '467\u00a0hp']);
  });
});
