import { join } from 'node:path';
import type { ReachAnswer } from '@pullbook/core/reach';
import type { Result } from '@pullbook/core/remark';
import type { ReachBundle } from '@pullbook/views/reach';
import {
  type MatchPoint,
  matchFromFile,
  type ReachRequest,
  reachFromFile,
  runReach,
} from '@pullbook/workshop';

/** Where the sample files that these checks ask stand. */
export const samples = join(import.meta.dirname, '..', '..', 'samples', 'reach');

export function gotten<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.remarks.map(({ message }) => message).join(' '));
  return result.value;
}

export interface Asked {
  bundle: ReachBundle;
  answer: ReachAnswer;
  maps: Record<string, Parameters<typeof import('@pullbook/workshop').rungFile>[1]>;
}

/** What `pullbook reach` answers to a file. */
export async function asked(text: string, request: ReachRequest = {}): Promise<Asked> {
  const from = { fileName: 'asked.yaml', folder: samples, book: null };
  const { bundle, maps } = gotten(await reachFromFile(text, { draws: 20, ...request }, from));
  return { bundle, maps, answer: await runReach(bundle.input) };
}

/** What `pullbook match` says of a file, point by point. */
export async function matchedPoints(text: string): Promise<MatchPoint[]> {
  const from = { fileName: 'again.yaml', folder: samples, book: null, bands: null, words: null };
  return gotten(await matchFromFile(text, from)).points;
}

/** Highest power up to an engine speed, kW. */
export const peakOf = (points: readonly MatchPoint[], upToRpm = Number.POSITIVE_INFINITY): number =>
  Math.max(
    ...points
      .filter(({ engineSpeedRpm }) => (engineSpeedRpm as number) <= upToRpm)
      .map(({ brakePowerKw }) => brakePowerKw as number),
  );
