import type { ClipStep } from '@pullbook/charts';
import { type RunningOrder, STEP_IDS, type TrialAnswer } from '@pullbook/core/trial';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ViewOptions } from '../model.ts';
import { type InventedCombination, inventedAnswer } from '../test-answer.ts';
import { trialPage } from '../trial-page.ts';
import { clipDescription, presentation } from './clip.ts';
import { oddTrials } from './odd-trials.test-support.ts';
import { shownRunningOrder } from './shown-running-order.ts';
import { stillNamed } from './still-set.ts';

const US: ViewOptions = { units: 'us', decimalMark: '.' };
const base: InventedCombination = {
  shortName: 'base cam',
  pulls: 2,
  power: (rpm) => 0.07 * rpm,
  boost: (rpm) => rpm / 650,
  supercharged: true,
  stillClimbing: true,
};
const longer: InventedCombination = {
  ...base,
  shortName: 'longer cam',
  power: (rpm) => 0.073 * rpm,
  sure: { word: 'clear', mean: [10, 20], clear: [{ fromRpm: 5000, toRpm: 6500, sign: 1 }] },
};
const told = (runningOrder: RunningOrder | null, of = [base, longer]): TrialAnswer => {
  const answer = inventedAnswer(of);
  return { ...answer, trial: { ...answer.trial, runningOrder } };
};
const stepsOf = (answer: TrialAnswer) => clipDescription(answer, US, null).steps;
const chartOf = ({ still: { body } }: Pick<ClipStep, 'still'>) => (body.kind === 'stack' ? body.chart : null);

describe('as worked out', () => {
  const steps = stepsOf(told(null));

  test('the steps that have something to show, in the order in which they are told', () => {
    expect(steps.map(({ id }) => id)).toEqual([
      'asked',
      'combination',
      'baseline',
      'changed',
      'gain',
      'boost',
      'caveat',
    ]);
    expect(shownRunningOrder(told(null), US).steps.find(({ id }) => id === 'why')!.whyNot).toMatch(
      /No reason/,
    );
  });

  test('it takes 25 to 48 seconds, more words more of them, and curves draw before they stand', () => {
    const whole = steps.reduce((sum, { seconds }) => sum + seconds, 0);
    expect(whole).toBeGreaterThanOrEqual(25);
    expect(whole).toBeLessThanOrEqual(48);
    for (const step of steps) {
      expect(step.seconds).toBeGreaterThanOrEqual(2);
      // A clip's first frame says what is asked.
      expect(step.drawingShare > 0).toBe(step.id !== 'asked');
      expect(step.drawingShare).toBeLessThan(0.8);
    }
    const long = { ...base, shortName: 'a cam whose name alone takes a while to read' };
    const [asked] = stepsOf(told(null, [long, { ...long, sure: longer.sure! }]));
    expect(asked!.seconds).toBeGreaterThan(steps[0]!.seconds);
  });

  test('the change draws itself beside a baseline that stands, and the gain alone in its own panel', () => {
    const step = (id: string) => steps.find((one) => one.id === id)!;
    expect(step('changed').drawn).toEqual(['B1', 'B2', 'B']);
    expect(chartOf(step('changed'))!.panels[0]!.lines.map(({ id }) => id)).toContain('A');
    expect(step('gain').drawn).toEqual(['gain B']);
    expect(step('baseline').drawn).toBe('all');
    expect(chartOf(step('baseline'))!.panels[0]!.lines.every(({ id }) => id.startsWith('A'))).toBe(true);
  });
});

test('all steps of any trial stand at the scale of its stills', () => {
  let compared = 0;
  for (const answer of fc.sample(oddTrials, { seed: 3, numRuns: 12 })) {
    const { body } = stillNamed(answer, US, null, 'answer')?.still ?? {};
    const steps = stepsOf(answer);
    expect(steps[0]!.id).toBe('asked');
    for (const step of steps) {
      const chart = chartOf(step);
      const ids = new Set(chart?.panels.flatMap(({ lines }) => lines.map(({ id }) => id)));
      if (step.drawn !== 'all') for (const id of step.drawn) expect(ids).toContain(id);
      if (body?.kind !== 'stack' || chart === null) continue;
      expect(chart.xRange).toEqual(body.chart.xRange);
      for (const panel of chart.panels) {
        const same = body.chart.panels.find(({ id }) => id === panel.id);
        if (same) expect(panel.reach).toEqual(same.reach);
        compared += same ? 1 : 0;
      }
    }
  }
  expect(compared).toBeGreaterThan(20);
});

test('a running order is obeyed: order, what is shown, titles, seconds, speed', () => {
  const answer = told({
    steps: [
      { id: 'gain', isShown: true, title: 'The answer first', seconds: 6 },
      { id: 'asked', isShown: true, title: null, seconds: null },
      { id: 'caveat', isShown: false, title: null, seconds: null },
    ],
    speed: 2,
  });
  const steps = stepsOf(answer);
  expect(steps.map(({ id }) => id)).toEqual(['gain', 'asked', 'combination', 'baseline', 'changed', 'boost']);
  expect(steps[0]!.still.headline).toBe('The answer first');
  expect(steps[0]!.seconds).toBe(3);
  const own = stepsOf(told(null)).find(({ id }) => id === 'asked')!;
  expect(steps[1]!.seconds).toBeCloseTo(own.seconds / 2, 9);
  const shown = shownRunningOrder(answer, US);
  expect(shown.steps.map(({ id }) => id).toSorted()).toEqual([...STEP_IDS].toSorted());
  expect(shown.speed).toBe(2);
  expect(shown.seconds).toBeCloseTo(
    steps.reduce((sum, { seconds }) => sum + seconds, 0),
    2,
  );
  expect(shown.steps[0]).toMatchObject({ title: 'The answer first', seconds: 6, isShown: true, whyNot: '' });
  expect(shown.steps[0]!.ownTitle).toContain('adds');
  expect(shown.steps.find(({ id }) => id === 'caveat')!.isShown).toBe(false);
});

test('without a baseline its steps fall out and say why', () => {
  const answer = told(null, [{ ...base, pulls: 0 }, longer]);
  expect(stepsOf(answer).map(({ id }) => id)).toEqual(['asked', 'combination', 'changed', 'boost', 'caveat']);
  const whyNot = (id: string) => shownRunningOrder(answer, US).steps.find((one) => one.id === id)!.whyNot;
  expect(whyNot('baseline')).toBe('A, base cam has no counted pull with a curve.');
  expect(whyNot('gain')).toMatch(/^There is no gain to show/);
});

test('a presentation has the exact numbers of the page for what each step shows', () => {
  const answer = told(null);
  const page = trialPage(answer, US).cursor!;
  const { steps } = presentation(answer, US, null);
  const numbers = new Map(steps.map(({ id, cursor }) => [id, cursor]));
  const power = page.rows.find(({ id }) => id === 'power')!;
  expect(numbers.get('changed')!.rows).toEqual([power]);
  expect(numbers.get('changed')!.gains).toBeUndefined();
  expect(numbers.get('gain')!.gains).toEqual(page.gains);
  expect(numbers.get('baseline')!.rows[0]!.cells).toEqual([power.cells[0]]);
  expect(numbers.get('boost')!.rows.map(({ id }) => id)).toEqual(['boost']);
  expect(numbers.get('asked')).toBeNull();
});
