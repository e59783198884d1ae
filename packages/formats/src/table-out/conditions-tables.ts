import { airState } from '@pullbook/core/air';
import type { Comparison } from '@pullbook/core/compare';
import type { Pull } from '@pullbook/core/pull';
import { writeSaid } from '@pullbook/core/quantity';
import type { Trial, TrialAnswer } from '@pullbook/core/trial';
import type { OutCell, OutTable } from './model.ts';
import { dateColumn, keyName, numberColumn, textColumn, uniqueNames } from './out-columns.ts';
import { asWritten, outUnit } from './out-unit.ts';
import type { TablesAsked } from './trial-tables.ts';

/** What must be alike between the compared pulls besides the change, with the limit used and what that rests on. */
export function conditionsTable(comparison: Comparison, trial: Trial, asked: TablesAsked): OutTable {
  const { system, decimalMark } = asked;
  const keys = trial.combinations.map(({ key }) => key);
  return {
    title: 'Conditions',
    columns: uniqueNames([
      textColumn('condition', 'Condition'),
      ...keys.map((key) => textColumn(keyName(key), key)),
      textColumn('state', 'Alike'),
      textColumn('why', 'Why it matters'),
    ]),
    rows: comparison.conditions.map(({ label, values, parts, state, why }): OutCell[] => [
      label,
      ...keys.map((key) => {
        const plain = values[key];
        return plain === undefined ? null : writeSaid(plain, parts?.[key], { units: system, decimalMark });
      }),
      state,
      why,
    ]),
  };
}

/** Each pull in a row, rejected ones too, with its role, air, correction and highest figures. */
export function pullsTable(
  answer: TrialAnswer,
  sheetOf: ReadonlyMap<string, string>,
  asked: TablesAsked,
): OutTable {
  const { system } = asked;
  const [pressure, temperature] = [outUnit('absolutePressure', system), outUnit('temperature', system)];
  const humidity = outUnit('ratio', system, 'relativeHumidity');
  const [power, torque] = [outUnit('power', system), outUnit('torque', system)];
  const speed = outUnit('engineSpeed', system);
  const number = asWritten('');
  const rows = answer.trial.pulls.flatMap(({ pullId, key, role, reason }): OutCell[][] => {
    const pull = answer.pulls.get(pullId);
    const view = answer.views.get(pullId);
    if (!pull) return [];
    return [
      [
        key,
        pull.name,
        sheetOf.get(pullId) ?? null,
        role,
        reason,
        pull.recordedAt,
        pull.cell,
        pull.operator,
        pull.outcome,
        pressure.from(pull.weather?.pressure),
        temperature.from(pull.weather?.temperature),
        humidity.from(relativeHumidity(pull)),
        pull.carried.standard,
        number.from(pull.carried.factor),
        number.from(view?.correction.factor),
        power.from(view?.peakPower?.value),
        speed.from(view?.peakPower?.atRpm),
        view?.peakPower ? (view.peakPower.stillClimbing ? 'yes' : 'no') : null,
        torque.from(view?.peakTorque?.value),
        speed.from(view?.peakTorque?.atRpm),
        pull.notes.map(({ text }) => text).join('\n') || null,
      ],
    ];
  });
  return {
    title: 'Pulls',
    columns: uniqueNames([
      textColumn('combination', 'Combination'),
      textColumn('name', 'Pull'),
      textColumn('table', 'Its table'),
      textColumn('role', 'Role'),
      textColumn('reason', 'Reason'),
      dateColumn('recordedAt', 'Recorded'),
      textColumn('cell', 'Cell'),
      textColumn('operator', 'Operator'),
      textColumn('outcome', 'Outcome'),
      numberColumn('barometer', 'Barometer at the station', pressure),
      numberColumn('inletAir', 'Inlet air', temperature),
      numberColumn('relativeHumidity', 'Relative humidity', humidity),
      textColumn('carriedStandard', 'Figures as they came'),
      numberColumn('carriedFactor', 'Factor as they came', number),
      numberColumn('correctionFactor', 'Correction factor applied to observed', number),
      numberColumn('peakPower', 'Highest power', power),
      numberColumn('peakPowerAt', 'Speed of the highest power', speed),
      textColumn('powerStillClimbing', 'Power still climbing there'),
      numberColumn('peakTorque', 'Highest torque', torque),
      numberColumn('peakTorqueAt', 'Speed of the highest torque', speed),
      textColumn('notes', 'Notes'),
    ]),
    rows,
  };
}

function relativeHumidity({ weather }: Pull): number | null {
  if (!weather?.humidity) return null;
  const state = airState(weather);
  return state.ok ? state.value.relativeHumidity : null;
}
