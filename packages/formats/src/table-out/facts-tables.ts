import { correctionById } from '@pullbook/core/air';
import { deriveFigures } from '@pullbook/core/combination';
import { figuresOf, type PublishedFigure } from '@pullbook/core/publication';
import type { TrialAnswer } from '@pullbook/core/trial';
import type { OutCell, OutTable } from './model.ts';
import { numberColumn, textColumn } from './out-columns.ts';
import { asWritten, outUnit } from './out-unit.ts';
import type { TablesAsked } from './trial-tables.ts';

/** What was asked, what is answered, and all that the figures stand on, a line each. */
export function trialTable({ trial, comparison, pulls }: TrialAnswer, asked: TablesAsked): OutTable {
  const counted = trial.pulls.filter(({ role }) => role === 'counted').length;
  const [common, averages] = [comparison?.commonWindowRpm, comparison?.averagesWindowRpm];
  const range = (window: readonly [number, number] | null | undefined) =>
    window ? `${window[0]} to ${window[1]} rpm` : 'none';
  const invented = trial.invented || [...pulls.values()].some((pull) => pull.invented);
  const rows: [string, string][] = [
    ['Question', trial.question],
    ['Answer', asked.sentence],
    ...asked.verdicts.map((line): [string, string] => ['Verdict', line]),
    ['Power and torque by', standardOf(trial.correction, comparison)],
    ['Pulls', `${counted} counted of ${trial.pulls.length}`],
    ['Common window', range(common)],
    ['Window of the averages', range(averages)],
    ['Means over', comparison ? `${comparison.binWidthRpm} rpm` : ''],
    ['Own remark', trial.remark],
    ['Begun', trial.createdAt],
    ['Made', asked.at],
    ...(invented ? [['Data', 'invented'] satisfies [string, string]] : []),
    ...asked.warnings.map((line): [string, string] => ['Caution', line]),
  ];
  return {
    title: 'Trial',
    columns: [textColumn('what', 'What'), textColumn('value', 'Value')],
    rows: rows.filter(([, value]) => value !== ''),
  };
}

function standardOf(
  asked: TrialAnswer['trial']['correction'],
  comparison: TrialAnswer['comparison'],
): string {
  const name = asked === 'observed' ? 'observed' : (correctionById(asked)?.name ?? asked);
  return comparison && !comparison.correction.reached
    ? `${name} was asked for and not reached: as recorded`
    : name;
}

const FIGURE_NAMES: Record<PublishedFigure['id'], string> = {
  averagePower: 'Average power over the window',
  peakPower: 'Highest power',
  peakTorque: 'Highest torque',
  highestBoost: 'Highest boost',
  meanGain: 'Gain, average power over the window',
  meanGainRatio: 'Gain, share of the baseline',
};

/** The figures that a trial says, each with its 95 % band where one is known. */
export function figuresTable(answer: TrialAnswer, { system }: TablesAsked): OutTable {
  const none = asWritten('');
  const speed = outUnit('engineSpeed', system);
  const rows = figuresOf(answer).map(({ id, key, kind, value, low, high, engineSpeedRpm }): OutCell[] => {
    const unit = outUnit(kind, system, kind === 'ratio' ? 'throttle' : null);
    const place = speed.from(engineSpeedRpm);
    const figures = [unit.from(value), unit.name, unit.from(low), unit.from(high), place];
    return [key, FIGURE_NAMES[id], ...figures, stillClimbing(answer, id, key)];
  });
  return {
    title: 'Figures',
    columns: [
      textColumn('combination', 'Combination'),
      textColumn('figure', 'Figure'),
      numberColumn('value', 'Value', none),
      textColumn('unit', 'Unit'),
      numberColumn('low', '95 % band, low', none),
      numberColumn('high', '95 % band, high', none),
      numberColumn('engineSpeed', 'At engine speed', speed),
      textColumn('stillClimbing', 'Still climbing there'),
    ],
    rows,
  };
}

/** Whether a highest figure is the last of its curve, which is no peak; `null`: another figure. */
function stillClimbing({ comparison }: TrialAnswer, id: PublishedFigure['id'], key: string): OutCell {
  const one = comparison?.combinations.find((combination) => combination.key === key);
  const peak = id === 'peakPower' ? one?.peakPower : id === 'peakTorque' ? one?.peakTorque : null;
  return peak ? (peak.stillClimbing ? 'yes' : 'no') : null;
}

/** Each combination in a row: what it is, and what changed from the baseline. */
export function combinationsTable(answer: TrialAnswer, { system }: TablesAsked): OutTable {
  const volume = outUnit('volume', system);
  const rows = answer.trial.combinations.map(({ key, combinationId, shortName }): OutCell[] => {
    const one = answer.combinations.get(combinationId);
    const displacement = one && deriveFigures(one.sheet).find(({ id }) => id === 'displacement')?.value;
    const changes = (answer.changes[key] ?? []).map(
      ({ label, before, after }) => `${label}: ${before ?? 'none'} became ${after ?? 'none'}`,
    );
    const counted = answer.trial.pulls.filter((pull) => pull.key === key && pull.role === 'counted').length;
    return [
      key,
      shortName,
      one?.name ?? null,
      one?.revision ?? null,
      counted,
      volume.from(displacement),
      one?.sheet.sections.fuel?.name?.text ?? null,
      changes.join('\n'),
    ];
  });
  return {
    title: 'Combinations',
    columns: [
      textColumn('combination', 'Combination'),
      textColumn('shortName', 'Short name'),
      textColumn('name', 'Name'),
      numberColumn('revision', 'Revision of the sheet', asWritten('')),
      numberColumn('countedPulls', 'Counted pulls', asWritten('')),
      numberColumn('displacement', 'Displacement', volume),
      textColumn('fuel', 'Fuel'),
      textColumn('changes', 'Changed from the baseline'),
    ],
    rows,
  };
}
