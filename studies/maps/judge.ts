import { type FittedMap, fitMap, type LinesLeftOut, leaveLineOut } from '@pullbook/core/airpath';
import type { MeasuredMap } from '../../checks/compressor-maps/measured-maps.ts';

/** What the study finds of one measured map. */
export interface MapJudged {
  name: string;
  points: number;
  fitted: FittedMap;
  left: LinesLeftOut;
  /** ms of processor time, medians */
  fitTime: number;
  leaveOutTime: number;
}

const RUNS = 7;

export function judged({ name, map }: MeasuredMap): MapJudged {
  const fit = timed(() => fitMap(map));
  const left = timed(() => leaveLineOut(map));
  if (!fit.value.ok || !left.value.ok) throw new Error(`${name} was refused`);
  return {
    name,
    points: map.points.length,
    fitted: fit.value.value,
    left: left.value.value,
    fitTime: fit.time,
    leaveOutTime: left.time,
  };
}

/** ms of processor time, median of several runs after one that is not counted: other work on the machine does not count. */
export function timed<T>(work: () => T, runs = RUNS): { value: T; time: number } {
  let value = work();
  const times = Array.from({ length: runs }, () => {
    const start = process.cpuUsage();
    value = work();
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000;
  });
  return { value, time: times.toSorted((a, b) => a - b)[runs >> 1]! };
}
