import { toInside } from '../quantity/index.ts';
import { blendOf } from './blend.ts';
import { GASOLINE } from './gasoline.ts';
import type { Fuel, UsualRange } from './model.ts';

/** Low, usual, high. */
export type Ends = readonly [low: number, usual: number, high: number];

/** What is usual of three fuels; between them it goes by heating value. */
export interface ByFuel {
  gasoline: Ends;
  e85: Ends;
  methanol: Ends;
}

const HEATING_VALUES = {
  gasoline: GASOLINE.heatingValue,
  e85: blendOf([
    { substance: 'ethanol', volumeShare: 0.85 },
    { substance: 'gasoline', volumeShare: 0.15 },
  ]).heatingValue,
  methanol: blendOf([{ substance: 'methanol', volumeShare: 1 }]).heatingValue,
} as const;

const FUELS = ['methanol', 'e85', 'gasoline'] as const;

/**
 * A figure of any fuel with its ends, straight between the three over heating value and held beyond them. `scaled`: by what the figure of a fuel
 * is multiplied before (consumption by heating value, so that energy is what is read between). `what`: of what it is usual, for its source.
 */
export function usualFor(
  fuel: Fuel,
  by: ByFuel,
  what: string,
  scaled: (heatingValue: number) => number = () => 1,
): UsualRange {
  const at = Math.min(HEATING_VALUES.gasoline, Math.max(HEATING_VALUES.methanol, fuel.heatingValue));
  const upper = at >= HEATING_VALUES.e85 ? 2 : 1;
  const [low, high] = [FUELS[upper - 1]!, FUELS[upper]!];
  const share = (at - HEATING_VALUES[low]) / (HEATING_VALUES[high] - HEATING_VALUES[low]);
  const end = (place: 0 | 1 | 2) =>
    ((1 - share) * by[low][place] * scaled(HEATING_VALUES[low]) +
      share * by[high][place] * scaled(HEATING_VALUES[high])) /
    scaled(fuel.heatingValue);
  return {
    low: end(0),
    usual: end(1),
    high: end(2),
    from: {
      kind: 'common practice',
      source: `${what} at full load by fuel and induction; common practice, no source`,
    },
  };
}

/** Ends told in the trade's unit of specific consumption, in kg/J. */
export const inPoundPerHpHour = (ends: Ends): Ends =>
  ends.map((one) => toInside(one, 'lb/(hp·h)', 'specificConsumption')) as unknown as Ends;
