import { describe, expect, test } from 'vitest';
import type { ViewOptions } from './model.ts';
import { stillDescription } from './still.ts';
import { type InventedCombination, inventedAnswer } from './test-answer.ts';
import type { InventedBand } from './test-band.ts';
import { leavesOf } from './test-leaves.ts';
import { trialCard } from './trial-card.ts';
import { trialPage } from './trial-page.ts';
import { comparisonVerdictLine } from './verdict-line.ts';

const US: ViewOptions = { units: 'us', decimalMark: '.' };
const SI: ViewOptions = { units: 'si', decimalMark: ',' };
const base: InventedCombination = { shortName: 'base cam', pulls: 3, power: (rpm) => 0.07 * rpm };
const changed = (hp: number, sure: InventedBand, pulls = 2): InventedCombination => ({
  ...base,
  shortName: 'longer cam',
  pulls,
  power: (rpm) => base.power(rpm) + hp,
  sure,
});
const above: InventedBand['clear'] = [{ fromRpm: 5000, toRpm: 6500, sign: 1 }];
const clear: InventedBand = { word: 'clear', mean: [11.2, 18.6], clear: above };
const likely: InventedBand = { word: 'likely', mean: [-0.4, 8.6], likely: [1.2, 6.9] };
const none: InventedBand = { word: 'no-difference', mean: [-2, 3], noDifferenceLargerThan: 0.009 };
const noise: InventedBand = { word: 'within-noise', mean: [-4.3, 8.4], peak: { gain: 3, low: -9, high: 15 } };

const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');
const pageOf = (combinations: InventedCombination[], options = US) =>
  trialPage(inventedAnswer(combinations), options);
const lists = (combinations: InventedCombination[]) => {
  const [first] = pageOf(combinations).mayAndMayNot;
  return { may: plain(first!.may.join(' | ')), mayNot: plain(first!.mayNot.join(' | ')) };
};

describe('the verdict line', () => {
  test('figures, pulls, set-ups, day, standard, where it is clear and what the rest is', () => {
    const answer = inventedAnswer([base, changed(15, clear)]);
    const figures =
      '+15 hp (11 to 19, 95 %) · 3 pulls against 2, 2 set-ups · same day · SAE J1349 · clear above 5,000 rpm, within the noise below';
    const [verdict] = trialPage(answer, US).verdicts;
    expect(verdict!.chip).toEqual({ text: 'Clear', tone: 'quiet', verdict: 'clear' });
    expect(plain(verdict!.figures)).toBe(figures);
    expect(plain(comparisonVerdictLine(answer.comparison!, 'B', {}, US))).toBe(`Clear · ${figures}`);
  });

  test('one set-up where the engine was not taken apart, one pull against one', () => {
    const kept = { ...likely, parts: { setUp: 0 } };
    const [verdict] = pageOf([{ ...base, pulls: 1 }, changed(4, kept, 1)]).verdicts;
    expect(plain(verdict!.figures)).toBe(
      '+4 hp (−1 to +9, 95 %) · one pull against one, one set-up · same day · SAE J1349',
    );
  });

  test('words of the four verdicts, quiet each, on the card too', () => {
    const words = [clear, likely, none, noise].map((sure) => {
      const answer = inventedAnswer([base, changed(2, sure)]);
      const card = trialCard(answer, US).chips[0]!;
      expect(card).toEqual(trialPage(answer, US).verdicts[0]!.chip);
      return plain(card.text);
    });
    expect(words).toEqual(['Clear', 'Likely', 'No difference larger than 0.9 %', 'Within the noise']);
  });

  test('without a band there is none, nor a list of what may be said', () => {
    const page = pageOf([base, { ...base, shortName: 'longer cam' }]);
    expect(page.verdicts).toEqual([]);
    expect(page.mayAndMayNot).toEqual([]);
    expect(page.bands).toEqual([]);
  });

  test('pulls and set-ups are not said twice: the line has them, the basis leaves them out', () => {
    const basis = plain(pageOf([base, changed(15, clear)]).basis);
    expect(basis).not.toMatch(/3 pulls against|set-ups/);
    expect(basis).toMatch(/^\+\d+\.\d % on average · repeats scatter/);
  });
});

describe('what may be said', () => {
  test('one pull of each: the difference, against what a repeat would differ by: half of −5 to 23 is 14', () => {
    const one: InventedBand = { word: 'within-noise', mean: [-5, 23] };
    const own = [{ ...base, pulls: 1 }, changed(9, { ...one, fromHistory: true }, 1)];
    expect(lists(own).may).toContain(
      'These two pulls differ by 9 hp; with this shop’s scatter a repeat of the same engine would differ by up to 14 hp in 95 of 100 cases.',
    );
    expect(lists([{ ...base, pulls: 1 }, changed(9, one, 1)]).may).toContain(
      'with the scatter usual in the trade',
    );
    expect(lists(own).mayNot).toContain('That “longer cam” adds power.');
    expect(lists([base, changed(9, one)]).may).not.toContain('These two pulls');
  });

  test('clear: what holds and where; not below, not the peak where it is not known', () => {
    const { may, mayNot } = lists([base, changed(15, clear)]);
    expect(may).toContain('It adds power: 15 hp on average from 3,000 to 6,500 rpm');
    expect(may).toContain('The gain is clear above 5,000 rpm');
    expect(mayNot).toContain('Anything below 5,000 rpm: there it is within the noise.');
    expect(mayNot).toContain('What the peak gains');
    expect(mayNot).not.toContain('That “longer cam” adds power.');
  });

  test('likely, no difference, within the noise: each with its own reserve', () => {
    expect(lists([base, changed(4, likely)]).may).toContain('80 % band (1 to 7 hp) leaves out zero');
    expect(lists([base, changed(1, none)]).may).toContain('no more than 0.9 % either way');
    expect(lists([base, changed(1, none)]).mayNot).toContain('no difference at all');
    const { may, mayNot } = lists([base, changed(2, noise)]);
    expect(may).toContain('neither show a gain nor rule one out');
    expect(mayNot).toContain('as much as 8 hp more fits these pulls too');
    expect(mayNot).toContain('That the peak is higher: the highest figures differ by +3 hp (−9 to +15).');
  });

  test('what would not settle it: pulls, where set-ups or drift hide the gain', () => {
    const hidden = (parts: InventedBand['parts']) =>
      lists([base, changed(2, { ...noise, parts: { pull: 1e-9, ...parts } })]).mayNot;
    expect(hidden({ setUp: 1e-2 })).toContain('so both must go back on the brake');
    expect(hidden({ setUp: 1e-4, drift: 1e-2 })).toContain('a pull of A after B would take it out');
    expect(hidden({ setUp: 0 })).not.toContain('would settle it:');
  });

  test('what the band rests on and these pulls do not show', () => {
    const trends: InventedBand['trends'] = [
      { group: 'B', setUp: null, pulls: 2, perPull: -0.004, low: -0.03, high: 0.02, state: 'cannot-tell' },
    ];
    const { mayNot } = lists([base, changed(15, { ...clear, trends, historySetAside: true })]);
    expect(mayNot).toContain('B with 2 pulls cannot tell them from scatter');
    expect(mayNot).toContain('the 0.50 % reckoned with is usual in the trade (common practice, no source)');
    expect(mayNot).toContain('its pulls scatter more (1.20 %)');
    const kept = lists([base, changed(15, { ...clear, parts: { setUp: 0 } })]).mayNot;
    expect(kept).not.toMatch(/taking apart|drift|scatter more/);
  });
});

describe('band in chart and tables', () => {
  const page = pageOf([base, changed(15, { ...clear, pointwise: 5, simultaneous: 8 })]);
  const gain = page.chart!.panels.find(({ id }) => id === 'gain')!;

  test('the gain panel has the band for all speeds in ink, and a rule where it becomes clear', () => {
    const [band] = gain.bands;
    expect(band!.style).toBe('ink');
    for (const [index, low] of band!.low.entries()) {
      expect(low).toBeCloseTo(7, 2);
      expect(band!.high[index]).toBeCloseTo(23, 2);
    }
    expect(band!.x).toHaveLength(36);
    expect(gain.rules).toEqual([{ x: 5000, text: 'clear above 5,000', side: 'right' }]);
  });

  test('the table at the cursor has the narrower band of that speed alone', () => {
    expect(page.cursor!.gains).toHaveLength(1);
    expect(page.cursor!.gains![0]!.cells[page.cursor!.at.indexOf(4000)]).toBe('10.0 to 20.0');
  });

  test('tables: averages with both bands, chosen speeds with theirs, what the band is made of adds up', () => {
    const averages = page.averages!.rows.filter(({ name }) => name.includes('band'));
    expect(averages.map(({ cells }) => plain(cells[2]!))).toEqual(['11.2 to 18.6', '11.2 to 18.6']);
    const speed = page.atSpeeds!.rows.find(({ name }) => name === '4,000')!;
    expect(speed.cells).toContain('10.0 to 20.0');
    const made = page.bands.find(({ id }) => id === 'band-made-of')!;
    const share = made.columns.findIndex(({ text }) => text === 'Share of the variance');
    const shares = made.rows.map(({ cells }) => plain(cells[share]!));
    // 1e-5 and 3e-5 of 4e-5.
    expect(shares).toEqual(['25 %', '75 %', '0 %', '0 %', '0 %']);
  });

  test('crossovers stand with the stretch in which they cannot be told', () => {
    const crossovers = [{ atRpm: 4100, lowRpm: 3700, highRpm: 4600 }];
    const table = pageOf([base, changed(1, { ...none, crossovers })]).bands.find(
      ({ id }) => id === 'crossovers',
    )!;
    expect(table.rows[0]!.cells).toEqual(['4,100', '3,700 to 4,600']);
  });

  test('a loss below and a gain above are ruled apart', () => {
    const both: InventedBand['clear'] = [{ fromRpm: 3000, toRpm: 4000, sign: -1 }, ...above];
    const panel = pageOf([base, changed(1, { ...none, clear: both })]).chart!.panels.at(-1)!;
    expect(panel.rules!.map(({ text }) => text)).toEqual([
      'loss clear below 4,000',
      'gain clear above 5,000',
    ]);
  });
});

describe('a still', () => {
  const still = (sure: InventedBand, hp = 15) =>
    stillDescription(inventedAnswer([base, changed(hp, sure)]), US);

  test('the gain with its band in the headline, the verdict first in the subline', () => {
    expect(plain(still(clear).headline)).toBe('Longer cam: +15 hp on average (11 to 19)');
    expect(plain(still(clear).subline)).toMatch(/^Clear above 5,000 rpm · from 3,000 to 6,500 rpm · 3 pulls/);
    expect(plain(still(noise, 2).headline)).toBe('Longer cam: +2 hp on average (−5 to +9)');
    expect(plain(still(noise, 2).subline)).toMatch(/^Within the noise · /);
    expect(still(clear).chart.panels.find(({ id }) => id === 'gain')!.bands).toHaveLength(1);
  });

  test('a big change has its average with the band beside the verdict', () => {
    const big = still(
      { word: 'clear', mean: [150, 170], clear: [{ fromRpm: 3000, toRpm: 6500, sign: 1 }] },
      160,
    );
    expect(plain(big.headline)).toBe('Longer cam: +160 hp at 6,500 rpm');
    expect(plain(big.subline)).toMatch(/^Clear throughout · \+160 hp on average \(150 to 170\) from/);
  });
});

test('no word and no number is broken in any verdict and units', () => {
  for (const sure of [clear, likely, none, noise]) {
    for (const options of [US, SI]) {
      const answer = inventedAnswer([base, changed(2, sure), { ...changed(-3, sure), shortName: 'third' }], {
        window: [4000, 6500],
      });
      const { texts, numbers } = leavesOf([
        trialPage(answer, options),
        trialCard(answer, options),
        stillDescription(answer, options),
      ]);
      expect(texts.filter((text) => /undefined|NaN|Infinity|\bnull\b/.test(text))).toEqual([]);
      expect(numbers.filter((value) => !Number.isFinite(value))).toEqual([]);
      expect(trialPage(answer, options).verdicts).toHaveLength(2);
    }
  }
});
