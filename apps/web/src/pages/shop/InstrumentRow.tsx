import type { InstrumentReport } from '@pullbook/workshop';
import { Button } from '../../parts/Button.tsx';
import { Chips } from '../../parts/Chips.tsx';
import styles from './shop.module.css';

const STATES: Record<InstrumentReport['state'], { text: string; tone: 'quiet' | 'caution' }> = {
  'in force': { text: 'Calibrated', tone: 'quiet' },
  'run out': { text: 'Calibration run out', tone: 'caution' },
  'long ago': { text: 'Calibrated long ago', tone: 'caution' },
  none: { text: 'No calibration noted', tone: 'caution' },
  'day unknown': { text: 'Calibration unknown', tone: 'caution' },
};

/** One instrument: what it measures, its last calibration, and how it stands today. */
export function InstrumentRow({
  instrument,
  onCalibrate,
  onTakeOut,
}: {
  instrument: InstrumentReport;
  onCalibrate: () => void;
  onTakeOut: () => void;
}) {
  const { name, measuresLabel, serial, state, last } = instrument;
  return (
    <li className={styles.instrument}>
      <div>
        <p className={styles.instrumentName}>{name}</p>
        <p className={styles.soft}>
          {measuresLabel}
          {serial !== '' && ` · serial ${serial}`}
        </p>
      </div>
      <div>
        <Chips chips={[STATES[state]]} />
        {last !== null && (
          <p className={styles.soft}>
            {[
              last.validUntil === null ? last.day : `${last.day} to ${last.validUntil}`,
              last.how,
              last.found,
              last.by,
            ]
              .filter((text) => text !== '')
              .join(' · ')}
          </p>
        )}
      </div>
      <div className={styles.instrumentActs}>
        <Button small onPress={onCalibrate}>
          Calibrated … <span className="unseen">{name}</span>
        </Button>
        <Button small look="quiet" onPress={onTakeOut}>
          Take out … <span className="unseen">{name}</span>
        </Button>
      </div>
    </li>
  );
}
