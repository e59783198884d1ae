import type { SentencePart } from '@pullbook/views';
import styles from './sentence.module.css';

/** The answer in a sentence, its figure set apart, what it rests on in smaller letters. */
export function Sentence({ parts }: { parts: SentencePart[] }) {
  return (
    <span className={styles.sentence}>
      {parts.map(({ text, strong, quiet }, index) => {
        if (!strong && !quiet) return text;
        const Piece = strong ? 'strong' : 'small';
        // biome-ignore lint/suspicious/noArrayIndexKey: the parts of a sentence have no other name than their place
        return <Piece key={index}>{text}</Piece>;
      })}
    </span>
  );
}
