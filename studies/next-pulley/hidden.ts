import type { MatchInput, SpreadGroup, SpreadPart } from '@pullbook/core/airpath';
import type { Chance } from '../coverage/chance.ts';

/** What nobody knows of an engine: how far each part lies from what is known, by the spreads stated of it. */
export interface Hidden {
  parts: Record<SpreadPart, number>;
  /** Over speed, of head, of the air swallowed, of the work: coefficients of the first four polynomials of Legendre. */
  bends: { head: number[]; swallowing: number[]; work: number[] };
  /** How the loss of work grows with the square of the impeller's speed: 0 not, 1 in step. */
  lossGrows: number;
}

/** One set-up of it: its belt, spark and day. */
export interface SetUp {
  head: number[];
  swallowing: number[];
  work: number[];
}

/** As docs say of the fit's prior, typed anew: of the engine and unit; and of one set-up, constant, tilt and bow. */
const OF_BENDS = [0.04, 0.03, 0.02, 0.02];
const OF_SET_UP: SetUp = {
  head: [0.004, 0.002, 0.002],
  swallowing: [0.005, 0.004, 0.003],
  work: [0.008, 0.005, 0.003],
};

export function drawHidden({ normal, uniform }: Chance, spread: readonly SpreadGroup[]): Hidden {
  const parts = {
    baselineAir: 0,
    baselinePower: 0,
    head: 0,
    mapFlow: 0,
    efficiency: 0,
    cooler: 0,
    slip: 0,
    swallowing: 0,
    chargeHeat: 0,
    work: 0,
  };
  for (const { parts: names, factor, shapes } of spread) {
    // How curves bend over speed is typed anew below.
    if (shapes !== undefined) continue;
    const normals = factor.map(() => normal());
    names.forEach((part, line) => {
      parts[part] += factor[line]!.reduce((sum, value, column) => sum + value * normals[column]!, 0);
    });
  }
  const bends = () => OF_BENDS.map((deviation) => deviation * normal());
  return { parts, bends: { head: bends(), swallowing: bends(), work: bends() }, lossGrows: uniform() };
}

export const drawSetUp = ({ normal }: Chance): SetUp => ({
  head: OF_SET_UP.head.map((one) => one * normal()),
  swallowing: OF_SET_UP.swallowing.map((one) => one * normal()),
  work: OF_SET_UP.work.map((one) => one * normal()),
});

/** Legendre's polynomials of degree 0 to 4 at a place from -1 to 1. */
const legendre = (x: number): number[] => [
  1,
  x,
  (3 * x ** 2 - 1) / 2,
  (5 * x ** 3 - 3 * x) / 2,
  (35 * x ** 4 - 30 * x ** 2 + 3) / 8,
];

/** The engine as it is in one set-up. `faster`: its impeller against the first pulley. */
export function asItIs(input: MatchInput, hidden: Hidden, setUp: SetUp, faster: number): MatchInput {
  const { parts, bends } = hidden;
  const { baseline, compressor, swallowing, drive, charge, work, cooler } = input;
  const speeds = baseline.engineSpeedRpm;
  const [low, high] = [speeds[0]!, speeds.at(-1)!];
  const over = (ofEngine: readonly number[], ofSetUp: readonly number[], stretch: number) =>
    speeds.map((speed) => {
      const place = Math.max(-1, Math.min(1, (2 * (speed * stretch - low)) / (high - low) - 1));
      const terms = legendre(place);
      const bent = ofEngine.reduce((sum, value, degree) => sum + value * terms[degree + 1]!, 1);
      return bent + ofSetUp.reduce((sum, value, degree) => sum + value * terms[degree]!, 0);
    });
  const factor = work.factor * (1 + parts.work);
  const lost = factor < 1 ? 1 - (1 - factor) * faster ** (2 * hidden.lossGrows) : factor;
  return {
    ...input,
    baseline: {
      ...baseline,
      airFlow: baseline.airFlow.map((flow) => flow * (1 + parts.baselineAir)),
      brakePower: baseline.brakePower.map((power) => power * (1 + parts.baselinePower)),
    },
    compressor: {
      ...compressor,
      headScale: compressor.headScale * (1 + parts.head),
      flowScale: (compressor.flowScale ?? 1) * (1 + parts.mapFlow),
      efficiencyShift: compressor.efficiencyShift + parts.efficiency,
      // What bends the head belongs to the wheel and goes with its speed.
      headShape: over(bends.head, setUp.head, faster),
    },
    drive: { ...drive, slip: Math.max(0, drive.slip + parts.slip) },
    cooler:
      cooler === null
        ? null
        : { ...cooler, effectiveness: Math.max(0, Math.min(1, cooler.effectiveness + parts.cooler)) },
    charge: { ...charge, heatFactor: Math.max(0, charge.heatFactor * (1 + parts.chargeHeat)) },
    swallowing: {
      ...swallowing,
      scale: swallowing.scale * (1 + parts.swallowing),
      breathing: over(bends.swallowing, setUp.swallowing, 1),
    },
    work: { ...work, factor: lost, shape: over(bends.work, setUp.work, 1) },
  };
}
