import type { TrialCard } from '@pullbook/views';
import { Link } from '@tanstack/react-router';
import { SmallPicture } from '../../chart/SmallPicture.tsx';
import { Chips } from '../../parts/Chips.tsx';
import linked from '../../parts/linked-cards.module.css';
import { Sentence } from '../../parts/Sentence.tsx';
import styles from './trials.module.css';

export function TrialCardView({ card }: { card: TrialCard }) {
  return (
    <li className={`${linked.card} ${styles.card}`}>
      <div>
        <p className={linked.question}>{card.question}</p>
        <h2 className={`${linked.answer} ${styles.answer}`}>
          <Link to="/trials/$id" params={{ id: card.id }}>
            <Sentence parts={card.sentence} />
          </Link>
        </h2>
        <Chips chips={card.chips}>
          <span className={linked.facts}>{card.facts}</span>
        </Chips>
      </div>
      {card.picture !== null && (
        <div className={styles.picture}>
          <SmallPicture chart={card.picture} />
        </div>
      )}
    </li>
  );
}
