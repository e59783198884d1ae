import type { PullArray } from './model.ts';
import { addColumns } from './orthonormal-columns.ts';

/** Which level of one kind (set-up, day, …) each pull belongs to. */
export interface Levels {
  names: string[];
  of: Int32Array;
}

/** What the pulls of a comparison share and in which order they were made. */
export interface Design {
  groups: Levels;
  setUps: Levels;
  sessions: Levels;
  cells: Levels;
  /** Pulls that differ by nothing but their own scatter and their time. */
  units: Levels;
  /** Hours of each pull from the mean of its session, one column a session whose order lets a straight drift cancel; 0 elsewhere. */
  takenOut: Float64Array[];
  /** The same for sessions whose order does not. */
  carried: Float64Array[];
  /** Sessions with several groups in which a pull's time is not known. */
  timeless: string[];
}

/** Reads the design off the labels of the pulls. */
export function designOf(pulls: readonly PullArray[]): Design {
  const session = (pull: PullArray) => keyOf('day', pull.session);
  const setUp = (pull: PullArray) =>
    pull.setUp === null ? JSON.stringify(['own', pull.group, pull.session]) : keyOf('set-up', pull.setUp);
  const cell = (pull: PullArray) => keyOf('cell', pull.cell);
  const groups = levelsOf(pulls, ({ group }) => group);
  const sessions = levelsOf(pulls, session);
  return {
    groups,
    sessions,
    setUps: levelsOf(pulls, setUp),
    cells: levelsOf(pulls, cell),
    units: levelsOf(pulls, (pull) => JSON.stringify([pull.group, setUp(pull), session(pull), cell(pull)])),
    ...timesOf(pulls, groups, sessions),
  };
}

/** Indicator columns of the levels. */
export const columnsOf = ({ names, of }: Levels): Float64Array[] =>
  names.map((_, level) => Float64Array.from(of, (own) => (own === level ? 1 : 0)));

const keyOf = (kind: string, name: string | null): string => JSON.stringify([kind, name]);

function levelsOf(pulls: readonly PullArray[], name: (pull: PullArray) => string): Levels {
  const names: string[] = [];
  const of = Int32Array.from(pulls, (pull) => {
    const own = name(pull);
    const known = names.indexOf(own);
    return known >= 0 ? known : names.push(own) - 1;
  });
  return { names, of };
}

function timesOf(
  pulls: readonly PullArray[],
  groups: Levels,
  sessions: Levels,
): Pick<Design, 'takenOut' | 'carried' | 'timeless'> {
  const takenOut: Float64Array[] = [];
  const carried: Float64Array[] = [];
  const timeless: string[] = [];
  const basis: Float64Array[] = [];
  addColumns(basis, columnsOf(groups));
  for (const [level, name] of sessions.names.entries()) {
    const own = Array.from(pulls.keys()).filter((pull) => sessions.of[pull] === level);
    const hours = own.map((pull) => pulls[pull]!.hours ?? Number.NaN);
    const several = new Set(own.map((pull) => groups.of[pull])).size > 1;
    if (!hours.every(Number.isFinite)) {
      if (several) timeless.push(name);
      continue;
    }
    const centre = hours.reduce((sum, hour) => sum + hour, 0) / hours.length;
    if (hours.every((hour) => hour === hours[0])) continue;
    const column = new Float64Array(pulls.length);
    own.forEach((pull, place) => {
      column[pull] = hours[place]! - centre;
    });
    const cancels = several && isInterleaved(own, hours, groups) && addColumns(basis, [column]).length > 0;
    if (cancels) takenOut.push(column);
    else carried.push(column);
  }
  return { takenOut, carried, timeless };
}

/** Whether some group has pulls both before and after a pull of another. */
function isInterleaved(own: readonly number[], hours: readonly number[], groups: Levels): boolean {
  return groups.names.some((_, level) => {
    const isOwn = (place: number) => groups.of[own[place]!] === level;
    const times = hours.filter((__, place) => isOwn(place));
    const [first, last] = [Math.min(...times), Math.max(...times)];
    return hours.some((hour, place) => !isOwn(place) && hour > first && hour < last);
  });
}
