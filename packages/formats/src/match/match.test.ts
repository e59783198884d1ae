import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type MatchFile, readMatchText } from '../index.ts';

const folder = new URL('../../../../samples/match/', import.meta.url);
const textOf = (name: string) => readFileSync(new URL(name, folder), 'utf8');

function sound(text: string): MatchFile {
  const read = readMatchText(text, 'six.yaml');
  if (!read.ok) throw new Error(read.remarks.map(({ message }) => message).join('\n'));
  return read.value;
}

const SHORT = `schemaVersion: 1
combination: Six with blower
baseline: { pull: Pull 3 }
map: Shop blower no. 2
`;

describe('a match file', () => {
  test('with a table, a map beside it, another day and what-ifs', () => {
    const file = sound(textOf('from-a-table.yaml'));
    expect(file).toMatchObject({
      name: 'Straight six with shop blower no. 2',
      combination: {
        from: 'sheet',
        sheet: {
          name: 'Straight six with shop blower no. 2',
          sections: {
            drive: { crankPulleyDiameter: { value: 0.19 } },
            supercharger: { stepUp: { value: 3.6 } },
          },
        },
      },
      map: { from: 'file', path: '../maps/shop-blower.csv' },
      air: { pressure: 97_000, temperature: 305.15, relativeHumidity: 0.5 },
      model: {},
      frictionPower: null,
      bands: { draws: 500, seed: 1 },
      fit: null,
      whatIf: [
        { name: 'smaller blower pulley', blowerPulleyDiameter: 0.08 },
        { name: 'without the cooler', cooler: 'none' },
        { name: 'breathes better', breathing: { fromRpm: 2000, toRpm: 6000, share: 0.08 } },
      ],
    });
    if (file.baseline.from !== 'table') throw new Error('a table was given');
    const { curve } = file.baseline;
    expect(curve.engineSpeedRpm).toEqual([2000, 2500, 3000, 3500, 4000, 4500, 5000, 5500, 6000]);
    expect(curve.brakePower[8]).toBe(167_000);
    expect(curve.airFlow![0]).toBe(0.0571);
    expect(curve.frictionPower![1]).toBeCloseTo(5600, 9);
    expect([curve.manifoldPressure, curve.manifoldTemperature, curve.lambda]).toEqual([null, null, null]);
    expect(curve.air).toMatchObject({ pressure: 99_000, temperature: 298.15 });
  });

  test('with a rated point', () => {
    expect(sound(textOf('rated-point.yaml'))).toMatchObject({
      map: {
        from: 'written',
        map: {
          form: 'rated',
          reference: { pressure: 100_000, temperature: 298.15 },
          points: [{ flow: 0.24, pressureRatio: 1.5, speedRpm: 48_000, efficiency: 0.74 }],
          geometry: { wheelExitDiameter: 0.105 },
          origin: 'data sheet',
        },
      },
      bands: null,
    });
  });

  test('with every input of the model stated', () => {
    const { model, frictionPower } = sound(textOf('outside-solver.yaml'));
    const none = { pressureDifference: 0, atFlow: 1, atDensity: 1 };
    expect(frictionPower).toBe(12_000);
    expect(model).toEqual({
      displacement: expect.closeTo(0.0038, 12),
      compressionRatio: 9.2,
      specificHeat: 1005,
      gasConstant: 287.05,
      headScale: 1,
      efficiencyShift: 0,
      constantEfficiency: expect.closeTo(0.7, 12),
      pulleyRatio: 2.2,
      stepUp: 3.6,
      slip: 0,
      mechanicalEfficiency: 1,
      inletLoss: none,
      pipeLoss: none,
      throttleLoss: none,
      bypass: { state: 'shut', leak: 0 },
      cooler: null,
      tap: 'manifold',
      heatFactor: 1,
      evaporationCooling: 0,
      fuelVapour: 0,
      swallowingScale: 1,
      exhaustPressureRatio: 1,
      pressureTermRatio: null,
      heatExponent: 0,
      workFactor: 1,
      wallTemperature: null,
      gasExchange: false,
      frictionRise: 0,
    });
  });

  test('as JSON, in US units, its table in columns and rows', () => {
    const file = sound(textOf('columns-and-rows.json'));
    if (file.baseline.from !== 'table') throw new Error('a table was given');
    // 224 hp × 745.69987 W; 24.5 lb/min × 0.45359237 kg / 60 s.
    expect(file.baseline.curve.brakePower[2]).toBeCloseTo(167_036.77, 1);
    expect(file.baseline.curve.airFlow![2]).toBeCloseTo(0.185217, 6);
  });

  test('of names in the book only', () => {
    expect(sound(SHORT)).toMatchObject({
      name: 'six',
      combination: { from: 'book', name: 'Six with blower' },
      baseline: { from: 'pulls', pulls: ['Pull 3'] },
      map: { from: 'book', name: 'Shop blower no. 2' },
      air: null,
      bands: { draws: 2000, seed: 1 },
    });
    expect(sound(SHORT.replace('Six with blower', 'six.yaml')).combination).toEqual({
      from: 'file',
      path: 'six.yaml',
    });
    expect(sound(SHORT.replace(/map: .*\n/, '')).map).toBeNull();
    expect(sound(SHORT.replace('pull: Pull 3', 'pulls: [Pull 3, 4]')).baseline).toEqual({
      from: 'pulls',
      pulls: ['Pull 3', '4'],
    });
    expect(sound(`${SHORT}bands: none\n`).bands).toBeNull();
    expect(sound(`${SHORT}fit: { pulls: [Pull 4] }\n`).fit).toEqual({ from: 'pulls', pulls: ['Pull 4'] });
  });

  test('with a boosted pull in a table, in falling order', () => {
    const { fit } = sound(`${SHORT}fit:
  table: |
    engine speed [rpm]; boost [psi]; brake power [hp]; charge temperature [°F]; impeller speed [rpm]
    5000; 6,5; 300; 140; 40000
    4000; 5; 250; 120; 32000
`);
    expect(fit).toMatchObject({
      from: 'table',
      pull: { engineSpeedRpm: [4000, 5000], impellerSpeedRpm: [32_000, 40_000], airFlow: null, air: null },
    });
    // 6.5 psi × 6894.757 Pa; 120 °F is 322.04 K.
    if (fit?.from !== 'table') throw new Error('a table was given');
    expect(fit.pull.boost![1]).toBeCloseTo(44_815.92, 1);
    expect(fit.pull.chargeTemperature![0]).toBeCloseTo(322.04, 2);
  });

  test('with a map written out, its losses, cooler and bypass', () => {
    const { map, model } = sound(`${SHORT.replace(/map: .*\n/, '')}map:
  reference: { pressure: 100 kPa, temperature: 20 °C }
  designSpeed: 40000 rpm
  points: |
    flow [g/s]  pressure ratio  speed [%]  efficiency [%]
    200 1.4 100 74
    300 1.3 100 70
model:
  inletLoss: { pressureDifference: 1 kPa, atFlow: 0.3 kg/s }
  bypass: { leak: 3 % }
  cooler: { by: ice water, effectiveness: 80 %, loss: { pressureDifference: 4 kPa, atFlow: 0.3 kg/s, atDensity: 1.5 kg/m3 }, coolantTemperature: 2 °C }
  pressureTerm: 1.4
  breathing: { from: 4000 rpm, to: 6000 rpm, share: 5 % }
  spread: { head: 3 %, slip: 0 }
`);
    expect(map).toMatchObject({
      from: 'written',
      map: {
        points: [
          { flow: expect.closeTo(0.2, 12), speedRpm: 40_000, efficiency: expect.closeTo(0.74, 12) },
          { flow: 0.3 },
        ],
      },
    });
    expect(model).toEqual({
      // Without a density: usual air, 15 °C and 101.325 kPa.
      inletLoss: { pressureDifference: 1000, atFlow: 0.3, atDensity: 1.225 },
      bypass: { state: 'leaking', leak: 0.03 },
      cooler: {
        by: 'ice water',
        effectiveness: 0.8,
        loss: { pressureDifference: 4000, atFlow: 0.3, atDensity: 1.5 },
        coolantTemperature: 275.15,
      },
      pressureTermRatio: 1.4,
      breathing: { fromRpm: 4000, toRpm: 6000, share: 0.05 },
      spread: { head: 0.03, slip: 0 },
    });
  });

  test('names are forgiven capitals, spaces and hyphens; unknown is the same as leaving out', () => {
    const { model } = sound(`${SHORT}Model:\n  constant efficiency: 70 %\n  Step-Up: unknown\n`);
    expect(model).toEqual({ constantEfficiency: expect.closeTo(0.7, 12) });
  });
});

/** First refusal, its line, and what its message must hold. */
test.each([
  ['invalid-misspelt.yaml', 'match-key-not-known', /slipp: .*Did you mean slip\?/],
  ['invalid-weather.yaml', 'match-missing', /baseline\.weather: is missing.*weather: \{ pressure/],
  ['invalid-unit.yaml', 'unit-of-another-kind', /map\.rated\.flow: .*kg\/s/],
  ['invalid-pulley-of-zero.yaml', 'value-impossible', /drive\.blowerPulleyDiameter: 0 mm cannot be/],
  ['invalid-cell.yaml', 'table-cell', /brake power "much" is not a number/],
  ['invalid-reference.yaml', 'match-missing', /map\.rated\.reference: is missing/],
])('%s is refused, naming place and line', (name, code, message) => {
  const text = textOf(name);
  const read = readMatchText(text, name);
  expect(read.ok).toBe(false);
  const [first] = read.remarks;
  expect(first).toMatchObject({ level: 'refusal', code });
  expect(first!.message).toMatch(message);
  // The line holds the last word of the place, or the row itself.
  const lines = text.split('\n');
  const named = {
    'invalid-cell.yaml': '3000, much',
    'invalid-weather.yaml': 'baseline:',
    'invalid-reference.yaml': 'rated:',
  }[name];
  const word = named ?? /^([^:]+):/.exec(first!.message)![1]!.split('.').at(-1)!;
  expect(lines[first!.line! - 1]).toContain(word);
});

test('all faults come at once, each with its line', () => {
  const read = readMatchText(`schemaVersion: 1
combination: Six
baseline: { pull: A, table: x }
map: { rated: { flow: 0.4 } }
weather: { pressure: 99, temperature: 25 °C, dewPoint: 5 °C, wetBulb: 8 °C }
model: { slip: 120 %, cooler: { by: wind, effectiveness: 50 % }, spread: { luck: 1 % } }
whatIf: [ { name: a, stepUp: tall }, { nme: b } ]
bands: { draws: 2.5 }
`);
  const refusals = read.remarks.filter(({ level }) => level === 'refusal');
  expect(refusals.length).toBeGreaterThan(9);
  for (const { line } of refusals) expect(line).toBeGreaterThan(1);
  const places = refusals.map(({ message }) => /^[^:]+/.exec(message)![0]);
  for (const place of [
    'model.slip',
    'model.cooler.by',
    'model.spread.luck',
    'whatIf, item 1.stepUp',
    'whatIf, item 2.nme',
    'bands.draws',
    'weather.pressure',
  ])
    expect(places).toContain(place);
});

test.each(['', '   ', '[]', '3', 'null', 'a: [', 'combination: unknown\nbaseline: unknown', '&a [*a]'])(
  '%j is refused with what to do',
  (text) => {
    const read = readMatchText(text);
    expect(read.ok).toBe(false);
    expect(read.remarks.some(({ level }) => level === 'refusal')).toBe(true);
  },
);

test('bytes of another kind of file are told as such, and not printed', () => {
  const read = readMatchText(`\u0001\u001b[31m${SHORT}`, 'photo.yaml');
  expect(read).toMatchObject({ ok: false, remarks: [{ code: 'sheet-not-text' }] });
  expect(read.remarks[0]!.message).toBe(
    'photo.yaml is no text that a person wrote: line 1 has a sign that no editor writes, and a match file is plain text. Was another file meant?',
  );
});

test('any spoiled file: read or refused with a reason, never thrown, never NaN', () => {
  const goods = ['from-a-table.yaml', 'outside-solver.yaml', 'columns-and-rows.json'].map(textOf);
  const spoiled = fc
    .tuple(
      fc.constantFrom(...goods),
      fc.array(
        fc.tuple(
          fc.nat(3000),
          fc.nat(12),
          fc.constantFrom('', '-', '{', ':', '"', '\n', ' 1e999 ', 'NaN', '%', '[1]', 'null', '\t', '9'),
        ),
        {
          minLength: 1,
          maxLength: 3,
        },
      ),
    )
    .map(([good, cuts]) =>
      cuts.reduce(
        (text, [at, count, put]) =>
          text.slice(0, at % text.length) + put + text.slice((at % text.length) + count),
        good,
      ),
    );
  let readable = 0;
  fc.assert(
    fc.property(spoiled, (text) => {
      const read = readMatchText(text, 'spoiled.yaml');
      if (read.ok) {
        readable += 1;
        expect(
          JSON.stringify(read.value, (_, value) =>
            typeof value === 'number' && !Number.isFinite(value) ? 'no number' : value,
          ),
        ).not.toContain('"no number"');
      } else expect(read.remarks.some(({ level }) => level === 'refusal')).toBe(true);
      for (const { message } of read.remarks) expect(message).not.toMatch(/undefined|\[object|Infinity/);
    }),
    { seed: 3, numRuns: 600 },
  );
  expect(readable).toBeGreaterThan(20);
});
