import type { CombinationSheet } from '../combination/index.ts';
import { readSheet } from '../combination/index.ts';
import { type ComparedInput, type Comparison, compareCombinations } from '../compare/index.ts';
import { type ChannelMeaning, defaultRecipe, type Pull, viewPull } from '../pull/index.ts';
import {
  inventedChannel,
  inventedPoints,
  inventedPull,
  inventedSweep,
  inventedTorque,
} from '../pull/invented-pull.testing.ts';
import { powerFromTorque } from '../quantity/index.ts';
import { findingsOfComparison } from './findings-of-comparison.ts';
import { findingsOfPull } from './findings-of-pull.ts';
import { findingsOfSession } from './findings-of-session.ts';
import { findingsOfSheet } from './findings-of-sheet.ts';
import type { Finding } from './model.ts';

/** Speeds of a table, r/min. */
export const SPEEDS = Array.from({ length: 41 }, (_, row) => 2500 + 100 * row);

type Columns = Partial<Record<ChannelMeaning, (speed: number) => number>>;

/** A table of settled points with torque of the invented engine and what else is given. */
export function tablePull(columns: Columns = {}, changes: Partial<Pull> = {}): Pull {
  const { torque = inventedTorque, ...more } = columns;
  const channels = Object.entries(more).map(([meaning, at]) =>
    inventedChannel(meaning as ChannelMeaning, SPEEDS.map(at)),
  );
  return inventedPull([...inventedPoints(SPEEDS, torque), ...channels], changes);
}

/** A logged sweep of the invented engine. */
export const sweptPull = (
  options: Partial<Parameters<typeof inventedSweep>[0]> = {},
  changes: Partial<Pull> = {},
): Pull => inventedPull(inventedSweep({ torqueAt: inventedTorque, ...options }).channels, changes);

export const power = (torqueAt: (speed: number) => number) => (speed: number) =>
  powerFromTorque(torqueAt(speed), speed);

/** A sheet from its sections; a refusal is the test's own fault. */
export function sheetOf(sections: Record<string, Record<string, unknown>>): CombinationSheet {
  const read = readSheet({ schemaVersion: 1, name: 'Sheet of a test', ...sections });
  if (!read.ok) throw new Error(read.remarks.map(({ message }) => message).join('\n'));
  return read.value;
}

export function ofPull(pull: Pull, sheet: CombinationSheet | null = null): Finding[] {
  const view = viewPull(pull, defaultRecipe('sae-j1349'));
  return findingsOfPull(pull, view, { sheet });
}

export const ofSheet = (sections: Record<string, Record<string, unknown>>): Finding[] =>
  findingsOfSheet(sheetOf(sections), 'combination c');

const side = (key: string, pulls: readonly Pull[]): ComparedInput => ({
  key,
  combinationId: key,
  pulls: pulls.map((pull, index) => {
    const own = { ...pull, id: `${key}${index}`, name: `${key}${index}` };
    return { pull: own, view: viewPull(own, defaultRecipe('sae-j1349')) };
  }),
});

export function ofComparison(
  baseline: Pull[],
  changed: Pull[],
  more: {
    remarks?: Parameters<typeof findingsOfComparison>[1]['remarks'];
    trends?: Comparison['trends'];
  } = {},
): Finding[] {
  const inputs = [side('A', baseline), side('B', changed)];
  const comparison = compareCombinations(inputs);
  const pulls = new Map(inputs.flatMap((one) => one.pulls.map(({ pull }) => [pull.id, pull] as const)));
  return findingsOfComparison(
    { ...comparison, trends: more.trends ?? comparison.trends },
    { subject: 'trial t', pulls, remarks: more.remarks ?? [] },
  );
}

export const ofSession = (pulls: readonly Pull[]): Finding[] =>
  findingsOfSession(
    's',
    pulls.map((pull) => ({ pull, view: viewPull(pull, defaultRecipe('sae-j1349')) })),
  );
