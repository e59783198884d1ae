import type { FileLayout } from './logger-file.ts';

const EVERYTHING: FileLayout['columns'] = [
  'time',
  'engineSpeed',
  'torque',
  'boost',
  'lambda',
  'throttle',
  'inletAirTemperature',
  'chargeTemperature',
  'oilTemperature',
  'coolantTemperature',
  'oilPressure',
  'fuelFlow',
];

/** Comma, decimal point, units in brackets. */
export const COMMA_US: FileLayout = {
  delimiter: ',',
  decimalMark: '.',
  units: 'us',
  unitsStand: 'brackets',
  lineEnd: '\n',
  byteOrderMark: false,
  preamble: [],
  columns: EVERYTHING,
};

/** Comma, decimal point, newton-metres, with a power column of the logger's own. */
export const COMMA_SI: FileLayout = {
  ...COMMA_US,
  units: 'si',
  unitsStand: 'parentheses',
  lineEnd: '\r\n',
  columns: ['time', 'engineSpeed', 'torque', 'power', ...EVERYTHING.slice(3)],
};

/** Semicolon and decimal comma, as a European spreadsheet saves it. */
export const SEMICOLON_SI: FileLayout = {
  ...COMMA_US,
  delimiter: ';',
  decimalMark: ',',
  units: 'si',
  lineEnd: '\r\n',
  byteOrderMark: true,
};

/** Two lines about the logger, the header, then a row of units. */
export const UNITS_ROW_US: FileLayout = {
  ...COMMA_US,
  unitsStand: 'row',
  preamble: ['Logged at 50 rows a second', 'Invented data'],
};
