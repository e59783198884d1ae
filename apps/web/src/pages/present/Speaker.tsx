import { drawStill, type ThemeName } from '@pullbook/charts';
import type { PresentedStep } from '@pullbook/views/publish';
import { useEffect, useMemo, useState } from 'react';
import { Stack } from '../../chart/Stack.tsx';
import styles from './present.module.css';

/** The next picture is drawn as it will be, and shown small. */
const DRAWN = { width: 1280, height: 720 };

const clock = (seconds: number): string =>
  `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;

/** For who speaks, while another screen shows the steps: what comes next, and how long he has spoken. */
export function Speaker({
  next,
  of,
  begunAt,
  theme,
}: {
  next: PresentedStep | undefined;
  of: string;
  /** Of `performance.now()`, ms. */
  begunAt: number;
  theme: ThemeName;
}) {
  const [seconds, setSeconds] = useState(() => Math.floor((performance.now() - begunAt) / 1000));
  useEffect(() => {
    const timer = setInterval(() => setSeconds(Math.floor((performance.now() - begunAt) / 1000)), 250);
    return () => clearInterval(timer);
  }, [begunAt]);
  const scene = useMemo(
    () => (next === undefined ? null : drawStill(next.still, { ...DRAWN, theme, ground: true })),
    [next, theme],
  );
  return (
    <aside className={styles.speaker} aria-label="For who speaks">
      <p className={styles.clock}>
        <span>{of}</span> <time>{clock(seconds)}</time>
      </p>
      <h2>{next === undefined ? 'This is the last step' : `Next: ${next.still.headline}`}</h2>
      {scene !== null && (
        <div className={styles.nextPicture}>
          <Stack scene={scene} />
        </div>
      )}
    </aside>
  );
}
