import type { SentencePart } from '@pullbook/views';
import styles from './sentence.module.css';

/** The answer in a sentence, its figure set apart. */
export function Sentence({ parts }: { parts: SentencePart[] }) {
  return (
    <span className={styles.sentence}>
      {parts.map((part, index) =>
        part.strong ? (
          // biome-ignore lint/suspicious/noArrayIndexKey: the parts of a sentence have no other name than their place
          <strong key={index}>{part.text}</strong>
        ) : (
          part.text
        ),
      )}
    </span>
  );
}
