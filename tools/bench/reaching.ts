import { threads } from '@pullbook/compute';
import {
  answerOf,
  type ReachAnswer,
  type ReachBuild,
  type ReachInput,
  reach,
  type Screened,
  troubleOfTarget,
} from '@pullbook/core/reach';
import { said } from '@pullbook/core/remark';
import { buildOf, fuelOf, reachInput, sheetOf } from '../../packages/core/src/reach/reach-input.testing.ts';
import type { jobs } from '../../packages/workshop/src/long-work/jobs.ts';

const PULLEYS = 40;
/** Parts of the search that two threads take turns at. */
const PARTS = 4;

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

/** The whole search in two threads of the built program, as its server has it made, and how soon its first rungs are there in one thread. */
export function searches(): {
  run: () => Promise<ReachAnswer>;
  first: () => void;
  close: () => Promise<void>;
} {
  const input = searchAtSize();
  const file = new URL('../../apps/cli/dist/long-work.mjs', import.meta.url);
  const computing = threads<
    Pick<typeof jobs, 'screenReach' | 'ladderOfScreened' | 'bandedRung' | 'whatIsLeft'>
  >(file, 2);
  const run = async (): Promise<ReachAnswer> => {
    const screened: Screened[] = await Promise.all(
      Array.from({ length: PARTS }, (_, part) => computing.run('screenReach', { input, part, of: PARTS })),
    );
    const ladder = await computing.run('ladderOfScreened', { input, screened });
    const [banded, left] = await Promise.all([
      Promise.all([ladder.now, ...ladder.rungs].map((rung) => computing.run('bandedRung', { input, rung }))),
      Promise.all(input.builds.map((_, place) => computing.run('whatIsLeft', { input, place }))),
    ]);
    return answerOf(input, ladder, banded, left);
  };
  const first = (): void => {
    let isThere = false;
    reach(input, {
      onProgress: ({ rungs }) => {
        isThere ||= rungs.some(({ reaches }) => reaches);
      },
      isCancelled: () => isThere,
    });
  };
  return { run, first, close: () => computing.close() };
}
