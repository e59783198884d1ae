import type { AirState } from '@pullbook/core/air';
import type {
  FittedMap,
  FlowLoss,
  MatchCase,
  MatchInput,
  SpreadGroup,
  SpreadPart,
} from '@pullbook/core/airpath';
import { z } from 'zod';

const text = z.string().max(2000);
const number = z.number();
const orNull = number.nullable();
/** More nodes than any baseline has. */
const numbers = z.array(number).max(1000);
const numbersOrNull = numbers.nullable();
const shown = {
  units: z.enum(['us', 'si']).default('us'),
  decimal: z.enum(['.', ',']).default('.'),
};

/** What is read beside a match: its air, in text with units. */
export const matchQuery = z.object({
  pressure: text.optional(),
  temperature: text.optional(),
  humidity: text.optional(),
});

/** Every key of a thing, those it may lack too: a shape that forgets one does not compile, and no page loses its bands. */
type KeysOf<Whole> = Record<keyof Whole, z.ZodType>;
/** A shape that takes every value a thing can have: one that does not know a new word does not compile either. */
type Taking<Whole, Shape extends z.ZodType> = Whole extends z.input<Shape> ? Shape : never;

const air = z.strictObject({
  pressure: number,
  temperature: number,
  vapourPressure: number,
  dryPressure: number,
  relativeHumidity: number,
  dewPoint: orNull,
  humidityRatio: number,
  density: number,
  densityAltitude: number,
} satisfies KeysOf<AirState>) as unknown as z.ZodType<AirState>;

const loss = z.strictObject({
  pressureDifference: number,
  atFlow: number,
  atDensity: number,
} satisfies KeysOf<FlowLoss>);

const map = z.strictObject({
  mapId: text.nullable(),
  mark: text.exactOptional(),
  name: text,
  form: z.enum(['points', 'rated']),
  leftEnd: z.enum(['surge', 'not known']),
  reference: z.strictObject({
    pressure: number,
    temperature: number,
  } satisfies KeysOf<FittedMap['reference']>),
  wheelExitDiameter: number,
  isDiameterAssumed: z.boolean(),
  measuredSpeedRpm: z.tuple([number, number]).nullable(),
  quality: z.unknown().transform(() => null),
  spread: z.strictObject({
    head: number,
    efficiency: number,
    flow: number,
  } satisfies KeysOf<FittedMap['spread']>),
  shape: z.strictObject({
    kind: z.enum(['lines', 'generic']),
    numbers: z.record(text, z.array(number).max(20_000)),
  } satisfies KeysOf<FittedMap['shape']>),
} satisfies KeysOf<FittedMap>);

const input = z.strictObject({
  baseline: z.strictObject({
    engineSpeedRpm: numbers,
    brakePower: numbers,
    airFlow: numbers,
    frictionPower: numbers,
    manifoldPressure: numbers,
    manifoldTemperature: numbers,
    lambda: z.array(orNull).max(1000).nullable(),
    fuelVapour: number.exactOptional(),
    evaporationCooling: number.exactOptional(),
    air,
    airBasis: z.enum(['given', 'air flow', 'fuel and mixture', 'torque and efficiency']),
    origin: z.enum(['measured', 'scaled', 'given']),
    pullIds: z.array(text).max(500),
    mark: text.exactOptional(),
  } satisfies KeysOf<MatchInput['baseline']>),
  displacement: number,
  compressionRatio: orNull,
  air,
  gas: z.strictObject({ specificHeat: number, gasConstant: number } satisfies KeysOf<MatchInput['gas']>),
  compressor: z.strictObject({
    map,
    headScale: number,
    flowScale: number.exactOptional(),
    headShape: numbersOrNull.exactOptional(),
    efficiencyShift: number,
    constantEfficiency: orNull,
  } satisfies KeysOf<MatchInput['compressor']>),
  drive: z.strictObject({
    kind: z.enum(['ribbed belt', 'V belt', 'toothed belt', 'chain', 'gear', 'direct']),
    pulleyRatio: number,
    stepUp: number,
    slip: number,
    mechanicalEfficiency: number,
    crankPulleyDiameter: orNull,
    blowerPulleyDiameter: orNull,
    wrapAngle: orNull,
    ribs: orNull,
    maximumImpellerSpeedRpm: orNull,
    engineSpeedLimitRpm: orNull,
    overRevMarginRpm: number,
  } satisfies KeysOf<MatchInput['drive']>),
  inletLoss: loss,
  pipeLoss: loss,
  bypass: z.strictObject({
    state: z.enum(['shut', 'open', 'leaking']),
    leak: number,
    idleTorque: number.exactOptional(),
  } satisfies KeysOf<MatchInput['bypass']>),
  cooler: z
    .strictObject({
      by: z.enum(['air', 'water', 'ice water']),
      effectiveness: number,
      loss,
      coolantTemperature: orNull,
    } satisfies KeysOf<NonNullable<MatchInput['cooler']>>)
    .nullable(),
  throttleLoss: loss.nullable(),
  tap: z.enum(['manifold', 'before throttle', 'compressor outlet']),
  charge: z.strictObject({
    heatFactor: number,
    evaporationCooling: number,
    fuelVapour: number,
    wallTemperature: orNull.exactOptional(),
  } satisfies KeysOf<MatchInput['charge']>),
  swallowing: z.strictObject({
    scale: number,
    exhaustPressureRatio: number,
    pressureTermRatio: orNull,
    heatExponent: number,
    breathing: numbersOrNull,
  } satisfies KeysOf<MatchInput['swallowing']>),
  work: z.strictObject({
    factor: number,
    shape: numbersOrNull.exactOptional(),
    fuelFactor: numbersOrNull.exactOptional(),
    gasExchange: z.boolean(),
    frictionRise: number,
  } satisfies KeysOf<MatchInput['work']>),
} satisfies KeysOf<MatchInput>);

const part = z.enum([
  'baselineAir',
  'baselinePower',
  'head',
  'mapFlow',
  'efficiency',
  'cooler',
  'slip',
  'swallowing',
  'chargeHeat',
  'work',
] as const satisfies readonly SpreadPart[]);
/** Lines of a group, with those that stand for a part's shape over speed; and normals it is drawn by. */
const MOST_LINES = 64;
/** A fit of thirty combinations at once has fewer. */
const MOST_NORMALS = 300;

const spread = z.strictObject({
  key: text,
  parts: z.array(part).max(MOST_LINES),
  factor: z.array(z.array(number).max(MOST_NORMALS)).max(MOST_LINES),
  shapes: z.array(numbersOrNull).max(MOST_LINES).exactOptional(),
  staysBesideFit: z.literal(true).exactOptional(),
} satisfies KeysOf<SpreadGroup>);

const matchCase = z.strictObject({
  input,
  spread: z.array(spread).max(40),
} satisfies KeysOf<MatchCase>);

/** Matches to be banded, as a bundle has them; a long band is asked for once more, not for ever. */
export const bandsWanted = z.strictObject({
  cases: z.array(matchCase).min(1).max(4),
  draws: z.int().min(20).max(10_000).default(2000),
  seed: z.int().min(0).max(0xffff_ffff).default(1),
});

/** The cases of a checked body; a mixture that was not logged at a speed comes as `null`. */
export const casesOf = ({
  cases,
}: z.infer<Taking<{ cases: MatchCase[] }, typeof bandsWanted>>): MatchCase[] =>
  cases.map(({ input: one, spread: open }) => ({
    spread: open,
    input: {
      ...one,
      baseline: { ...one.baseline, lambda: one.baseline.lambda?.map((value) => value ?? Number.NaN) ?? null },
    },
  }));

export const predictionToKeep = z.strictObject({
  key: text,
  draws: z.int().min(20).max(10_000).optional(),
  seed: z.int().min(0).max(0xffff_ffff).optional(),
});

export const newMap = z.strictObject({
  /** Open CSV. */
  text: z.string().max(500_000),
  name: text.optional(),
  fileName: text.optional(),
});

export const mapChange = z.strictObject({
  name: text.optional(),
  notes: z.string().max(20_000).optional(),
  reason: text,
  stamp: text.optional(),
});

export const mapQuery = z.object(shown);
