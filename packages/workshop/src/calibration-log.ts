import {
  type Calibration,
  type CalibrationOnDay,
  type Cell,
  calibrationOn,
  MEANINGS,
} from '@pullbook/core/pull';

/** One calibration of one instrument; an instrument without one has a row of its own. */
export interface CalibrationRow {
  cell: string;
  instrument: string;
  measures: string;
  /** `null`: none was noted. */
  calibration: Calibration | null;
  /** How the instrument stands today, on the row it stands by; `null`: another one. */
  state: CalibrationOnDay['state'] | null;
}

/** Every calibration of every instrument, the newest first; instruments of which none was noted before them. */
export function calibrationLog(cells: readonly Cell[], today: string): CalibrationRow[] {
  const rows = cells.flatMap((cell) =>
    cell.instruments.flatMap((instrument): CalibrationRow[] => {
      const { measures, calibrations } = instrument;
      const about = {
        cell: cell.name,
        instrument: instrument.name,
        measures: measures === 'weather' ? 'Weather' : MEANINGS[measures].label,
      };
      const { state, calibration: newest } = calibrationOn(instrument, today);
      if (calibrations.length === 0) return [{ ...about, calibration: null, state }];
      const ordered = calibrations.toSorted((one, other) => other.day.localeCompare(one.day));
      return ordered.map((calibration) => ({
        ...about,
        calibration,
        state: calibration === newest ? state : null,
      }));
    }),
  );
  return rows.toSorted((one, other) =>
    (other.calibration?.day ?? '9').localeCompare(one.calibration?.day ?? '9'),
  );
}
