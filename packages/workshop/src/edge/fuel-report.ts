import {
  airFlowOfFuel,
  type FuelPart,
  fuelFlowOfAir,
  fuelFlowOfPower,
  type Induction,
  lineFor,
  type UsualRange,
  usualConsumption,
  usualLambda,
} from '@pullbook/core/fuel';
import { accepted, type Remark, type Result, remark } from '@pullbook/core/remark';
import type { ViewOptions } from '@pullbook/views';
import { type Ends, each, endsOf, type Figure, figureIn, PRACTICE } from './fuel-figures.ts';
import { injectingOf, pumpingOf } from './fuel-injecting.ts';
import { type FuelQuestion, type FuelText, fuelQuestionFrom } from './fuel-text.ts';
import { edgeNumber } from './number.ts';
import { type EdgeRemark, edgeRemarks } from './remark.ts';

/** What fuel it takes, and what must pass it. Ends (`…Low`, `…High`) are those of what is usual; alike where it was stated. */
export interface FuelReport {
  schemaVersion: 1;
  fuel: string;
  parts: FuelPart[];
  induction: Induction;
  stoichiometricAirFuelRatio: Figure;
  stoichiometricAirFuelRatioOrigin: string;
  heatingValueMjPerKg: Figure;
  heatingValueOrigin: string;
  densityKgPerM3: Figure;
  densityOrigin: string;
  latentHeatKjPerKg: Figure;
  latentHeatOrigin: string;
  researchOctane: Figure;
  motorOctane: Figure;
  octaneOrigin: string;
  powerKw: Figure;
  powerKwLow: Figure;
  powerKwHigh: Figure;
  powerOrigin: string;
  specificConsumptionGPerKwh: Figure;
  specificConsumptionGPerKwhLow: Figure;
  specificConsumptionGPerKwhHigh: Figure;
  specificConsumptionOrigin: string;
  lambda: Figure;
  lambdaLow: Figure;
  lambdaHigh: Figure;
  lambdaOrigin: string;
  airFuelRatio: Figure;
  fuelFlowKgPerH: Figure;
  fuelFlowKgPerHLow: Figure;
  fuelFlowKgPerHHigh: Figure;
  fuelFlowLPerH: Figure;
  fuelFlowOrigin: string;
  fuelEnergyKw: Figure;
  airFlowKgPerH: Figure;
  airFlowKgPerHLow: Figure;
  airFlowKgPerHHigh: Figure;
  airFlowOrigin: string;
  boostKpa: Figure;
  fuelPressureKpa: Figure;
  fuelPressureOrigin: string;
  fuelReference: 'manifold' | 'open air';
  pressureAcrossKpa: Figure;
  engineSpeedRpm: Figure;
  injectors: Figure;
  /** Of one, so that it is open for `dutyPercent` of the time at the pressure across it. */
  injectorFlowNeededCcPerMin: Figure;
  injectorFlowNeededCcPerMinLow: Figure;
  injectorFlowNeededCcPerMinHigh: Figure;
  injectorFlowNeededKgPerH: Figure;
  /** The same of this fuel at the pressure at which injectors are told. */
  injectorFlowNeededCcPerMinAtRatedPressure: Figure;
  /** The same as it would be told for gasoline at that pressure: the size to look for. */
  injectorSizeCcPerMin: Figure;
  injectorSizeKgPerH: Figure;
  ratedPressureKpa: Figure;
  ratedPressureOrigin: string;
  /** Reckoned with; where an injector's flow is given, what it needs. */
  dutyPercent: Figure;
  dutyPercentLow: Figure;
  dutyPercentHigh: Figure;
  dutyOrigin: string;
  /** For which an injector is held open in two turns of the engine. */
  openTimeMs: Figure;
  deadTimeMs: Figure;
  pumpFlowNeededLPerH: Figure;
  pumpFlowNeededLPerHLow: Figure;
  pumpFlowNeededLPerHHigh: Figure;
  pumpPressureKpa: Figure;
  /** As a pump would have to be told at 13.5 V so that it passes that at the voltage given. */
  pumpFlowNeededLPerHAt13V5: Figure;
  pumpOrigin: string;
  lineInsideMm: Figure;
  lineSize: string | null;
  lineOrigin: string;
  remarks: EdgeRemark[];
}

/** The report on a question told as text, or what is wrong with it. Its words are in SI, or in the units a person chose. */
export function fuelReport(text: FuelText, options: ViewOptions | null = null): Result<FuelReport> {
  const read = fuelQuestionFrom(text);
  return read.ok ? accepted(reportOn(read.value, read.remarks, options), read.remarks) : read;
}

function reportOn(asked: FuelQuestion, remarks: readonly Remark[], options: ViewOptions | null): FuelReport {
  const { fuel, induction } = asked;
  const consumption = rangeOf(asked.consumption, usualConsumption(fuel, induction));
  const lambda = rangeOf(asked.lambda, usualLambda(fuel, induction));
  const flows = flowsOf(asked, consumption, lambda);
  const fuelFlow = flows.fuel;
  const injecting = injectingOf(asked, fuelFlow);
  const pump = pumpingOf(asked, fuelFlow);
  const line = lineFor(fuelFlow.usual, fuel);
  const all = [...remarks, ...injecting.remarks, AID];
  return {
    schemaVersion: 1,
    fuel: fuel.name,
    parts: fuel.parts,
    induction,
    stoichiometricAirFuelRatio: edgeNumber(fuel.stoichiometricAirFuelRatio),
    stoichiometricAirFuelRatioOrigin: fuel.from.stoichiometricAirFuelRatio.source,
    heatingValueMjPerKg: edgeNumber(fuel.heatingValue / 1e6),
    heatingValueOrigin: fuel.from.heatingValue.source,
    densityKgPerM3: edgeNumber(fuel.density),
    densityOrigin: fuel.from.density.source,
    latentHeatKjPerKg: edgeNumber(fuel.latentHeat / 1e3),
    latentHeatOrigin: fuel.from.latentHeat.source,
    researchOctane: edgeNumber(fuel.researchOctane),
    motorOctane: edgeNumber(fuel.motorOctane),
    octaneOrigin: fuel.from.octane.source,
    ...endsOf('powerKw', flows.power, 'kW', 'power'),
    powerOrigin: asked.power !== null ? 'stated' : 'computed: fuel flow over specific consumption',
    ...endsOf('specificConsumptionGPerKwh', consumption, 'g/(kW·h)', 'specificConsumption'),
    specificConsumptionOrigin: consumption.from.source,
    ...endsOf('lambda', lambda, '', 'ratio'),
    lambdaOrigin: lambda.from.source,
    airFuelRatio: edgeNumber(lambda.usual * fuel.stoichiometricAirFuelRatio),
    ...endsOf('fuelFlowKgPerH', fuelFlow, 'kg/h', 'massFlow'),
    fuelFlowLPerH: figureIn(fuelFlow.usual / fuel.density, 'L/h', 'volumeFlow'),
    fuelFlowOrigin:
      asked.power !== null
        ? 'computed: power times specific consumption'
        : 'computed: air flow over lambda times the stoichiometric ratio',
    fuelEnergyKw: edgeNumber((fuelFlow.usual * fuel.heatingValue) / 1e3),
    ...endsOf('airFlowKgPerH', flows.air, 'kg/h', 'massFlow'),
    airFlowOrigin:
      asked.airFlow !== null ? 'stated' : 'computed: fuel flow times lambda times the stoichiometric ratio',
    boostKpa: figureIn(asked.boost, 'kPa', 'gaugePressure'),
    ...injecting.figures,
    ...pump,
    lineInsideMm: edgeNumber(line.diameter * 1e3),
    lineSize: line.size,
    lineOrigin: `fuel at 0.95 m/s, to which the rule of dash sizes comes; ${PRACTICE}`,
    remarks: edgeRemarks(all, null, options),
  };
}

/** What was stated alone, or what is usual with its ends. */
const rangeOf = (stated: number | null, usual: UsualRange): UsualRange =>
  stated === null
    ? usual
    : { low: stated, usual: stated, high: stated, from: { kind: 'derived', source: 'stated' } };

/** Fuel, air and power: the one that is stated gives the others. Ends as far apart as consumption and lambda leave them. */
function flowsOf(
  { power, airFlow, fuel }: FuelQuestion,
  consumption: UsualRange,
  lambda: UsualRange,
): { fuel: Ends; air: Ends; power: Ends } {
  if (power !== null) {
    const fuelFlow = each(consumption, (one) => fuelFlowOfPower(power, one));
    const air = {
      low: airFlowOfFuel(fuelFlow.low, lambda.low, fuel),
      usual: airFlowOfFuel(fuelFlow.usual, lambda.usual, fuel),
      high: airFlowOfFuel(fuelFlow.high, lambda.high, fuel),
    };
    return { fuel: fuelFlow, air, power: { low: power, usual: power, high: power } };
  }
  const air = airFlow!;
  const fuelFlow = {
    low: fuelFlowOfAir(air, lambda.high, fuel),
    usual: fuelFlowOfAir(air, lambda.usual, fuel),
    high: fuelFlowOfAir(air, lambda.low, fuel),
  };
  const made = {
    low: fuelFlow.low / consumption.high,
    usual: fuelFlow.usual / consumption.usual,
    high: fuelFlow.high / consumption.low,
  };
  return { fuel: fuelFlow, air: { low: air, usual: air, high: air }, power: made };
}

const AID: Remark = remark(
  'note',
  'fuel-planning-aid',
  'A planning aid: measure pressure, flow and mixture on the brake before full load, and keep to the makers’ limits. Lean under boost breaks engines.',
);
