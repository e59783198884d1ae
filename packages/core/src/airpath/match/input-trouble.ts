import { figureOf, percentFigure } from '../../quantity/index.ts';
import { type Remark, remark, said } from '../../remark/index.ts';
import type { FlowLoss, MatchInput } from '../model.ts';
import { airFlowFigure } from '../way/air-flow-figure.ts';

/** K between the manifold's walls and the air below which the share that it warms by is not defined well. */
const LEAST_WALL_DIFFERENCE = 10;

/**
 * What of a match's input cannot be, as refusals that name the value and what is allowed; empty: it can be solved. Written
 * positively, so that a NaN is refused too. A coolant warmer than the hot air is possible and told by the match, not here.
 */
export function troubleOfInput(input: MatchInput): Remark[] {
  const { drive, cooler, bypass, gas, charge, work, swallowing } = input;
  const trouble: Remark[] = [];
  const need = (holds: boolean, code: string, message: () => Parameters<typeof remark>[2]) => {
    if (!holds) trouble.push(remark('refusal', code, message()));
  };
  const needShare = (what: string, value: number, [least, most]: [number, number]) =>
    need(
      value >= least && value <= most,
      'share-out-of-range',
      () =>
        said`${what} is ${percentFigure(value, 1)}; it must lie between ${percentFigure(least, 0)} and ${percentFigure(most, 0)}. Was it given in per cent where a share was meant?`,
    );

  need(
    drive.pulleyRatio > 0 && drive.stepUp > 0,
    'drive-without-ratio',
    () =>
      `The drive has a pulley ratio of ${drive.pulleyRatio} and a step-up of ${drive.stepUp}; both must be above zero, or the impeller does not turn.`,
  );
  needShare('The slip of the drive', drive.slip, [0, 0.9]);
  needShare('The mechanical efficiency of the drive', drive.mechanicalEfficiency, [0.1, 1]);
  if (cooler) needShare("The cooler's effectiveness", cooler.effectiveness, [0, 1]);
  if (bypass.state === 'leaking') needShare('The leak of the bypass', bypass.leak, [0, 0.9]);
  needShare('The fuel vapour in the manifold', charge.fuelVapour, [0, 0.5]);
  if (input.compressor.constantEfficiency !== null) {
    needShare('The constant efficiency of the compressor', input.compressor.constantEfficiency, [0.1, 1]);
  }
  need(
    input.displacement > 0,
    'displacement-not-above-zero',
    () =>
      said`The displacement is ${figureOf(input.displacement, 'volume')}; it must be above zero. Enter bore, stroke and cylinders.`,
  );
  need(
    gas.gasConstant > 0 && gas.specificHeat > gas.gasConstant,
    'gas-out-of-range',
    () =>
      `The gas has ${gas.gasConstant} J/(kg·K) as its constant and ${gas.specificHeat} J/(kg·K) as its specific heat; the second must be the larger.`,
  );
  need(
    (input.compressionRatio ?? 9.5) > 1,
    'compression-ratio-out-of-range',
    () => `The compression ratio is ${input.compressionRatio}; it must be above 1.`,
  );
  need(
    swallowing.scale > 0 &&
      work.factor > 0 &&
      input.compressor.headScale > 0 &&
      (input.compressor.flowScale ?? 1) > 0 &&
      charge.heatFactor >= 0,
    'factor-not-above-zero',
    () => 'A factor on head, swallowing or work is not above zero; 1 leaves the model as it is.',
  );
  const walls = charge.wallTemperature ?? null;
  need(
    walls === null || Math.abs(walls - input.baseline.air.temperature) >= LEAST_WALL_DIFFERENCE,
    'walls-as-the-air',
    () =>
      said`What warms the charge in the manifold is at ${figureOf(walls!, 'temperature')}, within ${figureOf(LEAST_WALL_DIFFERENCE, 'temperatureDifference')} of the baseline's air: how much it warms cannot be told. State its temperature, or that nothing warms it.`,
  );
  const losses: [string, FlowLoss | null | undefined][] = [
    ['filter and inlet pipe', input.inletLoss],
    ['the pipe behind the compressor', input.pipeLoss],
    ['the cooler', cooler?.loss],
    ['the throttle or carburettor', input.throttleLoss],
  ];
  for (const [where, loss] of losses) {
    if (!loss) continue;
    need(
      loss.pressureDifference >= 0 && loss.atFlow > 0 && loss.atDensity > 0,
      'loss-out-of-range',
      () =>
        said`The loss in ${where} is ${figureOf(loss.pressureDifference, 'pressureDifference')} at ${airFlowFigure(loss.atFlow)}; a loss cannot be below zero, and its flow must be above it.`,
    );
  }
  const fuelFactor = work.fuelFactor?.find((factor) => !(factor > 0));
  need(
    fuelFactor === undefined,
    'fuel-factor-not-above-zero',
    () =>
      `What the fuel does to the work of the air is given as ${fuelFactor} at one engine speed; it must be above zero, and 1 where the fuel is that of the baseline.`,
  );
  return [...trouble, ...troubleOfBaseline(input)];
}

function troubleOfBaseline({ baseline, swallowing, compressor, work }: MatchInput): Remark[] {
  const speeds = baseline.engineSpeedRpm;
  if (speeds.length === 0) {
    return [
      remark(
        'refusal',
        'baseline-without-speeds',
        'The baseline has no engine speed at which it is known. Give it at least one.',
      ),
    ];
  }
  const columns: [string, readonly number[]][] = [
    ['air flow', baseline.airFlow],
    ['manifold pressure', baseline.manifoldPressure],
    ['manifold temperature', baseline.manifoldTemperature],
    ['brake power', baseline.brakePower],
  ];
  const uneven = [
    ...columns,
    ['friction power', baseline.frictionPower] as const,
    ...(swallowing.breathing ? [['breathing', swallowing.breathing] as const] : []),
    ...(compressor.headShape ? [['head over speed', compressor.headShape] as const] : []),
    ...(work.fuelFactor ? [['what the fuel does', work.fuelFactor] as const] : []),
  ].find(([, values]) => values.length !== speeds.length);
  if (uneven) {
    return [
      remark(
        'refusal',
        'baseline-uneven',
        `The baseline has ${speeds.length} engine speeds and ${uneven[1].length} values of ${uneven[0]}; each speed needs one.`,
      ),
    ];
  }
  const bad = [
    ...columns.map(([what, values]) => ({ what, place: values.findIndex((value) => !(value > 0)) })),
    { what: 'friction power', place: baseline.frictionPower.findIndex((value) => !(value >= 0)) },
    { what: 'engine speed', place: speeds.findIndex((speed, node) => !(speed > (speeds[node - 1] ?? 0))) },
  ].filter(({ place }) => place >= 0);
  return bad.map(({ what, place }) =>
    remark(
      'refusal',
      'baseline-out-of-range',
      said`The baseline's ${what} does not do at ${figureOf(speeds[place]!, 'engineSpeed')}: it must be known there and above zero, with rising engine speeds. Take that speed out or mend it.`,
    ),
  );
}
