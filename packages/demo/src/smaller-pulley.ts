import type { AirReading } from '@pullbook/core/air';
import type { HiddenTruth } from './hidden-truth.ts';
import {
  beltSlip,
  blowerEfficiency,
  CRANK_PULLEY,
  GEARBOX,
  headCoefficient,
  STEP_UP,
  WHEEL_DIAMETER,
} from './invented-blower.ts';
import {
  type FullThrottle,
  inventedBoost,
  inventedChargeRise,
  inventedFuelFlow,
  inventedLambda,
  inventedTorque,
} from './invented-engine.ts';
import { FIRST_BLOWN_DAY, shareOfReference } from './weather.ts';

const FIRST_PULLEY = 0.084;
export const SMALLER_PULLEY = 0.08;

const GAS_CONSTANT = 287;
const SPECIFIC_HEAT = 1005;
const IDEAL = 2 / 7;
const STOICHIOMETRIC = 14.6;
/** Air at the blower's mouth over the weather's, K. */
const MOUTH_WARMER = 0.6;
/** Pressure lost before the blower, and behind it up to the manifold, each with flow squared over density: Pa·s²/(kg·m³). */
const LOSS_BEFORE = 2200;
const LOSS_BEHIND = 62_000;

/** The blower and the engine at one engine speed. */
interface Running {
  power: number;
  driveTorque: number;
  airFlow: number;
  manifoldPressure: number;
  chargeTemperature: number;
  tipSpeed: number;
  flowCoefficient: number;
  head: number;
  /** Real work on a kilogram of air, J. */
  work: number;
}

/**
 * What the supercharged engine on the base cam does with a smaller blower pulley in an air: from what it does with the first
 * one, by the head of the blower at its flow, what the engine takes at that pressure and warmth, and the slip of the belt.
 * Swallowing goes with pressure over the root of temperature.
 */
export function withSmallerPulley(
  engineSpeedRpm: number,
  air: AirReading,
  hidden: HiddenTruth,
): FullThrottle {
  const first = withFirstPulley(engineSpeedRpm, hidden);
  const firstRise = inventedChargeRise('supercharged', engineSpeedRpm, hidden);
  const mouth = air.temperature + MOUTH_WARMER;
  let now = first;
  let chargeRise = firstRise;
  for (let step = 0; step < 60; step += 1) {
    const before = air.pressure - (LOSS_BEFORE * now.airFlow ** 2) / density(air.pressure, mouth);
    const tipSpeed = tipSpeedOf(engineSpeedRpm, {
      pulley: SMALLER_PULLEY,
      driveTorque: now.driveTorque,
      hidden,
    });
    const flowCoefficient = now.airFlow / (density(before, mouth) * tipSpeed * WHEEL_DIAMETER ** 2);
    const head =
      first.head *
      (tipSpeed / first.tipSpeed) ** 2 *
      (headCoefficient(flowCoefficient, hidden) / headCoefficient(first.flowCoefficient, hidden));
    const work = head / blowerEfficiency(flowCoefficient, hidden);
    const discharge = before * (1 + head / (SPECIFIC_HEAT * mouth)) ** (1 / IDEAL);
    chargeRise = firstRise * (work / first.work) * hidden.warmer;
    const chargeTemperature = mouth + chargeRise;
    const manifoldPressure =
      discharge - (LOSS_BEHIND * now.airFlow ** 2) / density(now.manifoldPressure, chargeTemperature);
    const pressureShare = manifoldPressure / first.manifoldPressure;
    const swallowed =
      first.airFlow *
      pressureShare *
      Math.sqrt(first.chargeTemperature / chargeTemperature) *
      (1 + hidden.scavenged * (pressureShare - 1));
    const airFlow = (now.airFlow + swallowed) / 2;
    const driveTorque = driveTorqueOf(airFlow, work, engineSpeedRpm);
    now = {
      ...now,
      airFlow,
      manifoldPressure,
      chargeTemperature,
      tipSpeed,
      flowCoefficient,
      head,
      work,
      driveTorque,
    };
  }
  const lost = hidden.sparkLost * Math.max(0, (engineSpeedRpm - 4500) / 2000);
  const turning = turningSpeed(engineSpeedRpm);
  const indicated =
    (first.power + frictionOf(engineSpeedRpm) + first.driveTorque * turning) *
    (now.airFlow / first.airFlow) *
    (1 - lost);
  const power = indicated - frictionOf(engineSpeedRpm) - now.driveTorque * turning;
  const lambda = inventedLambda('supercharged', engineSpeedRpm);
  return {
    torque: power / turning,
    boost: now.manifoldPressure - air.pressure,
    lambda,
    chargeRise,
    fuelFlow: (atPower) => (atPower / power) * (now.airFlow / (lambda * STOICHIOMETRIC)),
  };
}

/** As the first pulley's pulls have it: boost and power are theirs, the rest follows. */
function withFirstPulley(engineSpeedRpm: number, hidden: HiddenTruth): Running {
  const air = FIRST_BLOWN_DAY;
  const mouth = air.temperature + MOUTH_WARMER;
  const torque = inventedTorque('supercharged', engineSpeedRpm, hidden) * shareOfReference(air);
  const power = torque * turningSpeed(engineSpeedRpm);
  const airFlow =
    inventedFuelFlow('supercharged', power) * inventedLambda('supercharged', engineSpeedRpm) * STOICHIOMETRIC;
  const manifoldPressure = air.pressure + inventedBoost('supercharged', engineSpeedRpm, hidden);
  const chargeTemperature = mouth + inventedChargeRise('supercharged', engineSpeedRpm, hidden);
  const before = air.pressure - (LOSS_BEFORE * airFlow ** 2) / density(air.pressure, mouth);
  const discharge =
    manifoldPressure + (LOSS_BEHIND * airFlow ** 2) / density(manifoldPressure, chargeTemperature);
  const head = SPECIFIC_HEAT * mouth * ((discharge / before) ** IDEAL - 1);
  let driveTorque = 0;
  let tipSpeed = 0;
  let flowCoefficient = 0;
  let work = 0;
  for (let step = 0; step < 20; step += 1) {
    tipSpeed = tipSpeedOf(engineSpeedRpm, { pulley: FIRST_PULLEY, driveTorque, hidden });
    flowCoefficient = airFlow / (density(before, mouth) * tipSpeed * WHEEL_DIAMETER ** 2);
    work = head / blowerEfficiency(flowCoefficient, hidden);
    driveTorque = driveTorqueOf(airFlow, work, engineSpeedRpm);
  }
  return {
    power,
    driveTorque,
    airFlow,
    manifoldPressure,
    chargeTemperature,
    tipSpeed,
    flowCoefficient,
    head,
    work,
  };
}

const density = (pressure: number, temperature: number): number => pressure / (GAS_CONSTANT * temperature);
const turningSpeed = (engineSpeedRpm: number): number => (engineSpeedRpm * 2 * Math.PI) / 60;

/** At the crankshaft, N·m. */
const driveTorqueOf = (airFlow: number, work: number, engineSpeedRpm: number): number =>
  (airFlow * work) / GEARBOX / turningSpeed(engineSpeedRpm);

function tipSpeedOf(
  engineSpeedRpm: number,
  { pulley, driveTorque, hidden }: { pulley: number; driveTorque: number; hidden: HiddenTruth },
): number {
  const turns =
    (engineSpeedRpm / 60) * (CRANK_PULLEY / pulley) * STEP_UP * (1 - beltSlip(driveTorque, hidden));
  return Math.PI * WHEEL_DIAMETER * turns;
}

/** Rubbing and pumping of 3.82 litres, W: 60 kPa and 18 kPa more for each 1,000 r/min. */
function frictionOf(engineSpeedRpm: number): number {
  return ((60_000 + 18 * engineSpeedRpm) * 3.82e-3 * engineSpeedRpm) / 120;
}
