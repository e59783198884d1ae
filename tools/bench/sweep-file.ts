const NAMES = [
  'Time (s)',
  'Engine speed (rpm)',
  'Torque (N·m)',
  'Boost (kPa)',
  'Lambda',
  'Throttle (%)',
  'Oil (°C)',
  'Coolant (°C)',
  'Charge (°C)',
  'Fuel flow (kg/h)',
  ...Array.from({ length: 10 }, (_, at) => `Aux ${at + 1} (V)`),
];
const ROWS_AT_ONCE = 20_000;

/** A comma file of one long sweep at 1 kHz with twenty columns, as bytes; the same every time. */
export function longFile(rows: number): Uint8Array {
  const parts = [Buffer.from(`${NAMES.join(',')}\n`)];
  for (let from = 0; from < rows; from += ROWS_AT_ONCE) {
    const lines = Array.from({ length: Math.min(ROWS_AT_ONCE, rows - from) }, (_, at) =>
      lineOf(from + at, rows),
    );
    parts.push(Buffer.from(`${lines.join('\n')}\n`));
  }
  return Buffer.concat(parts);
}

function lineOf(row: number, rows: number): string {
  const share = row / rows;
  const ripple = Math.sin(row * 0.7);
  return [
    (row / 1000).toFixed(3),
    (2500 + 4000 * share + ripple).toFixed(1),
    (500 + 80 * Math.sin(Math.PI * share) + ripple).toFixed(2),
    (80 * share * share).toFixed(2),
    '0.82',
    '99.6',
    (92 + share).toFixed(1),
    (84 + share).toFixed(1),
    (40 + 20 * share).toFixed(1),
    (40 + 60 * share).toFixed(2),
    ...Array.from({ length: 10 }, (_, at) => (2.5 + Math.sin(row * 0.01 + at)).toFixed(4)),
  ].join(',');
}
