import { describe, expect, test } from 'vitest';
import { compressionRatioFromVolumes } from './compression-ratio.ts';
import { deriveFigures } from './derive-figures.ts';
import type { CombinationSheet, DerivedFigure } from './model.ts';
import { testSheet } from './test-sheet.ts';

function figure(sheet: CombinationSheet, id: DerivedFigure['id'], engineSpeedRpm?: number): DerivedFigure {
  return deriveFigures(sheet, engineSpeedRpm).find((item) => item.id === id)!;
}

const SIX = { cylinders: 6, bore: '96 mm', stroke: '88 mm' };

describe('displacement and what stands beside it', () => {
  test('a square four of 86 mm is 1998.2289 cm3 (n pi/4 B2 S by hand)', () => {
    const sheet = testSheet({ shortBlock: { cylinders: 4, bore: '86 mm', stroke: '8.6 cm' } });
    expect(figure(sheet, 'displacement').value).toBeCloseTo(1998.2289e-6, 10);
    expect(figure(sheet, 'cylinderDisplacement').value).toBeCloseTo(1998.2289e-6 / 4, 10);
    expect(figure(sheet, 'boreToStroke').value).toBeCloseTo(1, 12);
  });

  test('says what it came from, as entered', () => {
    expect(figure(testSheet({ shortBlock: SIX }), 'displacement').from).toBe('6 × π/4 × (96 mm)² × 88 mm');
  });

  test('without bore or stroke the stated one stands in, and says so', () => {
    const stated = testSheet({ shortBlock: { cylinders: 6, displacement: '3.8 L', stroke: '88 mm' } });
    expect(figure(stated, 'displacement')).toMatchObject({
      value: 3.8e-3,
      from: 'as stated; bore is not on the sheet',
      missing: null,
    });
    const both = testSheet({ shortBlock: { ...SIX, displacement: '3.8 L' } });
    expect(figure(both, 'displacement').value).toBeCloseTo(3821.787e-6, 8);
  });

  test('a missing and an unknown input are told apart', () => {
    const sheet = testSheet({ shortBlock: { cylinders: 6, stroke: 'unknown' } });
    expect(figure(sheet, 'displacement')).toMatchObject({
      value: null,
      missing: 'bore is not on the sheet, stroke is unknown',
    });
    expect(figure(testSheet({}), 'displacement').missing).toBe(
      'cylinders, bore and stroke are not on the sheet',
    );
  });

  test('mean piston speed needs an engine speed', () => {
    const sheet = testSheet({ shortBlock: SIX });
    expect(figure(sheet, 'meanPistonSpeed')).toMatchObject({
      value: null,
      missing: 'no engine speed is given',
    });
    expect(figure(sheet, 'meanPistonSpeed', 6500).value).toBeCloseTo((2 * 0.088 * 6500) / 60, 12);
    expect(figure(testSheet({}), 'meanPistonSpeed', 6500).missing).toBe('stroke is not on the sheet');
  });
});

describe('compression ratio', () => {
  const volumes = {
    shortBlock: {
      ...SIX,
      gasketBore: '98 mm',
      gasketThickness: '1.2 mm',
      deckClearance: '0.5 mm',
      pistonDishVolume: '0 cc',
    },
    heads: { chamberVolume: '61.4 cc' },
  };

  test('from volumes: clearance is chamber, gasket, deck and dish, added by hand', () => {
    // Swept π/4 9.6² 8.8 = 636.96 cm³; gasket π/4 9.8² 0.12 = 9.0516; deck π/4 9.6² 0.05 = 3.6191; clearance 74.071.
    const sheet = testSheet(volumes);
    expect(figure(sheet, 'compressionRatio').value).toBeCloseTo(1 + 636.9645 / (61.4 + 9.05156 + 3.61911), 4);
  });

  test('the entered one wins and says what the volumes give', () => {
    const sheet = testSheet({ ...volumes, shortBlock: { ...volumes.shortBlock, compressionRatio: '9.6:1' } });
    expect(figure(sheet, 'compressionRatio')).toMatchObject({
      value: 9.6,
      from: 'as entered; the volumes give 9.60',
    });
  });

  test('without either it names what lacks', () => {
    const sheet = testSheet({ ...volumes, heads: { chamberVolume: 'unknown' } });
    expect(figure(sheet, 'compressionRatio').missing).toBe(
      'it is not entered, and for the volumes chamber volume is not known',
    );
  });

  test('more dish lowers it, a dome raises it, a dome that fills the room gives none', () => {
    const at = (dish: number) =>
      compressionRatioFromVolumes({ swept: 500, chamber: 50, gasket: 5, deck: 0, dish });
    expect(at(5)).toBe(1 + 500 / 60);
    expect(at(-5)).toBe(1 + 500 / 50);
    expect(at(-55)).toBeNull();
  });
});
