import type { PullPage } from '@pullbook/views';
import { useState } from 'react';
import { Fields, TextField } from '../../parts/Field.tsx';
import styles from './pull.module.css';

/** By how many seconds each channel comes late; folded while none does. */
export function LagFields({
  meanings,
  lags,
  onLags,
}: {
  meanings: PullPage['channelMeanings'];
  lags: Record<string, string>;
  onLags: (lags: Record<string, string>) => void;
}) {
  // Lags are told by the clock, so the clock itself has none; without one there is nothing to tell them by.
  const late = meanings.some(({ id }) => id === 'time')
    ? meanings.filter(({ id }) => id !== 'time' && id !== 'other')
    : [];
  const [openAtFirst] = useState(() =>
    Object.values(lags).some((lag) => Number(lag.replace(',', '.')) !== 0),
  );
  if (late.length === 0) return null;
  return (
    <details className={styles.folded} open={openAtFirst}>
      <summary>Channels that come late</summary>
      <p className={styles.help}>
        Seconds between what happened and its row: a mixture probe far down the pipe, a slow thermometer.
        Minus where it comes early.
      </p>
      <Fields>
        {late.map(({ id, label }) => (
          <TextField
            key={id}
            label={`${label}, s`}
            inputMode="decimal"
            placeholder="0"
            value={lags[id] ?? ''}
            onChange={(event) => onLags({ ...lags, [id]: event.target.value })}
          />
        ))}
      </Fields>
    </details>
  );
}
