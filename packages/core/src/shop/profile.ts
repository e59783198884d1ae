import type { PullDigest } from './model.ts';

/** Logarithm of power at whole steps of engine speed without gaps. */
export interface Profile {
  fromRpm: number;
  stepRpm: number;
  logPower: readonly number[];
}

/** The longest stretch of a digest without a gap. */
export function profileOf({ fromRpm, stepRpm, logPower }: Pick<PullDigest, keyof Profile>): Profile {
  let [bestFrom, bestLength, from] = [0, 0, 0];
  for (let node = 0; node <= logPower.length; node++) {
    if (node < logPower.length && logPower[node] !== null) continue;
    if (node - from > bestLength) [bestFrom, bestLength] = [from, node - from];
    from = node + 1;
  }
  return {
    fromRpm: fromRpm + bestFrom * stepRpm,
    stepRpm,
    logPower: logPower.slice(bestFrom, bestFrom + bestLength) as number[],
  };
}

/** Mean of the profiles at the speeds that all have; `null`: they share none. */
export function sharedProfile(profiles: readonly Profile[]): Profile | null {
  const stepRpm = profiles[0]?.stepRpm ?? 0;
  const fromRpm = Math.max(...profiles.map((one) => one.fromRpm));
  const toRpm = Math.min(...profiles.map((one) => one.fromRpm + (one.logPower.length - 1) * one.stepRpm));
  if (!(toRpm >= fromRpm) || profiles.some((one) => one.stepRpm !== stepRpm)) return null;
  const logPower = Array.from({ length: Math.round((toRpm - fromRpm) / stepRpm) + 1 }, (_, node) => {
    const sum = profiles.reduce(
      (all, one) => all + one.logPower[node + Math.round((fromRpm - one.fromRpm) / stepRpm)]!,
      0,
    );
    return sum / profiles.length;
  });
  return { fromRpm, stepRpm, logPower };
}

/** Mean logarithm of power of each profile over the speeds of a shared one. */
export function levelsOver(profiles: readonly Profile[], shared: Profile): number[] {
  return profiles.map(({ fromRpm, logPower }) => {
    const start = Math.round((shared.fromRpm - fromRpm) / shared.stepRpm);
    let sum = 0;
    for (let node = 0; node < shared.logPower.length; node++) sum += logPower[start + node]!;
    return sum / shared.logPower.length;
  });
}
