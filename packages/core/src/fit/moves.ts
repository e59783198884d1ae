import { BENDS, bendAt, type MatchInput } from '../airpath/index.ts';
import type { BendAxis, FitParameterId, MoveId, Moves, Shaped } from './model.ts';
import { isAdded, PARAMETERS } from './parameters.ts';

/** The parameter that each shape bends. */
export const BENT: Record<Shaped, FitParameterId> = {
  head: 'headScale',
  swallowing: 'swallowingScale',
  work: 'workFactor',
};
export const SHAPED: readonly Shaped[] = ['head', 'swallowing', 'work'];

/** In this order everywhere, the parameters first. */
export const MOVES: readonly MoveId[] = [
  ...PARAMETERS,
  ...SHAPED.flatMap((one) => BENDS.map((bend): MoveId => `${one} ${bend}`)),
];

/** Moves that leave an input as it is: factors on its own priors; slip and bends are differences. */
export const AS_IT_IS = Object.fromEntries(
  MOVES.map((id): [MoveId, number] => [id, PARAMETERS.some((one) => one === id && !isAdded(one)) ? 1 : 0]),
) as unknown as Moves;

export const overallRatioOf = ({ drive }: Pick<MatchInput, 'drive'>): number =>
  drive.pulleyRatio * drive.stepUp;

export function axisOf(input: MatchInput): BendAxis {
  const { engineSpeedRpm } = input.baseline;
  return {
    lowRpm: engineSpeedRpm[0]!,
    highRpm: engineSpeedRpm.at(-1)!,
    overallRatio: overallRatioOf(input),
  };
}

/** Where the nodes of an input lie on an axis, -1 to 1; beyond it at its end. What bends the head goes with the impeller. */
export function placesOn(axis: BendAxis, input: MatchInput, one: Shaped): number[] {
  const half = (axis.highRpm - axis.lowRpm) / 2;
  const share = one === 'head' ? overallRatioOf(input) / axis.overallRatio : 1;
  return input.baseline.engineSpeedRpm.map((speed) =>
    Math.max(-1, Math.min(1, (speed * share - axis.lowRpm) / half - 1)),
  );
}

/** Factors at the nodes of an input of one shape. */
export const shapeOver = (axis: BendAxis, input: MatchInput, by: Moves, one: Shaped): number[] =>
  placesOn(axis, input, one).map((place) =>
    BENDS.reduce<number>((sum, bend) => sum + by[`${one} ${bend}`] * bendAt(bend, place), 1),
  );

/**
 * An input with all moved: factors on what it has, so that an uncooled and a cooled engine keep their own priors.
 *
 * @example movedBy(input, { ...AS_IT_IS, headScale: 1.02 }) // 2 % more head
 */
export function movedBy(input: MatchInput, by: Moves, axis: BendAxis = axisOf(input)): MatchInput {
  const { compressor, swallowing, charge, work, drive } = input;
  const shape = (own: readonly number[] | null | undefined, one: Shaped): number[] =>
    shapeOver(axis, input, by, one).map((factor, node) => (own?.[node] ?? 1) * factor);
  return {
    ...input,
    compressor: {
      ...compressor,
      headScale: compressor.headScale * by.headScale,
      flowScale: (compressor.flowScale ?? 1) * by.flowScale,
      headShape: shape(compressor.headShape, 'head'),
    },
    swallowing: {
      ...swallowing,
      scale: swallowing.scale * by.swallowingScale,
      breathing: shape(swallowing.breathing, 'swallowing'),
    },
    charge: { ...charge, heatFactor: charge.heatFactor * by.chargeHeat },
    work: { ...work, factor: work.factor * by.workFactor, shape: shape(work.shape, 'work') },
    drive: { ...drive, slip: drive.slip + by.slip },
  };
}
