import type { Cooler } from '@pullbook/core/airpath';
import { type MatchFit, withFit } from '@pullbook/core/fit';
import { fuelSupplyOf } from '@pullbook/core/fuel';
import type { ReachInput, ReachTarget } from '@pullbook/core/reach';
import { said } from '@pullbook/core/remark';
import type { KnownEngine } from '../next-pulley/engine.ts';

/** What may be changed in an invented world to get more. */
export const WAYS = ['pulley', 'cooler', 'breathing', 'pulley and breathing'] as const;
export type WayAsked = (typeof WAYS)[number];

/** A gain in breathing as its owner states it: share of the air swallowed, and one standard deviation. */
export interface Stated {
  gain: number;
  spread: number;
}

const FROM = { kind: 'common practice', source: 'common practice, no source' } as const;

/** Ice where there is a cooler, cell water where there is none. */
const coolerFor = (isCooled: boolean): Cooler => ({
  by: isCooled ? 'ice water' : 'water',
  effectiveness: 0.78,
  loss: { pressureDifference: 0, atFlow: 0, atDensity: 1.2 },
  coolantTemperature: isCooled ? 277 : 291,
});

/** The search that its owner asks for: what is there, and what may be changed. Nothing binds: it is asked what comes out, not what may be done. */
export function askedOf(
  engine: KnownEngine,
  {
    way,
    stated,
    fit,
    power,
    seed,
  }: { way: WayAsked; stated: Stated; fit: MatchFit | null; power: number; seed: number },
): ReachInput {
  const { madeOf, first, isCooled } = engine;
  const { input, spread } = first;
  const { sheet, baseline } = madeOf;
  const present = sheet.sections.drive!.blowerPulleyDiameter!.value as number;
  const target: ReachTarget = { what: 'peak power', power, atRpm: null, windowRpm: null, boostCap: null };
  const isTurned = way.includes('pulley');
  return {
    target,
    standard: { id: 'observed', factor: 1 },
    builds: [
      {
        id: 'present',
        name: 'as it is',
        isPresent: true,
        match: fit === null ? { input, spread } : withFit({ input, spread }, fit),
        fit,
        madeOf,
        sheet,
        change: null,
        assumptions: [],
      },
    ],
    baseline,
    measuredNow: null,
    blowerPulleys: isTurned
      ? Array.from({ length: 8 }, (_, step) => ({ diameter: present * 0.985 ** (step + 1), cost: 1 }))
      : [],
    crankPulleys: [],
    stepUps: [],
    coolers:
      way === 'cooler'
        ? [{ id: 'other', name: 'other', cooler: coolerFor(isCooled), cost: 3, from: FROM }]
        : [],
    fuels: [],
    breathing: way.includes('breathing')
      ? [
          {
            id: 'stated',
            name: 'better heads',
            engineSpeedRpm: [baseline.engineSpeedRpm[0]!],
            factor: [1 + stated.gain],
            spread: stated.spread,
            ground: 'rule of thumb',
            from: said`stated`,
            edits: [],
            cost: 3,
            pullIds: [],
          },
        ]
      : [],
    speedLimits: [],
    injectors: [],
    pumps: [],
    beltRibs: [],
    supply: fuelSupplyOf(sheet, { induction: 'centrifugal' }),
    thresholds: {},
    binding: {
      fuelAndCompression: false,
      spark: false,
      belt: false,
      surge: false,
      injectors: false,
      pump: false,
    },
    mostChanges: 2,
    mostRungs: 12,
    draws: 300,
    seed,
  };
}
