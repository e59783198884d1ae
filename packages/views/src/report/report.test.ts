import type { PullView } from '@pullbook/core/pull';
import type { TrialAnswer } from '@pullbook/core/trial';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inventedBundle } from '../match/test-bundle.ts';
import type { ShownTable } from '../model.ts';
import type { ReportDescription } from '../publish/model.ts';
import { oddTrials } from '../publish/odd-trials.test-support.ts';
import { inventedAnswer } from '../test-answer.ts';
import { trialPage } from '../trial-page.ts';
import { blown, reportOf, US } from './report-of.test-support.ts';

const sectionsOf = ({ sections, appendix }: ReportDescription) => [...sections, ...appendix];
const tablesOf = (report: ReportDescription): ShownTable[] =>
  sectionsOf(report).flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === 'table' ? [block.table] : [])),
  );
const sectionText = (report: ReportDescription, id: string): string =>
  JSON.stringify(sectionsOf(report).find((one) => one.id === id)?.blocks ?? []).replaceAll('\u00a0', ' ');

test('has every section that a customer is owed, in the order in which it is told', () => {
  const report = reportOf(blown());
  expect(report.sections.map(({ id }) => id)).toEqual([
    'answer',
    'tested',
    'curves',
    'table',
    'margins',
    'limits',
    'next',
    'cautions',
  ]);
  expect(report.appendix.map(({ id }) => id)).toEqual([
    'notMeasured',
    'pulls',
    'figures',
    'conditions',
    'calibration',
  ]);
  expect(report.day).toBe('2026-03-14T10:42:00+01:00');
  expect(report.facts.replaceAll('\u00a0', ' ')).toBe(
    '3.8 L straight six · gasoline · SAE J1349 · 5 counted pulls · 14 March 2026',
  );
});

test('every figure, sentence and curve is the trial page’s own, on any trial', () => {
  fc.assert(
    fc.property(oddTrials, (answer) => {
      const report = reportOf(answer);
      const page = trialPage(answer, US);
      expect(report.answer).toEqual(page.sentence);
      expect(report.verdicts).toEqual(page.verdicts);
      const own = [page.averages, page.peaks, page.survey, page.atSpeeds, ...page.bands].filter(
        (table) => table !== null,
      );
      const shown = tablesOf(report);
      for (const table of own) expect(shown).toContainEqual(table);
      const charts = report.sections.flatMap(({ blocks }) => blocks).filter(({ kind }) => kind === 'chart');
      expect(charts).toEqual(page.chart ? [{ kind: 'chart', chart: page.chart, cursor: page.cursor }] : []);
      const words = JSON.stringify(report.sections);
      for (const caveat of page.caveats) expect(words).toContain(JSON.stringify(caveat).slice(1, -1));
      expect(words).not.toMatch(/NaN|undefined|\[object/);
    }),
    { seed: 61, numRuns: 20 },
  );
});

describe('observed and corrected', () => {
  test('differ by the factor, which stands between them', () => {
    const table = tablesOf(reportOf(blown())).find(({ id }) => id === 'factors')!;
    expect(table.rows).toHaveLength(5);
    expect(table.columns.slice(-3).map(({ text }) => text)).toEqual([
      'Observed, hp',
      'Factor',
      'Corrected, hp',
    ]);
    for (const { cells } of table.rows) {
      // SAE J1349 and every other standard: corrected power is observed power times the factor.
      const [observed, factor, corrected] = cells.slice(-3).map(Number);
      expect(Math.abs(observed! * factor! - corrected!)).toBeLessThan(0.4);
    }
  });
});

describe('margins', () => {
  const withCurves = (lambda: number[][]): TrialAnswer => {
    const answer = blown();
    for (const [place, id] of ['A1', 'A2'].entries()) {
      const view = answer.views.get(id)!;
      const curve = {
        engineSpeedRpm: Float64Array.of(3000, 4000, 5000),
        channels: new Map([['lambda', Float64Array.from(lambda[place]!)]]),
      } as unknown as PullView['curve'];
      answer.views.set(id, { ...view, curve });
    }
    return answer;
  };

  test('the leanest mixture of all counted pulls with its engine speed, beside where a pull is ended', () => {
    const report = reportOf(
      withCurves([
        [0.8, 0.82, Number.NaN],
        [0.79, 0.86, 0.81],
      ]),
    );
    const row = tablesOf(report)
      .find(({ id }) => id === 'margins')!
      .rows.find(({ name }) => name.startsWith('Leanest'))!;
    expect(row.cells.slice(0, 2)).toEqual(['0.86 at 4,000\u00a0rpm', 'not read']);
    // The trade ends a boosted pull on gasoline above lambda 0.88 (common practice, no source).
    expect(row.cells[2]).toContain('0.88');
  });

  test('nothing read is said, and never that there is room', () => {
    const report = reportOf(blown());
    expect(sectionText(report, 'margins')).toContain('how near they came to a limit is not known');
    expect(sectionText(report, 'limits')).toContain('no proof of room');
    expect(sectionText(report, 'notMeasured')).toContain('impeller speed');
  });
});

test('what limits it now is read off the match where there is one, and said to be computed', () => {
  const report = reportOf(blown(), { match: inventedBundle() });
  const table = tablesOf(report).find(({ id }) => id === 'match-limits')!;
  expect(table.title).toContain('computed, not measured');
  const impeller = table.rows.find(({ name }) => name.startsWith('Impeller'))!;
  // By hand: (6700 + 200) r/min x 165 mm / 84 mm x 3.6 = 48,793 r/min without slip, of 52,000.
  expect(impeller.cells[0]).toBe('94\u00a0% of the maker’s 52,000\u00a0rpm');
  expect(sectionText(report, 'limits')).toContain('Makers’ limits go before it.');
});

describe('calibration', () => {
  test('as it stood on the day of the pulls', () => {
    expect(sectionText(reportOf(blown()), 'calibration')).toContain(
      'in force, made 1 March 2026, to 1 April 2026',
    );
  });

  test('unknown where the cell is not described', () => {
    const text = sectionText(reportOf(blown(), { cells: [] }), 'calibration');
    expect(text).toContain('Not described in the book: cell 1.');
    expect(text).toContain('unknown');
  });
});

test('what can hurt people goes with it, and that it is a planning aid', () => {
  const text = sectionText(reportOf(blown()), 'cautions');
  expect(text).toContain('Planning aid, not a safety device.');
  expect(text).toContain('Carbon monoxide');
});

test('private and invented things say so over everything', () => {
  const answer = blown();
  const report = reportOf({
    ...answer,
    trial: { ...answer.trial, invented: true, audience: { who: 'customer', notBefore: null } },
  });
  expect(report.warnings).toHaveLength(2);
  expect(report.warnings[0]).toContain('Not for publication');
});

test('a trial without a pull has a report that says so', () => {
  const report = reportOf(
    inventedAnswer([{ shortName: 'base cam', pulls: 0, power: () => 0 }], { state: 'no pulls' }),
  );
  expect(sectionText(report, 'curves')).toContain('no curve to draw');
  expect(sectionText(report, 'calibration')).toContain('No pull is counted');
  expect(report.day).toBeNull();
});
