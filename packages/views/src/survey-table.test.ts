import { readSheet } from '@pullbook/core/combination';
import { toInside } from '@pullbook/core/quantity';
import type { TrialAnswer } from '@pullbook/core/trial';
import { expect, test } from 'vitest';
import { inventedAnswer } from './test-answer.ts';
import { trialPage } from './trial-page.ts';

/** Three invented engines: 2 L, 4 L, and one whose bore nobody knows; each with the torque its power says at 6500 r/min. */
function surveyOfThree(): TrialAnswer {
  const shortBlocks = [
    { cylinders: 4, displacement: '2 L', stroke: '90 mm' },
    { cylinders: 8, displacement: '4 L', stroke: '80 mm' },
    { cylinders: 6, stroke: '88 mm', bore: 'unknown' },
  ];
  const answer = inventedAnswer(
    ['small four', 'big eight', 'old six'].map((shortName, index) => ({
      shortName,
      pulls: 2,
      power: (rpm) => (0.04 + 0.02 * index) * rpm,
    })),
    { state: 'survey', window: [4000, 6500] },
  );
  for (const [index, shortBlock] of shortBlocks.entries()) {
    const combination = [...answer.combinations.values()][index]!;
    const read = readSheet({ schemaVersion: 1, name: combination.name, shortBlock });
    if (!read.ok) throw new Error(read.remarks[0]!.message);
    answer.combinations.set(combination.id, { ...combination, sheet: read.value });
    const figures = answer.comparison!.combinations[index]!;
    const torque = 200 + 100 * index;
    figures.averages.set('torque', torque);
    figures.peakTorque = { ...figures.peakPower!, value: torque };
  }
  return answer;
}

const page = trialPage(surveyOfThree(), { units: 'si', decimalMark: '.' });
const cells = (name: RegExp) => page.survey!.rows.find((row) => name.test(row.name))!.cells;

test('each engine has its figures per litre, worked by hand', () => {
  const kilowatt = (hp: number) => toInside(hp, 'hp') / 1000;
  expect(page.survey!.columns.map(({ text }) => text)).toEqual(['A', 'B', 'C']);
  expect(cells(/^Displacement/)).toEqual(['2,000', '4,000', '']);
  // 0.04 and 0.06 hp for each r/min, at 6500.
  expect(cells(/^Highest power per litre/)).toEqual([
    (kilowatt(260) / 2).toFixed(1),
    (kilowatt(390) / 4).toFixed(1),
    '',
  ]);
  // Mean of a straight line from 4000 to 6500 is its middle, 5250.
  expect(cells(/^Power per litre/)).toEqual([
    (kilowatt(210) / 2).toFixed(1),
    (kilowatt(315) / 4).toFixed(1),
    '',
  ]);
  // 4π × 200 / 0.002 = 1256.6 kPa; 4π × 300 / 0.004 = 942.5 kPa.
  expect(cells(/^Mean effective pressure at/)).toEqual(['1,257', '942', '']);
  // 2 × 0.09 × 6500 / 60 = 19.5 m/s.
  expect(cells(/^Mean piston speed/)).toEqual(['19.50', '17.33', '19.07']);
});

test('what is not known is said, with what to do', () => {
  expect(page.caveats.join('\n')).toMatch(/per litre of C, old six: .*bore is unknown.*on its sheet/);
  expect(page.caveats[0]).toMatch(/belongs to no single part/);
});

test('no gain anywhere: no panel, no column, no word', () => {
  expect(page.chart!.panels.map(({ id }) => id)).not.toContain('gain');
  expect(page.averages!.columns).toHaveLength(3);
  expect(page.atSpeeds!.columns).toHaveLength(6);
  const words = [page.sentence.map(({ text }) => text).join(''), page.basis, ...page.caveats].join(' ');
  expect(words).not.toMatch(/\b(adds|costs|gain|better|wins)\b/i);
  expect(page.sentence[0]!.text).toMatch(/^Side by side, on average from 4,000 to 6,500/);
});

test('another trial has no such table', () => {
  const compared = inventedAnswer([
    { shortName: 'base', pulls: 1, power: (rpm) => 0.07 * rpm },
    { shortName: 'longer', pulls: 1, power: (rpm) => 0.073 * rpm },
  ]);
  expect(trialPage(compared, { units: 'us', decimalMark: '.' }).survey).toBeNull();
});
