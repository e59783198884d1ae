import type { DecimalMark, UnitSystem } from '@pullbook/core/quantity';
import type { TrialAnswer } from '@pullbook/core/trial';
import { conditionsTable, pullsTable } from './conditions-tables.ts';
import { combinationsTable, figuresTable, trialTable } from './facts-tables.ts';
import type { OutTable } from './model.ts';
import { pullTable } from './pull-table.ts';
import { sheetNames } from './sheet-names.ts';
import { speedsTables } from './speeds-tables.ts';

/** What this room cannot know of a trial, or must be told how to write. */
export interface TablesAsked {
  /** The answer in a sentence, as the screens say it. */
  sentence: string;
  /** What may be said of each gain, a line each. */
  verdicts: readonly string[];
  /** `Not for publication`, and what else must not be missed. */
  warnings: readonly string[];
  /** Units of every column. */
  system: UnitSystem;
  /** Of figures within words; cells that hold figures are numbers. */
  decimalMark: DecimalMark;
  /** ISO 8601: when the tables are made. */
  at: string;
}

/**
 * Everything a trial says as tables for other programs: the trial, its figures, combinations, means and gains over engine speed,
 * conditions, pulls, and the channels of each pull as they were read. Titles are unique and fit to name a sheet.
 *
 * @example workbookOf(trialTables(answer, { sentence, verdicts, warnings: [], system: 'si', decimalMark: '.', at }))
 */
export function trialTables(answer: TrialAnswer, asked: TablesAsked): OutTable[] {
  const { trial, comparison, pulls } = answer;
  const curves = trial.pulls.flatMap(({ pullId }) => {
    const pull = pulls.get(pullId);
    return pull && pull.channels.length > 0 ? [pull] : [];
  });
  const first = [
    trialTable(answer, asked),
    figuresTable(answer, asked),
    combinationsTable(answer, asked),
    ...(comparison ? speedsTables(comparison, trial, asked) : []),
    ...(comparison ? [conditionsTable(comparison, trial, asked)] : []),
  ];
  const names = sheetNames([...first.map(({ title }) => title), 'Pulls', ...curves.map(({ name }) => name)]);
  const nameOf = new Map(curves.map(({ id }, at) => [id, names[first.length + 1 + at]!]));
  return [
    ...first,
    pullsTable(answer, nameOf, asked),
    ...curves.map((pull) => ({ ...pullTable(pull, asked.system), title: nameOf.get(pull.id)! })),
  ].filter(({ rows }) => rows.length > 0);
}
