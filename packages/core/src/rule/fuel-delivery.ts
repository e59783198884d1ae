import { fuelSupplyOf, inductionOfSheet, injectorDuty } from '../fuel/index.ts';
import { extentOf, median } from '../numeric/index.ts';
import { figureOf, percentFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { Finding } from './model.ts';
import type { PullAtHand } from './pull-at-hand.ts';
import { sheetNumber } from './sheet-words.ts';

/** V17: share of the time that injectors are open. V18: fuel pressure less boost through the pull. */
export const fuelDelivery = (at: PullAtHand): Finding[] => [...injectorsOpen(at), ...pressureHolds(at)];

function injectorsOpen(at: PullAtHand): Finding[] {
  const { sheet, curve } = at;
  const fuelFlow = at.values('fuelFlow');
  // A pull is not held against a number of injectors that was only taken.
  if (fuelFlow === null || sheet === null || sheetNumber(sheet, 'fuelSystem', 'injectors') === null)
    return [];
  const { fuel, injectors } = fuelSupplyOf(sheet, { induction: inductionOfSheet(sheet), lambda: 1 });
  if (injectors === null) return [];
  const rated = sheetNumber(at.sheet, 'fuelSystem', 'injectorFlowPressure');
  const across = pressureAcross(at);
  const known = rated !== null && across !== null;
  const duty = fuelFlow.map((flow, node) =>
    injectorDuty({
      fuelFlow: flow,
      injectors,
      fuel,
      across: known ? across[node]! : injectors.ratedPressure,
      engineSpeedRpm: curve!.engineSpeedRpm[node]!,
    }),
  );
  const value = extentOf(duty)[1];
  const [caution, alarm] = [at.limit('V17.duty'), at.limit('V17.dutyAlarm')];
  if (!Number.isFinite(value) || !(value > caution)) return [];
  return [
    at.find('V17', {
      input: 'Fuel flow and injector size',
      kind: 'ratio',
      value,
      threshold: value > alarm ? alarm : caution,
      level: value > alarm ? 'alarm' : 'caution',
      said: said`The fuel measured needs the injectors open for ${percentFigure(value)} of the time${known ? '' : ', at the pressure their flow is told at'}; above ${percentFigure(caution)} little is left, above ${percentFigure(alarm)} the mixture goes lean. Larger injectors or more pressure before more boost.`,
    }),
  ];
}

/** Fuel pressure less boost on the nodes, Pa; `null`: no fuel pressure logged. */
function pressureAcross(at: PullAtHand): Float64Array | null {
  const fuel = at.values('fuelPressure');
  const boost = at.values('boost');
  return fuel === null || boost === null ? fuel : fuel.map((pascal, node) => pascal - boost[node]!);
}

function pressureHolds(at: PullAtHand): Finding[] {
  const known = (pressureAcross(at) ?? new Float64Array()).filter(Number.isFinite);
  if (known.length < 4) return [];
  const base = median(known.slice(0, Math.ceil(known.length / 4)));
  const [low, high] = extentOf(known).map((pascal) => pascal / base - 1) as [number, number];
  const value = Math.abs(low) > Math.abs(high) ? low : high;
  const threshold = at.limit('V18.share');
  if (!(base > 0) || !(Math.abs(value) > threshold)) return [];
  const boosted = at.values('boost') !== null;
  return [
    at.find('V18', {
      input: boosted ? 'Fuel pressure less boost' : 'Fuel pressure',
      kind: 'ratio',
      value,
      threshold: value < 0 ? -threshold : threshold,
      said: said`Fuel pressure${boosted ? ' less boost' : ''} goes from ${figureOf(base, 'pressureDifference')} at the start to ${figureOf(base * (1 + value), 'pressureDifference')}, ${percentFigure(Math.abs(value))} ${value < 0 ? 'less' : 'more'}; ${percentFigure(threshold)} is let pass. ${value < 0 ? 'The pump, its voltage, the filter or the lines do not keep up, or the regulator does not follow boost.' : 'The regulator or the return line.'}`,
    }),
  ];
}
