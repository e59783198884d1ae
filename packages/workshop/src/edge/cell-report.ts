import {
  type Calibration,
  type CalibrationOnDay,
  type Cell,
  calibrationOn,
  type Instrument,
  MEANINGS,
} from '@pullbook/core/pull';
import { formatQuantity, unitFor } from '@pullbook/core/quantity';
import type { ViewOptions } from '@pullbook/views';

export interface InstrumentReport extends Instrument {
  /** `Torque`, `Weather` */
  measuresLabel: string;
  /** How it stands today. */
  state: CalibrationOnDay['state'];
  /** The last one made; `null`: none noted. */
  last: Calibration | null;
}

/** A cell as it leaves the program. */
export interface CellReport {
  id: string;
  name: string;
  brake: string;
  altitudeM: number | null;
  /** `690 ft`; '' unknown */
  altitudeText: string;
  momentOfInertiaKgM2: number | null;
  /** In the units shown; '' unknown */
  momentOfInertiaText: string;
  notes: string;
  instruments: InstrumentReport[];
  /** How many pulls name it. */
  pulls: number;
  /** What was looked at, for a change that must not overwrite another unseen. */
  stamp: string;
}

export interface CellsReport {
  schemaVersion: 1;
  cells: CellReport[];
  /** Cells that pulls name and nobody described. */
  undescribed: { name: string; pulls: number }[];
}

/** The report of a cell as it stands on a day (ISO 8601 date). */
export function cellReport(
  cell: Cell,
  more: Pick<CellReport, 'pulls' | 'stamp'>,
  today: string,
  view: ViewOptions,
): CellReport {
  const { altitude, momentOfInertia, instruments, ...plain } = cell;
  return {
    ...plain,
    altitudeM: altitude,
    altitudeText: altitude === null ? '' : heightText(altitude, view),
    momentOfInertiaKgM2: momentOfInertia,
    momentOfInertiaText: momentOfInertia === null ? '' : inertiaText(momentOfInertia, view),
    instruments: instruments.map((instrument) => instrumentReport(instrument, today)),
    ...more,
  };
}

function instrumentReport(instrument: Instrument, today: string): InstrumentReport {
  const { state, calibration } = calibrationOn(instrument, today);
  const { measures } = instrument;
  const measuresLabel = measures === 'weather' ? 'Weather' : MEANINGS[measures].label;
  return { ...instrument, measuresLabel, state, last: calibration };
}

/** A height of land, whole; a length of parts would be in inches. */
function heightText(metres: number, { units: system, decimalMark }: ViewOptions): string {
  const unit = unitFor(system === 'us' ? 'ft' : 'm', 'length')!;
  return formatQuantity(metres, 'length', { system, decimalMark, decimals: 0, unit }).text;
}

const inertiaText = (inertia: number, { units: system, decimalMark }: ViewOptions): string =>
  formatQuantity(inertia, 'momentOfInertia', { system, decimalMark }).text;
