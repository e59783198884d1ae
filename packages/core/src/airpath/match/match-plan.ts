import type { AirState } from '../../air/index.ts';
import { MATCH_FIGURES, type MatchInput, type SpeedLine } from '../model.ts';
import { lossFactor } from '../way/loss.ts';
import { pressureTerm, USUAL_COMPRESSION_RATIO } from '../way/swallow.ts';

/** How one draw parts from the input; all as it stands: `AS_GIVEN`. */
export interface MatchVariation {
  baselineAir: number;
  baselinePower: number;
  head: number;
  mapFlow: number;
  efficiency: number;
  cooler: number;
  slip: number;
  swallowing: number;
  chargeHeat: number;
  work: number;
}

/** Shares are factors here, absolute parts are added. */
export const AS_GIVEN: MatchVariation = {
  baselineAir: 1,
  baselinePower: 1,
  head: 1,
  mapFlow: 1,
  efficiency: 0,
  cooler: 0,
  slip: 0,
  swallowing: 1,
  chargeHeat: 1,
  work: 1,
};

/** What the air path is at the flow looked at last. Pa absolute, K, kg/s. */
export interface PathState {
  inletPressure: number;
  correctedFlow: number;
  pressureRatio: number;
  efficiency: number;
  dischargePressure: number;
  dischargeTemperature: number;
  /** Before the throttle */
  cooledPressure: number;
  cooledTemperature: number;
  manifoldPressure: number;
  manifoldTemperature: number;
  exhaustPressure: number;
  /** Into the engine by what the engine swallows */
  swallowed: number;
}

/**
 * A match input with all that does not change from flow to flow worked out once, and room to work in: nothing is allocated
 * while it is solved. One plan serves one run after another, not two at once.
 */
export interface MatchPlan {
  input: MatchInput;
  vary: MatchVariation;
  nodes: number;
  /** R / cp: exponent of the isentropic temperature ratio */
  exponent: number;
  ambientPressure: number;
  ambientTemperature: number;
  ambientDensity: number;
  coolantTemperature: number;
  compressionRatio: number;
  /** See `lossFactor`. */
  loss: { inlet: number; pipe: number; cooler: number };
  /** The same of throttle or carburettor; per node. */
  throttleLoss: Float64Array;
  /** Part of the difference to the walls by which the manifold warms the charge; per node. */
  warming: Float64Array;
  /** K; where nothing warms it, any. */
  wallTemperature: number;
  /** Share of the moist air that is dry, over that of the baseline's air: only dry air burns fuel. */
  dryRatio: number;
  /** kg/s that would be swallowed for 1 Pa/K in the manifold, before both terms; per node. */
  swallowPerPressure: Float64Array;
  /** Pressure term of the baseline; per node. */
  baselineTerm: Float64Array;
  /** Exhaust less manifold pressure of the baseline, carried to the ambient pressure of the match, Pa; per node. */
  baselineExchange: Float64Array;
  /** Part of ambient pressure that the exhaust lies above it at a flow of 1 kg/s. */
  exhaustExcess: number;
  /** m³/s swept; per node. */
  sweptFlow: Float64Array;
  /** Lines at the slip of the input, asked for once; per node. */
  lines: (SpeedLine | null)[];
  /** kg/s through the compressor as the input stands; NaN before it was solved. A near guess for its variations. */
  flowAsGiven: Float64Array;
  /** How steeply the surplus rose there. */
  slopeAsGiven: Float64Array;
  state: PathState;
  /** The figures of the node worked out last, in the order of `MATCH_FIGURES`. */
  row: Float64Array;
  /** See `rootNear`. */
  slope: Float64Array;
  /** What is being solved. */
  now: { node: number; line: SpeedLine | null; flow: number; temperatureRise: number };
}

export function planMatch(input: MatchInput): MatchPlan {
  const { baseline, air, gas, charge, swallowing } = input;
  const nodes = baseline.engineSpeedRpm.length;
  const gasConstantRatio = moistGasConstant(baseline.air) / moistGasConstant(air);
  const vapourRatio = (1 - charge.fuelVapour) / (1 - (baseline.fuelVapour ?? charge.fuelVapour));
  const highestFlow = baseline.airFlow.reduce((most, flow) => Math.max(most, flow), 0);
  const excessOfBaseline = (swallowing.exhaustPressureRatio - 1) / highestFlow ** 2;
  const pressureScale = air.pressure / baseline.air.pressure;
  const compressionRatio = input.compressionRatio ?? USUAL_COMPRESSION_RATIO;

  const swallowPerPressure = new Float64Array(nodes);
  const baselineTerm = new Float64Array(nodes);
  const baselineExchange = new Float64Array(nodes);
  const sweptFlow = new Float64Array(nodes);
  for (let node = 0; node < nodes; node++) {
    const flow = baseline.airFlow[node]!;
    const pressure = baseline.manifoldPressure[node]!;
    const exhaust = baseline.air.pressure * (1 + excessOfBaseline * flow * flow);
    const share = swallowing.scale * (swallowing.breathing?.[node] ?? 1) * vapourRatio * gasConstantRatio;
    swallowPerPressure[node] = (share * flow * baseline.manifoldTemperature[node]!) / pressure;
    baselineTerm[node] =
      swallowing.pressureTermRatio === null
        ? 1
        : pressureTerm({
            exhaustOverManifold: exhaust / pressure,
            compressionRatio,
            ratioOfSpecificHeats: swallowing.pressureTermRatio,
          });
    baselineExchange[node] = (exhaust - pressure) * pressureScale;
    sweptFlow[node] = (input.displacement * baseline.engineSpeedRpm[node]!) / 120;
  }

  return {
    input,
    vary: AS_GIVEN,
    nodes,
    exponent: gas.gasConstant / gas.specificHeat,
    ambientPressure: air.pressure,
    ambientTemperature: air.temperature,
    ambientDensity: air.pressure / (gas.gasConstant * air.temperature),
    coolantTemperature: input.cooler?.coolantTemperature ?? air.temperature,
    compressionRatio,
    loss: {
      inlet: lossFactor(input.inletLoss),
      pipe: lossFactor(input.pipeLoss),
      cooler: input.cooler ? lossFactor(input.cooler.loss) : 0,
    },
    throttleLoss: input.throttleLoss
      ? new Float64Array(nodes).fill(lossFactor(input.throttleLoss))
      : lossOfBaseline(input),
    warming: warmingOfBaseline(input),
    wallTemperature: charge.wallTemperature ?? air.temperature,
    dryRatio: (1 + baseline.air.humidityRatio) / (1 + air.humidityRatio),
    swallowPerPressure,
    baselineTerm,
    baselineExchange,
    // With the ambient pressure flow and excess both scale, so that a baseline at altitude keeps its ratio of pressures.
    exhaustExcess: excessOfBaseline / pressureScale ** 2,
    sweptFlow,
    lines: new Array<SpeedLine | null>(nodes).fill(null),
    flowAsGiven: new Float64Array(nodes).fill(Number.NaN),
    slopeAsGiven: new Float64Array(nodes).fill(1),
    state: {
      inletPressure: 0,
      correctedFlow: 0,
      pressureRatio: 1,
      efficiency: 0,
      dischargePressure: 0,
      dischargeTemperature: 0,
      cooledPressure: 0,
      cooledTemperature: 0,
      manifoldPressure: 0,
      manifoldTemperature: 0,
      exhaustPressure: 0,
      swallowed: 0,
    },
    row: new Float64Array(MATCH_FIGURES.length),
    slope: new Float64Array([1]),
    now: { node: 0, line: null, flow: 0, temperatureRise: 0 },
  };
}

/** What the baseline's manifold stood below its ambient air, as the factor of a loss in that air; per node. */
function lossOfBaseline({ baseline, gas }: MatchInput): Float64Array {
  const { airFlow, manifoldPressure, air } = baseline;
  const atDensity = air.pressure / (gas.gasConstant * air.temperature);
  return Float64Array.from(airFlow, (atFlow, node) =>
    lossFactor({ pressureDifference: air.pressure - manifoldPressure[node]!, atFlow, atDensity }),
  );
}

/** How far the baseline's manifold brought its charge to the walls' temperature, before fuel cooled it; per node. */
function warmingOfBaseline({ baseline, charge }: MatchInput): Float64Array {
  const { air, manifoldTemperature } = baseline;
  const walls = charge.wallTemperature ?? null;
  const cooling = baseline.evaporationCooling ?? charge.evaporationCooling;
  return Float64Array.from(manifoldTemperature, (manifold) =>
    walls === null ? 0 : (manifold + cooling - air.temperature) / (walls - air.temperature),
  );
}

/** J/(kg·K) of the moist air, from its own density. */
const moistGasConstant = (air: AirState): number => air.pressure / (air.density * air.temperature);

/** What the flows of the map's lines are multiplied by. */
export const flowScaleOf = ({ input, vary }: MatchPlan): number =>
  vary.mapFlow * (input.compressor.flowScale ?? 1);
