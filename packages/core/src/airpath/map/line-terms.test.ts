import { expect, test } from 'vitest';
import { ratedMap } from '../match/match-input.testing.ts';
import type { SpeedLine } from '../model.ts';
import { fitMap } from './fit-map.ts';
import { measuredShape } from './line-measured.ts';
import { lineTerms } from './line-terms.ts';
import { pressureRatioOn, speedLineAt } from './speed-line.ts';

/** Ellipse: (flow - top)^2 over (choke - top)^2, and head over head at the top likewise. */
const ellipse: SpeedLine = {
  speedRpm: 1,
  tipMach: 1,
  surgeFlow: 0,
  peakFlow: 0.1,
  chokeFlow: 0.2,
  highestPressureRatio: 2,
  highestEfficiency: 0.8,
  measuredFlow: null,
  shape: measuredShape(0, {
    topFlow: 0.1,
    chokeFlow: 0.2,
    head: 0.5,
    flowExponent: 2,
    headExponent: 2,
    droop: 0,
    tipMach: 1,
    work: 1,
    workSlope: 0,
    workCurve: 0,
    mostEfficiency: 0.8,
  }),
};

test('a super-ellipse of exponent 2: at 0.18 of 0.1 to 0.2 six tenths of the head are left (worked outside)', () => {
  // The printed case has pressure ratio in place of head: 0.1, 0.2, 2, 1 and 1.6 give a flow of 0.18 exactly.
  const share = (flow: number) => (pressureRatioOn(ellipse, flow) ** (2 / 7) - 1) / 0.2;
  expect(share(0.1)).toBeCloseTo(1, 12);
  expect(share(0.18)).toBeCloseTo(0.6, 12);
  expect(share(0.2)).toBeCloseTo(0, 12);
  expect((share(0.1 + 1e-6) - share(0.1)) / 1e-6).toBeCloseTo(0, 3);
});

test('the numbers of a line make its pressure ratio again', () => {
  const terms = lineTerms(ellipse);
  if (terms.form !== 'points') throw new Error('not of points');
  const { topFlow, topRise, flowExponent, headExponent } = terms;
  const rise = topRise * (1 - ((0.17 - topFlow) / 0.1) ** flowExponent) ** (1 / headExponent);
  expect((1 + rise) ** 3.5).toBeCloseTo(pressureRatioOn(ellipse, 0.17), 12);
});

test('a rated line: work and polytropic efficiency make its pressure ratio', () => {
  const line = speedLineAt(ratedMap(), 44_000);
  const terms = lineTerms(line);
  if (terms.form !== 'rated') throw new Error('not rated');
  const { bestFlow, bestEfficiency, work, workSlope } = terms;
  expect(pressureRatioOn(line, bestFlow)).toBeCloseTo(
    (1 + work + workSlope * bestFlow) ** (3.5 * bestEfficiency),
    12,
  );
});

test('work 0.65, tip Mach 1.2, polytropic 0.80 make 2.4362 (worked outside)', () => {
  const map = fitMap({
    id: '',
    name: '',
    form: 'rated',
    reference: { pressure: 100_000, temperature: 288.15 },
    geometry: { wheelExitDiameter: 0.15, wheelInletDiameter: null, blades: null, backsweep: null },
    points: [
      {
        flow: 0.5,
        // Sound is 340.29 m/s; 1.2 of it at the tip of 0.15 m. Isentropic efficiency of 2.4362 over a rise of 0.4 x 0.65 x 1.44.
        speedRpm: (60 * 1.2 * Math.sqrt(1.4 * 287.05 * 288.15)) / (Math.PI * 0.15),
        pressureRatio: 2.4362,
        efficiency: (2.4362 ** (2 / 7) - 1) / 0.3744,
      },
    ],
    leftEnd: 'not known',
    origin: 'assumed',
    notes: '',
    invented: true,
    createdAt: '',
  });
  if (!map.ok) throw new Error(map.remarks[0]?.message);
  const line = speedLineAt(
    map.value,
    map.value.shape.numbers.designMach![0]! / map.value.shape.numbers.machPerRpm![0]!,
  );
  const terms = lineTerms(line);
  if (terms.form !== 'rated') throw new Error('not rated');
  expect(terms.bestEfficiency).toBeCloseTo(0.8, 4);
  expect((terms.work + terms.workSlope * terms.bestFlow) / (0.4 * 1.2 ** 2)).toBeCloseTo(0.65, 4);
});
