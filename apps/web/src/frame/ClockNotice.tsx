import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { bookQuestion } from '../api/questions.ts';
import { Button } from '../parts/Button.tsx';
import styles from './last-act.module.css';

/** Says once that the clock of the machine was set back. */
export function ClockNotice() {
  const clock = useQuery(bookQuestion()).data?.clock ?? null;
  const [read, setRead] = useState(false);
  if (clock === null || read) return null;
  return (
    <aside className={styles.clock} aria-label="Clock">
      <p>{clock}</p>
      <Button small onPress={() => setRead(true)}>
        I have read it
      </Button>
    </aside>
  );
}
