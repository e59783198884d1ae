import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { matchFromFile } from '@pullbook/workshop';
import { describe, expect, test } from 'vitest';

/** Matches held against a solver written from docs/match-equations.md; see PROVENANCE.md. */
const here = new URL('.', import.meta.url);
const answers: Record<string, Record<string, number>[]> = JSON.parse(
  readFileSync(new URL('answers.json', here), 'utf8'),
);

async function matched(file: URL) {
  const found = await matchFromFile(readFileSync(file, 'utf8'), {
    fileName: 'match.yaml',
    folder: fileURLToPath(new URL('.', file)),
    book: null,
    bands: null,
    words: null,
  });
  if (!found.ok) throw new Error(found.remarks[0]!.message);
  return found.value;
}

test('every file has its answers', () => {
  const files = readdirSync(here).filter((name) => name.endsWith('.yaml'));
  expect(Object.keys(answers).sort()).toEqual(files.sort());
});

describe('each figure as the outside solver has it, to 1e-8', () => {
  test.each(Object.keys(answers))('%s', async (name) => {
    const { points } = await matched(new URL(name, here));
    expect(points).toHaveLength(answers[name]!.length);
    for (const [row, answer] of answers[name]!.entries())
      for (const [figure, value] of Object.entries(answer))
        expect(
          Math.abs(Number(points[row]![figure]) - value),
          `${figure} at ${answer.engineSpeedRpm} r/min`,
        ).toBeLessThan(1e-8 * Math.max(0.1, Math.abs(value)));
  });
});

test('a map of points: pressure ratio, heat and flow by the equations and the numbers in the JSON', async () => {
  const { points, map, airPressureKpa } = await matched(
    new URL('../../samples/match/outside-solver.yaml', here),
  );
  const kappa = 287.05 / 1005;
  // As the file has it: 99 kPa and 25 °C on either side, nothing lost, 70 % at every point.
  const table = [
    [3000, 84, 0.0915],
    [4500, 135, 0.1445],
    [6000, 167, 0.185],
  ] as const;
  for (const [row, [speed, power, air]] of table.entries()) {
    const point = points[row]!;
    const line = map.lines[row]!;
    const flow = Number(point.correctedFlowKgPerS);
    const { topFlowKgPerS: top, chokeFlowKgPerS: choke } = line as Record<string, number>;
    const rise =
      flow <= top!
        ? line.topRise! * (1 - line.droopPerKgPerSSquared! * (flow - top!) ** 2)
        : line.topRise! *
          (1 - ((flow - top!) / (choke! - top!)) ** line.flowExponent!) ** (1 / line.headExponent!);
    const ratio = (1 + rise) ** 3.5;
    expect(Number(point.compressorPressureRatio)).toBeCloseTo(ratio, 9);
    expect(Number(point.manifoldPressureKpa)).toBeCloseTo(airPressureKpa * ratio, 7);
    const temperature = 298.15 * (1 + (ratio ** kappa - 1) / 0.7);
    expect(Number(point.manifoldTemperatureC)).toBeCloseTo(temperature - 273.15, 7);
    const swallowed = (air * ratio * 298.15) / temperature;
    expect(Number(point.airFlowKgPerS)).toBeCloseTo(swallowed, 9);
    expect(flow).toBeCloseTo((swallowed * 100) / 99, 9);
    expect(line.correctedSpeedRpm).toBeCloseTo(speed * 2.2 * 3.6, 6);
    const drive = (swallowed * 1005 * (temperature - 298.15)) / 1000;
    expect(Number(point.brakePowerKw)).toBeCloseTo(((power + 12) * swallowed) / air - 12 - drive, 6);
  }
});

test('the line of a map of points does the work of its equation', async () => {
  const { points, map } = await matched(new URL('../../samples/match/from-a-table.yaml', here));
  for (const [row, point] of points.entries()) {
    const line = map.lines[row]!;
    const flow = Number(point.correctedFlowKgPerS);
    const ideal = Number(point.compressorPressureRatio) ** (2 / 7) - 1;
    const work = Math.max(
      line.work! + line.workSlopePerKgPerS! * flow + line.workCurvePerKgPerSSquared! * flow ** 2,
      0.01 * line.topRise!,
      ideal / line.mostEfficiency!,
    );
    // The file's day is at 32 °C.
    expect((Number(point.dischargeTemperatureC) - 32) / 305.15).toBeCloseTo(work, 9);
  }
});
