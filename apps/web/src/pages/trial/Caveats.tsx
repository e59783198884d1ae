import { Card } from '../../parts/Card.tsx';
import styles from './trial.module.css';

/** What a careful reader must know before believing the answer. */
export function Caveats({ caveats }: { caveats: string[] }) {
  if (caveats.length === 0) return null;
  return (
    <Card title="Before you believe it">
      <ul className={styles.caveats}>
        {caveats.map((caveat) => (
          <li key={caveat}>{caveat}</li>
        ))}
      </ul>
    </Card>
  );
}
