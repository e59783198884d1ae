import type { EnquiryCard } from '@pullbook/views/reach';
import { Link } from '@tanstack/react-router';
import { Chips } from '../../parts/Chips.tsx';
import linked from '../../parts/linked-cards.module.css';
import { Sentence } from '../../parts/Sentence.tsx';
import styles from './asked.module.css';

/** What was asked, the answer in few words, and what became of it. */
export function EnquiryCardView({
  card: { id, question, sentence, chips, facts, became },
}: {
  card: EnquiryCard;
}) {
  return (
    <li className={`${linked.card} ${styles.card}`}>
      <p className={linked.question}>{question}</p>
      <h3 className={`${linked.answer} ${styles.answer}`}>
        <Link to="/reach/$id" params={{ id }}>
          <Sentence parts={sentence} />
        </Link>
      </h3>
      <Chips chips={chips}>
        <span className={linked.facts}>{facts}</span>
      </Chips>
      {became.length > 0 && (
        <p className={styles.became}>
          {became.map(({ text, trialId }) => (
            <Link key={trialId} to="/trials/$id" params={{ id: trialId }}>
              {text}
            </Link>
          ))}
        </p>
      )}
    </li>
  );
}
