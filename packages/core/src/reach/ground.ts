import { type Said, said } from '../remark/index.ts';
import type { Ground, ReachBuild } from './model.ts';

/** The most trusted first. */
const GROUNDS: readonly Ground[] = ['measured by you', 'scaled from your data', 'rule of thumb'];

/** The least trusted of several: a rung is no better than its weakest line. */
export const weakestGround = (grounds: readonly Ground[]): Ground =>
  GROUNDS[Math.max(0, ...grounds.map((one) => GROUNDS.indexOf(one)))]!;

/** What is known of a build when something of it is changed. */
export function groundOfBuild({ match, fit, madeOf }: ReachBuild): { ground: Ground; from: Said } {
  if (match === null) return { ground: 'scaled from your data', from: said`the pull without supercharger` };
  const pulls = fit?.restsOn.length ?? 0;
  if (fit !== null)
    return {
      ground: 'scaled from your data',
      from: said`the match fitted to ${pulls} boosted ${pulls === 1 ? 'pull' : 'pulls'}`,
    };
  const isRated = madeOf?.map.form === 'rated';
  return {
    ground: 'rule of thumb',
    from: isRated
      ? said`the match with a generic compressor scaled to its rating, fitted to no boosted pull`
      : said`the match with the compressor’s map, fitted to no boosted pull`,
  };
}

/** What a build stands on as it is. */
export function groundOfNow(build: ReachBuild, isPulled: boolean): Ground {
  if (isPulled) return 'measured by you';
  if (build.match !== null) return groundOfBuild(build).ground;
  const origin = build.madeOf?.baseline.origin ?? 'measured';
  return origin === 'measured' ? 'measured by you' : 'scaled from your data';
}
