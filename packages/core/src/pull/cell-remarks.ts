import { figureOf } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { type CalibrationOnDay, calibrationOn, calibrationText } from './calibration.ts';
import type { Cell, ChannelMeaning, Instrument, Pull } from './model.ts';

/** Channels whose figures rest on what a weather station says. */
const OF_WEATHER: readonly Instrument['measures'][] = [
  'weather',
  'barometer',
  'relativeHumidity',
  'inletAirTemperature',
];

/** Whether an instrument stands behind torque and power. */
export const measuresTorque = ({ measures }: Instrument): boolean =>
  measures === 'torque' || measures === 'power';

/** Whether an instrument stands behind the correction to reference air. */
export const measuresWeather = ({ measures }: Instrument): boolean => OF_WEATHER.includes(measures);

/** The day of the logger's own clock. */
export const dayOfPull = ({ recordedAt }: Pick<Pull, 'recordedAt'>): string | null =>
  recordedAt?.slice(0, 10) ?? null;

/**
 * How the instruments behind a pull's figures stood to their calibrations on its day: torque, weather, and those whose
 * channel the pull has. None where the cell is not described.
 */
export function calibrationsBehind(
  pull: Pick<Pull, 'recordedAt' | 'channels'>,
  cell: Cell | null,
): CalibrationOnDay[] {
  const has = new Set<ChannelMeaning | 'weather'>(pull.channels.map(({ meaning }) => meaning));
  return (cell?.instruments ?? [])
    .filter((one) => measuresTorque(one) || measuresWeather(one) || has.has(one.measures))
    .map((instrument) => calibrationOn(instrument, dayOfPull(pull)));
}

/** What the cell of a pull has to say beside it: calibrations not in force, and inertia that only a person can add. */
export function cellRemarks(pull: Pull, cell: Cell | null): Remark[] {
  if (cell === null) return [];
  return [
    ...calibrationsBehind(pull, cell)
      .filter(({ state }) => state === 'run out' || state === 'long ago')
      .map(notInForce),
    ...inertiaOffered(pull, cell),
  ];
}

function notInForce(one: CalibrationOnDay): Remark {
  const rule =
    one.state === 'long ago'
      ? ' More than 30 days since the last check is long (common practice, no source).'
      : '';
  const advice = `Check it against its reference; if it read true, note that calibration in the cell. The figures stay as measured.`;
  return remark(
    'caution',
    'calibration-not-in-force',
    `${one.instrument.name}: calibration ${calibrationText(one)}.${rule} ${advice}`,
  );
}

/** Never used silently: what turns in the cell is not all that turns, and the engine's share is unknown here. */
function inertiaOffered(pull: Pull, cell: Cell): Remark[] {
  const isSweep = pull.form === 'curve' && pull.channels.some(({ meaning }) => meaning === 'time');
  if (cell.momentOfInertia === null || pull.sweep.momentOfInertia !== null || !isSweep) return [];
  if (pull.sweep.inertiaCompensated === 'yes') return [];
  const inertia = figureOf(cell.momentOfInertia, 'momentOfInertia');
  return [
    remark(
      'note',
      'inertia-of-cell',
      said`No moment of inertia is noted for this pull. Brake and coupling of ${cell.name} have ${inertia}; add what turns in the engine and enter the sum on the pull. It is not used by itself.`,
    ),
  ];
}
