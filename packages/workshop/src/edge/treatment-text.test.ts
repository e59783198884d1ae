import { describe, expect, test } from 'vitest';
import { eventsFromText } from './events-text.ts';
import { treatmentFromText } from './treatment-text.ts';

describe('how a pull is to be read, as said', () => {
  test('only what was said comes back, channels by id or label', () => {
    expect(treatmentFromText({})).toEqual({ ok: true, value: {}, remarks: [] });
    const all = treatmentFromText({
      lagsS: { lambda: 0.3, 'fuel flow': -0.2, Exhaust: 0 },
      windowRpm: [3000, 6500],
      binWidthRpm: null,
      addInertia: false,
    });
    expect(all.ok && all.value).toEqual({
      lags: { lambda: 0.3, fuelFlow: -0.2, exhaustTemperature: 0 },
      windowRpm: [3000, 6500],
      binWidthRpm: null,
      addInertia: false,
    });
  });

  test.each([
    [{ lagsS: { lambda: 5.1 } }, 'absurd-lag', /5\.1 s.*-5 to 5 s/],
    [{ lagsS: { lambda: Number.NaN } }, 'absurd-lag', /-5 to 5 s/],
    [{ lagsS: { lamda: 0.3 } }, 'lag-of-no-channel', /Accepted: lambda,/],
    [{ lagsS: { time: 0.3 } }, 'lag-of-no-channel', /"time"/],
    [{ windowRpm: [6500, 3000] as [number, number] }, 'absurd-window', /6500 to 3000 rpm/],
    [{ windowRpm: [3000, 3000] as [number, number] }, 'absurd-window', /lower one first/],
    [{ windowRpm: [0, 30_001] as [number, number] }, 'absurd-window', /0 to 30000 rpm/],
    [{ windowRpm: [Number.NaN, 3000] as [number, number] }, 'absurd-window', /lower one first/],
    [{ binWidthRpm: 9 }, 'absurd-bin-width', /10 to 1000 rpm/],
    [{ binWidthRpm: 1001 }, 'absurd-bin-width', /10 to 1000 rpm/],
  ])('%j is refused', (text, code, message) => {
    const read = treatmentFromText(text);
    expect(read.ok).toBe(false);
    expect(read.remarks[0]).toMatchObject({ code, level: 'refusal' });
    expect(read.remarks[0]!.message).toMatch(message);
  });

  test('every wrong field has its own remark', () => {
    const read = treatmentFromText({ lagsS: { lambda: 9, torque: 9 }, windowRpm: [2, 1], binWidthRpm: 1 });
    expect(read.remarks.map((one) => one.code)).toEqual([
      'absurd-lag',
      'absurd-lag',
      'absurd-window',
      'absurd-bin-width',
    ]);
  });
});

describe('events', () => {
  test('with a speed and without', () => {
    const read = eventsFromText([
      { engineSpeed: '5.6 krpm', text: ' throttle lifted ' },
      { text: 'belt squealed' },
    ]);
    expect(read.ok && read.value).toEqual([
      { engineSpeedRpm: 5600, text: 'throttle lifted' },
      { engineSpeedRpm: null, text: 'belt squealed' },
    ]);
  });

  test.each([
    [{ engineSpeed: '5600', text: 'x' }, 'missing-unit'],
    [{ engineSpeed: '5600 bar', text: 'x' }, 'unit-of-another-kind'],
    [{ engineSpeed: '60000 rpm', text: 'x' }, 'absurd-value'],
    [{ engineSpeed: '5600 rpm', text: ' ' }, 'event-without-words'],
  ])('%j is refused: %s', (event, code) => {
    const read = eventsFromText([event]);
    expect(read.ok).toBe(false);
    expect(read.remarks[0]).toMatchObject({ level: 'refusal', code });
  });
});
