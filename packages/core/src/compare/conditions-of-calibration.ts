import {
  type CalibrationOnDay,
  type Cell,
  calibrationOn,
  calibrationText,
  cellNamed,
  dayOfPull,
  type Instrument,
  measuresTorque,
  measuresWeather,
} from '../pull/index.ts';
import { type CountedPull, textCondition } from './condition.ts';
import type { ConditionDifference } from './model.ts';

const ROWS = [
  {
    id: 'calibration-torque',
    label: 'Calibration of the torque cell',
    behind: measuresTorque,
    why: 'A calibration between two pulls moves the scale under one of them; past its end, or after more than 30 days without one, nobody knows what it reads (common practice, no source).',
  },
  {
    id: 'calibration-weather',
    label: 'Calibration of the weather station',
    behind: measuresWeather,
    why: 'Every corrected figure follows the barometer and the thermometer: 1 kPa wrong is about 1 % of power (by the correction formulas). Past its end nobody knows what it reads.',
  },
] as const;

/** Whether the instruments behind the figures stood alike. Nothing is asked where no cell is described. */
export function conditionsOfCalibration(
  pulls: readonly CountedPull[],
  cells: readonly Cell[],
): ConditionDifference[] {
  return ROWS.flatMap(({ id, label, why, behind }) => {
    const found = new Map(pulls.map((counted) => [counted, standing(counted, cells, behind)]));
    if ([...found.values()].every((ofPull) => ofPull.length === 0)) return [];
    const condition = textCondition(pulls, {
      id,
      label,
      why,
      read: (counted) => found.get(counted)!.map(calibrationText).join(', '),
    });
    return [{ ...condition, state: stateOf([...found.values()]) }];
  });
}

const standing = ({ pull }: CountedPull, cells: readonly Cell[], behind: (one: Instrument) => boolean) =>
  (cellNamed(cells, pull.cell)?.instruments ?? [])
    .filter(behind)
    .map((instrument) => calibrationOn(instrument, dayOfPull(pull)));

/** Alike only where all rest on the same calibration and it was in force: how many days ago it was made does not matter. */
function stateOf(ofPulls: readonly CalibrationOnDay[][]): ConditionDifference['state'] {
  const rested = ofPulls.map((ofPull) =>
    ofPull.map(({ instrument, calibration }) => `${instrument.id} ${calibration?.day ?? 'none'}`).join(', '),
  );
  const known = new Set(
    rested.filter((_, index) => ofPulls[index]!.some(({ calibration }) => calibration !== null)),
  );
  if (known.size > 1) return 'differs';
  const inForce = (ofPull: readonly CalibrationOnDay[]) =>
    ofPull.length > 0 && ofPull.every(({ state }) => state === 'in force');
  return ofPulls.every(inForce) ? 'alike' : 'unknown';
}
