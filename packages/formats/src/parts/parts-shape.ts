import { lossFrom, NO_LOSS } from '@pullbook/core/airpath';
import { fuelNamed } from '@pullbook/core/fuel';
import type { Provenance } from '@pullbook/core/quantity';
import { CHANGE_PARTS, type CostClass, type Ground, type PartsList } from '@pullbook/core/reach';
import { said } from '@pullbook/core/remark';
import { LIMIT_IDS } from '@pullbook/core/rule';
import { group } from '../match/group-shape.ts';
import { made } from '../match/model-shape.ts';
import { quantity, ratio } from '../match/quantity-shape.ts';
import { list, refuse, type Shape, text, truth, whole, word } from '../match/shape.ts';

/** More sizes than any shop has on its shelf. */
const MOST = 400;

const cost = whole(
  [0, 5],
  'Cost class: 0 nothing, 1 small change, up to 5 an engine’s worth.',
) as Shape<CostClass>;
const SOURCE = text(
  'What it rests on: a supplier’s list, a lathe of your own; missing: the shop’s own word.',
);
const about = { cost, source: SOURCE };

const length = (example: string, words: string) =>
  quantity('length', { allowed: [0.01, 2], example, about: words });

/** Sizes one by one, or every step from one to another. */
const pulleys = (words: string): Shape<PartsList['blowerPulleys']> =>
  made(
    list(
      made(
        group(
          {
            diameter: length('78 mm', 'One size.'),
            from: length('60 mm', 'The smallest of a row of sizes.'),
            to: length('120 mm', 'The largest of the row.'),
            step: quantity('length', {
              allowed: [1e-4, 0.1],
              example: '2 mm',
              about: 'From one to the next.',
            }),
            ...about,
          },
          { about: words },
        ),
        ({ diameter, from, to, step, cost: costs = 1, source }, refused) => {
          const sizes = diameter === undefined ? row(from, to, step) : [diameter];
          const isBoth = diameter !== undefined && [from, to, step].some((one) => one !== undefined);
          if (isBoth || sizes === null)
            return refused(
              'give a diameter, or from, to and step of a row of at most 200 sizes: one of the two.',
            );
          return sizes.map((one) => ({ diameter: one, cost: costs, from: provenanceOf(source) }));
        },
      ),
      MOST,
    ),
    (lists) => bySize(lists.flat(), ({ diameter }) => diameter),
  );

function row(from?: number, to?: number, step?: number): number[] | null {
  if (from === undefined || to === undefined || step === undefined || to < from) return null;
  const count = Math.floor((to - from) / step + 1e-9) + 1;
  // Sizes are whole tenths of a millimetre: a step added up must not write 62.000000001.
  return count > 200
    ? null
    : Array.from({ length: count }, (_, at) => Math.round((from + at * step) * 1e5) / 1e5);
}

/** The same size twice is one: the cheaper. */
function bySize<T extends { cost: CostClass }>(items: readonly T[], sizeOf: (item: T) => number): T[] {
  const sorted = [...items].sort((a, b) => sizeOf(a) - sizeOf(b) || a.cost - b.cost);
  return sorted.filter((one, at) => at === 0 || sizeOf(one) !== sizeOf(sorted[at - 1]!));
}

const STEP_UP = made(
  group(
    { ratio: ratio([0.2, 30], '3.6', 'Turns of the impeller for one of the input.'), ...about },
    { about: 'Gears of this unit.', needed: ['ratio'] },
  ),
  ({ ratio: turns, cost: costs = 3, source }) =>
    turns === undefined ? undefined : { ratio: turns, cost: costs, from: provenanceOf(source) },
);

const COOLER = made(
  group(
    {
      name: text('What it is called.'),
      by: word(['none', 'air', 'water', 'ice water'], 'What carries the heat away; none: no cooler.'),
      effectiveness: ratio([0, 1], '75 %', '(hot in - hot out) / (hot in - coolant in).'),
      coolantTemperature: quantity('temperature', {
        allowed: [230, 420],
        example: '18 °C',
        about: 'Coolant as it comes in; missing: the ambient air.',
      }),
      pressureLoss: quantity('pressureDifference', {
        allowed: [0, 5e5],
        example: '4 kPa',
        about: 'Pressure lost in it; missing: as much as the present one loses, else what is usual.',
      }),
      pressureLossFlow: quantity('massFlow', {
        allowed: [1e-4, 50],
        example: '0.3 kg/s',
        about: 'Air flow at which that is told.',
      }),
      ...about,
    },
    { about: 'A cooler that can be fitted, or none.', needed: ['by'] },
  ),
  (
    {
      name,
      by,
      effectiveness,
      coolantTemperature = null,
      pressureLoss,
      pressureLossFlow,
      cost: costs = 3,
      source,
    },
    refused,
  ) => {
    if (by === undefined) return undefined;
    const from = provenanceOf(source);
    if (by === 'none')
      return { id: name ?? 'no cooler', name: name ?? 'no cooler', cooler: null, cost: costs, from };
    if (effectiveness === undefined)
      return refused('has no effectiveness. Write for example "effectiveness: 75 %".');
    if ((pressureLoss === undefined) !== (pressureLossFlow === undefined))
      return refused(
        'give pressureLoss with the air flow at which it is lost (pressureLossFlow), or neither.',
      );
    const loss =
      pressureLoss === undefined || pressureLossFlow === undefined
        ? NO_LOSS
        : lossFrom({
            pressureDifference: pressureLoss,
            atFlow: pressureLossFlow,
            atDensity: DENSITY_IN_CORE,
          });
    const called = name ?? by;
    return {
      id: called,
      name: called,
      cooler: { by, effectiveness, loss, coolantTemperature },
      cost: costs,
      from,
    };
  },
);

/** kg/m³ of the air in a core, as where a sheet tells of its loss. */
const DENSITY_IN_CORE = 1.6;

const FUEL: Shape<PartsList['fuels'][0]> = {
  schema: {
    type: 'object',
    description:
      'A fuel that can be had, by its name or as a blend: E85 as labelled, methanol, 70 % ethanol, 30 % gasoline.',
    properties: { fuel: { type: 'string' }, cost: cost.schema, source: SOURCE.schema },
    required: ['fuel'],
    additionalProperties: false,
  },
  read: (value, path, reading) => {
    const written = group({ fuel: text('The fuel.'), ...about }, { about: 'A fuel.', needed: ['fuel'] }).read(
      value,
      path,
      reading,
    );
    if (written?.fuel === undefined) return undefined;
    const { fuel: name, cost: costs = 1, source } = written;
    const fuel = fuelNamed(name);
    if (!fuel.ok) return refuse(reading, [...path, 'fuel'], fuel.remarks[0]!.code, fuel.remarks[0]!.message);
    return { id: name, fuel: fuel.value, cost: costs, from: provenanceOf(source) };
  },
};

const INJECTORS = made(
  group(
    {
      name: text('What they are called; missing: their flow.'),
      flow: quantity('massFlow', {
        allowed: [1e-5, 1],
        example: '65 lb/h',
        about: 'Of one, open all the time.',
      }),
      pressure: quantity('pressureDifference', {
        allowed: [1e4, 5e8],
        example: '3 bar',
        about: 'At which that is told.',
      }),
      density: quantity('density', {
        allowed: [500, 1200],
        example: '745 kg/m3',
        about: 'Of the fluid it was told with; missing: gasoline.',
      }),
      deadTime: quantity('time', { allowed: [0, 0.02], example: '1 ms', about: 'By which it opens late.' }),
      ...about,
    },
    { about: 'Injectors that can be had.', needed: ['flow', 'pressure'] },
  ),
  ({ name, flow, pressure, density = 745, deadTime = null, cost: costs = 2, source }) =>
    flow === undefined || pressure === undefined
      ? undefined
      : {
          injectors: { flow, ratedDensity: density, ratedPressure: pressure, deadTime },
          name: name ?? `${asText((flow * 3600) / 0.453_592_37)} lb/h at ${asText(pressure / 1e5)} bar`,
          cost: costs,
          from: provenanceOf(source),
        },
);

const VOLTAGE = (words: string) => quantity('voltage', { allowed: [5, 60], example: '13.5 V', about: words });

const PUMP = made(
  group(
    {
      name: text('What it is called; missing: its flow.'),
      flow: quantity('volumeFlow', {
        allowed: [1e-7, 1],
        example: '255 L/h',
        about: 'At the pressure told with it.',
      }),
      pressure: quantity('pressureDifference', {
        allowed: [1e3, 5e8],
        example: '3 bar',
        about: 'At which the flow is told.',
      }),
      flowAbove: quantity('volumeFlow', {
        allowed: [1e-7, 1],
        example: '204 L/h',
        about: 'At a second, higher pressure.',
      }),
      pressureAbove: quantity('pressureDifference', {
        allowed: [1e3, 5e8],
        example: '5 bar',
        about: 'The second pressure.',
      }),
      ratedVoltage: VOLTAGE('At which its flow is told; missing: 13.5 V.'),
      voltage: VOLTAGE('That it gets at full load; missing: as rated.'),
      ...about,
    },
    { about: 'A pump that can be had.', needed: ['flow', 'pressure'] },
  ),
  (
    { name, flow, pressure, flowAbove, pressureAbove, ratedVoltage = 13.5, voltage, cost: costs = 2, source },
    refused,
  ) => {
    if (flow === undefined || pressure === undefined) return undefined;
    if (
      (flowAbove === undefined) !== (pressureAbove === undefined) ||
      (pressureAbove ?? Infinity) <= pressure
    )
      return refused('give flowAbove with a pressureAbove that is higher than pressure, or neither.');
    const second = flowAbove === undefined ? [] : [{ pressure: pressureAbove!, flow: flowAbove }];
    return {
      pump: {
        name: name ?? `${asText(flow * 3.6e6)} L/h at ${asText(pressure / 1e5)} bar`,
        ratedVoltage,
        voltage: voltage ?? ratedVoltage,
        points: [{ pressure, flow }, ...second],
      },
      cost: costs,
      from: provenanceOf(source),
    };
  },
);

const RIBS = made(
  group(
    { ribs: whole([1, 40], 'Ribs of the belt.'), ...about },
    { about: 'A belt that can be had.', needed: ['ribs'] },
  ),
  ({ ribs, cost: costs = 1, source }) =>
    ribs === undefined ? undefined : { ribs, cost: costs, from: provenanceOf(source) },
);

const SPEED = (words: string) =>
  quantity('engineSpeed', { allowed: [0, 30_000], example: '4500 rpm', about: words });

/** A gain is stated, so it is a rule of thumb unless somebody says what it was measured by. */
const GROUNDS: readonly Ground[] = ['rule of thumb', 'scaled from your data', 'measured by you'];

const BREATHING = made(
  group(
    {
      name: text('What would be fitted: ported heads.'),
      gain: ratio([-0.5, 1], '4 %', 'Share by which more air is swallowed.'),
      from: SPEED('From which; missing: at all speeds.'),
      to: SPEED('To which.'),
      spread: ratio([0, 0.5], '2 %', 'One standard deviation of it; missing: half the gain.'),
      ground: word(GROUNDS, 'What it rests on; missing: rule of thumb.'),
      ...about,
    },
    { about: 'A gain in breathing that somebody states.', needed: ['name', 'gain'] },
  ),
  (
    { name, gain, from = 0, to = 30_000, spread, ground = 'rule of thumb', cost: costs = 3, source },
    refused,
  ) => {
    if (name === undefined || gain === undefined) return undefined;
    if (to <= from) return refused('its engine speeds go from the lower to the higher.');
    const isAll = from === 0 && to === 30_000;
    // Held beyond its ends: outside the stretch nothing is gained, over a step of 1 r/min.
    const speeds = isAll ? [from, to] : [from - 1, from, to, to + 1];
    const more = 1 + gain;
    return {
      id: name,
      name,
      engineSpeedRpm: speeds,
      factor: isAll ? [more, more] : [1, more, more, 1],
      spread: spread ?? Math.abs(gain) / 2,
      ground,
      from: said`${provenanceOf(source).source}`,
      edits: [],
      cost: costs,
      pullIds: [],
    };
  },
);

const COSTS = group(
  Object.fromEntries(CHANGE_PARTS.map((part) => [part, cost])) as Record<
    (typeof CHANGE_PARTS)[number],
    Shape<CostClass>
  >,
  { about: 'Cost classes of kinds of change whose parts have none of their own.' },
);

const BINDING = group(
  Object.fromEntries(
    LIMIT_IDS.map((id) => [
      id,
      truth('Whether a plan may not pass this limit here: yes, or no: it is only cautioned.'),
    ]),
  ) as Record<(typeof LIMIT_IDS)[number], Shape<boolean>>,
  { about: 'Limits that bind here though the rules only caution, or the other way round.' },
);

/** A parts list as a group of fields; what is left out stands as it was. */
export const parts: Shape<Partial<PartsList>> = made(
  group(
    {
      schemaVersion: whole([1, 1], 'Version of the form: 1.'),
      blowerPulleys: pulleys('Blower pulleys that can be had.'),
      crankPulleys: pulleys('Crank pulleys that can be had.'),
      stepUps: list(STEP_UP, MOST),
      coolers: list(COOLER, MOST),
      fuels: list(FUEL, MOST),
      injectors: list(INJECTORS, MOST),
      pumps: list(PUMP, MOST),
      beltRibs: list(RIBS, MOST),
      breathing: list(BREATHING, MOST),
      costs: COSTS,
      binding: BINDING,
    },
    { about: 'What the shop can buy, with its cost classes. What is left out stands as it was.' },
  ),
  ({ schemaVersion: _, ...lists }) => lists as Partial<PartsList>,
);

/** What a text of a person says of its own ground; '' or nothing: his word. */
export function provenanceOf(source = ''): Provenance {
  const said = source.trim();
  if (said === '') return { source: 'the shop’s own word', kind: 'from memory' };
  if (/common practice/i.test(said)) return { source: said, kind: 'common practice' };
  return {
    source: said,
    kind: /list|catalogue|catalog|sheet|paper|book/i.test(said) ? 'published' : 'from memory',
  };
}

const asText = (value: number): string => String(Number(value.toPrecision(6)));
