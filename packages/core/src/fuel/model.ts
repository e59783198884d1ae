import type { Provenance } from '../quantity/index.ts';
import type { Remark } from '../remark/index.ts';

/** Substances of which fuels are blended. */
export type SubstanceId = 'gasoline' | 'ethanol' | 'methanol' | 'isooctane' | 'n-heptane' | 'toluene';

/** One substance of a fuel. */
export interface FuelPart {
  substance: SubstanceId;
  /** Share by volume, 0 to 1. */
  volumeShare: number;
}

/** A liquid fuel by its figures; inside units. */
export interface Fuel {
  /** As shown: `gasoline`, `E85 as labelled`, `70 % ethanol by volume in gasoline` */
  name: string;
  /** Empty: only its figures are known. */
  parts: FuelPart[];
  /** kg of air for one of fuel */
  stoichiometricAirFuelRatio: number;
  /** J/kg, lower, of the liquid at 25 °C */
  heatingValue: number;
  /** kg/m³ */
  density: number;
  /** J/kg, at 25 °C */
  latentHeat: number;
  /** Research and motor octane number; `null`: not known */
  researchOctane: number | null;
  motorOctane: number | null;
  /** What each figure rests on. */
  from: Record<
    'stoichiometricAirFuelRatio' | 'heatingValue' | 'density' | 'latentHeat' | 'octane',
    Provenance
  >;
}

/** How an engine breathes, as far as its thirst goes. */
export type Induction = 'naturally aspirated' | 'centrifugal' | 'positive displacement' | 'turbocharged';

/** What is usual, with its ends; inside unit. */
export interface UsualRange {
  low: number;
  usual: number;
  high: number;
  from: Provenance;
}

/** Injectors as on the sheet; inside units. */
export interface Injectors {
  count: number;
  /** kg/s of one, open all the time, of the fuel it was told for, at `ratedPressure` */
  flow: number;
  /** kg/m³ of the fluid its flow was told with */
  ratedDensity: number;
  /** Pa across it */
  ratedPressure: number;
  /** s by which it opens late at the voltage it gets (it is told at 13.5 V); `null`: not known */
  deadTime: number | null;
}

/** What stands before the injectors. */
export interface FuelRail {
  /** Pa at rest, above what the regulator is referenced to */
  pressure: number;
  /** `manifold`: rises with boost, so that what is across the injector stays. `open air`: boost takes from it. */
  reference: 'manifold' | 'open air';
}

/** A pump's flow at pressures and one voltage. */
export interface FuelPump {
  name: string;
  /** V at which its flow was told */
  ratedVoltage: number;
  /** V it gets at full load */
  voltage: number;
  /** Pa over flow m³/s, the pressure rising; one point is allowed */
  points: { pressure: number; flow: number }[];
}

/** All between tank and cylinder, as far as it is known. */
export interface FuelSupply {
  fuel: Fuel;
  /** At full load: air over stoichiometric air. */
  lambda: number;
  injectors: Injectors | null;
  rail: FuelRail | null;
  pump: FuelPump | null;
  /** m, inside of the feed line; `null`: not known */
  lineDiameter: number | null;
  /** `carburettor`: fuel goes in before the manifold. */
  mixes: 'port' | 'direct' | 'carburettor';
  /** What was taken for what is not known. */
  assumptions: Remark[];
}

/** The state of an engine at full load at one speed, for spark and knock. Inside units. */
export interface ChargeAtLoad {
  /** r/min */
  engineSpeedRpm: number;
  /** Pa absolute, K: in the manifold */
  manifoldPressure: number;
  manifoldTemperature: number;
  compressionRatio: number;
  /** Pa, absolute */
  exhaustPressure: number;
  lambda: number;
}

/** How much advance a fuel allows, planning grade; rad before top dead centre. */
export interface SparkAllowed {
  /** For most torque, were there no knock. */
  forBestTorque: number;
  /** At which the integral reaches 1; at most `forBestTorque`. Low and high: what the assumptions leave open. */
  allowed: number;
  low: number;
  high: number;
  /** Share of the work at best torque that is left with `allowed`; its ends. */
  work: number;
  workLow: number;
  workHigh: number;
  /** Each assumption in a sentence, with its figure. */
  assumptions: Remark[];
}

/** What another fuel does to the work of an air mass and to the charge, planning grade. */
export interface FuelEffect {
  /** On the work of a kilogram of air at the same lambda habits: energy, cooling, spark. 1: none. */
  work: number;
  /** One standard deviation of it, share. */
  workSpread: number;
  /** K more by which fuel cools the charge before the manifold's probe. */
  evaporationCooling: number;
  /** Share of the manifold's pressure that is fuel vapour, added. */
  fuelVapour: number;
  /** The parts of `work`, in a sentence each. */
  because: Remark[];
}
