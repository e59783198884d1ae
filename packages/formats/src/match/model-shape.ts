import {
  type Baseline,
  type FlowLoss,
  lossFrom,
  NO_LOSS,
  type SpreadPart,
  type StatedModel,
} from '@pullbook/core/airpath';
import { group } from './group-shape.ts';
import { heatCapacity, quantity, ratio } from './quantity-shape.ts';
import { refuse, type Shape, truth, word, wordOr } from './shape.ts';

/** From and to, an engine speed each, and how much more is swallowed between. */
export const breathing: Shape<{ fromRpm: number; toRpm: number; share: number }> = made(
  group(
    {
      from: quantity('engineSpeed', {
        allowed: [0, 30_000],
        example: '4000 rpm',
        about: 'Engine speed from which.',
      }),
      to: quantity('engineSpeed', {
        allowed: [0, 30_000],
        example: '6500 rpm',
        about: 'Engine speed to which.',
      }),
      share: ratio([-0.9, 2], '8 %', 'Share by which more is swallowed.'),
    },
    { about: 'More or less air swallowed between two engine speeds.', needed: ['from', 'to', 'share'] },
  ),
  ({ from, to, share }) =>
    from === undefined || to === undefined || share === undefined
      ? undefined
      : { fromRpm: from, toRpm: to, share },
);

/** Fields of a loss, told as so much pressure at so much air. */
const lossFields = {
  pressureDifference: quantity('pressureDifference', {
    allowed: [0, 5e5],
    example: '2 kPa',
    about: 'Pressure lost.',
  }),
  atFlow: quantity('massFlow', {
    allowed: [1e-4, 50],
    example: '0.3 kg/s',
    about: 'Air flow at which that is lost.',
  }),
  atDensity: quantity('density', {
    allowed: [0.1, 20],
    example: '1.2 kg/m3',
    about: 'Density of the air in which it was measured; missing: 1.225 kg/m³.',
  }),
};

const loss = (about: string): Shape<FlowLoss> =>
  wordOr(
    { none: NO_LOSS },
    made(group(lossFields, { about, needed: ['pressureDifference', 'atFlow'] }), lossOf),
  );

function lossOf({
  pressureDifference,
  atFlow,
  atDensity,
}: {
  pressureDifference?: number;
  atFlow?: number;
  atDensity?: number;
}): FlowLoss | undefined {
  if (pressureDifference === undefined || atFlow === undefined) return undefined;
  return lossFrom({ pressureDifference, atFlow, ...(atDensity === undefined ? {} : { atDensity }) });
}

const EFFECTIVENESS = ratio([0, 1], '75 %', 'Effectiveness: (hot in - hot out) / (hot in - coolant in).');
const COOLANT = quantity('temperature', {
  allowed: [230, 420],
  example: '18 °C',
  about: 'Coolant as it comes in; missing: the ambient air.',
});

/** A cooler as it is tried: the rest of it stays. */
export const triedCooler: Shape<'none' | { effectiveness: number; coolantTemperature: number | null }> =
  wordOr(
    { none: 'none' as const },
    made(
      group(
        { effectiveness: EFFECTIVENESS, coolantTemperature: COOLANT },
        { about: 'Another cooler.', needed: ['effectiveness'] },
      ),
      ({ effectiveness, coolantTemperature = null }) =>
        effectiveness === undefined ? undefined : { effectiveness, coolantTemperature },
    ),
  );

const cooler: Shape<NonNullable<StatedModel['cooler']> | null> = wordOr(
  { none: null },
  made(
    group(
      {
        by: word(['air', 'water', 'ice water'], 'What carries the heat away.'),
        effectiveness: EFFECTIVENESS,
        loss: loss('Pressure lost in the core.'),
        coolantTemperature: COOLANT,
      },
      { about: 'The cooler, or none.', needed: ['effectiveness'] },
    ),
    ({ by = 'air', effectiveness, loss: lost = NO_LOSS, coolantTemperature = null }) =>
      effectiveness === undefined ? undefined : { by, effectiveness, loss: lost, coolantTemperature },
  ),
);

const bypass: Shape<NonNullable<StatedModel['bypass']>> = wordOr(
  { shut: { state: 'shut' as const, leak: 0 }, open: { state: 'open' as const, leak: 0 } },
  made(
    group(
      {
        leak: ratio([0, 0.9], '2 %', "A leaking bypass: share of the compressor's flow that leaks."),
        idleTorque: quantity('torque', {
          allowed: [0, 500],
          example: '2 N m',
          about: 'An open bypass: what turning the idling unit takes at the crankshaft.',
        }),
      },
      { about: 'A leaking bypass, or an open one with what idling takes.' },
    ),
    ({ leak, idleTorque }, refused) => {
      if ((leak === undefined) === (idleTorque === undefined))
        return refused('give leak of a leaking bypass, or idleTorque of an open one: one of the two.');
      if (leak !== undefined) return { state: 'leaking' as const, leak };
      return { state: 'open' as const, leak: 0, idleTorque: idleTorque! };
    },
  ),
);

const SPREAD: Record<SpreadPart, Shape<number>> = {
  baselineAir: ratio([0, 1], '3 %', "Of the baseline's air."),
  baselinePower: ratio([0, 1], '0.5 %', "Of the baseline's power."),
  head: ratio([0, 1], '3 %', 'Of the head.'),
  mapFlow: ratio([0, 1], '2 %', "Of the map's flow."),
  efficiency: ratio([0, 0.5], '2 %', 'Of the efficiency, absolute.'),
  cooler: ratio([0, 0.5], '5 %', "Of the cooler's effectiveness, absolute."),
  slip: ratio([0, 0.5], '1 %', 'Of the slip, absolute.'),
  swallowing: ratio([0, 1], '2 %', 'Of the air swallowed.'),
  chargeHeat: ratio([0, 2], '10 %', 'Of the heat left in the charge.'),
  work: ratio([0, 1], '2 %', 'Of the work an air mass does.'),
};

const FIELDS = {
  displacement: quantity('volume', { allowed: [1e-6, 2], example: '3.8 L', about: 'All cylinders.' }),
  compressionRatio: ratio([1.5, 40], '9.5:1', 'Compression ratio.'),
  specificHeat: heatCapacity([900, 1300], '1005 J/(kg K)', 'Of the air in the path, at constant pressure.'),
  gasConstant: heatCapacity([250, 320], '287.05 J/(kg K)', 'Of the air in the path.'),
  headScale: ratio([0.2, 5], '1', "On the map's isentropic head."),
  flowScale: ratio([0.2, 5], '1', "On the flow of the map's lines."),
  efficiencyShift: ratio([-0.5, 0.5], '-2 %', "Added to the map's efficiency."),
  constantEfficiency: ratio([0.05, 1], '72 %', "One efficiency at every point in place of the map's."),
  pulleyRatio: ratio([0.05, 20], '2.2', "Turns of the blower's input for one of the crankshaft."),
  stepUp: ratio([0.2, 30], '3.6', 'Turns of the impeller for one of the input.'),
  slip: ratio([0, 0.5], '1 %', 'Share of the speed lost by creep and slip.'),
  mechanicalEfficiency: ratio([0.3, 1], '95 %', 'Power at the impeller over power at the crankshaft.'),
  inletLoss: loss('Filter and pipe before the compressor, or none.'),
  pipeLoss: loss('Pipe behind the compressor, or none.'),
  throttleLoss: wordOr(
    { 'as the baseline': null },
    loss('Throttle or carburettor, none, or as the baseline has it at each engine speed.'),
  ),
  bypass,
  cooler,
  tap: word(['manifold', 'before throttle', 'compressor outlet'], 'Where boost is read.'),
  heatFactor: ratio([0, 5], '1', "On the charge's rise above ambient that is left before fuel."),
  evaporationCooling: quantity('temperatureDifference', {
    allowed: [0, 150],
    example: '15 K',
    about: 'By which fuel cools the charge before the probe.',
  }),
  wallTemperature: wordOr(
    { none: null },
    quantity('temperature', {
      allowed: [230, 450],
      example: '90 °C',
      about:
        "Of what warms the charge in the manifold, by the baseline's share of the difference; none: nothing does.",
    }),
  ),
  fuelVapour: ratio([0, 0.5], '2 %', "Share of the manifold's pressure that is fuel vapour."),
  swallowingScale: ratio([0.2, 5], '1', 'On the air swallowed.'),
  exhaustPressureRatio: ratio(
    [0.5, 5],
    '1.1',
    'Exhaust over ambient pressure of the baseline at its highest flow.',
  ),
  pressureTerm: wordOr(
    { none: null },
    ratio([1.05, 1.7], '1.4', 'Ratio of specific heats in the pressure term, or none.'),
  ),
  heatExponent: ratio(
    [0, 1],
    '0.5',
    "Exponent of manifold temperature over the baseline's; 0 leaves the term out.",
  ),
  breathing,
  workFactor: ratio([0.2, 5], '1', 'On the work an air mass does.'),
  gasExchange: truth('Whether the exchange of gas does work.'),
  frictionRise: ratio(
    [0, 1],
    '0.02',
    'Friction mean pressure for each of manifold pressure above the baseline.',
  ),
  baselineFuelVapour: ratio(
    [0, 0.5],
    '1 %',
    "Share of the baseline's manifold pressure that was fuel vapour, where its fuel was another.",
  ),
  baselineEvaporationCooling: quantity('temperatureDifference', {
    allowed: [0, 150],
    example: '20 K',
    about: "By which fuel cooled the baseline's charge before the probe, where its fuel was another.",
  }),
  friction: quantity('power', {
    allowed: [0, 5e6],
    example: '12 kW',
    about: "One friction power at every speed in place of the baseline's.",
  }),
  spread: group(SPREAD, { about: 'One standard deviation of a part; 0 takes it out of the band.' }),
};

/** What a person states of the model himself; what is the baseline's goes apart. */
export const statedModel: Shape<{
  model: StatedModel;
  frictionPower: number | null;
  baselineCharge: Pick<Baseline, 'fuelVapour' | 'evaporationCooling'>;
}> = made(
  group(FIELDS, { about: 'Inputs of the model, in place of what the sheet says or what would be assumed.' }),
  ({ friction = null, baselineFuelVapour, baselineEvaporationCooling, pressureTerm, ...rest }) => ({
    model: { ...rest, ...(pressureTerm === undefined ? {} : { pressureTermRatio: pressureTerm }) },
    frictionPower: friction,
    baselineCharge: {
      ...(baselineFuelVapour === undefined ? {} : { fuelVapour: baselineFuelVapour }),
      ...(baselineEvaporationCooling === undefined ? {} : { evaporationCooling: baselineEvaporationCooling }),
    },
  }),
);

/**
 * The shape whose reading is made into something else; `undefined`: it was not whole. Where anything of it was refused that was told, and
 * nothing more is said.
 */
export function made<From, To>(
  shape: Shape<From>,
  make: (from: From, refused: (message: string) => undefined) => To | undefined,
): Shape<To> {
  return {
    get schema() {
      return shape.schema;
    },
    read: (value, path, reading) => {
      const before = reading.remarks.length;
      const from = shape.read(value, path, reading);
      const isTold = reading.remarks.slice(before).some(({ level }) => level === 'refusal');
      if (from === undefined || isTold) return undefined;
      return make(from, (message) => refuse(reading, path, 'match-one-of', message));
    },
  };
}
