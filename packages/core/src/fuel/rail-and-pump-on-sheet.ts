import { type CombinationSheet, sheetNumber, sheetValue } from '../combination/index.ts';
import { figureOf } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { USUAL_BASE_PRESSURE } from './carburettor.ts';
import { USUAL_VOLTAGE } from './injectors-on-sheet.ts';
import type { Fuel, FuelPump, FuelRail, FuelSupply, Injectors } from './model.ts';

/** What stands before the injectors or the float valve; what is taken is added to `taken`. `null`: nothing usual can be said. */
export function railOn(
  sheet: CombinationSheet,
  { mixes, injectors }: Pick<FuelSupply, 'mixes' | 'injectors'>,
  taken: Remark[],
): FuelRail | null {
  const pressure = sheetNumber(sheet, 'fuelSystem', 'fuelPressure') ?? usualPressure(mixes, injectors, taken);
  return pressure === null ? null : { pressure, reference: referenceOn(sheet, taken) };
}

function usualPressure(
  mixes: FuelSupply['mixes'],
  injectors: Injectors | null,
  taken: Remark[],
): number | null {
  if (mixes === 'direct' || (injectors === null && mixes === 'port')) return null;
  const pressure =
    mixes === 'carburettor' && injectors === null ? USUAL_BASE_PRESSURE : injectors!.ratedPressure;
  taken.push(
    remark(
      'caution',
      'fuel-pressure-assumed',
      said`Fuel pressure at rest is not on the sheet; ${figureOf(pressure, 'pressureDifference')} is taken (common practice, no source). Put it under fuelSystem, fuelPressure.`,
    ),
  );
  return pressure;
}

function referenceOn(sheet: CombinationSheet, taken: Remark[]): FuelRail['reference'] {
  const told = `${textOf(sheet, 'fuelReference')} ${textOf(sheet, 'regulator')}`;
  if (/open air|atmosphere|not referenced|unreferenced|fixed/u.test(told)) return 'open air';
  if (!/manifold|boost|vacuum|referenced/u.test(told))
    taken.push(
      remark(
        'note',
        'fuel-reference-assumed',
        'Whether fuel pressure rises with boost is not on the sheet; it is taken to. Put manifold or open air under fuelSystem, fuelReference.',
      ),
    );
  return 'manifold';
}

/** The pump of a sheet; `null`: no flow, or none with its pressure. */
export function pumpOn(sheet: CombinationSheet, fuel: Fuel, taken: Remark[]): FuelPump | null {
  const told = sheetValue(sheet, 'fuelSystem', 'pumpFlow');
  if (told === null || told.value === null) return null;
  const pressure = sheetNumber(sheet, 'fuelSystem', 'pumpFlowPressure');
  if (pressure === null) {
    taken.push(
      remark(
        'caution',
        'pump-pressure-missing',
        'The pump’s flow has no pressure on the sheet, and without it says nothing, for a pump passes less the more it pumps against. Put it under fuelSystem, pumpFlowPressure.',
      ),
    );
    return null;
  }
  const ratedVoltage = sheetNumber(sheet, 'fuelSystem', 'pumpVoltage') ?? USUAL_VOLTAGE;
  const voltage = sheetNumber(sheet, 'fuelSystem', 'systemVoltage') ?? USUAL_VOLTAGE;
  const words = sheetValue(sheet, 'fuelSystem', 'pump')?.text ?? 'unknown';
  return {
    name: words === 'unknown' ? 'pump on the sheet' : words,
    ratedVoltage,
    voltage,
    points: [{ pressure, flow: told.kind === 'massFlow' ? told.value / fuel.density : told.value }],
  };
}

const textOf = (sheet: CombinationSheet, field: string): string =>
  sheetValue(sheet, 'fuelSystem', field)?.text.toLowerCase() ?? '';
