import { airState } from '@pullbook/core/air';
import {
  type Baseline,
  type CompressorMap,
  type FittedMap,
  fitMap,
  type MatchReady,
  matchInputOf,
  type SheetToMatch,
} from '@pullbook/core/airpath';
import { absolutePressure, temperature } from '@pullbook/core/quantity';
import { readCombinationText } from '@pullbook/formats';
import type { Chance } from '../coverage/chance.ts';

/** An invented engine with a supercharger, as its owner knows it: made ready at one pulley and at the next. */
export interface KnownEngine {
  /** What its air without supercharger is known by. */
  airBasis: Baseline['airBasis'];
  isCooled: boolean;
  isRated: boolean;
  /** Turns of the impeller for one of the crankshaft at the next pulley over those at the first. */
  faster: number;
  first: MatchReady;
  next: MatchReady;
  /** What its match at the first pulley is made of. */
  madeOf: SheetToMatch;
}

const between = ({ uniform }: Chance, low: number, high: number) => low + (high - low) * uniform();
const SPEEDS = Array.from({ length: 15 }, (_, node) => 2800 + 260 * node);

/** Anything from two to eight litres, cooled or not, its air measured, by fuel or by torque, its map a table or one rated point. */
export function drawEngine(chance: Chance): KnownEngine {
  const litres = between(chance, 2, 8);
  const air = weather(between(chance, 94_000, 102_000), between(chance, 285, 308));
  const filling = between(chance, 0.8, 0.98);
  const peak = between(chance, 4200, 5600);
  const displacement = litres / 1000;
  const manifoldPressure = SPEEDS.map((speed) => air.pressure - 2500 * (speed / 6500) ** 2);
  const airFlow = SPEEDS.map((speed, node) => {
    const efficiency = filling * (1 - 0.09 * ((speed - peak) / 1900) ** 2);
    const density = (air.density * manifoldPressure[node]!) / air.pressure;
    return (efficiency * density * displacement * speed) / 120;
  });
  const frictionPower = SPEEDS.map((speed) => 5200 * litres * (speed / 5000) ** 2);
  const work = between(chance, 1.05e6, 1.25e6);
  const airBasis = (['air flow', 'fuel and mixture', 'torque and efficiency'] as const)[
    Math.floor(3 * chance.uniform())
  ]!;
  const baseline: Baseline = {
    engineSpeedRpm: SPEEDS,
    brakePower: airFlow.map((flow, node) => work * flow - frictionPower[node]!),
    airFlow,
    frictionPower,
    manifoldPressure,
    manifoldTemperature: SPEEDS.map(() => air.temperature),
    lambda: null,
    air,
    airBasis,
    origin: 'measured',
    pullIds: ['alone'],
  };
  const isCooled = chance.uniform() < 0.6;
  const isRated = chance.uniform() < 0.3;
  const map = drawMap(chance, { flow: 1.35 * airFlow.at(-1)!, isRated });
  const faster = between(chance, 1.03, 1.1);
  const madeAt = (ratio: number): SheetToMatch => ({
    sheet: sheetOf({ litres, isCooled, ratio }),
    baseline,
    map: map.fitted,
    air,
  });
  const readyAt = (ratio: number) => {
    const ready = matchInputOf(madeAt(ratio));
    if (!ready.ok) throw new Error(ready.remarks[0]!.message);
    return ready.value;
  };
  return {
    airBasis,
    isCooled,
    isRated,
    faster,
    first: readyAt(map.ratio),
    next: readyAt(map.ratio * faster),
    madeOf: madeAt(map.ratio),
  };
}

function weather(pressure: number, kelvin: number) {
  const air = airState({
    pressure: absolutePressure(pressure),
    temperature: temperature(kelvin),
    humidity: { route: 'relativeHumidity', ratio: 0.4 },
    altitude: null,
  });
  if (!air.ok) throw new Error(air.remarks[0]!.message);
  return air.value;
}

/** A stage that suits the flow: rated at 1.5 to 1.9, turned at the top speed as at its rating. The table is read off an invented stage. */
function drawMap(chance: Chance, { flow, isRated }: { flow: number; isRated: boolean }) {
  const pressureRatio = between(chance, 1.5, 1.85);
  const wheelExitDiameter = 0.15 * Math.sqrt(flow / 0.45);
  // A tip speed that makes the ratio with a usual work.
  const tip = Math.sqrt((1005 * 298 * (pressureRatio ** (2 / 7) - 1)) / 0.75 / 0.64);
  const speedRpm = (60 * tip) / (Math.PI * wheelExitDiameter);
  const rated: CompressorMap = {
    id: 'stage',
    name: 'stage',
    form: 'rated',
    reference: { pressure: 100_000, temperature: 298.15 },
    geometry: { wheelExitDiameter, wheelInletDiameter: null, blades: null, backsweep: null },
    points: [{ flow, pressureRatio, speedRpm, efficiency: 0.75 }],
    leftEnd: 'not known',
    origin: 'assumed',
    notes: '',
    invented: true,
    createdAt: '',
  };
  const points = [0.45, 0.6, 0.75, 0.9, 1.05, 1.2].flatMap((share) =>
    [0.62, 0.74, 0.86, 0.98, 1.1, 1.2].map((at) => ({
      flow: at * share * flow,
      speedRpm: share * speedRpm,
      pressureRatio:
        1 +
        (pressureRatio - 1) *
          share ** 2.1 *
          (1.08 - 0.55 * Math.max(0, at - 0.66) ** 2 - 0.35 * Math.max(0, at - 0.95)),
      efficiency: 0.76 - 0.5 * (at - 0.92) ** 2,
    })),
  );
  const fitted = fitMap(isRated ? rated : { ...rated, form: 'points', points });
  if (!fitted.ok) throw new Error(fitted.remarks[0]!.message);
  return { fitted: fitted.value satisfies FittedMap, ratio: speedRpm / SPEEDS.at(-1)! };
}

function sheetOf({ litres, isCooled, ratio }: { litres: number; isCooled: boolean; ratio: number }) {
  const cooler = isCooled
    ? 'cooler: { type: air to water, effectiveness: 78 %, coolantTemperature: 18 °C }'
    : '';
  const sheet = readCombinationText(
    `schemaVersion: 1
name: invented
shortBlock: { cylinders: 8, displacement: ${litres} L, compressionRatio: "9.5:1" }
fuelSystem: { type: port injection }
supercharger: { type: centrifugal, stepUp: "4" }
drive: { type: ribbed belt, crankPulleyDiameter: 200 mm, blowerPulleyDiameter: ${(800 / ratio).toFixed(6)} mm }
${cooler}
`,
    'sheet.yaml',
  );
  if (!sheet.ok) throw new Error(sheet.remarks[0]!.message);
  return sheet.value;
}
