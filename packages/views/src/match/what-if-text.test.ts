import { blendOf } from '@pullbook/core/fuel';
import { describe, expect, test } from 'vitest';
import type { MatchBundle } from '../match-model.ts';
import { asWhatIfText, whatIfForm } from './what-if-form.ts';
import { type WhatIfText, whatIfFromText } from './what-if-text.ts';

/** Only what a what-if reads of a bundle: two combinations that differ in their pulley. */
function bundleOf(
  drive = { crankPulleyDiameter: 0.19 as number | null, blowerPulleyDiameter: 0.085 as number | null },
) {
  const input = (blowerPulleyDiameter: number | null) => ({
    drive: { ...drive, blowerPulleyDiameter, stepUp: 3.6 },
    cooler: { effectiveness: 0.75, coolantTemperature: null },
    air: { pressure: 99_000, temperature: 298.15, relativeHumidity: 0.4 },
    charge: { evaporationCooling: 12 },
    work: { factor: 1 },
    baseline: { engineSpeedRpm: [2000, 4000, 6000] },
  });
  const supply = { fuel: blendOf([{ substance: 'gasoline', volumeShare: 1 }]), mixes: 'port' };
  const smaller = drive.blowerPulleyDiameter === null ? null : 0.08;
  return {
    combinations: [
      { key: 'A', name: 'base', input: input(drive.blowerPulleyDiameter), supply },
      { key: 'B', name: 'smaller pulley', input: input(smaller), supply },
    ],
  } as unknown as MatchBundle;
}

const tried = (text: WhatIfText, bundle = bundleOf()) => {
  const read = whatIfFromText(text, bundle);
  if (!read.ok) throw new Error(read.remarks.map(({ message }) => message).join(' '));
  return read.value;
};

describe('what is tried, from text', () => {
  test('nothing typed is nothing tried, whichever combination is chosen', () => {
    expect(tried({})).toBeNull();
    expect(tried({ on: 'A', blowerPulleyDiameter: '  ' })).toBeNull();
  });

  test('in any unit, on the last combination unless another is named', () => {
    expect(tried({ blowerPulleyDiameter: '80 mm' })).toEqual({ key: 'B', blowerPulleyDiameter: 0.08 });
    // An inch is 25.4 mm.
    const inches = tried({ on: 'A', blowerPulleyDiameter: '3 in' })!;
    expect(inches.key).toBe('A');
    expect(inches.blowerPulleyDiameter).toBeCloseTo(0.0762, 12);
    expect(tried({ moreWork: '3 %' })!.workFactor).toBeCloseTo(1.03, 12);
    expect(tried({ fuel: 'E85' })!.fuel?.name).toBe('E85 as labelled');
    expect(tried({ moreAir: '8 %', moreAirFrom: '4000 rpm' })!.breathing).toEqual({
      fromRpm: 4000,
      toRpm: 6000,
      share: 0.08,
    });
  });

  test('another cooler takes what is not told of it from the one that is fitted', () => {
    expect(tried({ cooler: 'none' })!.cooler).toBe('none');
    expect(tried({ cooler: 'other', coolantTemperature: '2 °C' })!.cooler).toEqual({
      effectiveness: 0.75,
      coolantTemperature: 275.15,
    });
  });

  test('at an altitude the pressure is that of the standard atmosphere, the humidity stays', () => {
    const air = tried({ altitude: '1500 m' })!.air!;
    // U.S. Standard Atmosphere 1976: 845.56 hPa at 1,500 m (geopotential; from memory).
    expect(air.pressure / 100).toBeCloseTo(845.56, 1);
    expect(air.temperature).toBe(298.15);
    expect(air.relativeHumidity).toBeCloseTo(0.4, 9);
  });

  test.each([
    [{ blowerPulleyDiameter: '0 mm' }, /Blower pulley: 0 mm cannot be\. Allowed: 10 to 2000 mm/],
    [{ blowerPulleyDiameter: '80' }, /Blower pulley: /],
    [{ crankPulleyDiameter: 'big' }, /Crank pulley: /],
    [{ cooler: 'ice' }, /"ice" is no cooler/],
    [{ moreAir: '5 %', moreAirFrom: '6000 rpm', moreAirTo: '4000 rpm' }, /first speed must be the lower/],
  ])('%j is refused with what is allowed', (text, message) => {
    const read = whatIfFromText(text, bundleOf());
    expect(read.ok).toBe(false);
    expect(read.remarks.map((one) => one.message).join(' ')).toMatch(message);
  });

  test('one pulley in place of unknown ones says nothing', () => {
    const unknown = bundleOf({ crankPulleyDiameter: null, blowerPulleyDiameter: null });
    expect(whatIfFromText({ blowerPulleyDiameter: '80 mm' }, unknown).ok).toBe(false);
    expect(whatIfFromText({ blowerPulleyDiameter: '80 mm', crankPulleyDiameter: '190 mm' }, unknown).ok).toBe(
      true,
    );
  });
});

describe('the form', () => {
  const US = { units: 'us', decimalMark: '.' } as const;
  const SI = { units: 'si', decimalMark: ',' } as const;

  test('what stands, and one step either way', () => {
    const [blower, , stepUp] = whatIfForm(bundleOf(), {}, SI)!.drive;
    expect(blower).toMatchObject({
      value: '80 mm',
      stands: '80 mm',
      isTried: false,
      less: '79 mm',
      more: '81 mm',
    });
    expect(stepUp).toMatchObject({ value: '3,6', less: '3.55', more: '3.65' });
    expect(whatIfForm(bundleOf(), {}, US)!.drive[0]).toMatchObject({ value: '3.15 in', less: '3.1 in' });
  });

  test('what was typed comes back as it was, and steps go from there in the units shown', () => {
    const form = whatIfForm(bundleOf(), { on: 'A', blowerPulleyDiameter: '3.5 in' }, SI)!;
    expect(form.drive[0]).toMatchObject({ value: '3,5 in', isTried: true, stands: '85 mm', less: '87.9 mm' });
    expect(form).toMatchObject({ on: 'A', isTried: true });
  });

  test('a step that would be too far is not offered', () => {
    const form = whatIfForm(bundleOf(), { cooler: 'other', coolerEffectiveness: '100 %' }, US)!;
    expect(form.cooler.fields[0]).toMatchObject({ less: '95 %', more: null });
  });

  test('what cannot be read is told at its field', () => {
    const [blower] = whatIfForm(bundleOf(), { blowerPulleyDiameter: 'small' }, US)!.drive;
    expect(blower!.value).toBe('small');
    expect(blower!.trouble).toMatch(/^Blower pulley: /);
  });

  test('typed with a comma for the decimals, it is kept with a point', () => {
    expect(asWhatIfText(' 3,346 in', SI)).toBe('3.346 in');
    expect(asWhatIfText('1,500 m', US)).toBe('1500 m');
  });

  test('another fuel: what burns now, what is typed, and the known ones where it is not one', () => {
    expect(whatIfForm(bundleOf(), {}, SI)!.fuel).toMatchObject({
      value: '',
      isTried: false,
      stands: 'gasoline',
    });
    const typed = whatIfForm(bundleOf(), { fuel: 'dragon juice' }, SI)!.fuel;
    expect(typed).toMatchObject({ value: 'dragon juice', isTried: true });
    expect(typed.trouble).toContain('dragon juice');
    expect(typed.names).toContain('methanol');
  });
});
