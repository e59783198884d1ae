import { readFileSync } from 'node:fs';
import { usualParts } from '@pullbook/core/reach';
import { describe, expect, test } from 'vitest';
import { partsToPlain, partsToYaml } from './parts-to-plain.ts';
import { readPartsText, readPlainParts } from './read-parts.ts';

const sample = (name: string) =>
  readFileSync(new URL(`../../../../samples/reach/${name}`, import.meta.url), 'utf8');

const POUND_PER_HOUR = 0.453_592_37 / 3600;

describe('a parts list', () => {
  test('is read into inside units: a row of sizes, an injector, a stated gain', () => {
    const read = readPartsText(sample('parts.yaml'));
    if (!read.ok) throw new Error(read.remarks[0]!.message);
    const { blowerPulleys, injectors, pumps, breathing, binding, costs, stepUps } = read.value;
    expect(blowerPulleys?.map(({ diameter }) => Math.round(1e6 * diameter) / 1e3)).toEqual(
      Array.from({ length: 17 }, (_, at) => 74 + at),
    );
    expect(blowerPulleys?.[0]?.from).toEqual({ source: 'turned on our own lathe', kind: 'from memory' });
    expect(injectors?.[0]?.injectors.flow).toBeCloseTo(65 * POUND_PER_HOUR, 12);
    expect(injectors?.[0]?.injectors).toMatchObject({ ratedPressure: 3e5, deadTime: 1e-3 });
    expect(pumps?.[0]?.pump.points.map(({ pressure }) => pressure)).toEqual([3e5, 5e5]);
    expect(breathing?.[0]).toMatchObject({
      engineSpeedRpm: [4499, 4500, 6000, 6001],
      factor: [1, 1.04, 1.04, 1],
      ground: 'rule of thumb',
    });
    expect(binding).toEqual({ plugGap: false });
    expect(costs).toEqual({ supercharger: 5 });
    // Left out: it stands as it was.
    expect(stepUps).toBeUndefined();
  });

  test('written and read again it is the same, as YAML and as it is kept', () => {
    const read = readPartsText(sample('parts.yaml'));
    const list = { ...usualParts(), ...(read.ok ? read.value : {}) };
    for (const again of [readPartsText(partsToYaml(list)), readPlainParts(partsToPlain(list))]) {
      if (!again.ok) throw new Error(again.remarks[0]!.message);
      expect(partsToPlain({ ...usualParts(), ...again.value })).toEqual(partsToPlain(list));
      const flows = again.value.injectors!.map(({ injectors }) => injectors.flow);
      for (const [at, flow] of flows.entries())
        expect(flow / list.injectors[at]!.injectors.flow).toBeCloseTo(1, 11);
    }
  });

  test('what is usual is said to be that, and has nothing of a unit or an engine of its own', () => {
    const { blowerPulleys, crankPulleys, coolers, injectors, stepUps, breathing } = usualParts();
    expect([blowerPulleys.length, blowerPulleys[0]!.diameter, blowerPulleys.at(-1)!.diameter]).toEqual([
      31, 0.06, 0.12,
    ]);
    expect([crankPulleys.length, crankPulleys.at(-1)!.diameter]).toEqual([16, 0.215]);
    for (const { from } of [...blowerPulleys, ...coolers, ...injectors])
      expect(from.source).toBe('common practice, no source');
    expect([stepUps, breathing]).toEqual([[], []]);
  });

  test.each([
    ['invalid-parts-fuel.yaml', 10, 'fuel-not-known', /rocket juice.*Known are/],
    ['invalid-parts-injector.yaml', 13, 'match-missing', /pressure: is missing.*3 bar/],
    ['invalid-parts-misspelt.yaml', 16, 'match-key-not-known', /Did you mean beltRibs/],
  ])('%s is refused with its line and what is allowed', (name, line, code, message) => {
    const read = readPartsText(sample(name), name);
    expect(read).toMatchObject({ ok: false, remarks: [{ code, line }] });
    expect(read.remarks[0]!.message).toMatch(message);
  });

  test.each([
    ['blowerPulleys: [{ from: 60 mm, to: 50 mm, step: 1 mm }]', 'match-one-of'],
    ['blowerPulleys: [{ diameter: 78 }]', 'unit-missing'],
    ['blowerPulleys: [{ diameter: 78 mm, cost: 9 }]', 'match-whole'],
    ['coolers: [{ by: water }]', 'match-one-of'],
    ['pumps: [{ flow: 255 L/h, pressure: 5 bar, flowAbove: 300 L/h, pressureAbove: 3 bar }]', 'match-one-of'],
    ['binding: { wishes: yes }', 'match-key-not-known'],
    ['blowerPulleys: 78 mm', 'match-group'],
    ['', 'empty-sheet'],
  ])('%s is refused', (text, code) => {
    expect(readPartsText(text)).toMatchObject({ ok: false, remarks: [{ code, level: 'refusal' }] });
  });
});
