import { NO_LOSS } from '../airpath/index.ts';
import { fuelNamed } from '../fuel/index.ts';
import type { Provenance } from '../quantity/index.ts';
import type { ChangePart, CostClass, PartsList, PulleySize } from './model.ts';

const COMMON: Provenance = { source: 'common practice, no source', kind: 'common practice' };
const POUND_PER_HOUR = 0.453_592_37 / 3600;
const LITRE_HOUR = 1e-3 / 3600;

/** kg/m³ of the gasoline with which injectors are told. */
const GASOLINE_OF_RATINGS = 745;

/** What a change costs where its own part says nothing: the shop's classes, 0 nothing to 5 an engine's worth. Common practice, no source. */
export const USUAL_COSTS: Record<ChangePart, CostClass> = {
  pulley: 1,
  stepUp: 3,
  supercharger: 4,
  cooler: 3,
  fuel: 1,
  injectors: 2,
  pump: 2,
  belt: 1,
  breathing: 3,
  speedLimit: 0,
};

/** Fuels that a pump or a drum has: of what is sold as E85 the label and what is usual in it, for they differ. Methanol asks for twice the fuel, other hoses and much care. */
const FUELS: [name: string, cost: CostClass][] = [
  ['gasoline 98', 1],
  ['racing gasoline', 2],
  ['E85 as labelled', 1],
  ['E85 usual 70 %', 1],
  ['methanol', 3],
];

/** lb/h of gasoline at 3 bar. */
const INJECTORS = [24, 30, 36, 42, 48, 55, 60, 65, 72, 80, 95, 110, 125, 160];

/** L/h at 3 bar and 13.5 V. */
const PUMPS = [155, 190, 255, 340, 450, 525];

/** Share of its flow at 3 bar that a pump still gives at 5 bar. */
const LEFT_AT_FIVE_BAR = 0.8;

/**
 * What a shop can buy where it has not said so itself: common sizes, none of them a product. No gears and no gain in breathing are
 * among them, for those are of one unit and one engine and must be stated. Pressure lost in a cooler is not told: none stands for that.
 *
 * @example usualParts().blowerPulleys[0] // { diameter: 0.06, cost: 1, from: { source: 'common practice, no source', … } }
 */
export function usualParts(): PartsList {
  return {
    blowerPulleys: pulleys(60, 120, 2),
    crankPulleys: pulleys(140, 215, 5),
    stepUps: [],
    coolers: [
      cooler('air to air', 'air', 0.7, null, 3),
      cooler('air to water', 'water', 0.8, 291.15, 3),
      cooler('ice water', 'ice water', 0.8, 277.15, 3),
    ],
    fuels: FUELS.flatMap(([name, cost]) => {
      const fuel = fuelNamed(name);
      return fuel.ok ? [{ id: fuel.value.name, fuel: fuel.value, cost, from: COMMON }] : [];
    }),
    injectors: INJECTORS.map((pounds) => ({
      injectors: {
        flow: pounds * POUND_PER_HOUR,
        ratedDensity: GASOLINE_OF_RATINGS,
        ratedPressure: 3e5,
        deadTime: null,
      },
      name: `${pounds} lb/h at 3 bar`,
      cost: USUAL_COSTS.injectors,
      from: COMMON,
    })),
    pumps: PUMPS.map((litres) => ({
      pump: {
        name: `${litres} L/h at 3 bar`,
        ratedVoltage: 13.5,
        voltage: 13.5,
        points: [
          { pressure: 3e5, flow: litres * LITRE_HOUR },
          { pressure: 5e5, flow: LEFT_AT_FIVE_BAR * litres * LITRE_HOUR },
        ],
      },
      cost: USUAL_COSTS.pump,
      from: COMMON,
    })),
    beltRibs: [4, 5, 6, 7, 8, 9, 10].map((ribs) => ({ ribs, cost: USUAL_COSTS.belt, from: COMMON })),
    breathing: [],
    costs: USUAL_COSTS,
    binding: {},
  };
}

function pulleys(lowMm: number, highMm: number, stepMm: number): (PulleySize & { from: Provenance })[] {
  const count = Math.round((highMm - lowMm) / stepMm) + 1;
  return Array.from({ length: count }, (_, at) => ({
    diameter: (lowMm + at * stepMm) / 1000,
    cost: USUAL_COSTS.pulley,
    from: COMMON,
  }));
}

const cooler = (
  name: string,
  by: 'air' | 'water' | 'ice water',
  effectiveness: number,
  coolantTemperature: number | null,
  cost: CostClass,
): PartsList['coolers'][0] => ({
  id: name,
  name,
  cooler: { by, effectiveness, loss: NO_LOSS, coolantTemperature },
  cost,
  from: COMMON,
});
