import { type CombinationSheet, sheetNumber, sheetValue } from '../combination/index.ts';
import { numberFigure } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { fuelOfSheet } from './fuel-of-sheet.ts';
import { injectorsOn } from './injectors-on-sheet.ts';
import { usualLambda } from './lambda.ts';
import type { Fuel, FuelSupply, Induction } from './model.ts';
import { pumpOn, railOn } from './rail-and-pump-on-sheet.ts';

/** All between tank and cylinder that a sheet tells, with what was taken for what it does not. */
export function fuelSupplyOf(
  sheet: CombinationSheet,
  { induction, lambda = null }: { induction: Induction; lambda?: number | null },
): FuelSupply {
  const { fuel, assumptions } = fuelOfSheet(sheet);
  const mixes = mixesOn(sheet);
  const taken: Remark[] = [...assumptions];
  const injectors = injectorsOn(sheet, taken);
  return {
    fuel,
    lambda: lambda ?? lambdaOn(sheet, fuel, induction, taken),
    injectors,
    rail: railOn(sheet, { mixes, injectors }, taken),
    pump: pumpOn(sheet, fuel, taken),
    lineDiameter: sheetNumber(sheet, 'fuelSystem', 'lineDiameter'),
    mixes,
    assumptions: taken,
  };
}

/** Where fuel meets air; port injection where the sheet does not say. */
function mixesOn(sheet: CombinationSheet): FuelSupply['mixes'] {
  const type = sheetValue(sheet, 'fuelSystem', 'type')?.text.toLowerCase() ?? '';
  if (/carb|throttle-?\s?body/u.test(type)) return 'carburettor';
  return /direct/u.test(type) ? 'direct' : 'port';
}

function lambdaOn(sheet: CombinationSheet, fuel: Fuel, induction: Induction, taken: Remark[]): number {
  const stated = sheetNumber(sheet, 'fuel', 'lambda');
  if (stated !== null) return stated;
  const { low, usual, high } = usualLambda(fuel, induction);
  taken.push(
    remark(
      'note',
      'lambda-at-full-load-assumed',
      said`Lambda at full load is not on the sheet; ${numberFigure(usual, 2)} is taken, of ${numberFigure(low, 2)} to ${numberFigure(high, 2)} that are usual for ${fuel.name} (common practice, no source). Put it under fuel, lambda.`,
    ),
  );
  return usual;
}
