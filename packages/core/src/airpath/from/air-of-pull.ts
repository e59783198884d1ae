import type { CombinationSheet } from '../../combination/index.ts';
import { fuelOfSheet } from '../../fuel/index.ts';
import { median } from '../../numeric/index.ts';
import type { ChannelMeaning, Tune } from '../../pull/index.ts';
import { numberFigure } from '../../quantity/index.ts';
import { type Remark, remark, said } from '../../remark/index.ts';
import type { AirBasis } from '../model.ts';

/** Lambda where nobody read it: best power of petrol without boost, and under boost (common practice, no source). */
const USUAL_LAMBDA = { without: 0.87, boosted: 0.8 };

export interface AirOfPull {
  /** kg/s at the nodes of the channels */
  airFlow: number[];
  lambda: number[] | null;
  basis: Extract<AirBasis, 'air flow' | 'fuel and mixture'>;
  remarks: Remark[];
}

/**
 * Air that a pull swallowed, by what was measured, the most trusted first: an air meter; fuel by weight with the mixture. `null`: neither
 * was logged.
 */
export function airOfPull(
  channels: ReadonlyMap<ChannelMeaning, ArrayLike<number>>,
  { sheet, tune, boosted }: { sheet: CombinationSheet; tune: Tune; boosted: boolean },
): AirOfPull | null {
  const read = (meaning: ChannelMeaning) => {
    const values = channels.get(meaning);
    return values === undefined || !Array.from(values).some(Number.isFinite) ? null : Array.from(values);
  };
  const stoichiometric = fuelOfSheet(sheet).fuel.stoichiometricAirFuelRatio;
  const ratio = read('airFuelRatio');
  const lambda = read('lambda') ?? ratio?.map((one) => one / stoichiometric) ?? null;
  const air = read('airFlow');
  if (air !== null) return { airFlow: air, lambda, basis: 'air flow', remarks: [] };
  const fuel = read('fuelFlow');
  if (fuel === null) return null;
  const noted = Number.parseFloat((tune.targetLambda ?? '').replace(',', '.'));
  const single = noted > 0.5 && noted < 1.5 ? noted : USUAL_LAMBDA[boosted ? 'boosted' : 'without'];
  const mixture = lambda ?? fuel.map(() => single);
  return {
    airFlow: fuel.map((flow, node) => flow * mixture[node]! * stoichiometric),
    lambda,
    basis: 'fuel and mixture',
    remarks: lambda === null ? [lambdaAssumed(single, single === noted)] : [notedIfOdd(lambda)].flat(),
  };
}

const lambdaAssumed = (lambda: number, wasNoted: boolean): Remark =>
  remark(
    wasNoted ? 'note' : 'caution',
    'lambda-assumed',
    wasNoted
      ? said`Lambda was not logged; the one noted as aimed at, ${numberFigure(lambda, 2)}, turns fuel into air.`
      : said`Lambda was not logged; ${numberFigure(lambda, 2)} is taken to turn fuel into air (common practice, no source).`,
  );

function notedIfOdd(lambda: readonly number[]): Remark[] {
  const middle = median(lambda.filter(Number.isFinite));
  if (middle > 0.6 && middle < 1.15) return [];
  return [
    remark(
      'caution',
      'lambda-odd',
      said`Lambda reads ${numberFigure(middle, 2)}; 0.60 to 1.15 is usual at full power. The air worked out of fuel and lambda is as doubtful; check the column and its unit.`,
    ),
  ];
}
