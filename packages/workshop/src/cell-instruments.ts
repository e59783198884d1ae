import { randomUUID } from 'node:crypto';
import type { Cell, Instrument } from '@pullbook/core/pull';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { onLatestCell } from './cells.ts';
import {
  type CalibrationText,
  calibrationFromText,
  type InstrumentText,
  instrumentFromText,
} from './edge/cell-text.ts';
import { todayHere } from './edge/day-text.ts';
import { findOne } from './find-one.ts';

/** Notes an instrument of a cell. `stamp`: of the cell as it was looked at. */
export async function addInstrument(
  book: Book,
  givenCell: string,
  text: InstrumentText,
  stamp?: string,
): Promise<Result<{ cellId: string; instrumentId: string }>> {
  return onLatestCell(book, givenCell, stamp, async (cell, latest) => {
    const said = instrumentFromText(text);
    if (!said.ok) return said;
    const same = cell.instruments.find(({ name }) => name.toLowerCase() === said.value.name.toLowerCase());
    if (same) {
      return refused(
        remark(
          'refusal',
          'instrument-name',
          `${cell.name} has an instrument "${same.name}" already. Give this one a name of its own.`,
        ),
      );
    }
    const instrument: Instrument = { ...said.value, id: randomUUID(), calibrations: [] };
    const instruments = [...cell.instruments, instrument];
    await book.changeCell({ ...cell, instruments }, `instrument added: ${instrument.name}`, latest);
    return accepted({ cellId: cell.id, instrumentId: instrument.id });
  });
}

/** Takes an instrument that left the cell out of it, with a reason; the log keeps its calibrations. */
export async function removeInstrument(
  book: Book,
  givenCell: string,
  givenInstrument: string,
  reason: string,
  stamp?: string,
): Promise<Result<{ cellId: string }>> {
  return onLatestInstrument(book, givenCell, givenInstrument, stamp, async (cell, instrument, latest) => {
    if (reason.trim() === '') {
      return refused(
        remark(
          'refusal',
          'no-reason',
          `"${instrument.name}" can only be taken out with a reason: pulls made with it lose sight of its calibrations.`,
        ),
      );
    }
    const instruments = cell.instruments.filter(({ id }) => id !== instrument.id);
    const why = `${instrument.name} taken out: ${reason.trim()}`;
    await book.changeCell({ ...cell, instruments }, why, latest);
    return accepted({ cellId: cell.id });
  });
}

/** Notes a calibration of an instrument. One of the same day takes the place of what was noted before. */
export async function addCalibration(
  book: Book,
  givenCell: string,
  givenInstrument: string,
  text: CalibrationText,
  stamp?: string,
): Promise<Result<{ cellId: string; instrumentId: string }>> {
  return onLatestInstrument(book, givenCell, givenInstrument, stamp, async (cell, instrument, latest) => {
    const said = calibrationFromText(text, todayHere());
    if (!said.ok) return said;
    const others = instrument.calibrations.filter(({ day }) => day !== said.value.day);
    const calibrations = [...others, said.value];
    calibrations.sort((one, other) => one.day.localeCompare(other.day));
    const instruments = cell.instruments.map((one) =>
      one.id === instrument.id ? { ...one, calibrations } : one,
    );
    await book.changeCell(
      { ...cell, instruments },
      `${instrument.name} calibrated ${said.value.day}`,
      latest,
    );
    return accepted({ cellId: cell.id, instrumentId: instrument.id });
  });
}

async function onLatestInstrument<T>(
  book: Book,
  givenCell: string,
  givenInstrument: string,
  stamp: string | undefined,
  change: (cell: Cell, instrument: Instrument, latest: string) => Promise<Result<T>>,
): Promise<Result<T>> {
  return onLatestCell(book, givenCell, stamp, async (cell, latest) => {
    const instrument = findOne(cell.instruments, givenInstrument, 'instrument');
    return instrument.ok ? change(cell, instrument.value, latest) : instrument;
  });
}
