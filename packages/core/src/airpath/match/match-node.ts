import { hasTeeth, impellerSpeed } from '../drive/impeller-speed.ts';
import { isMeasuredAt } from '../map/beyond-measured.ts';
import { speedLineAt } from '../map/speed-line.ts';
import type { MatchState, SpeedLine } from '../model.ts';
import { surplusAtFlow, surplusAtRatio, surplusPastCompressor } from './match-path.ts';
import { AS_GIVEN, flowScaleOf, type MatchPlan } from './match-plan.ts';
import { rootNear } from './root-near.ts';

/** What solves a plan: its functions are made once, since a new one for each node would cost more than the node. */
export interface NodeSolver {
  plan: MatchPlan;
  /** Solves the node and leaves path and flow in the plan. */
  solve: (node: number) => MatchState;
}

/**
 * Finds, at one node, the flow at which what arrives is what the engine swallows. Right of a speed line's highest pressure ratio that
 * flow is the only one: pressure falls and the engine's share of it rises. Left of it another could only exist where pressure rises
 * faster than flow, which would not run steadily; the search begins near the neighbour's answer and stays with a crossing at which the
 * engine's curve rises through the compressor's, the stable kind.
 *
 * @param tolerance relative, of the flow
 */
export function nodeSolver(plan: MatchPlan, tolerance: number): NodeSolver {
  const { input, now } = plan;
  const byFlow = (flow: number) => surplusAtFlow(plan, flow);
  const pastIt = (flow: number) => surplusPastCompressor(plan, flow);
  // Less pressure lets less be swallowed, so what is left over falls as the ratio rises; no pressure lets nothing.
  const byRatio = (ratio: number) => {
    const surplus = surplusAtRatio(plan, ratio);
    return Number.isNaN(surplus) ? -1 : -surplus;
  };
  const ratioSlope = new Float64Array(1);

  const solve = (node: number): MatchState => {
    now.node = node;
    // From the input as it stands and not from the draw before, or a slice would depend on where it begins.
    if (plan.vary !== AS_GIVEN) plan.slope[0] = plan.slopeAsGiven[node]!;
    return input.bypass.state === 'open' ? solvePast(node) : solveThrough(node);
  };

  const solvePast = (node: number): MatchState => {
    const most = 4 * plan.swallowPerPressure[node]! * plan.vary.baselineAir * plan.vary.swallowing;
    const high = (most * plan.ambientPressure) / plan.ambientTemperature;
    now.flow = rootNear(pastIt, 0, high, guessOf(plan, node, high), plan.slope, tolerance);
    return finished(node, 'bypassed');
  };

  const solveThrough = (node: number): MatchState => {
    const line = lineOf(plan, node);
    now.line = line;
    const high = flowAtEnd(plan, line);
    if (!(high > 0)) return failed();
    now.flow = rootNear(byFlow, 0, high, guessOf(plan, node, high), plan.slope, tolerance);
    if (now.flow === high && surplusAtFlow(plan, high) < 0) return solveChoked(node);
    return finished(node, placeOnLine(plan, line));
  };

  const solveChoked = (node: number): MatchState => {
    const { state } = plan;
    now.temperatureRise = state.dischargeTemperature / plan.ambientTemperature - 1;
    const end = state.pressureRatio;
    ratioSlope[0] = state.swallowed / end;
    const ratio = rootNear(byRatio, 0, end, 0.9 * end, ratioSlope, tolerance);
    surplusAtRatio(plan, ratio);
    return finished(node, 'choked');
  };

  const finished = (node: number, place: MatchState): MatchState => {
    const { manifoldPressure, swallowed } = plan.state;
    if (!(manifoldPressure > 0 && swallowed > 0)) return failed();
    if (plan.vary === AS_GIVEN) {
      plan.flowAsGiven[node] = now.flow;
      plan.slopeAsGiven[node] = plan.slope[0]!;
    }
    return place;
  };

  const failed = (): MatchState => {
    now.flow = Number.NaN;
    return 'no solution';
  };

  return { plan, solve };
}

function lineOf(plan: MatchPlan, node: number): SpeedLine {
  const kept = plan.vary.slip === 0 ? plan.lines[node] : null;
  if (kept) return kept;
  const { drive, baseline, compressor, air } = plan.input;
  const slip = hasTeeth(drive.kind) ? 0 : Math.max(0, Math.min(0.9, drive.slip + plan.vary.slip));
  const speed = impellerSpeed(drive, baseline.engineSpeedRpm[node]!, slip);
  const { map } = compressor;
  const line = speedLineAt(map, speed * Math.sqrt(map.reference.temperature / air.temperature));
  if (plan.vary.slip === 0) plan.lines[node] = line;
  return line;
}

/** kg/s through the compressor at the end of its line, with the pressure the inlet loses at that very flow. */
function flowAtEnd(plan: MatchPlan, line: SpeedLine): number {
  const { reference } = plan.input.compressor.map;
  const perPressure =
    (line.chokeFlow * flowScaleOf(plan)) /
    (reference.pressure * Math.sqrt(plan.ambientTemperature / reference.temperature));
  const lost = (4 * perPressure * perPressure * plan.loss.inlet * plan.ambientPressure) / plan.ambientDensity;
  return (2 * perPressure * plan.ambientPressure) / (1 + Math.sqrt(1 + lost));
}

/** The answer as given, carried by how the node before came out against its own; on the first run the trend of the nodes before. */
function guessOf(plan: MatchPlan, node: number, high: number): number {
  const { flowAsGiven, now, vary } = plan;
  const before = node > 0 ? now.flow : Number.NaN;
  const own = flowAsGiven[node]!;
  if (vary !== AS_GIVEN && own > 0) return before > 0 ? (own * before) / flowAsGiven[node - 1]! : own;
  const trend = 2 * before - (node > 1 ? flowAsGiven[node - 2]! : Number.NaN);
  if (trend > 0) return Math.min(trend, 0.98 * high);
  return before > 0 ? Math.min(before, 0.98 * high) : 0.7 * high;
}

function placeOnLine(plan: MatchPlan, line: SpeedLine): MatchState {
  const flow = plan.state.correctedFlow / flowScaleOf(plan);
  if (flow < line.surgeFlow) return 'surge';
  if (flow < line.peakFlow) return 'surge risk';
  return isMeasuredAt(line, flow) ? 'on the map' : 'beyond the measured map';
}
