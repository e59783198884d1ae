import { describe, expect, test } from 'vitest';
import type { ViewOptions } from './model.ts';
import { stillSet } from './publish/still-set.ts';
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
  test('share with its band, day and repeats: nothing that the sentence says. 15 of 332.5 hp is 4.5 %', () => {
    const answer = inventedAnswer([base, changed(15, clear)]);
    const figures = '+4.5 % (+3.3 to +5.6 %, at 95 %) · same day · repeats scatter A 0.4 % and B 0.4 %';
    const [verdict] = trialPage(answer, US).verdicts;
    expect(verdict!.chip).toEqual({ text: 'Clear', tone: 'quiet', verdict: 'clear' });
    expect(plain(verdict!.figures)).toBe(figures);
    expect(plain(comparisonVerdictLine(answer.comparison!, 'B', {}, US))).toBe(`Clear · ${figures}`);
  });

  test('one pull against one, and several gains, which say here where they are clear', () => {
    const kept = { ...likely, parts: { setUp: 0 } };
    const [verdict] = pageOf([{ ...base, pulls: 1 }, changed(4, kept, 1)]).verdicts;
    expect(plain(verdict!.figures)).toBe(
      '+1.2 % (−0.2 to +2.6 %, at 95 %) · same day · no pull was repeated',
    );
    const several = pageOf([
      base,
      changed(15, clear),
      { ...changed(4, likely), shortName: 'third' },
    ]).verdicts;
    expect(several.map(({ figures }) => plain(figures).split(' · ')[1])).toEqual([
      'clear above 5,000 rpm',
      'same day',
    ]);
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

  test('nothing is said twice: sentence, line and basis', () => {
    const basis = plain(pageOf([base, changed(15, clear)]).basis);
    expect(basis).toBe('Factor 1.021 · 14 March 2026');
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
    expect(mayNot).toContain('as much as 9 hp more fits these pulls too');
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
    expect(mayNot).toContain('heat soak has no part in it: too few pulls of B in one set-up');
    expect(mayNot).toContain(
      'taking apart and putting together (0.50 % each time) is 75 % of what the band is made of. More pulls',
    );
    expect(mayNot).toContain('The figure is usual in the trade (common practice, no source).');
    expect(mayNot).toContain('pulls of one set-up scatter by 1.20 %, more than what was known lets expect');
    const kept = lists([base, changed(15, { ...clear, parts: { setUp: 0 } })]).mayNot;
    expect(kept).not.toMatch(/taking apart|drift|soak|lets expect/);
  });
});

describe('what stands in one place only', () => {
  const remark = (code: string) => ({ code, level: 'note' as const, message: code });

  test('what may not be said names drift, set-ups, cells, single pulls and history set aside; the remarks leave them out', () => {
    const answer = inventedAnswer([
      { ...base, pulls: 1 },
      changed(15, { ...clear, parts: { drift: 2e-5, cell: 9e-5 }, historySetAside: true }),
    ]);
    answer.remarks = [
      'drift-in-band',
      'set-up-in-band',
      'cells-in-band',
      'single-pull',
      'history-set-aside',
      'planned-look',
    ].map(remark);
    const page = trialPage(answer, US);
    expect(page.remarks.map(({ text }) => text)).toEqual(['planned-look']);
    const mayNot = plain(page.mayAndMayNot[0]!.mayNot.join(' | '));
    // 2e-5 of 15e-5; 3e-5 and 9e-5 of it.
    expect(mayNot).toContain(
      'it is 13 % of what the band is made of. A pull of A after B would take it out.',
    );
    expect(mayNot).toContain(
      '(0.50 % each time) and another cell (2.00 %) are 80 % of what the band is made of.',
    );
    expect(mayNot).toContain('pulls in one cell do.');
    expect(mayNot).toContain('That A repeats: only one pull of it counts');
    expect(mayNot).toContain('scatter by 1.20 %');
  });

  test('what a rule says that the page has its own words for is no remark again', () => {
    const answer = inventedAnswer([base, changed(15, clear)]);
    answer.views.get('A1')!.remarks.push(remark('torque-still-climbing'), remark('other'));
    answer.findings.push({
      ruleId: 'V29',
      level: 'note',
      subject: 'pull A1',
      input: '',
      value: null,
      threshold: null,
      kind: null,
      source: '',
      remark: remark('rule-v29'),
      silenced: null,
    });
    const page = trialPage(answer, US);
    expect(page.remarks.map(({ text }) => text)).toEqual(['Pull A1: other']);
    expect(page.findings).toEqual([]);
  });

  test('what hides a gain between cells is not blamed on set-ups', () => {
    const hidden = { ...noise, parts: { pull: 1e-9, setUp: 1e-4, cell: 1e-2 } };
    expect(lists([base, changed(2, hidden)]).mayNot).toContain('so both must be pulled in one');
  });

  test('a gain that is not the plain difference of the curves says so in its panel', () => {
    const noteOf = (code: string) => {
      const answer = inventedAnswer([base, changed(15, clear)]);
      answer.comparison!.remarks.push(remark(code));
      return plain(trialPage(answer, US).chart!.panels.at(-1)!.note);
    };
    const band = '95 % band, whole window';
    expect(noteOf('other')).toBe(band);
    expect(noteOf('drift-taken-out')).toBe(
      '95 % band, drift taken out: not the plain difference of the curves',
    );
    expect(noteOf('weighed-by-set-up')).toMatch(/weighed by set-up: not the plain difference/);
  });

  test('a gain that turns with no speed clear is noise and no caveat; with one clear it is told', () => {
    const caveatsOf = (sure: InventedBand) => {
      const answer = inventedAnswer([base, changed(1, sure)]);
      answer.comparison!.gains[0]!.crossoversRpm = [3500, 4000, 4500];
      return plain(trialPage(answer, US).caveats.join(' '));
    };
    expect(caveatsOf(none)).not.toContain('Not the same everywhere');
    expect(caveatsOf({ ...none, clear: above })).toContain(
      'changes sign 3 times between 3,500 rpm and 4,500 rpm',
    );
  });

  test('a look of a plan is told beside the verdict', () => {
    const answer = inventedAnswer([base, changed(15, clear)]);
    answer.comparison!.gains[0]!.band!.scatter.gains[0]!.look = {
      number: 1,
      of: 2,
      alphaSpent: 0.02,
      criticalZ: 2.4,
    };
    expect(trialPage(answer, US).verdicts[0]!.figures).toContain(' · look 1 of 2 planned · same day');
  });

  test('a printed figure says what it cannot tell', () => {
    const peakGains = [
      { baselineKey: 'A', changedKey: 'B', gain: 9000, low: -6000, high: 24000, why: 'Printed alone.' },
    ];
    const page = trialPage(
      inventedAnswer([base, { ...base, shortName: 'printed' }], { state: 'no common window', peakGains }),
      US,
    );
    expect(page.caveats[0]).toBe('Printed alone.');
    expect(page.basis).not.toMatch(/SAE J1349,|averages/);
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

test('no word and no number is broken in any verdict and units', () => {
  for (const sure of [clear, likely, none, noise]) {
    for (const options of [US, SI]) {
      const answer = inventedAnswer([base, changed(2, sure), { ...changed(-3, sure), shortName: 'third' }], {
        window: [4000, 6500],
      });
      const { texts, numbers } = leavesOf([
        trialPage(answer, options),
        trialCard(answer, options),
        stillSet(answer, options, null),
      ]);
      expect(texts.filter((text) => /undefined|NaN|Infinity|\bnull\b/.test(text))).toEqual([]);
      expect(numbers.filter((value) => !Number.isFinite(value))).toEqual([]);
      expect(trialPage(answer, options).verdicts).toHaveLength(2);
    }
  }
});
