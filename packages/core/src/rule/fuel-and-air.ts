import { fuelOfSheet, GASOLINE, isFuelTold } from '../fuel/index.ts';
import { median } from '../numeric/index.ts';
import { figureOf, numberFigure, percentFigure, rangeOf } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { Finding } from './model.ts';
import { fuelOf, meanRatio, observedPower, type PullAtHand } from './pull-at-hand.ts';

/** V08: fuel over observed power. V09: flows against lambda. V34: a ratio told on another fuel's scale. */
export const fuelAndAir = (at: PullAtHand): Finding[] => [
  ...consumption(at),
  ...flowsAgainstMixture(at),
  ...mixtureScale(at),
];

function consumption(at: PullAtHand): Finding[] {
  const [fuel, power] = [at.values('fuelFlow'), observedPower(at)];
  if (fuel === null || power === null || fuelOf(at.sheet) === 'alcohol') return [];
  const value = meanRatio(fuel, power);
  const [low, high] = at.boosted
    ? [at.limit('V08.boostedLow'), at.limit('V08.boostedHigh')]
    : [at.limit('V08.low'), at.limit('V08.high')];
  if (!Number.isFinite(value) || (value >= low && value <= high)) return [];
  const kind = 'specificConsumption';
  return [
    at.find('V08', {
      input: 'Fuel flow over observed power',
      kind,
      value,
      threshold: value < low ? low : high,
      said: said`The engine used ${figureOf(value, kind)} over the pull; ${rangeOf(low, high, kind)} is where petrol engines ${at.boosted ? 'with' : 'without'} a supercharger lie. Check the fuel meter and its unit, the load cell, and that the fuel is on the sheet.`,
    }),
  ];
}

function flowsAgainstMixture(at: PullAtHand): Finding[] {
  const [air, fuel, lambda] = [at.values('airFlow'), at.values('fuelFlow'), at.values('lambda')];
  const stoichiometric = stoichiometricOf(at);
  if (air === null || fuel === null || lambda === null || stoichiometric === null) return [];
  const value = meanRatio(air, fuel) / (median(lambda.filter(Number.isFinite)) * stoichiometric);
  const allowed = at.limit('V09.share');
  if (!Number.isFinite(value) || Math.abs(value - 1) <= allowed) return [];
  return [
    at.find('V09', {
      input: 'Air flow, fuel flow and lambda',
      kind: 'ratio',
      value: value - 1,
      threshold: allowed,
      said: said`Air flow over fuel flow is ${percentFigure(Math.abs(value - 1))} ${value > 1 ? 'leaner' : 'richer'} than lambda says with a stoichiometric ratio of ${numberFigure(stoichiometric, 1)}; ${percentFigure(allowed)} is let pass. A meter, a leak before the lambda probe, or air that goes round the meter.`,
    }),
  ];
}

function mixtureScale(at: PullAtHand): Finding[] {
  const ratio = at.values('airFuelRatio');
  const stoichiometric = stoichiometricOf(at);
  if (ratio === null || stoichiometric === null || fuelOf(at.sheet) !== 'alcohol') return [];
  const value = median(ratio.filter(Number.isFinite));
  const threshold = at.limit('V34.lambda') * stoichiometric;
  if (!(value > threshold)) return [];
  return [
    at.find('V34', {
      input: 'Mixture, air to fuel',
      kind: 'ratio',
      value,
      threshold,
      said: said`An air-fuel ratio of ${numberFigure(value, 1)} would be lambda ${numberFigure(value / stoichiometric, 2)} for the fuel on the sheet: it looks like a gauge marked for petrol. Read the column as lambda times ${numberFigure(GASOLINE.stoichiometricAirFuelRatio, 1)}, or log lambda itself.`,
    }),
  ];
}

/** Stoichiometric ratio by mass of the fuel on the sheet, petrol where none is told. `null`: an alcohol, and not told which. */
function stoichiometricOf({ sheet }: PullAtHand): number | null {
  if (sheet === null) return GASOLINE.stoichiometricAirFuelRatio;
  if (!isFuelTold(sheet) && fuelOf(sheet) === 'alcohol') return null;
  return fuelOfSheet(sheet).fuel.stoichiometricAirFuelRatio;
}
