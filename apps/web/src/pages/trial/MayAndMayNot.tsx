import type { TrialPage } from '@pullbook/views';
import { Card } from '../../parts/Card.tsx';
import styles from './trial.module.css';

/** What may be said of the answer in front of others, and what not. */
export function MayAndMayNot({ of }: { of: TrialPage['mayAndMayNot'] }) {
  if (of.length === 0) return null;
  return (
    <Card title="What may be said">
      <div className={styles.mayAndMayNot}>
        {of.map(({ key, title, may, mayNot }) => (
          <div key={key}>
            {title !== '' && <p className={styles.whose}>{title}</p>}
            <Lines name="You may say" sign="✓" lines={may} />
            <Lines name="You may not say" sign="✗" lines={mayNot} />
          </div>
        ))}
      </div>
    </Card>
  );
}

function Lines({ name, sign, lines }: { name: string; sign: string; lines: string[] }) {
  if (lines.length === 0) return null;
  return (
    <>
      <h3>{name}</h3>
      <ul>
        {lines.map((line) => (
          <li key={line}>
            <span aria-hidden="true">{sign}</span>
            {line}
          </li>
        ))}
      </ul>
    </>
  );
}
