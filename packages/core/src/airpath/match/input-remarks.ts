import { figureOf, numberFigure, percentFigure, speedFigure } from '../../quantity/index.ts';
import { type Remark, remark, said } from '../../remark/index.ts';
import { airOfPower } from '../from/baseline-parts.ts';
import type { MatchInput } from '../model.ts';
import { airFlowFigure } from '../way/air-flow-figure.ts';

/** Share of the swept volume that an engine fills without a supercharger, at manifold density (common practice, no source). */
const POSSIBLE_FILLING = { low: 0.4, high: 1.4 };
/** Work of the air over what petrol at a usual efficiency does with it; a slip of unit is a factor of two and more (common practice, no source). */
const POSSIBLE_WORK = { low: 0.55, high: 1.6 };

/**
 * What of a match's input is possible and so odd that a slip is likelier: a unit, a displacement, pulleys exchanged. It is computed all the
 * same; each is a caution.
 *
 * @example inputRemarks(input) // []
 */
export function inputRemarks(input: MatchInput): Remark[] {
  return [...oddFilling(input), ...oddWork(input), ...oddDrive(input), ...limitBelowTable(input)];
}

/** The value that is furthest out, by ratio; `null`: all are within. */
function furthest(
  values: readonly number[],
  { low, high }: { low: number; high: number },
): { node: number; value: number } | null {
  const off = (value: number): number => Math.max(low / value, value / high);
  const node = values.reduce((worst, value, at) => (off(value) > off(values[worst]!) ? at : worst), 0);
  return off(values[node]!) > 1 ? { node, value: values[node]! } : null;
}

function oddFilling({ baseline, displacement, gas }: MatchInput): Remark[] {
  const filling = baseline.airFlow.map((flow, node) => {
    const swept = (displacement * baseline.engineSpeedRpm[node]!) / 120;
    const density =
      baseline.manifoldPressure[node]! / (gas.gasConstant * baseline.manifoldTemperature[node]!);
    return flow / (swept * density);
  });
  const odd = furthest(filling, POSSIBLE_FILLING);
  if (odd === null) return [];
  return [
    remark(
      'caution',
      'baseline-filling-odd',
      said`At ${speedFigure(baseline.engineSpeedRpm[odd.node]!)} the engine without supercharger would take ${airFlowFigure(baseline.airFlow[odd.node]!)} of air, ${percentFigure(odd.value)} of its swept volume of ${figureOf(displacement, 'volume')}; ${percentFigure(POSSIBLE_FILLING.low)} to ${percentFigure(POSSIBLE_FILLING.high)} is possible. Check the air flow and its unit, and bore, stroke and cylinders.`,
    ),
  ];
}

function oddWork({ baseline, compressionRatio }: MatchInput): Remark[] {
  if (baseline.airBasis === 'torque and efficiency') return [];
  const usual = baseline.brakePower.map((power, node) =>
    airOfPower(power + baseline.frictionPower[node]!, compressionRatio),
  );
  const odd = furthest(
    usual.map((flow, node) => flow / baseline.airFlow[node]!),
    POSSIBLE_WORK,
  );
  if (odd === null) return [];
  const { node, value } = odd;
  return [
    remark(
      'caution',
      'baseline-work-odd',
      said`At ${speedFigure(baseline.engineSpeedRpm[node]!)} the engine without supercharger makes ${figureOf(baseline.brakePower[node]!, 'power')} on ${airFlowFigure(baseline.airFlow[node]!)} of air, ${numberFigure(value, 2)} times what that air usually does; ${numberFigure(POSSIBLE_WORK.low, 2)} to ${numberFigure(POSSIBLE_WORK.high, 1)} is possible. Check both and their units.`,
    ),
  ];
}

function oddDrive({ drive: { pulleyRatio } }: MatchInput): Remark[] {
  if (pulleyRatio >= 1) return [];
  return [
    remark(
      'caution',
      'pulleys-step-down',
      said`The blower's input turns ${numberFigure(pulleyRatio, 2)} times for one turn of the crankshaft: slower, where pulleys of a centrifugal step up. Are crank and blower pulley exchanged?`,
    ),
  ];
}

function limitBelowTable({ drive: { engineSpeedLimitRpm }, baseline }: MatchInput): Remark[] {
  const top = baseline.engineSpeedRpm.at(-1)!;
  if (engineSpeedLimitRpm === null || engineSpeedLimitRpm >= top) return [];
  return [
    remark(
      'caution',
      'limit-below-match',
      said`The engine's limit on the sheet is ${speedFigure(engineSpeedLimitRpm)}, and the match goes to ${speedFigure(top)}. The impeller is held against its limit at the higher of the two. Mend one of them.`,
    ),
  ];
}
