import { Link } from '@tanstack/react-router';
import type { CombinationRow } from '../../api/edge.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import { Chips } from '../../parts/Chips.tsx';
import styles from '../../parts/list.module.css';

/** Combinations as rows, each with the way to one that is the same but for something. */
export function CombinationRows({ rows }: { rows: readonly CombinationRow[] }) {
  return (
    <ul className={`${styles.list} ${styles.combinations}`}>
      {rows.map((one) => (
        <li key={one.id}>
          <div>
            <Link className={styles.name} to="/combinations/$id" params={{ id: one.id }}>
              {one.name}
            </Link>
            <p className={styles.soft}>
              {one.engineName}
              {one.revision > 1 && ` · revision ${one.revision}`} ·{' '}
              {one.pulls === 1 ? '1 pull' : `${one.pulls} pulls`}
            </p>
          </div>
          <Chips chips={one.chips} />
          <ButtonLink small to="/combinations/new" search={{ from: one.id }}>
            Same, but … <span className="unseen">as {one.name}</span>
          </ButtonLink>
        </li>
      ))}
    </ul>
  );
}
