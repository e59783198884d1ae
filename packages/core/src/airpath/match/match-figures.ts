import { hasTeeth, impellerSpeed, tipSpeedOf } from '../drive/impeller-speed.ts';
import { pressureRatioOn } from '../map/speed-line.ts';
import { MATCH_FIGURES, type MatchFigure, type MatchState } from '../model.ts';
import { flowScaleOf, type MatchPlan } from './match-plan.ts';

/** Places of the figures in a row. */
export const AT = Object.fromEntries(MATCH_FIGURES.map((figure, place) => [figure, place])) as Record<
  MatchFigure,
  number
>;

/** Relative step of flow over which the slope of a speed line is taken. */
const SLOPE_STEP = 1e-4;

/** Writes all figures of the node solved last into `plan.row`; without a solution NaN. */
export function writeFigures(plan: MatchPlan, state: MatchState): void {
  if (state === 'no solution') {
    plan.row.fill(Number.NaN);
    return;
  }
  writeAir(plan);
  writeCompressor(plan, state);
  writePower(plan, state);
}

function writeAir(plan: MatchPlan): void {
  const { row, state, input, now } = plan;
  const { gas, tap, charge } = input;
  const air = state.swallowed;
  const tapped = {
    manifold: state.manifoldPressure,
    'before throttle': state.cooledPressure,
    'compressor outlet': state.dischargePressure,
  }[tap];
  row[AT.boost] = tapped - plan.ambientPressure;
  row[AT.manifoldPressure] = state.manifoldPressure;
  row[AT.manifoldTemperature] = state.manifoldTemperature;
  row[AT.compressorInletPressure] = state.inletPressure;
  row[AT.dischargePressure] = state.dischargePressure;
  row[AT.dischargeTemperature] = state.dischargeTemperature;
  row[AT.airFlow] = air;
  const density =
    (state.manifoldPressure * (1 - charge.fuelVapour)) / (gas.gasConstant * state.manifoldTemperature);
  row[AT.volumetricEfficiency] = air / (plan.sweptFlow[now.node]! * density);
  row[AT.coolerHeat] = input.cooler
    ? air * gas.specificHeat * (state.dischargeTemperature - state.cooledTemperature)
    : 0;
}

function writeCompressor(plan: MatchPlan, place: MatchState): void {
  const { row, state, input, now, vary } = plan;
  const { drive, compressor } = input;
  const engineSpeed = input.baseline.engineSpeedRpm[now.node]!;
  const slip = hasTeeth(drive.kind) ? 0 : Math.max(0, Math.min(0.9, drive.slip + vary.slip));
  const speed = impellerSpeed(drive, engineSpeed, slip);
  row[AT.impellerSpeedRpm] = speed;
  row[AT.tipSpeed] = tipSpeedOf(compressor.map.wheelExitDiameter, speed);
  row[AT.correctedSpeedRpm] = speed * Math.sqrt(compressor.map.reference.temperature / input.air.temperature);
  row[AT.pressureRatio] = state.pressureRatio;
  // A stage that restricts has none.
  row[AT.efficiency] = state.pressureRatio > 1 ? state.efficiency : Number.NaN;
  row[AT.correctedFlow] = state.correctedFlow;
  if (place === 'bypassed') {
    row[AT.compressorFlow] = 0;
    row[AT.surgeMargin] = Number.NaN;
    row[AT.chokeMargin] = Number.NaN;
    row[AT.slopeOfLine] = Number.NaN;
    return;
  }
  const line = now.line!;
  const flow = Math.min(state.correctedFlow / flowScaleOf(plan), line.chokeFlow);
  row[AT.compressorFlow] = now.flow;
  row[AT.surgeMargin] = (flow - line.surgeFlow) / flow;
  row[AT.chokeMargin] = (line.chokeFlow - flow) / line.chokeFlow;
  row[AT.slopeOfLine] = place === 'choked' ? Number.NaN : slopeAt(plan, flow);
}

/** d ln(pressure ratio) / d ln(flow), to the left where the line ends. */
function slopeAt(plan: MatchPlan, flow: number): number {
  const line = plan.now.line!;
  const more = Math.min(flow * (1 + SLOPE_STEP), line.chokeFlow);
  const less = flow * (1 - SLOPE_STEP);
  return Math.log(pressureRatioOn(line, more) / pressureRatioOn(line, less)) / Math.log(more / less);
}

function writePower(plan: MatchPlan, place: MatchState): void {
  const { row, state, input, now, vary } = plan;
  const { baseline, work, gas, drive } = input;
  const node = now.node;
  const turning = (baseline.engineSpeedRpm[node]! * Math.PI) / 30;
  const swept = plan.sweptFlow[node]!;
  const brake = baseline.brakePower[node]! * vary.baselinePower;
  const friction = baseline.frictionPower[node]!;

  const heating = now.flow * gas.specificHeat * (state.dischargeTemperature - plan.ambientTemperature);
  const drivePower =
    place === 'bypassed' ? (input.bypass.idleTorque ?? 0) * turning : heating / drive.mechanicalEfficiency;
  row[AT.drivePower] = drivePower;
  row[AT.driveTorque] = drivePower / turning;

  const airRatio = state.swallowed / (baseline.airFlow[node]! * vary.baselineAir);
  const exchanged = work.gasExchange
    ? (state.manifoldPressure - state.exhaustPressure + plan.baselineExchange[node]!) * swept
    : 0;
  const indicated =
    (brake + friction) *
      airRatio *
      plan.dryRatio *
      work.factor *
      (work.shape?.[node] ?? 1) *
      (work.fuelFactor?.[node] ?? 1) *
      vary.work +
    exchanged;
  const risen = work.frictionRise * (state.manifoldPressure - baseline.manifoldPressure[node]!) * swept;
  row[AT.indicatedPower] = indicated;
  row[AT.frictionPower] = friction + risen;
  row[AT.brakePower] = indicated - friction - risen - drivePower;
  row[AT.brakeTorque] = row[AT.brakePower]! / turning;
  row[AT.boostIndex] = row[AT.brakePower]! / brake / (state.manifoldPressure / plan.ambientPressure);
}
