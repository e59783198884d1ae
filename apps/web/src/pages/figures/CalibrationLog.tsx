import type { CalibrationRow } from '@pullbook/workshop';
import styles from './figures.module.css';

const STATES: Record<NonNullable<CalibrationRow['state']>, string> = {
  'in force': 'in force',
  'run out': 'overdue: it has run out',
  'long ago': 'long ago, and nobody said how long it holds',
  none: 'none was noted',
  'day unknown': '',
};

/** Instruments that do not stand by a calibration today. */
const OVERDUE: readonly CalibrationRow['state'][] = ['run out', 'long ago', 'none'];

/** Every calibration of every instrument by date, with what is overdue. */
export function CalibrationLog({ rows }: { rows: readonly CalibrationRow[] }) {
  if (rows.length === 0) return <p className={styles.soft}>No instrument is described yet.</p>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than its place is scrolled by keys too
    <section className={styles.scroll} aria-label="Calibrations by date" tabIndex={0}>
      <table className={styles.log}>
        <thead>
          <tr>
            {['Day', 'Cell', 'Instrument', 'Found', 'Valid until', 'Today'].map((text) => (
              <th key={text} scope="col">
                {text}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ cell, instrument, calibration, state }) => (
            <tr key={[cell, instrument, calibration?.day, calibration?.found].join()}>
              <th scope="row">{calibration?.day ?? 'never'}</th>
              <td>{cell}</td>
              <td>{instrument}</td>
              <td>{calibration?.found ?? ''}</td>
              <td>{calibration?.validUntil ?? ''}</td>
              <td className={OVERDUE.includes(state) ? styles.overdue : undefined}>
                {state === null ? '' : STATES[state]}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
