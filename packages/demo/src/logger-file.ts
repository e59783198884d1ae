import { fromInside, type QuantityKind, type Unit, unitFor } from '@pullbook/core/quantity';
import type { SweepRow } from './sweep.ts';

/** How one invented logger lays out its text: every shop's files look a little different. */
export interface FileLayout {
  delimiter: ',' | ';';
  decimalMark: '.' | ',';
  units: 'us' | 'si';
  /** `brackets`: in the header. `row`: in a row of their own. */
  unitsStand: 'brackets' | 'parentheses' | 'row';
  lineEnd: '\n' | '\r\n';
  byteOrderMark: boolean;
  /** Lines before the header. */
  preamble: string[];
  columns: ColumnName[];
}

export type ColumnName = keyof typeof COLUMNS;

interface Column {
  title: string;
  kind: QuantityKind;
  us: Scale;
  si: Scale;
  of: (row: SweepRow) => number;
}

/** `unit` as the file's header says it; '' for a bare ratio. */
interface Scale {
  unit: string;
  decimals: number;
}

type Scales = Pick<Column, 'kind' | 'us' | 'si'>;

const inBoth = (kind: QuantityKind, unit: string, decimals: number): Scales => ({
  kind,
  us: { unit, decimals },
  si: { unit, decimals },
});

const temperatures: Scales = {
  kind: 'temperature',
  us: { unit: '°F', decimals: 1 },
  si: { unit: '°C', decimals: 1 },
};

const gaugePressures: Scales = {
  kind: 'gaugePressure',
  us: { unit: 'psi', decimals: 2 },
  si: { unit: 'kPa', decimals: 1 },
};

const COLUMNS = {
  time: { title: 'Time', ...inBoth('time', 's', 2), of: (row) => row.time },
  engineSpeed: { title: 'Engine speed', ...inBoth('engineSpeed', 'rpm', 1), of: (row) => row.engineSpeedRpm },
  torque: {
    title: 'Torque',
    kind: 'torque',
    us: { unit: 'lb-ft', decimals: 1 },
    si: { unit: 'N·m', decimals: 1 },
    of: (row) => row.torque,
  },
  power: {
    title: 'Power',
    kind: 'power',
    us: { unit: 'hp', decimals: 2 },
    si: { unit: 'kW', decimals: 2 },
    of: (row) => row.power,
  },
  boost: { title: 'Boost', ...gaugePressures, of: (row) => row.boost },
  lambda: { title: 'Lambda', ...inBoth('ratio', '', 3), of: (row) => row.lambda },
  throttle: { title: 'Throttle', ...inBoth('ratio', '%', 1), of: (row) => row.throttle },
  inletAirTemperature: {
    title: 'Inlet air temperature',
    ...temperatures,
    of: (row) => row.inletAirTemperature,
  },
  chargeTemperature: { title: 'Charge temperature', ...temperatures, of: (row) => row.chargeTemperature },
  oilTemperature: { title: 'Oil temperature', ...temperatures, of: (row) => row.oilTemperature },
  coolantTemperature: { title: 'Coolant temperature', ...temperatures, of: (row) => row.coolantTemperature },
  oilPressure: { title: 'Oil pressure', ...gaugePressures, of: (row) => row.oilPressure },
  fuelFlow: {
    title: 'Fuel flow',
    kind: 'massFlow',
    us: { unit: 'lb/h', decimals: 1 },
    si: { unit: 'kg/h', decimals: 2 },
    of: (row) => row.fuelFlow,
  },
} satisfies Record<string, Column>;

/** The rows as the bytes of an ordinary text file. */
export function loggerFile(rows: SweepRow[], layout: FileLayout): Uint8Array {
  const columns = layout.columns.map((name) => {
    const column: Column = COLUMNS[name];
    const { unit, decimals } = column[layout.units];
    const known = unit === '' ? null : unitFor(unit, column.kind);
    if (unit !== '' && known === null) throw new Error(`The unit table has no ${unit} for ${column.kind}.`);
    return { ...column, unit, shown: (row: SweepRow) => shownValue(column.of(row), known, decimals, layout) };
  });
  const lines = [...layout.preamble];
  if (layout.unitsStand === 'row') {
    lines.push(columns.map((column) => column.title).join(layout.delimiter));
    lines.push(columns.map((column) => column.unit).join(layout.delimiter));
  } else {
    const [open, close] = layout.unitsStand === 'brackets' ? ['[', ']'] : ['(', ')'];
    const named = columns.map(({ title, unit }) => (unit ? `${title} ${open}${unit}${close}` : title));
    lines.push(named.join(layout.delimiter));
  }
  for (const row of rows) lines.push(columns.map((column) => column.shown(row)).join(layout.delimiter));
  const text = (layout.byteOrderMark ? '\uFEFF' : '') + lines.join(layout.lineEnd) + layout.lineEnd;
  return new TextEncoder().encode(text);
}

function shownValue(value: number, unit: Unit | null, decimals: number, layout: FileLayout): string {
  const shown = (unit === null ? value : fromInside(value, unit)).toFixed(decimals);
  return layout.decimalMark === ',' ? shown.replace('.', ',') : shown;
}
