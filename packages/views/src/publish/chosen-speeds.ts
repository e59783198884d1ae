import { standardName } from '../standard-name.ts';
import type { TrialInView } from '../trial-in-view.ts';

/** Steps of engine speed that a table may have, r/min: the smallest that gives no more rows than can be read. */
const STEPS = [500, 1000, 2000] as const;
const MOST_ROWS = 15;
/** A narrow window is shown finer. */
const FINE_STEPS = [250, 100, 50] as const;
const LEAST_ROWS = 3;

/** Nodes at whole steps that have a figure; finer where the window is narrow, coarser where it is long. */
export function chosenNodes(engineSpeedRpm: Float64Array, has: (node: number) => boolean): number[] {
  const at = (step: number) =>
    [...engineSpeedRpm.keys()].filter((node) => engineSpeedRpm[node]! % step === 0 && has(node));
  const coarse = STEPS.map(at).find((nodes) => nodes.length <= MOST_ROWS) ?? at(5000);
  if (coarse.length >= LEAST_ROWS) return coarse;
  const fine = FINE_STEPS.map(at).find((nodes) => nodes.length >= LEAST_ROWS && nodes.length <= MOST_ROWS);
  return fine ?? coarse;
}

/** `Power, SAE J1349; the average from 4,000 to 6,500 rpm.` */
export function powerWords({ comparison, show, gains }: TrialInView): string {
  const window = comparison?.averagesWindowRpm;
  const average = window && gains.length > 0 ? `; the average from ${show.speedRange(window)}` : '';
  return comparison ? `Power, ${standardName(comparison.correction)}${average}.` : '';
}
