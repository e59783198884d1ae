import { describe, expect, test } from 'vitest';
import { solveMatch } from '../airpath/index.ts';
import { dryAir, inventedBaseline, nodesOf, plainInput } from '../airpath/match/match-input.testing.ts';
import { writeSaid } from '../quantity/index.ts';
import { remark } from '../remark/index.ts';
import { assumedBesideFit } from './assumed-beside-fit.ts';
import { fitMatch } from './fit-match.ts';
import type { FitTarget } from './model.ts';

/** A pull of a match whose fuel cools the charge by 20 K, its probe off by so many K. */
function targetWith(probeOff: number, evaporationCooling = 20): FitTarget {
  const air = dryAir(99_000, 298.15);
  const plain = plainInput({ air, baseline: inventedBaseline(air, nodesOf(3000, 6500, 15)) });
  const input = { ...plain, charge: { ...plain.charge, evaporationCooling } };
  const { engineSpeedRpm, figures } = solveMatch(input);
  return {
    input,
    spread: [
      {
        key: 'engine',
        parts: ['swallowing', 'chargeHeat', 'work'],
        factor: [[0.02], [0, 0.1], [0, 0, 0.04]],
      },
    ],
    pull: {
      pullId: 'pull',
      engineSpeedRpm,
      brakePower: Array.from(figures.brakePower),
      boost: Array.from(figures.boost),
      chargeTemperature: Array.from(figures.manifoldTemperature, (one) => one + probeOff),
      dischargeTemperature: null,
      airFlow: null,
      impellerSpeedRpm: null,
      air,
    },
  };
}

function fitOf(target: FitTarget) {
  const fit = fitMatch([target]);
  if (!fit.ok) throw new Error(fit.remarks[0]?.message);
  return fit.value;
}

describe('a charge that was logged far from the match at all speeds', () => {
  const readingOf = (target: FitTarget) => fitOf(target).readings.find(({ id }) => id === 'probe');

  test('where fuel goes in before the manifold, its evaporation is named, in the units shown', () => {
    const { text } = readingOf(targetWith(20))!;
    const us = writeSaid(text.text, text.parts, { units: 'us', decimalMark: '.' }).replaceAll('\u00a0', ' ');
    expect(us).toMatch(/^The charge was logged \d+ °F warmer than the match has it/);
    expect(us).toContain('takes 36 °F off for the fuel that evaporates');
  });

  test('without such fuel the place of the probe and the cooler are', () => {
    expect(readingOf(targetWith(-25, 0))!.text.text).toMatch(/colder .* A probe in another place/);
  });

  test('what a gauge can be off is no reading', () => {
    expect(readingOf(targetWith(4))).toBeUndefined();
  });
});

test('an assumption whose factor the pulls told is none any more; the others stand', () => {
  const [work, slip] = [remark('note', 'work-factor-assumed', '0.98'), remark('note', 'slip-assumed', '1 %')];
  expect(assumedBesideFit([work, slip], fitOf(targetWith(0)))).toEqual([slip]);
  expect(assumedBesideFit([work, slip], null)).toEqual([work, slip]);
});
