import { describe, expect, test } from 'vitest';
import { camFromEvents } from './cam-card.ts';
import { deriveFigures } from './derive-figures.ts';
import type { CombinationSheet, DerivedFigure } from './model.ts';
import { remarksOnSheet } from './remarks-on-sheet.ts';
import { testSheet } from './test-sheet.ts';
import { valveLift } from './valve-lift.ts';

const DEGREE = Math.PI / 180;

/**
 * A printed card: 276/282 at 0.006 in, intake opens 32, closes 64, exhaust opens 75, closes 27; centrelines 106 and 114, lobe
 * separation 110, advance 4, overlap 59. From a guide on camshafts and their overlap, known at second hand.
 */
const CARD = {
  durationIntake: '276 deg',
  durationExhaust: '282 deg',
  durationLift: '0.006 in',
  intakeOpens: '32 deg',
  intakeCloses: '64 deg',
  exhaustOpens: '75 deg',
  exhaustCloses: '27 deg',
  lobeSeparation: '110 deg',
  intakeCentreline: '106 deg',
  advance: '4 deg',
};

const figure = (sheet: CombinationSheet, id: DerivedFigure['id']) =>
  deriveFigures(sheet).find((one) => one.id === id);
const disagreements = (cam: Record<string, unknown>) =>
  remarksOnSheet(testSheet({ cam })).filter(({ code }) => code === 'cam-card-disagrees');

describe('a printed cam card', () => {
  test('its events give its other figures', () => {
    const events = camFromEvents({
      intakeOpens: 32 * DEGREE,
      intakeCloses: 64 * DEGREE,
      exhaustOpens: 75 * DEGREE,
      exhaustCloses: 27 * DEGREE,
    });
    const degrees = Object.fromEntries(
      Object.entries(events).map(([name, value]) => [name, Number((value / DEGREE).toFixed(9))]),
    );
    expect(degrees).toEqual({
      durationIntake: 276,
      durationExhaust: 282,
      intakeCentreline: 106,
      exhaustCentreline: 114,
      lobeSeparation: 110,
      advance: 4,
      overlap: 59,
    });
  });

  test('on a sheet each figure says what it came from and at which lift', () => {
    const sheet = testSheet({ cam: CARD });
    expect(figure(sheet, 'overlap')!.value).toBeCloseTo(59 * DEGREE, 12);
    expect(figure(sheet, 'overlap')!.from).toBe('32 deg + 27 deg, at 0.006 in');
    expect(figure(sheet, 'exhaustCentreline')!.value).toBeCloseTo(114 * DEGREE, 12);
    expect(figure(sheet, 'eventDurationIntake')!.value).toBeCloseTo(276 * DEGREE, 12);
  });

  test('without events: from durations, lobe separation and centreline', () => {
    const { durationIntake, durationExhaust, lobeSeparation, intakeCentreline } = CARD;
    const sheet = testSheet({ cam: { durationIntake, durationExhaust, lobeSeparation, intakeCentreline } });
    expect(figure(sheet, 'overlap')!.value).toBeCloseTo(59 * DEGREE, 12);
    expect(figure(sheet, 'advanceAsFitted')!.value).toBeCloseTo(4 * DEGREE, 12);
    expect(figure(sheet, 'exhaustCentreline')!.value).toBeCloseTo(114 * DEGREE, 12);
    expect(figure(sheet, 'overlap')!.from).toMatch(/at a lift that is not told$/);
  });

  test('a card that is begun says what lacks; no card, no figures', () => {
    const begun = testSheet({ cam: { intakeOpens: '32 deg', intakeCloses: 'unknown' } });
    expect(figure(begun, 'eventDurationIntake')).toMatchObject({
      value: null,
      missing: 'not known: intake closes',
    });
    expect(figure(testSheet({ cam: { profile: 'road' } }), 'overlap')).toBeUndefined();
  });
});

describe('a card that disagrees with itself', () => {
  test('the printed one does not; within one degree is rounding', () => {
    expect(disagreements(CARD)).toEqual([]);
    expect(disagreements({ ...CARD, durationIntake: '277 deg' })).toEqual([]);
  });

  test('beyond one degree it is told, with both figures, and nothing is refused', () => {
    const [remark, ...others] = disagreements({ ...CARD, durationIntake: '267 deg' });
    expect(others).toEqual([]);
    expect(remark).toMatchObject({ level: 'caution' });
    expect(remark!.message).toMatch(/^cam\.durationIntake: entered is 267\.0°.*gives 276\.0°/);
    expect(disagreements({ ...CARD, lobeSeparation: '112 deg' })).toHaveLength(1);
  });

  test('events at another lift say nothing of the durations', () => {
    expect(disagreements({ ...CARD, durationIntake: '224 deg', eventsLift: '0.050 in' })).toEqual([]);
    expect(disagreements({ ...CARD, advance: '0 deg', eventsLift: '0.050 in' })).toHaveLength(1);
  });
});

describe('valve lift', () => {
  test('lobe lift times rocker ratio less lash, by hand', () => {
    expect(valveLift(0.007, 1.6, 0.0003)).toBeCloseTo(0.0109, 12);
  });

  test('the exhaust takes its own rocker, and without lash it says so', () => {
    const sheet = testSheet({
      heads: { rockerRatio: '1.6', rockerRatioExhaust: '1.5' },
      cam: { lobeLiftIntake: '7 mm', lashIntake: '0.3 mm', lobeLiftExhaust: '7 mm' },
    });
    expect(figure(sheet, 'valveLiftIntake')).toMatchObject({ from: '7 mm × 1.6 − 0.3 mm' });
    expect(figure(sheet, 'valveLiftIntake')!.value).toBeCloseTo(0.0109, 12);
    expect(figure(sheet, 'valveLiftExhaust')!.value).toBeCloseTo(0.0105, 12);
    expect(figure(sheet, 'valveLiftExhaust')!.from).toMatch(/without lash/);
    const bare = testSheet({ cam: { lobeLiftIntake: '7 mm' } });
    expect(figure(bare, 'valveLiftIntake')!.missing).toBe('not known: rocker ratio');
  });
});
