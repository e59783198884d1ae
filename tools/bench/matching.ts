import { threads } from '@pullbook/compute';
import { leaveLineOut, solveMatch } from '@pullbook/core/airpath';
import { MEASURED_MAPS } from '../../checks/compressor-maps/measured-maps.ts';
import type { jobs } from '../../packages/workshop/src/long-work/jobs.ts';
import { matchAtSixtySpeeds } from './match-at-sixty-speeds.ts';

/** A hundred matches one after another: one alone is too short for the clock. */
export function hundredMatches(): () => void {
  const { input } = matchAtSixtySpeeds();
  return () => {
    for (let match = 0; match < 100; match++) solveMatch(input);
  };
}

/**
 * Ten thousand draws with their bands, in two threads of the built program as its server has them made: from its sources the program
 * does them in line.
 */
export function sampledMatches(): { run: () => Promise<unknown>; close: () => Promise<void> } {
  const cases = [matchAtSixtySpeeds()];
  const file = new URL('../../apps/cli/dist/long-work.mjs', import.meta.url);
  const computing = threads<Pick<typeof jobs, 'drawMatch' | 'bandsOfDraws'>>(file, 2);
  const draws = 5000;
  return {
    run: async () => {
      const slices = [0, draws].map((from) => computing.run('drawMatch', { cases, draws, seed: 7, from }));
      return computing.run('bandsOfDraws', await Promise.all(slices), { giveAway: true });
    },
    close: () => computing.close(),
  };
}

/** The measured map with most points: each of its lines left out in turn and met by a fit of the others. */
export function linesLeftOut(): () => void {
  const { map } = MEASURED_MAPS.reduce((most, one) =>
    one.map.points.length > most.map.points.length ? one : most,
  );
  return () => {
    if (!leaveLineOut(map).ok) throw new Error('the largest map is not fitted');
  };
}
