import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import styles from './publish.module.css';

/** Puts a picture's words for who cannot see it where they can be pasted; where the browser refuses, they stand there to be taken by hand. */
export function CopyWords({ words, of }: { words: string; of: string }) {
  const [state, setState] = useState<'asked for' | 'copied' | 'by hand'>('asked for');
  async function copy() {
    try {
      await navigator.clipboard.writeText(words);
      setState('copied');
    } catch {
      setState('by hand');
    }
  }
  return (
    <>
      <Button small look="quiet" onPress={() => void copy()} aria-label={`Copy the alt text of ${of}`}>
        {state === 'copied' ? 'Copied' : 'Copy the alt text'}
      </Button>
      <span role="status" className="unseen">
        {state === 'copied' && `The words of ${of} are copied.`}
      </span>
      {state === 'by hand' && (
        <textarea className={styles.words} readOnly rows={3} value={words} aria-label={`Alt text of ${of}`} />
      )}
    </>
  );
}
