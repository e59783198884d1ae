import type { PartsPage } from '@pullbook/views/reach';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import styles from './parts.module.css';

/** More things than these are folded. */
const UNFOLDED = 6;

/** The things of one kind, each with its cost and where it is from. */
export function KindCard({
  kind: { id, title, what, rows },
  costClasses,
  onWrite,
  onRemove,
}: {
  kind: PartsPage['kinds'][number];
  costClasses: PartsPage['costClasses'];
  /** `null`: one more. */
  onWrite: (row: number | null) => void;
  onRemove: (row: number) => void;
}) {
  const list = (
    <ul className={styles.rows} aria-label={`${title}: ${what}`}>
      {rows.map(({ text, cost, from }, row) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place, and two may say the same
        <li key={row}>
          <span className={styles.text}>{text}</span>
          <span className={styles.soft}>
            {costClasses.find((one) => one.cost === cost)?.text} · {from}
          </span>
          <span className={styles.acts}>
            <Button small look="quiet" onPress={() => onWrite(row)}>
              Change <span className="unseen">{text}</span>
            </Button>
            <Button small look="quiet" onPress={() => onRemove(row)}>
              Remove <span className="unseen">{text}</span>
            </Button>
          </span>
        </li>
      ))}
    </ul>
  );
  return (
    <Card
      title={title}
      beside={
        <Button small onPress={() => onWrite(null)}>
          Add <span className="unseen">to {title}</span>
        </Button>
      }
    >
      {rows.length === 0 && (
        <p className={styles.soft}>
          {id === 'breathing'
            ? 'None stated. What pairs of your own pulls show is tried all the same.'
            : 'None. A search changes nothing of this kind.'}
        </p>
      )}
      {rows.length > UNFOLDED ? (
        <details className={styles.fold}>
          <summary>
            {rows.length}: {rows[0]?.text} to {rows.at(-1)?.text}
          </summary>
          {list}
        </details>
      ) : (
        rows.length > 0 && list
      )}
    </Card>
  );
}
