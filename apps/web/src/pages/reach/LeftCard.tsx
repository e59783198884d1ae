import type { ShownLeft } from '@pullbook/views/reach';
import { Card } from '../../parts/Card.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { ShownTable } from '../../parts/ShownTable.tsx';
import { SourceLine } from './ReachLinks.tsx';
import styles from './reach.module.css';

/** The reverse: what is left in each supercharger with all else as it is, and which limit stops it. */
export function LeftCard({ left }: { left: ShownLeft[] }) {
  if (left.length === 0) return null;
  return (
    <Card title="What is left">
      {left.map(({ name, sentence, buyable, stops, from }) => (
        <section key={name} className={styles.leftOne} aria-label={name}>
          <h3 className={styles.small}>{name}</h3>
          <p className={styles.leftWords}>
            <Sentence parts={sentence} />
          </p>
          {buyable !== '' && <p className={styles.plain}>{buyable}</p>}
          {stops !== null && stops.rows.length > 0 && (
            <details>
              <summary>{stops.title}</summary>
              <ShownTable table={stops} isBroken />
            </details>
          )}
          <SourceLine from={from} />
        </section>
      ))}
    </Card>
  );
}
