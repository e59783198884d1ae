import type { Explanation, Story } from '@pullbook/core/explain';
import { figureOf } from '@pullbook/core/quantity';
import { said } from '@pullbook/core/remark';
import { describe, expect, test } from 'vitest';
import { shownBadges } from './badges.ts';
import { inventedAnswer } from './test-answer.ts';
import { trialPage } from './trial-page.ts';
import { shownExplanation } from './why.ts';

const US = { units: 'us', decimalMark: ',' } as const;

const story = (id: string, more: Partial<Story> = {}): Story => ({
  id,
  text: said`${id}.`,
  evidence: [],
  agree: 1,
  disagree: 0,
  unmeasured: [],
  ...more,
});
const EXPLAINED: Explanation = {
  changedKey: 'B',
  likeliest: story('breathes-better', {
    evidence: [
      {
        about: 'boost',
        text: said`Boost ${figureOf(7584.2, 'gaugePressure')} lower at the top, same tap.`,
        speaks: 'for',
      },
    ],
    unmeasured: ['impellerSpeed', 'slip', 'airFlow'],
  }),
  notExcluded: [story('belt-slip')],
  wouldSettle: said`A shaft-speed pick-up would settle it.`,
  silent: null,
};

describe('why', () => {
  test('figures in the units and with the decimal mark shown; one instrument is named once', () => {
    const shown = shownExplanation(EXPLAINED, US);
    expect(shown.likeliest).toBe('breathes-better');
    expect(shown.evidence[0]!.text).toBe('Boost 1,1\u00a0psi lower at the top, same tap.');
    expect(shown.notMeasured).toEqual(['shaft speed', 'air flow']);
    expect(shown.notExcluded.map(({ id }) => id)).toEqual(['belt-slip']);
    expect(shown.wouldSettle).toBe('A shaft-speed pick-up would settle it.');
  });

  test('silence has its sentence and nothing else', () => {
    const silent = { ...EXPLAINED, likeliest: null, notExcluded: [], wouldSettle: null };
    expect(shownExplanation({ ...silent, silent: said`Nothing to explain yet.` }, US)).toMatchObject({
      likeliest: null,
      sentence: 'Nothing to explain yet.',
      evidence: [],
      wouldSettle: '',
    });
  });

  test('is named after its combination only where there are several gains', () => {
    const half = { pulls: 1, power: () => 300 };
    const two = inventedAnswer([
      { shortName: 'base', ...half },
      { shortName: 'cam', ...half },
      { shortName: 'heads', ...half },
    ]);
    const names = (explanations: Explanation[]) =>
      trialPage({ ...two, explanations }, US).why.map(({ name }) => name);
    expect(names([EXPLAINED])).toEqual(['']);
    expect(names([EXPLAINED, { ...EXPLAINED, changedKey: 'C' }])).toEqual(['B, cam', 'C, heads']);
  });
});

test('a badge writes its days and figures as people do', () => {
  const why = said`On 2026-03-14, ${figureOf(0.004, 'ratio', { units: { us: '%', si: '%' }, decimals: 1 })} apart.`;
  const badge = { id: 'repeats', label: 'Repeats', earned: true, why: why.text, parts: why.parts } as const;
  expect(shownBadges([badge], US)).toEqual([
    { id: 'repeats', label: 'Repeats', earned: true, why: 'On 14 March 2026, 0,4\u00a0% apart.' },
  ]);
});
