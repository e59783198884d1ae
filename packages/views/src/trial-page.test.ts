import { toInside } from '@pullbook/core/quantity';
import { describe, expect, test } from 'vitest';
import type { ViewOptions } from './model.ts';
import { stillNamed, stillSet } from './publish/still-set.ts';
import { type InventedCombination, inventedAnswer } from './test-answer.ts';
import { NODES } from './test-band.ts';
import { leavesOf } from './test-leaves.ts';
import { trialCard } from './trial-card.ts';
import { trialPage } from './trial-page.ts';

const US: ViewOptions = { units: 'us', decimalMark: '.' };
const SI: ViewOptions = { units: 'si', decimalMark: ',' };
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

describe('a trial page', () => {
  const answers = [
    inventedAnswer([before, after], { window: [4000, 6500] }),
    inventedAnswer([before, after], { empty: [3000, 4200, 6500] }),
    inventedAnswer([{ ...before, pulls: 0 }, after]),
    inventedAnswer([before, { ...after, pulls: 0 }], { state: 'one combination' }),
    inventedAnswer(
      [
        { ...before, pulls: 0 },
        { ...after, pulls: 0 },
      ],
      { state: 'no pulls' },
    ),
    inventedAnswer([before, after, { ...after, shortName: 'third' }]),
    inventedAnswer([before, after], { state: 'survey' }),
  ];

  test('has no undefined or NaN in its words, nor a number that is not finite, in any state and units', () => {
    for (const answer of answers) {
      for (const options of [US, SI]) {
        const { texts, numbers } = leavesOf([
          trialPage(answer, options),
          trialCard(answer, options),
          stillSet(answer, options, null),
        ]);
        expect(texts.filter((text) => /undefined|NaN|Infinity|\bnull\b/.test(text))).toEqual([]);
        expect(numbers.filter((value) => !Number.isFinite(value))).toEqual([]);
        expect(texts.length).toBeGreaterThan(20);
      }
    }
  });

  test('the table at the cursor has the numbers of the curves', () => {
    const page = trialPage(answers[0]!, US);
    const power = page.cursor!.rows.find((row) => row.id === 'power')!;
    expect(page.cursor!.columns.map((column) => column.key)).toEqual(['A', 'B', 'B − A']);
    for (const [place, rpm] of page.cursor!.at.entries()) {
      expect(power.cells[0]![place]).toBe(before.power(rpm).toFixed(1));
      expect(power.cells[1]![place]).toBe(after.power(rpm).toFixed(1));
      expect(Number(power.cells[2]![place])).toBeCloseTo(0.003 * rpm, 0);
      const line = page.chart!.panels[0]!.lines.find((candidate) => candidate.id === 'A')!;
      expect(line.y[line.x.indexOf(rpm)]!.toFixed(1)).toBe(power.cells[0]![place]);
    }
  });

  test('the cursor starts where the change is largest', () => {
    const { cursor } = trialPage(answers[0]!, US);
    expect(cursor!.at[cursor!.start]).toBe(6500);
  });

  test('an empty node breaks the line and is told as a caveat', () => {
    const page = trialPage(answers[1]!, US);
    const line = page.chart!.panels[0]!.lines.find((candidate) => candidate.id === 'A')!;
    expect(line.y[line.x.indexOf(4200)]).toBeNull();
    expect(line.x[0]).toBe(3100);
    expect(page.caveats.join(' ')).toMatch(/A has no figure at 3,000\srpm, 4,200\srpm and 6,500\srpm/);
  });

  test('panels: power, torque, boost with a zero line, gain in ink on the common window', () => {
    const { chart } = trialPage(answers[0]!, US);
    expect(chart!.panels.map((panel) => panel.title)).toEqual(['Power', 'Torque', 'Boost', 'Gain, B − A']);
    expect(chart!.panels.map((panel) => panel.unit)).toEqual(['hp', 'lb-ft', 'psi', 'hp']);
    expect(chart!.panels.map((panel) => panel.zeroLine)).toEqual([false, false, true, true]);
    expect(chart!.panels[3]!.lines[0]!.style).toBe('ink');
    expect(chart!.xWindow?.range).toEqual([4000, 6500]);
  });

  test('a combination with one pull has its mean alone, one with three has three thin lines', () => {
    const lines = trialPage(answers[0]!, US).chart!.panels[0]!.lines;
    expect(lines.filter((line) => line.weight === 'pull').map((line) => line.id)).toEqual(['A1', 'A2', 'A3']);
    expect(lines.filter((line) => line.weight === 'mean').map((line) => line.id)).toEqual(['A', 'B']);
  });

  test('the basis tells repeats, what is common, factors, days as facts', () => {
    const basis = trialPage(answers[0]!, US).basis.replace(/[\u00a0]/g, ' ');
    expect(basis).toMatch(/^Repeats scatter A 0.4 %, B has no repeat/);
    expect(basis).toContain('3,000 to 6,500 rpm in common · factor 1.021');
    expect(basis).toContain('2 set-ups · 14 March 2026');
  });

  test('one pull against one says that nothing tells the scatter', () => {
    const single = inventedAnswer([{ ...before, pulls: 1 }, after]);
    expect(trialPage(single, US).basis).toContain('No pull was repeated');
  });

  test('on a supercharged engine observed stands beside corrected: 455 / 1.021 is 446', () => {
    const caveats = trialPage(answers[0]!, US)
      .caveats.join(' ')
      .replace(/\u00a0/g, ' ');
    expect(caveats).toContain('A 446 hp against 455 hp');
    expect(caveats).toMatch(/naturally aspirated/);
  });

  test('a missing baseline says what to pull, claims no gain and still shows the others', () => {
    const page = trialPage(answers[2]!, US);
    expect(page.missing[0]).toMatch(/^A pull of A, base cam: .* from 3,000 to 6,500\srpm/);
    expect(page.chips[0]).toEqual({ text: 'No baseline', tone: 'caution' });
    expect(page.chart!.panels.map((panel) => panel.id)).toEqual(['power', 'torque', 'boost']);
    expect(page.cursor!.columns).toEqual([{ key: 'B', combination: 1 }]);
  });

  test('power in SI is the inside watt over a thousand', () => {
    const line = trialPage(answers[0]!, SI).chart!.panels[0]!.lines.find(
      (candidate) => candidate.id === 'A',
    )!;
    expect(line.y[0]).toBeCloseTo(toInside(before.power(NODES[0]!), 'hp') / 1000, 3);
  });

  test('tables have one cell a column and no two columns of one name', () => {
    for (const answer of answers) {
      const page = trialPage(answer, US);
      for (const table of [page.peaks, page.averages, page.atSpeeds]) {
        if (!table) continue;
        expect(new Set(table.columns.map((column) => column.text)).size).toBe(table.columns.length);
        for (const row of table.rows) expect(row.cells).toHaveLength(table.columns.length);
      }
    }
  });
});

test('what was set about the reading of the pulls stands in the basis and on the still', () => {
  const answer = inventedAnswer([before, after]);
  const set = (code: string) => ({ code, level: 'note' as const, message: code });
  expect(trialPage(answer, US).basis).not.toContain('by hand');
  for (const view of answer.views.values()) view.remarks.push(set('lag-set'));
  answer.views.get('B1')!.remarks.push(set('window-set'));
  const words = 'window set by hand in 1 of 4 pulls · lags taken out';
  expect(trialPage(answer, US).basis).toContain(words);
  expect(stillNamed(answer, US, null, 'answer')!.still.footer.join(' ')).toContain(words);
});
