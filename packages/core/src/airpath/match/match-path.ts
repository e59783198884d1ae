import { pressureRatioOn, workRiseOn } from '../map/speed-line.ts';
import { isentropicRise, pressureRatioFromRise } from '../way/compression.ts';
import { chargeHeatTerm, pressureTerm } from '../way/swallow.ts';
import { flowScaleOf, type MatchPlan } from './match-plan.ts';

/** Efficiency below which head over efficiency is no longer a temperature: the map's own work is taken. */
const LEAST_EFFICIENCY = 0.05;

/**
 * The air's way from the ambient to the manifold at a flow through the compressor, kg/s, left in `plan.state`. Gives what
 * arrives less what the engine would swallow of it, kg/s: rising with flow wherever the speed line falls. NaN where no pressure is
 * left.
 */
export function surplusAtFlow(plan: MatchPlan, flow: number): number {
  const { state, input, now } = plan;
  const { map, headScale } = input.compressor;
  const line = now.line!;
  state.inletPressure = plan.ambientPressure - (plan.loss.inlet * flow * flow) / plan.ambientDensity;
  state.correctedFlow =
    (flow * Math.sqrt(plan.ambientTemperature / map.reference.temperature) * map.reference.pressure) /
    state.inletPressure;
  const asked = Math.min(state.correctedFlow / flowScaleOf(plan), line.chokeFlow);
  const ratio = pressureRatioOn(line, asked);
  const scale = headScale * (input.compressor.headShape?.[now.node] ?? 1) * plan.vary.head;
  const head = scale * isentropicRise(ratio, plan.exponent);
  state.pressureRatio = scale === 1 ? ratio : pressureRatioFromRise(head, plan.exponent);
  const rise = temperatureRise(plan, head, scale * workRiseOn(line, asked));
  state.efficiency = rise > 0 ? head / rise : Number.NaN;
  state.dischargePressure = state.inletPressure * state.pressureRatio;
  state.dischargeTemperature = plan.ambientTemperature * (1 + rise);
  return surplusBehind(plan, flow);
}

/**
 * Share of the inlet temperature by which the air gets hotter: the map's work, or head over efficiency where that was shifted or stated.
 * A stage that restricts does the map's work all the same, at a stated efficiency none.
 */
function temperatureRise(plan: MatchPlan, head: number, work: number): number {
  const { efficiencyShift, constantEfficiency } = plan.input.compressor;
  const shift = plan.vary.efficiency;
  if (constantEfficiency !== null) {
    return head > 0 ? head / Math.max(LEAST_EFFICIENCY, constantEfficiency + shift) : 0;
  }
  if (efficiencyShift === 0 && shift === 0) return work;
  const efficiency = head / work + efficiencyShift + shift;
  return head > 0 && efficiency > LEAST_EFFICIENCY ? head / efficiency : work;
}

/**
 * The same with the flow held at the end of the speed line and the pressure ratio searched: a choked compressor passes
 * its flow at any lower pressure. Its work stays that of the line's end.
 */
export function surplusAtRatio(plan: MatchPlan, pressureRatio: number): number {
  const { state, now } = plan;
  state.pressureRatio = pressureRatio;
  state.dischargePressure = state.inletPressure * pressureRatio;
  state.dischargeTemperature = plan.ambientTemperature * (1 + now.temperatureRise);
  state.efficiency =
    now.temperatureRise > 0 ? isentropicRise(pressureRatio, plan.exponent) / now.temperatureRise : Number.NaN;
  return surplusBehind(plan, now.flow);
}

/** The engine breathing past the compressor. */
export function surplusPastCompressor(plan: MatchPlan, flow: number): number {
  const { state } = plan;
  state.inletPressure = plan.ambientPressure - (plan.loss.inlet * flow * flow) / plan.ambientDensity;
  state.correctedFlow = Number.NaN;
  state.pressureRatio = 1;
  state.efficiency = Number.NaN;
  state.dischargePressure = state.inletPressure;
  state.dischargeTemperature = plan.ambientTemperature;
  return surplusBehind(plan, flow);
}

/** From the compressor's outlet on: leak, pipe, cooler, throttle, manifold, and what the engine swallows there. */
function surplusBehind(plan: MatchPlan, flow: number): number {
  const { state, input, loss, vary, ambientTemperature } = plan;
  const { node } = plan.now;
  const { gasConstant } = input.gas;
  const arriving = input.bypass.state === 'leaking' ? flow * (1 - input.bypass.leak) : flow;
  const squared = arriving * arriving * gasConstant;
  const hot = state.dischargeTemperature;

  let pressure = state.dischargePressure;
  pressure -= (loss.pipe * squared * hot) / pressure;
  if (input.cooler) {
    const effectiveness = Math.max(0, Math.min(1, input.cooler.effectiveness + vary.cooler));
    state.cooledTemperature = hot - effectiveness * (hot - plan.coolantTemperature);
    pressure -= (loss.cooler * squared * hot) / pressure;
  } else {
    state.cooledTemperature = hot;
  }
  state.cooledPressure = pressure;
  const beforeFuel =
    ambientTemperature +
    input.charge.heatFactor * vary.chargeHeat * (state.cooledTemperature - ambientTemperature);
  state.manifoldPressure = pressure - (plan.throttleLoss[node]! * squared * beforeFuel) / pressure;
  const warmed = beforeFuel + plan.warming[node]! * (plan.wallTemperature - beforeFuel);
  state.manifoldTemperature = warmed - input.charge.evaporationCooling;
  if (!(pressure > 0 && state.manifoldPressure > 0 && state.manifoldTemperature > 0)) return Number.NaN;

  const relative = arriving / vary.baselineAir;
  state.exhaustPressure = plan.ambientPressure * (1 + plan.exhaustExcess * relative * relative);
  const { pressureTermRatio, heatExponent } = input.swallowing;
  const term =
    pressureTermRatio === null
      ? 1
      : pressureTerm({
          exhaustOverManifold: state.exhaustPressure / state.manifoldPressure,
          compressionRatio: plan.compressionRatio,
          ratioOfSpecificHeats: pressureTermRatio,
        });
  state.swallowed =
    plan.swallowPerPressure[node]! *
    vary.baselineAir *
    vary.swallowing *
    (term / plan.baselineTerm[node]!) *
    chargeHeatTerm({
      manifold: state.manifoldTemperature,
      baseline: input.baseline.manifoldTemperature[node]!,
      exponent: heatExponent,
    }) *
    (state.manifoldPressure / state.manifoldTemperature);
  return arriving - state.swallowed;
}
