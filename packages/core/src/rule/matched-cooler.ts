import { pressureLost } from '../airpath/index.ts';
import { figureOf, speedFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { MatchAtHand } from './match-at-hand.ts';
import type { Finding } from './model.ts';

/** V15: what the cooler's core takes off the pressure at its highest flow. */
export function matchedCooler(at: MatchAtHand): Finding[] {
  const { cooler, gas } = at.input;
  if (cooler === null) return [];
  const worst = at.highest((node) =>
    pressureLost(cooler.loss, {
      flow: at.figure('airFlow', node),
      density:
        at.figure('dischargePressure', node) / (gas.gasConstant * at.figure('dischargeTemperature', node)),
    }),
  );
  const threshold = at.limit('V15.loss');
  if (worst === null || worst.value <= threshold) return [];
  const kind = 'pressureDifference';
  return [
    at.find('V15', {
      input: 'Pressure loss of the cooler',
      kind,
      value: worst.value,
      threshold,
      said: said`By the match the cooler takes ${figureOf(worst.value, kind)} off the pressure at ${speedFigure(at.curve.engineSpeedRpm[worst.node]!)}; above ${figureOf(threshold, kind)} its core is small for the air. Tap before and behind it to be sure.`,
    }),
  ];
}
