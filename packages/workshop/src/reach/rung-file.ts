import type { AirState } from '@pullbook/core/air';
import type { CompressorMap, Cooler, FlowLoss, MatchInput } from '@pullbook/core/airpath';
import { sheetToPlain } from '@pullbook/core/combination';
import type { Rung } from '@pullbook/core/reach';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import { plainToYaml } from '@pullbook/formats';
import type { Book } from '@pullbook/store';

/**
 * A rung as a match file that rests on nothing else: its sheet, the engine without supercharger, its map, and every input of the model as
 * the search had it, so that `pullbook match` gives the same power. It has no bands: those of the search rest on the fit and its pulls, which a file of plain
 * numbers does not hold. Refused: a rung without a supercharger, which is no match, and one of an answer that was kept.
 *
 * @param map as it was measured or rated; `null`: the sheet says it
 */
export function rungFile(rung: Rung, map: CompressorMap | null, about: { name: string }): Result<string> {
  if (rung.made === null) return refused(KEPT);
  const { match, sheet } = rung.made;
  if (match === null) return refused(ALONE);
  const { schemaVersion: _, name: __, ...combination } = sheetToPlain(sheet);
  const { input } = match;
  const plain = {
    schemaVersion: 1,
    name: `${about.name}: ${rung.changes.map(({ said }) => said.text).join('; ') || 'as it is'}`,
    combination,
    baseline: baselineOf(input),
    ...(map === null ? {} : { map: mapOf(map) }),
    weather: weatherOf(input.air),
    model: modelOf(input),
    ...overSpeedOf(input),
    bands: 'none',
  };
  const head = [
    '# Written by "pullbook reach": one way to a target, with every input as the search had it. Computed, not measured.',
    '# "pullbook match" gives its power as observed in the weather below. A planning estimate: makers’ limits go before it.',
  ];
  return accepted(`${head.join('\n')}\n${plainToYaml(plain)}`);
}

/** The map of a rung as it was put into the book; `null`: its sheet says it, or it stands in a file. */
export async function mapOfRung(book: Book, { made }: Rung): Promise<CompressorMap | null> {
  const id = made?.match?.input.compressor.map.mapId ?? null;
  return id === null ? null : book.compressorMap(id);
}

const table = (columns: Record<string, readonly number[]>): string => {
  const rows = Object.values(columns)[0]!.map((_, row) =>
    Object.values(columns).map((values) => values[row]),
  );
  return `${[Object.keys(columns), ...rows].map((row) => row.join(', ')).join('\n')}\n`;
};

function baselineOf({ baseline }: MatchInput) {
  return {
    table: table({
      'engine speed [rpm]': baseline.engineSpeedRpm,
      'brake power [W]': baseline.brakePower,
      'air flow [kg/s]': baseline.airFlow,
      'friction power [W]': baseline.frictionPower,
      'manifold pressure [Pa]': baseline.manifoldPressure,
      'manifold temperature [K]': baseline.manifoldTemperature,
      ...(baseline.lambda === null ? {} : { lambda: baseline.lambda }),
    }),
    weather: weatherOf(baseline.air),
  };
}

const weatherOf = ({ pressure, temperature, vapourPressure }: AirState) => ({
  pressure: `${pressure} Pa`,
  temperature: `${temperature} K`,
  vapourPressure: `${vapourPressure} Pa`,
});

function mapOf({ name, form, reference, geometry, points, leftEnd, origin }: CompressorMap) {
  const { wheelExitDiameter, wheelInletDiameter, blades, backsweep } = geometry;
  const at = { pressure: `${reference.pressure} Pa`, temperature: `${reference.temperature} K` };
  const [first] = points;
  const hasEfficiency = points.every(({ efficiency }) => efficiency !== null);
  return {
    name,
    ...(form === 'rated' && first !== undefined
      ? {
          rated: {
            flow: `${first.flow} kg/s`,
            pressureRatio: first.pressureRatio,
            speed: `${first.speedRpm} rpm`,
            ...(first.efficiency === null ? {} : { efficiency: first.efficiency }),
            reference: at,
          },
        }
      : {
          points: table({
            'flow [kg/s]': points.map(({ flow }) => flow),
            'pressure ratio': points.map(({ pressureRatio }) => pressureRatio),
            'speed [rpm]': points.map(({ speedRpm }) => speedRpm),
            ...(hasEfficiency ? { efficiency: points.map(({ efficiency }) => efficiency!) } : {}),
          }),
          reference: at,
        }),
    ...(wheelExitDiameter === null ? {} : { wheelExitDiameter: `${wheelExitDiameter} m` }),
    ...(wheelInletDiameter === null ? {} : { wheelInletDiameter: `${wheelInletDiameter} m` }),
    ...(blades === null ? {} : { blades }),
    ...(backsweep === null ? {} : { backsweep: `${backsweep} rad` }),
    leftEnd,
    origin,
  };
}

function modelOf(input: MatchInput) {
  const { compressor, drive, swallowing, charge, work, gas, baseline } = input;
  const optional = (name: string, value: number | null | undefined, unit = '') =>
    value === null || value === undefined ? {} : { [name]: unit === '' ? value : `${value} ${unit}` };
  return {
    displacement: `${input.displacement} m3`,
    ...optional('compressionRatio', input.compressionRatio),
    specificHeat: `${gas.specificHeat} J/(kg K)`,
    gasConstant: `${gas.gasConstant} J/(kg K)`,
    headScale: compressor.headScale,
    flowScale: compressor.flowScale ?? 1,
    efficiencyShift: compressor.efficiencyShift,
    ...optional('constantEfficiency', compressor.constantEfficiency),
    pulleyRatio: drive.pulleyRatio,
    stepUp: drive.stepUp,
    slip: drive.slip,
    mechanicalEfficiency: drive.mechanicalEfficiency,
    inletLoss: lossOf(input.inletLoss),
    pipeLoss: lossOf(input.pipeLoss),
    throttleLoss: input.throttleLoss === null ? 'as the baseline' : lossOf(input.throttleLoss),
    bypass: bypassOf(input.bypass),
    cooler: input.cooler === null ? 'none' : coolerOf(input.cooler),
    tap: input.tap,
    heatFactor: charge.heatFactor,
    evaporationCooling: `${charge.evaporationCooling} K`,
    fuelVapour: charge.fuelVapour,
    ...optional('baselineEvaporationCooling', baseline.evaporationCooling, 'K'),
    ...optional('baselineFuelVapour', baseline.fuelVapour),
    wallTemperature: charge.wallTemperature == null ? 'none' : `${charge.wallTemperature} K`,
    swallowingScale: swallowing.scale,
    exhaustPressureRatio: swallowing.exhaustPressureRatio,
    pressureTerm: swallowing.pressureTermRatio ?? 'none',
    heatExponent: swallowing.heatExponent,
    workFactor: work.factor,
    gasExchange: work.gasExchange ? 'yes' : 'no',
    frictionRise: work.frictionRise,
  };
}

const lossOf = ({ pressureDifference, atFlow, atDensity }: FlowLoss) =>
  pressureDifference === 0
    ? 'none'
    : {
        pressureDifference: `${pressureDifference} Pa`,
        atFlow: `${atFlow} kg/s`,
        atDensity: `${atDensity} kg/m3`,
      };

function bypassOf({ state, leak, idleTorque }: MatchInput['bypass']) {
  if (state === 'leaking') return { leak };
  return state === 'open' && idleTorque !== undefined ? { idleTorque: `${idleTorque} N m` } : state;
}

const coolerOf = ({ by, effectiveness, loss, coolantTemperature }: Cooler) => ({
  by,
  effectiveness,
  loss: lossOf(loss),
  ...(coolantTemperature === null ? {} : { coolantTemperature: `${coolantTemperature} K` }),
});

function overSpeedOf({ baseline, compressor, swallowing, work }: MatchInput) {
  const factors = Object.entries({
    head: compressor.headShape,
    air: swallowing.breathing,
    work: work.shape,
    fuel: work.fuelFactor,
  }).flatMap(([name, values]) => (values == null ? [] : [[name, values] as const]));
  if (factors.length === 0) return {};
  return {
    overSpeed: table({ 'engine speed [rpm]': baseline.engineSpeedRpm, ...Object.fromEntries(factors) }),
  };
}

const KEPT = remark(
  'refusal',
  'rung-was-kept',
  'This answer was kept without what its rungs were made of. Ask again, and write the rung of the new answer.',
);

const ALONE = remark(
  'refusal',
  'rung-without-supercharger',
  'This way has no supercharger, so there is no match to write into a file. Its changes are listed with it; of a combination of the book, --keep and "pullbook enquiry plan" make a trial of it.',
);
