import { FIND_FIELD } from '../frame/find-focus.ts';
import styles from './page-head.module.css';

/** Narrows a list to what holds every word written here. */
export function FindField({
  what,
  text,
  onText,
  shown,
  all,
}: {
  what: string;
  text: string;
  onText: (text: string) => void;
  shown: number;
  all: number;
}) {
  return (
    <search className={styles.find}>
      <input
        id={FIND_FIELD}
        type="search"
        aria-label={`Find in the ${what}`}
        placeholder={`Find in the ${what}`}
        value={text}
        onChange={(event) => onText(event.target.value)}
      />
      <output aria-live="polite">{(text.trim() !== '' || shown !== all) && `${shown} of ${all}`}</output>
    </search>
  );
}

/** Whether all words of `sought` are somewhere in the texts, whatever their case. */
export function holdsAllWords(texts: readonly string[], sought: string): boolean {
  const all = texts.join(' ').toLowerCase();
  return sought
    .toLowerCase()
    .split(/\s+/)
    .every((word) => all.includes(word));
}
