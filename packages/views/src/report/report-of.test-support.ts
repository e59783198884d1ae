import { plannedEngine, togetherOnOneCard } from '@pullbook/core/plan';
import type { Cell } from '@pullbook/core/pull';
import type { TrialAnswer } from '@pullbook/core/trial';
import type { MatchBundle } from '../match-model.ts';
import type { ViewOptions } from '../model.ts';
import type { ReportDescription } from '../publish/model.ts';
import { type InventedCombination, inventedAnswer } from '../test-answer.ts';
import { reportDescription } from './report.ts';

export const US: ViewOptions = { units: 'us', decimalMark: '.' };

export const CELL: Cell = {
  id: 'cell 1',
  name: 'Cell 1',
  brake: '',
  altitude: 210,
  momentOfInertia: null,
  notes: '',
  instruments: [
    {
      id: 'load',
      name: 'Load cell',
      measures: 'torque',
      serial: '',
      calibrations: [{ day: '2026-03-01', validUntil: '2026-04-01', how: '', found: '', by: '' }],
    },
  ],
};

/** A report of an invented answer. */
export function reportOf(
  answer: TrialAnswer,
  more: { cells?: Cell[]; options?: ViewOptions; contact?: string; match?: MatchBundle } = {},
): ReportDescription {
  const none = { highestBoost: null, highestSpeedRpm: null };
  const engines = [...answer.combinations.values()].map(({ sheet }) => plannedEngine(sheet, none));
  return reportDescription(
    answer,
    more.options ?? US,
    { name: 'The shop', mark: null },
    {
      cells: more.cells ?? [CELL],
      engine: togetherOnOneCard(engines),
      contact: more.contact ?? '',
      match: more.match ?? null,
    },
  );
}

/** Two combinations with a supercharger and a clear gain of 20 hp. */
export function blown(names: [string, string] = ['base cam', 'longer cam']): TrialAnswer {
  const one: InventedCombination = {
    shortName: names[0],
    pulls: 3,
    power: (rpm) => 0.07 * rpm,
    boost: (rpm) => rpm / 650,
    supercharged: true,
  };
  return inventedAnswer([
    one,
    {
      ...one,
      shortName: names[1],
      pulls: 2,
      power: (rpm) => 0.07 * rpm + 20,
      sure: { word: 'clear', mean: [12, 28] },
    },
  ]);
}
