import { performance } from 'node:perf_hooks';
import { threads } from '@pullbook/compute';
import { sparkAllowed } from '@pullbook/core/fuel';
import {
  type PartRunner,
  type ReachAnswer,
  type ReachBuild,
  type ReachInput,
  type ReachParts,
  type ReachProgress,
  reachInParts,
  troubleOfTarget,
} from '@pullbook/core/reach';
import { said } from '@pullbook/core/remark';
import { buildOf, fuelOf, reachInput, sheetOf } from '../../packages/core/src/reach/reach-input.testing.ts';
import type { jobs } from '../../packages/workshop/src/long-work/jobs.ts';

const PULLEYS = 40;

/** Four superchargers, forty pulleys, three coolers, four fuels, each with each; an invented engine at 38 speeds. Bands of 500 draws. */
function searchAtSize(): ReachInput {
  const from = { kind: 'common practice', source: 'common practice, no source' } as const;
  const cooler = (id: string, by: 'air' | 'ice water', effectiveness: number) => ({
    id,
    name: id,
    cooler: {
      by,
      effectiveness,
      loss: { pressureDifference: 3000, atFlow: 0.5, atDensity: 1.6 },
      coolantTemperature: by === 'air' ? null : 277.15,
    },
    cost: 3 as const,
    from,
  });
  const input = reachInput({
    target: { what: 'peak power', power: 620e3, atRpm: null, windowRpm: null, boostCap: null },
    builds: [buildOf(sheetOf()), ...[3.4, 3.8, 4.2].map(otherUnit)],
    blowerPulleys: Array.from({ length: PULLEYS }, (_, place) => ({
      diameter: 0.06 + 0.0015 * place,
      cost: 1,
    })),
    coolers: [cooler('air to air', 'air', 0.65), cooler('ice water', 'ice water', 0.8)],
    fuels: ['E10', 'E85', 'methanol'].map(fuelOf),
    binding: {},
    mostChanges: 4,
    draws: 500,
  });
  const trouble = troubleOfTarget(input);
  if (trouble !== null) throw new Error(trouble.message);
  return input;
}

function otherUnit(stepUp: number): ReachBuild {
  const sheet = sheetOf({
    supercharger: {
      type: 'centrifugal',
      stepUp,
      maximumImpellerSpeed: `${Math.round(15_000 * stepUp)} rpm`,
      bypassAtFullThrottle: 'shut',
    },
  });
  return buildOf(sheet, {
    id: `step-up ${stepUp}`,
    change: {
      part: 'supercharger',
      said: said`Unit with a step-up of ${stepUp}`,
      edits: [{ section: 'supercharger', field: 'stepUp', text: `${stepUp}` }],
      clears: [],
      cost: 4,
      ground: 'rule of thumb',
      from: said`its sheet`,
    },
  });
}

/** Searches in two threads of the built program, as its server has them made. */
export interface Searches {
  whole: () => Promise<ReachAnswer>;
  /** ms until the first ways that reach the target are told. */
  first: () => Promise<number>;
  /** ms from the word to stop until the search is over. */
  stopped: () => Promise<number>;
  close: () => Promise<void>;
}

export function searches(): Searches {
  const input = searchAtSize();
  const file = new URL('../../apps/cli/dist/long-work.mjs', import.meta.url);
  const computing = threads<Pick<typeof jobs, 'reachPart'>>(file, 2);
  const search = (signal: AbortSignal, onProgress?: (progress: ReachProgress) => void) => {
    const run = (name: PartName, given: ReachParts[PartName]['given']) =>
      computing.run('reachPart', { input, name, given }, { signal });
    return reachInParts(input, run as PartRunner, { atOnce: 2, onProgress });
  };
  const never = new AbortController().signal;
  return {
    whole: () => search(never),
    first: async () => {
      const start = performance.now();
      let took = Number.NaN;
      await search(never, ({ rungs }) => {
        if (Number.isNaN(took) && rungs.some(({ reaches }) => reaches)) took = performance.now() - start;
      });
      return took;
    },
    stopped: async () => {
      const stop = new AbortController();
      const over = search(stop.signal).catch(() => performance.now());
      await new Promise((resolve) => setTimeout(resolve, STOPPED_AFTER_MS));
      const start = performance.now();
      stop.abort();
      return ((await over) as number) - start;
    },
    close: () => computing.close(),
  };
}

type PartName = keyof ReachParts;

/** Well within the search. */
const STOPPED_AFTER_MS = 80;

/** How much spark a fuel allows at one charge, a hundred times. */
export function hundredSparks(): () => void {
  const charge = {
    engineSpeedRpm: 6000,
    manifoldPressure: 168e3,
    manifoldTemperature: 340,
    compressionRatio: 9.6,
    exhaustPressure: 105e3,
    lambda: 0.8,
  };
  const { fuel } = fuelOf('E85');
  return () => {
    for (let one = 0; one < 100; one++) sparkAllowed(charge, fuel);
  };
}
