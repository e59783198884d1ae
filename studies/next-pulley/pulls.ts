import type { MatchCurve } from '@pullbook/core/airpath';
import type { BoostedPull } from '@pullbook/core/fit';
import type { Chance } from '../coverage/chance.ts';
import type { KnownEngine } from './engine.ts';
import type { Hidden } from './hidden.ts';

/** Gauges of one cell, the same at every pulley: shares; boost also Pa, temperature K. */
export interface Gauges {
  boost: number;
  boostZero: number;
  power: number;
  charge: number;
  air: number;
}

export const drawGauges = ({ normal }: Chance): Gauges => ({
  boost: 0.002 * normal(),
  boostZero: 100 * normal(),
  power: 0.003 * normal(),
  charge: 2 * normal(),
  air: 0.01 * normal(),
});

/** What is logged beside power and boost. */
export interface Logged {
  hasCharge: boolean;
  hasAir: boolean;
}

/** Pulls of one pulley, their readings off by the gauges, by the pull (the demo's 0.4 %) and by the row. */
export function pullsOf(
  { figures, engineSpeedRpm }: MatchCurve,
  engine: KnownEngine,
  { gauges, hidden, logged, chance }: { gauges: Gauges; hidden: Hidden; logged: Logged; chance: Chance },
): BoostedPull[] {
  const { normal } = chance;
  return [1, 2, 3].map((number) => {
    const read = (
      figure: 'boost' | 'brakePower' | 'manifoldTemperature' | 'airFlow',
      { share, zero, row }: { share: number; zero: number; row: number },
    ) => Array.from(figures[figure], (value) => value * (1 + share + row * normal()) + zero);
    // The meter that read the engine alone reads it under boost as well, with the same share off.
    const meter = 1 / (1 + hidden.parts.baselineAir);
    return {
      pullId: `pull ${number}`,
      engineSpeedRpm,
      brakePower: read('brakePower', { share: gauges.power + 0.004 * normal(), zero: 0, row: 0.003 }),
      boost: read('boost', { share: gauges.boost + 0.004 * normal(), zero: gauges.boostZero, row: 0.004 }),
      chargeTemperature: logged.hasCharge
        ? read('manifoldTemperature', { share: 0, zero: gauges.charge + 1.5 * normal(), row: 0.002 })
        : null,
      dischargeTemperature: null,
      airFlow: logged.hasAir
        ? read('airFlow', { share: gauges.air + 0.006 * normal(), zero: 0, row: 0.006 }).map(
            (flow) => flow * meter,
          )
        : null,
      impellerSpeedRpm: null,
      air: engine.first.input.air,
    };
  });
}

/** What three pulls read on average: means over rows of one figure. */
export const meanOf = (pulls: readonly BoostedPull[], channel: 'boost' | 'brakePower'): number[] =>
  pulls[0]!.engineSpeedRpm.map(
    (_, node) => pulls.reduce((sum, pull) => sum + pull[channel]![node]!, 0) / pulls.length,
  );
