import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { roomyAxis } from './axis.ts';

const ROOM = { lengthPx: 180, nearestPx: 20 };

describe('roomyAxis', () => {
  test('shows every value, with two ticks or more, at round values not nearer than asked', () => {
    const values = fc.array(fc.double({ min: -5000, max: 5000, noNaN: true }), {
      minLength: 1,
      maxLength: 20,
    });
    fc.assert(
      fc.property(values, (heights) => {
        const { range, ticks } = roomyAxis([Math.min(...heights), Math.max(...heights)], ROOM);
        expect(range[0]).toBeLessThanOrEqual(Math.min(...heights));
        expect(range[1]).toBeGreaterThanOrEqual(Math.max(...heights));
        expect(ticks.length).toBeGreaterThanOrEqual(2);
        const step = (ticks[1] ?? 0) - (ticks[0] ?? 0);
        expect((step / (range[1] - range[0])) * ROOM.lengthPx).toBeGreaterThanOrEqual(
          ticks.length > 2 ? ROOM.nearestPx - 1e-6 : 0,
        );
        const leading = step / 10 ** Math.floor(Math.log10(step) + 1e-6);
        expect(
          [1, 2, 5].some((one) => Math.abs(leading - one) < 1e-3),
          String(step),
        ).toBe(true);
      }),
      { seed: 7 },
    );
  });

  test('ticks are told apart by their decimals', () => {
    const { ticks, decimals } = roomyAxis([0.78, 0.83], ROOM);
    expect(new Set(ticks.map((tick) => tick.toFixed(decimals))).size).toBe(ticks.length);
  });

  test('does not go below zero for looks only', () => {
    expect(roomyAxis([0, 9.3], ROOM).range[0]).toBe(0);
    expect(roomyAxis([0.2, 9.3], ROOM).range[0]).toBe(0);
  });

  test('does not blow up a constant value', () => {
    const { range } = roomyAxis([400.0001, 400.0002], ROOM);
    expect(range[1] - range[0]).toBeGreaterThanOrEqual(0.8);
    const [low, high] = roomyAxis([0, 0], ROOM).range;
    expect(low < 0 && high > 0).toBe(true);
  });

  test('leaves headroom for texts', () => {
    const plain = roomyAxis([200, 500], ROOM);
    const roomy = roomyAxis([200, 500], { ...ROOM, headroomPx: 30 });
    const above = ({ range }: typeof plain) => ((range[1] - 500) / (range[1] - range[0])) * ROOM.lengthPx;
    expect(above(roomy)).toBeGreaterThanOrEqual(30);
  });
});
