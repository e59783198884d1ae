import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { roomyAxis, roundTicks, sharedAxis } from './axis.ts';

const ROOM = { lengthPx: 180, nearestPx: 20 };

test('a range in which the usual steps leave one value has others: no scale can be read off one', () => {
  // On a tall picture 5,000 alone would stand there; a step of 2,000 has no room.
  expect(roundTicks([1500, 8750], 730, 207).ticks).toEqual([2500, 5000, 7500]);
  expect(roundTicks([1500, 8750], 760, 207).ticks).toEqual([2000, 4000, 6000, 8000]);
  expect(roundTicks([0.21, 0.93], 100, 45).ticks).toEqual([0.4, 0.8]);
});

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

describe('sharedAxis', () => {
  const edge = fc.double({ min: -900, max: 900, noNaN: true });

  test('spans what it is asked to, at round values, and alike whatever its height', () => {
    fc.assert(
      fc.property(edge, edge, fc.double({ min: 20, max: 900, noNaN: true }), (one, other, lengthPx) => {
        const reach: [number, number] = [Math.min(one, other), Math.max(one, other)];
        const axis = sharedAxis(reach, { lengthPx, nearestPx: 20 });
        expect(axis.range).toEqual(sharedAxis(reach, { lengthPx: 500, nearestPx: 20 }).range);
        expect(axis.range[0]).toBeLessThanOrEqual(reach[0] + 1e-9);
        expect(axis.range[1]).toBeGreaterThanOrEqual(reach[1] - 1e-9);
        for (const tick of axis.ticks) {
          expect(tick).toBeGreaterThanOrEqual(axis.range[0]);
          expect(tick).toBeLessThanOrEqual(axis.range[1]);
        }
        if (lengthPx >= 40) expect(axis.ticks.length).toBeGreaterThanOrEqual(2);
        const [first, second] = axis.ticks;
        if (first === undefined || second === undefined) return;
        const gap = ((second - first) / (axis.range[1] - axis.range[0])) * lengthPx;
        expect(gap).toBeGreaterThanOrEqual(20 - 1e-6);
      }),
      { seed: 6 },
    );
  });

  test('steps in what people read: never threes', () => {
    expect(sharedAxis([150, 550], { lengthPx: 60, nearestPx: 20 }).ticks).toEqual([200, 400]);
    expect(sharedAxis([150, 550], { lengthPx: 400, nearestPx: 20 }).ticks).toContain(350);
    // 300 alone, or nought alone, would leave no scale.
    expect(sharedAxis([227, 349], { lengthPx: 120, nearestPx: 45 }).ticks).toEqual([220, 360]);
    expect(sharedAxis([-6, 8], { lengthPx: 120, nearestPx: 45 }).ticks).toEqual([0, 8]);
  });
});
