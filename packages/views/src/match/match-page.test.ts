import { matchBands } from '@pullbook/core/airpath';
import { remark, said } from '@pullbook/core/remark';
import { describe, expect, test } from 'vitest';
import type { MatchBundle, MatchPage, WhatIf } from '../match-model.ts';
import type { ViewOptions } from '../model.ts';
import { plainText } from '../sentence.ts';
import { bandCases } from './match-in-view.ts';
import { matchPage } from './match-page.ts';
import { fittedCompressor, inventedBundle, inventedCompressor } from './test-bundle.ts';

const US: ViewOptions = { units: 'us', decimalMark: '.' };
const SI: ViewOptions = { units: 'si', decimalMark: ',' };
const PULLEY: WhatIf = { key: 'A', blowerPulleyDiameter: 0.08 };

const page = (bundle = inventedBundle(), whatIf: WhatIf | null = null, options = US): MatchPage =>
  matchPage({ bundle, whatIf, bands: null }, options);
const banded = (bundle = inventedBundle(), whatIf: WhatIf | null = null): MatchPage => {
  const bands = matchBands(bandCases(bundle, whatIf), { draws: 200, seed: 3 });
  return matchPage({ bundle, whatIf, bands }, US);
};
const only = (bundle: MatchBundle, key: string): MatchBundle => ({
  ...bundle,
  combinations: bundle.combinations.filter((one) => one.key === key),
});
/** A cell of the cursor's table as a number, of a row and a column at an engine speed. */
function cell({ cursor }: MatchPage, row: string, column: string, rpm: number): number {
  const place = cursor.columns.findIndex(({ key }) => key === column);
  const text = cursor.rows.find(({ id }) => id === row)?.cells[place]?.[cursor.at.indexOf(rpm)] ?? '';
  return Number(text.replaceAll(',', '').replace('−', '-').replace('+', ''));
}

describe('the sentence of a match', () => {
  test('says that better breathing takes boost where the line falls, while power rises', () => {
    expect(plainText(page().sentence)).toMatch(
      /^B, 12° longer cam, takes \d\.\d\u00a0% more air at 6,[0-9]{3}\u00a0rpm; the compressor's line falls there, so boost drops \d\.\d\u00a0psi while power rises \d+\u00a0hp\. Computed from naturally aspirated pulls, fitted to 2 boosted pulls\.$/,
    );
  });

  test('its figures are those of the table at that speed', () => {
    const whole = page();
    const text = plainText(whole.sentence);
    const rpm = Number(/at ([\d,]+)/.exec(text)?.[1]?.replace(',', ''));
    // The cursor has a decimal more.
    const rise = cell(whole, 'brakePower', 'B − A', rpm);
    expect(Math.abs(Number(/rises (\d+)/.exec(text)?.[1]) - rise)).toBeLessThanOrEqual(0.56);
    expect(Number(/drops (\d\.\d)/.exec(text)?.[1])).toBe(-cell(whole, 'boost', 'B − A', rpm));
    expect(whole.cursor.at[whole.cursor.start]).toBe(rpm);
  });

  test('a smaller pulley: the impeller turns faster by the ratio of the pulleys', () => {
    const text = plainText(page(inventedBundle(), PULLEY).sentence);
    // 84 over 80 mm: by hand.
    expect(text).toContain('turns the impeller 5.0\u00a0% faster');
    expect(text).toMatch(/boost rises \d\.\d\u00a0psi and power rises \d+\u00a0hp/);
    expect(text).toMatch(/^A′, 3\.15\u00a0in blower pulley,/);
  });

  test('one combination alone: its power, its boost, and what it was computed from', () => {
    const text = plainText(page(only(inventedBundle(), 'B')).sentence);
    expect(text).toMatch(
      /^B, 12° longer cam, should make \d+\u00a0hp at [\d,]+\u00a0rpm on \d+\.\d\u00a0psi\. Computed/,
    );
    expect(text).toContain('not fitted to a boosted pull');
  });

  test('what was never pulled without supercharger is told first, as scaled, with its band', () => {
    const bundle = inventedBundle();
    const [one] = bundle.combinations;
    const { baseline } = one!.input;
    const by = (share: number) => baseline.brakePower.map((power) => share * power);
    const told = plainText(
      page({
        ...bundle,
        combinations: [one!],
        left: [
          {
            key: 'C',
            name: 'without supercharger',
            reason: remark('note', 'scaled-alone', 'It was never pulled.'),
            scaled: {
              baseline: { ...baseline, origin: 'scaled' },
              power: { low: by(0.95), high: by(1.05) },
              basis: said`Scaled.`,
              remarks: [],
            },
          },
        ],
      }).sentence,
    ).replaceAll('\u00a0', ' ');
    const top = Math.max(...baseline.brakePower) / 745.69987;
    const rounded = [top, 0.95 * top, 1.05 * top].map((value) => value.toFixed(0));
    expect(told).toMatch(
      new RegExp(
        `^C, without supercharger, should make ${rounded[0]} hp \\(${rounded[1]} to ${rounded[2]}\\) at [\\d,]+ rpm: scaled, never measured\\. A, `,
      ),
    );
  });

  test('a scaled baseline is never said to be measured', () => {
    const bundle = only(inventedBundle(), 'A');
    const [one] = bundle.combinations;
    const scaled = { ...one!.input, baseline: { ...one!.input.baseline, origin: 'scaled' as const } };
    const text = plainText(page({ ...bundle, combinations: [{ ...one!, input: scaled }] }).sentence);
    expect(text).toContain('a scaled baseline, not a measured one');
  });

  test('nothing to match says why, in its units', () => {
    const silent = [
      remark('refusal', 'no-baseline', 'No naturally aspirated pull of this engine is in the book.'),
    ];
    const empty = page(inventedBundle({ combinations: [], silent }));
    expect(plainText(empty.sentence)).toBe('No naturally aspirated pull of this engine is in the book.');
    expect(empty.map).toBeNull();
    expect(empty.drive).toEqual([]);
    expect(empty.cursor.at).toEqual([]);
  });
});

describe('the page of a match', () => {
  test('every banded figure carries its band once bands have come', () => {
    const whole = banded();
    expect(plainText(whole.sentence)).toMatch(
      /boost drops 0\.\d\u00a0psi \(0\.\d to 0\.\d\) while power rises \d+\u00a0hp \(\d+ to \d+\)/,
    );
    for (const { cells } of whole.table.rows)
      for (const text of cells.slice(0, 10)) expect(text).toMatch(/^[\d,.−]+ \([\d,.−]+\sto\s[\d,.−]+\)$/);
    expect(whole.cursor.gains?.map(({ name }) => name)).toEqual(
      expect.arrayContaining([
        'Power, A, 95\u00a0% at this speed',
        'Power, B − A, 95\u00a0% at this speed',
        'Boost, B, 95\u00a0% at this speed',
      ]),
    );
    expect(whole.drive.find(({ label }) => label.startsWith('Drive power'))?.value).toMatch(
      /hp \(.+ to .+\)/,
    );
    expect(whole.chart.panels[0]?.bands).toHaveLength(2);
  });

  test('power only may rise where its band holds zero', () => {
    const bundle = inventedBundle();
    const own = { key: 'another baseline', parts: ['baselinePower' as const], factor: [[0.1]] };
    const [one, other] = bundle.combinations;
    const apart = { ...bundle, combinations: [one!, { ...other!, spread: [own] }] };
    expect(plainText(banded(apart).sentence)).toMatch(/power may rise \d+\u00a0hp \(−\d+ to \+\d+\)/);
  });

  test('a difference has a smaller band than its sides, for they share what is uncertain', () => {
    const { cursor } = banded();
    const widthOf = (name: string) => {
      const text = cursor.gains?.find((row) => row.name.startsWith(name))?.cells[cursor.start] ?? '';
      const [low, high] = text.split(' to ').map(Number);
      return high! - low!;
    };
    expect(widthOf('Power, B − A')).toBeLessThan(0.5 * widthOf('Power, A,'));
    expect(widthOf('Power, B − A')).toBeGreaterThan(0);
  });

  test('bands of another what-if are not shown', () => {
    const bundle = inventedBundle();
    const bands = matchBands(bandCases(bundle, null), { draws: 50, seed: 3 });
    const other = matchPage({ bundle, whatIf: PULLEY, bands }, US);
    expect(other.cursor.gains).toBeUndefined();
    expect(other.chart.panels[0]?.bands).toEqual([]);
  });

  test('what was measured is a thin dotted line, and the panel says so', () => {
    const [power] = page().chart.panels;
    const measured = power?.lines.filter(({ dotted }) => dotted);
    expect(measured?.map(({ weight, style }) => [weight, style])).toEqual([['pull', { combination: 0 }]]);
    expect(power?.note).toBe('computed, as observed in its air; dots: measured');
  });

  test('layers of power stand on each other up to what is indicated', () => {
    const [panel] = page().powerGoes.panels;
    const [brake, drive, friction] = panel!.bands;
    expect(panel!.bands.map(({ layer }) => layer?.name)).toEqual(['Brake', 'Drive', 'Friction']);
    expect(drive?.low).toEqual(brake?.high);
    expect(friction?.low).toEqual(drive?.high);
    // 26 kW at 5,000 r/min, with the square of speed: the bundle's friction, by hand.
    const at = panel!.lines[0]!.x.indexOf(5000);
    expect(friction!.high[at]! - friction!.low[at]!).toBeCloseTo(26 / 0.7457, 0);
  });

  test('the map has a line for each combination on it, at the figures of the match', () => {
    const { map } = page();
    expect(map?.operating.map(({ key }) => key)).toEqual(['A', 'B']);
    const line = map!.operating[0]!;
    expect(line.named.map(({ text }) => text)).toEqual(['4,000', '5,000', '6,000']);
    for (const [index, ratio] of line.y.entries()) expect(map!.yRange[1]).toBeGreaterThan(ratio ?? index * 0);
    expect(map!.xUnit).toBe('lb/min at 77\u00a0°F and 29.53\u00a0inHg');
  });

  test('a combination with another compressor is not drawn on this map', () => {
    const bundle = inventedBundle();
    const [one, other] = bundle.combinations;
    const map = fittedCompressor({
      ...inventedCompressor(),
      points: inventedCompressor().points.map((point) => ({ ...point, flow: 1.2 * point.flow })),
    });
    const larger = { ...other!.input, compressor: { ...other!.input.compressor, map } };
    const apart = page({ ...bundle, combinations: [one!, { ...other!, input: larger }] });
    expect(apart.map?.operating.map(({ key }) => key)).toEqual(['B']);
  });

  test('a fitted head lifts the speed lines, so that the operating line stays between the lines of its speeds', () => {
    const bundle = only(inventedBundle(), 'A');
    const [one] = bundle.combinations;
    const lifted = { ...one!.input, compressor: { ...one!.input.compressor, headScale: 1.1 } };
    const plain = page(bundle).map!;
    const scaled = page({ ...bundle, combinations: [{ ...one!, input: lifted }] }).map!;
    const top = (map: typeof plain) => Math.max(...map.speedLines.at(-1)!.y);
    // Ten per cent more isentropic head, by hand: k/(k-1) of 1006 and 288 J/(kg K).
    const exponent = 288 / 1006;
    expect(top(scaled)).toBeCloseTo((1 + 1.1 * (top(plain) ** exponent - 1)) ** (1 / exponent), 9);
  });

  test('SI units and a decimal comma throughout', () => {
    const whole = page(inventedBundle(), PULLEY, SI);
    const text = JSON.stringify(whole);
    expect(whole.map?.xUnit).toBe('kg/s at 25,0\u00a0°C and 100,00\u00a0kPa');
    expect(plainText(whole.sentence)).toMatch(/80,0\u00a0mm blower pulley.+\d+\u00a0kW/);
    expect(text).not.toMatch(/psi|lb\/min|\bhp\b|°F|inHg/);
  });

  test('cautions, assumptions and what is left out are always there', () => {
    const whole = page();
    expect(whole.cautions.join(' ')).toMatch(/planning estimate/);
    expect(whole.cautions.join(' ')).toMatch(/limits of the maker/);
    expect(whole.assumptions.map(({ text }) => text)).toContain(
      'The gears take 5 %: common practice, no source.',
    );
    expect(whole.left).toEqual([
      { name: 'C, without supercharger', reason: 'It has no supercharger: there is nothing to match.' },
    ]);
  });

  test('the fit in words: prior, value, what speaks of it, what is left', () => {
    const [fit] = page().fit;
    expect(fit?.parameters[0]).toEqual({
      name: 'Head of the compressor, against its map',
      prior: '1.000 (0.922 to 1.078)',
      value: '1.021 (0.999 to 1.043)',
      from: 'boost',
    });
    expect(fit?.parameters[1]?.from).toBe('no channel speaks of it: it stays as taken beforehand');
    // The root of the mean square of 0.9 and 1.3 %, by hand.
    expect(fit?.residuals[0]).toBe('Boost within 1.1\u00a0% (root mean square) of 2 pulls');
    expect(fit?.readings[0]?.wouldSettle).toContain('pick-up');
    expect(page().remarks.map(({ text }) => text)).toContain(
      'Head and slip cannot be told apart without shaft speed.',
    );
  });

  test('the rules judge what is tried: an impeller beyond its limit is found', () => {
    const fast = page(inventedBundle(), { key: 'A', blowerPulleyDiameter: 0.07 });
    const alarms = fast.findings.flatMap(({ lines }) => lines).filter(({ subject }) => subject === 'tried');
    expect(alarms.map(({ text }) => text).join(' ')).toMatch(/limit/i);
    expect(alarms[0]?.about).toMatch(/^A′, /);
  });
});
